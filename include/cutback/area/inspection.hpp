#pragma once
// What the sheet's last part asks the person on site to look at, and cautions for the work.

#include <string>
#include <vector>

#include "cutback/area/area.hpp"
#include "cutback/area/demand.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::area {

/// One item of an inspection, in our own words; `key` names its meaning, since the numbers of the
/// standard move between editions.
struct InspectionItem {
  std::string key;
  std::string text;
  bool detailed = false;
  bool close = false;
  bool visual = false;
  std::string source;
};

/// The items of the initial, detailed inspection that the place calls for, in the order of the
/// standard; none in an ordinary place.
/// @source IEC 60079-17, inspection schedules
[[nodiscard]] std::vector<InspectionItem> initial_inspection(const Area& area,
                                                             const tables::Standards& standards);

struct Caution {
  std::string key;
  std::string text;
  std::string brief;  ///< as a card has it; empty: on the sheet alone
  std::string source;
};

/// The cautions that this work calls for, in the order of the table.
/// @param barrier  the gland is ended with a compound
[[nodiscard]] std::vector<Caution> cautions(const Area& area, const gland::Gland& gland,
                                            bool barrier, const tables::Standards& standards);

}  // namespace cutback::area
