#include "cutback/nearest.hpp"

#include <algorithm>
#include <numeric>
#include <utility>
#include <vector>

#include "cutback/text.hpp"

namespace cutback {
namespace {

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = row[j];
      const std::size_t change = small_letter(a[i - 1]) == small_letter(b[j - 1]) ? 0 : 1;
      row[j] = std::min({above + 1, row[j - 1] + 1, diagonal + change});
      diagonal = above;
    }
  }
  return row[b.size()];
}

/// Case ignored.
bool begins_with(std::string_view text, std::string_view begin) {
  return text.size() >= begin.size() &&
         std::equal(begin.begin(), begin.end(), text.begin(),
                    [](char a, char b) { return small_letter(a) == small_letter(b); });
}

/// Whether one word is the other with un-, non- or not in front: its opposite, not a slip.
bool denies(std::string_view given, std::string_view candidate) {
  const std::string small = small_letters(given);
  const std::string word = small_letters(candidate);
  for (const std::string_view before : {"un", "non", "non-", "not ", "not-"}) {
    if (small == std::string(before) + word || word == std::string(before) + small) return true;
  }
  return false;
}

}  // namespace

Nearest::Nearest(std::string given)
    : given_(std::move(given)), distance_(std::max<std::size_t>(1, (given_.size() + 1) / 3) + 1) {
  constexpr std::size_t k_longest = 64;  // longer words are not typing errors
  if (given_.empty() || given_.size() > k_longest) distance_ = 0;
}

void Nearest::offer(std::string_view candidate) {
  const std::size_t longer = std::max(given_.size(), candidate.size());
  const std::size_t shorter = std::min(given_.size(), candidate.size());
  if (longer - shorter >= distance_) return;
  const std::size_t distance = edit_distance(given_, candidate);
  if (distance >= distance_) return;
  distance_ = distance;
  best_ = candidate;
}

std::string nearest(std::string_view given, std::span<const std::string_view> candidates) {
  Nearest nearest{std::string(given)};
  for (const std::string_view candidate : candidates) nearest.offer(candidate);
  return nearest.best();
}

std::string did_you_mean(std::string_view given, std::span<const std::string_view> candidates,
                         bool graded) {
  Nearest nearest{std::string(given)};
  for (const std::string_view candidate : candidates) {
    // It asks for less than any other word: nobody may arrive at it by a slip.
    if (candidate == "none" || (graded && edit_distance(given, candidate) > 0)) continue;
    if (denies(given, candidate)) continue;
    nearest.offer(candidate);
  }
  std::string words = nearest.best();
  if (!words.empty()) return "did you mean \"" + words + "\"?";
  if (graded) return {};
  constexpr std::size_t k_least = 3;  // letters that tell something
  constexpr std::size_t k_most = 3;   // words that help
  std::size_t count = 0;
  for (const std::string_view candidate : candidates) {
    if (candidate == "none" || !begins_with(candidate, given) || ++count > k_most) continue;
    words += (words.empty() ? "\"" : " or \"") + std::string(candidate) + "\"";
  }
  if (given.size() < k_least || words.empty()) return {};
  if (count > k_most) words += ", or another of " + std::to_string(count);
  return "did you mean " + words + "?";
}

}  // namespace cutback
