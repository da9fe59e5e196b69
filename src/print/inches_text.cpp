#include "print/inches_text.hpp"

#include <utility>

#include "cutback/number.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

constexpr double k_mm_per_inch = 25.4;  // exactly (ISO 31-1 Annex A)
constexpr double k_step = 0.0001;
constexpr int k_decimals = 4;

/// Rows of a table: what it is, mm, inches.
class Rows {
 public:
  void add(const std::string& what, const std::string& mm, const std::string& in) {
    text_ += line_of("  " + cell(what, 30) + right(mm, 12) + right(in, 14));
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
  [[nodiscard]] std::string text(const Style& style) const {
    if (text_.empty()) return {};
    return heading("in inches", style) +
           line_of("  " + cell("1 in = 25.4 mm", 30) + right("mm", 12) + right("in", 14)) + text_;
  }

 private:
  std::string text_;
};

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
  return rows.text(style);
}

std::string inches_of(const sheet::Sheet& sheet, const Style& style) {
  Rows rows;
  const cable::Cable& cable = sheet.job->cable;
  const bool armoured = cable.armour != cable::ArmourKind::none;
  rows.add("sheath", cable.sheath_od);
  if (armoured) {
    rows.add("bedding", cable.bedding);
    rows.add("wire", cable.wire);
  }
  if (!sheet.has_marks()) return rows.text(style);
  add_gate(rows, "sheath must read", sheet.gates.sheath, 1);
  if (armoured) {
    add_gate(rows, "bedding must read", sheet.gates.bedding, 1);
    for (const fit::WireGate& wire : sheet.gates.wire) {
      add_gate(rows, "one wire must read", wire.gate, 2);
      rows.add("sheath less bedding at least", wire.least_between_mm, 1, Rounding::up);
      rows.add("sheath less bedding at most", wire.most_between_mm, 1, Rounding::down);
    }
  }
  const strip::CutPlan& plan = *sheet.plan;
  const strip::Marks& marks = plan.marks;
  rows.add("armour cut, from the end", marks.armour_cut_mm, 1);
  rows.add("sheath cut, from the end", marks.sheath_cut_mm, 1);
  rows.add("exposed armour, at least", marks.exposed_min_mm, 1);
  rows.add("exposed armour, at most", marks.exposed_max_mm, 1);
  rows.add("bedding cut, from the end", marks.bedding_cut_mm, 1);
  rows.add("shoulder, from the end", marks.shoulder_mm, 1);
  rows.add("saw to", plan.depths.saw_mm, 1, Rounding::down);
  rows.add("saw, never beyond", plan.depths.saw_limit_mm, 1, Rounding::down);
  rows.add("score the sheath to", plan.depths.sheath_mm, 1, Rounding::down);
  rows.add("score the bedding to", plan.depths.bedding_mm, 1, Rounding::down);
  for (const strip::Tail& tail : plan.tails) {
    rows.add("core " + tail.core + ", tail", tail.length_mm, 1);
    rows.add("core " + tail.core + ", cut back", tail.cut_back_mm, 1);
    rows.add("core " + tail.core + ", strip", tail.strip_mm, 1);
  }
  return rows.text(style);
}

}  // namespace cutback::print
