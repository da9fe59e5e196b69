#pragma once
// The words of the sheet: parts, steps, cautions.

#include "cutback/area/bundle.hpp"
#include "cutback/sheet/sheet.hpp"

namespace cutback::sheet::detail {

/// @param compound  what the chamber takes, where it is known
std::vector<Part> parts_of(const job::Job& job, const fit::GlandFit& fit,
                           const std::optional<area::Compound>& compound);
std::vector<Step> steps_of(const job::Job& job, const fit::GlandFit& fit,
                           const strip::CutPlan& plan);
/// Resistance of the armour, insulation, bend and support.
std::vector<Test> tests_of(const job::Job& job, const fit::GlandFit& fit,
                           const tables::Standards& standards);
std::vector<std::string> cautions_of(const job::Job& job, const fit::GlandFit& fit,
                                     const tables::Standards& standards);
/// Of them those that are not for every end, in a few words, in the same order.
std::vector<std::string> own_cautions_of(const job::Job& job, const fit::GlandFit& fit,
                                         const tables::Standards& standards);

}  // namespace cutback::sheet::detail
