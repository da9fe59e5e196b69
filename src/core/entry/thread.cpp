#include "cutback/entry/thread.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "cutback/number.hpp"

namespace cutback::entry {
namespace {

struct InchSize {
  std::string_view name;
  double inches;
  double threads_per_inch;
};

// ASME B1.20.1: nominal size and threads per inch (those from 1/2 to 4 read in a handbook, the
// others from memory).
constexpr std::array<InchSize, 15> k_npt{{{"1/8", 0.125, 27.0},
                                          {"1/4", 0.25, 18.0},
                                          {"3/8", 0.375, 18.0},
                                          {"1/2", 0.5, 14.0},
                                          {"3/4", 0.75, 14.0},
                                          {"1", 1.0, 11.5},
                                          {"1 1/4", 1.25, 11.5},
                                          {"1 1/2", 1.5, 11.5},
                                          {"2", 2.0, 11.5},
                                          {"2 1/2", 2.5, 8.0},
                                          {"3", 3.0, 8.0},
                                          {"3 1/2", 3.5, 8.0},
                                          {"4", 4.0, 8.0},
                                          {"5", 5.0, 8.0},
                                          {"6", 6.0, 8.0}}};

struct PgSize {
  double number;
  double pitch_mm;
};

// DIN 40430.
constexpr std::array<PgSize, 10> k_pg{{{7, 1.270},
                                       {9, 1.4112},
                                       {11, 1.4112},
                                       {13.5, 1.4112},
                                       {16, 1.4112},
                                       {21, 1.5875},
                                       {29, 1.5875},
                                       {36, 1.5875},
                                       {42, 1.5875},
                                       {48, 1.5875}}};

/// The pitches of a metric diameter, coarsest first; 0 fills the row.
struct MetricSize {
  double diameter_mm;
  std::array<double, 6> pitches_mm;
};

// ISO 261, M6 to M200 (from memory: it only says which designations are threads at all). 63 is from
// IEC 60423, and so is the pitch of 1.5 mm of 90 and 110.
constexpr std::array<MetricSize, 72> k_metric{{{6, {1, 0.75}},
                                               {7, {1, 0.75}},
                                               {8, {1.25, 1, 0.75}},
                                               {9, {1.25, 1, 0.75}},
                                               {10, {1.5, 1.25, 1, 0.75}},
                                               {11, {1.5, 1, 0.75}},
                                               {12, {1.75, 1.5, 1.25, 1}},
                                               {14, {2, 1.5, 1.25, 1}},
                                               {15, {1.5, 1}},
                                               {16, {2, 1.5, 1}},
                                               {17, {1.5, 1}},
                                               {18, {2.5, 2, 1.5, 1}},
                                               {20, {2.5, 2, 1.5, 1}},
                                               {22, {2.5, 2, 1.5, 1}},
                                               {24, {3, 2, 1.5, 1}},
                                               {25, {2, 1.5, 1}},
                                               {26, {1.5}},
                                               {27, {3, 2, 1.5, 1}},
                                               {28, {2, 1.5, 1}},
                                               {30, {3.5, 3, 2, 1.5, 1}},
                                               {32, {2, 1.5}},
                                               {33, {3.5, 3, 2, 1.5}},
                                               {35, {1.5}},
                                               {36, {4, 3, 2, 1.5}},
                                               {38, {1.5}},
                                               {39, {4, 3, 2, 1.5}},
                                               {40, {3, 2, 1.5}},
                                               {42, {4.5, 4, 3, 2, 1.5}},
                                               {45, {4.5, 4, 3, 2, 1.5}},
                                               {48, {5, 4, 3, 2, 1.5}},
                                               {50, {3, 2, 1.5}},
                                               {52, {5, 4, 3, 2, 1.5}},
                                               {55, {4, 3, 2, 1.5}},
                                               {56, {5.5, 4, 3, 2, 1.5}},
                                               {58, {4, 3, 2, 1.5}},
                                               {60, {5.5, 4, 3, 2, 1.5}},
                                               {62, {4, 3, 2, 1.5}},
                                               {63, {1.5}},
                                               {64, {6, 4, 3, 2, 1.5}},
                                               {65, {4, 3, 2, 1.5}},
                                               {68, {6, 4, 3, 2, 1.5}},
                                               {70, {6, 4, 3, 2, 1.5}},
                                               {72, {6, 4, 3, 2, 1.5}},
                                               {75, {4, 3, 2, 1.5}},
                                               {76, {6, 4, 3, 2, 1.5}},
                                               {78, {2}},
                                               {80, {6, 4, 3, 2, 1.5}},
                                               {82, {2}},
                                               {85, {6, 4, 3, 2}},
                                               {90, {6, 4, 3, 2, 1.5}},
                                               {95, {6, 4, 3, 2}},
                                               {100, {6, 4, 3, 2}},
                                               {105, {6, 4, 3, 2}},
                                               {110, {6, 4, 3, 2, 1.5}},
                                               {115, {6, 4, 3, 2}},
                                               {120, {6, 4, 3, 2}},
                                               {125, {8, 6, 4, 3, 2}},
                                               {130, {8, 6, 4, 3, 2}},
                                               {135, {6, 4, 3, 2}},
                                               {140, {8, 6, 4, 3, 2}},
                                               {145, {6, 4, 3, 2}},
                                               {150, {8, 6, 4, 3, 2}},
                                               {155, {6, 4, 3}},
                                               {160, {8, 6, 4, 3}},
                                               {165, {6, 4, 3}},
                                               {170, {8, 6, 4, 3}},
                                               {175, {6, 4, 3}},
                                               {180, {8, 6, 4, 3}},
                                               {185, {6, 4, 3}},
                                               {190, {8, 6, 4, 3}},
                                               {195, {6, 4, 3}},
                                               {200, {8, 6, 4, 3}}}};

constexpr double k_mm_per_inch = 25.4;

/// Upper case, runs of spaces and hyphens between figures as one space, no space at the ends.
std::string normalised(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool joins_figures = c == '-' && !out.empty() && out.back() >= '0' && out.back() <= '9';
    if (c == ' ' || c == '\t' || joins_figures) {
      if (!out.empty() && out.back() != ' ') out += ' ';
    } else if (c != '"') {
      out += (c >= 'a' && c <= 'z') ? static_cast<char>(c - 'a' + 'A') : c;
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

bool same(double a, double b) { return std::abs(a - b) < 1e-9; }

const MetricSize* metric_size(double diameter_mm) {
  const auto it = std::find_if(k_metric.begin(), k_metric.end(), [&](const MetricSize& size) {
    return same(size.diameter_mm, diameter_mm);
  });
  return it == k_metric.end() ? nullptr : &*it;
}

bool has_pitch(const MetricSize& size, double pitch_mm) {
  return std::any_of(size.pitches_mm.begin(), size.pitches_mm.end(),
                     [&](double pitch) { return pitch > 0.0 && same(pitch, pitch_mm); });
}

/// The pitch of entry threads; the coarse one of a size that does not have it.
double usual_pitch_mm(const MetricSize& size) {
  for (const double pitch : {1.5, 2.0}) {
    if ((pitch == 2.0 || size.diameter_mm <= 75.0) && has_pitch(size, pitch)) return pitch;
  }
  return size.pitches_mm.front();
}

std::optional<Thread> parse_metric(std::string_view text) {
  const std::size_t cross = text.find('X');
  const auto diameter = parse_number(trimmed(text.substr(0, cross)));
  const MetricSize* const size = diameter ? metric_size(*diameter) : nullptr;
  if (size == nullptr) return std::nullopt;
  if (cross == std::string_view::npos) {
    return Thread{ThreadKind::metric, size->diameter_mm, usual_pitch_mm(*size)};
  }
  const auto pitch = parse_number(trimmed(text.substr(cross + 1)));
  if (!pitch || !has_pitch(*size, *pitch)) return std::nullopt;
  return Thread{ThreadKind::metric, size->diameter_mm, *pitch};
}

std::optional<Thread> parse_npt(std::string_view size) {
  for (const InchSize& row : k_npt) {
    if (row.name == size) {
      return Thread{ThreadKind::npt, row.inches, k_mm_per_inch / row.threads_per_inch};
    }
  }
  return std::nullopt;
}

std::optional<Thread> parse_pg(std::string_view size) {
  const auto number = parse_number(size);
  if (!number) return std::nullopt;
  for (const PgSize& row : k_pg) {
    if (same(row.number, *number)) return Thread{ThreadKind::pg, row.number, row.pitch_mm};
  }
  return std::nullopt;
}

/// "20 and 22": the sizes next to one that is not in the list, or the only one.
template <class Sizes, class Figure>
std::string neighbours(const Sizes& sizes, double wanted, Figure figure, const char* letter) {
  const auto above = std::find_if(sizes.begin(), sizes.end(),
                                  [&](const auto& size) { return figure(size) > wanted; });
  const auto name = [&](const auto& size) { return letter + plain(figure(size), 4); };
  if (above == sizes.begin()) return "the smallest is " + name(*above);
  if (above == sizes.end()) return "the largest is " + name(sizes.back());
  return "the nearest sizes are " + name(*std::prev(above)) + " and " + name(*above);
}

std::string metric_advice(std::string_view text) {
  const auto diameter = parse_number(trimmed(text.substr(0, text.find('X'))));
  if (!diameter) return {};
  const MetricSize* const size = metric_size(*diameter);
  if (size == nullptr) {
    return neighbours(
        k_metric, *diameter, [](const MetricSize& row) { return row.diameter_mm; }, "M");
  }
  std::string list;
  for (const double pitch : size->pitches_mm) {
    if (pitch > 0.0) list += (list.empty() ? "" : ", ") + plain(pitch);
  }
  return "M" + plain(size->diameter_mm) + " is made with a pitch of " + list + " mm";
}

std::string npt_advice() {
  std::string list;
  for (const InchSize& row : k_npt) list += (list.empty() ? "" : ", ") + std::string(row.name);
  return "NPT sizes are " + list;
}

}  // namespace

std::string thread_advice(std::string_view text) {
  const std::string normal = normalised(text);
  const std::string_view all = normal;
  if (parse_thread(text)) return {};
  if (all.starts_with("NPT") || all.ends_with("NPT")) return npt_advice();
  if (all.starts_with("PG")) {
    const auto number = parse_number(trimmed(all.substr(2)));
    if (!number) return {};
    return neighbours(
        k_pg, *number, [](const PgSize& row) { return row.number; }, "PG ");
  }
  return all.starts_with("M") ? metric_advice(all.substr(1)) : std::string();
}

std::optional<Thread> parse_thread(std::string_view text) {
  const std::string normal = normalised(text);
  const std::string_view all = normal;
  if (all.starts_with("NPT")) return parse_npt(trimmed(all.substr(3)));
  if (all.ends_with("NPT")) return parse_npt(trimmed(all.substr(0, all.size() - 3)));
  if (all.starts_with("PG")) return parse_pg(trimmed(all.substr(2)));
  if (all.starts_with("M")) return parse_metric(all.substr(1));
  return std::nullopt;
}

std::string_view thread_forms() { return "a thread such as M20, M20x1.5, NPT 1/2 or PG 13.5"; }

std::string to_text(const Thread& thread) {
  switch (thread.kind) {
    case ThreadKind::metric: {
      std::string text = "M" + plain(thread.size);
      const MetricSize* const size = metric_size(thread.size);
      if (size == nullptr || !same(thread.pitch_mm, usual_pitch_mm(*size))) {
        text += "x" + plain(thread.pitch_mm);
      }
      return text;
    }
    case ThreadKind::npt: {
      const auto* row = std::find_if(k_npt.begin(), k_npt.end(),
                                     [&](const InchSize& r) { return r.inches == thread.size; });
      return "NPT " + (row == k_npt.end() ? plain(thread.size) : std::string(row->name));
    }
    case ThreadKind::pg:
      return "PG " + plain(thread.size);
  }
  return {};
}

}  // namespace cutback::entry
