#include "cutback/earth/gland_rating.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cutback/compare.hpp"
#include "cutback/earth/adiabatic.hpp"
#include "cutback/number.hpp"

namespace cutback::earth {
namespace {

constexpr const char* k_source =
    "gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its use "
    "for glands from memory)";

GlandRating not_known(std::string says) {
  return {{Verdict::not_known, std::move(says), k_source}, {}};
}

/// Both figures are known.
Verdict compare(double rating_ka, double current_ka, double time_s) {
  const double scaled_ka = rating_ka / std::sqrt(time_s);
  if (!at_most(current_ka, std::max(rating_ka, scaled_ka)) && time_s < 1.0) return Verdict::no_fit;
  if (time_s < 1.0) return at_most(current_ka, rating_ka) ? Verdict::fits : Verdict::not_known;
  if (!at_most(current_ka, scaled_ka)) return Verdict::no_fit;
  return at_most(time_s, k_longest_time_s) ? Verdict::fits : Verdict::not_known;
}

std::string sentence(Verdict verdict, double rating_ka, double current_ka, double time_s) {
  const std::string fault = fmt::format("{} kA for {} s", plain(current_ka), plain(time_s));
  const std::string rating = fmt::format("{} kA for 1 s", plain(rating_ka));
  const std::string scaled = fmt::format("{} / sqrt({}) = {} kA", plain(rating_ka), plain(time_s),
                                         fixed(rating_ka / std::sqrt(time_s), 2));
  switch (verdict) {
    case Verdict::fits:
      return time_s < 1.0
                 ? fmt::format("the gland is rated {}, which covers {}", rating, fault)
                 : fmt::format("the gland is rated {}: {} covers {}", rating, scaled, fault);
    case Verdict::no_fit:
      return fmt::format("the gland is rated {}: {} does not cover {}", rating, scaled, fault);
    default:
      break;
  }
  if (time_s > k_longest_time_s) {
    return fmt::format(
        "the gland is rated {}, but {} is longer than the 5 s for which it can be "
        "scaled: ask the gland's maker",
        rating, fault);
  }
  return fmt::format(
      "the gland is rated {}; {} is covered only if its rating may be raised for "
      "shorter times ({}): check against the gland's papers",
      rating, fault, scaled);
}

}  // namespace

GlandRating judge_gland_rating(std::optional<double> rating_ka, const EarthFault& fault) {
  const auto current = current_ka(fault);
  if (!current) return not_known(current_says(fault));
  if (!fault.time_s) return not_known("the time for which the fault lasts is not given");
  if (!rating_ka)
    return not_known(
        "the gland list states no earth-fault rating: check against the gland's papers");
  const Verdict verdict = compare(*rating_ka, *current, *fault.time_s);
  const double scaled_ka = *rating_ka / std::sqrt(*fault.time_s);
  return {{verdict, sentence(verdict, *rating_ka, *current, *fault.time_s), k_source},
          std::min(*rating_ka, scaled_ka)};
}

}  // namespace cutback::earth
