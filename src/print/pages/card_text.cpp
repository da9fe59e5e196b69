#include "print/pages/card_text.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

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

/// What a clause comes to where it is a sum: "mean sheath (15 - 10)/2 = 2.5 mm" is "mean sheath 2.5
/// mm", and "wall 12 + washer 2 = 14 mm" is "14 mm".
std::string without_sum(std::string_view clause) {
  const std::size_t equals = clause.rfind(" = ");
  if (equals == std::string_view::npos) return std::string(clause);
  const std::size_t sum = clause.find_first_of("(0123456789");
  const bool named = sum > 0 && sum < equals && clause[sum] == '(' && clause[sum - 1] == ' ';
  return std::string(named ? clause.substr(0, sum) : std::string_view()) +
         std::string(clause.substr(equals + 3));
}

/// A finding with what its sums come to: how they were worked out stands on the sheet.
std::string without_sums(std::string_view words, std::size_t most) {
  std::string out;
  for (std::size_t kept = 0; !words.empty() && kept < most; ++kept) {
    const std::size_t end = std::min(words.find("; "), words.find(": "));
    out += without_sum(words.substr(0, end));
    if (end == std::string_view::npos) break;
    if (kept + 1 < most) out += words.substr(end, 2);
    words.remove_prefix(end + 2);
  }
  return out;
}

/// A figure and the word that it belongs to stay on one line.
std::string bound(std::string_view words) {
  constexpr std::string_view k_space = "\u00a0";
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool binds = words[i] == ' ' && i > 0 && i + 1 < words.size() &&
                       (is_digit(words[i + 1]) ? words[i - 1] != ',' && words[i - 1] != ';'
                                               : is_digit(words[i - 1]));
    if (binds) {
      out += k_space;
    } else {
      out += words[i];
    }
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
  return bound(parts.empty() ? text : text + "; " + parts);
}

std::string tools_line(const gland::Gland& gland) {
  std::string text;
  if (gland.flats_mm) text += "spanner " + plain(*gland.flats_mm, 1) + " mm";
  if (gland.torque_nm) {
    text += (text.empty() ? "" : ", ") + ("body to " + plain(*gland.torque_nm, 1)) + " Nm";
  }
  return bound(text);
}

/// "3.7 to 7.4 mm", or "at least 3.7 mm".
std::string between_words(const fit::WireGate& wire) {
  std::string text = wire.most_between_mm ? "" : "at least ";
  text += fixed(*wire.least_between_mm, 1);
  if (wire.most_between_mm) text += " to " + fixed(*wire.most_between_mm, 1);
  return text + " mm";
}

/// What a diameter is by the job: who measures another one looks whether it is that cable.
std::string was_words(const std::optional<measure::Estimate>& estimate, int decimals) {
  if (!estimate || estimate->evidence == measure::Evidence::estimated) return {};
  return (estimate->evidence == measure::Evidence::measured ? "was " : "book ") +
         fixed(estimate->value_mm, decimals);
}

std::string was_words(const cable::Cable& cable, std::string_view what) {
  return what == "sheath"    ? was_words(cable.sheath_od, 1)
         : what == "bedding" ? was_words(cable.bedding, 1)
                             : was_words(cable.wire, 2);
}

void put_gates(CardText& text, const Sheet& sheet) {
  const fit::Gates& gates = sheet.gates;
  for (const GateLine& line : gate_lines(sheet)) {
    if (line.what.empty()) continue;  // another size of wire: below
    // The unit stands in the head of the boxes, so that there is room for the readings.
    std::string must = line.must;
    if (must.ends_with(" mm")) must.resize(must.size() - 3);
    const bool wire = line.what == piece_words(sheet.job->cable.armour);
    text.gates.push_back(
        {line.what, "", std::move(must), was_words(sheet.job->cable, line.what), wire ? 1 : 2});
  }
  for (CardText::Gate& gate : text.gates) {
    const auto& apart = gate.what == "sheath"    ? gates.sheath_apart_mm
                        : gate.what == "bedding" ? gates.bedding_apart_mm
                                                 : std::optional<double>();
    if (apart) gate.how = "max " + fixed(*apart, 1) + " apart";
    // IEC 60811-203:2012, 4.2.
    constexpr double k_tape_from_mm = 25.0;
    const fit::Gate& limits = gate.what == "sheath" ? gates.sheath : gates.bedding;
    if (gate.blanks > 1 && limits.high_mm.value_or(0.0) > k_tape_from_mm) gate.how = "by tape";
  }
  // What lies under the armour is read where all of it comes off later.
  text.gates_head =
      text.gates.size() > 1
          ? std::vector<std::string>{"BEFORE CUTTING bare the last 50 mm and read, mm",
                                     "BEFORE CUTTING bare 50 mm and read, mm",
                                     "BARE 50 mm AND READ, mm"}
          : std::vector<std::string>{"BEFORE CUTTING it must read, mm", "BEFORE CUTTING, mm"};
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
      text.between = "Sheath less bedding, " + between_words(wire);
      if (const auto from = depths_from_mm(sheet)) {
        add("under " + plain(*from, 2) + ": cut by eye");
      }
    } else {
      add("then sheath less bedding " + between_words(wire));
    }
  }
  // "bedding again, a reading lies outside its gate"
  for (const fit::Lack& lack : sheet.lacks) {
    if (sheet.state == sheet::State::measure && lack.fact.find(" again") != std::string::npos) {
      add(lack.fact);
    }
  }
  text.gate_notes = first_upper(notes);
}

/// Of an end that must not be cut: what it was taken for, to be read again.
void put_readings(CardText& text, const Sheet& sheet) {
  const cable::Cable& cable = sheet.job->cable;
  const bool armoured = cable.armour != cable::ArmourKind::none;
  const std::string piece(piece_words(cable.armour));
  for (const std::string& what : {std::string("sheath"), std::string("bedding"), piece}) {
    const bool wire = what == piece;
    if (!armoured && std::string_view(what) != "sheath") continue;
    const std::string was = was_words(cable, what);
    text.gates.push_back({what, "", was.empty() ? "not known" : was, "", wire ? 1 : 2});
  }
  text.gates_head = {"READ AGAIN, mm"};
  using Kind = CardText::Field::Kind;
  text.as_made = {{"read by", "", Kind::name}, {"date", "", Kind::figure}};
}

/// What comes before everything else, and for which place the gland was looked at: a card of a
/// plain room must not pass for one of a hazardous place.
void put_ticks(CardText& text, const Card& card) {
  const Sheet& sheet = *card.sheet;
  const area::Area& area = sheet.job->area;
  text.ticks.push_back({"WORK DEAD", "", true});
  const std::string place = plate_words(area);
  const bool asked = std::find(sheet.not_asked.begin(), sheet.not_asked.end(), fit::Topic::place) ==
                     sheet.not_asked.end();
  const bool plain = area.zone == area::Zone::none || !asked;
  if (!card.serves.empty() && !card.serves.front().place.empty()) {
    text.ticks.push_back({"PERMIT:", "where the list has a zone", true});
    return;
  }
  if (!plain) {
    text.ticks.push_back({"PERMIT:", place, true});
  } else {
    text.ticks.push_back(
        {"", asked ? "plain room" + (place.empty() ? "" : ", " + place) : "for a plain room only",
         false});
  }
}

/// What the marks suppose: a terminal that was moved makes every core too short.
std::string route_words(const strip::Tails& tails) {
  std::optional<double> shortest;
  std::optional<double> longest;
  for (const strip::Core& core : tails.cores) {
    if (core.spare) continue;
    if (!core.reach_mm) return {};  // a place, whose way is on the sheet
    shortest = std::min(shortest.value_or(*core.reach_mm), *core.reach_mm);
    longest = std::max(longest.value_or(*core.reach_mm), *core.reach_mm);
  }
  if (!longest) return {};
  std::string text = "route ";
  if (*shortest < *longest) text += plain(*shortest, 1) + " to ";
  text += plain(*longest, 1);
  if (tails.slack_mm > 0.0) text += ", slack " + plain(tails.slack_mm, 1);
  return bound(text + ": check");
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
    // The bedding is cut where the gland says so, and the longest core ends with the cable.
    const std::vector<strip::Core>& cores = sheet.job->tails.cores;
    const bool alike = std::all_of(cores.begin(), cores.end(), [&](const strip::Core& core) {
      return core.reach_mm && core.reach_mm == cores.front().reach_mm &&
             core.strip_mm == cores.front().strip_mm;
    });
    if (length.empty() && alike) length = "to the end";
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
  text.cut_backs = std::any_of(tails.begin(), tails.end(),
                               [](const strip::Tail& tail) { return tail.cut_back_mm > 0.0; });
  for (const TailRow& row : rows) {
    const strip::Tail& tail = *row.tail;
    text.tails.push_back({row.cores, plain(tail.cut_back_mm, 1),
                          tail.strip_mm ? plain(*tail.strip_mm, 1) : "",
                          tail.length_mm       ? plain(*tail.length_mm, 1)
                          : tail.less_strip_mm ? "strip + " + plain(*tail.less_strip_mm, 1)
                                               : ""});
  }
  text.route = route_words(sheet.job->tails);
  if (!text.strips && strip_mm) {
    text.route =
        bound("strip each " + plain(*strip_mm, 1)) + (text.route.empty() ? "" : "; ") + text.route;
  }
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
  if (is_armoured(sheet) && sheet.job->cable.armour != cable::ArmourKind::wire) {
    list.emplace_back("at mark 1 cut round the sheath, strip it to the end, then cut the armour");
  }
  if (depths.saw_mm && depths.saw_mm == depths.saw_limit_mm) {
    list.emplace_back("saw no deeper than said, then half through each wire by eye");
  }
  if (sheet.fit->thread && sheet.job->area.protection &&
      type_of(*sheet.job->area.protection) == area::Type::d) {
    // What is needed; how it was worked out stands on the sheet.
    const std::string& says = sheet.fit->thread->check.says;
    list.push_back(says.substr(0, says.find(';')));
  }
  if (std::string metals = metals_words(*sheet.fit); !metals.empty()) {
    list.push_back(std::move(metals));
  }
  list.insert(list.end(), sheet.own_cautions.begin(), sheet.own_cautions.end());
  const bool permit = std::any_of(text.ticks.begin(), text.ticks.end(),
                                  [](const auto& tick) { return tick.loud == "PERMIT:"; });
  for (const std::string& caution : list) {
    if (text.cautions.size() == k_most_cautions) break;
    const std::string words = sentence(caution);
    const auto& said = text.cautions;
    if (std::find(said.begin(), said.end(), words) != said.end()) continue;
    if (permit && first_upper(caution).starts_with("Permit in hand")) continue;  // ticked above
    text.cautions.push_back(words);
  }
}

void put_marks(CardText& text, const Card& card) {
  const Sheet& sheet = *card.sheet;
  put_ticks(text, card);
  put_gates(text, sheet);
  // The whole gland is held to S: nothing of it is on the cable before that.
  const bool hold = is_armoured(sheet) && !sheet.plan->axis.armour_stop_mm;
  text.rear = !is_armoured(sheet) ? "REAR PARTS ON NOW: shroud if any, back nut, seal"
                                  : "REAR PARTS ON NOW: shroud if any, back nut, seal, clamp ring";
  text.rear_after = hold ? 2 : 0;
  text.blanks = open_blanks(sheet);
  if (!card.serves.empty()) {
    // Each end has its own in the list.
    const auto listed = [](const OpenBlank& blank) {
      return blank.name == "reach" || blank.name == "strip";
    };
    text.lists_strip = sheet.state != sheet::State::cut &&
                       std::any_of(text.blanks.begin(), text.blanks.end(),
                                   [](const auto& blank) { return blank.name == "strip"; });
    std::erase_if(text.blanks, listed);
    text.rule = "Look at each route of the list before cutting. " + text.rule;
  }
  text.marks = paper_marks(sheet);
  text.spread = paper_words(depth_spread(sheet));
  put_tails(text, sheet);
  std::size_t sums = 0;
  for (const MarkWords& mark : text.marks) sums += mark.blank && !mark.before.empty() ? 1U : 0U;
  text.two_sums = sums > 1;
  // Each end of a type has its readings in the list.
  if (!card.serves.empty()) {
    for (CardText::Gate& gate : text.gates) {
      gate.blanks = 0;
      gate.was.clear();
    }
    text.between_blank = false;
  }
  // Ends of a type are signed for one by one.
  if (card.serves.empty()) {
    put_as_made(text, sheet);
  } else {
    text.rule += " Torque, tests and signatures go on the sheet of each end.";
  }
  put_cautions(text, sheet);
  if (card.inches) text.inches = inch_rows(sheet);
  text.has_drawing = true;
}

/// Who finds what is missing: whoever stands at the end, or the office.
std::vector<std::string> who_finds(const std::vector<fit::Lack>& lacks) {
  std::vector<std::string> sentences;
  using Where = fit::Lack::Where;
  for (const auto& [where, who] : {std::pair{Where::elsewhere, "ask the office: "},
                                   std::pair{Where::at_the_end, "look at the end: "}}) {
    std::vector<fit::Lack> its;
    std::copy_if(lacks.begin(), lacks.end(), std::back_inserter(its),
                 [at = where](const fit::Lack& lack) { return lack.where == at; });
    const std::string facts = missing_words(its);
    if (!facts.empty()) sentences.push_back(sentence(who + facts));
  }
  return sentences;
}

/// Why nothing may be cut, and what to do.
void put_stop(CardText& text, const Card& card) {
  const Sheet& sheet = *card.sheet;
  constexpr std::size_t k_most_clauses = 4;
  if (sheet.state == sheet::State::none) {
    const std::string& why = !card.why.empty()                    ? card.why
                             : !sheet.advice.nearest_says.empty() ? sheet.advice.nearest_says
                                                                  : sheet.fit->deciding().says;
    text.why.push_back(
        (sheet.fits_instead.empty() ? "No gland fits. Nearest: " : "This gland does not fit: ") +
        sentence(without_sums(why, k_most_clauses)));
  } else {
    const std::string missing = missing_words(sheet.lacks);
    if (!missing.empty()) text.why.push_back(sentence("missing: " + missing));
    constexpr std::size_t k_most_checks = 3;
    for (const fit::Check& check : sheet.fit->checks) {
      if (check.verdict == Verdict::fits || !check.lacks.empty()) continue;
      text.why.push_back(sentence(std::string(to_string(check.name)) + ": " +
                                  without_sums(check.says, k_most_clauses)));
      if (text.why.size() > k_most_checks) break;
    }
  }
  // An answer for a list of exceptions, which says elsewhere what is not known.
  const auto at_end = std::count_if(sheet.lacks.begin(), sheet.lacks.end(), [](const fit::Lack& l) {
    return l.where == fit::Lack::Where::at_the_end;
  });
  const bool names_less = card.remedy == "find what is not known" ||
                          (card.remedy.starts_with("measure ") && at_end > 1);
  if (names_less) text.remedy = who_finds(sheet.lacks);
  if (!text.remedy.empty()) return;
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
  constexpr std::array<std::pair<std::string_view, std::string_view>, 4> k_signs{
      {{"+/-", "\u00b1"}, {"mm2", "mm\u00b2"}, {"cm3", "cm\u00b3"}, {" degC", " \u00b0C"}}};
  for (const auto& [typed, sign] : k_signs) {
    for (std::size_t at = out.find(typed); at != std::string::npos; at = out.find(typed, at)) {
      out.replace(at, typed.size(), sign);
    }
  }
  return out;
}

std::string test_words(const sheet::Test& test) {
  std::string words = test.name;
  if (const std::size_t comma = words.find(','); comma != std::string::npos) words.erase(comma, 1);
  if (test.most) return words + ", max " + plain(*test.most);
  if (!test.least) return test.name;
  if (test.unit == "mm") return words + ", min " + plain(*test.least);
  std::string says = test.says.substr(0, test.says.find(';'));
  for (const std::string& taken : {" " + test.unit, std::string(" d.c.")}) {
    if (const std::size_t at = says.find(taken); at != std::string::npos) {
      says.erase(at, taken.size());
    }
  }
  constexpr std::string_view k_least = "at least";
  if (says.starts_with(k_least)) says.replace(0, k_least.size(), "min");
  return words + ", " + says;
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
    if (!end.place.empty()) end.end += ", " + end.place;
    if (!end.why.empty()) end.why = sentence(without_sums(end.why, k_clauses));
  }
  text.running = running_words(card);
  text.rule = "Certificate, instructions, local code and a competent person come first.";
  if (!card.decided.empty()) text.rule += " A profile decided: " + card.decided + ".";
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
                              ? "These figures cannot be right: tell the office. A new card comes "
                                "when they are mended."
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
    if (card.serves.empty()) put_readings(text, *sheet);
  } else {
    put_marks(text, card);
  }
  const bool coded = sheet->state != sheet::State::none && !card.qr_text.empty();
  if (coded) text.code = make_qr_code(card.qr_text);
  return text;
}

}  // namespace cutback::print
