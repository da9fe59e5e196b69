// Any bytes as a table of published values: rows as wide as the columns, or one fault.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/io/standards.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    const auto table = cutback::io::read_table(text, "fuzz");
    if (table.rows.empty()) std::abort();
    for (const auto& row : table.rows) {
      if (row.size() != table.columns.size()) std::abort();
    }
  } catch (const cutback::InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  return 0;
}
