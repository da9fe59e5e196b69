// The checks `earth` and `fault` of one gland at one end.
#include <catch2/catch.hpp>

#include "cutback/entry/parts.hpp"
#include "cutback/fit/select.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using fit::CheckName;

namespace {

/// A three-core cable in a clearance hole of a steel wall.
job::JobInput walled() {
  job::JobInput in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 2.5;
  in.insulation = cable::Insulation::xlpe;
  in.material = "steel";
  return in;
}

/// The same with a fault that gland and armour carry: 18.7 mm2 at the least, 10.87 mm2 needed.
job::JobInput faulted() {
  job::JobInput in = walled();
  in.current_ka = 0.5;
  in.time_s = 1.0;
  return in;
}

gland::Gland brass() {
  gland::Gland gland = test::small_gland();
  gland.material = "brass";
  gland.fault_ka = 4.0;
  return gland;
}

fit::Check fault(const job::JobInput& in, const gland::Gland& gland = brass()) {
  const auto fit = test::checked(in, gland);
  const fit::Check* const check = fit.find(CheckName::fault);
  REQUIRE(check != nullptr);
  return *check;
}

}  // namespace

TEST_CASE("earth: asked where the wall's material is given", "[unit][fit]") {
  job::JobInput in = walled();
  const auto fit = test::checked(in, brass());
  CHECK(fit.find(CheckName::earth)->verdict == Verdict::fits);
  CHECK(fit.verdict == Verdict::fits);
  in.material.reset();
  CHECK(test::checked(in, brass()).find(CheckName::earth) == nullptr);
  CHECK(test::checked(in, brass()).find(CheckName::fault) == nullptr);
}

TEST_CASE("earth: an adaptor at hand may be needed where the entry is not known", "[unit][fit]") {
  job::JobInput in = walled();
  in.entry.reset();
  in.adaptor = "M25:M20";
  const auto verdict = [&] { return test::checked(in, brass()).find(CheckName::earth)->verdict; };
  CHECK(verdict() == Verdict::not_known);
  in.adaptor_material = "brass";
  CHECK(verdict() == Verdict::fits);
  in.adaptor_material.reset();
  in.entry = "M20";  // the gland's own thread
  CHECK(verdict() == Verdict::fits);
}

TEST_CASE("earth: a single core asks for it unless it is on d.c.", "[unit][fit]") {
  job::JobInput in = walled();
  in.cores = 1;
  in.csa_mm2.reset();
  in.armour_material = cable::ArmourMaterial::aluminium;
  in.material.reset();
  const auto asked = [&] { return test::checked(in, brass()).find(CheckName::earth) != nullptr; };
  CHECK(asked());
  CHECK_THAT(test::checked(in, brass()).find(CheckName::earth)->says, Contains("wall"));
  in.supply = cable::Supply::ac;
  CHECK(asked());
  in.supply = cable::Supply::dc;
  CHECK_FALSE(asked());
  in.supply = cable::Supply::ac;
  in.material = "aluminium";
  CHECK(test::checked(in, brass()).find(CheckName::earth)->verdict == Verdict::fits);
}

TEST_CASE("earth: an earth tag counts in the thread and stands among the parts", "[unit][fit]") {
  job::JobInput in = walled();
  in.material = "polymer";
  auto fit = test::checked(in, brass());
  CHECK(fit.verdict == Verdict::not_known);
  CHECK(fit.find(CheckName::earth)->verdict == Verdict::not_known);
  const double without_mm = *fit.thread->needed_mm;
  in.tag_mm = 1.5;
  fit = test::checked(in, brass());
  CHECK(fit.find(CheckName::earth)->verdict == Verdict::fits);
  CHECK_THAT(fit.find(CheckName::earth)->says, Contains("earth tag of 1.5 mm"));
  CHECK(*fit.thread->needed_mm == Approx(without_mm + 1.5));
  bool listed = false;
  for (const auto& part : entry::parts_in_order(brass(), test::resolved(in).entry, false)) {
    if (part.name == "earth tag") listed = part.thickness_mm == 1.5;
  }
  CHECK(listed);
}

TEST_CASE("fault: armour and gland must both carry it", "[unit][fit]") {
  CHECK(fault(faulted()).verdict == Verdict::fits);
  gland::Gland weak = brass();
  weak.fault_ka = 0.4;
  CHECK(fault(faulted(), weak).verdict == Verdict::no_fit);
  weak.fault_ka.reset();
  CHECK(fault(faulted(), weak).verdict == Verdict::not_known);
  job::JobInput in = faulted();
  in.current_ka = 4.0;  // 87 mm2
  const gland::Gland gland = brass();
  const auto fit = test::checked(in, gland);
  CHECK(fit.verdict == Verdict::no_fit);
  CHECK(fit.armour_too_thin);
  CHECK_THAT(fit.find(CheckName::fault)->says, Contains("too thin for the earth fault"));
}

// Between what 18.7 mm2 and 20.4 mm2 of steel stand for 1 s with k 46: 860 A and 937 A.
TEST_CASE("fault: the armour counts at its least", "[unit][fit]") {
  job::JobInput in = faulted();
  in.current_ka = 0.80;
  CHECK(fault(in).verdict == Verdict::fits);
  in.current_ka = 0.90;
  CHECK(fault(in).verdict == Verdict::marginal_inside);
  in.current_ka = 0.96;
  CHECK(fault(in).verdict == Verdict::marginal_outside);
}

TEST_CASE("fault: any fact of it asks for all of it", "[unit][fit]") {
  job::JobInput in = faulted();
  in.time_s.reset();
  CHECK(fault(in).verdict == Verdict::not_known);
  CHECK_THAT(fault(in).says, Contains("time"));
  in = faulted();
  in.current_ka.reset();
  CHECK(fault(in).verdict == Verdict::not_known);
  in.loop_ohm = 0.46;
  CHECK(fault(in).verdict == Verdict::not_known);
  CHECK_THAT(fault(in).says, Contains("voltage to earth"));
  in.u0_v = 230.0;
  CHECK(fault(in).verdict == Verdict::fits);
  CHECK(*fault(in).value == Approx(0.5));
  in.loop_ohm = 0.05;
  CHECK(fault(in).verdict == Verdict::no_fit);
  in = walled();
  in.u0_v = 230.0;  // for the insulation test alone
  CHECK(test::checked(in, brass()).find(CheckName::fault) == nullptr);
}

TEST_CASE("fault: a current and a loop are one too many", "[unit][fit]") {
  job::JobInput in = faulted();
  in.u0_v = 230.0;
  CHECK_NOTHROW(test::resolved(in));
  in.loop_ohm = 0.46;
  CHECK_THROWS_WITH(test::resolved(in), Contains("given twice"));
}

TEST_CASE("fault: without wire, bedding and construction the armour is not known", "[unit][fit]") {
  job::JobInput in = faulted();
  in.cores = {};
  CHECK(fault(in).verdict == Verdict::fits);
  in.armour_mm.reset();
  CHECK(fault(in).verdict == Verdict::not_known);
  CHECK_THAT(fault(in).says, Contains("area of the armour is not known"));
}

TEST_CASE("fault: a single core's armour must be named", "[unit][fit]") {
  job::JobInput in = faulted();
  in.cores = 1;
  in.csa_mm2.reset();
  CHECK(fault(in).verdict == Verdict::not_known);
  in.armour_material = cable::ArmourMaterial::aluminium;
  CHECK(fault(in).verdict == Verdict::fits);
  in.current_ka = 1.2;  // more than steel of that area stands
  CHECK(fault(in).verdict == Verdict::fits);
  in.armour_material = cable::ArmourMaterial::steel;
  CHECK(fault(in).verdict == Verdict::no_fit);
}

TEST_CASE("fault: an insulation that is not given never helps", "[unit][fit]") {
  job::JobInput in = faulted();
  in.insulation = cable::Insulation::pvc;
  in.current_ka = 0.92;
  CHECK(fault(in).verdict == Verdict::fits);  // k 51
  in.insulation.reset();
  CHECK(fault(in).verdict == Verdict::marginal_inside);
  in.insulation = cable::Insulation::xlpe;
  CHECK(fault(in).verdict == Verdict::marginal_inside);
}

TEST_CASE("fault: no gland and no adaptor is proposed where the armour is too thin",
          "[unit][fit]") {
  job::JobInput in = faulted();
  in.current_ka = 4.0;
  const auto job = test::resolved(in);
  const std::vector<gland::Gland> glands{brass()};
  const auto ranked = fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::price);
  CHECK_THAT(fit::advise(job, ranked).order_says, Contains("no gland mends the armour"));
  const auto none =
      fit::advise(job, fit::fit_all(fit::ask(test::resolved(faulted()), test::standards()), glands,
                                    fit::Prefer::price));
  CHECK_THAT(none.order_says, !Contains("mends"));
}
