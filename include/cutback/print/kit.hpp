#pragma once
// A kit as text of 80 columns and as JSON.

#include <string>

#include "cutback/gland/gland.hpp"
#include "cutback/print/print.hpp"
#include "cutback/schedule/kit.hpp"
#include "cutback/schedule/tally.hpp"

namespace cutback::print {

/// All that a kit is told from. Borrowed.
struct KitReport {
  std::string file;  ///< the schedule
  const gland::GlandList* list = nullptr;
  const schedule::Wanted* wanted = nullptr;
  const schedule::Kit* kit = nullptr;
  schedule::KitBy by = schedule::KitBy::parts;
  std::string currency;                         ///< label of the prices; may be empty
  const schedule::Tally* not_served = nullptr;  ///< the ends that no part fits, with their list
  std::uint64_t rows = 0;
  double time_limit_s = 0.0;
};

[[nodiscard]] std::string kit_text(const KitReport& report, const Style& style);
[[nodiscard]] std::string kit_json(const KitReport& report);

}  // namespace cutback::print
