#include "cutback/fit/fit.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "cutback/io/job_file.hpp"
#include "cutback/strip/cut_plan.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using gland::Gland;

namespace {

/// A length in tenths of a millimetre.
double tenths(int low, int high) { return *rc::gen::inRange(low, high) / 10.0; }

/// A cable that can be: bedding, wire and sheath add up.
job::JobInput any_cable(double scale) {
  const double bedding = tenths(50, 500);
  const double wire = *rc::gen::element(0.9, 1.25, 1.6, 2.0, 2.5, 3.15);
  const double od = bedding + 2.0 * (wire + tenths(10, 40));
  const double oval = tenths(0, 5);
  job::JobInput in;
  in.sheath_od_mm = fmt::format("{}+{}", (od - oval) * scale, (od + oval) * scale);
  in.bedding_mm = fmt::format("{}+{}", bedding * scale, bedding * scale);
  in.armour_mm = fmt::format("{}", wire * scale);
  in.step_mm = 0.05 * scale;
  in.mpe_mm = 0.05 * scale;
  return in;
}

Gland any_gland(double scale, std::size_t number) {
  Gland gland = test::small_gland();
  gland.part = "G" + std::to_string(number);
  const double outer = tenths(80, 600);
  gland.outer = {outer * scale, (outer + tenths(10, 150)) * scale};
  const double inner = tenths(50, 500);
  gland.inner = measure::Range{inner * scale, (inner + tenths(10, 150)) * scale};
  gland.bore_mm.reset();
  gland.armour_clamp = {0.5 * scale, 4.0 * scale};
  gland.price = *rc::gen::inRange(1, 5);
  return gland;
}

std::map<std::string, Verdict> verdicts(const job::Job& job, const std::vector<Gland>& glands) {
  std::map<std::string, Verdict> result;
  for (const auto& fit :
       fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::price)) {
    result[fit.gland->part] = fit.verdict;
  }
  return result;
}

}  // namespace

TEST_CASE("fit: adding a gland never changes another's verdict", "[property][fit]") {
  CHECK(rc::check("same verdicts", [] {
    const job::Job job = test::resolved(any_cable(1.0));
    std::vector<Gland> glands;
    for (std::size_t i = 0; i < 6; ++i) glands.push_back(any_gland(1.0, i));
    const auto before = verdicts(job, glands);
    glands.push_back(any_gland(1.0, 6));
    const auto after = verdicts(job, glands);
    for (const auto& [part, verdict] : before) RC_ASSERT(after.at(part) == verdict);
  }));
}

TEST_CASE("fit: the order is a total one and does not depend on the order of the list",
          "[property][fit]") {
  CHECK(rc::check("same order", [] {
    const job::Job job = test::resolved(any_cable(1.0));
    std::vector<Gland> glands;
    for (std::size_t i = 0; i < 8; ++i) glands.push_back(any_gland(1.0, i));
    std::vector<Gland> turned(glands.rbegin(), glands.rend());
    const auto a = fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::margin);
    const auto b = fit::fit_all(fit::ask(job, test::standards()), turned, fit::Prefer::margin);
    for (std::size_t i = 0; i < a.size(); ++i) RC_ASSERT(a[i].gland->part == b[i].gland->part);
    RC_ASSERT(std::is_sorted(a.begin(), a.end(),
                             [](const auto& x, const auto& y) { return x.verdict > y.verdict; }));
  }));
}

TEST_CASE("fit: a finer caliper never turns a proven fit into less", "[property][fit]") {
  CHECK(rc::check("finer is never worse", [] {
    job::JobInput in = any_cable(1.0);
    const Gland gland = any_gland(1.0, 0);
    in.mpe_mm = 0.2;
    const auto coarse = test::checked(in, gland);
    in.mpe_mm = 0.02;
    const auto fine = test::checked(in, gland);
    const auto proven = [](const fit::GlandFit& fit) { return fit.verdict == Verdict::fits; };
    RC_ASSERT(!proven(coarse) || proven(fine));
  }));
}

TEST_CASE("fit: scaling all lengths scales the seal margins", "[property][fit]") {
  CHECK(rc::check("margins scale", [](unsigned seed) {
    // The same random cable and gland, once as they are and once half as large again.
    (void)seed;
    // At most 24 mm: above 25 mm a diameter is known to 0.5 mm, whatever its scale.
    const double bedding = tenths(30, 80);
    const double od = bedding + 8.0;
    const double outer = tenths(60, 200);
    const auto margin = [&](double scale) {
      job::JobInput in;
      in.sheath_od_mm = fmt::format("{}+{}", od * scale, od * scale);
      in.bedding_mm = fmt::format("{}+{}", bedding * scale, bedding * scale);
      in.step_mm = 0.05 * scale;
      in.mpe_mm = 0.05 * scale;
      Gland gland = test::small_gland();
      gland.outer = {outer * scale, (outer + 12.0) * scale};
      return *test::checked(in, gland).find(fit::CheckName::outer_seal)->margin_mm;
    };
    RC_ASSERT(std::abs(margin(1.5) - 1.5 * margin(1.0)) < 1e-9);
  }));
}

TEST_CASE("strip: scaling all lengths scales the marks", "[property][strip]") {
  CHECK(rc::check("marks scale", [] {
    const int reach = *rc::gen::inRange(50, 500);
    const int wall = *rc::gen::inRange(1, 10);
    const int stop = *rc::gen::inRange(5, 40);
    const auto plan = [&](double scale) {
      job::JobInput in = test::small_cable();
      in.reach_mm = reach * scale;
      in.wall_mm = wall * scale;
      in.washer_mm = 2.0 * scale;
      in.locknut_mm = 4.0 * scale;
      in.strip_mm = 10.0 * scale;
      in.slack_mm = 20.0 * scale;
      Gland gland = test::small_gland();
      gland.entry_length_mm = 15.0 * scale;
      gland.bedding_past_mm = 5.0 * scale;
      gland.armour_stop_mm = stop * scale;
      gland.exposed_armour_mm = 10.0 * scale;
      return strip::plan_cuts(test::resolved(in), gland, {});
    };
    const auto one = plan(1.0);
    const auto three = plan(3.0);
    RC_ASSERT(std::abs(*three.marks.bedding_cut_mm - 3.0 * *one.marks.bedding_cut_mm) < 1e-9);
    RC_ASSERT(std::abs(*three.marks.armour_cut_mm - 3.0 * *one.marks.armour_cut_mm) < 1e-9);
    RC_ASSERT(std::abs(*three.marks.sheath_cut_mm - 3.0 * *one.marks.sheath_cut_mm) < 1e-9);
    // From the end inwards: bedding before shoulder before armour before sheath.
    RC_ASSERT(*one.marks.bedding_cut_mm < *one.marks.shoulder_mm);
    RC_ASSERT(*one.marks.shoulder_mm < *one.marks.armour_cut_mm);
    RC_ASSERT(*one.marks.armour_cut_mm < *one.marks.sheath_cut_mm);
  }));
}

TEST_CASE("job: what is written as JSON is read back the same", "[property][job]") {
  CHECK(rc::check("round trip", [] {
    job::JobInput in = any_cable(1.0);
    in.tag = *rc::gen::string<std::string>();
    std::erase_if(*in.tag, [](char c) { return c < ' ' || c > '~'; });
    in.tag = "P" + *in.tag + "1";
    in.cores = *rc::gen::inRange(1, 62);
    in.reach_mm = tenths(1, 5000);
    in.entry = "M20";
    in.zone = *rc::gen::element(area::Zone::zone_1, area::Zone::zone_2, area::Zone::zone_21);
    in.core_list = {{.core = "U", .x_mm = tenths(1, 900), .spare = true}};
    const std::string text = io::write_job(in, *rc::gen::element(-1, 2));
    RC_ASSERT(io::write_job(io::read_job(text, "x"), -1) == io::write_job(in, -1));
  }));
}
