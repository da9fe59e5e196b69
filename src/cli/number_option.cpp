#include "cli/number_option.hpp"

#include "cutback/number.hpp"
#include "cutback/written/written.hpp"

namespace cutback::cli {

std::optional<double> read_number(const std::string& text, const char* option,
                                  const NumberLimits& limits, std::vector<Fault>& faults) {
  if (text.empty()) return std::nullopt;
  Fault fault{.code = ErrorCode::out_of_range,
              .what = "out of range",
              .where = option,
              .given = text,
              .allowed = plain(limits.min, 4) + " to " + plain(limits.max, 4) + " " + limits.unit,
              .hint = {}};
  const written::Asked asked{
      .key = {}, .form = written::Asked::Form::number, .unit = limits.unit, .words = {}};
  const std::optional<double> value = parse_number(written::take(asked, text, option).text);
  if (value && *value >= limits.min && *value <= limits.max) return value;
  if (!value) {
    fault.code = ErrorCode::bad_number;
    fault.what = "not a plain number";
    fault.hint = "give the figure alone, with a decimal point and without its unit";
  }
  faults.push_back(std::move(fault));
  return std::nullopt;
}

}  // namespace cutback::cli
