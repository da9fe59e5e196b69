#include <catch2/catch.hpp>

#include "cutback/print/schedule.hpp"

using namespace cutback;
using Catch::Contains;

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
