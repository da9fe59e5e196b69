// Any bytes as readings of a drum: every reading within what is allowed, or faults.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/io/drum_file.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    for (const auto& drum : cutback::io::read_drums(text, "fuzz")) {
      for (const auto& place : drum.places) {
        if (place.readings_mm.empty()) std::abort();
        for (const double reading : place.readings_mm) {
          if (!(reading > 0.0) || !(reading <= cutback::measure::k_largest_diameter_mm)) {
            std::abort();
          }
        }
      }
    }
  } catch (const cutback::InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  return 0;
}
