// LEMON's NetworkSimplex on SmartDigraph: its other algorithms do not compile as C++20.
#include <lemon/network_simplex.h>
#include <lemon/smart_graph.h>

#include "cutback/error.hpp"
#include "cutback/solve/solvers.hpp"

namespace cutback::solve {
namespace {

using Graph = lemon::SmartDigraph;
using Simplex = lemon::NetworkSimplex<Graph, std::int64_t, std::int64_t>;

}  // namespace

schedule::TransportPlan cheapest_plan(const schedule::Transport& transport) {
  Graph graph;
  const auto nodes = [&](std::size_t count) {
    std::vector<Graph::Node> list;
    for (std::size_t i = 0; i < count; ++i) list.push_back(graph.addNode());
    return list;
  };
  const std::vector<Graph::Node> groups = nodes(transport.ends.size());
  const std::vector<Graph::Node> parts = nodes(transport.stock.size());
  const Graph::Node sink = graph.addNode();
  Graph::ArcMap<std::int64_t> cost(graph);
  Graph::ArcMap<std::int64_t> most(graph);
  Graph::NodeMap<std::int64_t> supply(graph, 0);
  const auto add = [&](Graph::Node from, Graph::Node to, std::int64_t price, std::int64_t limit) {
    const Graph::Arc arc = graph.addArc(from, to);
    cost[arc] = price;
    most[arc] = limit;
    return arc;
  };
  std::vector<Graph::Arc> arcs;
  for (const auto& arc : transport.arcs) {
    arcs.push_back(add(groups[arc.group], parts[arc.part], arc.cost, transport.ends[arc.group]));
  }
  for (std::size_t i = 0; i < parts.size(); ++i) add(parts[i], sink, 0, transport.stock[i]);
  for (std::size_t i = 0; i < groups.size(); ++i) {
    add(groups[i], sink, transport.penalty, transport.ends[i]);
    supply[groups[i]] = transport.ends[i];
    supply[sink] -= transport.ends[i];
  }
  Simplex simplex(graph);
  simplex.costMap(cost).upperMap(most).supplyMap(supply);
  if (simplex.run() != Simplex::OPTIMAL) throw InternalError("the network simplex found no plan");
  schedule::TransportPlan plan;
  for (const Graph::Arc arc : arcs) plan.flow.push_back(simplex.flow(arc));
  for (const Graph::Node part : parts) {
    plan.stock_value.push_back(
        std::min<std::int64_t>(simplex.potential(part) - simplex.potential(sink), 0));
  }
  return plan;
}

}  // namespace cutback::solve
