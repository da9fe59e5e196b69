#include "cutback/schedule/decider.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using schedule::Decision;
using schedule::Side;

namespace {

using Words = std::vector<std::string_view>;

/// Decides rows one after the other, as they would stand in one schedule.
class Rows {
 public:
  explicit Rows(const Words& headings)
      : layout_(schedule::make_layout(headings, {}, "t.csv")),
        decider_(layout_, {.standards = &test::standards(), .glands = &selector_}) {}

  const Decision& decide(const Words& cells, Side side) {
    return decider_.decide({cells}, side).decision;
  }

 private:
  std::vector<gland::Gland> glands_{test::small_gland()};
  fit::Selector selector_{glands_, fit::Prefer::price};
  schedule::Layout layout_;
  schedule::Decider decider_;
};

}  // namespace

TEST_CASE("decider: a row with nothing but a tag is not known", "[unit][schedule]") {
  Rows rows({"tag", "sheath_od_mm", "bedding_mm", "armour_mm"});
  for (const Words& cells : {Words{"C1"}, Words{"C1", "", "", ""}}) {
    const Decision& decision = rows.decide(cells, Side::both);
    CHECK(decision.usable());
    CHECK(decision.verdict == Verdict::not_known);
    CHECK(decision.state == fit::State::not_yet);
    CHECK(decision.reason == "nothing tells the sheath diameter");
    CHECK(decision.gland == nullptr);
    CHECK_FALSE(decision.proven);
  }
}

TEST_CASE("decider: what is wrong is said of the column in which it stands", "[unit][schedule]") {
  Rows rows({"tag", "sheath_od_mm", "from_protection", "protection"});
  const Decision of_end = rows.decide({"C1", "15", "x", ""}, Side::from);
  const Decision of_row = rows.decide({"C1", "15", "", "x"}, Side::from);
  REQUIRE(of_end.faults.size() == 1);
  REQUIRE(of_row.faults.size() == 1);
  CHECK(of_end.faults.front().where == "column from_protection");
  CHECK(of_row.faults.front().where == "column protection");
}
