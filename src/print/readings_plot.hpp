#pragma once
// The readings as dots over an axis in mm.

#include <string>

#include "cutback/measure/drums.hpp"

namespace cutback::print {

/// A line of dots and a line with D +- U for each drum, over the range, in 80 columns of ASCII.
std::string readings_plot(const measure::DrumsInput& in, const measure::DrumsResult& result);

}  // namespace cutback::print
