// Any bytes as a workbook: its sheets are read whole and in pieces, or one fault says why not.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/io/xlsx_rows.hpp"

using namespace cutback;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  try {
    const auto book = io::open_xlsx(bytes, "fuzz", '.');
    for (std::size_t i = 0; i < book->sheets().size(); ++i) {
      if (!book->sheets()[i].has_cells) continue;
      const auto rows = book->open(i);
      io::RowBlock block;
      std::size_t last = 0;
      while (rows->read(block)) {
        rows->finish(block);
        for (std::size_t row = 0; row < block.rows; ++row) {
          if (block.records[row].line <= last) std::abort();
          last = block.records[row].line;
        }
      }
    }
  } catch (const InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  return 0;
}
