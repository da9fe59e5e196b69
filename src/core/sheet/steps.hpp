#pragma once
// The words of the sheet: parts, steps, cautions.

#include "cutback/sheet/sheet.hpp"

namespace cutback::sheet::detail {

std::vector<Part> parts_of(const job::Job& job, const fit::GlandFit& fit);
std::vector<Step> steps_of(const job::Job& job, const fit::GlandFit& fit,
                           const strip::CutPlan& plan);
std::vector<std::string> cautions_of(const job::Job& job, const fit::GlandFit* fit);

}  // namespace cutback::sheet::detail
