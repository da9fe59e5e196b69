#pragma once
// Which heading of a schedule is which column.

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/schedule/meaning.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// What a heading was taken for.
struct HeadingPlace {
  std::optional<Meaning> meaning;
  const HeadingForm* form = nullptr;  ///< the one that has the meaning
  bool named = false;                 ///< by the user, or by the column's own name
  bool by_user = false;
  bool ignored = false;
  bool one_end = false;  ///< the rows above say that it is of one end, and not of which
};

/// What each heading means by the user's word, by its own name or by the trade's.
/// @param headings  borrowed, as are the rows of `format.usual`
[[nodiscard]] std::vector<HeadingPlace> assign_headings(std::span<const Heading> headings,
                                                        const Format& format);

/// The places of the headings that a user's name means: that are the same text, else the column of
/// this letter, else the same text but for case, spaces and points, else but for a unit.
[[nodiscard]] std::vector<std::size_t> places_of(std::span<const Heading> headings,
                                                 std::string_view name);

/// Whether the figures of a heading's unit can stand in the column.
[[nodiscard]] bool suits(const job::Field& field, std::string_view unit);

/// "cutback from_verdict": what --append wrote over a column of results.
[[nodiscard]] bool is_own_result(const Heading& heading);

}  // namespace cutback::schedule
