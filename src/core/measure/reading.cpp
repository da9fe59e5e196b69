#include "cutback/measure/reading.hpp"

#include <algorithm>
#include <optional>

#include "cutback/error.hpp"
#include "cutback/fraction.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::measure {
namespace {

constexpr std::string_view k_spaces = " \t";
constexpr double k_mm_per_inch = 25.4;
/// An eighth of an inch: whoever writes 1in has looked closer than that (common practice, no
/// source).
constexpr double k_coarsest_scale_mm = k_mm_per_inch / 8.0;
constexpr std::string_view k_point_hint = "write the decimal mark as a point";
constexpr std::string_view k_allowed = "above 0 mm, at most 300 mm; inches as 0.59in";

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  for (std::size_t end = text.find(separator); end != std::string_view::npos;
       end = text.find(separator)) {
    parts.push_back(trimmed(text.substr(0, end), k_spaces));
    text.remove_prefix(end + 1);
  }
  parts.push_back(trimmed(text, k_spaces));
  return parts;
}

std::optional<WrittenFigure> inches(std::string_view text) {
  if (!text.ends_with("in")) return std::nullopt;
  return parse_written(trimmed(text.substr(0, text.size() - 2), k_spaces));
}

std::optional<double> millimetres(std::string_view text) {
  if (text.ends_with("in")) {
    const auto written = inches(text);
    return written ? std::optional(written->value * k_mm_per_inch) : std::nullopt;
  }
  return parse_number(text);
}

bool can_be(double reading_mm) { return reading_mm > 0.0 && reading_mm <= k_largest_diameter_mm; }

/// `15x15.2`, `15/15.2`, `15.0 15.2`: two readings, as many people write them.
std::string crossed_hint(std::string_view text) {
  for (const std::string_view between : {"x", "X", "\xC3\x97", "/", "&", ";", " and ", " "}) {
    const std::size_t at = text.find(between);
    if (at == std::string_view::npos) continue;
    const std::string_view one = trimmed(text.substr(0, at), k_spaces);
    const std::string_view other = trimmed(text.substr(at + between.size()), k_spaces);
    if (!millimetres(one) || !millimetres(other)) continue;
    return "write " + std::string(one) + "+" + std::string(other) +
           " for two readings at right angles";
  }
  return {};
}

/// What is wrong with one reading, or nothing; `where` is filled in by the caller.
std::optional<Fault> fault_of(std::string_view text, bool comma_in_text) {
  const std::optional<double> value = millimetres(text);
  if (value && can_be(*value)) return std::nullopt;
  Fault fault{.code = ErrorCode::out_of_range,
              .what = {},
              .where = {},
              .given = std::string(text),
              .allowed = std::string(k_allowed),
              .hint = {}};
  if (text.empty()) {
    fault.code = ErrorCode::missing;
    fault.what = "a reading is empty";
    fault.hint = "write 14.9+15.1 for one place and a comma before the next place";
    return fault;
  }
  if (!value) {
    fault.code = ErrorCode::bad_number;
    fault.what = "a reading is not a number";
    fault.hint = crossed_hint(text);
    return fault;
  }
  if (*value > k_largest_diameter_mm) {
    fault.what = "a cable of more than 300 mm is no cable";
    return fault;
  }
  fault.what = "a reading is not above zero";
  if (comma_in_text) fault.hint = k_point_hint;
  return fault;
}

/// `15,14+15,16`: between the plus signs whole figures in pairs, as a decimal comma makes them.
/// They are also places in whole millimetres, so that nobody can say which was meant.
void check_decimal_comma(std::string_view text, std::string_view where) {
  std::string pointed;
  std::string whole;
  for (const std::string_view reading : split(text, '+')) {
    const std::vector<std::string_view> parts = split(reading, ',');
    const auto is_whole = [](std::string_view part) {
      return !part.empty() && std::all_of(part.begin(), part.end(), is_digit);
    };
    if (parts.size() != 2 || !is_whole(parts[0]) || !is_whole(parts[1])) return;
    const std::string_view plus = pointed.empty() ? "" : "+";
    pointed += std::string(plus) + std::string(parts[0]) + "." + std::string(parts[1]);
    whole += std::string(plus) + std::string(parts[0]) + ".0," + std::string(parts[1]) + ".0";
  }
  throw InputError(Fault{.code = ErrorCode::contradiction,
                         .what = "a decimal comma, it seems: here a comma begins the next place",
                         .where = std::string(where),
                         .given = std::string(text),
                         .allowed = "places in whole mm as " + whole,
                         .hint = std::string(k_point_hint) + ": " + pointed});
}

/// A decimal comma (15,1) reads as two places, 15 and 1. No cable changes that much.
void check_alike(const std::vector<Place>& places, std::string_view text, std::string_view where) {
  constexpr double k_largest_ratio = 1.5;
  if (places.size() < 2) return;
  double low = k_largest_diameter_mm;
  double high = 0.0;
  for (const Place& place : places) {
    const auto [smallest, largest] =
        std::minmax_element(place.readings_mm.begin(), place.readings_mm.end());
    low = std::min(low, *smallest);
    high = std::max(high, *largest);
  }
  if (high <= k_largest_ratio * low) return;
  throw InputError(Fault{.code = ErrorCode::contradiction,
                         .what = "a decimal comma, it seems: readings of one cable differ by more "
                                 "than a half",
                         .where = std::string(where),
                         .given = std::string(text),
                         .allowed = {},
                         .hint = std::string(k_point_hint) + "; a comma begins the next place"});
}

}  // namespace

std::vector<Place> parse_places(std::string_view text, std::string_view where) {
  if (trimmed(text, k_spaces).empty()) {
    throw InputError(Fault{.code = ErrorCode::missing,
                           .what = "there is no reading",
                           .where = std::string(where),
                           .given = {},
                           .allowed = std::string(k_allowed),
                           .hint = {}});
  }
  check_decimal_comma(text, where);
  const std::vector<std::string_view> place_texts = split(text, ',');
  std::vector<Fault> faults;
  std::vector<Place> places;
  for (std::size_t p = 0; p < place_texts.size(); ++p) {
    Place& place = places.emplace_back();
    const std::vector<std::string_view> readings = split(place_texts[p], '+');
    for (std::size_t r = 0; r < readings.size(); ++r) {
      std::optional<Fault> fault = fault_of(readings[r], place_texts.size() > 1);
      if (fault) {
        fault->where = std::string(where) + ", place " + std::to_string(p + 1) + ", reading " +
                       std::to_string(r + 1);
        faults.push_back(std::move(*fault));
      } else {
        place.readings_mm.push_back(*millimetres(readings[r]));
      }
    }
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  check_alike(places, text, where);
  return places;
}

Readings::Readings(std::string_view notation, std::string_view where)
    : text(trimmed(notation, k_spaces)), places(parse_places(notation, where)) {
  if (text.find("in") == std::string::npos) return;
  // A reading in mm beside them makes those in inches no finer.
  double finest_mm = k_coarsest_scale_mm;
  for (const std::string_view place : split(text, ',')) {
    for (const std::string_view reading : split(place, '+')) {
      const auto written = inches(reading);
      if (written) finest_mm = std::min(finest_mm, written->step * k_mm_per_inch);
    }
  }
  scale_mm = finest_mm;
}

std::string to_text(const std::vector<Place>& places) {
  constexpr int k_decimals = 6;  // a ten-thousandth of an inch is 0.00254 mm
  std::string text;
  for (const Place& place : places) {
    if (!text.empty()) text += ',';
    for (std::size_t r = 0; r < place.readings_mm.size(); ++r) {
      text += (r == 0 ? "" : "+") + plain(place.readings_mm[r], k_decimals);
      // Whole figures on both sides of a comma would look like one with a decimal comma.
      if (places.size() > 1 && text.find('.', text.find_last_of(",+") + 1) == std::string::npos) {
        text += ".0";
      }
    }
  }
  return text;
}

std::optional<double> plain_reading(std::string_view text) {
  const auto value = parse_figure(text);
  return value && can_be(*value) ? value : std::nullopt;
}

}  // namespace cutback::measure
