// Reads texts from stdin, each behind its length and a line end, and writes what the CSV reader
// makes of each: a line of JSON, or `refused`.
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/io/csv.hpp"

int main() {
  std::size_t length = 0;
  while (std::cin >> length) {
    std::cin.get();
    std::string text(length, '\0');
    std::cin.read(text.data(), static_cast<std::streamsize>(length));
    std::vector<std::vector<std::string>> rows;
    try {
      cutback::io::CsvReader reader(text, "stdin");
      cutback::io::CsvRecord record;
      while (reader.next(record)) {
        rows.emplace_back(record.fields.begin(), record.fields.end());
      }
      std::cout << nlohmann::json(rows).dump() << '\n';
    } catch (const cutback::InputError&) {
      std::cout << "refused\n";
    }
  }
}
