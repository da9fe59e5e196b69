#pragma once
// The words of a cell in the words of its column: by the one table of what the trade writes, and
// where several things are said of a place in one cell.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// What a cell says of several fields.
struct CellSays {
  std::vector<std::pair<const job::Field*, std::string>> values;
  std::string taken;  ///< what was taken for what, for people: `"SWA" for wire`; empty for nothing
};

/// Whether the words of a field are looked up here.
[[nodiscard]] bool has_words(const job::Field& field);

/// What a cell says, where its words are known; nothing where they are not: whoever sets the field
/// says what is wrong with it.
/// @throws InputError for a word that can be read in two ways
[[nodiscard]] std::optional<CellSays> words_of_cell(const Layout& layout, const Column& column,
                                                    std::string_view text,
                                                    const std::string& where);

/// Whether a voltage of the system is beyond what the built-in constructions are for: above 1 kV,
/// or not to be understood.
/// @param kilovolts  the heading says that the figures are
[[nodiscard]] bool is_beyond_low_voltage(std::string_view text, bool kilovolts);

}  // namespace cutback::schedule
