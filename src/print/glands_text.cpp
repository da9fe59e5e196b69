#include "cutback/print/glands.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "cutback/glyph_width.hpp"
#include "cutback/number.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using gland::Coverage;
using gland::EntryGroup;
using gland::Gland;
using gland::GlandList;
using gland::Group;
using gland::Span;

constexpr std::size_t k_longest_part = 24;
constexpr std::string_view k_together = "together";

std::string counted(std::size_t count) {
  return fmt::format("{} gland{}", count, count == 1 ? "" : "s");
}

std::string span_text(const Span& span) { return plain(span.low_mm) + "-" + plain(span.high_mm); }

std::string spans_text(const std::vector<Span>& spans) {
  std::string text;
  for (const Span& span : spans) text += (text.empty() ? "" : ", ") + span_text(span);
  return text;
}

Span outer(const Gland& gland) {
  return {gland.outer.low_mm.value_or(0.0), gland.outer.high_mm.value_or(0.0)};
}

/// Widths of the columns before the bars, and the axis that all bars share.
struct Axis {
  std::size_t part = 0;
  std::size_t thread = 0;
  std::size_t range = 0;
  std::size_t bars = 0;
  double low_mm = 0.0;
  double high_mm = 0.0;
  double tick_mm = 10.0;

  [[nodiscard]] std::size_t column(double mm) const {
    const double part_of_axis = (mm - low_mm) / (high_mm - low_mm);
    const auto at = static_cast<std::size_t>(part_of_axis * static_cast<double>(bars) + 1e-9);
    return std::min(at, bars - 1);
  }
};

/// Glands of a group whose outer seals have one range: a row of the picture.
struct Fold {
  Span outer;
  std::vector<const Gland*> glands;

  /// The first of them, by part.
  [[nodiscard]] std::string part() const {
    const std::string more =
        glands.size() > 1 ? fmt::format(" +{}", glands.size() - 1) : std::string();
    return cell_of(glands.front()->part, k_longest_part - more.size()) + more;
  }
  [[nodiscard]] std::string thread() const {
    const std::string first = to_text(glands.front()->entry_thread);
    std::vector<std::string> threads;
    for (const Gland* gland : glands) {
      std::string thread = to_text(gland->entry_thread);
      if (std::find(threads.begin(), threads.end(), thread) == threads.end()) {
        threads.push_back(std::move(thread));
      }
    }
    return threads.size() == 1 ? first : fmt::format("{} threads", threads.size());
  }

 private:
  /// What is too long is shortened; what is not is not filled up.
  static std::string cell_of(const std::string& text, std::size_t width) {
    return columns_of(text) > width ? cell(text, width) : text;
  }
};

/// Of the group's glands, which stand by range and then by part.
std::vector<Fold> folds_of(const Group& group) {
  std::vector<Fold> folds;
  for (const Gland* gland : group.glands) {
    const Span span = outer(*gland);
    const bool same = !folds.empty() && folds.back().outer.low_mm == span.low_mm &&
                      folds.back().outer.high_mm == span.high_mm;
    if (!same) folds.push_back({span, {}});
    folds.back().glands.push_back(gland);
  }
  return folds;
}

Axis axis_of(const GlandList& list, const Coverage& coverage) {
  Axis axis;
  axis.part = columns_of(k_together);
  axis.low_mm = outer(list.glands.front()).low_mm;
  for (const Group& group : coverage.groups) {
    for (const Fold& fold : folds_of(group)) {
      axis.part = std::max(axis.part, columns_of(fold.part()));
      axis.thread = std::max(axis.thread, columns_of(fold.thread()));
      axis.range = std::max(axis.range, columns_of(span_text(fold.outer)));
      axis.low_mm = std::min(axis.low_mm, fold.outer.low_mm);
      axis.high_mm = std::max(axis.high_mm, fold.outer.high_mm);
    }
  }
  axis.bars = k_columns - 1 - (axis.part + axis.thread + axis.range + 3);
  axis.low_mm = std::floor(axis.low_mm / 10.0) * 10.0;
  axis.high_mm = std::max(std::ceil(axis.high_mm / 10.0) * 10.0, axis.low_mm + 10.0);
  constexpr double k_room = 4.0;  // columns that a figure over the axis needs
  for (const double tick_mm : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
    axis.tick_mm = tick_mm;
    const double ticks = (axis.high_mm - axis.low_mm) / tick_mm;
    if (static_cast<double>(axis.bars) >= k_room * ticks) break;
  }
  return axis;
}

void put(std::string& line, const Axis& axis, const Span& span, char mark) {
  const std::size_t first = axis.column(span.low_mm);
  const std::size_t last = std::max(first, axis.column(span.high_mm - 1e-6));
  for (std::size_t i = first; i <= last; ++i) line[i] = mark;
}

std::string row(const Axis& axis, std::string_view part, std::string_view thread,
                std::string_view range, const std::string& bars) {
  return line_of(cell(part, axis.part) + " " + cell(thread, axis.thread) + " " +
                 cell(range, axis.range) + " " + bars);
}

/// An empty line of bars with its tick marks.
std::string ticks(const Axis& axis) {
  std::string bars(axis.bars, ' ');
  for (double mm = axis.low_mm; mm < axis.high_mm - 1e-9; mm += axis.tick_mm) {
    bars[axis.column(mm)] = ':';
  }
  return bars;
}

std::string figures(const Axis& axis) {
  std::string bars(axis.bars, ' ');
  for (double mm = axis.low_mm; mm < axis.high_mm - 1e-9; mm += axis.tick_mm) {
    const std::string figure = plain(mm, 0);
    const std::size_t at = axis.column(mm);
    if (at + figure.size() <= axis.bars) bars.replace(at, figure.size(), figure);
  }
  return bars;
}

std::string title(const Group& group) {
  const std::string armour = group.armour == cable::ArmourKind::none
                                 ? "without armour"
                                 : std::string(to_string(group.armour)) + " armour";
  return armour + ", " + std::string(to_string(group.sealing)) + ": " +
         counted(group.glands.size());
}

std::string group_text(const Group& group, const Axis& axis, const Style& style) {
  std::string text = heading(title(group), style);
  text += row(axis, "", "", "mm", figures(axis));
  for (const Fold& fold : folds_of(group)) {
    std::string bars = ticks(axis);
    put(bars, axis, fold.outer, '#');
    text += row(axis, fold.part(), fold.thread(), span_text(fold.outer), bars);
  }
  std::string bars = ticks(axis);
  for (const Span& span : group.covered) put(bars, axis, span, '=');
  for (const Span& gap : group.gaps) put(bars, axis, gap, '?');
  text += row(axis, k_together, "", "", bars);
  const Span whole{group.covered.front().low_mm, group.covered.back().high_mm};
  const std::string gaps = group.gaps.empty()
                               ? ", without a gap."
                               : "; no outer seal takes " + spans_text(group.gaps) + " (?).";
  text += wrapped("", "Sheaths of " + span_text(whole) + " mm" + gaps);
  return text;
}

std::size_t entry_wide(const Coverage& coverage) {
  std::size_t wide = 0;
  for (const EntryGroup& entry : coverage.entries) {
    wide = std::max(wide, columns_of(to_text(entry.thread)));
  }
  return wide;
}

std::string entries_text(const Coverage& coverage, const Style& style) {
  std::string text = heading("entries", style);
  for (const EntryGroup& entry : coverage.entries) {
    text += wrapped(
        cell(to_text(entry.thread), entry_wide(coverage)) + right(counted(entry.glands), 12) + "  ",
        "sheaths of " + spans_text(entry.covered) + " mm");
  }
  return text;
}

std::string not_stated_text(const Coverage& coverage, const Style& style) {
  std::string text = heading("not stated", style);
  for (const gland::NotStated& item : coverage.not_stated) {
    text += cell(item.column, 20) + fmt::format("{} of {}\n", item.blank, counted(item.applies));
  }
  return text;
}

}  // namespace

std::string glands_text(const GlandList& list, const Coverage& coverage, const Style& style) {
  if (list.glands.empty()) return wrapped("", list.name + ": no gland");
  const Axis axis = axis_of(list, coverage);
  std::string text = wrapped("Gland list  ", list.name);
  text += wrapped("            ", counted(list.glands.size()) + ", no fault");
  for (const Group& group : coverage.groups) text += group_text(group, axis, style);
  const bool folded =
      std::any_of(coverage.groups.begin(), coverage.groups.end(),
                  [](const auto& g) { return folds_of(g).size() < g.glands.size(); });
  if (folded) {
    text += "\n" + wrapped("",
                           "+2: two more glands whose outer seal has the same range; --json has "
                           "them all.");
  }
  text += entries_text(coverage, style);
  if (!coverage.not_stated.empty()) text += not_stated_text(coverage, style);
  return text;
}

}  // namespace cutback::print
