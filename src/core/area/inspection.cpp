#include "cutback/area/inspection.hpp"

#include "core/area/source.hpp"

namespace cutback::area {
namespace {

using tables::Table;

bool flameproof(const Area& area) { return area.protection && area.protection->starts_with('d'); }

/// Whether an item is for this place: `any`, `gas`, `dust`, or `d` (a flameproof enclosure).
bool is_for(const std::string& place, const Hazard& hazard, const Area& area) {
  return place == "any" || (place == "gas" && hazard.gas) || (place == "dust" && hazard.dust) ||
         (place == "d" && flameproof(area));
}

}  // namespace

std::vector<InspectionItem> initial_inspection(const Area& area,
                                               const tables::Standards& standards) {
  std::vector<InspectionItem> items;
  const Hazard hazard = hazard_of(area);
  if (!hazard.any()) return items;
  const Table& table = standards.table("inspection_items");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    // The first inspection is a detailed one.
    if (!is_for(table.text(i, "place"), hazard, area) || table.text(i, "detailed").empty())
      continue;
    items.push_back({.key = table.text(i, "key"),
                     .text = table.text(i, "text"),
                     .detailed = true,
                     .close = !table.text(i, "close").empty(),
                     .visual = !table.text(i, "visual").empty(),
                     .source = detail::source_of(table, i)});
  }
  return items;
}

std::vector<Caution> cautions(const Area& area, const gland::Gland& gland, bool barrier,
                              const tables::Standards& standards) {
  const bool hazardous = hazard_of(area).any();
  const bool armoured = gland.armour != cable::ArmourKind::none;
  const Table& table = standards.table("cautions");
  std::vector<Caution> list;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const std::string when = table.text(i, "when");
    const bool applies = when == "always" || (when == "hazardous" && hazardous) ||
                         (when == "armoured" && armoured) || (when == "barrier" && barrier);
    if (!applies) continue;
    std::string source = table.text(i, "basis");
    if (detail::from_memory(table, i)) source += " [from-memory]";
    list.push_back({table.text(i, "key"), table.text(i, "text"), std::move(source)});
  }
  return list;
}

}  // namespace cutback::area
