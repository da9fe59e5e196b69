#pragma once
// The parts of a sheet that are set in columns.

#include <vector>

#include "cutback/sheet/sheet.hpp"
#include "print/pages/block.hpp"

namespace cutback::print {

/// What to do where nothing may be cut.
void add_help(std::vector<Block>& blocks, const sheet::Sheet& sheet);
/// Every core with its tail and its way to the terminal; of a sheet with a plan.
void add_routes(std::vector<Block>& blocks, const sheet::Sheet& sheet);
/// What is measured and signed on site.
void add_write_in(std::vector<Block>& blocks, const sheet::Sheet& sheet);

}  // namespace cutback::print
