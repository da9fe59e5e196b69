#include "core/fit/gland_reads.hpp"

#include <algorithm>
#include <string>
#include <unordered_map>

#include "cutback/gland/columns.hpp"

namespace cutback::fit::detail {
namespace {

using Numbers = std::vector<std::uint32_t>;

/// Gives equal things the same number, from 0 in the order in which they come.
template <class Thing>
class Numbering {
 public:
  std::uint32_t of(const Thing& thing) {
    return known_.try_emplace(thing, static_cast<std::uint32_t>(known_.size())).first->second;
  }
  [[nodiscard]] std::size_t count() const { return known_.size(); }

 private:
  std::unordered_map<Thing, std::uint32_t> known_;
};

Numbers values_of(const gland::Column& column, std::span<const gland::Gland* const> glands) {
  Numbers numbers(glands.size(), 0);
  Numbering<double> figures;
  Numbering<std::string> texts;
  for (std::size_t i = 0; i < glands.size(); ++i) {
    if (glands[i] == nullptr) continue;
    // 0 is that of a blank cell.
    if (const auto figure = gland::number_of(*glands[i], column)) {
      numbers[i] = 1 + figures.of(*figure);
    } else if (const auto text = gland::text_of(*glands[i], column)) {
      numbers[i] = 1 + texts.of(*text);
    }
  }
  return numbers;
}

}  // namespace

GlandColumns::GlandColumns(std::span<const gland::Gland* const> glands) : glands_(glands) {
  for (const gland::Column& column : gland::columns()) {
    values_.emplace_back();
    if (!column.checks || !column.checks->any()) continue;
    Numbers numbers = values_of(column, glands);
    const bool alike =
        std::adjacent_find(numbers.begin(), numbers.end(), std::not_equal_to<>()) == numbers.end();
    if (!alike) values_.back() = std::move(numbers);
  }
}

std::vector<std::uint32_t> GlandColumns::told_apart_by(CheckName check) const {
  Numbers kinds(glands_.size(), 0);
  for (std::size_t column = 0; column < values_.size(); ++column) {
    const auto& checks = gland::columns()[column].checks;
    if (values_[column].empty() || !checks || !checks->has(check)) continue;
    Numbering<std::uint64_t> pairs;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
      if (glands_[i] == nullptr) continue;
      kinds[i] = pairs.of(std::uint64_t{kinds[i]} << 32U | values_[column][i]);
    }
  }
  return kinds;
}

}  // namespace cutback::fit::detail
