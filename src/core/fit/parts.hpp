#pragma once
// What a look at one gland consists of, for check_gland and for the search through a long list.

#include <array>
#include <cstddef>

#include "core/fit/checks.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit::detail {

/// Whether a gland of this sealing would be filled with compound here.
bool made_off_as_barrier(gland::Sealing sealing, const area::Demand& demand);

/// What the checks that compare a diameter with the gland come to: at most four.
class DiameterFindings {
 public:
  DiameterFindings(const cable::Cable& cable, const gland::Gland& gland, bool barrier);
  [[nodiscard]] const Finding* begin() const { return list_.data(); }
  [[nodiscard]] const Finding* end() const { return list_.data() + size_; }

 private:
  void add(const std::optional<Finding>& finding);

  std::array<Finding, 4> list_;
  std::size_t size_ = 0;
};

/// Adds the checks in which the gland's ranges of diameters play no part. Of the diameters, only
/// the bedding plays a part, and only in a gland that is made off as a barrier.
void add_other_checks(const Question& question, const gland::Gland& gland, GlandFit& fit);

/// What decides between glands of the same verdict, smaller first; a gland that does not state it
/// comes last.
double preference(const gland::Gland& gland, Prefer prefer);

/// Adds one check to how far a gland is from fitting.
void add_to(Miss& miss, const Finding& finding);

}  // namespace cutback::fit::detail
