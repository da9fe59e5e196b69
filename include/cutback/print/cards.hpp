#pragma once
// What a run of cards comes to, as JSON and as text.

#include <cstddef>
#include <string>

#include "cutback/print/pages.hpp"

namespace cutback::print {

struct CardsReport {
  CardCount count;
  std::size_t cut = 0;      ///< ends that may be cut
  std::size_t fitting = 0;  ///< ends whose gland fits, measured or by datasheets
};

[[nodiscard]] std::string cards_json(const CardsReport& report);
/// A few lines: ends, cards and pages, and the ends that need a person.
[[nodiscard]] std::string cards_summary(const CardsReport& report);

}  // namespace cutback::print
