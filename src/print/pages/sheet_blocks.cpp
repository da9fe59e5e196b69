#include "print/pages/sheet_blocks.hpp"

#include <algorithm>

#include "cutback/number.hpp"
#include "cutback/print/words.hpp"
#include "print/pages/strip_drawing.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

std::string mm(const std::optional<double>& value) {
  return value ? plain(*value, 1) + " mm" : std::string("no figure");
}

bool is_alike(const strip::Tail& a, const strip::Tail& b) {
  return a.length_mm == b.length_mm && a.cut_back_mm == b.cut_back_mm && a.strip_mm == b.strip_mm &&
         a.route == b.route;
}

/// Where a mark is measured from, and how exactly.
std::string from_end(const std::optional<double>& mark, const std::optional<double>& at_mm,
                     const strip::Axis& axis) {
  if (mark) return "from the end, to 1 mm";
  if (axis.armour_stop_mm && at_mm) {
    return plain(*at_mm + *axis.armour_stop_mm, 1) + " mm in front of the armour tips";
  }
  return "hold the gland beside the cable";
}

}  // namespace

bool is_armoured(const Sheet& sheet) { return sheet.job->cable.armour != cable::ArmourKind::none; }

Picture strip_picture(const Sheet& sheet, double most_high) {
  return {[&sheet, most_high](const Pen& pen, double x, double y, double width, double body_mm) {
    return put_strip_drawing(pen, sheet, x, y, width, body_mm, most_high);
  }};
}

void add_help(std::vector<Block>& blocks, const Sheet& sheet) {
  for (const Help& help : help_words(sheet)) {
    blocks.emplace_back(Paragraph{.words = help.words, .label = help.label});
  }
}

void add_gates(std::vector<Block>& blocks, const Sheet& sheet) {
  Table table{.columns = {{0.7}, {1.3}, {1.2}, {2.0}}, .head = {}, .rows = {}};
  for (const GateLine& line : gate_lines(sheet)) {
    const bool wire = line.what == "one wire" || line.what.empty();
    table.rows.push_back({line.what.empty() ? "or" : line.what, line.must,
                          wire ? "________ mm" : "______ ______ mm", line.also});
  }
  table.bold_column = 1;
  blocks.emplace_back(Heading{"Before cutting it must read, where the gland will sit"});
  blocks.emplace_back(std::move(table));
}

void add_marks(std::vector<Block>& blocks, const Sheet& sheet) {
  const strip::Marks& marks = sheet.plan->marks;
  const strip::Axis& axis = sheet.plan->axis;
  Table table{.columns = {{0.3}, {1.25}, {1.0}, {2.4}}, .head = {}, .rows = {}};
  const auto row = [&](const char* mark, const char* words, const std::optional<double>& length,
                       std::string from) {
    table.rows.push_back({mark, words, mm(length), std::move(from)});
  };
  // Where the armour stop is known the shoulder is a check and no mark: it lies on sheath that is
  // stripped off.
  const bool held = is_armoured(sheet) && !axis.armour_stop_mm;
  if (held) row("S", "hold here", marks.shoulder_mm, from_end(marks.shoulder_mm, 0.0, axis));
  if (is_armoured(sheet)) {
    row("1", "armour cut", marks.armour_cut_mm,
        marks.armour_cut_mm ? from_end(marks.armour_cut_mm, {}, axis)
        : axis.armour_stop_mm
            ? plain(*axis.armour_stop_mm, 1) + " mm behind S"
            : std::string("hold the gland with its shoulder at S; mark where the clamp ends"));
    row("2", "sheath cut", marks.sheath_cut_mm,
        marks.exposed_min_mm
            ? plain(*marks.exposed_min_mm, 1) + " to " + plain(*marks.exposed_max_mm, 1) +
                  " mm from the armour tips, not from the end"
            : std::string("exposed armour: see the gland's instructions"));
    row("3", "bedding cut", marks.bedding_cut_mm,
        from_end(marks.bedding_cut_mm, axis.bedding_end_mm, axis));
  } else {
    row("1", "sheath cut", marks.sheath_cut_mm,
        from_end(marks.sheath_cut_mm, axis.bedding_end_mm, axis));
  }
  if (!held) {
    row("S", "check only", marks.shoulder_mm,
        marks.shoulder_mm ? "the shoulder sits there when the gland is offered up: no cut"
                          : from_end(marks.shoulder_mm, 0.0, axis));
  }
  table.bold_column = 2;
  blocks.emplace_back(Heading{"Marks, in working order"});
  blocks.emplace_back(std::move(table));
}

void add_depths(std::vector<Block>& blocks, const Sheet& sheet) {
  const strip::Depths& depths = sheet.plan->depths;
  if (!depths.sheath_mm && !depths.bedding_mm) return;
  Table table{.columns = {{1.5}, {0.75}, {2.3}}, .head = {}, .rows = {}};
  const auto row = [&](const char* words, const std::optional<double>& depth, std::string note) {
    if (depth) table.rows.push_back({words, fixed(*depth, 1) + " mm", std::move(note)});
  };
  row("score the sheath", depths.sheath_mm,
      depths.spread_mm ? "+/- " + fixed(round_up(*depths.spread_mm, 0.1), 1) + " mm; no deeper"
                       : std::string("no deeper"));
  row("saw at mark 1", depths.saw_mm,
      depths.saw_mm == depths.saw_limit_mm ? "as deep as is safe by these readings"
                                           : "sheath, and half through the wires");
  row("never deeper than", depths.saw_limit_mm, "there the bedding may begin");
  row("score the bedding", depths.bedding_mm, "at most, from its own surface");
  table.bold_column = 1;
  blocks.emplace_back(Heading{"Depths, rounded down"});
  blocks.emplace_back(std::move(table));
}

void add_tails(std::vector<Block>& blocks, const Sheet& sheet, Routes routes) {
  const strip::CutPlan& plan = *sheet.plan;
  if (plan.tails.empty()) return;
  Table table{.columns = {{1.1}, {0.9, Align::right}, {0.9, Align::right}, {0.8, Align::right}},
              .head = {"core", "tail", "cut back", "strip"},
              .rows = {}};
  if (routes == Routes::told) {
    table.columns.push_back({2.6});
    table.head.emplace_back("way to the terminal");
  }
  const auto figure = [](const std::optional<double>& value) {
    return value ? plain(*value, 1) : std::string("?");
  };
  // Cores that are alike share a row.
  for (std::size_t i = 0; i < plan.tails.size();) {
    const strip::Tail& tail = plan.tails[i];
    std::size_t last = i;
    while (last + 1 < plan.tails.size() && is_alike(tail, plan.tails[last + 1])) ++last;
    const std::string name = last == i ? tail.core : tail.core + " to " + plan.tails[last].core;
    table.rows.push_back(
        {name, figure(tail.length_mm), plain(tail.cut_back_mm, 1), figure(tail.strip_mm)});
    if (routes == Routes::told) table.rows.back().push_back(tail.route);
    i = last + 1;
  }
  table.bold_column = 1;
  table.indent_from = 4;
  blocks.emplace_back(Heading{is_armoured(sheet)
                                  ? "Tails in mm, beyond the bedding; cut back after dressing"
                                  : "Tails in mm, beyond the sheath; cut back after dressing"});
  // A cable of many cores would not go on a page as one table. Each piece has the head again: it
  // may begin another card.
  constexpr std::size_t k_rows_a_block = 12;
  const auto rows = std::move(table.rows);
  for (std::size_t i = 0; i < rows.size(); i += k_rows_a_block) {
    const auto first = rows.begin() + static_cast<std::ptrdiff_t>(i);
    const auto last =
        rows.begin() + static_cast<std::ptrdiff_t>(std::min(rows.size(), i + k_rows_a_block));
    table.rows.assign(first, last);
    blocks.emplace_back(table);
  }
}

void add_write_in(std::vector<Block>& blocks, const Sheet& sheet) {
  WriteIn write_in;
  write_in.rows.push_back({{"sheath", "mm"}});
  if (is_armoured(sheet)) {
    write_in.rows.back().push_back({"bedding", "mm"});
    write_in.rows.back().push_back({"wire", "mm"});
  }
  write_in.rows.push_back({{"continuity", "\u03a9"}, {"insulation", "M\u03a9"}});
  if (sheet.fit->barrier) write_in.rows.push_back({{"compound, batch", ""}, {"time", ""}});
  write_in.rows.push_back({{"name", ""}, {"date", ""}, {"sign", ""}});
  blocks.emplace_back(Heading{"As made: measured, proved, signed"});
  blocks.emplace_back(std::move(write_in));
}

}  // namespace cutback::print
