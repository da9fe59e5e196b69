#pragma once
// What every page has around what it is about.

#include <string>
#include <vector>

#include "cutback/print/pages.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// Room that printers leave free or that the check bars take [mm].
struct Margins {
  double left = 11.0;
  double top = 6.0;
  double right = 6.0;
  double bottom = 12.0;
};

/// Where a card lies, with the space to its cut lines taken off.
struct Cell {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;
};

[[nodiscard]] std::vector<Cell> cells_of(const Paper& paper, const Margins& margins);

/// Dashed, between the cards.
void put_cut_lines(const Pen& pen, const Paper& paper, const Margins& margins);

/// Two black bars of exactly 50 mm, one along and one across, since printers scale the two apart,
/// the words to measure them, and the foot.
void put_check_bars(const Pen& pen, const Paper& paper, const std::string& foot);

/// `2026-11-25`, of what PageNote has.
[[nodiscard]] std::string day_of(const std::string& dated);

inline constexpr double k_check_bar_mm = 50.0;

}  // namespace cutback::print
