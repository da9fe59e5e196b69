#pragma once
// The parts of a sheet that cards have too.

#include <vector>

#include "cutback/sheet/sheet.hpp"
#include "print/pages/block.hpp"

namespace cutback::print {

[[nodiscard]] bool is_armoured(const sheet::Sheet& sheet);
/// The drawing of its plan. The sheet is borrowed.
/// @param most_high  that the cable may be drawn, mm of paper
[[nodiscard]] Picture strip_picture(const sheet::Sheet& sheet, double most_high);
/// What to do where nothing may be cut.
void add_help(std::vector<Block>& blocks, const sheet::Sheet& sheet);
/// What the diameters must read before anything is cut, with blanks.
void add_gates(std::vector<Block>& blocks, const sheet::Sheet& sheet);
/// The marks in working order; of a sheet with a plan, as the others.
void add_marks(std::vector<Block>& blocks, const sheet::Sheet& sheet);
void add_depths(std::vector<Block>& blocks, const sheet::Sheet& sheet);
/// Whether the way to each terminal is told.
enum class Routes { told, left_out };
void add_tails(std::vector<Block>& blocks, const sheet::Sheet& sheet, Routes routes);
/// What is measured and signed on site.
void add_write_in(std::vector<Block>& blocks, const sheet::Sheet& sheet);

}  // namespace cutback::print
