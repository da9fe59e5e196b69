#pragma once
// Figures of a gland list that cannot be: a slip of the pen, another unit, two columns exchanged.

#include <span>
#include <string>
#include <vector>

#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::fit {

/// What of a gland a check compares something with.
enum class Figure {
  outer_seal,
  inner_seal,
  bore,
  clamp,
  thread_length,
  washer,
  exposed_armour,
  bedding_past,
  bedding_end,
  sealing,
};

/// Whether the figure cannot be, so that nothing is known by it: a seal that takes more than 20 mm
/// of difference, an inner seal wholly above the bore, a bore wider than the root of the gland's
/// own entry thread, a clamp for wires above 4.2 mm, a thread under three pitches, a washer over
/// 10 mm, exposed armour over 100 mm, bedding that goes 60 mm past its thread, bedding that ends so
/// far inside that most of the compound would lie beyond the thread, a chamber in a gland that is
/// not for compound (common practice, no source; the root by ISO 68-1, ASME B1.20.1, DIN 40430).
[[nodiscard]] bool is_absurd(Figure figure, const gland::Gland& gland,
                             const tables::Standards& standards);

/// The same in words: "bore 45 mm: its thread M20x1.5 leaves 18.15 mm"; empty where it can be.
[[nodiscard]] std::string why_absurd(Figure figure, const gland::Gland& gland,
                                     const tables::Standards& standards);

/// Every such figure of a list, each with its part; at most 20, then how many more.
[[nodiscard]] std::vector<std::string> absurdities(std::span<const gland::Gland> glands,
                                                   const tables::Standards& standards);

}  // namespace cutback::fit
