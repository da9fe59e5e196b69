// A whole schedule with limited stock: grouped, shared out, decided.
#include "cutback/schedule/supply.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <map>

#include "cutback/schedule/decider.hpp"
#include "support/build_job.hpp"
#include "support/solvers.hpp"

using namespace cutback;
using schedule::Decision;
using schedule::Side;
using schedule::Supply;

namespace {

using Words = std::vector<std::string_view>;

const Words k_headings{"tag",  "sheath_od_mm", "bedding_mm",    "armour_mm",  "entry",
                       "hole", "wall_mm",      "from_reach_mm", "to_reach_mm"};

/// Some seal on 9 to 14, some on 11 to 16 mm ..., all on a bedding of 6 to 12 mm.
std::vector<gland::Gland> any_glands() {
  std::vector<gland::Gland> glands;
  const int count = *rc::gen::element(1, 2, 3, 4, 5);
  for (int i = 0; i < count; ++i) {
    gland::Gland gland = test::small_gland();
    gland.part = "G" + std::to_string(i);
    gland.washer_mm = 1.5;
    gland.locknut_mm = 4.0;
    const double low = *rc::gen::element(9.0, 11.0, 12.0, 13.0, 14.0);
    gland.inner = measure::Range{6.0, 12.0};
    gland.outer = {low, low + *rc::gen::element(2.0, 3.0, 5.0)};
    gland.price = *rc::gen::inRange(1, 6);
    gland.stock = *rc::gen::element(0.0, 1.0, 2.0, 3.0);
    if (*rc::gen::inRange(0, 8) == 0) gland.stock.reset();
    glands.push_back(gland);
  }
  return glands;
}

std::vector<std::string> any_row(std::size_t number) {
  const auto [sheath, bedding] =
      *rc::gen::elementOf(std::vector<std::pair<std::string, std::string>>{{"11.9+12.1", "7.5+7.5"},
                                                                           {"12.9+13.1", "8.4+8.4"},
                                                                           {"13.4+13.6", "9+9"},
                                                                           {"14.9+15.1", "10+10"},
                                                                           {"12", "7.5"},
                                                                           {"30", "20"},
                                                                           {"x", "10"}});
  const std::string reach = *rc::gen::elementOf(std::vector<std::string>{"", "180"});
  return {"C" + std::to_string(number),
          sheath,
          bedding,
          "0.9",
          "M20",
          "clearance",
          "2.5",
          reach,
          "200"};
}

/// One end of the schedule.
struct End {
  Words cells;
  Side side = Side::both;
  std::size_t line = 0;
  schedule::PartSet fitting;
};

/// The most ends that can be served, by augmenting paths (Kuhn's method): another way than the
/// flow.
class Matching {
 public:
  Matching(const std::vector<End>& ends, const std::vector<gland::Gland>& glands)
      : ends_(ends), holders_(glands.size()) {
    for (const gland::Gland& gland : glands) {
      stock_.push_back(static_cast<std::size_t>(gland.stock.value_or(1000)));
    }
  }
  int most() {
    int served = 0;
    for (std::size_t end = 0; end < ends_.size(); ++end) {
      seen_.assign(holders_.size(), false);
      if (serve(end)) ++served;
    }
    return served;
  }

 private:
  bool serve(std::size_t end) {
    for (const std::uint32_t part : ends_[end].fitting) {
      if (seen_[part]) continue;
      seen_[part] = true;
      if (holders_[part].size() < stock_[part]) {
        holders_[part].push_back(end);
        return true;
      }
      for (std::size_t& holder : holders_[part]) {
        if (!serve(holder)) continue;
        holder = end;
        return true;
      }
    }
    return false;
  }

  const std::vector<End>& ends_;
  std::vector<std::size_t> stock_;
  std::vector<std::vector<std::size_t>> holders_;
  std::vector<bool> seen_;
};

/// But for its words, a decision for a given gland is that of a list of this gland alone.
void must_be_as_alone(const Decision& got, const job::JobInput& input, const gland::Gland& gland) {
  const std::vector<gland::Gland> alone{gland};
  const fit::Selector selector(alone, fit::Prefer::price);
  const Decision want =
      schedule::decide(input, {.standards = &test::standards(), .glands = &selector});
  RC_ASSERT(got.verdict == Verdict::fits);
  RC_ASSERT(want.verdict == Verdict::fits);
  RC_ASSERT(got.proven == want.proven);
  RC_ASSERT(got.outer_margin_mm == want.outer_margin_mm);
  RC_ASSERT(got.inner_margin_mm == want.inner_margin_mm);
  RC_ASSERT(got.armour_margin_mm == want.armour_margin_mm);
  RC_ASSERT(got.barrier == want.barrier);
  RC_ASSERT(got.armour_cut_mm == want.armour_cut_mm);
  RC_ASSERT(got.sheath_cut_mm == want.sheath_cut_mm);
  RC_ASSERT(got.bedding_cut_mm == want.bedding_cut_mm);
  RC_ASSERT(got.remarks == want.remarks);
  RC_ASSERT(*got.accessories == *want.accessories);
}

/// A schedule, its ends grouped and its stock shared out.
struct Shared {
  Shared(const schedule::Layout& layout, const std::vector<std::vector<std::string>>& rows,
         const std::vector<gland::Gland>& list, const schedule::Settings& settings)
      : glands(list) {
    schedule::Decider decider(layout, settings);
    schedule::Grouper grouper;
    std::vector<schedule::WantedEnd> wanted_ends;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const Words cells(rows[i].begin(), rows[i].end());
      for (const Side side : layout.ends()) {
        ends.push_back({cells, side, i + 2, decider.fitting({cells}, side)});
        if (ends.back().fitting.empty()) continue;
        wanted_ends.push_back({.row = i + 2,
                               .side = side,
                               .group = grouper.add(ends.back().fitting, 1),
                               .name = rows[i][0]});
      }
    }
    wanted = {.parts = schedule::parts_of(glands, 2), .groups = grouper.groups()};
    share = schedule::share_out(wanted, solve::cheapest_plan);
    supplies = std::make_unique<schedule::Supplies>(wanted, share, wanted_ends, glands);
  }

  const std::vector<gland::Gland>& glands;
  std::vector<End> ends;
  schedule::Wanted wanted;
  schedule::Share share;
  std::unique_ptr<schedule::Supplies> supplies;
};

}  // namespace

TEST_CASE("use of stock: the most ends, each with a gland that fits it", "[property][share]") {
  const schedule::Layout layout = schedule::make_layout(k_headings, {}, "t.csv");
  int served_in_all = 0;
  int without = 0;
  CHECK(rc::check("grouped, shared out, decided", [&] {
    const std::vector<gland::Gland> glands = any_glands();
    const fit::Selector selector(glands, fit::Prefer::price);
    const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
    std::vector<std::vector<std::string>> rows;
    const auto count = *rc::gen::element<std::size_t>(1, 2, 4, 6, 8);
    for (std::size_t i = 0; i < count; ++i) rows.push_back(any_row(i));
    const Shared shared(layout, rows, glands, settings);
    RC_ASSERT(shared.share.proven);
    schedule::Decider decider(layout, settings);
    std::map<const gland::Gland*, double> used;
    std::map<schedule::PartSet, std::size_t> place;  // of the group's end before
    int served = 0;
    std::int64_t cents = 0;
    for (const End& end : shared.ends) {
      const Supply* const supply = shared.supplies->of(end.line, end.side);
      RC_ASSERT((supply == nullptr) == end.fitting.empty());
      if (supply == nullptr) continue;
      std::vector<Fault> faults;
      const job::JobInput input = schedule::input_of(layout, end.cells, end.side, faults);
      const Decision got = decider.decide({end.cells}, end.side, supply).decision;
      RC_ASSERT(got.reason == schedule::decide(input, settings, supply).reason);
      RC_ASSERT(got.gland == supply->gland);
      RC_ASSERT(got.fits == end.fitting.size());
      const std::size_t now = supply->gland != nullptr ? supply->place : 1000;
      RC_ASSERT(now >= place[end.fitting]);
      place[end.fitting] = now;
      if (got.gland == nullptr) {
        ++without;
        for (const std::uint32_t part : end.fitting) {
          RC_ASSERT(glands[part].stock.has_value());
          RC_ASSERT(shared.share.used[part] == static_cast<std::int64_t>(*glands[part].stock));
        }
        continue;
      }
      ++served;
      ++used[got.gland];
      cents += std::llround(*got.gland->price * 100.0);
      must_be_as_alone(got, input, *got.gland);
    }
    for (const auto& [gland, number] : used) RC_ASSERT(number <= gland->stock.value_or(1000));
    RC_ASSERT(served == Matching(shared.ends, glands).most());
    RC_ASSERT(cents == shared.share.cost_units);
    served_in_all += served;
  }));
  CHECK(served_in_all > 100);
  CHECK(without > 50);
}
