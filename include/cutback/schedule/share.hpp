#pragma once
// Limited stock, shared out over the ends of a schedule: the most ends served, and among those
// shares the cheapest. A transportation problem, solved as a minimum-cost flow.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <vector>

#include "cutback/schedule/groups.hpp"

namespace cutback::schedule {

/// Groups of ends are to be supplied with parts of limited number; an end that gets none costs the
/// penalty. Costs in units of Wanted::decimals.
struct Transport {
  struct Arc {
    std::size_t group = 0;
    std::size_t part = 0;
    std::int64_t cost = 0;
  };
  std::vector<std::int64_t> ends;   ///< of each group, above 0
  std::vector<std::int64_t> stock;  ///< of each part, at least 0
  std::vector<Arc> arcs;            ///< which part fits which group
  std::int64_t penalty = 0;
};

/// What a solver answers.
struct TransportPlan {
  std::vector<std::int64_t> flow;  ///< ends supplied along each arc
  /// The dual of each part's stock: what one more of it would save, negative or 0.
  std::vector<std::int64_t> stock_value;
};

using TransportSolver = std::function<TransportPlan(const Transport&)>;

/// A plan looked at without trust in the solver that made it.
struct TransportCheck {
  bool feasible = false;   ///< whole numbers from 0 on, no more than the ends and the stock
  std::int64_t cost = 0;   ///< of the plan, penalties among it
  std::int64_t bound = 0;  ///< no plan can cost less: the dual objective
  [[nodiscard]] bool proven() const { return feasible && cost == bound; }
};

/// Every choice of stock values of at most 0 gives a bound (weak duality): with u_g the lowest of
/// the penalty and of cost - stock value over the group's arcs, sum(ends * u) + sum(stock * value).
/// A plan whose cost equals its bound is therefore optimal.
[[nodiscard]] TransportCheck check_plan(const Transport& transport, const TransportPlan& plan);

/// Some ends of a group get this part.
struct Handed {
  std::size_t part = 0;  ///< place in Wanted::parts
  std::int64_t ends = 0;
};

struct Share {
  /// For each group what its ends get, the cheapest first, then by part code. Ends beyond the sum
  /// get none.
  std::vector<std::vector<Handed>> groups;
  std::vector<std::int64_t> used;  ///< of each part
  std::int64_t served = 0;
  std::int64_t out_of_stock = 0;  ///< ends that a part fits but that get none
  std::int64_t cost_units = 0;
  bool proven = false;  ///< optimal by its dual, recomputed here
};

/// Cheapest first, then by code: the order in which parts are offered and given out.
[[nodiscard]] bool cheaper(const Part& a, const Part& b);

/// The flow problem of a schedule; a group that no part fits is in no arc and has no row in it.
/// @param rows  the group of Wanted behind each group of the result, written over
/// @throws InputError when the sums could leave 64 bits
[[nodiscard]] Transport transport_of(const Wanted& wanted, std::vector<std::size_t>& rows);

/// @param solve  answers with an optimal plan; what it answers is checked
/// @throws InternalError when the plan is not feasible
[[nodiscard]] Share share_out(const Wanted& wanted, const TransportSolver& solve);

}  // namespace cutback::schedule
