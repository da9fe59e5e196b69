#pragma once
// What a look at one gland consists of, for check_gland and for the search through a long list.

#include <array>
#include <cstddef>

#include "core/fit/checks.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit::detail {

/// Whether this gland would be filled with compound here.
bool made_off_as_barrier(const gland::Gland& gland, const area::Demand& demand);

/// The checks that compare a diameter with the gland: at most four.
class DiameterChecks {
 public:
  DiameterChecks(const cable::Cable& cable, const gland::Gland& gland, bool barrier, Words words);
  [[nodiscard]] const Check* begin() const { return list_.data(); }
  [[nodiscard]] const Check* end() const { return list_.data() + size_; }
  [[nodiscard]] Check* begin() { return list_.data(); }
  [[nodiscard]] Check* end() { return list_.data() + size_; }

 private:
  void add(std::optional<Check> check);

  std::array<Check, 4> list_;
  std::size_t size_ = 0;
};

/// Adds the checks in which the gland's ranges of diameters play no part. Of the diameters, only
/// the bedding plays a part, and only in a gland that is made off as a barrier.
void add_other_checks(const Question& question, const gland::Gland& gland, GlandFit& fit);

/// What decides between glands of the same verdict, smaller first; a gland that does not state it
/// comes last.
double preference(const gland::Gland& gland, Prefer prefer);

/// Adds one check to how far a gland is from fitting.
void add_to(Miss& miss, const Check& check);

}  // namespace cutback::fit::detail
