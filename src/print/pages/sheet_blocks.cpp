#include "print/pages/sheet_blocks.hpp"

#include <algorithm>

#include "cutback/number.hpp"
#include "cutback/print/words.hpp"
#include "print/pages/card_text.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

bool is_armoured(const Sheet& sheet) { return sheet.job->cable.armour != cable::ArmourKind::none; }

bool is_alike(const strip::Tail& a, const strip::Tail& b) {
  return a.length_mm == b.length_mm && a.less_strip_mm == b.less_strip_mm &&
         a.cut_back_mm == b.cut_back_mm && a.strip_mm == b.strip_mm && a.route == b.route;
}

}  // namespace

void add_help(std::vector<Block>& blocks, const Sheet& sheet) {
  for (const Help& help : help_words(sheet)) {
    blocks.emplace_back(Paragraph{.words = help.words, .label = help.label});
  }
}

void add_routes(std::vector<Block>& blocks, const Sheet& sheet) {
  const strip::CutPlan& plan = *sheet.plan;
  if (plan.tails.empty()) return;
  Table table{
      .columns = {{1.1}, {0.9, Align::right}, {0.9, Align::right}, {0.8, Align::right}, {2.6}},
      .head = {"core", "tail", "cut back", "strip", "way to the terminal"},
      .rows = {}};
  const auto figure = [](const std::optional<double>& value) {
    return value ? plain(*value, 1) : "____";
  };
  // Cores that are alike share a row.
  for (std::size_t i = 0; i < plan.tails.size();) {
    const strip::Tail& tail = plan.tails[i];
    std::size_t last = i;
    while (last + 1 < plan.tails.size() && is_alike(tail, plan.tails[last + 1])) ++last;
    const std::string name = last == i ? tail.core : tail.core + " to " + plan.tails[last].core;
    const std::string length =
        tail.less_strip_mm ? "strip + " + plain(*tail.less_strip_mm, 1) : figure(tail.length_mm);
    table.rows.push_back(
        {name, length, plain(tail.cut_back_mm, 1), figure(tail.strip_mm), tail.route});
    i = last + 1;
  }
  table.bold_column = 1;
  table.indent_from = 4;
  blocks.emplace_back(Heading{is_armoured(sheet)
                                  ? "Tails in mm, beyond the bedding; cut back after dressing"
                                  : "Tails in mm, beyond the sheath; cut back after dressing"});
  // A cable of many cores would not go on a page as one table.
  const auto rows = std::move(table.rows);
  for (const auto& row : rows) {
    table.rows = {row};
    blocks.emplace_back(table);
    table.goes_on = true;
  }
}

void add_write_in(std::vector<Block>& blocks, const Sheet& sheet) {
  WriteIn write_in;
  if (is_armoured(sheet)) {
    write_in.rows.push_back({{"sheath", "mm"}, {"bedding", "mm"}, {"wire", "mm"}});
  } else {
    write_in.rows.push_back({{"sheath", "mm"}});
  }
  write_in.rows.push_back({{"torque reached", "Nm"}, {"gland batch", ""}});
  for (const sheet::Test& test : sheet.tests) {
    write_in.rows.push_back({{test_words(test), test.unit}});
  }
  if (sheet.fit->barrier) write_in.rows.push_back({{"compound batch", ""}, {"filled at", ""}});
  write_in.rows.push_back({{"made by", ""}, {"date", ""}});
  write_in.rows.push_back({{"checked by", ""}, {"date", ""}});
  blocks.emplace_back(Heading{"As made: measured, proved, signed"});
  blocks.emplace_back(std::move(write_in));
}

}  // namespace cutback::print
