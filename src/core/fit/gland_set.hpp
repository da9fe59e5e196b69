#pragma once
// Sets of glands, one bit each by their place in an index.

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace cutback::fit::detail {

/// Of all places.
using GlandSet = std::vector<std::uint64_t>;
inline constexpr std::size_t k_word = 64;

inline void put(GlandSet& set, std::size_t place) {
  set[place / k_word] |= std::uint64_t{1} << (place % k_word);
}

[[nodiscard]] inline bool has(const GlandSet& set, std::size_t place) {
  return (set[place / k_word] >> (place % k_word) & 1) != 0;
}

/// A set of which only the words that hold anything are kept, so that nobody walks over the others.
class SparseSet {
 public:
  SparseSet() = default;
  explicit SparseSet(const GlandSet& set) {
    const auto words = static_cast<std::size_t>(
        std::count_if(set.begin(), set.end(), [](std::uint64_t bits) { return bits != 0; }));
    words_.reserve(words);
    bits_.reserve(words);
    for (std::size_t word = 0; word < set.size(); ++word) {
      add(static_cast<std::uint32_t>(word), set[word]);
    }
  }

  void clear() {
    words_.clear();
    bits_.clear();
  }
  /// @param word  above those that were added before
  void add(std::uint32_t word, std::uint64_t bits) {
    if (bits == 0) return;
    words_.push_back(word);
    bits_.push_back(bits);
  }
  [[nodiscard]] bool empty() const { return words_.empty(); }
  [[nodiscard]] std::size_t words() const { return words_.size(); }
  [[nodiscard]] std::uint32_t word(std::size_t i) const { return words_[i]; }
  [[nodiscard]] std::uint64_t bits(std::size_t i) const { return bits_[i]; }

  [[nodiscard]] std::size_t count() const {
    std::size_t sum = 0;
    for (const std::uint64_t bits : bits_) sum += static_cast<std::size_t>(std::popcount(bits));
    return sum;
  }

  /// Calls use(place) for each place of word number i, in order, until it returns false.
  template <class Use>
  void for_each_in(std::size_t i, Use use) const {
    for (std::uint64_t bits = bits_[i]; bits != 0; bits &= bits - 1) {
      if (!use(words_[i] * k_word + static_cast<std::size_t>(std::countr_zero(bits)))) return;
    }
  }
  template <class Use>
  void for_each(Use use) const {
    for (std::size_t i = 0; i < words_.size(); ++i) {
      for_each_in(i, [&](std::size_t place) {
        use(place);
        return true;
      });
    }
  }

 private:
  std::vector<std::uint32_t> words_;  ///< ascending
  std::vector<std::uint64_t> bits_;   ///< of each, never 0
};

/// Counts for each bit of one word how often it was added, up to 31 times.
class BitCount {
 public:
  void add(std::uint64_t bits) {
    for (std::uint64_t& plane : planes_) {
      const std::uint64_t both = plane & bits;
      plane ^= bits;
      bits = both;
    }
  }
  /// The bits that were added `times` times.
  [[nodiscard]] std::uint64_t counted(std::size_t times) const {
    std::uint64_t bits = ~std::uint64_t{0};
    for (std::size_t i = 0; i < planes_.size(); ++i) {
      bits &= (times >> i & 1) != 0 ? planes_[i] : ~planes_[i];
    }
    return bits;
  }
  /// The counts in binary, one bit of each per plane, the lowest first.
  [[nodiscard]] const std::array<std::uint64_t, 5>& planes() const { return planes_; }

 private:
  std::array<std::uint64_t, 5> planes_{};
};

/// What is in both.
inline void intersect(const SparseSet& a, const SparseSet& b, SparseSet& both) {
  both.clear();
  for (std::size_t i = 0, j = 0; i < a.words() && j < b.words();) {
    if (a.word(i) == b.word(j)) both.add(a.word(i), a.bits(i) & b.bits(j));
    const bool next_a = a.word(i) <= b.word(j);
    const bool next_b = b.word(j) <= a.word(i);
    i += next_a ? 1 : 0;
    j += next_b ? 1 : 0;
  }
}

}  // namespace cutback::fit::detail
