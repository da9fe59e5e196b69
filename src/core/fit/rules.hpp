#pragma once
// The checks of a fit as one table: whoever checks, searches, orders or explains goes through it.

#include <optional>
#include <span>

#include "cutback/fit/check.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit::detail {

/// Whether a gland of this sealing would be filled with compound here.
[[nodiscard]] bool made_off_as_barrier(gland::Sealing sealing, const area::Demand& demand);

/// Whether the entry is, or for all that is said may be, one of a flameproof enclosure.
[[nodiscard]] bool is_flameproof(const Question& question);

/// One gland at one end.
struct Case {
  Case(const Question& asked, const gland::Gland& of);

  const Question& question;
  const gland::Gland& gland;
  bool barrier;                   ///< it is filled with compound round the cores
  const entry::Adaptor* adaptor;  ///< that stands between gland and entry; null where none does
  [[nodiscard]] const cable::Cable& cable() const { return question.job->cable; }
  [[nodiscard]] const entry::Entry& entry() const { return question.job->entry; }
};

/// A diameter that is compared with a range of the gland.
enum class Diameter { sheath, bedding, wire };
inline constexpr std::size_t k_diameters = 3;

/// What a gland asks of an end besides the value of one diameter.
struct Against {
  Verdict verdict = Verdict::fits;       ///< of all in which the diameter plays no part
  std::optional<measure::Range> range;   ///< what the diameter must lie in; never without a limit
  Diameter diameter = Diameter::sheath;  ///< the same for every gland at one end
  /// Where it does not lie in it as a whole, in place of a verdict by how far it does.
  std::optional<Verdict> otherwise;
};

/// What a check comes to, without its words: they cost more than the rest, and most are never read.
struct Finding {
  Verdict verdict = Verdict::not_known;
  std::optional<double> margin_mm;
  bool counts_for_margin = false;  ///< the margin says how near a diameter is to a limit
};

/// One check. `alone` is what does not depend on the gland, `against` what does; a check is the
/// worst of the two. What else of a gland or an end it reads is marked in their tables of columns
/// and fields.
struct Rule {
  CheckName name;
  Topic topic;
  /// By the diameters and what the end states. Null: there is no such part. Nothing: not asked.
  std::optional<Verdict> (*alone)(const Question&);
  /// By the gland and what the end states, without the diameters. Null: the verdict of `say`, which
  /// then reads no diameter. Nothing: not asked.
  std::optional<Against> (*against)(const Case&);
  /// The whole check in words. What it finds that others need goes into the fit. Nothing: not
  /// asked.
  std::optional<Check> (*say)(const Case&, GlandFit&);
};

/// What must pass through the gland's thread and this adaptor: bedding, sheath or cores.
[[nodiscard]] Against against_passage(const Case& at, const entry::Adaptor* adaptor);

/// In the order in which they are printed.
[[nodiscard]] std::span<const Rule> rules();
inline constexpr std::size_t k_most_rules = 32;

/// Whether it depends on the gland at all.
[[nodiscard]] inline bool is_of_gland(const Rule& rule) {
  return rule.against != nullptr || rule.alone == nullptr;
}

/// What a rule finds of the end alone; nothing where it is not asked.
[[nodiscard]] std::optional<Verdict> alone(const Rule& rule, const Question& question);

/// The whole check in words; nothing where it is not asked.
[[nodiscard]] std::optional<Check> say(const Rule& rule, const Case& at, GlandFit& fit);

/// What of a rule does not depend on diameters; nothing where it is not asked.
[[nodiscard]] std::optional<Against> against(const Rule& rule, const Case& at);

/// The same behind an adaptor that is still to be had. Its marking and lengths are not known, which
/// says nothing of what passes through it: that is looked at all the same.
/// @param at  with this adaptor
[[nodiscard]] std::optional<Against> against_behind_adaptor(const Rule& rule, const Case& at);

/// The figure that counts for a diameter: of a wire in a band of the standard its nominal size.
class Compared {
 public:
  Compared(const cable::Cable& cable, Diameter diameter);
  [[nodiscard]] bool known() const { return estimate_ != nullptr || nominal_; }
  /// Nominal sizes are on a gland's list or are not: being at an end of it is no risk.
  [[nodiscard]] const std::optional<double>& nominal_mm() const { return nominal_; }
  /// Where it is known; its caps hold for a nominal size as well.
  [[nodiscard]] const measure::Estimate& estimate() const { return *estimate_; }
  /// @return the finding where all else holds
  [[nodiscard]] Finding in(const measure::Range& range) const;

 private:
  const measure::Estimate* estimate_ = nullptr;
  std::optional<double> nominal_;
};

/// A gland's part of a check and the diameter that it is compared with, taken together.
[[nodiscard]] Finding finding_of(const Against& against, const cable::Cable& cable);

/// The whole of a rule without words; nothing where it is not asked.
[[nodiscard]] std::optional<Finding> find(const Rule& rule, const Case& at);

}  // namespace cutback::fit::detail
