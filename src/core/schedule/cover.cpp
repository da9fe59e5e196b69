#include "core/schedule/cover.hpp"

#include <algorithm>
#include <bit>
#include <map>
#include <numeric>

namespace cutback::schedule::detail {
namespace {

/// A set of rows or of columns, one bit each.
class Bits {
 public:
  explicit Bits(std::size_t count = 0) : words_((count + 63) / 64, 0) {}
  void put(std::size_t i) { words_[i / 64] |= std::uint64_t{1} << (i % 64); }
  void drop(std::size_t i) { words_[i / 64] &= ~(std::uint64_t{1} << (i % 64)); }
  [[nodiscard]] bool has(std::size_t i) const { return (words_[i / 64] >> (i % 64) & 1) != 0; }
  void keep(const Bits& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= other.words_[i];
  }
  [[nodiscard]] std::size_t count() const {
    std::size_t sum = 0;
    for (const std::uint64_t word : words_) sum += static_cast<std::size_t>(std::popcount(word));
    return sum;
  }
  template <class Use>
  void each(Use use) const {
    for (std::size_t i = 0; i < words_.size(); ++i) {
      for (std::uint64_t bits = words_[i]; bits != 0; bits &= bits - 1) {
        use(i * 64 + static_cast<std::size_t>(std::countr_zero(bits)));
      }
    }
  }

 private:
  std::vector<std::uint64_t> words_;
};

/// The cover both ways round, with what is still in it.
class Matrix {
 public:
  Matrix(const Wanted& wanted, bool price_counts)
      : parts_(wanted.parts), price_counts_(price_counts), columns_(wanted.parts.size()) {
    for (const EndGroup& group : wanted.groups) {
      if (group.parts.empty() || group.ends == 0) continue;
      ends_.push_back(group.ends);
      Bits& row = by_row_.emplace_back(parts_.size());
      for (const std::size_t part : group.parts) row.put(part);
    }
    rows_ = Bits(by_row_.size());
    by_column_.assign(parts_.size(), Bits(by_row_.size()));
    for (std::size_t i = 0; i < by_row_.size(); ++i) {
      rows_.put(i);
      by_row_[i].each([&](std::size_t column) {
        by_column_[column].put(i);
        columns_.put(column);
      });
    }
  }

  bool drop_dominated_columns();
  bool drop_dominated_rows();
  bool take_forced(std::vector<std::size_t>& forced);
  [[nodiscard]] std::vector<Cover> components() const;

 private:
  [[nodiscard]] Bits columns_of(std::size_t row) const {
    Bits set = by_row_[row];
    set.keep(columns_);
    return set;
  }
  [[nodiscard]] Bits rows_of(std::size_t column) const {
    Bits set = by_column_[column];
    set.keep(rows_);
    return set;
  }
  /// Whether `other`, which covers all that `column` does, makes it needless.
  [[nodiscard]] bool replaces(std::size_t other, std::size_t column, std::size_t rows) const {
    const Part& a = parts_[column];
    const Part& b = parts_[other];
    if (price_counts_ && b.cost_units > a.cost_units) return false;
    if (rows_of(other).count() > rows) return true;
    if (b.cost_units != a.cost_units) return b.cost_units < a.cost_units;
    return b.code < a.code;
  }

  const std::vector<Part>& parts_;
  bool price_counts_;
  std::vector<std::int64_t> ends_;
  std::vector<Bits> by_row_;
  std::vector<Bits> by_column_;
  Bits rows_;
  Bits columns_;
};

bool Matrix::drop_dominated_columns() {
  bool dropped = false;
  const Bits before = columns_;
  before.each([&](std::size_t column) {
    const Bits covered = rows_of(column);
    Bits others = columns_;
    covered.each([&](std::size_t row) { others.keep(by_row_[row]); });
    others.drop(column);
    const std::size_t rows = covered.count();
    bool needless = rows == 0;
    others.each([&](std::size_t other) { needless = needless || replaces(other, column, rows); });
    if (!needless) return;
    columns_.drop(column);
    dropped = true;
  });
  return dropped;
}

bool Matrix::drop_dominated_rows() {
  std::vector<std::pair<std::size_t, std::size_t>> by_size;
  rows_.each([&](std::size_t row) { by_size.emplace_back(columns_of(row).count(), row); });
  std::sort(by_size.begin(), by_size.end());
  bool dropped = false;
  for (const auto& sized : by_size) {
    const std::size_t row = sized.second;
    if (!rows_.has(row)) continue;
    Bits wider = rows_;  // rows with at least its columns: covered when it is
    columns_of(row).each([&](std::size_t column) { wider.keep(by_column_[column]); });
    wider.drop(row);
    wider.each([&](std::size_t other) {
      rows_.drop(other);
      dropped = true;
    });
  }
  return dropped;
}

bool Matrix::take_forced(std::vector<std::size_t>& forced) {
  const std::size_t before = forced.size();
  const Bits rows = rows_;
  rows.each([&](std::size_t row) {
    if (!rows_.has(row)) return;
    const Bits columns = columns_of(row);
    if (columns.count() != 1) return;
    columns.each([&](std::size_t column) {
      forced.push_back(column);
      columns_.drop(column);
      by_column_[column].each([&](std::size_t covered) { rows_.drop(covered); });
    });
  });
  return forced.size() > before;
}

std::vector<Cover> Matrix::components() const {
  std::vector<std::size_t> root(parts_.size());
  std::iota(root.begin(), root.end(), std::size_t{0});
  const auto find = [&](std::size_t i) {
    while (root[i] != i) i = root[i] = root[root[i]];
    return i;
  };
  std::map<PartSet, std::int64_t> merged;
  rows_.each([&](std::size_t row) {
    PartSet set;
    columns_of(row).each(
        [&](std::size_t column) { set.push_back(static_cast<std::uint32_t>(column)); });
    for (const std::uint32_t column : set) root[find(column)] = find(set.front());
    merged[set] += ends_[row];
  });
  std::map<std::size_t, std::size_t> numbers;
  std::vector<Cover> list;
  for (const auto& [set, ends] : merged) {
    const auto [at, fresh] = numbers.try_emplace(find(set.front()), list.size());
    if (fresh) list.emplace_back();
    list[at->second].rows.push_back({.ends = ends, .parts = set});
  }
  return list;
}

}  // namespace

std::vector<std::size_t> Cover::columns(const std::vector<Part>& parts) const {
  std::vector<std::size_t> list;
  for (const EndGroup& row : rows) list.insert(list.end(), row.parts.begin(), row.parts.end());
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
  std::sort(list.begin(), list.end(),
            [&](std::size_t a, std::size_t b) { return parts[a].code < parts[b].code; });
  return list;
}

Reduced reduce_for_kit(const Wanted& wanted) {
  Reduced reduced;
  Matrix matrix(wanted, true);
  bool smaller = true;
  while (smaller) {
    smaller = matrix.drop_dominated_rows();
    smaller = matrix.drop_dominated_columns() || smaller;
    smaller = matrix.take_forced(reduced.forced) || smaller;
  }
  reduced.components = matrix.components();
  return reduced;
}

std::vector<Cover> reduce_for_curve(const Wanted& wanted) {
  Matrix matrix(wanted, false);
  matrix.drop_dominated_columns();
  return matrix.components();
}

}  // namespace cutback::schedule::detail
