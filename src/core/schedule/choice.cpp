#include "core/schedule/choice.hpp"

#include <algorithm>
#include <numeric>

namespace cutback::schedule::detail {
namespace {

bool is_served(const std::vector<std::size_t>& columns, const Choice& choice) {
  return std::any_of(columns.begin(), columns.end(),
                     [&](std::size_t column) { return choice[column]; });
}

}  // namespace

Local local_of(const Cover& cover, const std::vector<Part>& parts) {
  Local local;
  local.parts = cover.columns(parts);
  std::vector<std::size_t> number(parts.size());
  for (std::size_t i = 0; i < local.parts.size(); ++i) {
    number[local.parts[i]] = i;
    local.cost_units.push_back(parts[local.parts[i]].cost_units);
  }
  for (const EndGroup& row : cover.rows) {
    std::vector<std::size_t>& columns = local.rows.emplace_back();
    for (const std::size_t part : row.parts) columns.push_back(number[part]);
    local.ends.push_back(row.ends);
  }
  return local;
}

std::int64_t ends_served(const Local& local, const Choice& choice) {
  std::int64_t sum = 0;
  for (std::size_t row = 0; row < local.rows.size(); ++row) {
    if (is_served(local.rows[row], choice)) sum += local.ends[row];
  }
  return sum;
}

bool covers_all(const Local& local, const Choice& choice) {
  return ends_served(local, choice) ==
         std::accumulate(local.ends.begin(), local.ends.end(), std::int64_t{0});
}

std::int64_t total(const std::vector<std::int64_t>& weight, const Choice& choice) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < choice.size(); ++i) {
    if (choice[i]) sum += weight[i];
  }
  return sum;
}

bool take_best(const Local& local, const std::vector<std::int64_t>& weight, Choice& choice) {
  std::vector<std::int64_t> gain(choice.size(), 0);
  for (std::size_t row = 0; row < local.rows.size(); ++row) {
    if (is_served(local.rows[row], choice)) continue;
    for (const std::size_t column : local.rows[row]) gain[column] += local.ends[row];
  }
  std::size_t best = 0;
  double best_value = 0.0;
  for (std::size_t i = 0; i < gain.size(); ++i) {
    const double value =
        static_cast<double>(gain[i]) / static_cast<double>(std::max<std::int64_t>(weight[i], 1));
    if (value <= best_value) continue;
    best = i;
    best_value = value;
  }
  if (best_value > 0.0) choice[best] = true;
  return best_value > 0.0;
}

Choice greedy(const Local& local, const std::vector<std::int64_t>& weight, std::size_t most) {
  Choice choice(local.parts.size(), false);
  for (std::size_t taken = 0; taken < most; ++taken) {
    if (!take_best(local, weight, choice)) break;  // all are served
  }
  return choice;
}

void drop_needless(const Local& local, const std::vector<std::int64_t>& weight, Choice& choice) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < choice.size(); ++i) {
    if (choice[i]) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return weight[a] > weight[b]; });
  for (const std::size_t column : order) {
    choice[column] = false;
    if (!covers_all(local, choice)) choice[column] = true;
  }
}

Choice choice_of(const ProgramResult& result, std::size_t columns) {
  if (result.x.size() < columns) return {};
  Choice choice(columns);
  for (std::size_t i = 0; i < columns; ++i) choice[i] = result.x[i] > 0.5;
  return choice;
}

}  // namespace cutback::schedule::detail
