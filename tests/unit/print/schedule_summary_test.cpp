#include <catch2/catch.hpp>

#include "cutback/print/schedule.hpp"

using namespace cutback;
using Catch::Contains;
using Catch::StartsWith;

TEST_CASE("schedule_summary: a share is all or none only where it is", "[unit][print]") {
  schedule::Tally tally;
  tally.rows = tally.ends = 1'000'000;
  tally.by_verdict[static_cast<std::size_t>(Verdict::fits)] = 999'950;
  tally.by_verdict[static_cast<std::size_t>(Verdict::no_fit)] = 50;
  const std::string text = print::schedule_summary(tally, "s.csv", 3, "g.csv");
  CHECK_THAT(text, Contains("Fits              999950 (99.9 %)"));
  CHECK_THAT(text, Contains("No gland fits     50 (0.1 %)"));
  CHECK_THAT(text, Contains("Not known         0 (0.0 %)"));
  tally.by_verdict[static_cast<std::size_t>(Verdict::fits)] = 1'000'000;
  CHECK_THAT(print::schedule_summary(tally, "s.csv", 3, "g.csv"), Contains("1000000 (100.0 %)"));
}

TEST_CASE("schedule_summary: that nothing tells how many ends a row has comes first",
          "[unit][print]") {
  schedule::Tally tally;
  tally.rows = tally.ends = 2;
  CHECK_THAT(print::schedule_summary(tally, "s.csv", 3, "g.csv"),
             StartsWith("Schedule          s.csv: 2 cables or rows, 2 ends\nGlands"));
  tally.one_end_rows = tally.ends_not_told = 2;
  CHECK_THAT(
      print::schedule_summary(tally, "s.csv", 3, "g.csv"),
      StartsWith("Schedule          s.csv: 2 rows of one end each, 2 ends\nEnds              "
                 "one per row"));
  tally.may_be_cables = 2;
  CHECK_THAT(
      print::schedule_summary(tally, "s.csv", 3, "g.csv"),
      StartsWith("Schedule          s.csv: 2 rows of one end each, 2 ends\nEnds              "
                 "NOT KNOWN"));
}

TEST_CASE("changes_summary: what is ordered more or less is named with its thread",
          "[unit][print]") {
  schedule::Takeoff takeoff;
  for (const char* thread : {"M20", "M25"}) {
    schedule::TakeoffLine& line = takeoff.lines.emplace_back();
    line.part = "locknut";
    line.description = thread;
    line.quantity = 1;
    line.old_quantity = 3;
  }
  CHECK_THAT(print::changes_summary("old.csv", {}, takeoff),
             Contains("locknut M20 -2, locknut M25 -2"));
}
