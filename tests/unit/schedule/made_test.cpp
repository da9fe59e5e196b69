#include "cutback/schedule/made.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/tally.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using measure::Evidence;
using schedule::Decision;
using schedule::MadeEnd;

namespace {

const std::vector<gland::Gland> k_small{test::small_gland()};

/// The small cable by its datasheet.
job::JobInput by_datasheet() {
  job::JobInput in = test::small_cable();
  in.sheath_od_mm = "13.9";
  in.bedding_mm = "10";
  in.armour_mm = "0.9";
  return in;
}

MadeEnd measured(const char* sheath, const char* bedding, const char* wire) {
  MadeEnd made;
  if (*sheath != '\0') made.sheath_od = sheath;
  if (*bedding != '\0') made.bedding = bedding;
  if (*wire != '\0') made.armour = wire;
  return made;
}

Decision decided(const job::JobInput& in, const MadeEnd* made,
                 const std::vector<gland::Gland>& glands = k_small) {
  const fit::Selector selector(glands, fit::Prefer::price);
  return schedule::decide(in, {.standards = &test::standards(), .glands = &selector}, nullptr, {},
                          made);
}

}  // namespace

TEST_CASE("made: readings turn an end to be measured into one to be cut", "[unit][made]") {
  CHECK(decided(by_datasheet(), nullptr).state == fit::State::order);
  const MadeEnd all = measured("14.9+15.1", "9.9+10.1", "0.9");
  CHECK(decided(by_datasheet(), &all).state == fit::State::fits);
  const MadeEnd two = measured("14.9+15.1", "9.9+10.1", "");
  CHECK(decided(by_datasheet(), &two).state == fit::State::order);  // the wire is the book's
}

TEST_CASE("made: each figure keeps its evidence", "[unit][made]") {
  const MadeEnd one = measured("15.0", "", "");
  const job::Job job = schedule::resolve_made(by_datasheet(), one, test::standards());
  CHECK(job.cable.sheath_od->evidence == Evidence::measured);
  CHECK(job.cable.bedding->evidence == Evidence::datasheet);
  CHECK(job.cable.bedding->expanded_mm == job::k_bedding_allow_mm);
  // A single reading of a sheath is worth no more beside a datasheet than it is alone.
  CHECK(decided(by_datasheet(), &one).verdict == Verdict::marginal_inside);
  job::JobInput guessed = by_datasheet();
  guessed.evidence = Evidence::estimated;
  const MadeEnd sheath = measured("14.9+15.1", "", "");
  const job::Job estimated = schedule::resolve_made(guessed, sheath, test::standards());
  CHECK(estimated.cable.bedding->evidence == Evidence::estimated);
}

TEST_CASE("made: a finished end goes by its gland and its readings", "[unit][made]") {
  MadeEnd made = measured("14.9+15.1", "9.9+10.1", "0.9");
  made.part = "TEST-20";
  made.words = "made with TEST-20";
  std::vector<gland::Gland> two{test::small_gland(), test::small_gland()};
  two[1].part = "CHEAP";
  two[1].price = 1.0;
  const Decision good = decided(by_datasheet(), &made, two);
  CHECK(good.made);
  CHECK(good.gland == two.data());
  CHECK(good.verdict == Verdict::fits);
  CHECK_THAT(good.reason, Contains("made with TEST-20"));
  made.sheath_od = "17.2+17.4";  // its seal ends at 16
  const Decision bad = decided(by_datasheet(), &made, two);
  CHECK(bad.made);
  CHECK(bad.verdict == Verdict::no_fit);
  CHECK_FALSE(bad.proven);
  made.part = "OTHER";
  const Decision unknown = decided(by_datasheet(), &made, two);
  CHECK(unknown.verdict == Verdict::not_known);
  CHECK_THAT(unknown.reason, Contains("no gland of the list"));
}

TEST_CASE("made: readings that cannot be true make the end unusable", "[unit][made]") {
  const MadeEnd made = measured("", "16.0+16.1", "");
  const Decision decision = decided(by_datasheet(), &made);
  REQUIRE_FALSE(decision.usable());
  CHECK_THAT(decision.faults.front().what, Contains("bedding is not smaller"));
}

TEST_CASE("made: what a job file holds of it is worth no more", "[unit][made]") {
  job::JobInput in = by_datasheet();
  schedule::put_readings(measured("14.9+15.1", "", ""), in);
  CHECK(in.sheath_od_mm->text == "14.9+15.1");
  CHECK(in.bedding_mm->text == "10");
  CHECK_FALSE(in.evidence);  // by notation: the sheath is measured, the bedding a datasheet's
  in = by_datasheet();
  schedule::put_readings(measured("15.0", "", ""), in);
  CHECK(in.evidence == Evidence::measured);
  CHECK_FALSE(in.bedding_mm);  // one evidence cannot say both
  in = by_datasheet();
  schedule::put_readings(measured("14.9+15.1", "9.9+10.1", "0.9"), in);
  CHECK(in.evidence == Evidence::measured);
}

TEST_CASE("made: a finished end is not ordered again", "[unit][made]") {
  MadeEnd made = measured("14.9+15.1", "9.9+10.1", "0.9");
  made.part = "TEST-20";
  schedule::Tally tally;
  tally.add(decided(by_datasheet(), &made));
  tally.add(decided(test::small_cable(), nullptr));
  CHECK(tally.ends == 2);
  CHECK(tally.made == 1);
  CHECK(tally.parts.at("").glands.at(k_small.data()).proven == 1);
}
