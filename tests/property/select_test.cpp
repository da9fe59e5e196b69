#include "cutback/fit/select.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using gland::Gland;

namespace {

double tenths(int low, int high) { return *rc::gen::inRange(low, high) / 10.0; }

bool chance(int one_in) { return *rc::gen::inRange(0, one_in) == 0; }

Gland any_gland(std::size_t number) {
  Gland gland = test::small_gland();
  gland.part = "G" + std::to_string(number);
  gland.entry_thread = *entry::parse_thread(*rc::gen::element<std::string>("M20", "M25", "M20x1"));
  const double outer = tenths(80, 300);
  gland.outer = {outer, outer + tenths(10, 150)};
  const double inner = tenths(50, 250);
  gland.inner = measure::Range{inner, inner + tenths(10, 150)};
  if (chance(3)) gland.inner.reset();
  gland.bore_mm = tenths(100, 400);
  if (chance(2)) gland.bore_mm.reset();
  gland.armour = *rc::gen::element(cable::ArmourKind::wire, cable::ArmourKind::wire,
                                   cable::ArmourKind::braid, cable::ArmourKind::none);
  gland.armour_clamp = {*rc::gen::element(0.2, 0.9, 1.25), *rc::gen::element(1.25, 1.6, 2.5)};
  gland.sealing = *rc::gen::element(gland::Sealing::compression, gland::Sealing::barrier,
                                    gland::Sealing::either);
  gland.protection = {"db", "eb"};
  gland.price = *rc::gen::inRange(1, 4);
  if (chance(5)) gland.price.reset();
  gland.fault_ka = *rc::gen::element(0.5, 5.0);
  gland.max_cores = *rc::gen::element(2, 12);
  gland.entry_length_mm = *rc::gen::element(6.0, 15.0);
  if (chance(3)) gland.protection = {"eb"};
  return gland;
}

job::JobInput any_end() {
  const double bedding = tenths(60, 200);
  const double wire = *rc::gen::element(0.9, 1.25, 1.4, 1.6);
  const double od = bedding + 2.0 * (wire + tenths(10, 30));
  job::JobInput in;
  in.sheath_od_mm = fmt::format("{0}+{0}", od);
  if (!chance(6)) in.bedding_mm = fmt::format("{0}+{0}", bedding);
  if (!chance(6)) in.armour_mm = fmt::format("{}", wire);
  if (chance(4)) {
    in.armour = *rc::gen::element<std::string>("braid", "none");
    in.armour_mm.reset();
  }
  if (!chance(4)) in.entry = *rc::gen::element<std::string>("M20", "M25");
  if (in.entry && chance(3)) in.adaptor = "M20:M25";
  if (chance(3)) in.protection = *rc::gen::element<std::string>("d", "e");
  if (chance(2)) in.zone = "1";
  if (chance(2)) in.cores = *rc::gen::element(2.0, 4.0);
  if (chance(2)) {
    in.hole = *rc::gen::element<std::string>("clearance", "threaded");
    in.wall_mm = tenths(10, 80);
  }
  if (chance(3)) {
    in.current_ka = tenths(1, 30);
    in.time_s = 1.0;
  }
  if (chance(2)) in.evidence = "datasheet";
  if (in.evidence) {
    in.sheath_od_mm = fmt::format("{}", od);
    if (in.bedding_mm) in.bedding_mm = fmt::format("{}", bedding);
    in.od_allow_mm = tenths(0, 20);
  }
  return in;
}

/// What select() promises, from fit_all alone.
fit::Selection by_hand(const fit::Question& question, const std::vector<Gland>& glands,
                       fit::Prefer prefer) {
  fit::Selection selection{.ranked = fit::fit_all(question, glands, prefer), .fits = 0};
  selection.fits = static_cast<std::size_t>(
      std::count_if(selection.ranked.begin(), selection.ranked.end(),
                    [](const auto& fit) { return fit.verdict == Verdict::fits; }));
  if (selection.fits > 0) selection.ranked.resize(1);
  return selection;
}

}  // namespace

TEST_CASE("select: the same as a look at every gland", "[property][fit]") {
  int with_a_gland = 0;
  CHECK(rc::check("select is fit_all", [&] {
    std::vector<Gland> glands;
    const std::size_t count = *rc::gen::inRange<std::size_t>(1, 150);
    for (std::size_t i = 0; i < count; ++i) glands.push_back(any_gland(i));
    const auto prefer =
        *rc::gen::element(fit::Prefer::price, fit::Prefer::margin, fit::Prefer::stock);
    const fit::Selector selector(glands, prefer);
    for (int end = 0; end < 15; ++end) {
      const job::Job job = job::resolve(any_end(), test::standards(), job::Unstated::by_notation);
      const fit::Question question = fit::ask(job, test::standards());
      const fit::Selection got = selector.select(question);
      const fit::Selection want = by_hand(question, glands, prefer);
      if (want.fits > 0) ++with_a_gland;
      RC_ASSERT(got.fits == want.fits);
      RC_ASSERT(got.ranked.size() == want.ranked.size());
      for (std::size_t i = 0; i < got.ranked.size(); ++i) {
        RC_ASSERT(got.ranked[i].gland == want.ranked[i].gland);
        RC_ASSERT(got.ranked[i].verdict == want.ranked[i].verdict);
        RC_ASSERT(got.ranked[i].margin_mm == want.ranked[i].margin_mm);
      }
    }
  }));
  CHECK(with_a_gland > 50);  // a comparison of nothing with nothing proves nothing
}

TEST_CASE("LimitSets: no gland that a diameter passes is missing", "[property][fit]") {
  CHECK(rc::check("breakpoints", [] {
    const auto numbers = *rc::gen::container<std::vector<int>>(rc::gen::inRange(-1, 4000));
    std::vector<std::optional<double>> limits;
    for (const int number : numbers) {
      limits.push_back(number < 0 ? std::nullopt : std::optional<double>(number / 100.0));
    }
    const fit::LimitSets lower(limits, fit::LimitSets::Kind::lower);
    const fit::LimitSets upper(limits, fit::LimitSets::Kind::upper);
    const double value = *rc::gen::inRange(0, 4000) / 100.0;
    for (std::size_t i = 0; i < limits.size(); ++i) {
      const auto in = [&](const fit::GlandSet& set) { return (set[i / 64] >> (i % 64) & 1) != 0; };
      RC_ASSERT(in(lower.passing(value)) == (!limits[i] || *limits[i] <= value));
      RC_ASSERT(in(upper.passing(value)) == (!limits[i] || *limits[i] >= value));
    }
  }));
}

TEST_CASE("LimitSets: with thousands of limits too none is missing", "[property][fit]") {
  std::vector<std::optional<double>> limits;
  for (int i = 0; i < 5000; ++i) limits.push_back((i * 7919 % 5000) / 10.0);
  const fit::LimitSets lower(limits, fit::LimitSets::Kind::lower);
  const fit::LimitSets upper(limits, fit::LimitSets::Kind::upper);
  for (const double value : {-1.0, 0.0, 0.05, 123.4, 250.0, 499.9, 600.0}) {
    std::size_t surplus = 0;
    for (std::size_t i = 0; i < limits.size(); ++i) {
      const auto in = [&](const fit::GlandSet& set) { return (set[i / 64] >> (i % 64) & 1) != 0; };
      if (*limits[i] <= value) CHECK(in(lower.passing(value)));
      if (*limits[i] >= value) CHECK(in(upper.passing(value)));
      if (in(lower.passing(value)) && *limits[i] > value) ++surplus;
    }
    CHECK(surplus < 10);
  }
}
