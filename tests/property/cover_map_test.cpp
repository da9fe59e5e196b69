// Every cell of a coverage map says what `fit` says of a cable that reads so.
#include "cutback/fit/cover_map.hpp"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "support/any.hpp"

using namespace cutback;

namespace {

double any_step(double low, double high) {
  return low + *rc::gen::inRange(0, static_cast<int>((high - low) * 10.0) + 1) / 10.0;
}

gland::Gland any_armoured(int number) {
  gland::Gland gland = test::small_gland();
  gland.part = "G" + std::to_string(number);
  const double low = any_step(9.0, 16.0);
  gland.outer = {low, low + any_step(1.0, 6.0)};
  if (*rc::gen::inRange(0, 4) > 0) {
    const double inner = any_step(5.0, 11.0);
    gland.inner = measure::Range{inner, inner + any_step(1.0, 5.0)};
  } else {
    gland.inner.reset();
  }
  gland.bore_mm = *rc::gen::inRange(0, 5) > 0 ? std::optional(any_step(9.0, 15.0)) : std::nullopt;
  gland.armour_clamp = {0.9, *rc::gen::arbitrary<bool>() ? 0.9 : 1.25};
  gland.entry_thread = *entry::parse_thread(test::any_of({"M20", "M20", "M25"}));
  return gland;
}

}  // namespace

TEST_CASE("cover_map: each cell agrees with fit", "[property][fit]") {
  CHECK(rc::check("for a random list, wire and entry", [] {
    std::vector<gland::Gland> glands;
    const int count = *rc::gen::inRange(1, 6);
    for (int i = 0; i < count; ++i) glands.push_back(any_armoured(i));
    job::JobInput end;
    end.armour_mm = test::any_of({"0.9", "1.25"});
    if (*rc::gen::arbitrary<bool>()) end.entry = test::any_of({"M20", "M25"});
    const fit::Selector selector(glands, fit::Prefer::price);
    const fit::CoverMap map = fit::cover_map(end, selector, test::standards(), 9, 6);
    RC_ASSERT(map.counts.size() == map.sheath.cells * map.bedding.cells);
    for (std::size_t y = 0; y < map.bedding.cells; ++y) {
      for (std::size_t x = 0; x < map.sheath.cells; ++x) {
        const job::JobInput in =
            fit::covered_end(end, map.sheath.middle_mm(x), map.bedding.middle_mm(y));
        int fits = fit::CoverMap::k_no_cable;
        try {
          const job::Job job = test::resolved(in);
          const fit::Question question = fit::ask(job, test::standards());
          const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
          const auto passes = std::count_if(ranked.begin(), ranked.end(), [](const auto& fit) {
            return fit.verdict == Verdict::fits;
          });
          if (!job.cable.contradiction) fits = static_cast<int>(passes);
          RC_ASSERT(!job.cable.contradiction || passes == 0);
        } catch (const InputError&) {
          // Layers that do not lie inside each other.
        }
        RC_ASSERT(map.at(x, y) == fits);
      }
    }
    // A gap is made of cells without a gland, and none with a gland lies in one.
    for (const fit::CoverGap& gap : fit::gaps_of(map, end.armour_mm->places[0].readings_mm[0])) {
      for (std::size_t y = 0; y < map.bedding.cells; ++y) {
        for (std::size_t x = 0; x < map.sheath.cells; ++x) {
          const double sheath = map.sheath.middle_mm(x);
          const double bedding = map.bedding.middle_mm(y);
          const bool inside = sheath > gap.sheath_low_mm && sheath < gap.sheath_high_mm &&
                              bedding > gap.bedding_low_mm && bedding < gap.bedding_high_mm;
          RC_ASSERT(!inside || map.at(x, y) == 0);
        }
      }
    }
  }));
}
