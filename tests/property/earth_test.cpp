#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/earth/armour_earth.hpp"
#include "cutback/io/standards.hpp"
#include "support/any.hpp"

using namespace cutback;
using namespace cutback::earth;

namespace {

double in_hundredths(int low, int high) { return *rc::gen::inRange(low, high) / 100.0; }

}  // namespace

TEST_CASE("earth: a larger fault or a longer time never needs less", "[property][earth]") {
  CHECK(rc::check("required area grows", [] {
    const double current = in_hundredths(1, 5000);
    const double time = in_hundredths(1, 500);
    const double k = in_hundredths(2000, 20000);
    const double more = 1.0 + in_hundredths(0, 300);
    const double needed = adiabatic_area_mm2(current * current * time, k);
    RC_ASSERT(adiabatic_area_mm2(current * current * more * more * time, k) >= needed);
    RC_ASSERT(adiabatic_area_mm2(current * current * time * more, k) >= needed);
  }));
}

TEST_CASE("earth: what is needed withstands exactly the fault", "[property][earth]") {
  CHECK(rc::check("round trip", [] {
    const double current_ka = in_hundredths(1, 5000);
    const double time = in_hundredths(1, 500);
    const double k = in_hundredths(2000, 20000);
    const double needed = adiabatic_area_mm2(current_ka * current_ka * 1e6 * time, k);
    RC_ASSERT(std::abs(withstand_ka(needed, k, time) / current_ka - 1.0) < 1e-9);
    RC_ASSERT(std::abs(longest_time_s(needed, k, current_ka) / time - 1.0) < 1e-9);
  }));
}

TEST_CASE("earth: a larger or longer fault never improves a verdict", "[property][earth]") {
  const tables::Standards standards = io::builtin_standards();
  CHECK(rc::check("armour and gland", [&] {
    EarthInput in;
    in.armour = ArmourArea{in_hundredths(500, 30000), "given", in_hundredths(0, 20)};
    in.insulation = Insulation::xlpe;
    in.gland_ka = in_hundredths(10, 4000);
    in.fault = {in_hundredths(10, 4000), in_hundredths(10, 800), {}};
    const EarthResult first = check_armour_earth(in, standards);
    in.fault.current_ka = *in.fault.current_ka * (1.0 + in_hundredths(0, 200));
    in.fault.time_s = *in.fault.time_s * (1.0 + in_hundredths(0, 200));
    const EarthResult second = check_armour_earth(in, standards);
    RC_ASSERT(second.gland.verdict <= first.gland.verdict);
    RC_ASSERT(second.adiabatic.verdict <= first.adiabatic.verdict);
  }));
}

TEST_CASE("earth: a hotter end or a cooler start gives a larger k", "[property][earth]") {
  CHECK(rc::check("k", [] {
    const Metal steel{202.0, 3.8e-3, 138e-6};
    const double start = in_hundredths(0, 9000);
    const double end = start + in_hundredths(1, 20000);
    const double more = in_hundredths(1, 5000);
    const double k = k_from_constants(steel, start, end);
    RC_ASSERT(k_from_constants(steel, start, end + more) > k);
    RC_ASSERT(k_from_constants(steel, start - more, end) > k);
  }));
}

// Wire and bedding are left out: without them the end has an estimate, which passes no gland. So
// are the caliper's error and the kind of armour, for which the usual one is taken and named, and
// an adaptor, without which the entry itself fails. A device only says that a stated time cannot be
// its own: without it the time stands as whoever states it has it.
TEST_CASE("earth: a fact taken away earns neither path nor fault", "[property][earth]") {
  int refused = 0;
  CHECK(rc::check("one field taken away", [&] {
    const job::JobInput in = test::any_end(2);
    const gland::Gland gland = test::any_gland(4);
    const auto before = test::checked(in, gland);
    for (const job::Field& field : job::fields()) {
      const job::Feeds::Into into = field.feeds.into;
      if (into == job::Feeds::Into::figure || into == job::Feeds::Into::figures) continue;
      if (field.key == "armour" || field.key == "adaptor" || field.key == "device") continue;
      job::JobInput less = in;
      job::take_away(less, field);
      if (!test::can_be(less)) continue;
      const auto after = test::checked(less, gland);
      for (const fit::CheckName name : {fit::CheckName::earth, fit::CheckName::fault}) {
        const fit::Check* const was = before.find(name);
        const fit::Check* const is = after.find(name);
        if (was == nullptr || was->verdict == Verdict::fits || is == nullptr) continue;
        ++refused;
        if (is->verdict == Verdict::fits) {
          RC_FAIL(std::string(field.key) + " taken away makes a pass of: " + was->says);
        }
      }
    }
  }));
  CHECK(refused > 100);
}
