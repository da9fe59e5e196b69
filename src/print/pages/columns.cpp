#include "print/pages/columns.hpp"

#include <algorithm>

namespace cutback::print {
namespace {

constexpr double k_enough_mm = 1e-6;

/// Whether a column soon after this one is longer: the first ones may be short, those of a card all
/// alike.
bool has_longer(const std::function<double(std::size_t)>& room, std::size_t column) {
  constexpr std::size_t k_soon = 4;
  for (std::size_t next = column + 1; next <= column + k_soon; ++next) {
    if (room(next) > room(column) + k_enough_mm) return true;
  }
  return false;
}

/// A block and those before it that must not be parted from it.
std::size_t end_of_group(std::span<const Measured> blocks, std::size_t first) {
  while (first + 1 < blocks.size() && !blocks[first].may_end) ++first;
  return first + 1;
}

}  // namespace

std::vector<std::size_t> fill_columns(std::span<const Measured> blocks,
                                      const std::function<double(std::size_t)>& room) {
  std::vector<std::size_t> columns;
  std::size_t column = 0;
  double used = 0.0;
  for (std::size_t i = 0; i < blocks.size();) {
    const std::size_t end = end_of_group(blocks, i);
    double height = 0.0;
    for (std::size_t j = i; j < end; ++j) height += blocks[j].height;
    if (used > 0.0 && used + height > room(column) + k_enough_mm) {
      ++column;
      used = 0.0;
    }
    // An empty column that is too short for it is left empty where a longer one follows.
    while (used == 0.0 && height > room(column) + k_enough_mm && has_longer(room, column)) ++column;
    for (; i < end; ++i) columns.push_back(column);
    used += height;
  }
  return columns;
}

double balanced_height(std::span<const Measured> blocks, std::size_t columns, double most) {
  const auto fits = [&](double height) {
    const auto places = fill_columns(blocks, [&](std::size_t) { return height; });
    if (!places.empty() && places.back() >= columns) return false;
    // What stands alone in a column may be higher than it.
    std::vector<double> used(columns, 0.0);
    for (std::size_t i = 0; i < places.size(); ++i) used[places[i]] += blocks[i].height;
    return std::all_of(used.begin(), used.end(),
                       [&](double one) { return one <= height + k_enough_mm; });
  };
  if (!fits(most)) return most + 1.0;
  double low = 0.0;
  double high = most;
  constexpr int k_halvings = 9;
  for (int i = 0; i < k_halvings; ++i) {
    const double middle = (low + high) / 2.0;
    (fits(middle) ? high : low) = middle;
  }
  return high;
}

}  // namespace cutback::print
