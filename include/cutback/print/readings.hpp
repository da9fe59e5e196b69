#pragma once
// The answer of `cutback readings` as text of 80 columns and as JSON.

#include <string>

#include "cutback/measure/drums.hpp"
#include "cutback/print/print.hpp"

namespace cutback::print {

/// @param result        of analyse_drums for `in`
/// @param error_source  of the permissible error, where `in` does not state it
[[nodiscard]] std::string readings_text(const measure::DrumsInput& in,
                                        const measure::DrumsResult& result,
                                        const std::string& error_source, const Style& style);
[[nodiscard]] std::string readings_json(const measure::DrumsInput& in,
                                        const measure::DrumsResult& result);

}  // namespace cutback::print
