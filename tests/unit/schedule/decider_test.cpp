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

TEST_CASE("decider: a row is decided as if it stood alone, whatever is wrong with rows before it",
          "[unit][schedule]") {
  const Words headings{"tag", "cores", "csa_mm2", "sheath_od_mm", "bedding_mm", "armour_mm"};
  const Words good{"OK", "4", "16", "15.0", "10.0", "0.9"};
  Rows alone(headings);
  const Decision by_itself = alone.decide(good, Side::both);
  REQUIRE(by_itself.sheath_od);
  for (const Words& bad :
       {Words{"B1", "4", "16", "0", "10.0", "0.9"}, Words{"B2", "4", "16", "15.0", "abc", "0.9"},
        Words{"B3", "4", "16", "15.0", "10.0", "0"}}) {
    for (const Words& worse :
         {Words{"W1", "4", "16", "0", "10.0", "0.9"}, Words{"W2", "4", "16", "15.0", "0", "0.9"},
          Words{"W3", "4", "16", "10.0", "15.0", "0.9"}}) {
      Rows rows(headings);
      CHECK_FALSE(Decision(rows.decide(bad, Side::both)).usable());
      CHECK_FALSE(Decision(rows.decide(worse, Side::both)).usable());
      const Decision& behind = rows.decide(good, Side::both);
      REQUIRE(behind.sheath_od);
      CHECK(behind.sheath_od->mm == by_itself.sheath_od->mm);
      CHECK(behind.sheath_od->evidence == by_itself.sheath_od->evidence);
      CHECK(behind.verdict == by_itself.verdict);
      CHECK(behind.reason == by_itself.reason);
    }
  }
}
