#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <vector>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using strip::CutPlan;

constexpr std::size_t k_width = 78;
constexpr std::size_t k_sheath_columns = 12;  // of whole cable at the left
constexpr std::size_t k_tail_columns = 10;    // the least that is drawn of the tails

/// Where the layers stop, from the left edge of the drawing [columns]. A place is the edge behind
/// its column, so that the column before it is the last of the layer.
struct Stops {
  std::size_t sheath = 0;
  std::size_t armour = 0;    ///< its tips; the sheath's stop where there is no armour
  std::size_t bedding = 0;   ///< the sheath's stop where there is no armour
  std::size_t shoulder = 0;  ///< 0: nobody knows between which layers it sits
  std::size_t end = 0;
  double mm_per_column = 0.0;  ///< 0 where figures are missing: not to scale
  bool broken = true;          ///< the tails are longer than they are drawn
};

/// Figures of the gland are missing: the order of the layers alone.
Stops order_of(const strip::Axis& axis, bool armoured) {
  Stops stops{.sheath = 12, .armour = 24, .bedding = 44, .end = 64};
  if (!armoured) stops.sheath = stops.armour = stops.bedding = 30;
  constexpr std::size_t k_apart = 8;
  if (!axis.bedding_end_mm) return stops;
  stops.shoulder = stops.bedding;
  if (*axis.bedding_end_mm > 0.0) stops.shoulder -= k_apart;
  if (*axis.bedding_end_mm < 0.0) stops.shoulder += k_apart;
  return stops;
}

/// The finest scale at which everything up to the bedding's end and the shoulder fits.
double scale_of(double length_mm) {
  constexpr double k_room = k_width - k_sheath_columns - k_tail_columns - 2;
  for (double ten = 0.1;; ten *= 10.0) {
    for (const double step : {5.0, 10.0, 20.0}) {
      if (length_mm / (step * ten) <= k_room) return step * ten;
    }
  }
}

/// To scale along the axis: each place is rounded to a column by itself, so that errors do not add
/// up. What lies at two places has two columns.
Stops stops_of(const CutPlan& plan, bool armoured) {
  const strip::Axis& axis = plan.axis;
  const bool known = axis.bedding_end_mm && (!armoured || (axis.armour_stop_mm && axis.exposed_mm));
  if (!known) return order_of(axis, armoured);
  struct Place {
    double at_mm;  // from the shoulder
    std::size_t Stops::*stop;
  };
  std::vector<Place> places{{0.0, &Stops::shoulder}, {*axis.bedding_end_mm, &Stops::bedding}};
  if (armoured) {
    const double tips_mm = -*axis.armour_stop_mm;
    places.push_back({tips_mm, &Stops::armour});
    places.push_back({tips_mm - *axis.exposed_mm, &Stops::sheath});
  }
  std::stable_sort(places.begin(), places.end(),
                   [](const Place& a, const Place& b) { return a.at_mm < b.at_mm; });
  const double first_mm = places.front().at_mm;
  Stops stops;
  stops.mm_per_column = scale_of(places.back().at_mm - first_mm);
  std::size_t least = k_sheath_columns;
  double before_mm = first_mm;
  for (const Place& place : places) {
    const double columns = (place.at_mm - first_mm) / stops.mm_per_column;
    if (place.at_mm > before_mm) ++least;
    least = std::max(least, k_sheath_columns + static_cast<std::size_t>(std::lround(columns)));
    stops.*place.stop = least;
    before_mm = place.at_mm;
  }
  if (!armoured) stops.sheath = stops.armour = stops.bedding;
  stops.end = k_width;
  if (!axis.tip_mm) return stops;
  const double columns = (*axis.tip_mm - first_mm) / stops.mm_per_column;
  stops.broken = columns > static_cast<double>(k_width - k_sheath_columns);
  if (stops.broken) return stops;
  const auto tip = k_sheath_columns + static_cast<std::size_t>(std::lround(columns));
  stops.end = std::max(least + 1, tip);
  return stops;
}

/// One line of the side view: what shows at this height, from the sheath to the tails.
std::string side_line(const Stops& stops, bool sheath, bool armour, bool bedding, bool cores) {
  std::string line(k_width, ' ');
  const auto paint = [&](std::size_t from, std::size_t to, char c) {
    for (std::size_t i = from; i < std::min(to, k_width); ++i) line[i] = c;
  };
  if (cores) paint(stops.bedding, stops.end, '-');
  if (bedding) paint(stops.armour, stops.bedding, ':');
  if (armour) paint(stops.sheath, stops.armour, '=');
  if (sheath) paint(0, stops.sheath, '#');
  if (cores && stops.broken && stops.end > 6) {
    line[stops.end - 6] = '/';
    line[stops.end - 5] = '/';
  }
  return line;
}

void put(std::string& line, std::size_t at, std::string_view text) {
  if (line.size() < at + text.size()) line.resize(at + text.size(), ' ');
  std::copy(text.begin(), text.end(), line.begin() + static_cast<std::ptrdiff_t>(at));
}

/// The numbers of the marks under the places that they mark, each under the last column before it;
/// in a line of its own the shoulder where a mark is at its place.
std::string mark_lines(const Stops& stops, bool armoured) {
  std::string line;
  if (armoured) {
    put(line, stops.sheath - 1, "2");
    put(line, stops.armour - 1, "1");
    put(line, stops.bedding - 1, "3");
  } else {
    put(line, stops.sheath - 1, "1");
  }
  put(line, std::max(stops.end - 3, line.size() + 1), "end");
  std::string below;
  if (stops.shoulder > 0) {
    const std::size_t at = stops.shoulder - 1;
    put(at < line.size() && line[at] != ' ' ? below : line, at, "S");
  }
  return line_of(line) + (below.empty() ? "" : line_of(below));
}

std::string layer_names(const Stops& stops, bool armoured) {
  std::string line = "sheath";
  if (armoured) {
    if (stops.armour - stops.sheath >= 7) put(line, stops.sheath, "armour");
    const std::size_t place = std::max(stops.armour, line.size() + 1);
    if (stops.bedding > place + 7) put(line, place, "bedding");
  }
  if (stops.end > stops.bedding + 6)
    put(line, std::max(stops.bedding + 1, line.size() + 1), "cores");
  return line_of(line);
}

}  // namespace

std::string drawing_text(const job::Job& job, const CutPlan& plan) {
  const bool armoured = job.cable.armour != cable::ArmourKind::none;
  const Stops stops = stops_of(plan, armoured);
  std::string text = layer_names(stops, armoured);
  text += line_of(side_line(stops, true, false, false, false));
  if (armoured) text += line_of(side_line(stops, true, true, false, false));
  if (armoured) text += line_of(side_line(stops, true, true, true, false));
  text += line_of(side_line(stops, true, true, true, true));
  if (armoured) text += line_of(side_line(stops, true, true, true, false));
  if (armoured) text += line_of(side_line(stops, true, true, false, false));
  text += line_of(side_line(stops, true, false, false, false));
  text += mark_lines(stops, armoured);
  text += wrapped("", stops.mm_per_column > 0.0
                          ? fmt::format("To scale along the cable, one character is {} mm{}.{}",
                                        plain(stops.mm_per_column),
                                        stops.broken ? ", the cores broken at //" : "",
                                        stops.shoulder > 0 ? " S: the gland's shoulder." : "")
                          : std::string("Not to scale: figures of the gland are missing."));
  return text;
}

}  // namespace cutback::print
