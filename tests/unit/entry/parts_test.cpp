#include "cutback/entry/parts.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using entry::Entry;
using entry::EntryPart;
using entry::Hole;

namespace {

/// `name, place thickness`, with a star where it is ordered beside the gland.
std::vector<std::string> parts(const gland::Gland& gland, const Entry& entry,
                               bool through_adaptor = false) {
  std::vector<std::string> list;
  for (const EntryPart& part : entry::parts_in_order(gland, entry, through_adaptor)) {
    std::string text(part.name);
    if (!part.place.empty()) (text += ", ") += part.place;
    if (part.thickness_mm) text += " " + std::to_string(static_cast<int>(*part.thickness_mm));
    list.push_back(text + (part.beside ? " *" : ""));
  }
  return list;
}

gland::Gland gland_with_parts() {
  gland::Gland gland;
  gland.washer_mm = 2.0;
  gland.locknut_mm = 3.0;
  return gland;
}

using List = std::vector<std::string>;

}  // namespace

TEST_CASE("parts_in_order: in a clearance hole the seal is outside, the locknut last",
          "[unit][entry]") {
  Entry entry;
  entry.hole = Hole::clearance;
  entry.tag_mm = 1.0;
  CHECK(parts(gland_with_parts(), entry) ==
        List{"gland, its shoulder outside", "sealing washer, outside 2 *", "wall, clearance hole",
             "earth tag, inside 1 *", "locknut 3 *"});
  entry.wall_mm = 5.0;
  entry.serrated_mm = 4.0;
  entry.locknut_mm = 6.0;
  CHECK(parts({}, entry) == List{"gland, its shoulder outside", "sealing washer, outside *",
                                 "wall, clearance hole 5", "earth tag, inside 1 *",
                                 "serrated washer 4 *", "locknut 6 *"});
}

TEST_CASE("parts_in_order: a tapped hole takes no locknut, and the tag outside", "[unit][entry]") {
  Entry entry;
  entry.hole = Hole::threaded;
  entry.wall_mm = 5.0;
  CHECK(parts({}, entry) == List{"gland, its shoulder outside", "wall, tapped 5"});
  entry.tag_mm = 1.0;
  CHECK(parts(gland_with_parts(), entry) ==
        List{"gland, its shoulder outside", "sealing washer, outside, between shoulder and tag 2 *",
             "earth tag, outside 1 *", "sealing washer, outside 2 *", "wall, tapped 5"});
}

TEST_CASE("parts_in_order: a washer that is stated as none is not listed", "[unit][entry]") {
  Entry entry;
  entry.hole = Hole::clearance;
  entry.washer_mm = 0.0;
  CHECK(parts(gland_with_parts(), entry) ==
        List{"gland, its shoulder outside", "wall, clearance hole", "locknut 3 *"});
}

TEST_CASE("parts_in_order: a hole made to suit is a clearance hole", "[unit][entry]") {
  Entry entry;
  entry.to_suit = true;
  CHECK(parts(gland_with_parts(), entry) == List{"gland, its shoulder outside",
                                                 "sealing washer, outside 2 *",
                                                 "wall, clearance hole", "locknut 3 *"});
}

TEST_CASE("parts_in_order: an adaptor takes the gland's place, and has no parts of the gland",
          "[unit][entry]") {
  Entry entry;
  entry.hole = Hole::clearance;
  CHECK(parts(gland_with_parts(), entry, true) ==
        List{"sealing washer, between gland and adaptor 2", "adaptor, its shoulder outside",
             "sealing washer, outside *", "wall, clearance hole", "locknut *"});
  entry.hole = Hole::threaded;
  CHECK(parts(gland_with_parts(), entry, true) ==
        List{"sealing washer, between gland and adaptor 2", "adaptor, its shoulder outside",
             "wall, tapped"});
}

TEST_CASE("parts_in_order: nothing is ordered for a hole of which the kind is not known",
          "[unit][entry]") {
  CHECK(parts(gland_with_parts(), {}) ==
        List{"sealing washer, outside 2", "locknut, in a clearance hole 3"});
}
