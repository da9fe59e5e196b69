#include "cutback/entry/entry_check.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using namespace cutback::entry;
using Catch::Contains;

namespace {

gland::Gland gland_of(const char* thread) {
  gland::Gland gland;
  gland.entry_thread = *parse_thread(thread);
  return gland;
}

Entry hole_of(Hole hole, const char* thread) {
  Entry entry;
  entry.hole = hole;
  entry.thread = parse_thread(thread);
  return entry;
}

/// An armoured cable with this bedding, known to 0.1 mm.
cable::Cable bedding_of(double bedding_mm) {
  cable::Cable cable;
  cable.bedding = measure::from_datasheet(bedding_mm, 0.1);
  return cable;
}

Verdict through(const Passage& passage, const cable::Cable& cable, bool barrier = false,
                std::optional<double> core_mm = {}) {
  const fit::Check check = check_passage(passage, cable, barrier, core_mm, test::standards());
  CHECK(check.name == fit::CheckName::entry);
  return check.verdict;
}

Passage own_passage(const char* thread) {
  return passage(gland_of(thread), {}, nullptr, test::standards());
}

}  // namespace

TEST_CASE("check_entry: the thread of a tapped hole, the size of a clearance hole",
          "[unit][entry]") {
  CHECK(check_entry(gland_of("M20"), hole_of(Hole::threaded, "M20")).verdict == Verdict::fits);
  CHECK(check_entry(gland_of("M20x1"), hole_of(Hole::threaded, "M20")).verdict == Verdict::no_fit);
  CHECK(check_entry(gland_of("M20x1"), hole_of(Hole::clearance, "M20")).verdict == Verdict::fits);
  CHECK(check_entry(gland_of("M25"), hole_of(Hole::clearance, "M20")).verdict == Verdict::no_fit);
}

TEST_CASE("check_entry: a thread that nobody states, and a hole made to suit", "[unit][entry]") {
  const fit::Check unstated = check_entry(gland_of("M20"), {});
  CHECK(unstated.verdict == Verdict::not_known);
  CHECK_THAT(unstated.says, Contains("--entry"));
  Entry entry;
  entry.to_suit = true;
  const fit::Check made = check_entry(gland_of("NPT 3/4"), entry);
  CHECK(made.verdict == Verdict::fits);
  CHECK_THAT(made.says, Contains("will be made for the gland's thread NPT 3/4"));
}

TEST_CASE("check_entry: one adaptor, whichever way round it is written", "[unit][entry]") {
  Entry entry = hole_of(Hole::threaded, "M25");
  for (const char* const text : {"M25", "M20"}) {
    const bool first = std::string(text) == "M25";
    entry.adaptors = {{*parse_thread(text), *parse_thread(first ? "M20" : "M25"), {}}};
    CHECK(check_entry(gland_of("M20"), entry).verdict == Verdict::fits);
    CHECK(adaptor_between(entry, *parse_thread("M20")) == &entry.adaptors.front());
    CHECK(adaptor_between(entry, *parse_thread("M25")) == nullptr);
  }
  // Two adaptors in a row are not used.
  entry.adaptors = {{*parse_thread("M25"), *parse_thread("M32"), {}},
                    {*parse_thread("M32"), *parse_thread("M20"), {}}};
  CHECK(check_entry(gland_of("M20"), entry).verdict == Verdict::no_fit);
}

TEST_CASE("passage: the root of the gland's own thread", "[unit][entry]") {
  // d3 of M20 x 1.5 is 18.160 mm (ISO 68-1).
  const Passage m20 = own_passage("M20");
  CHECK(*m20.range.high_mm == Approx(18.160).margin(0.0006));
  CHECK(through(m20, bedding_of(18.0)) == Verdict::fits);
  CHECK(through(m20, bedding_of(18.1)) == Verdict::marginal_inside);
  CHECK(through(m20, bedding_of(18.2)) == Verdict::marginal_outside);
  CHECK(through(m20, bedding_of(18.3)) == Verdict::no_fit);
  CHECK(through(m20, {}) == Verdict::not_known);
  CHECK(through(own_passage("PG 16"), bedding_of(21.0)) == Verdict::fits);
  CHECK(through(own_passage("PG 16"), bedding_of(21.3)) == Verdict::no_fit);
}

TEST_CASE("passage: equal to the limit passes", "[unit][entry]") {
  const Passage m20 = own_passage("M20");
  CHECK(through(m20, bedding_of(*m20.range.high_mm - 0.1)) == Verdict::fits);
  CHECK(through(m20, bedding_of(*m20.range.high_mm - 0.1 + 1e-5)) != Verdict::fits);
}

TEST_CASE("passage: the sheath of an unarmoured cable, not its bedding", "[unit][entry]") {
  cable::Cable cable;
  cable.armour = cable::ArmourKind::none;
  cable.sheath_od = measure::from_datasheet(17.0, 0.5);
  CHECK(through(own_passage("M20"), cable) == Verdict::fits);
  CHECK(through(own_passage("M16"), cable) == Verdict::no_fit);
  CHECK(passer_of(cable::ArmourKind::none, false) == Passer::sheath);
  CHECK(passer_of(cable::ArmourKind::wire, false) == Passer::bedding);
  CHECK(passer_of(cable::ArmourKind::wire, true) == Passer::cores);
}

TEST_CASE("passage: figures from memory refuse, but pass nothing", "[unit][entry]") {
  CHECK(through(own_passage("NPT 3"), bedding_of(20.0)) == Verdict::fits);
  CHECK(through(own_passage("NPT 5"), bedding_of(20.0)) == Verdict::not_known);
  CHECK(through(own_passage("NPT 1/8"), bedding_of(20.0)) == Verdict::no_fit);
}

TEST_CASE("passage: the smallest bore of an adaptor", "[unit][entry]") {
  Entry entry = hole_of(Hole::threaded, "M16");
  const Adaptor adaptor{*parse_thread("M16"), *parse_thread("M20"), {}};
  const auto at = [&] { return passage(gland_of("M20"), entry, &adaptor, test::standards()); };
  entry.adaptor_bore_mm = 12.0;
  CHECK(at().adaptor_decides);
  CHECK(through(at(), bedding_of(11.9)) == Verdict::fits);
  CHECK(through(at(), bedding_of(12.2)) == Verdict::no_fit);
  // Not given: the root of its M16 thread, 14.16 mm, can only refuse.
  entry.adaptor_bore_mm.reset();
  const fit::Check unknown = check_passage(at(), bedding_of(11.9), false, {}, test::standards());
  CHECK(unknown.verdict == Verdict::not_known);
  CHECK_THAT(unknown.says, Contains("adaptor_bore_mm"));
  CHECK(through(at(), bedding_of(14.4)) == Verdict::no_fit);
}

TEST_CASE("passage: where only the cores pass, their bundle decides", "[unit][entry]") {
  const Passage m20 = own_passage("M20");
  cable::Cable cable = bedding_of(19.0);
  CHECK(through(m20, cable, false) == Verdict::no_fit);
  CHECK(through(m20, cable, true) == Verdict::not_known);
  cable.cores = 4;
  // 4 x 7 mm: 2.42 x 7 = 16.9 mm laid up (IEC 60502-1 Annex A); 4 x 8 mm: 19.3 mm however they lie.
  CHECK(through(m20, cable, true, 7.0) == Verdict::marginal_inside);
  CHECK(through(m20, cable, true, 8.0) == Verdict::no_fit);
  // Cores within a bedding that passes pass.
  cable.bedding = measure::from_datasheet(17.0, 0.1);
  CHECK(through(m20, cable, true, 8.0) == Verdict::fits);
}
