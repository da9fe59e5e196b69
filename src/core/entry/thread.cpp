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

// ASME B1.20.1: nominal size and threads per inch.
constexpr std::array<InchSize, 10> k_npt{{{"1/2", 0.5, 14.0},
                                          {"3/4", 0.75, 14.0},
                                          {"1", 1.0, 11.5},
                                          {"1 1/4", 1.25, 11.5},
                                          {"1 1/2", 1.5, 11.5},
                                          {"2", 2.0, 11.5},
                                          {"2 1/2", 2.5, 8.0},
                                          {"3", 3.0, 8.0},
                                          {"3 1/2", 3.5, 8.0},
                                          {"4", 4.0, 8.0}}};

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

double usual_pitch_mm(double diameter_mm) { return diameter_mm <= 75.0 ? 1.5 : 2.0; }

std::optional<Thread> parse_metric(std::string_view text) {
  const std::size_t cross = text.find('X');
  const auto diameter = parse_number(trimmed(text.substr(0, cross)));
  if (!diameter || *diameter < 6.0 || *diameter > 200.0) return std::nullopt;
  double pitch = usual_pitch_mm(*diameter);
  if (cross != std::string_view::npos) {
    const auto given = parse_number(trimmed(text.substr(cross + 1)));
    if (!given || *given < 0.5 || *given > 6.0) return std::nullopt;
    pitch = *given;
  }
  return Thread{ThreadKind::metric, *diameter, pitch};
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
    if (std::abs(row.number - *number) < 1e-9)
      return Thread{ThreadKind::pg, row.number, row.pitch_mm};
  }
  return std::nullopt;
}

}  // namespace

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
      if (std::abs(thread.pitch_mm - usual_pitch_mm(thread.size)) > 1e-9) {
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
