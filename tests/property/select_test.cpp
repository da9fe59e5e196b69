#include "cutback/fit/select.hpp"
#include "core/fit/rules.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <algorithm>
#include <bit>
#include <catch2/catch.hpp>
#include <cstdint>
#include <numeric>

#include "core/fit/limit_sets.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using fit::detail::Bound;
using fit::detail::LimitSets;
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
  gland.protection = {area::Protection::db, area::Protection::eb};
  gland.level = {area::Level::Gb};
  gland.gas_group = *rc::gen::element(area::GasMark::IIB, area::GasMark::IIC);
  gland.ip = *area::parse_ip_codes("66/68");
  gland.temp_min_degc = -40;
  gland.temp_max_degc = *rc::gen::element(60.0, 100.0);
  gland.price = *rc::gen::inRange(1, 4);
  if (chance(5)) gland.price.reset();
  gland.fault_ka = *rc::gen::element(0.5, 5.0);
  gland.max_cores = *rc::gen::element(2, 12);
  gland.entry_length_mm = *rc::gen::element(6.0, 15.0);
  if (!chance(4)) gland.washer_mm = 1.5;
  if (!chance(4)) gland.locknut_mm = 4.0;
  if (chance(3)) gland.protection = {area::Protection::eb};
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
    in.armour = *rc::gen::element(cable::ArmourKind::braid, cable::ArmourKind::none);
    in.armour_mm.reset();
  }
  if (!chance(4)) in.entry = *rc::gen::element<std::string>("M20", "M25");
  if (in.entry && chance(3)) {
    in.adaptor = "M20:M25";
    if (!chance(4)) in.adaptor_bore_mm = tenths(80, 180);
    if (!chance(4)) in.adaptor_mm = in.adaptor_thread_mm = tenths(80, 150);
  }
  if (chance(3)) in.protection = *rc::gen::element(area::Protection::d, area::Protection::e);
  if (in.protection ? !chance(4) : chance(8)) in.zone = area::Zone::zone_1;
  if (in.zone && !chance(4)) in.gas_group = area::GasGroup::IIB;
  if (in.zone && !chance(4)) in.ip = "66";
  if (chance(2)) in.cores = *rc::gen::element(2.0, 4.0);
  if (chance(2)) {
    in.hole = *rc::gen::element(entry::Hole::clearance, entry::Hole::threaded);
    in.wall_mm = tenths(10, 80);
  }
  if (chance(3)) {
    in.current_ka = tenths(1, 30);
    in.time_s = 1.0;
  }
  if (chance(2)) in.evidence = measure::Evidence::datasheet;
  if (in.evidence) {
    in.sheath_od_mm = fmt::format("{}", od);
    if (in.bedding_mm) in.bedding_mm = fmt::format("{}", bedding);
    in.od_allow_mm = tenths(0, 20);
  }
  return in;
}

/// What Search promises, from fit_all alone.
struct ByHand {
  const Gland* first = nullptr;
  Verdict verdict = Verdict::no_fit;
  std::vector<std::uint32_t> fitting;
  const Gland* nearest = nullptr;
};

ByHand by_hand(const fit::Question& question, const std::vector<Gland>& glands,
               fit::Prefer prefer) {
  const auto ranked = fit::fit_all(question, glands, prefer);
  ByHand by{.verdict = ranked.front().verdict};
  if (by.verdict > Verdict::no_fit) by.first = ranked.front().gland;
  for (const auto& fit : ranked) {
    if (fit.verdict == Verdict::fits) {
      by.fitting.push_back(static_cast<std::uint32_t>(fit.gland - glands.data()));
    }
  }
  std::sort(by.fitting.begin(), by.fitting.end());
  if (by.fitting.empty()) by.nearest = fit::nearest_of(ranked).gland;
  return by;
}

/// The first gland that fits once every thread may be adapted to the entry.
const Gland* adapted_by_hand(const fit::Question& question, const std::vector<Gland>& glands,
                             fit::Prefer prefer) {
  if (!question.job->entry.thread || !question.job->entry.adaptors.empty()) return nullptr;
  for (const auto& fit : fit::fit_all(question, glands, prefer)) {
    const bool only_entry =
        std::all_of(fit.checks.begin(), fit.checks.end(), [](const fit::Check& check) {
          return check.verdict == Verdict::fits || check.name == fit::CheckName::entry ||
                 check.name == fit::CheckName::thread || check.name == fit::CheckName::joint;
        });
    if (!only_entry || fit.verdict == Verdict::fits ||
        entry::suits(fit.gland->entry_thread, question.job->entry)) {
      continue;
    }
    job::Job job = *question.job;
    job.entry.adaptors.push_back({*job.entry.thread, fit.gland->entry_thread, {}});
    if (!job.entry.adaptor_material) job.entry.adaptor_material = "brass";  // one is ordered
    fit::Question with = question;
    with.job = &job;
    // Lengths and bore of an adaptor that nobody has yet are not known.
    const fit::GlandFit through = fit::check_gland(with, *fit.gland);
    const bool helps =
        std::all_of(through.checks.begin(), through.checks.end(), [](const fit::Check& check) {
          const bool of_adaptor = check.name == fit::CheckName::entry ||
                                  check.name == fit::CheckName::thread ||
                                  check.name == fit::CheckName::joint;
          return check.verdict == Verdict::fits ||
                 (of_adaptor && check.verdict == Verdict::not_known);
        });
    // Of an adaptor without a marking the entry is not known; what passes through it is looked at
    // all the same.
    const fit::detail::Case at(question, *fit.gland);
    const auto passing = fit::detail::against_passage(at, &job.entry.adaptors.back());
    const bool passes = fit::detail::finding_of(passing, job.cable).verdict >= Verdict::not_known;
    if (helps && passes) return fit.gland;
  }
  return nullptr;
}

/// The diameters of `from` in the job that `into` is.
void take_diameters(const job::Job& from, job::Job& into) {
  into.cable.sheath_od = from.cable.sheath_od;
  into.cable.bedding = from.cable.bedding;
  into.cable.wire = from.cable.wire;
  into.cable.wire_nominal = from.cable.wire_nominal;
}

std::vector<Gland> any_list() {
  std::vector<Gland> glands;
  const std::size_t count = *rc::gen::inRange<std::size_t>(1, 150);
  for (std::size_t i = 0; i < count; ++i) glands.push_back(any_gland(i));
  return glands;
}

fit::Prefer any_preference() {
  return *rc::gen::element(fit::Prefer::price, fit::Prefer::margin, fit::Prefer::stock);
}

bool in(const std::uint64_t* set, std::size_t place) {
  return (set[place / 64] >> (place % 64) & 1) != 0;
}

}  // namespace

TEST_CASE("search: the same as a look at every gland", "[property][fit]") {
  int with_a_gland = 0;
  int adapted = 0;
  CHECK(rc::check("search is fit_all", [&] {
    std::vector<Gland> glands = any_list();
    for (Gland& gland : glands) gland.preferred = chance(3);
    const auto prefer = any_preference();
    const fit::Selector selector(glands, prefer);
    for (int family = 0; family < 3; ++family) {
      job::Job job = job::resolve(any_end(), test::standards(), job::Unstated::by_notation);
      const fit::Question question = fit::ask(job, test::standards());
      fit::Search search(selector, question);
      // Diameters of other ends come into the same question, often enough for sets to be learnt.
      for (int end = 0; end < 7; ++end) {
        const ByHand want = by_hand(question, glands, prefer);
        const fit::Found got = search.find();
        if (!want.fitting.empty()) ++with_a_gland;
        RC_ASSERT(got.fits == want.fitting.size());
        RC_ASSERT(got.verdict == want.verdict);
        RC_ASSERT(got.first == want.first);
        RC_ASSERT(got.nearest == want.nearest);
        RC_ASSERT(search.fitting() == want.fitting);
        if (got.fits == 0) {
          const Gland* const with_adaptor = adapted_by_hand(question, glands, prefer);
          if (with_adaptor != nullptr) ++adapted;
          RC_ASSERT(search.through_adaptor() == with_adaptor);
        }
        take_diameters(job::resolve(any_end(), test::standards(), job::Unstated::by_notation), job);
        if (job.cable.armour == cable::ArmourKind::none) job.cable.wire.reset();
        if (job.cable.armour != cable::ArmourKind::wire) job.cable.wire_nominal.reset();
      }
    }
  }));
  CHECK(with_a_gland > 25);  // a comparison of nothing with nothing proves nothing
  CHECK(adapted > 5);
}

namespace {

job::JobInput any_datasheet() {
  job::JobInput in;
  in.evidence = measure::Evidence::datasheet;
  const double bedding = tenths(80, 160);
  in.sheath_od_mm = fmt::format("{}", bedding + 2.0 * (0.9 + tenths(10, 30)));
  in.bedding_mm = fmt::format("{}", bedding);
  in.armour_mm = "0.9";
  in.od_allow_mm = tenths(0, 8);
  in.bedding_allow_mm = tenths(0, 5);
  if (chance(2)) in.entry = "M20";
  return in;
}

/// Whether a cheaper gland fits at some true diameters within the intervals: it is enough to look
/// at the ends of the ranges, where the choice can change, with no spread at all.
bool cheaper_fits_somewhere(const job::Job& job, const std::vector<Gland>& glands,
                            const Gland& chosen) {
  std::vector<double> sheaths{job.cable.sheath_od->low_mm(), job.cable.sheath_od->high_mm()};
  std::vector<double> beddings{job.cable.bedding->low_mm(), job.cable.bedding->high_mm()};
  const auto add = [](std::vector<double>& list, std::optional<double> limit) {
    if (limit && *limit > list[0] && *limit < list[1]) list.push_back(*limit);
  };
  for (const Gland& gland : glands) {
    add(sheaths, gland.outer.low_mm);
    add(sheaths, gland.outer.high_mm);
    if (gland.inner) add(beddings, gland.inner->low_mm);
    if (gland.inner) add(beddings, gland.inner->high_mm);
    add(beddings, gland.bore_mm);
  }
  for (const double sheath : sheaths) {
    for (const double under : beddings) {
      job::Job exact = job;
      exact.cable.sheath_od = measure::from_datasheet(sheath, 0.0);
      exact.cable.bedding = measure::from_datasheet(under, 0.0);
      const fit::Question asked = fit::ask(exact, test::standards());
      for (const Gland& gland : glands) {
        if (!gland.price || !(*gland.price < *chosen.price)) continue;
        if (fit::check_gland(asked, gland).verdict == Verdict::fits) return true;
      }
    }
  }
  return false;
}

}  // namespace

TEST_CASE("search: a choice wavers exactly when it changes somewhere in the spread",
          "[property][fit]") {
  int wavering = 0;
  int steady = 0;
  CHECK(rc::check("wavering", [&] {
    const std::vector<Gland> glands = any_list();
    const fit::Selector selector(glands, fit::Prefer::price);
    for (int end = 0; end < 15; ++end) {
      const job::Job job =
          job::resolve(any_datasheet(), test::standards(), job::Unstated::by_notation);
      const fit::Question question = fit::ask(job, test::standards());
      fit::Search search(selector, question);
      const fit::Found found = search.find();
      if (found.fits == 0 || !found.first->price) continue;
      const fit::Wavering got = search.wavering(found);
      const bool changes = cheaper_fits_somewhere(job, glands, *found.first);
      ++(changes ? wavering : steady);
      RC_ASSERT(static_cast<bool>(got) == changes);
      if (changes) RC_ASSERT(got.other == found.first);
    }
  }));
  CHECK(wavering > 2);
  CHECK(steady > 5);
}

fit::detail::Kinds every_place_its_own(std::size_t places) {
  std::vector<std::uint32_t> of_place(places);
  std::iota(of_place.begin(), of_place.end(), 0U);
  return {std::move(of_place), std::vector<const Gland*>(places, nullptr)};
}

TEST_CASE("LimitSets: exactly the glands that a diameter passes", "[property][fit]") {
  CHECK(rc::check("breakpoints", [] {
    const auto numbers = *rc::gen::container<std::vector<int>>(rc::gen::inRange(-1, 4000));
    std::vector<double> low;
    std::vector<double> high;
    for (const int number : numbers) {
      low.push_back(number < 0 ? fit::detail::k_no_limit : number / 100.0);
      high.push_back(number < 0 ? fit::detail::k_no_limit : -number / 100.0);
    }
    // With room for a few sets only, a set may hold too much, and passes() tells.
    const std::size_t most_words = *rc::gen::element<std::size_t>(1, 1'000'000);
    const fit::detail::Kinds kinds = every_place_its_own(numbers.size());
    const LimitSets lower(kinds, low, Bound::lower, most_words);
    const LimitSets upper(kinds, high, Bound::upper, most_words);
    const double value = *rc::gen::inRange(0, 4000) / 100.0;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      const bool none = numbers[i] < 0;
      const bool above = none || numbers[i] / 100.0 <= value;
      const bool below = none || numbers[i] / 100.0 >= value;
      RC_ASSERT(lower.passes(i, value) == above);
      RC_ASSERT(upper.passes(i, value) == below);
      RC_ASSERT(in(lower.at(value), i) >= above);
      RC_ASSERT(in(upper.at(value), i) >= below);
      if (lower.exact()) RC_ASSERT(in(lower.at(value), i) == above);
      if (upper.exact()) RC_ASSERT(in(upper.at(value), i) == below);
      RC_ASSERT(in(lower.unlimited(), i) == none);
    }
  }));
}

TEST_CASE("LimitSets: with little room a set holds few glands too many", "[property][fit]") {
  std::vector<double> limits;
  for (int i = 0; i < 5000; ++i) limits.push_back((i * 7919 % 5000) / 10.0);
  const fit::detail::Kinds kinds = every_place_its_own(limits.size());
  const LimitSets lower(kinds, limits, Bound::lower, 100'000);
  CHECK_FALSE(lower.exact());
  for (const double value : {-1.0, 0.0, 0.05, 123.4, 250.0, 499.9, 600.0}) {
    std::size_t surplus = 0;
    for (std::size_t i = 0; i < limits.size(); ++i) {
      if (in(lower.at(value), i) && limits[i] > value) ++surplus;
    }
    CHECK(surplus < 10);
  }
}
