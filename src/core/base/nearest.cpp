#include "cutback/nearest.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

namespace cutback {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = row[j];
      const std::size_t change = lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1;
      row[j] = std::min({above + 1, row[j - 1] + 1, diagonal + change});
      diagonal = above;
    }
  }
  return row[b.size()];
}

}  // namespace

std::string nearest(std::string_view given, std::span<const std::string_view> candidates) {
  constexpr std::size_t k_longest = 64;  // longer words are not typing errors
  if (given.empty() || given.size() > k_longest) return {};
  std::string_view best;
  std::size_t best_distance = std::max<std::size_t>(1, (given.size() + 1) / 3) + 1;
  for (const std::string_view candidate : candidates) {
    const std::size_t distance = edit_distance(given, candidate);
    if (distance < best_distance) {
      best_distance = distance;
      best = candidate;
    }
  }
  return std::string(best);
}

std::string did_you_mean(std::string_view given, std::span<const std::string_view> candidates) {
  const std::string word = nearest(given, candidates);
  return word.empty() ? std::string{} : "did you mean \"" + word + "\"?";
}

}  // namespace cutback
