#include "cutback/entry/joint_check.hpp"

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

Entry wall(Hole hole, double wall_mm, std::optional<double> washer_mm) {
  Entry entry;
  entry.hole = hole;
  entry.wall_mm = wall_mm;
  entry.washer_mm = washer_mm;
  return entry;
}

/// What the place asks for; of "": nothing.
std::vector<area::IngressDemand> asked(const char* ip) {
  std::vector<area::IngressDemand> demands;
  for (const area::IpCode& code : area::parse_ip_codes(ip).value_or(std::vector<area::IpCode>{})) {
    demands.push_back({.needed = "IP" + area::to_text(code),
                       .source = {},
                       .not_given = {},
                       .rungs = {{code, Verdict::fits, {}}}});
  }
  return demands;
}

fit::Check joint(const Entry& entry, const char* ip, const char* thread = "M20") {
  const auto ingress = asked(ip);
  return check_joint(gland_of(thread), entry, nullptr, {.ingress = ingress}, test::standards());
}

Verdict verdict(const Entry& entry, const char* ip, const char* thread = "M20") {
  return joint(entry, ip, thread).verdict;
}

}  // namespace

TEST_CASE("check_joint: a clearance hole needs its washer", "[unit][joint]") {
  CHECK(joint({}, "").verdict == Verdict::not_known);
  CHECK(joint({}, "").name == fit::CheckName::joint);
  CHECK(verdict(wall(Hole::clearance, 2.0, 1.5), "66/68") == Verdict::fits);
  CHECK(verdict(wall(Hole::clearance, 20.0, 0.0), "54") == Verdict::no_fit);
  CHECK(verdict(wall(Hole::clearance, 20.0, 0.0), "") == Verdict::fits);
  CHECK(verdict(wall(Hole::clearance, 20.0, 0.0), "00") == Verdict::fits);
  const fit::Check unstated = joint(wall(Hole::clearance, 20.0, {}), "54");
  CHECK(unstated.verdict == Verdict::not_known);
  CHECK_THAT(unstated.says, Contains("none is counted") && Contains("washer_mm"));
}

TEST_CASE("check_joint: a tapped wall of 6 mm serves IP54 by itself", "[unit][joint]") {
  // IEC 60079-14 (secondary): above IP54, or in a thinner wall, a washer is needed.
  CHECK(verdict(wall(Hole::threaded, 6.0, 0.0), "54") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 6.0, {}), "54") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 6.0, 0.0), "44") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 5.9, 0.0), "54") == Verdict::no_fit);
  CHECK(verdict(wall(Hole::threaded, 5.9, {}), "54") == Verdict::not_known);
  CHECK(verdict(wall(Hole::threaded, 5.9, 1.0), "54") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 5.9, 0.0), "") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 20.0, 0.0), "66") == Verdict::no_fit);
  CHECK(verdict(wall(Hole::threaded, 20.0, {}), "66") == Verdict::not_known);
  CHECK(verdict(wall(Hole::threaded, 20.0, 1.0), "66") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 20.0, 0.0), "54/65") == Verdict::no_fit);
  Entry unmeasured = wall(Hole::threaded, 0.0, 0.0);
  unmeasured.wall_mm.reset();
  CHECK(verdict(unmeasured, "54") == Verdict::not_known);
}

TEST_CASE("check_joint: no washer seals a taper thread", "[unit][joint]") {
  CHECK(verdict(wall(Hole::threaded, 20.0, 2.0), "54", "NPT 3/4") == Verdict::fits);
  CHECK(verdict(wall(Hole::threaded, 20.0, 2.0), "66", "NPT 3/4") == Verdict::not_known);
  CHECK(verdict(wall(Hole::clearance, 2.0, 2.0), "66", "NPT 3/4") == Verdict::fits);
}

TEST_CASE("check_joint: the hole lets the thread through and is covered", "[unit][joint]") {
  Entry entry = wall(Hole::clearance, 2.0, 1.5);
  const auto hole = [&](double mm, const char* thread) {
    entry.hole_dia_mm = mm;
    return verdict(entry, "", thread);
  };
  CHECK(hole(20.0, "M20") == Verdict::fits);
  CHECK(hole(19.9, "M20") == Verdict::no_fit);
  CHECK(hole(20.5, "M20") == Verdict::fits);
  CHECK(hole(20.6, "M20") == Verdict::not_known);
  CHECK_THAT(joint(entry, "").says, Contains("washer and locknut may not cover"));
  CHECK(hole(22.5, "PG 16") == Verdict::fits);
  CHECK(hole(22.4, "PG 16") == Verdict::no_fit);
  // NEMA machine terminal boxes: 0.859 to 0.906 in for 1/2; the pipe is 0.840 in outside.
  CHECK(hole(0.906 * 25.4, "NPT 1/2") == Verdict::fits);
  CHECK(hole(0.907 * 25.4, "NPT 1/2") == Verdict::not_known);
  CHECK(hole(0.839 * 25.4, "NPT 1/2") == Verdict::no_fit);
  CHECK(hole(0.700 * 25.4, "NPT 3/8") == Verdict::not_known);
  // The diameter is one of a clearance hole: in a tapped one it says nothing.
  entry.hole = Hole::threaded;
  CHECK(hole(19.0, "M20") == Verdict::fits);
}

TEST_CASE("check_joint: restricted breathing needs the washer whatever the IP", "[unit][joint]") {
  const auto verdict_of = [](std::optional<double> washer_mm) {
    return check_joint(gland_of("M20"), wall(Hole::threaded, 12.0, washer_mm), nullptr,
                       {.ingress = {}, .restricted_breathing = true}, test::standards())
        .verdict;
  };
  CHECK(verdict_of(0.0) == Verdict::no_fit);
  CHECK(verdict_of({}) == Verdict::not_known);
  CHECK(verdict_of(1.5) == Verdict::fits);
}

TEST_CASE("check_joint: behind an adaptor both joints are sealed", "[unit][joint]") {
  Entry entry = wall(Hole::threaded, 10.0, 1.0);
  entry.thread = parse_thread("M25");
  const Adaptor adaptor{*parse_thread("M25"), *parse_thread("M20"), {}};
  gland::Gland gland = gland_of("M20");
  const auto at = [&](const char* ip) {
    const auto ingress = asked(ip);
    return check_joint(gland, entry, &adaptor, {.ingress = ingress}, test::standards()).verdict;
  };
  CHECK(at("") == Verdict::fits);
  CHECK(at("66") == Verdict::not_known);
  gland.washer_mm = 1.5;
  CHECK(at("66") == Verdict::fits);
  // The gland's washer does not seal the adaptor in the wall.
  entry.washer_mm.reset();
  CHECK(at("66") == Verdict::not_known);
  entry.hole = Hole::clearance;
  entry.washer_mm = 1.0;
  entry.hole_dia_mm = 20.0;
  CHECK(at("66") == Verdict::no_fit);
  entry.hole_dia_mm = 25.0;
  CHECK(at("66") == Verdict::fits);
}
