#include "core/fit/kinds.hpp"

#include <numeric>
#include <utility>

namespace cutback::fit::detail {

Kinds::Kinds(std::vector<std::uint32_t> of_place, std::vector<const gland::Gland*> members)
    : of_place_(std::move(of_place)), members_(std::move(members)), first_(members_.size() + 1, 0) {
  for (const std::uint32_t kind : of_place_) {
    if (kind != k_none) ++first_[kind + 1];
  }
  std::partial_sum(first_.begin(), first_.end(), first_.begin());
  places_.resize(of_place_.size());
  std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
  for (std::size_t place = 0; place < of_place_.size(); ++place) {
    if (of_place_[place] == k_none) continue;
    places_[next[of_place_[place]]++] = static_cast<std::uint32_t>(place);
  }
}

}  // namespace cutback::fit::detail
