#include "cutback/measure/drums.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "core/measure/budget.hpp"
#include "core/measure/distributions.hpp"
#include "core/measure/look.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::measure {
namespace {

using detail::Combined;
using detail::PlaceFigures;
using detail::Scatter;
using detail::Term;

constexpr double k_infinite = std::numeric_limits<double>::infinity();

/// What all drums have in common.
struct Common {
  std::vector<std::vector<PlaceFigures>> figures;  ///< of each drum
  Scatter measured;                                ///< as the places show it
  Scatter used;                                    ///< the declared one where they show none
  std::optional<double> ovality_mm;
  double caliper_error_mm = 0.0;
  Term caliper{};
};

void check_range(std::vector<Fault>& faults, const Range& range) {
  detail::need_length(faults, range.low_mm, "lower limit of the range");
  detail::need_length(faults, range.high_mm, "upper limit of the range");
  if (!range.low_mm || !range.high_mm || *range.low_mm <= *range.high_mm) return;
  faults.push_back({.code = ErrorCode::contradiction,
                    .what = "the lower limit of the range is above the upper one",
                    .where = "range",
                    .given = plain(*range.low_mm, 6) + " to " + plain(*range.high_mm, 6),
                    .allowed = {},
                    .hint = {}});
}

void check(const DrumsInput& in) {
  std::vector<Fault> faults;
  if (in.drums.empty()) {
    faults.push_back({.code = ErrorCode::missing,
                      .what = "there is no drum",
                      .where = "drums",
                      .given = {},
                      .allowed = {},
                      .hint = {}});
  }
  detail::need_caliper(faults, in.caliper);
  for (const Drum& drum : in.drums) {
    detail::need_readings(faults, drum.places, in.caliper.zero_mm, "drum " + drum.name);
  }
  detail::need_ratios(faults, in.level_ratio, in.ovality_limit_ratio);
  detail::need_length(faults, in.along_mm, "variation along a drum");
  detail::need_length(faults, in.between_mm, "difference between drums");
  detail::need_length(faults, in.declared_ovality_mm, "declared ovality");
  check_range(faults, in.range);
  if (!faults.empty()) throw InputError(std::move(faults));
}

Common common_of(const DrumsInput& in, std::span<const CaliperLimit> limits) {
  Common common;
  common.ovality_mm = in.declared_ovality_mm;
  double largest_mm = 0.0;
  for (const Drum& drum : in.drums) {
    common.figures.push_back(detail::figures_of(drum.places, in.caliper.zero_mm));
    common.ovality_mm = detail::known_ovality(common.figures.back(), common.ovality_mm);
    largest_mm = std::max(largest_mm, detail::largest_reading(drum.places));
  }
  common.measured = detail::scatter_of(common.figures);
  common.used = common.measured;
  if (common.measured.degrees_of_freedom == 0.0 && in.along_mm) {
    common.used = {detail::rectangular_standard(*in.along_mm), k_infinite};
  }
  common.caliper_error_mm = detail::caliper_error_mm(in.caliper, limits, largest_mm);
  common.caliper = detail::caliper_term(in.caliper, limits, largest_mm);
  return common;
}

void cap_unknown_scatter(const Common& common, std::vector<Cap>& caps) {
  if (common.used.degrees_of_freedom > 0.0) return;
  caps.push_back(
      {"one place does not show how a drum varies: measure more places, or state the "
       "variation along it",
       "at more places of the drum"});
}

/// The estimate of a new place on a drum of these figures, from its spread there.
Combined combine_drum(const Common& common, std::span<const PlaceFigures> figures, Term spread,
                      double level_ratio, std::vector<Cap>& caps) {
  std::vector<Term> terms{common.caliper};
  // A spread that nothing shows adds nothing; the cap stands in for it.
  if (spread.degrees_of_freedom > 0.0) terms.push_back(spread);
  detail::add_uncrossed(figures, common.ovality_mm, terms, caps);
  return detail::combine(terms, level_ratio);
}

DrumResult measured_drum(const DrumsInput& in, const Common& common, std::size_t index,
                         std::vector<std::string>& warnings) {
  const Drum& drum = in.drums[index];
  const std::vector<PlaceFigures>& figures = common.figures[index];
  const std::string label = "drum " + drum.name + ", ";
  std::vector<Cap> caps;
  cap_unknown_scatter(common, caps);
  const Combined combined = combine_drum(
      common, figures, detail::new_place_term(common.used, figures.size()), in.level_ratio, caps);
  DrumResult out;
  out.name = drum.name;
  for (const PlaceFigures& place : figures) {
    out.places.push_back({place.mean_mm, place.ovality_mm, place.readings});
  }
  out.estimate =
      detail::make_estimate(detail::mean_of(figures), combined, drum.places, in.caliper.zero_mm);
  out.effective_degrees = combined.effective_degrees;
  out.estimate.caps = std::move(caps);
  detail::look_at_ovality(figures, in.ovality_limit_ratio, Section::oval, label, out.estimate.caps,
                          warnings);
  detail::look_at_steps(drum.places, in.caliper.step_mm, label, warnings);
  out.estimate.source = "a new place on drum " + drum.name +
                        " (JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1)" +
                        detail::tape_note(out.estimate.value_mm);
  out.judgement = judge(out.estimate, in.range);
  return out;
}

/// The spread of drum means, and a cap where one drum is all there is.
Term drum_mean_term(const DrumsInput& in, std::span<const DrumResult> drums, double mean_mm,
                    std::vector<Cap>& caps) {
  const auto count = static_cast<double>(drums.size());
  if (drums.size() == 1) {
    if (!in.between_mm) {
      caps.push_back(
          {"one drum does not show how drums differ: measure another, or state the "
           "difference between drums",
           "on another drum as well"});
    }
    const double standard = detail::rectangular_standard(in.between_mm.value_or(0.0));
    return {standard * standard * (1.0 + 1.0 / count), k_infinite};
  }
  double squares = 0.0;
  for (const DrumResult& drum : drums) {
    squares += (drum.estimate.value_mm - mean_mm) * (drum.estimate.value_mm - mean_mm);
  }
  if (squares < detail::k_noise_mm * detail::k_noise_mm) squares = 0.0;
  return {squares / (count - 1.0) * (1.0 + 1.0 / count), count - 1.0};
}

/// A place on a drum that was not measured: the spread of the drum means, which holds a part of the
/// spread between places already, and the rest of the latter.
void unmeasured_drum(const DrumsInput& in, const Common& common, DrumsResult& out) {
  double sum_mm = 0.0;
  double inverse_places = 0.0;
  std::vector<PlaceFigures> all_figures;
  std::vector<Place> all_places;
  std::vector<Cap> caps;
  cap_unknown_scatter(common, caps);
  for (std::size_t i = 0; i < in.drums.size(); ++i) {
    sum_mm += out.drums[i].estimate.value_mm;
    inverse_places += 1.0 / static_cast<double>(common.figures[i].size());
    all_figures.insert(all_figures.end(), common.figures[i].begin(), common.figures[i].end());
    all_places.insert(all_places.end(), in.drums[i].places.begin(), in.drums[i].places.end());
  }
  const auto count = static_cast<double>(in.drums.size());
  const double mean_mm = sum_mm / count;
  const double within = common.used.standard_mm * common.used.standard_mm;
  std::vector<Term> terms{common.caliper, drum_mean_term(in, out.drums, mean_mm, caps)};
  if (common.used.degrees_of_freedom > 0.0) {
    terms.push_back({within * (1.0 - inverse_places / count), common.used.degrees_of_freedom});
  }
  detail::add_uncrossed(all_figures, common.ovality_mm, terms, caps);
  std::vector<std::string> said;  // the drums have given these warnings already
  detail::look_at_ovality(all_figures, in.ovality_limit_ratio, Section::oval, "", caps, said);
  const Combined combined = detail::combine(terms, in.level_ratio);
  out.estimate = detail::make_estimate(mean_mm, combined, all_places, in.caliper.zero_mm);
  out.estimate.caps = std::move(caps);
  out.estimate.source =
      "a place on a drum not measured (JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, "
      "G.4.1)" +
      detail::tape_note(mean_mm);
  out.effective_degrees = combined.effective_degrees;
  out.judgement = judge(out.estimate, in.range);
}

std::optional<DrumDifference> difference_of(const Common& common,
                                            std::span<const DrumResult> drums) {
  constexpr double k_level = 0.95;
  if (drums.size() < 2 || common.measured.degrees_of_freedom == 0.0) return std::nullopt;
  double weight = 0.0;
  double sum = 0.0;
  for (const DrumResult& drum : drums) {
    const auto places = static_cast<double>(drum.places.size());
    weight += places;
    sum += places * drum.estimate.value_mm;
  }
  double squares = 0.0;
  for (const DrumResult& drum : drums) {
    const double off = drum.estimate.value_mm - sum / weight;
    squares += static_cast<double>(drum.places.size()) * off * off;
  }
  const double degrees = static_cast<double>(drums.size()) - 1.0;
  const double between = squares / degrees;
  const double within = common.measured.standard_mm * common.measured.standard_mm;
  DrumDifference out;
  out.critical = detail::fisher_quantile(k_level, degrees, common.measured.degrees_of_freedom);
  if (within > 0.0) {
    out.f = between / within;
  } else if (between < detail::k_noise_mm * detail::k_noise_mm) {
    out.f = 0.0;
  }
  out.differ = !out.f || *out.f > out.critical;
  return out;
}

/// The verdict after `more` further places on the drum, at the same mean and spread.
Verdict verdict_with(const DrumsInput& in, const Common& common, std::size_t index,
                     const Estimate& now, std::size_t more) {
  Scatter scatter = common.used;
  scatter.degrees_of_freedom += static_cast<double>(more);
  const std::span<const PlaceFigures> figures = common.figures[index];
  std::vector<Cap> caps;  // those of the estimate stay
  const Combined combined =
      combine_drum(common, figures, detail::new_place_term(scatter, figures.size() + more),
                   in.level_ratio, caps);
  Estimate then = now;
  then.standard_mm = combined.standard;
  then.expanded_mm = combined.expanded;
  then.k = combined.k;
  then.degrees_of_freedom = combined.degrees_used;
  return judge(then, in.range).verdict;
}

bool decides(Verdict verdict) { return verdict == Verdict::fits || verdict == Verdict::no_fit; }

/// More places never widen the interval, so the smallest number that decides is found by halving.
Further further_of(const DrumsInput& in, const Common& common, std::size_t index,
                   const DrumResult& drum) {
  if (drum.judgement.verdict == Verdict::not_known || decides(drum.judgement.verdict)) return {};
  if (common.measured.degrees_of_freedom == 0.0) return {.settling = Settling::not_known};
  const auto after = [&](std::size_t more) {
    return verdict_with(in, common, index, drum.estimate, more);
  };
  if (!decides(after(k_most_further_places))) return {.settling = Settling::no_number};
  std::size_t too_few = 0;
  std::size_t enough = k_most_further_places;
  while (enough - too_few > 1) {
    const std::size_t middle = too_few + (enough - too_few) / 2;
    (decides(after(middle)) ? enough : too_few) = middle;
  }
  return {.settling = Settling::places, .places = enough, .verdict = after(enough)};
}

/// Where the places themselves show the spread well enough (nu_w >= 4).
void add_tolerance(const Common& common, std::vector<DrumResult>& drums) {
  constexpr double k_least_degrees = 4.0;
  const Scatter& scatter = common.measured;
  if (scatter.degrees_of_freedom < k_least_degrees) return;
  std::map<std::size_t, double> factors;  // one for each number of places: each takes its time
  for (DrumResult& drum : drums) {
    const auto [it, fresh] = factors.try_emplace(drum.places.size(), 0.0);
    if (fresh) {
      it->second = detail::tolerance_factor(static_cast<double>(drum.places.size()),
                                            scatter.degrees_of_freedom, k_tolerance_content,
                                            k_tolerance_confidence);
    }
    const double half_width = it->second * scatter.standard_mm;
    drum.tolerance = {it->second, drum.estimate.value_mm - half_width,
                      drum.estimate.value_mm + half_width};
  }
}

std::size_t deciding_drum(std::span<const DrumResult> drums) {
  const auto worse = [](const DrumResult& a, const DrumResult& b) {
    if (a.judgement.verdict != b.judgement.verdict)
      return a.judgement.verdict < b.judgement.verdict;
    if (a.judgement.verdict == Verdict::not_known) {
      return a.estimate.expanded_mm > b.estimate.expanded_mm;
    }
    return a.judgement.margin_mm < b.judgement.margin_mm;
  };
  return static_cast<std::size_t>(std::min_element(drums.begin(), drums.end(), worse) -
                                  drums.begin());
}

/// What there is to say of the whole, before what there is to say of single drums.
std::vector<std::string> warnings_of(const DrumsInput& in, const Common& common,
                                     const DrumsResult& out) {
  std::vector<std::string> warnings;
  if (out.difference && out.difference->differ) {
    warnings.emplace_back("drums differ: do not use one mean for them");
  }
  const double degrees = common.measured.degrees_of_freedom;
  if (degrees > 0.0 && degrees < 4.0) {
    warnings.emplace_back(
        "few places: the interval holds a little less often than it says; "
        "measure five places on a drum, or four on each of three");
  }
  if (in.along_mm && degrees > 0.0) {
    warnings.emplace_back("the stated variation along a drum is not used: the places show it");
  }
  if (in.between_mm && (!in.unmeasured || in.drums.size() > 1)) {
    warnings.emplace_back(in.unmeasured
                              ? "the stated difference between drums is not used: the drums "
                                "show it"
                              : "the stated difference between drums is not used: it is for a "
                                "drum that was not measured");
  }
  return warnings;
}

}  // namespace

DrumsResult analyse_drums(const DrumsInput& in, std::span<const CaliperLimit> limits) {
  check(in);
  const Common common = common_of(in, limits);
  DrumsResult out;
  out.caliper_error_mm = common.caliper_error_mm;
  out.caliper_standard_mm = std::sqrt(common.caliper.variance);
  out.pooled_standard_mm = common.used.standard_mm;
  out.pooled_degrees = common.used.degrees_of_freedom;
  std::vector<std::string> of_drums;
  for (std::size_t i = 0; i < in.drums.size(); ++i) {
    out.drums.push_back(measured_drum(in, common, i, of_drums));
    out.drums.back().further = further_of(in, common, i, out.drums.back());
  }
  out.difference = difference_of(common, out.drums);
  add_tolerance(common, out.drums);
  if (in.unmeasured) {
    unmeasured_drum(in, common, out);
  } else {
    out.deciding = deciding_drum(out.drums);
    const DrumResult& drum = out.drums[*out.deciding];
    out.estimate = drum.estimate;
    out.effective_degrees = drum.effective_degrees;
    out.judgement = drum.judgement;
    out.tolerance = drum.tolerance;
  }
  out.warnings = warnings_of(in, common, out);
  if (std::string note = coarse_step_note(in.caliper, limits); !note.empty()) {
    out.warnings.push_back(std::move(note));
  }
  out.warnings.insert(out.warnings.end(), of_drums.begin(), of_drums.end());
  return out;
}

}  // namespace cutback::measure
