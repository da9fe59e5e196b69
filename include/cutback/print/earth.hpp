#pragma once
// The answer of `cutback earth` as text of 80 columns and as JSON.

#include <string>

#include "cutback/earth/armour_earth.hpp"
#include "cutback/print/print.hpp"

namespace cutback::print {

/// What was asked decides which findings are shown: nothing is said about a gland or a table that
/// was not asked for.
struct EarthAsked {
  bool fault = false;       ///< a current, a time or an energy was given
  bool line = false;        ///< the line conductor was given
  bool gland = false;       ///< a gland's rating was given
  bool resistance = false;  ///< the length was given
};

[[nodiscard]] std::string earth_text(const earth::EarthResult& result, const EarthAsked& asked,
                                     const Style& style);
[[nodiscard]] std::string earth_json(const earth::EarthResult& result, const EarthAsked& asked);

}  // namespace cutback::print
