#include "cutback/schedule/share.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <optional>

#include "cutback/error.hpp"

namespace cutback::schedule {
namespace {

/// Room for the solver's own sums: the penalty times the number of nodes and ends.
constexpr double k_most = 4e18;

std::vector<std::size_t> offered(const Wanted& wanted, const EndGroup& group) {
  std::vector<std::size_t> order(group.parts.begin(), group.parts.end());
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return cheaper(wanted.parts[a], wanted.parts[b]);
  });
  // A part that is dearer than one without limit is never needed.
  const auto unlimited = std::find_if(order.begin(), order.end(), [&](std::size_t part) {
    return !wanted.parts[part].stock.has_value();
  });
  if (unlimited != order.end()) order.erase(unlimited + 1, order.end());
  return order;
}

void check_size(const Transport& transport) {
  const double total = std::accumulate(
      transport.ends.begin(), transport.ends.end(), 0.0,
      [](double sum, std::int64_t ends) { return sum + static_cast<double>(ends); });
  const double nodes = static_cast<double>(transport.ends.size() + transport.stock.size() + 2);
  if (static_cast<double>(transport.penalty) * std::max(total, nodes) < k_most) return;
  throw InputError(Fault{.code = ErrorCode::out_of_range,
                         .what = "the schedule is too large to share stock out at these prices",
                         .where = "--use-stock",
                         .given = {},
                         .allowed = {},
                         .hint = "share it out in pieces, or look for a price that is wrong"});
}

}  // namespace

bool cheaper(const Part& a, const Part& b) {
  return a.cost_units != b.cost_units ? a.cost_units < b.cost_units : a.code < b.code;
}

Transport transport_of(const Wanted& wanted, std::vector<std::size_t>& rows) {
  Transport transport;
  rows.clear();
  std::int64_t total = 0;
  std::int64_t dearest = 0;
  for (std::size_t i = 0; i < wanted.groups.size(); ++i) {
    const EndGroup& group = wanted.groups[i];
    if (group.parts.empty() || group.ends == 0) continue;
    for (const std::size_t part : offered(wanted, group)) {
      const std::int64_t cost = wanted.parts[part].cost_units;
      transport.arcs.push_back({.group = rows.size(), .part = part, .cost = cost});
      dearest = std::max(dearest, cost);
    }
    transport.ends.push_back(group.ends);
    rows.push_back(i);
    total += group.ends;
  }
  for (const Part& part : wanted.parts) {
    transport.stock.push_back(std::min(part.stock.value_or(total), total));
  }
  // To serve one end more, parts change hands along a path that visits each part once at most; each
  // adds the dearest price at most. One more than that sum therefore outweighs every such path, and
  // with it any saving, as a penalty above the cost of everything would.
  transport.penalty = dearest * static_cast<std::int64_t>(wanted.parts.size() + 1) + 1;
  check_size(transport);
  return transport;
}

TransportCheck check_plan(const Transport& transport, const TransportPlan& plan) {
  TransportCheck check;
  std::vector<std::int64_t> ends = transport.ends;    // still without a part
  std::vector<std::int64_t> stock = transport.stock;  // left
  std::vector<std::int64_t> dual(transport.ends.size(), transport.penalty);
  if (plan.flow.size() != transport.arcs.size() || plan.stock_value.size() != stock.size()) {
    return check;
  }
  check.feasible = true;
  for (std::size_t i = 0; i < transport.arcs.size(); ++i) {
    const Transport::Arc& arc = transport.arcs[i];
    const std::int64_t flow = plan.flow[i];
    if (flow < 0) check.feasible = false;
    ends[arc.group] -= flow;
    stock[arc.part] -= flow;
    check.cost += flow * arc.cost;
    const std::int64_t value = std::min<std::int64_t>(plan.stock_value[arc.part], 0);
    dual[arc.group] = std::min(dual[arc.group], arc.cost - value);
  }
  for (std::size_t group = 0; group < ends.size(); ++group) {
    if (ends[group] < 0) check.feasible = false;
    check.cost += ends[group] * transport.penalty;
    check.bound += transport.ends[group] * dual[group];
  }
  for (std::size_t part = 0; part < stock.size(); ++part) {
    if (stock[part] < 0) check.feasible = false;
    check.bound += transport.stock[part] * std::min<std::int64_t>(plan.stock_value[part], 0);
  }
  return check;
}

Share share_out(const Wanted& wanted, const TransportSolver& solve) {
  Share share;
  share.groups.resize(wanted.groups.size());
  share.used.assign(wanted.parts.size(), 0);
  std::vector<std::size_t> rows;
  const Transport transport = transport_of(wanted, rows);
  TransportPlan plan;
  plan.stock_value.assign(transport.stock.size(), 0);
  if (!rows.empty()) plan = solve(transport);
  const TransportCheck check = check_plan(transport, plan);
  if (!check.feasible) throw InternalError("the flow gives out more than there is");
  share.proven = check.proven();
  for (std::size_t i = 0; i < transport.arcs.size(); ++i) {
    const Transport::Arc& arc = transport.arcs[i];
    const std::int64_t ends = plan.flow[i];
    if (ends == 0) continue;
    share.groups[rows[arc.group]].push_back({.part = arc.part, .ends = ends});
    share.used[arc.part] += ends;
    share.served += ends;
    share.cost_units += ends * arc.cost;
  }
  share.out_of_stock =
      std::accumulate(transport.ends.begin(), transport.ends.end(), std::int64_t{0}) - share.served;
  return share;
}

}  // namespace cutback::schedule
