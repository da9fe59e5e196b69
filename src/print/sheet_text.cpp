#include <fmt/format.h>

#include "cutback/fit/taken.hpp"
#include "cutback/glyph_width.hpp"
#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "cutback/text.hpp"
#include "print/fit_parts.hpp"
#include "print/inches_text.hpp"
#include "print/layout.hpp"
#include "print/mark_words.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

constexpr const char* k_tick = "[ ] ";
constexpr std::size_t k_label = 14;

std::string labelled(std::string_view label, std::string_view text) {
  return wrapped(cell(label, k_label), text);
}

std::string name_of(const job::Job& job) {
  std::string names = job.tag;
  if (!job.end.empty()) names += (names.empty() ? "" : ", ") + job.end;
  if (!job.name.empty()) names += (names.empty() ? "" : "; ") + job.name;
  return names.empty() ? "one end, not named" : names;
}

/// State, what it lacks, gland, entry: what the hands need before anything else.
std::string head(const Sheet& sheet, const Style& style) {
  const job::Job& job = *sheet.job;
  const std::string word(state_words(sheet.state));
  std::string shown = cell(word, std::max(k_label, word.size() + 2));
  if (style.colour) shown = "\x1b[1m" + shown + "\x1b[0m";
  std::string text = wrapped(shown, name_of(job));
  if (style.colour) text = shown + wrapped("", name_of(job));
  if (sheet.state == sheet::State::measure || sheet.state == sheet::State::not_yet) {
    text += labelled("Missing", fit::lacks_text(sheet.lacks));
  }
  if (sheet.fit) {
    const gland::Gland& gland = *sheet.fit->gland;
    std::string words = gland.part;
    if (gland.flats_mm) words += ", spanner " + plain(*gland.flats_mm) + " mm";
    if (gland.torque_nm) words += ", body to " + plain(*gland.torque_nm, 1) + " Nm";
    if (!gland.description.empty()) words += "; " + gland.description;
    text += labelled("Gland", words);
  }
  text += labelled("Entry", entry_words(job.entry, sheet.fit ? sheet.fit->gland : nullptr));
  const std::string place = place_words(job.area);
  if (!place.empty()) text += labelled("Place", place);
  return text + "Work dead. Certificate, instructions, local code, a competent person: first.\n";
}

/// Where nothing may be cut: why, and what helps.
std::string why_not(const Sheet& sheet, const Style& style) {
  if (sheet.state == sheet::State::cut || sheet.state == sheet::State::measure) return {};
  std::string text = heading("do not cut", style);
  for (const std::string& reason : sheet.not_ready) text += wrapped("  ! ", reason);
  for (const Help& help : help_words(sheet)) {
    text += labelled(help.label, help.words);
  }
  return text;
}

std::string was_words(const std::optional<measure::Estimate>& estimate, int decimals) {
  if (!estimate) return {};
  const char* const how = estimate->evidence == measure::Evidence::measured    ? "was "
                          : estimate->evidence == measure::Evidence::datasheet ? "book "
                                                                               : "estimate ";
  return how + fixed(estimate->value_mm, decimals);
}

/// What the diameters must read, with blanks for the readings.
std::string before_cutting(const Sheet& sheet, const Style& style) {
  const cable::Cable& cable = sheet.job->cable;
  const bool armoured = cable.armour != cable::ArmourKind::none;
  std::string text = heading(armoured ? "before cutting: sheath where the gland will sit, the rest "
                                        "bared at the end"
                                      : "before cutting, where the gland will sit",
                             style);
  for (const GateLine& line : gate_lines(sheet)) {
    const bool sheath = line.what == "sheath";
    const bool wire = line.what == piece_words(cable.armour);
    const std::string was = sheath                   ? was_words(cable.sheath_od, 2)
                            : line.what == "bedding" ? was_words(cable.bedding, 2)
                            : wire                   ? was_words(cable.wire, 2)
                                                     : std::string();
    const char* const blanks = line.what.empty() ? "" : wire ? "_______" : "_______ _______";
    const std::size_t wide = piece_words(cable.armour) == "one wire" ? 12 : 16;
    text += line_of("  " + cell(line.what.empty() ? "  or" : line.what, wide) + "must read " +
                    cell(line.must, 18) + cell(blanks, 18) + was);
    if (!line.also.empty()) text += wrapped(std::string(14, ' '), line.also);
  }
  for (const OpenBlank& blank : open_blanks(sheet)) {
    std::string words = blank.words + (blank.name.empty() ? "" : ": " + blank.name) + " _______";
    if (!blank.unit.empty()) words += " " + blank.unit;
    text += wrapped("  " + cell(blank.loud, 19), words);
  }
  return text;
}

std::string rear_parts(const Sheet& sheet) {
  return "\n" + wrapped(k_tick, sheet.job->cable.armour == cable::ArmourKind::none
                                    ? "ON THE CABLE NOW: shroud if any, back nut and seal, this "
                                      "way round"
                                : sheet.plan->axis.armour_stop_mm
                                    ? "ON THE CABLE NOW: shroud if any, back nut, outer seal, "
                                      "clamp ring, this way round"
                                    : "ON THE CABLE, once S and 1 are marked with the gland whole: "
                                      "shroud if any, back nut, outer seal, clamp ring, this way "
                                      "round");
}

/// What is too long for its column has a line of its own: nothing of a mark is cut off.
std::string cut_row(const MarkWords& mark) {
  constexpr std::size_t k_where = 46;
  const std::string first = "  " + cell(std::string(1, mark.number), 2) + cell(mark.layer, 10);
  std::string where = mark.before + mark.figure;
  if (!mark.figure.empty()) where += " ";
  where += mark.after + (mark.blank ? " ______" : "");
  std::string below;
  if (!mark.from_end.empty()) {
    const std::string more = "(" + mark.from_end + " from the end)";
    if (columns_of(where) + 1 + columns_of(more) < k_where) {
      where += " " + more;
    } else {
      below = line_of(std::string(first.size(), ' ') + more);
    }
  }
  constexpr std::size_t k_line = 80;
  const bool beside = first.size() + k_where + columns_of(mark.depth) <= k_line;
  if (columns_of(where) < k_where && beside)
    return line_of(first + cell(where, k_where) + mark.depth) + below;
  const std::size_t indent = first.size() + (beside ? k_where : 0);
  return wrapped(first, where) + below + line_of(std::string(indent, ' ') + mark.depth);
}

/// Marks in working order, each with its depth.
std::string cut_rows(const Sheet& sheet, const Style& style) {
  const std::string spread = depth_spread(sheet);
  std::string text =
      heading("cuts" + (spread.empty() ? "" : "; depths known to " + spread + " mm"), style) +
      line_of(std::string(14, ' ') + cell("where, mm", 46) + "depth at most, mm");
  for (const MarkWords& mark : mark_words(sheet)) {
    const std::string check = mark.check();
    if (!check.empty()) {
      text += wrapped("  S " + cell(mark.layer, 10), check);
    } else if (mark.is_cut || mark.layer == "hold") {
      text += cut_row(mark);
    }
  }
  return text;
}

std::string check_rows(const fit::GlandFit& fit, const Style& style) {
  std::string text = heading("checks", style);
  for (const fit::Check& check : fit.checks) {
    const std::string margin = check.margin_mm ? margin_text(*check.margin_mm) + " mm" : "";
    text += "  " + cell(to_string(check.name), 12);
    if (margin.empty()) {
      text += check_word(check, style, 0);
    } else {
      text += check_word(check, style, 17) + right(margin, 10);
    }
    if (check.probability && check.counts_for_margin) {
      text += "   probability " + probability_text(*check.probability);
    }
    text += "\n";
    text += wrapped("      ", check.says);
  }
  return text;
}

std::string tail_rows(const strip::CutPlan& plan, bool armoured, const Style& style) {
  if (plan.tails.empty()) return {};
  std::string text = heading("tails, core by core", style);
  text += "  " + cell("core", 8) + right("tail", 7) + right("cut back", 10) + right("strip", 7) +
          "   way to the terminal\n";
  bool less_strip = false;
  const auto length_of = [&](const strip::Tail& tail) -> std::string {
    if (tail.length_mm) return plain(*tail.length_mm, 1);
    if (!tail.less_strip_mm) return "?";
    less_strip = true;
    return plain(*tail.less_strip_mm, 1) + "+s";
  };
  for (const strip::Tail& tail : plan.tails) {
    const std::string name = cell(tail.core, 8);
    // A long name has a line of its own.
    if (name.back() == '~') text += wrapped("  ", tail.core);
    text += "  " + (name.back() == '~' ? std::string(8, ' ') : name) + right(length_of(tail), 7) +
            right(plain(tail.cut_back_mm, 1), 10) +
            right(tail.strip_mm ? plain(*tail.strip_mm, 1) : "?", 7) + "   " + cell(tail.route, 42);
    trim_end(text);
    text += "\n";
  }
  if (less_strip) text += "  s: the strip length, which is not given. Add it.\n";
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
  row("by table", earth.table);
  row("resistance", earth.resistance);
  return text;
}

std::string inspection_rows(const Sheet& sheet, const Style& style) {
  if (sheet.inspection.empty()) return {};
  std::string text = heading("initial inspection, grade detailed (IEC 60079-17): tick", style);
  for (const area::InspectionItem& item : sheet.inspection) text += wrapped(k_tick, item.text);
  return text;
}

std::string test_rows(const Sheet& sheet, const Style& style) {
  if (sheet.tests.empty()) return {};
  std::string text = heading("tests, and what they must read", style);
  for (const sheet::Test& test : sheet.tests) {
    text += wrapped("  " + cell(test.name, 24), test.says + "  ............ " + test.unit);
  }
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

std::string signing(const Sheet& sheet, const Style& style) {
  std::string text = heading("as made", style);
  const bool armoured = sheet.job->cable.armour != cable::ArmourKind::none;
  text += "  sheath ........ mm";
  if (armoured) text += "  bedding ........ mm  wire ........ mm";
  text += "  torque ........ Nm\n";
  text += armoured
              ? "  armour ............ ohm   insulation ............ Mohm at ......... V\n"
              : "  continuity ............ ohm   insulation ............ Mohm at ......... V\n";
  text += "  gland batch ............   made by ..................   date ............\n";
  text += "  checked by ..................   date ............\n";
  return text;
}

/// What nobody asked, and what was taken for facts that nobody gave.
std::string open_lines(const Sheet& sheet) {
  std::string names;
  for (const fit::Topic topic : sheet.not_asked) {
    names += (names.empty() ? "" : ", ") + std::string(to_string(topic));
  }
  std::string text;
  if (!names.empty()) text += labelled("Not asked", names);
  if (sheet.fit) {
    const auto taken = fit::taken_that_may_fail(sheet.assumptions, *sheet.fit);
    if (!taken.empty()) text += labelled("Taken", joined(taken, ", "));
  }
  return text.empty() ? text : "\n" + text;
}

}  // namespace

std::string sheet_text(const Sheet& sheet, const Style& style) {
  const job::Job& job = *sheet.job;
  std::string text = head(sheet, style) + why_not(sheet, style);
  if (sheet.has_marks()) {
    text += before_cutting(sheet, style) + rear_parts(sheet);
    text += cut_rows(sheet, style) + "\n" + drawing_text(job, *sheet.plan);
    text += tail_rows(*sheet.plan, job.cable.armour != cable::ArmourKind::none, style);
    if (style.inches) text += inches_of(sheet, style);
    text += bullets("worth a look", sheet.remarks, style);
    text += heading("lay out, in the order in which it goes on", style);
    for (const sheet::Part& part : sheet.parts) text += wrapped(k_tick, part_words(part));
    text += ticked(sheet.steps, style);
  } else {
    if (style.inches) text += inches_of(sheet, style);
    text += bullets("worth a look", sheet.remarks, style);
  }
  text += heading("the cable and its gland", style) + cable_lines(job.cable);
  if (sheet.fit) text += gland_lines(sheet);
  text += area_lines(job, *sheet.demand) + earth_rows(sheet, style);
  if (sheet.fit) text += check_rows(*sheet.fit, style);
  text += open_lines(sheet);
  if (sheet.has_marks()) {
    text += test_rows(sheet, style) + inspection_rows(sheet, style) + signing(sheet, style);
  }
  text += bullets("cautions", sheet.cautions, style);
  return text + bullets("where the figures come from", sheet.sources, style);
}

}  // namespace cutback::print
