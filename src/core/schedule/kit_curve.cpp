#include "core/schedule/kit_curve.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/schedule/choice.hpp"
#include "core/schedule/cover.hpp"

namespace cutback::schedule::detail {
namespace {

/// Of the time that is left, for one step of the curve.
constexpr double k_time_share = 0.25;

/// The most ends of one component that 0, 1, 2 ... of its parts serve.
struct ComponentCurve {
  std::vector<Choice> choices;
  std::vector<std::int64_t> ends;
  std::vector<bool> exact;
};

/// The columns chosen, then for each row whether it is served.
Program coverage(const Local& local, std::size_t parts, const Choice& start) {
  Program program;
  const std::size_t columns = local.parts.size();
  program.objective.assign(columns, 0.0);
  program.whole.assign(columns, true);
  program.start.assign(start.begin(), start.end());
  program.time_share = k_time_share;
  Program::Row& count = program.rows.emplace_back();
  count.lower = 0.0;
  count.upper = static_cast<double>(parts);
  for (std::size_t i = 0; i < columns; ++i) count.terms.emplace_back(i, 1.0);
  for (std::size_t i = 0; i < local.rows.size(); ++i) {
    const auto& of = local.rows[i];
    program.objective.push_back(-static_cast<double>(local.ends[i]));
    program.whole.push_back(false);
    const bool served =
        std::any_of(of.begin(), of.end(), [&](std::size_t column) { return start[column]; });
    program.start.push_back(served ? 1.0 : 0.0);
    Program::Row row;
    row.lower = 0.0;
    row.upper = Program::k_no_limit;
    for (const std::size_t column : of) row.terms.emplace_back(column, 1.0);
    row.terms.emplace_back(columns + i, -1.0);
    program.rows.push_back(std::move(row));
  }
  return program;
}

/// The next step of a component: the best of two greedy choices and the solver's.
void add_step(const Local& local, const ProgramSolver& solve, ComponentCurve& curve) {
  const std::size_t parts = curve.choices.size();
  const std::vector<std::int64_t> ones(local.parts.size(), 1);
  Choice best = curve.choices.back();
  take_best(local, ones, best);
  Choice other = greedy(local, ones, parts);
  if (ends_served(local, other) > ends_served(local, best)) best = std::move(other);
  std::int64_t ends = ends_served(local, best);
  bool exact = parts == 1 || covers_all(local, best);
  if (!exact) {
    const ProgramResult result = solve(coverage(local, parts, best));
    const Choice found = choice_of(result, local.parts.size());
    const bool allowed = !found.empty() && total(ones, found) <= static_cast<std::int64_t>(parts);
    if (allowed && ends_served(local, found) > ends) {
      best = found;
      ends = ends_served(local, best);
    }
    exact = (result.proven && allowed && ends_served(local, found) == ends) ||
            static_cast<double>(ends) >= std::floor(-result.bound + 1e-6);
  }
  curve.choices.push_back(std::move(best));
  curve.ends.push_back(ends);
  curve.exact.push_back(exact);
}

ComponentCurve curve_of(const Local& local, std::size_t most, const ProgramSolver& solve) {
  ComponentCurve curve;
  curve.choices.emplace_back(local.parts.size(), false);
  curve.ends.push_back(0);
  curve.exact.push_back(true);
  while (curve.choices.size() <= most && !covers_all(local, curve.choices.back())) {
    add_step(local, solve, curve);
  }
  return curve;
}

/// The best way to share `k` parts between the components so far and one more.
struct Mix {
  std::vector<std::int64_t> ends{0};
  std::vector<std::vector<std::size_t>> taken{{}};  ///< parts of each component
  std::vector<bool> exact{true};

  void add(const ComponentCurve& curve, std::size_t most) {
    Mix mix;
    mix.ends.clear();
    mix.taken.clear();
    mix.exact.clear();
    const std::size_t last = std::min(most, ends.size() + curve.ends.size() - 2);
    for (std::size_t k = 0; k <= last; ++k) {
      std::size_t best = 0;
      std::int64_t best_ends = -1;
      bool all_exact = true;
      for (std::size_t own = 0; own < curve.ends.size() && own <= k; ++own) {
        if (k - own >= ends.size()) continue;
        all_exact = all_exact && curve.exact[own] && exact[k - own];
        const std::int64_t sum = ends[k - own] + curve.ends[own];
        if (sum <= best_ends) continue;
        best_ends = sum;
        best = own;
      }
      mix.ends.push_back(best_ends);
      mix.exact.push_back(all_exact);
      mix.taken.push_back(taken[k - best]);
      mix.taken.back().push_back(best);
    }
    *this = std::move(mix);
  }
};

}  // namespace

std::vector<KitStep> curve_of(const Wanted& wanted, std::size_t most, const ProgramSolver& solve) {
  std::vector<Local> locals;
  std::vector<ComponentCurve> curves;
  Mix mix;
  for (const Cover& cover : reduce_for_curve(wanted)) {
    locals.push_back(local_of(cover, wanted.parts));
    curves.push_back(curve_of(locals.back(), most, solve));
    mix.add(curves.back(), most);
  }
  std::vector<KitStep> steps;
  for (std::size_t k = 1; k < mix.ends.size(); ++k) {
    KitStep step{.parts = {}, .ends = mix.ends[k], .exact = mix.exact[k]};
    for (std::size_t i = 0; i < locals.size(); ++i) {
      const Choice& choice = curves[i].choices[mix.taken[k][i]];
      for (std::size_t column = 0; column < choice.size(); ++column) {
        if (choice[column]) step.parts.push_back(locals[i].parts[column]);
      }
    }
    std::sort(step.parts.begin(), step.parts.end(), [&](std::size_t a, std::size_t b) {
      return wanted.parts[a].code < wanted.parts[b].code;
    });
    steps.push_back(std::move(step));
  }
  return steps;
}

}  // namespace cutback::schedule::detail
