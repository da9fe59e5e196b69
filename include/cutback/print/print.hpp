#pragma once
// Results as text of 80 columns and as JSON. Text is ASCII unless a name given by the user is not.

#include <cstddef>
#include <span>
#include <string>

#include "cutback/fit/fit.hpp"
#include "cutback/sheet/sheet.hpp"

namespace cutback::print {

/// How a text is set.
struct Style {
  bool colour = false;   ///< ANSI colours beside the words; the words alone are complete
  bool all = false;      ///< every gland with its reason, not the nearest ones only
  bool why = false;      ///< every check of the first gland in words
  bool sources = false;  ///< and its source
  bool inches = false;   ///< every length once more in inches
  /// Of the screen of `fit`: below 60 columns it is set narrow, with nothing cut off; it takes no
  /// more lines than these where it can.
  std::size_t columns = 80;
  std::size_t lines = 23;
};

/// The answer of `cutback fit`.
[[nodiscard]] std::string fit_text(const fit::Question& question,
                                   std::span<const fit::GlandFit> ranked,
                                   const std::string& list_name, const Style& style);
[[nodiscard]] std::string fit_json(const fit::Question& question,
                                   std::span<const fit::GlandFit> ranked);

/// The termination sheet.
[[nodiscard]] std::string sheet_text(const sheet::Sheet& sheet, const Style& style);
[[nodiscard]] std::string sheet_json(const sheet::Sheet& sheet);

/// The cable from its end, each layer where it stops, to scale along its axis where every figure
/// is known. Lines of at most 79 columns.
[[nodiscard]] std::string drawing_text(const job::Job& job, const strip::CutPlan& plan);

}  // namespace cutback::print
