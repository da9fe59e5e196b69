// RFC 4180, section 2: tables as another implementation writes and reads them (Python 3.11, module
// csv; csv_vectors.py makes the file).
#include <catch2/catch.hpp>

#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "io/json_strict.hpp"

using namespace cutback;
using Rows = std::vector<std::vector<std::string>>;

TEST_CASE("CsvReader: the same rows as another implementation", "[published][csv]") {
  const io::WholeFile file(CUTBACK_SOURCE_DIR "/tests/published/csv_vectors.json");
  const auto vectors = io::parse_json(file.text(), "csv_vectors.json");
  REQUIRE(vectors.size() == 360);
  for (const auto& vector : vectors) {
    const auto text = vector.at("text").get<std::string>();
    INFO(text);
    io::CsvReader reader(text, "t.csv");
    io::CsvRecord record;
    Rows rows;
    while (reader.next(record)) rows.emplace_back(record.fields.begin(), record.fields.end());
    CHECK(rows == vector.at("rows").get<Rows>());
  }
}
