#pragma once
// The marks of a plan in the words of a page: where each is and how deep to cut there.

#include <optional>
#include <string>
#include <vector>

#include "cutback/sheet/sheet.hpp"

namespace cutback::print {

/// One mark. Where it is reads `before` `figure` `after`, and behind them a blank where the hands
/// have to add something up.
struct MarkWords {
  char number = '1';              ///< or S, the gland's shoulder
  std::string layer;              ///< that is cut; of S what to do there
  std::string before;             ///< what must be measured first: `reach + strip +`
  std::string figure;             ///< mm; empty where there is none
  std::string after;              ///< from where, and how exactly
  bool blank = false;             ///< a sum, or a figure of the gland in hand, is to be written in
  std::string depth;              ///< without its unit, which is mm
  bool is_cut = true;             ///< S is a place to hold the gland at, or a check
  std::optional<double> axis_mm;  ///< from the shoulder, where it is known

  /// Under the mark in the drawing.
  [[nodiscard]] std::string brief() const;
};

/// In working order. A mark that waits for a route, a strip length or a wall is that length and a
/// constant, so that it can be cut by on the day: tip = w + R + s + slack, rounded up to a whole mm
/// as in strip::plan_cuts.
/// @param sheet     with a plan
/// @param strip_mm  of every core, where the job gives one but no route
[[nodiscard]] std::vector<MarkWords> mark_words(const sheet::Sheet& sheet,
                                                const std::optional<double>& strip_mm);

/// What must be measured for the marks, in the order of their sums: `reach`, `strip`, `wall`.
struct OpenLengths {
  bool reach = false;
  bool strip = false;
  bool wall = false;
  [[nodiscard]] bool any() const { return reach || strip || wall; }
};
[[nodiscard]] OpenLengths open_lengths(const sheet::Sheet& sheet,
                                       const std::optional<double>& strip_mm);

/// What the depths leave open, as printed beside them; empty where there is none.
[[nodiscard]] std::string depth_spread(const sheet::Sheet& sheet);

}  // namespace cutback::print
