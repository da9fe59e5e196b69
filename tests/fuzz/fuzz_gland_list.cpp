// Any bytes: a checked list, or faults that each say what is wrong.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/io/gland_list.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    const auto list = cutback::io::read_gland_list(text, "fuzz");
    if (list.glands.empty()) std::abort();
    for (const auto& gland : list.glands) {
      if (gland.part.empty() || !gland.outer.low_mm || !gland.outer.high_mm ||
          *gland.outer.low_mm > *gland.outer.high_mm) {
        std::abort();
      }
    }
  } catch (const cutback::InputError& error) {
    if (error.faults().empty()) std::abort();
    for (const auto& fault : error.faults()) {
      if (fault.what.empty() || fault.where.empty()) std::abort();
    }
  }
  return 0;
}
