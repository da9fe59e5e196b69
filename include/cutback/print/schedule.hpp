#pragma once
// What comes of a schedule as JSON lines, and its summary.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include "cutback/print/print.hpp"
#include "cutback/schedule/changes.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/defaults.hpp"
#include "cutback/schedule/share.hpp"
#include "cutback/schedule/tally.hpp"

namespace cutback::print {

/// What is to be said of how the schedule was read, as the last line.
[[nodiscard]] std::string notes_json(std::span<const std::string> notes);

/// One object on one line.
/// @param defaults  Format::defaults
/// @param supplier  the list of the gland, where there are several
void append_schedule_json(std::string& out, const schedule::EndName& name,
                          const schedule::Decision& decision,
                          std::span<const schedule::OwnValue> defaults,
                          std::string_view supplier = {});

/// The columns that a schedule may have, by section, in 80 columns.
[[nodiscard]] std::string columns_text(const Style& style);
/// One object a line.
[[nodiscard]] std::string columns_json();

/// What each default filled; empty where there is none.
[[nodiscard]] std::string defaults_summary(std::span<const schedule::OwnValue> defaults,
                                           const schedule::DefaultCounts& counts);

/// What is not as it was in an earlier revision: ends, glands, and what is to be ordered.
[[nodiscard]] std::string changes_summary(const std::string& old_file,
                                          std::span<const schedule::EndChange> changes,
                                          const schedule::Takeoff& takeoff);

/// What is to be said where no heading tells whether a row is one end or a whole cable; else
/// nothing.
[[nodiscard]] std::string ends_not_told(const schedule::Tally& tally);

/// Eleven lines, and what ends_not_told() says: what fits, what needs a person, and why most often.
[[nodiscard]] std::string schedule_summary(const schedule::Tally& tally, const std::string& file,
                                           std::size_t glands, const std::string& list_name);

/// Two lines more where limited stock was shared out: whom it serves, at what cost, and the proof.
[[nodiscard]] std::string stock_summary(const schedule::Wanted& wanted,
                                        const schedule::Share& share, const std::string& currency);

}  // namespace cutback::print
