#pragma once
// Words by which a row of a schedule says that it is no cable any more: Deleted, VOID, not used.

#include <cstddef>
#include <string>
#include <string_view>

#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// What a text says of the row that it stands in.
enum class RowWord {
  none,
  may_be_deleted,  ///< it may, or asks for another gland: "on hold", "barrier gland required"
  deleted,         ///< it says so, and nothing else: "Deleted", "superseded by C-12"
};

/// A text of a column that nobody reads, a remark for example.
[[nodiscard]] RowWord word_of_remark(const UsualHeadings& usual, std::string_view text);
/// A tag with such a word in it: "C-12 (DELETED)", "SPARE".
[[nodiscard]] RowWord word_of_tag(const UsualHeadings& usual, std::string_view text);
/// What stands where the equipment of an end does.
[[nodiscard]] RowWord word_of_place(const UsualHeadings& usual, std::string_view text);

/// A cell that says that a place is plain, or nothing.
[[nodiscard]] bool is_plain_place(const UsualHeadings& usual, std::string_view text);
/// What a text says of a place.
enum class Hazard {
  none,
  by_area,  ///< such a place is often hazardous: "Petrol pump forecourt"
  told,     ///< "ZONE 1 AREA", "Ex d", "IIB"; not "non hazardous"
};
/// @param equipment  the text is a name: a zone counts there, not what may be letters of the name
[[nodiscard]] Hazard hazard_in(const UsualHeadings& usual, std::string_view text, bool equipment);
/// Whether a heading speaks of hazardous places.
[[nodiscard]] bool heads_hazard(const UsualHeadings& usual, std::string_view heading);
/// Whether it speaks of other zones: those of a fire alarm.
[[nodiscard]] bool heads_no_hazard(const UsualHeadings& usual, std::string_view heading);

/// Whether a text under a heading, or beside a label, tells a hazardous place: 1 under "Zone", Yes
/// under "Ex".
[[nodiscard]] bool value_tells_hazard(const UsualHeadings& usual, std::string_view heading,
                                      std::string_view text);

/// Whether a heading is that of remarks on the whole row: "Remarks", "Cable Status"; not "Gland
/// Remarks".
[[nodiscard]] bool heads_remark(const UsualHeadings& usual, std::string_view heading);

/// Whether a heading that is not read may ask more of a gland: "OD Max", "Tol. (%)", "Ingress".
[[nodiscard]] bool heads_more(const UsualHeadings& usual, std::string_view heading);

/// Whether a title says of the cables under it that they are deleted, or glanded by others:
/// "DELETED CABLES", "GLANDS BY VENDOR".
[[nodiscard]] bool takes_away(const UsualHeadings& usual, std::string_view title);

/// Whether a text is a label of the sheet and no tag: "Prepared by", "Notes".
[[nodiscard]] bool is_of_sheet(const UsualHeadings& usual, std::string_view text);

/// The strongest of such words in a row.
struct RowSays {
  RowWord word = RowWord::none;
  std::size_t cell = Layout::k_none;
};
[[nodiscard]] RowSays says_of_row(const Layout& layout, Cells cells);

/// How many cables a cell with words beside the figure stands for: "2 off", "3 No.", "x2".
/// @return nothing where it is no such number
[[nodiscard]] std::optional<std::uint64_t> count_in(const UsualHeadings* usual,
                                                    std::string_view text);

}  // namespace cutback::schedule
