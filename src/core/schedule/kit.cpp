#include "cutback/schedule/kit.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/schedule/choice.hpp"
#include "core/schedule/cover.hpp"
#include "core/schedule/kit_curve.hpp"

namespace cutback::schedule {
namespace {

using detail::Choice;
using detail::Local;
using detail::total;
using Weight = std::vector<std::int64_t>;

/// The columns whose order is settled in one program: their weights 2^0 to 2^19 stay exact.
constexpr std::size_t k_columns_settled = 20;

/// Of the time that is left, for a choice between equal kits.
constexpr double k_share_between_equals = 0.25;

/// A sum that must not be exceeded.
struct Cap {
  const Weight* weight = nullptr;
  std::int64_t most = 0;
};

std::vector<double> as_doubles(const Weight& weight) { return {weight.begin(), weight.end()}; }

Program covering(const Local& local, const Weight& objective, const std::vector<Cap>& caps,
                 const Choice& start) {
  Program program;
  program.objective = as_doubles(objective);
  program.whole.assign(objective.size(), true);
  program.start.assign(start.begin(), start.end());
  for (const auto& columns : local.rows) {
    Program::Row& row = program.rows.emplace_back();
    row.lower = 1.0;
    row.upper = Program::k_no_limit;
    for (const std::size_t column : columns) row.terms.emplace_back(column, 1.0);
  }
  for (const Cap& cap : caps) {
    Program::Row& row = program.rows.emplace_back();
    row.lower = -Program::k_no_limit;
    row.upper = static_cast<double>(cap.most);
    for (std::size_t i = 0; i < objective.size(); ++i) {
      if ((*cap.weight)[i] != 0) row.terms.emplace_back(i, static_cast<double>((*cap.weight)[i]));
    }
  }
  return program;
}

struct Solved {
  Choice choice;
  std::int64_t bound = 0;
  bool proven = false;
};

/// The least whole number that is not below a bound in floating point.
std::int64_t whole_bound(double bound) {
  constexpr double k_lowest = -9e18;
  if (!(bound > k_lowest)) return std::numeric_limits<std::int64_t>::min();
  return static_cast<std::int64_t>(std::ceil(bound - std::max(1e-6, std::abs(bound) * 1e-9)));
}

/// The best of what the solver found and what there was; what it found is added up again here.
Solved improve(const Local& local, const Weight& objective, const std::vector<Cap>& caps,
               Choice start, const ProgramSolver& solve) {
  Program program = covering(local, objective, caps, start);
  if (!caps.empty()) program.time_share = k_share_between_equals;
  const ProgramResult result = solve(program);
  Solved solved{.choice = std::move(start), .bound = whole_bound(result.bound), .proven = false};
  const Choice found = detail::choice_of(result, objective.size());
  const bool allowed = !found.empty() && covers_all(local, found) &&
                       std::all_of(caps.begin(), caps.end(), [&](const Cap& cap) {
                         return total(*cap.weight, found) <= cap.most;
                       });
  if (allowed && total(objective, found) <= total(objective, solved.choice)) solved.choice = found;
  // Above that its own tolerances could hide a unit; the bound alone, rounded to the safe side,
  // then decides.
  constexpr std::int64_t k_exact = std::int64_t{1} << 31U;
  const Choice all(objective.size(), true);
  const bool exact = total(objective, all) <= k_exact;
  if (result.proven && allowed && exact) solved.bound = total(objective, found);
  solved.proven = total(objective, solved.choice) <= solved.bound;
  return solved;
}

/// Rows without a column in common need a column each: a bound without a solver.
std::int64_t packing_bound(const Local& local, const Weight& weight) {
  std::vector<std::size_t> order(local.rows.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return local.rows[a].size() < local.rows[b].size();
  });
  std::vector<bool> used(weight.size(), false);
  std::int64_t bound = 0;
  for (const std::size_t row : order) {
    const auto& columns = local.rows[row];
    if (std::any_of(columns.begin(), columns.end(), [&](std::size_t c) { return used[c]; })) {
      continue;
    }
    std::int64_t least = weight[columns.front()];
    for (const std::size_t column : columns) {
      used[column] = true;
      least = std::min(least, weight[column]);
    }
    bound += least;
  }
  return bound;
}

/// Among the kits within the caps the one whose part codes come first: columns are taken or left in
/// the order of their codes, some at a time.
bool settle_codes(const Local& local, std::vector<Cap> caps, Choice& choice,
                  const ProgramSolver& solve) {
  const std::size_t count = choice.size();
  std::vector<Weight> settled;  // owned here, as caps point to them
  settled.reserve(count / k_columns_settled + 1);
  for (std::size_t from = 0; from < count; from += k_columns_settled) {
    Weight first(count, 0);
    const std::size_t to = std::min(count, from + k_columns_settled);
    for (std::size_t i = from; i < to; ++i) first[i] = -(std::int64_t{1} << (to - 1 - i));
    const Solved solved = improve(local, first, caps, choice, solve);
    choice = solved.choice;
    if (!solved.proven) return false;
    settled.push_back(std::move(first));
    caps.push_back({.weight = &settled.back(), .most = total(settled.back(), choice)});
  }
  return true;
}

struct ComponentKit {
  Choice choice;
  std::int64_t bound = 0;
  bool proven = false;
  bool ties_broken = false;
};

ComponentKit choose_component(const Local& local, KitBy by, const ProgramSolver& solve) {
  const Weight ones(local.parts.size(), 1);
  const Weight& first = by == KitBy::parts ? ones : local.cost_units;
  const Weight& second = by == KitBy::parts ? local.cost_units : ones;
  Choice start = detail::greedy(local, first, local.parts.size());
  drop_needless(local, first, start);
  const std::int64_t packed = packing_bound(local, first);
  Solved best = improve(local, first, {}, std::move(start), solve);
  best.bound = std::max(best.bound, packed);
  best.proven = total(first, best.choice) <= best.bound;
  ComponentKit chosen{.choice = best.choice, .bound = best.bound, .proven = best.proven};
  if (!best.proven) return chosen;
  std::vector<Cap> caps{{.weight = &first, .most = total(first, best.choice)}};
  Solved cheaper = improve(local, second, caps, best.choice, solve);
  chosen.choice = cheaper.choice;
  if (!cheaper.proven) return chosen;
  caps.push_back({.weight = &second, .most = total(second, cheaper.choice)});
  chosen.ties_broken = settle_codes(local, caps, chosen.choice, solve);
  return chosen;
}

/// Which parts of the kit fit how many ends; the last step of the curve serves all.
void count_ends(const Wanted& wanted, Kit& kit) {
  std::vector<KitPart*> of(wanted.parts.size(), nullptr);
  for (KitPart& part : kit.parts) of[part.part] = &part;
  for (const EndGroup& group : wanted.groups) {
    KitPart* last = nullptr;
    int fitting = 0;
    for (const std::size_t part : group.parts) {
      if (of[part] == nullptr) continue;
      last = of[part];
      last->fits += group.ends;
      ++fitting;
    }
    if (fitting == 1) last->alone += group.ends;
    (group.parts.empty() ? kit.not_served : kit.served) += group.ends;
  }
  if (!kit.curve.empty()) kit.curve.back().ends = kit.served;
}

void take(const Wanted& wanted, std::size_t part, Kit& kit) {
  kit.parts.push_back({.part = part});
  kit.cost_units += wanted.parts[part].cost_units;
}

void sort_by_code(const Wanted& wanted, std::vector<KitPart>& parts) {
  std::sort(parts.begin(), parts.end(), [&](const KitPart& a, const KitPart& b) {
    return wanted.parts[a.part].code < wanted.parts[b.part].code;
  });
}

/// Kit and curve are solved apart, and where time was short one may be better than the other.
void agree(const Wanted& wanted, KitBy by, Kit& kit) {
  if (kit.parts.empty()) return;
  if (by == KitBy::parts && kit.curve.size() < kit.parts.size()) {
    kit.parts.clear();
    kit.cost_units = 0;
    for (const std::size_t part : kit.curve.back().parts) take(wanted, part, kit);
    kit.proven = static_cast<std::int64_t>(kit.parts.size()) <= kit.bound;
    kit.ties_broken = false;
  }
  if (kit.curve.size() < kit.parts.size()) return;
  KitStep& last = kit.curve.back();
  last = {};
  last.exact = true;
  for (const KitPart& part : kit.parts) last.parts.push_back(part.part);
}

}  // namespace

Kit choose_kit(const Wanted& wanted, KitBy by, const ProgramSolver& solve) {
  const detail::Reduced reduced = detail::reduce_for_kit(wanted);
  Kit kit;
  kit.proven = true;
  kit.ties_broken = true;
  for (const std::size_t part : reduced.forced) {
    take(wanted, part, kit);
    kit.bound += by == KitBy::parts ? 1 : wanted.parts[part].cost_units;
  }
  for (const detail::Cover& cover : reduced.components) {
    const Local local = detail::local_of(cover, wanted.parts);
    kit.rows += local.rows.size();
    kit.columns += local.parts.size();
    const ComponentKit chosen = choose_component(local, by, solve);
    for (std::size_t i = 0; i < local.parts.size(); ++i) {
      if (chosen.choice[i]) take(wanted, local.parts[i], kit);
    }
    kit.bound += chosen.bound;
    kit.proven = kit.proven && chosen.proven;
    kit.ties_broken = kit.ties_broken && chosen.ties_broken;
  }
  sort_by_code(wanted, kit.parts);
  kit.curve = detail::curve_of(wanted, kit.parts.size(), solve);
  agree(wanted, by, kit);
  count_ends(wanted, kit);
  return kit;
}

}  // namespace cutback::schedule
