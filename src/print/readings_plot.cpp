#include "print/readings_plot.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "cutback/number.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using measure::DrumResult;
using measure::DrumsInput;
using measure::DrumsResult;
using measure::Estimate;

constexpr std::size_t k_label = 14;
constexpr std::size_t k_width = k_columns - 1 - k_label;
constexpr std::size_t k_most_drums = 20;

struct Axis {
  double low_mm;
  double high_mm;

  /// The column of a length, or nothing when it lies beside the picture.
  [[nodiscard]] std::optional<std::size_t> column(double mm) const {
    const double share = (mm - low_mm) / (high_mm - low_mm);
    if (share < 0.0 || share > 1.0) return std::nullopt;
    return static_cast<std::size_t>(std::lround(share * (k_width - 1)));
  }
};

struct Extent {
  double low_mm;
  double high_mm;

  void take(double mm) {
    low_mm = std::min(low_mm, mm);
    high_mm = std::max(high_mm, mm);
  }
};

/// As wide as the readings and intervals need, and a limit where it is not far from them: a range
/// that is much wider would press the readings together.
Axis axis_of(const DrumsInput& in, const DrumsResult& result) {
  Extent extent{result.estimate.low_mm(), result.estimate.high_mm()};
  for (const DrumResult& drum : result.drums) {
    extent.take(drum.estimate.low_mm());
    extent.take(drum.estimate.high_mm());
    for (const double reading : drum.estimate.readings_mm) extent.take(reading);
  }
  constexpr double k_least_span_mm = 0.1;
  const double span = std::max(extent.high_mm - extent.low_mm, k_least_span_mm);
  const Extent near{extent.low_mm - span, extent.high_mm + span};
  for (const std::optional<double>& limit : {in.range.low_mm, in.range.high_mm}) {
    if (limit && *limit >= near.low_mm && *limit <= near.high_mm) extent.take(*limit);
  }
  const double edge = 0.04 * std::max(extent.high_mm - extent.low_mm, k_least_span_mm);
  return {extent.low_mm - edge, extent.high_mm + edge};
}

/// A round step that leaves room for its figures, and the decimals that they need.
struct Ticks {
  double step_mm;
  int decimals;
};

Ticks ticks_of(const Axis& axis) {
  constexpr double k_room = 10.0;  // columns from figure to figure
  const double least = k_room / (k_width - 1) * (axis.high_mm - axis.low_mm);
  const int exponent = static_cast<int>(std::floor(std::log10(least)));
  const double power = std::pow(10.0, exponent);
  double step = 10.0 * power;
  for (const double factor : {5.0, 2.0, 1.0}) {
    if (factor * power >= least) step = factor * power;
  }
  return {step, std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)))};
}

std::string line(std::string_view label, std::string marks) {
  return line_of(cell(label, k_label) + std::move(marks));
}

std::string scale(const Axis& axis) {
  const Ticks ticks = ticks_of(axis);
  std::string figures(k_width, ' ');
  std::string marks(k_width, '-');
  const double first = std::ceil(axis.low_mm / ticks.step_mm);
  const double last = std::floor(axis.high_mm / ticks.step_mm);
  for (double i = first; i <= last; i += 1.0) {
    const std::optional<std::size_t> at = axis.column(i * ticks.step_mm);
    if (!at) continue;
    marks[*at] = '+';
    const std::string figure = fixed(i * ticks.step_mm, ticks.decimals);
    const std::size_t begin = *at - std::min(*at, figure.size() / 2);
    if (begin + figure.size() <= k_width) figures.replace(begin, figure.size(), figure);
  }
  return line("mm", figures) + line("", marks);
}

/// The range as a bar; where it goes on beside the picture it ends in < or >.
std::string range_bar(const measure::Range& range, const Axis& axis) {
  std::string marks(k_width, ' ');
  const double low = range.low_mm.value_or(0.0);
  const double high = range.high_mm.value_or(measure::k_largest_diameter_mm);
  if (low > axis.high_mm) {
    marks.back() = '>';
  } else if (high < axis.low_mm) {
    marks.front() = '<';
  } else {
    const std::optional<std::size_t> left = axis.column(low);
    const std::optional<std::size_t> right_end = axis.column(high);
    const std::size_t first = left.value_or(0);
    const std::size_t last = right_end.value_or(k_width - 1);
    for (std::size_t i = first; i <= last; ++i) marks[i] = '=';
    marks[first] = left ? '[' : '<';
    marks[last] = right_end ? ']' : '>';
  }
  return line("range", marks);
}

std::string dots(const Estimate& estimate, const Axis& axis) {
  std::vector<std::size_t> counts(k_width);
  for (const double reading : estimate.readings_mm) {
    if (const auto at = axis.column(reading)) ++counts[*at];
  }
  std::string marks;
  for (const std::size_t count : counts) {
    marks += count == 0 ? ' ' : count == 1 ? '.' : count == 2 ? ':' : '#';
  }
  return marks;
}

std::string interval(const Estimate& estimate, const Axis& axis) {
  std::string marks(k_width, ' ');
  const std::size_t first = axis.column(estimate.low_mm()).value_or(0);
  const std::size_t last = axis.column(estimate.high_mm()).value_or(k_width - 1);
  for (std::size_t i = first; i <= last; ++i) marks[i] = '-';
  marks[first] = '(';
  marks[last] = ')';
  if (const auto middle = axis.column(estimate.value_mm)) marks[*middle] = '|';
  return marks;
}

}  // namespace

std::string readings_plot(const DrumsInput& in, const DrumsResult& result) {
  const Axis axis = axis_of(in, result);
  std::string text = scale(axis);
  const bool ranged = in.range.low_mm || in.range.high_mm;
  if (ranged) text += range_bar(in.range, axis);
  const std::size_t shown = std::min(result.drums.size(), k_most_drums);
  for (std::size_t i = 0; i < shown; ++i) {
    const Estimate& estimate = result.drums[i].estimate;
    text += line(cell(result.drums[i].name, k_label - 1), dots(estimate, axis));
    text += line("", interval(estimate, axis));
  }
  if (in.unmeasured) text += line("not measured", interval(result.estimate, axis));
  if (shown < result.drums.size()) {
    text += wrapped("", "The first " + std::to_string(shown) + " of " +
                            std::to_string(result.drums.size()) + " drums are drawn.");
  }
  return text + wrapped("", std::string(". one reading, : two, # more; (--|--) D +/- U") +
                                (ranged ? "; [==] range, < > beyond" : ""));
}

}  // namespace cutback::print
