#include "cutback/entry/parts.hpp"

#include "cutback/entry/hardware.hpp"

namespace cutback::entry {

std::vector<EntryPart> parts_in_order(const gland::Gland& gland, const Entry& entry,
                                      bool through_adaptor) {
  const Hardware at = hardware_of(gland, entry, through_adaptor);
  const bool known = at.hole.has_value();
  const bool tapped = at.hole == Hole::threaded;
  std::vector<EntryPart> parts;
  parts.reserve(10);
  const auto add = [&](bool there, const char* name, const char* place,
                       const std::optional<double>& thickness_mm, bool beside) {
    if (there) parts.push_back({name, place, thickness_mm, beside});
  };
  const bool tag = at.tag_mm > 0.0;
  const bool serrated = at.serrated_mm > 0.0;
  // In a tapped hole a washer that is not stated may well be absent: it is not ordered.
  const bool washer = at.washer_mm ? *at.washer_mm > 0.0 : !tapped;
  const bool in_adaptor = at.gland_washer_mm > 0.0;
  add(in_adaptor, "sealing washer", "between gland and adaptor", at.gland_washer_mm, false);
  add(known, through_adaptor ? "adaptor" : "gland", "its shoulder outside", std::nullopt, false);
  add(washer && at.washers() > 1, "sealing washer", "outside, between shoulder and tag",
      at.washer_mm, true);
  add(tapped && serrated, "serrated washer", "outside", at.serrated_mm, true);
  add(tapped && tag, "earth tag", "outside", at.tag_mm, true);
  add(washer, "sealing washer", "outside", at.washer_mm, known);
  add(known, "wall", tapped ? "tapped" : "clearance hole", at.wall_mm, false);
  add(!tapped && tag, "earth tag", "inside", at.tag_mm, known);
  add(!tapped && serrated, "serrated washer", "", at.serrated_mm, known);
  add(!tapped, "locknut", known ? "" : "in a clearance hole", at.locknut_mm, known);
  return parts;
}

}  // namespace cutback::entry
