#include "cutback/gland/coverage.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using namespace cutback::gland;

namespace {

Gland made(const char* part, double low_mm, double high_mm, const char* thread = "M20",
           Sealing sealing = Sealing::compression,
           cable::ArmourKind armour = cable::ArmourKind::wire) {
  Gland gland;
  gland.part = part;
  gland.outer = {low_mm, high_mm};
  gland.entry_thread = entry::parse_thread(thread).value();
  gland.sealing = sealing;
  gland.armour = armour;
  return gland;
}

}  // namespace

TEST_CASE("coverage: a gap is named and ranges that touch leave none", "[unit][coverage]") {
  const std::vector<Gland> glands{made("c", 20, 25), made("a", 8, 13), made("b", 13, 16),
                                  made("d", 9, 10)};
  const Coverage result = coverage(glands);
  REQUIRE(result.groups.size() == 1);
  const Group& group = result.groups[0];
  REQUIRE(group.covered.size() == 2);
  CHECK(group.covered[0].low_mm == 8.0);
  CHECK(group.covered[0].high_mm == 16.0);
  CHECK(group.covered[1].low_mm == 20.0);
  REQUIRE(group.gaps.size() == 1);
  CHECK(group.gaps[0].low_mm == 16.0);
  CHECK(group.gaps[0].high_mm == 20.0);
  std::string order;
  for (const Gland* gland : group.glands) order += gland->part;
  CHECK(order == "adbc");
}

TEST_CASE("coverage: a tenth of a millimetre between two ranges is a gap", "[unit][coverage]") {
  const std::vector<Gland> glands{made("a", 8, 13), made("b", 13.1, 16)};
  CHECK(coverage(glands).groups.at(0).gaps.size() == 1);
}

TEST_CASE("coverage: groups by armour and sealing; either stands in both", "[unit][coverage]") {
  const std::vector<Gland> glands{
      made("n", 3, 8, "M16", Sealing::compression, cable::ArmourKind::none),
      made("e", 8, 13, "M20", Sealing::either), made("b", 13, 16, "M20", Sealing::barrier),
      made("t", 9, 12, "M20", Sealing::compression, cable::ArmourKind::tape)};
  const auto groups = coverage(glands).groups;
  REQUIRE(groups.size() == 4);
  CHECK(groups[0].armour == cable::ArmourKind::wire);
  CHECK(groups[0].sealing == Sealing::compression);
  CHECK(groups[0].glands.size() == 1);
  CHECK(groups[1].sealing == Sealing::barrier);
  CHECK(groups[1].glands.size() == 2);
  CHECK(groups[2].armour == cable::ArmourKind::tape);
  CHECK(groups[3].armour == cable::ArmourKind::none);
}

TEST_CASE("coverage: entries from small to large by kind of thread", "[unit][coverage]") {
  const std::vector<Gland> glands{made("a", 8, 13, "NPT 1/2"), made("b", 8, 13, "M25"),
                                  made("c", 8, 13, "M20"), made("d", 12, 18, "M25x1.5"),
                                  made("e", 8, 13, "PG 11")};
  const auto entries = coverage(glands).entries;
  REQUIRE(entries.size() == 4);
  CHECK(to_text(entries[0].thread) == "M20");
  CHECK(to_text(entries[1].thread) == "M25");
  CHECK(entries[1].glands == 2);
  CHECK(entries[1].covered.at(0).high_mm == 18.0);
  CHECK(to_text(entries[2].thread) == "NPT 1/2");
  CHECK(to_text(entries[3].thread) == "PG 11");
}

TEST_CASE("coverage: blanks count only where the column applies", "[unit][coverage]") {
  std::vector<Gland> glands{made("a", 8, 13), made("b", 8, 13),
                            made("n", 8, 13, "M20", Sealing::compression, cable::ArmourKind::none)};
  glands[0].armour_stop_mm = 20.0;
  bool seen = false;
  for (const NotStated& item : coverage(glands).not_stated) {
    CHECK(item.column != "max_cores");
    if (item.column != "armour_stop_mm") continue;
    seen = true;
    CHECK(item.blank == 1);
    CHECK(item.applies == 2);
  }
  CHECK(seen);
  CHECK(coverage({}).groups.empty());
}
