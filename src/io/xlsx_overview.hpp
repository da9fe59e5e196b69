#pragma once
// The first sheet of a schedule's workbook: what a buyer looks at.

#include <cstddef>
#include <string>

#include "cutback/schedule/tally.hpp"
#include "io/xlsx_book.hpp"

namespace cutback::io {

/// What to order, what is provisional, what needs a person, and how the margins lie, each short,
/// with charts that follow the cells.
/// @param sheet    `Overview`, nothing written to it yet
/// @param takeoff  as it stands in the sheet Take-off
/// @param subject  the name of the schedule and such
void write_overview(XlsxBook& book, lxw_worksheet* sheet, const schedule::Tally& tally,
                    const schedule::Takeoff& takeoff, const std::string& subject);

}  // namespace cutback::io
