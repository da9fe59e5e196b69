#pragma once
// "Did you mean ...?"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace cutback {

/// Of candidates that come one after the other, the one with the smallest edit distance to `given`
/// (case ignored).
class Nearest {
 public:
  explicit Nearest(std::string given);
  void offer(std::string_view candidate);
  /// Empty when none is near enough to be meant (more than a third of the letters would change).
  [[nodiscard]] const std::string& best() const { return best_; }

 private:
  std::string given_;
  std::string best_;
  std::size_t distance_;  ///< a candidate must be nearer than this
};

/// The same of candidates that are all there.
[[nodiscard]] std::string nearest(std::string_view given,
                                  std::span<const std::string_view> candidates);

/// A hint for a message: `did you mean "x"?`, or an empty string. Where no candidate is near, those
/// that begin with what was given are offered, three at most. It never offers `none`.
/// @param graded  one candidate asks for more than another: only a slip of case is one
[[nodiscard]] std::string did_you_mean(std::string_view given,
                                       std::span<const std::string_view> candidates,
                                       bool graded = false);

}  // namespace cutback
