#include "cutback/entry/parts.hpp"

namespace cutback::entry {

std::vector<EntryPart> parts_in_order(const gland::Gland& gland, const Entry& entry,
                                      bool through_adaptor) {
  const auto own_or = [&](const std::optional<double>& own, const std::optional<double>& other) {
    return own || through_adaptor ? own : other;
  };
  const auto given = [](const std::optional<double>& thickness_mm) {
    return thickness_mm && *thickness_mm > 0.0;
  };
  const bool known = entry.hole.has_value();
  const bool tapped = entry.hole == Hole::threaded;
  const auto washer_mm = own_or(entry.washer_mm, gland.washer_mm);
  std::vector<EntryPart> parts;
  const auto add = [&](bool there, const char* name, const char* place,
                       const std::optional<double>& thickness_mm, bool beside) {
    if (!there) return;
    parts.push_back({name, place, given(thickness_mm) ? thickness_mm : std::nullopt, beside});
  };
  add(known, through_adaptor ? "adaptor" : "gland", "its shoulder outside", std::nullopt, false);
  add(tapped && given(entry.tag_mm), "earth tag", "", entry.tag_mm, true);
  add(!tapped || given(washer_mm), "sealing washer", "outside", washer_mm, known);
  add(known, "wall", tapped ? "tapped" : "clearance hole", entry.wall_mm, false);
  add(!tapped && given(entry.tag_mm), "earth tag", "inside", entry.tag_mm, known);
  add(!tapped && given(entry.serrated_mm), "serrated washer", "", entry.serrated_mm, known);
  add(!tapped, "locknut", known ? "" : "in a clearance hole",
      own_or(entry.locknut_mm, gland.locknut_mm), known);
  return parts;
}

}  // namespace cutback::entry
