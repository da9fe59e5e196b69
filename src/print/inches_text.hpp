#pragma once
// Lengths of a result once more, in inches beside the millimetres.

#include <string>
#include <vector>

#include "cutback/print/print.hpp"

namespace cutback::print {

/// A length [mm] in inches with four places, so that nothing is lost that a caliper shows. The last
/// place is half away from zero, or on the side on which a limit is kept.
enum class Rounding { nearest, up, down };
std::string inches(double mm, Rounding rounding = Rounding::nearest);

/// The cable's diameters and, of a gland, each range that they are compared with, and what is left.
/// @param best  may be null
std::string inches_of(const fit::Question& question, const fit::GlandFit* best, const Style& style);
/// One length: what it is, in mm as it is printed, and in inches.
struct InchRow {
  std::string what;
  std::string mm;
  std::string in;
};
/// What the diameters must read, marks, depths and tails; none where nothing may be cut.
std::vector<InchRow> inch_rows(const sheet::Sheet& sheet);
/// The diameters as they were read, and those lengths.
std::string inches_of(const sheet::Sheet& sheet, const Style& style);

}  // namespace cutback::print
