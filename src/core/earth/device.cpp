#include "cutback/earth/device.hpp"

#include <fmt/format.h>

#include "cutback/compare.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::earth {
namespace {

constexpr double k_least_rating_a = 0.5;
constexpr double k_largest_rating_a = 125.0;  // IEC 60898-1, scope
constexpr double k_amperes_per_ka = 1000.0;
/// Up to so many times its rating it need not trip at all (IEC 60898-1, from memory: the
/// conventional non-tripping current). It withholds a pass and gives none.
constexpr double k_never_by_heat = 1.13;

}  // namespace

std::optional<Device> parse_device(std::string_view text) {
  std::string small = small_letters(trimmed(text));
  if (small.empty() || small[0] < 'b' || small[0] > 'd') return std::nullopt;
  std::string_view rating = trimmed(std::string_view(small).substr(1));
  if (rating.ends_with('a')) rating = trimmed(rating.substr(0, rating.size() - 1));
  const auto value = parse_figure(rating);
  if (!value || *value < k_least_rating_a || *value > k_largest_rating_a) return std::nullopt;
  return Device{static_cast<char>(small[0] - 'a' + 'A'), *value};
}

std::string to_text(const Device& device) { return device.type + plain(device.rating_a); }

TripBand trip_band(const Device& device, const tables::Standards& standards) {
  const tables::Table& table = standards.table("breaker_bands");
  const std::size_t row = table.row("type", std::string(1, device.type));
  return {table.number(row, "never_to") * device.rating_a,
          table.number(row, "always_from") * device.rating_a, table.number(row, "within_s")};
}

std::string at_once_says(const Device& device, const tables::Standards& standards) {
  const TripBand band = trip_band(device, standards);
  return fmt::format(
      "a breaker {} trips at once, in less than {} s, from {} A (IEC 60898-1, from memory)",
      to_text(device), plain(band.within_s), plain(band.always_from_a));
}

std::string why_not_so_soon(const Device& device, double current_ka, double time_s,
                            const tables::Standards& standards) {
  const double current_a = current_ka * k_amperes_per_ka;
  const std::string fault = plain(current_a, 0) + " A";
  const TripBand band = trip_band(device, standards);
  if (at_most(band.always_from_a, current_a)) {
    if (at_least(time_s, band.within_s)) return {};
    return fmt::format(
        "at {} it trips within {} s, and {} s is sooner: give {} s, or the energy "
        "that it lets through",
        fault, plain(band.within_s), plain(time_s), plain(band.within_s));
  }
  if (at_most(current_a, k_never_by_heat * device.rating_a)) {
    return fmt::format("at {} it need not trip at all", fault);
  }
  return fmt::format(
      "at {} it need not trip at once, and its heat may take longer than {} s: give the longest "
      "time of its own curve, and leave the device out",
      fault, plain(time_s));
}

std::string device_says(const Device& device, std::optional<double> current_ka,
                        const tables::Standards& standards) {
  const TripBand band = trip_band(device, standards);
  std::string text = at_once_says(device, standards);
  if (!current_ka) return text;
  const double current_a = *current_ka * k_amperes_per_ka;
  const std::string fault = plain(current_a, 0) + " A";
  if (at_most(band.always_from_a, current_a)) {
    return text + fmt::format(
                      ": at {} so it should; where its papers agree, give --time {}, or the "
                      "energy that it lets through",
                      fault, plain(band.within_s));
  }
  if (at_most(current_a, band.never_to_a)) {
    return text + fmt::format(
                      ": at {} it does not, for that is no more than {} A; its curve gives "
                      "the time",
                      fault, plain(band.never_to_a));
  }
  return text + fmt::format(": at {} it may or may not; its curve gives the longest time", fault);
}

}  // namespace cutback::earth
