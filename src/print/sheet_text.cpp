#include <fmt/format.h>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "cutback/print/words.hpp"
#include "cutback/text.hpp"
#include "print/fit_parts.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

constexpr const char* k_tick = "[ ] ";
constexpr std::size_t k_label_columns = 9;

std::string title(const Sheet& sheet) {
  const job::Job& job = *sheet.job;
  std::string names;
  if (!job.tag.empty()) names += "  cable " + job.tag;
  if (!job.end.empty()) names += "  end " + job.end;
  std::string text = names.empty() ? "TERMINATION SHEET\n" : wrapped("TERMINATION SHEET ", names);
  text += std::string(k_columns - 1, '=') + "\n";
  if (!job.name.empty()) text += wrapped("Job      ", job.name);
  return text;
}

std::string not_ready_box(const Sheet& sheet, const Style& style) {
  if (sheet.not_ready.empty()) return {};
  std::string text = heading(stop_words(sheet), style);
  for (const std::string& reason : sheet.not_ready) text += wrapped("  ! ", reason);
  for (const Help& help : help_words(sheet)) {
    text += wrapped(cell(help.label, k_label_columns), help.words);
  }
  return text;
}

std::string check_rows(const fit::GlandFit& fit, const Style& style) {
  std::string text = heading("checks", style);
  for (const fit::Check& check : fit.checks) {
    const std::string margin = check.margin_mm ? margin_text(*check.margin_mm) + " mm" : "";
    text += "  " + cell(to_string(check.name), 12);
    if (margin.empty()) {
      text += verdict_word(check.verdict, style, 0);
    } else {
      text += verdict_word(check.verdict, style, 17) + right(margin, 10);
    }
    if (check.probability && check.counts_for_margin) {
      text += "   probability " + probability_text(*check.probability);
    }
    text += "\n";
    text += wrapped("      ", check.says);
  }
  return text;
}

std::string depth_rows(const strip::Depths& depths, const Style& style) {
  if (!depths.sheath_mm && !depths.bedding_mm) return {};
  std::string text = heading("depths, measured from the sheath's surface, rounded down", style);
  const std::string spread =
      depths.spread_mm ? " +/- " + fixed(round_up(*depths.spread_mm, 0.1), 1) : "";
  const auto row = [&](const char* what, const std::optional<double>& depth,
                       const std::string& note) {
    if (depth)
      text += fmt::format("  {}{}  {}\n", cell(what, 24), right(fixed(*depth, 1) + " mm", 8), note);
  };
  row("score the sheath", depths.sheath_mm, "known to" + spread + " mm");
  row("saw at mark 1", depths.saw_mm,
      depths.saw_mm == depths.saw_limit_mm ? "as deep as is safe by these readings"
                                           : "through the sheath, half through the wires");
  row("never saw deeper than", depths.saw_limit_mm, "there the bedding may begin");
  row("score the bedding", depths.bedding_mm, "from the bedding's own surface, at most");
  return text;
}

std::string tail_rows(const strip::CutPlan& plan, bool armoured, const Style& style) {
  if (plan.tails.empty()) return {};
  std::string text = heading("tails, core by core", style);
  text += "  " + cell("core", 8) + right("tail", 7) + right("cut back", 10) + right("strip", 7) +
          "   way to the terminal\n";
  for (const strip::Tail& tail : plan.tails) {
    const std::string name = cell(tail.core, 8);
    // A long name has a line of its own.
    if (name.back() == '~') text += wrapped("  ", tail.core);
    text += "  " + (name.back() == '~' ? std::string(8, ' ') : name) +
            right(tail.length_mm ? plain(*tail.length_mm, 1) : "?", 7) +
            right(plain(tail.cut_back_mm, 1), 10) +
            right(tail.strip_mm ? plain(*tail.strip_mm, 1) : "?", 7) + "   " + cell(tail.route, 42);
    trim_end(text);
    text += "\n";
  }
  return text +
         (armoured
              ? "  mm. Tail: beyond the bedding. Cut back: taken off that core after dressing.\n"
              : "  mm. Tail: beyond the sheath. Cut back: taken off that core after dressing.\n");
}

std::string ticked(const std::vector<sheet::Step>& steps, const Style& style) {
  std::string text = heading("steps ([ ] hold point: tick before going on)", style);
  int number = 0;
  for (const sheet::Step& step : steps) {
    text += wrapped((step.hold ? k_tick : "    ") + right(std::to_string(++number), 2) + "  ",
                    step.text);
  }
  return text;
}

std::string earth_rows(const Sheet& sheet, const Style& style) {
  if (!sheet.earth) return {};
  const earth::EarthResult& earth = *sheet.earth;
  std::string text = heading("the armour as protective conductor", style);
  const auto row = [&](const char* name, const earth::Finding& finding) {
    if (!finding.says.empty()) text += wrapped("  " + cell(name, 11) + " ", finding.says);
  };
  row("area", earth.area);
  row("calculated", earth.adiabatic);
  row("by table", earth.table);
  row("gland", earth.gland);
  row("resistance", earth.resistance);
  return text;
}

std::string inspection_rows(const Sheet& sheet, const Style& style) {
  if (sheet.inspection.empty()) return {};
  std::string text = heading("initial inspection, grade detailed (IEC 60079-17): tick", style);
  for (const area::InspectionItem& item : sheet.inspection) text += wrapped(k_tick, item.text);
  return text;
}

std::string signing(const Style& style) {
  std::string text = heading("as made", style);
  text += "  sheath ............ mm   bedding ............ mm   wire ............ mm\n";
  text += "  continuity ............ ohm   insulation resistance ............ Mohm\n";
  text += "  name ......................  date ..............  sign ..................\n";
  return text;
}

std::string gland_lines(const Sheet& sheet) {
  const gland::Gland& gland = *sheet.fit->gland;
  std::string text = gland.part;
  if (!gland.description.empty()) text += ", " + gland.description;
  text = wrapped("Gland    ", text);
  text += wrapped("Why      ", sheet.chosen_because);
  if (!gland.range.empty()) text += wrapped("Range    ", gland.range);
  return text;
}

}  // namespace

std::string sheet_text(const Sheet& sheet, const Style& style) {
  const job::Job& job = *sheet.job;
  std::string text = title(sheet) + cable_lines(job.cable) + entry_line(job.entry) +
                     area_lines(job, *sheet.demand);
  if (sheet.fit) text += gland_lines(sheet);
  text += not_ready_box(sheet, style);
  text += bullets("cautions", sheet.cautions, style);
  if (sheet.fit) text += check_rows(*sheet.fit, style);
  if (sheet.plan) {
    text += heading("lay out, in the order in which it goes on", style);
    for (const sheet::Part& part : sheet.parts) {
      text += wrapped(k_tick, part_words(part));
    }
    text += heading("marks", style) + drawing_text(job, *sheet.plan);
    text += depth_rows(sheet.plan->depths, style) +
            tail_rows(*sheet.plan, job.cable.armour != cable::ArmourKind::none, style);
    text += bullets("missing or worth a look", sheet.remarks, style);
    text += earth_rows(sheet, style);
    text += ticked(sheet.steps, style) + inspection_rows(sheet, style) + signing(style);
  } else {
    text += bullets("worth a look", sheet.remarks, style);
  }
  return text + bullets("where the figures come from", sheet.sources, style);
}

}  // namespace cutback::print
