#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using strip::CutPlan;

constexpr std::size_t k_width = 78;
constexpr std::size_t k_sheath_columns = 12;  // of whole cable at the left
constexpr std::size_t k_tail_columns = 10;    // the least that is drawn of the tails

/// Where the layers stop, from the left edge of the drawing [columns].
struct Stops {
  std::size_t sheath;
  std::size_t armour;
  std::size_t bedding;
  std::size_t shoulder;
  std::size_t end;
  double mm_per_column;  ///< 0 where figures are missing: not to scale
  bool broken;           ///< the tails are longer than they are drawn
};

std::size_t columns(double length_mm, double mm_per_column) {
  return static_cast<std::size_t>(std::lround(std::max(1.0, length_mm / mm_per_column)));
}

/// To scale along the axis: the finest scale at which everything up to the bedding's end fits.
Stops stops_of(const CutPlan& plan, bool armoured) {
  const strip::Axis& axis = plan.axis;
  const bool known = axis.bedding_end_mm && (!armoured || (axis.armour_stop_mm && axis.exposed_mm));
  if (!known) return {12, 24, 44, 34, 64, 0.0, true};
  const double exposed = armoured ? *axis.exposed_mm : 0.0;
  const double beyond = armoured ? *axis.bedding_end_mm + *axis.armour_stop_mm : 0.0;
  const std::size_t room = k_width - k_sheath_columns - k_tail_columns - 2;
  double scale = 0.5;
  for (const double step : {0.5, 1.0, 2.0, 5.0, 10.0, 20.0}) {
    scale = step;
    if ((exposed + beyond) / scale <= static_cast<double>(room)) break;
  }
  Stops stops{k_sheath_columns, k_sheath_columns, k_sheath_columns, 0, 0, scale, false};
  if (armoured) {
    stops.armour = stops.sheath + columns(exposed, scale);
    stops.bedding = stops.armour + columns(beyond, scale);
  } else {
    stops.armour = stops.bedding = stops.sheath;
  }
  const std::size_t past = columns(std::max(0.0, *axis.bedding_end_mm), scale);
  stops.shoulder = stops.bedding > past ? stops.bedding - past : 0;
  const std::size_t tail =
      axis.tip_mm ? columns(*axis.tip_mm - *axis.bedding_end_mm, scale) : k_width;
  stops.broken = stops.bedding + tail > k_width;
  stops.end = stops.broken ? k_width : stops.bedding + tail;
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

/// The numbers of the marks under the places that they mark.
std::string mark_line(const Stops& stops, bool armoured) {
  std::string line;
  if (armoured) {
    put(line, stops.sheath - 1, "2");
    put(line, stops.armour - 1, "1");
    put(line, stops.bedding - 1, "3");
  } else {
    put(line, stops.sheath - 1, "1");
  }
  if (stops.shoulder > 0) {
    const bool taken = stops.shoulder < line.size() && line[stops.shoulder] != ' ';
    put(line, stops.shoulder + (taken ? 1 : 0), "S");
  }
  put(line, stops.end - 3, "end");
  return line_of(line);
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
  text += mark_line(stops, armoured);
  text += wrapped("", stops.mm_per_column > 0.0
                          ? fmt::format("To scale along the cable, one character is {} mm{}.{}",
                                        plain(stops.mm_per_column),
                                        stops.broken ? ", the cores broken at //" : "",
                                        stops.shoulder > 0 ? " S: the gland's shoulder." : "")
                          : std::string("Not to scale: figures of the gland are missing."));
  return text;
}

}  // namespace cutback::print
