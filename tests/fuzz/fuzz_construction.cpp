// Any lines as the fields of a cable, in the order of the field table: a construction whose layers
// lie one over the other, or faults that say what no rule covers.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "cutback/io/standards.hpp"
#include "cutback/job/construction.hpp"
#include "cutback/job/field_text.hpp"

using namespace cutback;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const tables::Standards k_standards = io::builtin_standards();
  std::string_view text(reinterpret_cast<const char*>(data), size);
  job::JobInput job;
  while (!text.empty()) {  // key=value
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(line.size() + 1, text.size()));
    const std::string_view key = line.substr(0, line.find('='));
    if (key.size() == line.size()) continue;
    for (const job::Field& field : job::fields()) {
      if (field.key != key) continue;
      static_cast<void>(job::set_from_text(job, field, line.substr(key.size() + 1), "fuzz"));
    }
  }
  const auto in = job::construction_input(job);
  if (!in) return 0;
  try {
    const cable::Construction made = cable::construct(*in, k_standards);
    if (!std::isfinite(made.sheath_od_mm) || !(made.sheath_od_mm > made.bedding_diameter_mm) ||
        !(made.bedding_diameter_mm > 0.0) || !(made.expanded_mm > 0.0)) {
      std::abort();
    }
  } catch (const InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  return 0;
}
