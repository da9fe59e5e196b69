#pragma once
// The diameters of one end put to the glands that its question leaves open.

#include <array>
#include <limits>
#include <optional>
#include <vector>

#include "core/fit/open_glands.hpp"
#include "core/fit/order.hpp"
#include "cutback/fit/reads.hpp"

namespace cutback::fit::detail {

/// What must lie within a gland's range.
enum class Width {
  whole,   ///< the whole interval and every reading: the gland fits
  middle,  ///< the value: it is not outside
  touch,   ///< anything of the interval: it is not wholly outside
};

/// One gland looked at without words.
struct Look {
  const gland::Gland* gland = nullptr;
  Standing standing;
  Miss miss;
};

/// A search for the diameters that the question's job has now.
class DiameterSearch {
 public:
  DiameterSearch(const GlandIndex& index, const OpenGlands& open, const Question& question);

  /// Of the checks of the end alone.
  [[nodiscard]] Verdict of_end() const { return of_end_; }
  /// Puts every gland that has at least this verdict into `found`.
  void glands(Verdict least, SparseSet& found);
  /// Those that fit but for their thread, and go in behind an adaptor that is still to be had.
  void glands_through_adaptor(SparseSet& found);
  /// Glands that fit for some true diameters within the spread, and of those that are preferred
  /// less than this any or none.
  void touching(double worst_preference, SparseSet& found);

  /// The place of the first of a set of glands that have the same verdict; not empty.
  [[nodiscard]] std::size_t first_of(const SparseSet& set) const;
  /// The nearest of a set of glands that have this verdict and, whatever the diameters are, the
  /// same number of failures; not empty.
  [[nodiscard]] Look nearest_of(const SparseSet& set, Verdict verdict);
  [[nodiscard]] Look look(std::size_t place, Verdict verdict) const;

 private:
  /// What leaves glands out: the words of a set, or those of another one.
  struct Limit {
    const std::uint64_t* passing = nullptr;
    const std::uint64_t* otherwise = nullptr;  ///< may be null
    const LimitSets* inexact = nullptr;        ///< null: `passing` is exact
    double diameter_mm = 0.0;
  };
  /// The two figures that the lower and the upper limit are compared with.
  struct Interval {
    double low_mm = 0.0;
    double high_mm = 0.0;
  };
  /// One diameter of the end.
  struct Figures {
    bool known = false;
    bool capped = false;   ///< it never fits, whatever the range
    bool nominal = false;  ///< a nominal size: its margin does not count
    Interval whole;
    Interval middle;
    Interval touch;
  };

  class Failing;
  struct Counting;

  [[nodiscard]] std::vector<Counting> counting() const;
  static double margin_of(const std::vector<Counting>& counting, std::size_t place, double least);
  static double miss_of(const std::vector<Counting>& counting, std::size_t place);
  static Figures figures_of(const cable::Cable& cable, Diameter diameter);
  [[nodiscard]] const Figures& figures(const RuleSets& rule) const {
    return figures_[static_cast<std::size_t>(rule.diameter())];
  }
  void add(const LimitSets& sets, double diameter_mm);
  void add_range(const RuleSets& rule, const Interval& interval);
  void add_unlimited(const RuleSets& rule);
  void add_limits(const std::vector<const RuleSets*>& rules, Verdict least, Width width);
  void add_within(double miss_mm);
  void narrow(const SparseSet& in, SparseSet& out,
              double worst_preference = std::numeric_limits<double>::infinity()) const;
  void keep_least_failures(SparseSet& set) const;
  bool keep_least_miss(SparseSet& set);

  const GlandIndex& index_;
  const OpenGlands& open_;
  const Question& question_;
  Verdict of_end_ = Verdict::fits;
  int failures_of_end_ = 0;              ///< checks that no gland plays in
  Reads failing_alone_ = Reads::none();  ///< checks whose part of the end alone fails
  std::array<Figures, k_diameters> figures_;
  std::vector<Limit> limits_;
};

}  // namespace cutback::fit::detail
