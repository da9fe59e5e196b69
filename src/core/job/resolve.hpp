#pragma once
// The parts of a job that resolve() assembles, each from the input and the faults found so far.

#include "core/job/faults.hpp"
#include "cutback/job/job.hpp"

namespace cutback::job::detail {

[[nodiscard]] inline std::optional<int> whole(const std::optional<double>& value) {
  if (!value) return std::nullopt;
  return static_cast<int>(*value);
}

/// An allowance on a figure of a datasheet, where it is stated. 0 states none: no cable is made
/// exactly as its datasheet says, and an empty formula of a spreadsheet shows 0.
[[nodiscard]] inline std::optional<double> stated_allowance(const std::optional<double>& value) {
  return value && *value > 0.0 ? value : std::nullopt;
}

[[nodiscard]] measure::Caliper caliper_of(const JobInput& in);

[[nodiscard]] entry::Entry resolve_entry(const JobInput& in, Faults& faults);

[[nodiscard]] area::Area resolve_area(const JobInput& in, Faults& faults);

[[nodiscard]] strip::Tails resolve_tails(const JobInput& in, Faults& faults);

}  // namespace cutback::job::detail
