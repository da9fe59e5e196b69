// Any bytes: the reader ends, and its records lie on rising lines within the text.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "cutback/io/csv.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
  cutback::io::CsvReader reader(text, "fuzz");
  cutback::io::CsvRecord record;
  std::size_t last = 0;
  try {
    while (reader.next(record)) {
      if (record.fields.empty() || record.line <= last) std::abort();
      last = record.line;
      if (last > static_cast<std::size_t>(lines)) std::abort();
    }
  } catch (const cutback::InputError& error) {
    if (error.faults().size() != 1) std::abort();
  }
  return 0;
}
