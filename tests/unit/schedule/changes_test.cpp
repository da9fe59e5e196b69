#include "cutback/schedule/changes.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using schedule::EndChange;
using schedule::EndRecord;

namespace {

EndRecord end(const std::string& tag, const std::string& od, const std::string& part,
              std::size_t line = 2) {
  EndRecord record;
  record.tag = tag;
  record.end = "from";
  record.line = line;
  if (!od.empty()) record.values.emplace_back("sheath_od_mm", od);
  record.part = part;
  record.verdict = part.empty() ? "no-fit" : "fits";
  return record;
}

}  // namespace

TEST_CASE("changes: added, removed and changed", "[unit][schedule]") {
  const std::vector<EndRecord> before{end("A", "15", "P1"), end("B", "15", "P1"),
                                      end("C", "15", "P1"), end("D", "", "P1")};
  const std::vector<EndRecord> after{end("E", "15", "P1"), end("C", "16", "P1"),
                                     end("A", "15", "P1"), end("D", "20", "P2")};
  const auto changes = schedule::changes_between(before, after);
  REQUIRE(changes.size() == 4);
  CHECK(changes[0].kind == EndChange::Kind::added);
  CHECK(changes[0].after->tag == "E");
  CHECK(changes[1].what == "sheath_od_mm 15 -> 16");
  CHECK_FALSE(changes[1].gland_changed());
  CHECK(changes[2].what == "sheath_od_mm none -> 20");
  CHECK(changes[2].gland_changed());
  CHECK(changes[3].kind == EndChange::Kind::removed);
  CHECK(changes[3].before->tag == "B");
}

TEST_CASE("changes: a gland may change without its end", "[unit][schedule]") {
  const std::vector<EndRecord> before{end("A", "15", "P1")};
  const std::vector<EndRecord> after{end("A", "15", "")};
  const auto changes = schedule::changes_between(before, after);
  REQUIRE(changes.size() == 1);
  CHECK(changes[0].what == "nothing of its own");
  CHECK(changes[0].gland_changed());
}

TEST_CASE("changes: a tag that stands twice is compared in its order", "[unit][schedule]") {
  const std::vector<EndRecord> before{end("A", "15", "P1", 2), end("A", "20", "P2", 3)};
  const std::vector<EndRecord> after{end("A", "15", "P1", 5), end("A", "20", "P2", 7),
                                     end("A", "20", "P2", 8)};
  const auto changes = schedule::changes_between(before, after);
  REQUIRE(changes.size() == 1);
  CHECK(changes[0].kind == EndChange::Kind::added);
  CHECK(changes[0].after->line == 8);
  CHECK(schedule::changes_between(after, before).front().kind == EndChange::Kind::removed);
}

TEST_CASE("compare_takeoff: quantities side by side", "[unit][schedule]") {
  const auto line = [](const std::string& part, std::uint64_t quantity) {
    schedule::TakeoffLine made;
    made.part = part;
    made.quantity = quantity;
    return made;
  };
  schedule::Takeoff now;
  now.lines = {line("P1", 4), line("P2", 1)};
  schedule::Takeoff before;
  before.lines = {line("P1", 3), line("P3", 7)};
  schedule::compare_takeoff(now, before);
  REQUIRE(now.lines.size() == 3);
  CHECK(now.lines[0].old_quantity == 3U);
  CHECK(now.lines[1].old_quantity == 0U);
  CHECK(now.lines[2].part == "P3");
  CHECK(now.lines[2].quantity == 0);
  CHECK(now.lines[2].old_quantity == 7U);
}
