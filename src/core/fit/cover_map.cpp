#include "cutback/fit/cover_map.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "cutback/cable/geometry.hpp"
#include "cutback/compare.hpp"
#include "cutback/entry/thread.hpp"
#include "cutback/error.hpp"
#include "cutback/job/job.hpp"
#include "cutback/number.hpp"

namespace cutback::fit {
namespace {

using cable::ArmourKind;

struct Limits {
  double low_mm = 0.0;
  double high_mm = 0.0;
  bool any = false;
  void take(double low, double high) {
    low_mm = any ? std::min(low_mm, low) : low;
    high_mm = any ? std::max(high_mm, high) : high;
    any = true;
  }
};

CoverAxis axis_of(const Limits& limits, std::size_t most) {
  constexpr std::array<double, 10> k_steps{0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0, 10.0, 20.0};
  CoverAxis axis;
  for (const double step_mm : k_steps) {
    axis.step_mm = step_mm;
    axis.low_mm = round_down(limits.low_mm, step_mm);
    const double high_mm = round_up(limits.high_mm, step_mm);
    axis.cells = static_cast<std::size_t>(std::lround((high_mm - axis.low_mm) / step_mm));
    if (axis.cells <= most) break;
  }
  axis.cells = std::max<std::size_t>(1, std::min(axis.cells, most));
  return axis;
}

std::string crossed(double mm) { return plain(mm, 6) + "+" + plain(mm, 6); }

/// Whether readings can be those of a cable: its layers lie inside each other and leave a sheath.
bool can_be(const job::Job& job) {
  return !job.cable.contradiction && job.cable.sheath_od.has_value();
}

}  // namespace

double CoverAxis::middle_mm(std::size_t cell) const {
  return round_half_up(low_mm + (static_cast<double>(cell) + 0.5) * step_mm, 0.001);
}

double CoverAxis::edge_mm(std::size_t cell) const {
  return round_half_up(low_mm + static_cast<double>(cell) * step_mm, 0.001);
}

job::JobInput covered_end(const job::JobInput& end, double sheath_mm, double bedding_mm) {
  job::JobInput in = end;
  in.sheath_od_mm = measure::Readings(crossed(sheath_mm), "");
  in.bedding_mm.reset();
  if (end.armour.value_or(ArmourKind::wire) != ArmourKind::none) {
    in.bedding_mm = measure::Readings(crossed(bedding_mm), "");
  }
  return in;
}

CoverMap cover_map(const job::JobInput& end, const Selector& glands,
                   const tables::Standards& standards, std::size_t most_sheaths,
                   std::size_t most_beddings) {
  const ArmourKind armour = end.armour.value_or(ArmourKind::wire);
  CoverMap map;
  map.armoured = armour != ArmourKind::none;
  Limits sheath;
  Limits bedding;
  // Glands of another thread serve nothing there; where all are, the map says so of all.
  const auto thread = end.entry && !end.adaptor ? entry::parse_thread(*end.entry) : std::nullopt;
  const auto all = glands.glands();
  const bool any_suits = std::any_of(all.begin(), all.end(), [&](const gland::Gland& gland) {
    return gland.armour == armour && gland.entry_thread == thread;
  });
  for (const gland::Gland& gland : all) {
    if (gland.armour != armour || !gland.outer.low_mm || !gland.outer.high_mm) continue;
    if (any_suits && gland.entry_thread != *thread) continue;
    sheath.take(*gland.outer.low_mm, *gland.outer.high_mm);
    const double inner = gland.inner && gland.inner->low_mm ? *gland.inner->low_mm : 0.0;
    const double most =
        gland.inner && gland.inner->high_mm ? *gland.inner->high_mm : gland.bore_mm.value_or(inner);
    bedding.take(inner, std::max(inner, most));
  }
  if (!sheath.any) {
    throw InputError(make_fault(ErrorCode::missing, "no gland of the list takes this armour",
                                "armour", to_string(armour), "", ""));
  }
  if (map.armoured && !end.armour_mm) {
    throw InputError(make_fault(ErrorCode::missing, "which wire is it?", "armour_mm", "",
                                "the diameter of one armour wire in mm, such as 0.9", ""));
  }
  map.sheath = axis_of(sheath, most_sheaths);
  map.bedding = map.armoured ? axis_of(bedding, most_beddings) : CoverAxis{0.0, 0.0, 1};
  map.counts.reserve(map.sheath.cells * map.bedding.cells);
  for (std::size_t y = 0; y < map.bedding.cells; ++y) {
    for (std::size_t x = 0; x < map.sheath.cells; ++x) {
      int count = CoverMap::k_no_cable;
      // What is wrong with the end itself is wrong with every cell.
      std::optional<job::Job> job;
      try {
        const double bedding_mm = map.armoured ? map.bedding.middle_mm(y) : 1.0;
        job = job::resolve(covered_end(end, map.sheath.middle_mm(x), bedding_mm), standards,
                           job::Unstated::measured);
      } catch (const InputError& error) {
        const auto layers = [](const Fault& fault) {
          return fault.code == ErrorCode::contradiction &&
                 (fault.where == "--bedding" || fault.where == "--wire");
        };
        if (!std::all_of(error.faults().begin(), error.faults().end(), layers)) throw;
      }
      if (job && can_be(*job)) {
        const Question question = ask(*job, standards, {.purpose = Purpose::fit});
        count = static_cast<int>(Search(glands, question).fitting().size());
      }
      map.counts.push_back(count);
    }
  }
  return map;
}

std::vector<CoverGap> gaps_of(const CoverMap& map, double wire_mm) {
  // Runs of open cells of each row; runs alike in rows above each other are one gap.
  struct Open {
    std::size_t first;
    std::size_t last;
    std::size_t low_row;
    std::size_t high_row;
  };
  std::vector<Open> open;
  const auto is_gap = [&](std::size_t x, std::size_t y) {
    if (map.at(x, y) != 0) return false;
    if (!map.armoured) return true;
    const double sheath_mm = (map.sheath.middle_mm(x) - map.bedding.middle_mm(y)) / 2.0 - wire_mm;
    return at_most(sheath_mm, k_thickest_sheath_mm);
  };
  for (std::size_t y = 0; y < map.bedding.cells; ++y) {
    for (std::size_t x = 0; x < map.sheath.cells; ++x) {
      if (!is_gap(x, y)) continue;
      std::size_t last = x;
      while (last + 1 < map.sheath.cells && is_gap(last + 1, y)) ++last;
      const auto above = std::find_if(open.begin(), open.end(), [&](const Open& each) {
        return each.high_row + 1 == y && each.first == x && each.last == last;
      });
      if (above != open.end()) {
        above->high_row = y;
      } else {
        open.push_back({x, last, y, y});
      }
      x = last;
    }
  }
  const auto area = [](const Open& each) {
    return (each.last - each.first + 1) * (each.high_row - each.low_row + 1);
  };
  std::stable_sort(open.begin(), open.end(),
                   [&](const Open& a, const Open& b) { return area(a) > area(b); });
  std::vector<CoverGap> gaps;
  for (const Open& each : open) {
    CoverGap gap;
    gap.sheath_low_mm = map.sheath.edge_mm(each.first);
    gap.sheath_high_mm = map.sheath.edge_mm(each.last + 1);
    if (map.armoured) {
      gap.bedding_low_mm = map.bedding.edge_mm(each.low_row);
      gap.bedding_high_mm = map.bedding.edge_mm(each.high_row + 1);
    }
    gaps.push_back(gap);
  }
  return gaps;
}

}  // namespace cutback::fit
