#pragma once
// Options that take one number between two limits.

#include <optional>
#include <string>
#include <vector>

#include "cutback/error.hpp"

namespace cutback::cli {

/// The closed limits of a number, and its unit for messages.
struct NumberLimits {
  double min;
  double max;
  const char* unit;
};

/// The number that was typed; nothing when nothing was typed or when it is wrong, which adds a
/// fault.
std::optional<double> read_number(const std::string& text, const char* option,
                                  const NumberLimits& limits, std::vector<Fault>& faults);

}  // namespace cutback::cli
