#include "print/pages/card_text.hpp"

#include <algorithm>
#include <array>

#include "cutback/entry/hardware.hpp"
#include "cutback/entry/parts.hpp"
#include "cutback/fit/gates.hpp"
#include "cutback/fit/needs.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

constexpr std::size_t k_most_cautions = 4;

bool is_armoured(const Sheet& sheet) { return sheet.job->cable.armour != cable::ArmourKind::none; }

std::string first_upper(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z') {
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  }
  return words;
}

std::string sentence(std::string_view words) {
  std::string text = first_upper(paper_words(without_options(words)));
  if (!text.empty() && text.back() != '.') text += '.';
  return text;
}

/// The clauses of a finding that hold no sum: how it was worked out stands on the sheet.
std::string without_sums(std::string_view words, std::size_t most) {
  std::string out;
  std::string_view before;  // what parts the clause from the one before
  std::size_t kept = 0;
  while (!words.empty() && kept < most) {
    const std::size_t end = std::min(words.find("; "), words.find(": "));
    const std::string_view clause = words.substr(0, end);
    if (clause.find(" = ") == std::string_view::npos) {
      out += out.empty() ? std::string_view() : before;
      out += clause;
      ++kept;
    }
    if (end == std::string_view::npos) break;
    before = words.substr(end, 2);
    words.remove_prefix(end + 2);
  }
  return out;
}

/// Thread, hole and wall, and what goes on there beside the gland.
std::string entry_line(const Sheet& sheet) {
  const job::Job& job = *sheet.job;
  entry::Entry entry = job.entry;
  entry.adaptors.clear();
  std::string text = entry.thread || entry.to_suit ? entry_words(entry, sheet.fit->gland)
                                                   : std::string("entry not given");
  if (sheet.fit->adaptor) {
    text += "; fit first the " +
            fit::adaptor_name(entry::wall_side(*sheet.fit->adaptor, *sheet.fit->gland),
                              sheet.fit->gland->entry_thread);
  }
  std::string parts;
  for (const entry::EntryPart& part :
       entry::parts_in_order(*sheet.fit->gland, job.entry, sheet.fit->adaptor.has_value())) {
    if (!part.beside) continue;
    parts += parts.empty() ? "" : ", ";
    parts += part.name == "sealing washer" ? "washer" : part.name;
    if (part.thickness_mm) parts += " " + plain(*part.thickness_mm, 1);
    const bool washer = part.name == "sealing washer" && part.place == "outside";
    if (!part.place.empty() && !washer) (parts += ' ') += part.place;
  }
  return parts.empty() ? text : text + "; " + parts;
}

std::string tools_line(const gland::Gland& gland) {
  std::string text;
  if (gland.flats_mm) text += "spanner " + plain(*gland.flats_mm, 1) + " mm";
  if (gland.torque_nm) {
    text += (text.empty() ? "" : ", ") + ("body to " + plain(*gland.torque_nm, 1)) + " Nm";
  }
  return text;
}

/// "3.7 to 7.4 mm", or "at least 3.7 mm".
std::string between_words(const fit::WireGate& wire) {
  std::string text = wire.most_between_mm ? "" : "at least ";
  text += fixed(*wire.least_between_mm, 1);
  if (wire.most_between_mm) text += " to " + fixed(*wire.most_between_mm, 1);
  return text + " mm";
}

void put_gates(CardText& text, const Sheet& sheet) {
  const fit::Gates& gates = sheet.gates;
  for (const GateLine& line : gate_lines(sheet)) {
    if (line.what.empty()) continue;  // another size of wire: below
    // The unit stands in the head of the boxes, so that there is room for the readings.
    std::string must = line.must;
    if (must.ends_with(" mm")) must.resize(must.size() - 3);
    const bool wire = line.what == piece_words(sheet.job->cable.armour);
    text.gates.push_back({line.what, "", std::move(must), wire ? 1 : 2});
  }
  for (CardText::Gate& gate : text.gates) {
    const auto& apart = gate.what == "sheath"    ? gates.sheath_apart_mm
                        : gate.what == "bedding" ? gates.bedding_apart_mm
                                                 : std::optional<double>();
    if (apart) gate.how = "max " + fixed(*apart, 1) + " apart";
    // IEC 60811-203:2012, 4.2.
    constexpr double k_tape_from_mm = 25.0;
    const fit::Gate& limits = gate.what == "sheath" ? gates.sheath : gates.bedding;
    if (gate.blanks > 1 && limits.high_mm.value_or(0.0) > k_tape_from_mm)
      gate.how = "by diameter tape";
  }
  std::string notes;
  const auto add = [&](const std::string& words) { notes += (notes.empty() ? "" : "; ") + words; };
  for (std::size_t i = 0; i < gates.wire.size(); ++i) {
    const fit::WireGate& wire = gates.wire[i];
    if (i > 0) {
      add("or " + std::string(piece_words(sheet.job->cable.armour)) + " " +
          fixed(wire.gate.low_mm.value_or(0.0), 2) + " to " +
          fixed(wire.gate.high_mm.value_or(0.0), 2));
    }
    if (!wire.least_between_mm) continue;
    if (text.between.empty()) {
      text.between = "Sheath less bedding " + between_words(wire) + depths_words(sheet);
    } else {
      add("then sheath less bedding " + between_words(wire));
    }
  }
  if (text.gates.size() > 1) add("read bedding and wire bared at the end");
  text.gate_notes = first_upper(notes);
}

/// The place in a few words, as a plate has it.
std::string short_place(const area::Area& area) {
  std::string text;
  const auto add = [&](const std::string& words) { text += (text.empty() ? "" : ", ") + words; };
  if (area.zone && *area.zone != area::Zone::none)
    add("zone " + std::string(to_string(*area.zone)));
  std::string mark;
  if (area.protection && *area.protection != area::Protection::none) {
    mark = "Ex " + std::string(to_string(*area.protection));
  }
  for (const std::string& group :
       {area.gas_group ? std::string(to_string(*area.gas_group)) : std::string(),
        area.dust_group ? std::string(to_string(*area.dust_group)) : std::string()}) {
    if (!group.empty()) mark += (mark.empty() ? "" : " ") + group;
  }
  if (!mark.empty()) add(mark);
  if (!area.ip.empty()) add("IP" + area::to_text(area.ip));
  return text;
}

/// What comes before everything else, and for which place the gland was looked at: a card of a
/// plain room must not pass for one of a hazardous place.
void put_ticks(CardText& text, const Sheet& sheet) {
  const area::Area& area = sheet.job->area;
  text.ticks.push_back({"WORK DEAD", "", true});
  const std::string place = short_place(area);
  const bool asked = std::find(sheet.not_asked.begin(), sheet.not_asked.end(), fit::Topic::place) ==
                     sheet.not_asked.end();
  const bool plain = area.zone == area::Zone::none || !asked;
  if (!plain) {
    text.ticks.push_back({"PERMIT:", place, true});
  } else {
    text.ticks.push_back({"",
                          asked ? "plain room" + (place.empty() ? "" : ", " + place)
                                : "place not asked: plain room only",
                          false});
  }
}

void put_tails(CardText& text, const Sheet& sheet) {
  const std::vector<strip::Tail>& tails = sheet.plan->tails;
  text.tails_head =
      is_armoured(sheet) ? "TAILS, mm, beyond the bedding" : "TAILS, mm, beyond the sheath";
  if (tails.empty()) {
    std::string length = open_tail(sheet);
    if (const std::size_t minus = length.find("- "); minus != std::string::npos) {
      length.replace(minus, 1, "\u2212");
    }
    const auto& strip_mm = sheet.job->tails.strip_mm;
    text.strips = strip_mm.has_value();
    if (!length.empty()) {
      text.tails.push_back({"each", "", strip_mm ? plain(*strip_mm, 1) : "", length});
    }
    return;
  }
  const std::vector<TailRow> rows = tail_rows(tails);
  // One strip length for all has a column as well, where there are few rows, and is said once above
  // many of them.
  constexpr std::size_t k_few = 8;
  const auto& strip_mm = tails.front().strip_mm;
  const bool differ = std::any_of(tails.begin(), tails.end(), [&](const strip::Tail& tail) {
    return tail.strip_mm != strip_mm;
  });
  text.strips = differ || (strip_mm && rows.size() <= k_few);
  if (!text.strips && strip_mm) text.tails_head += "; strip " + plain(*strip_mm, 1);
  text.cut_backs = std::any_of(tails.begin(), tails.end(),
                               [](const strip::Tail& tail) { return tail.cut_back_mm > 0.0; });
  for (const TailRow& row : rows) {
    const strip::Tail& tail = *row.tail;
    text.tails.push_back(
        {row.cores, plain(tail.cut_back_mm, 1), tail.strip_mm ? plain(*tail.strip_mm, 1) : "",
         tail.length_mm ? plain(*tail.length_mm, 1) + (tail.strip_mm ? "" : " + strip") : ""});
  }
}

/// `insulation, at least 1.0 Mohm at 500 V d.c.` with the unit left to its blank.
std::string test_words(const sheet::Test& test) {
  const std::string words = test.name.substr(0, test.name.find(','));
  if (test.most) return words + ", at most " + plain(*test.most);
  if (!test.least) return test.name;
  std::string says = test.says.substr(0, test.says.find(';'));
  for (const std::string& taken : {" " + test.unit, std::string(" d.c.")}) {
    if (const std::size_t at = says.find(taken); at != std::string::npos) {
      says.erase(at, taken.size());
    }
  }
  return words + ", " + says;
}

void put_as_made(CardText& text, const Sheet& sheet) {
  using Kind = CardText::Field::Kind;
  text.as_made.push_back({"torque", "Nm", Kind::figure});
  for (const sheet::Test& test : sheet.tests) {
    if (test.unit == "mm") continue;  // bend and support: on the sheet
    text.as_made.push_back({test_words(test), test.unit, Kind::figure});
  }
  if (sheet.fit->barrier) {
    text.as_made.push_back({"compound batch", "", Kind::figure});
    text.as_made.push_back({"filled at", "", Kind::figure});
  }
  text.as_made.push_back({"made by", "", Kind::name});
  text.as_made.push_back({"checked by", "", Kind::name});
  text.as_made.push_back({"date", "", Kind::figure});
  text.as_made.push_back({"gland batch", "", Kind::figure});
}

/// What matters for this end above all, the most particular first; the sheet has all of it.
void put_cautions(CardText& text, const Sheet& sheet) {
  std::vector<std::string> list;
  const strip::Depths& depths = sheet.plan->depths;
  if (depths.saw_mm && depths.saw_mm == depths.saw_limit_mm) {
    list.emplace_back("saw no deeper than said, then half through each wire by eye");
  }
  if (sheet.fit->thread && sheet.job->area.protection &&
      type_of(*sheet.job->area.protection) == area::Type::d) {
    // What is needed; how it was worked out stands on the sheet.
    const std::string& says = sheet.fit->thread->check.says;
    list.push_back(says.substr(0, says.find(';')));
  }
  if (const fit::Check* const metals = sheet.fit->find(fit::CheckName::metals)) {
    constexpr std::string_view k_caution = "caution: ";
    if (metals->verdict == Verdict::fits && metals->says.starts_with(k_caution)) {
      const std::string says = metals->says.substr(k_caution.size());
      list.push_back(says.substr(0, says.find(',')) + ": see the sheet");
    }
  }
  list.insert(list.end(), sheet.own_cautions.begin(), sheet.own_cautions.end());
  const bool permit = std::any_of(text.ticks.begin(), text.ticks.end(),
                                  [](const auto& tick) { return tick.loud == "PERMIT:"; });
  for (const std::string& caution : list) {
    if (text.cautions.size() == k_most_cautions) return;
    if (permit && first_upper(caution).starts_with("Permit in hand")) continue;  // ticked above
    text.cautions.push_back(sentence(caution));
  }
}

void put_marks(CardText& text, const Card& card) {
  const Sheet& sheet = *card.sheet;
  put_ticks(text, sheet);
  put_gates(text, sheet);
  // The whole gland is held to S: nothing of it is on the cable before that.
  const bool hold = is_armoured(sheet) && !sheet.plan->axis.armour_stop_mm;
  text.rear = !is_armoured(sheet) ? "REAR PARTS ON NOW: shroud if any, back nut, seal"
              : hold ? "MARK S AND 1, THEN REAR PARTS ON: shroud if any, back nut, seal, clamp ring"
                     : "REAR PARTS ON NOW: shroud if any, back nut, seal, clamp ring";
  text.blanks = open_blanks(sheet);
  for (OpenBlank& blank : text.blanks) {
    if (card.serves.empty() || blank.name != "reach") continue;
    blank.loud = "ROUTE";
    blank.words = "as the list says, and looked at before cutting:";
  }
  text.marks = paper_marks(sheet);
  text.spread = paper_words(depth_spread(sheet));
  put_tails(text, sheet);
  std::size_t sums = 0;
  for (const MarkWords& mark : text.marks) sums += mark.blank && !mark.before.empty() ? 1U : 0U;
  text.two_sums = sums > 1;
  // Each end of a type has its readings in the list.
  if (!card.serves.empty()) {
    for (CardText::Gate& gate : text.gates) gate.blanks = 0;
  }
  // Ends of a type are signed for one by one, on their sheets.
  if (card.serves.empty()) put_as_made(text, sheet);
  put_cautions(text, sheet);
  if (card.inches) text.inches = inch_rows(sheet);
  text.has_drawing = true;
}

/// Each missing fact by itself, once: some of their names have commas.
std::string missing_words(const std::vector<fit::Lack>& lacks) {
  std::string text;
  for (auto lack = lacks.begin(); lack != lacks.end(); ++lack) {
    const bool again = std::any_of(lacks.begin(), lack, [&](const fit::Lack& before) {
      return before.key == lack->key && !before.key.empty();
    });
    // "sheath measured, it may be outside" says that the sheath is missing.
    const bool said = std::any_of(lacks.begin(), lacks.end(), [&](const fit::Lack& other) {
      return other.fact.starts_with(lack->fact + " ");
    });
    if (!again && !said) text += (text.empty() ? "" : "; ") + lack->fact;
  }
  return text;
}

/// Why nothing may be cut, and what to do.
void put_stop(CardText& text, const Card& card) {
  const Sheet& sheet = *card.sheet;
  constexpr std::size_t k_most_clauses = 4;
  if (sheet.state == sheet::State::none) {
    const std::string& why = card.why.empty() ? sheet.fit->deciding().says : card.why;
    text.why.push_back(
        (sheet.fits_instead.empty() ? "No gland fits. Nearest: " : "This gland does not fit: ") +
        sentence(without_sums(why, k_most_clauses)));
  } else {
    if (const std::string missing = missing_words(sheet.lacks); !missing.empty()) {
      text.why.push_back(sentence("missing: " + missing));
    }
    constexpr std::size_t k_most_checks = 3;
    for (const fit::Check& check : sheet.fit->checks) {
      if (check.verdict == Verdict::fits || !check.lacks.empty()) continue;
      text.why.push_back(sentence(std::string(to_string(check.name)) + ": " +
                                  without_sums(check.says, k_most_clauses)));
      if (text.why.size() > k_most_checks) break;
    }
  }
  if (!card.remedy.empty()) {
    text.remedy.push_back(sentence(card.remedy));
    return;
  }
  for (const Help& help : help_words(sheet)) {
    text.remedy.push_back(sentence(std::string(help.label) + ": " + help.words));
  }
}

std::string running_words(const Card& card) {
  std::string text;
  const auto add = [&](const std::string& words) {
    if (!words.empty()) text += (text.empty() ? "" : " \u00b7 ") + words;
  };
  if (card.of > 0) {
    add("card " + std::to_string(card.number) + " of " + std::to_string(card.of));
  }
  add(card.schedule);
  return text;
}

}  // namespace

std::string paper_words(std::string_view words) {
  std::string out(words);
  for (std::size_t at = out.find("+/-"); at != std::string::npos; at = out.find("+/-", at)) {
    out.replace(at, 3, "\u00b1");
  }
  return out;
}

std::vector<MarkWords> paper_marks(const Sheet& sheet) {
  std::vector<MarkWords> marks = mark_words(sheet);
  for (MarkWords& mark : marks) {
    if (mark.before.ends_with("- ")) mark.before.replace(mark.before.size() - 2, 1, "\u2212");
  }
  return marks;
}

std::string without_options(std::string_view words) {
  std::string out(words);
  // In brackets: the brackets go; else the clause that names it.
  for (std::size_t at = out.find("--"); at != std::string::npos; at = out.find("--", at)) {
    const bool begins = at == 0 || out[at - 1] == ' ' || out[at - 1] == '(';
    if (!begins) {
      ++at;
      continue;
    }
    const std::size_t open = out.rfind('(', at);
    const std::size_t close = out.find(')', at);
    const std::size_t between = open == std::string::npos ? 0 : out.find(')', open);
    if (open != std::string::npos && close != std::string::npos && between == close) {
      const std::size_t from = open > 0 && out[open - 1] == ' ' ? open - 1 : open;
      out.erase(from, close + 1 - from);
      at = from;
      continue;
    }
    std::size_t from = out.rfind(';', at);
    if (from == std::string::npos) from = out.rfind(':', at);
    if (from == std::string::npos) from = 0;
    const std::size_t to = std::min(out.find(';', at), out.size());
    out.erase(from, to - from);
    at = std::min(from, out.size());
  }
  return out;
}

CardText card_text(const Card& card) {
  CardText text;
  text.tag = tag_words(card.tag);
  text.end = card.end;
  text.notes = card.notes;
  text.serves = card.serves;
  constexpr std::size_t k_clauses = 2;
  for (ServedEnd& end : text.serves) {
    if (!end.why.empty()) end.why = sentence(without_sums(end.why, k_clauses));
  }
  text.running = running_words(card);
  text.rule = "Certificate, instructions, local code and a competent person come first.";
  const Sheet* const sheet = card.sheet;
  if (!card.made.empty()) {
    // What was made with a gland that does not hold is no finished end.
    text.state = card.not_yet ? "LOOK AGAIN" : "MADE";
    text.is_stop = true;
    text.first = "FINISHED: DO NOT CUT";
    text.why.push_back(sentence(clean(card.made)));
    constexpr std::size_t k_most = 4;
    const std::string says = sentence(without_sums(clean(card.why), k_most));
    if (card.not_yet) {
      text.remedy.push_back(says);
    } else {
      text.why.push_back(says);
    }
    return text;
  }
  if (sheet == nullptr) {
    // NONE is for an end that no gland fits.
    text.state = card.not_yet          ? state_words(sheet::State::not_yet)
                 : card.serves.empty() ? "UNUSABLE"
                                       : state_words(sheet::State::none);
    text.is_stop = true;
    text.first = "DO NOT CUT";
    text.why.push_back(sentence(card.why));
    text.remedy.push_back(card.remedy.empty()
                              ? "Mend the figures where they come from and print this card again."
                              : sentence(card.remedy));
    return text;
  }
  text.state = state_words(sheet->state);
  text.is_stop = !sheet->has_marks();
  if (sheet->fit) {
    // The nearest of those that do not fit must not be taken for one that does.
    if (sheet->state != sheet::State::none) text.gland = sheet->fit->gland->part;
    text.facts.push_back(entry_line(*sheet));
    if (!text.is_stop) {
      const std::string tools = tools_line(*sheet->fit->gland);
      if (!tools.empty()) text.facts.push_back(tools);
    }
  }
  if (text.is_stop) {
    text.first = "DO NOT CUT";
    put_stop(text, card);
  } else {
    put_marks(text, card);
  }
  const bool coded = sheet->state != sheet::State::none && !card.qr_text.empty();
  if (coded) text.code = make_qr_code(card.qr_text);
  return text;
}

}  // namespace cutback::print
