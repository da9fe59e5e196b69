#pragma once
// The steps of a decision that can be shared by many ends.

#include <optional>

#include "core/schedule/fittings.hpp"
#include "cutback/fit/select.hpp"
#include "cutback/schedule/decide.hpp"

namespace cutback::schedule::detail {

/// Which of the diameters that could be estimated are given.
struct GivenFigures {
  bool sheath = false;
  bool bedding = false;
};
/// Puts what a row says besides its values into a cable that is complete: its remarks, and no
/// diameter that must not be estimated.
void apply(const RowNotes& notes, const GivenFigures& given, cable::Cable& cable);

/// Decides for the diameters that the question's job has now.
/// @param search    of the same question
/// @param supply    what the end gets of limited stock; may be null
/// @param decision  is written over; its storage is used again
/// @param nearest   where none fits: gets that of the nearest gland; may be null
void decide(const fit::Question& question, fit::Search& search, fit::Prefer prefer,
            const Supply* supply, FittingsMemory& fittings, Decision& decision,
            std::optional<fit::GlandFit>* nearest = nullptr);

}  // namespace cutback::schedule::detail
