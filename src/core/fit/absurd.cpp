#include "cutback/fit/absurd.hpp"

#include <array>

#include "cutback/compare.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/number.hpp"

namespace cutback::fit {
namespace {

using gland::Gland;
using measure::Range;

// No ring is squeezed from one sheath onto another that differs by more.
constexpr double k_widest_seal_mm = 20.0;
// A little over the largest round armour wire that is made, 4.0 mm.
constexpr double k_thickest_wire_mm = 4.2;
constexpr double k_least_turns = 3.0;
// Lengths that no gland has: four times the usual and more.
constexpr double k_thickest_washer_mm = 10.0;
constexpr double k_most_exposed_mm = 100.0;
constexpr double k_most_past_mm = 60.0;

constexpr std::array k_figures{Figure::outer_seal,     Figure::inner_seal,    Figure::bore,
                               Figure::clamp,          Figure::thread_length, Figure::washer,
                               Figure::exposed_armour, Figure::bedding_past,  Figure::bedding_end,
                               Figure::sealing};

bool is_wide(const Range& range) {
  return range.low_mm && range.high_mm && *range.high_mm - *range.low_mm > k_widest_seal_mm;
}

bool is_above_bore(const Gland& gland) {
  return gland.inner && gland.inner->low_mm && gland.bore_mm &&
         *gland.inner->low_mm > *gland.bore_mm;
}

bool is_above(const std::optional<double>& figure, double most) {
  return figure && !at_most(*figure, most);
}

/// The middle of the compound of a barrier gland, from the shoulder [mm]: its chamber begins where
/// the bedding ends.
double compound_middle_mm(const Gland& gland) {
  return *gland.bedding_end_mm + gland.chamber_length_mm.value_or(0.0) / 2.0;
}

double least_thread_mm(const Gland& gland) { return k_least_turns * gland.entry_thread.pitch_mm; }

std::string range_words(const char* what, const Range& range) {
  return std::string(what) + " " + plain(*range.low_mm) + " to " + plain(*range.high_mm) + " mm: ";
}

std::string wide_words(const char* what, const Range& range) {
  return range_words(what, range) + "no ring seals over more than " + plain(k_widest_seal_mm) +
         " mm";
}

}  // namespace

bool is_absurd(Figure figure, const Gland& gland, const tables::Standards& standards) {
  switch (figure) {
    case Figure::outer_seal:
      return is_wide(gland.outer);
    case Figure::inner_seal:
      return gland.inner && (is_wide(*gland.inner) || is_above_bore(gland));
    case Figure::bore:
      return gland.bore_mm &&
             !at_most(*gland.bore_mm, entry::male_root(gland.entry_thread, standards).mm);
    case Figure::clamp:
      return gland.armour_clamp.high_mm && *gland.armour_clamp.high_mm > k_thickest_wire_mm;
    case Figure::thread_length:
      return gland.entry_length_mm && !at_least(*gland.entry_length_mm, least_thread_mm(gland));
    case Figure::washer:
      return is_above(gland.washer_mm, k_thickest_washer_mm);
    case Figure::exposed_armour:
      return is_above(gland.exposed_armour_mm, k_most_exposed_mm);
    case Figure::bedding_past:
      return gland.bedding_past_mm > k_most_past_mm;
    case Figure::bedding_end:
      return gland.bedding_end_mm && gland.entry_length_mm &&
             gland.sealing != gland::Sealing::compression &&
             !at_most(compound_middle_mm(gland), *gland.entry_length_mm);
    case Figure::sealing:
      return gland.sealing == gland::Sealing::compression &&
             (gland.chamber_bore_mm || gland.chamber_length_mm || gland.max_bundle_mm ||
              gland.bedding_end_mm);
  }
  return false;
}

std::string why_absurd(Figure figure, const Gland& gland, const tables::Standards& standards) {
  if (!is_absurd(figure, gland, standards)) return {};
  switch (figure) {
    case Figure::outer_seal:
      return wide_words("outer seal", gland.outer);
    case Figure::inner_seal:
      if (is_wide(*gland.inner)) return wide_words("inner seal", *gland.inner);
      return "inner seal from " + plain(*gland.inner->low_mm) + " mm: the bore is " +
             plain(*gland.bore_mm) + " mm";
    case Figure::bore:
      return "bore " + plain(*gland.bore_mm) + " mm: its thread " +
             entry::to_text(gland.entry_thread) + " leaves " +
             plain(round_down(entry::male_root(gland.entry_thread, standards).mm, 0.01), 2) + " mm";
    case Figure::clamp:
      return "armour clamp up to " + plain(*gland.armour_clamp.high_mm) +
             " mm: no armour wire is thicker than 4 mm";
    case Figure::thread_length:
      return "entry thread " + plain(*gland.entry_length_mm) + " mm long: three turns of " +
             entry::to_text(gland.entry_thread) + " take " + plain(least_thread_mm(gland), 2) +
             " mm";
    case Figure::washer:
      return "sealing washer " + plain(*gland.washer_mm) + " mm thick: no more than " +
             plain(k_thickest_washer_mm) + " mm";
    case Figure::exposed_armour:
      return "exposed armour " + plain(*gland.exposed_armour_mm) + " mm: no gland clamps over " +
             plain(k_most_exposed_mm) + " mm";
    case Figure::bedding_past:
      return "bedding " + plain(gland.bedding_past_mm) + " mm past the thread: no more than " +
             plain(k_most_past_mm) + " mm";
    case Figure::bedding_end:
      return "bedding ends at " + plain(*gland.bedding_end_mm) +
             " mm from the shoulder: most of the compound would lie beyond the thread of " +
             plain(*gland.entry_length_mm) + " mm; outside of the enclosure it is minus";
    case Figure::sealing:
      return "figures of a chamber for compound, and its sealing is not barrier or either";
  }
  return {};
}

std::vector<std::string> absurdities(std::span<const Gland> glands,
                                     const tables::Standards& standards) {
  constexpr std::size_t k_shown = 20;
  std::vector<std::string> out;
  std::size_t more = 0;
  for (const Gland& gland : glands) {
    for (const Figure figure : k_figures) {
      if (!is_absurd(figure, gland, standards)) continue;
      if (out.size() == k_shown) {
        ++more;
        continue;
      }
      out.push_back("gland " + gland.part + ": " + why_absurd(figure, gland, standards) +
                    "; counted as not known");
    }
  }
  if (more > 0) {
    out.push_back("and " + std::to_string(more) + " more figures of the list that cannot be");
  }
  return out;
}

}  // namespace cutback::fit
