#include "cutback/area/bundle.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::area;
using Catch::Contains;

namespace {

const tables::Table& factors() {
  static const tables::Standards all = io::builtin_standards();
  return all.table("bundle_factors");
}

gland::Gland barrier(std::optional<int> cores, std::optional<double> bundle,
                     std::optional<double> bore) {
  gland::Gland gland;
  gland.sealing = gland::Sealing::barrier;
  gland.max_cores = cores;
  gland.max_bundle_mm = bundle;
  gland.chamber_bore_mm = bore;
  return gland;
}

}  // namespace

TEST_CASE("check_sealing_bundle: the smaller of bundle and bore is the limit", "[unit][bundle]") {
  const SealingCores cores{4, 5.0, {}};
  const SealingBundle good = check_sealing_bundle(barrier(7, 12.5, 14.0), cores, factors());
  CHECK(good.verdict == Verdict::fits);
  CHECK(*good.bundle_mm == Approx(12.1));
  CHECK(good.limit_mm == 12.5);
  CHECK(check_sealing_bundle(barrier(7, 20.0, 12.0), cores, factors()).verdict == Verdict::no_fit);
  CHECK(check_sealing_bundle(barrier({}, {}, 12.1), cores, factors()).verdict == Verdict::fits);
}

TEST_CASE("check_sealing_bundle: between packed and laid up it is marginal", "[unit][bundle]") {
  const SealingCores seven{7, 2.0, {}};
  const SealingBundle tight = check_sealing_bundle(barrier(7, 6.3, {}), seven, factors());
  CHECK(tight.verdict == Verdict::marginal_outside);
  CHECK_THAT(tight.says, Contains("6.7 mm") && Contains("6.0 mm"));
}

TEST_CASE("check_sealing_bundle: too many cores", "[unit][bundle]") {
  const SealingBundle many = check_sealing_bundle(barrier(3, 50.0, {}), {4, 1.0, {}}, factors());
  CHECK(many.verdict == Verdict::no_fit);
  CHECK(many.says == "4 cores; the gland takes 3 at most");
}

TEST_CASE("check_sealing_bundle: beyond the coefficients only what is certain", "[unit][bundle]") {
  const gland::Gland gland = barrier(61, 20.0, {});
  CHECK(check_sealing_bundle(gland, {37, 2.0, {}}, factors()).verdict == Verdict::not_known);
  CHECK(check_sealing_bundle(gland, {37, 3.0, {}}, factors()).verdict == Verdict::no_fit);
  CHECK(check_sealing_bundle(gland, {37, 2.0, 19.0}, factors()).verdict == Verdict::fits);
  CHECK(check_sealing_bundle(barrier({}, 20.0, {}), {62, 1.0, {}}, factors()).verdict ==
        Verdict::not_known);
}

TEST_CASE("check_sealing_bundle: cores or bore decide and both where both are stated",
          "[unit][bundle]") {
  const SealingCores four{4, 5.0, {}};
  const auto verdict = [&](const gland::Gland& gland) {
    return check_sealing_bundle(gland, four, factors()).verdict;
  };
  CHECK(verdict(barrier(4, {}, {})) == Verdict::fits);
  CHECK(verdict(barrier(3, {}, {})) == Verdict::no_fit);
  CHECK(verdict(barrier({}, {}, 13.0)) == Verdict::fits);
  CHECK(verdict(barrier({}, {}, 11.0)) == Verdict::no_fit);
  CHECK(verdict(barrier(4, {}, 13.0)) == Verdict::fits);
  CHECK(verdict(barrier(4, {}, 11.0)) == Verdict::no_fit);
  CHECK(verdict(barrier(3, {}, 13.0)) == Verdict::no_fit);
  CHECK(verdict(barrier({}, {}, {})) == Verdict::not_known);
  CHECK(check_sealing_bundle(barrier(7, {}, {}), {{}, 5.0, 9.0}, factors()).verdict ==
        Verdict::not_known);
}

TEST_CASE("assumptions_of a gland: sealing and chamber", "[unit][bundle]") {
  const auto facts = [](const gland::Gland& gland) {
    std::string text;
    for (const Assumption& one : gland::assumptions_of(gland)) {
      text += (text.empty() ? "" : "; ") + one.fact + " " + one.taken;
    }
    return text;
  };
  CHECK(facts({}) == "sealing compression");
  CHECK(facts(barrier({}, {}, {})).empty());
  CHECK(facts(barrier(4, {}, {})) == "max_bundle_mm any; chamber_bore_mm any");
  CHECK(facts(barrier({}, {}, 20.0)) ==
        "max_cores what the chamber passes; max_bundle_mm the chamber's bore");
  CHECK(facts(barrier(4, 15.0, 20.0)).empty());
}

TEST_CASE("check_sealing_bundle: missing figures are named", "[unit][bundle]") {
  const SealingBundle silent = check_sealing_bundle(barrier({}, {}, {}), {4, 5.0, 9.0}, factors());
  CHECK(silent.verdict == Verdict::not_known);
  CHECK_THAT(silent.says, Contains("max_cores") && Contains("chamber_bore_mm"));
  CHECK_THAT(check_sealing_bundle(barrier({}, 9.0, {}), {{}, 5.0, {}}, factors()).says,
             Contains("number of cores"));
  CHECK_THAT(check_sealing_bundle(barrier(7, 9.0, {}), {{}, {}, 8.0}, factors()).says,
             Contains("number of cores"));
  CHECK_THAT(check_sealing_bundle(barrier(7, 9.0, {}), {4, {}, 12.0}, factors()).says,
             Contains("diameter of one core"));
}

TEST_CASE("compound_of: volume and gap of a chamber", "[unit][bundle]") {
  const auto compound = compound_of(factors(), {20.0, 30.0, 4, 5.0});
  REQUIRE(compound.has_value());
  CHECK(compound->volume_cm3 == Approx(7.0686).margin(5e-5));
  CHECK(compound->core_ratio == Approx(0.25));
  CHECK(compound->gap_mm == Approx((20.0 - 12.0711) / 3.4142).margin(5e-5));
  CHECK_FALSE(compound_of(factors(), {12.0, 30.0, 4, 5.0}).has_value());
  CHECK_FALSE(compound_of(factors(), {500.0, 30.0, 62, 1.0}).has_value());
}

TEST_CASE("check_sealing_bundle: each answer with its figures", "[unit][bundle]") {
  const auto says = [](const gland::Gland& gland, const SealingCores& cores) {
    const SealingBundle out = check_sealing_bundle(gland, cores, factors());
    return std::string(to_string(out.verdict)) + ": " + out.says;
  };
  // Four cores of 5 mm: 2.42 x 5 = 12.1 as laid up (IEC 60502-1 A.2.2).
  CHECK(says(barrier(7, 12.5, 14.0), {4, 5.0, {}}) ==
        "fits: 4 cores of 5 mm make a bundle of 12.1 mm, within 12.5 mm");
  CHECK(says(barrier(7, 12.0, {}), {4, 5.0, {}}) ==
        "no-fit: 4 cores of 5 mm make a bundle of 12.1 mm, too wide for 12 mm however they lie");
  CHECK(says(barrier(7, {}, {}), {7, 5.0, {}}) == "fits: 7 cores; the gland takes 7");
  CHECK(says(barrier(7, {}, {}), {{}, 5.0, {}}) == "not-known: the number of cores is not given");
  CHECK(says(barrier({}, {}, {}), {4, 5.0, {}}) ==
        "not-known: the gland list states neither max_cores nor the chamber (chamber_bore_mm, "
        "max_bundle_mm)");
  CHECK(says(barrier({}, 12.0, {}), {4, 5.0, 12.0}) ==
        "fits: the cores lie within 12 mm; the gland takes 12 mm");
  CHECK(says(barrier({}, 5.0, {}), {1, 5.0, {}}) ==
        "fits: 1 cores of 5 mm make a bundle of 5.0 mm, within 5 mm");
  CHECK(*bundle_of(factors(), 1, 5.0)->laid_mm == 5.0);
  CHECK(*bundle_of(factors(), 2, 5.0)->laid_mm == Approx(10.0));
}

TEST_CASE("compound_of: what is left of the chamber", "[unit][bundle]") {
  // Two cores of 5 mm in a bore of 15: pi/4 x 30 x (225 - 50) = 4123 mm3; gap (15 - 10) / 3.
  const auto compound = compound_of(factors(), {15.0, 30.0, 2, 5.0});
  REQUIRE(compound);
  CHECK(compound->volume_cm3 == Approx(4.1233).epsilon(1e-4));
  CHECK(compound->core_ratio == Approx(50.0 / 225.0));
  CHECK(compound->gap_mm == Approx(5.0 / 3.0));
}
