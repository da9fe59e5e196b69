#include "print/inches_text.hpp"

#include <algorithm>
#include <utility>

#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "print/layout.hpp"
#include "print/mark_words.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

constexpr double k_mm_per_inch = 25.4;  // exactly (ISO 31-1 Annex A)
constexpr double k_step = 0.0001;
constexpr int k_decimals = 4;

class Rows {
 public:
  void add(const std::string& what, const std::string& mm, const std::string& in) {
    rows_.push_back({what, mm, in});
  }
  void add(const std::string& what, const std::optional<double>& mm, int decimals,
           Rounding rounding = Rounding::nearest) {
    if (!mm) return;
    const double step = decimals == 2 ? 0.01 : 0.1;
    const double shown = rounding == Rounding::down ? round_down(*mm, step)
                         : rounding == Rounding::up ? round_up(*mm, step)
                                                    : *mm;
    add(what, fixed(shown, decimals), inches(shown, rounding));
  }
  void add(const std::string& what, const std::optional<measure::Estimate>& estimate) {
    if (!estimate) return;
    add(what, estimate->value_mm, 2);
    add("  +/-", estimate->expanded_mm, 2, Rounding::up);
  }
  [[nodiscard]] std::vector<InchRow> take() { return std::move(rows_); }

 private:
  std::vector<InchRow> rows_;
};

std::string table_of(const std::vector<InchRow>& rows, const Style& style) {
  if (rows.empty()) return {};
  const auto line = [](const InchRow& row) {
    return line_of("  " + cell(row.what, 35) + right(row.mm, 12) + right(row.in, 14));
  };
  std::string text = heading("in inches", style) + line({"1 in = 25.4 mm", "mm", "in"});
  for (const InchRow& row : rows) text += line(row);
  return text;
}

void add_gate(Rows& rows, const std::string& what, const fit::Gate& gate, int decimals) {
  rows.add(what + " at least", gate.low_mm, decimals, Rounding::up);
  rows.add(what + " at most", gate.high_mm, decimals, Rounding::down);
}

}  // namespace

std::string inches(double mm, Rounding rounding) {
  const double in = mm / k_mm_per_inch;
  const double kept = rounding == Rounding::up     ? round_up(in, k_step)
                      : rounding == Rounding::down ? round_down(in, k_step)
                                                   : in;
  return fixed(kept, k_decimals);
}

std::string inches_of(const fit::Question& question, const fit::GlandFit* best,
                      const Style& style) {
  const job::Job& job = *question.job;
  Rows rows;
  rows.add("sheath", job.cable.sheath_od);
  if (job.cable.armour != cable::ArmourKind::none) {
    rows.add("bedding", job.cable.bedding);
    rows.add("wire", job.cable.wire);
  }
  rows.add("wall", job.entry.wall_mm, 2);
  if (best != nullptr) {
    for (const fit::Check& check : best->checks) {
      if (!check.margin_mm) continue;  // what it compares is no length
      const std::string name(to_string(check.name));
      rows.add(name + " from", check.low, 2);
      rows.add(name + " to", check.high, 2);
      rows.add(name + " to spare", check.margin_mm, 2, Rounding::down);
    }
  }
  return table_of(rows.take(), style);
}

std::vector<InchRow> inch_rows(const sheet::Sheet& sheet) {
  Rows rows;
  if (!sheet.has_marks()) return rows.take();
  const bool armoured = sheet.job->cable.armour != cable::ArmourKind::none;
  add_gate(rows, "sheath", sheet.gates.sheath, 1);
  rows.add("sheath, readings apart at most", sheet.gates.sheath_apart_mm, 1, Rounding::down);
  if (armoured) {
    add_gate(rows, "bedding", sheet.gates.bedding, 1);
    rows.add("bedding, readings apart at most", sheet.gates.bedding_apart_mm, 1, Rounding::down);
    for (const fit::WireGate& wire : sheet.gates.wire) {
      add_gate(rows, std::string(piece_words(sheet.job->cable.armour)), wire.gate, 2);
      rows.add("sheath less bedding at least", wire.least_between_mm, 1, Rounding::up);
      rows.add("sheath less bedding at most", wire.most_between_mm, 1, Rounding::down);
    }
    rows.add("sheath less bedding, by eye under", depths_from_mm(sheet), 2, Rounding::up);
  }
  const strip::CutPlan& plan = *sheet.plan;
  const strip::Marks& marks = plan.marks;
  // Each with its number and from where it is measured, as on the front.
  if (armoured) {
    rows.add("1 armour cut, from the end", marks.armour_cut_mm, 1);
    rows.add("2 sheath cut, behind 1, at least", marks.exposed_min_mm, 1);
    rows.add("2 sheath cut, behind 1, at most", marks.exposed_max_mm, 1);
    rows.add("3 bedding cut, from the end", marks.bedding_cut_mm, 1);
  } else {
    rows.add("1 sheath cut, from the end", marks.sheath_cut_mm, 1);
  }
  rows.add("S shoulder, from the end", marks.shoulder_mm, 1);
  // What is added to a length that waits to be measured, and what is made from mark 1 then.
  for (const MarkWords& mark : mark_words(sheet)) {
    const auto figure = parse_number(mark.figure);
    if (!figure || mark.number == '2' || mark.after == "from the end") continue;
    const std::string where = mark.before.empty() ? mark.after : mark.before;
    rows.add("mark " + std::string(1, mark.number) + ", " + std::string(trimmed(where)),
             mark.figure, inches(*figure));
  }
  rows.add("saw to", plan.depths.saw_mm, 1, Rounding::down);
  if (plan.depths.saw_limit_mm != plan.depths.saw_mm) {
    rows.add("saw, never beyond", plan.depths.saw_limit_mm, 1, Rounding::down);
  }
  rows.add("score the sheath to", plan.depths.sheath_mm, 1, Rounding::down);
  rows.add("score the bedding to", plan.depths.bedding_mm, 1, Rounding::down);
  const std::vector<TailRow> tails = tail_rows(plan.tails);
  const bool one_strip = std::all_of(tails.begin(), tails.end(), [&](const TailRow& row) {
    return row.tail->strip_mm == tails.front().tail->strip_mm;
  });
  if (one_strip && !tails.empty()) rows.add("strip", tails.front().tail->strip_mm, 1);
  for (const TailRow& row : tails) {
    const std::string name =
        (row.cores.find(" to ") == std::string::npos ? "core " : "cores ") + row.cores;
    rows.add(name + ", tail", row.tail->length_mm, 1);
    rows.add(name + ", tail less its strip", row.tail->less_strip_mm, 1);
    if (!one_strip) rows.add(name + ", strip", row.tail->strip_mm, 1);
  }
  return rows.take();
}

std::string inches_of(const sheet::Sheet& sheet, const Style& style) {
  Rows rows;
  const cable::Cable& cable = sheet.job->cable;
  rows.add("sheath", cable.sheath_od);
  if (cable.armour != cable::ArmourKind::none) {
    rows.add("bedding", cable.bedding);
    rows.add("wire", cable.wire);
  }
  std::vector<InchRow> all = rows.take();
  for (InchRow& row : inch_rows(sheet)) all.push_back(std::move(row));
  return table_of(all, style);
}

}  // namespace cutback::print
