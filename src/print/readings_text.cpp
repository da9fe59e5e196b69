#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cutback/number.hpp"
#include "cutback/print/readings.hpp"
#include "print/layout.hpp"
#include "print/readings_plot.hpp"

namespace cutback::print {
namespace {

using measure::DrumResult;
using measure::DrumsInput;
using measure::DrumsResult;
using measure::Estimate;
using measure::Judgement;
using measure::Settling;

std::string counted(std::size_t count, const char* word) {
  return fmt::format("{} {}{}", count, word, count == 1 ? "" : "s");
}

/// U rounded up to two significant figures, D to the same decimal (JCGM 100:2008 7.2.6).
std::string spread_text(const Estimate& estimate) {
  const RoundedUncertainty u = round_uncertainty(estimate.expanded_mm);
  return fixed(estimate.value_mm, u.decimals) + " +/- " + fixed(u.value, u.decimals);
}

std::string degrees_cell(double degrees) { return std::isinf(degrees) ? "inf" : plain(degrees, 0); }

std::string degrees_text(double degrees) {
  if (std::isinf(degrees)) return "infinite degrees of freedom";
  return plain(degrees, 0) + (degrees == 1.0 ? " degree of freedom" : " degrees of freedom");
}

std::string label(std::string_view word) { return cell(word, 11); }

std::string readings_line(const DrumsInput& in, const DrumsResult& result) {
  std::size_t places = 0;
  std::size_t readings = 0;
  for (const DrumResult& drum : result.drums) {
    places += drum.places.size();
    readings += drum.estimate.readings_mm.size();
  }
  std::string text =
      fmt::format("{} at {} on {}; caliper step {} mm, permissible error +/- {} mm", readings,
                  counted(places, "place"), counted(result.drums.size(), "drum"),
                  plain(in.caliper.step_mm, 4), plain(result.caliper_error_mm, 4));
  if (in.caliper.zero_mm != 0.0) text += ", zero " + plain(in.caliper.zero_mm, 4) + " mm";
  return wrapped(label("Readings"), text);
}

std::string range_line(const measure::Range& range) {
  std::string text = "not given: nothing is judged (--low, --high)";
  if (range.low_mm && range.high_mm) {
    text = plain(*range.low_mm) + " to " + plain(*range.high_mm) + " mm";
  } else if (range.low_mm) {
    text = "from " + plain(*range.low_mm) + " mm";
  } else if (range.high_mm) {
    text = "up to " + plain(*range.high_mm) + " mm";
  }
  return wrapped(label("Range"), text);
}

std::string further_text(const DrumResult& drum) {
  switch (drum.further.settling) {
    case Settling::settled:
    case Settling::not_known:
      return {};
    case Settling::no_number:
      return fmt::format("no number of further places like these, up to {}, would settle it",
                         measure::k_most_further_places);
    case Settling::places:
      break;
  }
  return fmt::format("{} like these would prove that it {}",
                     counted(drum.further.places, "further place"),
                     drum.further.verdict == Verdict::fits ? "fits" : "does not fit");
}

std::string probability_line(const Judgement& judgement) {
  return fmt::format(
      "inside with {}, below with {}, above with {}; margin {} mm",
      probability_text(judgement.probability), probability_text(judgement.probability_below),
      probability_text(judgement.probability_above), margin_text(judgement.margin_mm));
}

std::string answer(const DrumsInput& in, const DrumsResult& result, const Style& style) {
  const Judgement& judgement = result.judgement;
  const std::string about =
      in.unmeasured ? "a place on a drum that was not measured: "
                    : "a new place on drum " + result.drums[*result.deciding].name + ": ";
  std::string text = about + spread_text(result.estimate) + " mm";
  const std::string indent(label("").size(), ' ');
  if (judgement.verdict == Verdict::not_known) {
    if (result.deciding && result.drums.size() > 1) text += ", the drum with the widest interval";
    return wrapped(label("Answer"), text);
  }
  text += "; " + probability_line(judgement);
  std::string out =
      label("Answer") + verdict_word(judgement.verdict, style, 0) + "\n" + wrapped(indent, text);
  if (result.deciding && result.drums.size() > 1) {
    out += wrapped(indent, "this drum decides: the worst verdict, then the smallest margin");
  }
  for (const std::string& reason : judgement.reasons) out += wrapped(indent, reason);
  if (result.deciding) {
    const std::string further = further_text(result.drums[*result.deciding]);
    if (!further.empty()) out += wrapped(indent, further);
  }
  return out;
}

/// The limits drawn in by U, rounded inwards.
std::string acceptance_line(const DrumsInput& in, const DrumsResult& result) {
  if (!in.range.low_mm && !in.range.high_mm) return {};
  if (result.judgement.narrow) return wrapped(label("Accepts"), "no D at all: too narrow a range");
  const double u = result.estimate.expanded_mm;
  std::string text = "D";
  if (in.range.low_mm) text += " from " + fixed(round_up(*in.range.low_mm + u, 0.001), 3);
  if (in.range.high_mm) text += " up to " + fixed(round_down(*in.range.high_mm - u, 0.001), 3);
  return wrapped(label("Accepts"), text + " mm, the range drawn in by this U");
}

std::string budget_lines(const DrumsInput& in, const DrumsResult& result) {
  const Estimate& estimate = result.estimate;
  std::string text =
      wrapped(label("U"), fmt::format("k u = {} x {} mm; k is t for {} % with {}; u "
                                      "holds {} mm of the caliper",
                                      fixed(estimate.k, 3), fixed(estimate.standard_mm, 4),
                                      plain(100.0 * in.level_ratio, 2),
                                      degrees_text(estimate.degrees_of_freedom),
                                      fixed(result.caliper_standard_mm, 4)));
  if (result.pooled_degrees == 0.0) return text;
  std::string places = fmt::format(
      "spread by s_w = {} mm about the mean of their drum ({})",
      fixed(result.pooled_standard_mm, 4),
      std::isinf(result.pooled_degrees) ? "as stated" : degrees_text(result.pooled_degrees));
  if (result.tolerance) {
    places += fmt::format(
        "; 95 % of those on the drum lie within {} to {} mm (with 95 % confidence, factor {})",
        fixed(result.tolerance->low_mm, 2), fixed(result.tolerance->high_mm, 2),
        fixed(result.tolerance->factor, 3));
  }
  return text + wrapped(label("Places"), places);
}

std::string drums_line(const DrumsResult& result) {
  if (!result.difference) return {};
  const std::string f = result.difference->f ? fixed(*result.difference->f, 2) : "infinite";
  return wrapped(
      label("Drums"),
      fmt::format("F = {} against {}: they {}", f, fixed(result.difference->critical, 2),
                  result.difference->differ ? "differ by more than their places explain"
                                            : "differ by no more than their places explain"));
}

/// Means, and how far from round; a drum's line in the table stands above.
std::string places_text(const DrumResult& drum) {
  std::string means;
  double ovality = 0.0;
  double share = 0.0;
  for (const measure::PlaceResult& place : drum.places) {
    means += (means.empty() ? "" : " ") + fixed(place.mean_mm, 3);
    ovality = std::max(ovality, place.ovality_mm);
    share = std::max(share, place.ovality_mm / place.mean_mm);
  }
  return fmt::format("{}; readings differ by up to {} mm ({} %)", means, plain(ovality),
                     fixed(100.0 * share, 1));
}

std::string drum_table(const DrumsInput& in, const DrumsResult& result, const Style& style) {
  const bool judged = in.range.low_mm || in.range.high_mm;
  std::string text = heading("drum by drum", style) + cell("drum", 15) + right("places", 7) +
                     right("D +/- U mm", 18) + right("k", 6) + right("nu", 6);
  text += judged ? right("inside", 9) + "  verdict\n" : "\n";
  for (const DrumResult& drum : result.drums) {
    text += cell(drum.name, 15) + right(std::to_string(drum.places.size()), 7) +
            right(spread_text(drum.estimate), 18) + right(fixed(drum.estimate.k, 2), 6) +
            right(degrees_cell(drum.estimate.degrees_of_freedom), 6);
    if (judged) {
      text += right(probability_text(drum.judgement.probability), 9) + "  " +
              verdict_word(drum.judgement.verdict, style, 0);
    }
    text += "\n" + wrapped("    means  ", places_text(drum));
    for (const std::string& reason : drum.judgement.reasons) {
      if (judged) text += wrapped("    ", reason);
    }
    const std::string further = further_text(drum);
    if (!further.empty()) text += wrapped("    ", further);
  }
  return text;
}

std::string sources(const DrumsInput& in, const DrumsResult& result,
                    const std::string& error_source, const Style& style) {
  std::string text = heading("where the figures come from", style);
  text += wrapped("  - ", "D and U: " + result.estimate.source);
  if (result.tolerance) {
    text += wrapped("  - ", "95 % of the places: exact factor, ISO 16269-6:2014 Annex F");
  }
  text += wrapped("  - ", in.caliper.mpe_mm ? "permissible error: as given"
                                            : "permissible error: " + error_source);
  text += wrapped("  - ", "limit on ovality: 15 % of the mean, cable standards (from memory)");
  return text;
}

}  // namespace

std::string readings_text(const DrumsInput& in, const DrumsResult& result,
                          const std::string& error_source, const Style& style) {
  std::string text = readings_line(in, result) + range_line(in.range) + answer(in, result, style) +
                     acceptance_line(in, result) + budget_lines(in, result) + drums_line(result);
  for (const std::string& warning : result.warnings) text += wrapped(label("Look"), warning);
  text += heading("the readings", style) + readings_plot(in, result);
  text += drum_table(in, result, style) + sources(in, result, error_source, style);
  return text + "\n" +
         wrapped("",
                 "Rule: D +/- U wholly inside the range fits, wholly outside does not, between "
                 "them nothing is proven (JCGM 106:2012 clause 8): only FITS is a pass.");
}

}  // namespace cutback::print
