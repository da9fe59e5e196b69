#include "io/xlsx_overview.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/money.hpp"
#include "cutback/number.hpp"

namespace cutback::io {
namespace {

constexpr std::size_t k_parts = 15;   // of the take-off that stand here
constexpr std::size_t k_groups = 10;  // of what needs a person
constexpr lxw_col_t k_chart_column = 6;
constexpr std::size_t k_first_sheet = 0;

/// Rows written one after the other.
class Writer {
 public:
  Writer(XlsxBook& book, lxw_worksheet* sheet) : book_(book), looks_(book.looks()), sheet_(sheet) {
    constexpr std::array<double, 6> k_widths{42, 12, 14, 16, 14, 4};
    for (std::size_t i = 0; i < k_widths.size(); ++i) {
      const auto column = static_cast<lxw_col_t>(i);
      book_.check(worksheet_set_column(sheet_, column, column, k_widths[i], nullptr));
    }
  }

  [[nodiscard]] lxw_row_t row() const { return row_; }
  void next() { ++row_; }
  void text(lxw_col_t column, std::string_view text, lxw_format* look) {
    if (text.empty()) return;
    const std::string cell = xlsx_text(text);
    book_.check(worksheet_write_string(sheet_, row_, column, cell.c_str(), look));
    book_.count_in(k_first_sheet, cell);
  }
  void number(lxw_col_t column, double value, lxw_format* look) {
    book_.check(worksheet_write_number(sheet_, row_, column, value, look));
    book_.count_in(k_first_sheet, {});
  }
  void formula(lxw_col_t column, const std::string& formula, double value, lxw_format* look) {
    book_.check(worksheet_write_formula_num(sheet_, row_, column, formula.c_str(), look, value));
    book_.count_in(k_first_sheet, {});
  }
  void heading(std::string_view first, std::initializer_list<std::string_view> others) {
    text(0, first, looks_.heading);
    lxw_col_t column = 1;
    for (const std::string_view other : others) text(column++, other, looks_.heading);
    next();
  }

  /// A chart of the counts in column B over the rows from `first` to the last.
  void chart(std::uint8_t type, const char* title, lxw_row_t first, lxw_row_t at) {
    if (row_ == first) return;
    lxw_chart* const made = book_.add_chart(type);
    const std::string rows = std::to_string(first + 1) + ":$" + "?" + "$" + std::to_string(row_);
    const auto range = [&](char column) {
      std::string text = std::string("=Overview!$") + column + "$" + rows;
      std::replace(text.begin(), text.end(), '?', column);
      return text;
    };
    lxw_chart_series* const series = chart_add_series(made, range('A').c_str(), range('B').c_str());
    lxw_chart_fill fill{};
    fill.color = 0x4A6478;  // dark enough to print in grey
    chart_series_set_fill(series, &fill);
    chart_series_set_labels(series);
    chart_title_set_name(made, title);
    chart_legend_set_position(made, LXW_CHART_LEGEND_NONE);
    if (type == LXW_CHART_BAR) chart_axis_set_reverse(made->y_axis);
    chart_gridlines(made);
    lxw_chart_options options{};
    options.x_scale = 1.1;
    options.y_scale = 0.85;
    book_.check(worksheet_insert_chart_opt(sheet_, at, k_chart_column, made, &options));
  }

 private:
  static void chart_gridlines(lxw_chart* chart) {
    chart_axis_major_gridlines_set_visible(chart->y_axis, LXW_FALSE);
    chart_axis_major_gridlines_set_visible(chart->x_axis, LXW_FALSE);
  }

  XlsxBook& book_;
  const XlsxLooks& looks_;
  lxw_worksheet* sheet_;
  lxw_row_t row_ = 0;
};

void write_ends(Writer& out, const XlsxLooks& looks, const schedule::Tally& tally) {
  const auto of = [&](Verdict verdict) {
    return tally.by_verdict[static_cast<std::size_t>(verdict)];
  };
  out.heading("Ends", {"ends"});
  const lxw_row_t first = out.row();
  const auto line = [&](std::string_view text, std::uint64_t count) {
    out.text(0, text, looks.text);
    out.number(1, static_cast<double>(count), looks.count);
    out.next();
  };
  line("A gland fits", of(Verdict::fits));
  line("Inside, but not proven: measure first", of(Verdict::marginal_inside));
  line("A figure is missing", of(Verdict::not_known));
  line("Outside by less than the uncertainty", of(Verdict::marginal_outside));
  line("No gland of the list fits", of(Verdict::no_fit));
  if (tally.out_of_stock > 0) line("One fits, but none is left", tally.out_of_stock);
  line("The row cannot be read", tally.unusable);
  out.chart(LXW_CHART_BAR, "Ends", first, 0);
}

void write_order(Writer& out, const XlsxLooks& looks, const schedule::Takeoff& takeoff) {
  out.next();
  const std::string currency = takeoff.currency.empty() ? "" : " (" + takeoff.currency + ")";
  out.heading("To order", {"to order", "provisional", "total" + currency});
  std::vector<const schedule::TakeoffLine*> lines;
  for (const schedule::TakeoffLine& line : takeoff.lines) {
    if (line.to_order > 0 || line.provisional > 0) lines.push_back(&line);
  }
  // What costs most first; without a price, what there is most of.
  std::stable_sort(lines.begin(), lines.end(), [](const auto* a, const auto* b) {
    return std::pair(a->total.value_or(0), a->to_order) >
           std::pair(b->total.value_or(0), b->to_order);
  });
  for (std::size_t i = 0; i < std::min(lines.size(), k_parts); ++i) {
    const schedule::TakeoffLine& line = *lines[i];
    std::string name = schedule::name_of(line);
    if (!line.group.empty()) name = line.group + ": " + name;
    out.text(0, name, looks.text);
    out.number(1, static_cast<double>(line.to_order), looks.count);
    out.number(2, static_cast<double>(line.provisional), looks.count);
    if (line.total) out.number(3, money_value(*line.total, takeoff.decimals), looks.money);
    out.next();
  }
  if (lines.size() > k_parts) {
    out.text(0, "and " + std::to_string(lines.size() - k_parts) + " more in the sheet Take-off",
             looks.italic);
    out.next();
  }
  if (!takeoff.total) return;
  const std::string last = std::to_string(takeoff.lines.size() + 1);
  const auto sum = [&](std::string_view words, char column, std::int64_t units) {
    out.text(0, words, looks.bold);
    out.formula(3, std::string("=SUM('Take-off'!") + column + "2:" + column + last + ")",
                money_value(units, takeoff.decimals), looks.bold_money);
    out.next();
  };
  const auto unpriced = std::count_if(lines.begin(), lines.end(), [](const auto* line) {
    return line->to_order > 0 && !line->total;
  });
  std::int64_t pieces = 0;
  for (const schedule::TakeoffLine* const line : lines) {
    if (!line->total) pieces += static_cast<std::int64_t>(line->to_order);
  }
  const std::string without = unpriced == 0
                                  ? std::string()
                                  : ", but for " + std::to_string(pieces) +
                                        (pieces == 1 ? " piece" : " pieces") + " without a price";
  sum("All that is to be ordered" + without, 'I', *takeoff.total);
  sum("Provisional besides: once it is measured", 'L', *takeoff.provisional_total);
}

void write_person(Writer& out, const XlsxLooks& looks, const schedule::Tally& tally) {
  out.next();
  out.heading("Needs a person", {"ends"});
  const lxw_row_t first = out.row();
  std::vector<std::pair<std::string, std::uint64_t>> groups(tally.groups.begin(),
                                                            tally.groups.end());
  std::stable_sort(groups.begin(), groups.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  for (std::size_t i = 0; i < std::min(groups.size(), k_groups); ++i) {
    out.text(0, groups[i].first, looks.text);
    out.number(1, static_cast<double>(groups[i].second), looks.count);
    out.next();
  }
  out.chart(LXW_CHART_BAR, "Needs a person", first, 13);
}

void write_margins(Writer& out, const XlsxLooks& looks, const schedule::Tally& tally) {
  out.next();
  out.heading("Smaller margin of the two seals, where a gland fits", {"ends"});
  const lxw_row_t first = out.row();
  std::string from = "0";
  for (std::size_t i = 0; i < schedule::k_margin_bins; ++i) {
    const bool last = i + 1 == schedule::k_margin_bins;
    const std::string to = last ? "" : plain(schedule::k_margin_limits_mm[i]);
    out.text(0, last ? "over " + from + " mm" : from + " to " + to + " mm", looks.text);
    out.number(1, static_cast<double>(tally.margins[i]), looks.count);
    out.next();
    from = to;
  }
  out.chart(LXW_CHART_COLUMN, "Margins of what fits", first, 26);
}

}  // namespace

void write_overview(XlsxBook& book, lxw_worksheet* sheet, const schedule::Tally& tally,
                    const schedule::Takeoff& takeoff, const std::string& subject) {
  const XlsxLooks& looks = book.looks();
  Writer out(book, sheet);
  out.text(0, "Cable glands to order", looks.bold);
  out.next();
  out.text(0, subject, looks.text);
  out.next();
  out.next();
  write_ends(out, looks, tally);
  write_order(out, looks, takeoff);
  write_person(out, looks, tally);
  write_margins(out, looks, tally);
}

}  // namespace cutback::io
