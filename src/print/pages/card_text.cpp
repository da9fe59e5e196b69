#include "print/pages/card_text.hpp"

#include <algorithm>

#include "cutback/fit/questions.hpp"
#include "cutback/number.hpp"
#include "cutback/print/words.hpp"
#include "cutback/text.hpp"
#include "print/pages/sheet_blocks.hpp"
#include "print/pages/strip_drawing.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

/// But for the names of keys and columns, which are written as they are.
std::string first_upper(std::string words) {
  const std::size_t first_word = std::min(words.find(' '), words.size());
  const bool is_key = words.find('_') < first_word;
  if (!is_key && !words.empty() && words[0] >= 'a' && words[0] <= 'z') {
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  }
  return words;
}

/// A name may be shortened, a figure never.
enum class Fact { name, figures };

void add_fact(std::vector<Block>& facts, const char* label, std::string words, Fact kind,
              bool bold = false) {
  if (words.empty()) return;
  constexpr int k_most_lines = 3;
  facts.emplace_back(Paragraph{.words = std::move(words),
                               .label = label,
                               .bold = bold,
                               .size = bold ? 1.25 : 1.0,
                               .most_lines = kind == Fact::name ? k_most_lines : 0});
}

std::string cable_of(const cable::Cable& cable) {
  std::string text;
  if (cable.cores) text += std::to_string(*cable.cores) + " x ";
  if (cable.csa_mm2) text += plain(*cable.csa_mm2) + " mm\u00b2, ";
  return text + cable_words(cable);
}

/// What to do about an end that must not be cut.
void add_why(std::vector<Block>& body, const Sheet& sheet) {
  // Where the gates are met everything is in order.
  if (sheet.not_ready.empty() || sheet.has_marks()) return;
  body.emplace_back(Heading{"Why"});
  if (!sheet.has_marks()) {
    body.emplace_back(Paragraph{.words = first_upper(sheet.chosen_because), .label = "Gland"});
  }
  for (const std::string& reason : sheet.not_ready) {
    body.emplace_back(Item{.words = first_upper(reason), .number = {}});
  }
  add_help(body, sheet);
}

std::string tighten_words(const gland::Gland& gland) {
  std::string words = "as the gland's instructions say";
  if (gland.torque_nm) words += "; the body to " + plain(*gland.torque_nm, 1) + " Nm";
  if (gland.flats_mm) words += ", across flats " + plain(*gland.flats_mm, 1) + " mm";
  return words;
}

void add_parts(std::vector<Block>& body, const Sheet& sheet) {
  body.emplace_back(Heading{"Goes on in this order"});
  for (const sheet::Part& part : sheet.parts) {
    body.emplace_back(Item{.words = first_upper(part_words(part)), .number = {}, .tick = true});
  }
  body.emplace_back(
      Paragraph{.words = tighten_words(*sheet.fit->gland), .label = "Tighten", .bold = true});
}

/// What cannot go on later is told in full, the rest running on.
void add_parts_compact(std::vector<Block>& body, const Sheet& sheet) {
  body.emplace_back(Heading{"Goes on in this order"});
  std::string words;
  for (std::size_t i = 0; i < sheet.parts.size(); ++i) {
    const sheet::Part& part = sheet.parts[i];
    if (i == 0) {
      body.emplace_back(Item{.words = first_upper(part_words(part)), .number = {}, .tick = true});
      continue;
    }
    words += (words.empty() ? "" : "; ") + part.name;
    // Of the gland's own part only the order; of the others the thickness.
    if (!part.note.empty() && !part.name.starts_with("gland")) words += " " + part.note;
  }
  body.emplace_back(Item{.words = first_upper(words), .number = {}, .tick = true});
  body.emplace_back(
      Paragraph{.words = tighten_words(*sheet.fit->gland), .label = "Tighten", .bold = true});
}

/// What matters for this end above all: compound, engaged thread, missing figures.
void add_warnings(std::vector<Block>& body, const Sheet& sheet) {
  std::vector<std::string> words;
  if (sheet.fit->barrier) {
    words.emplace_back(
        "Barrier: compound round every core, no voids; leave it to cure as its sheet says before "
        "anything moves; write down batch and time.");
  }
  const auto& protection = sheet.job->area.protection;
  if (protection && type_of(*protection) == area::Type::d && sheet.fit->thread) {
    words.push_back("Flameproof entry: " + sheet.fit->thread->check.says + ".");
  }
  // Checks that pass with something to be looked at.
  if (const fit::Check* const metals = sheet.fit->find(fit::CheckName::metals)) {
    if (metals->verdict == Verdict::fits && metals->says.starts_with("caution")) {
      words.push_back(metals->says);
    }
  }
  words.insert(words.end(), sheet.remarks.begin(), sheet.remarks.end());
  if (words.empty()) return;
  body.emplace_back(Heading{"For this end"});
  for (const std::string& line : words) {
    body.emplace_back(Item{.words = first_upper(line), .number = {}});
  }
}

constexpr double k_small = 0.86;
constexpr double k_tiny = 0.78;
constexpr std::string_view k_between = " \u00b7 ";

void add_cautions(std::vector<Block>& body, const Sheet& sheet) {
  if (sheet.cautions.empty()) return;
  body.emplace_back(Heading{"Cautions"});
  for (const std::string& caution : sheet.cautions) {
    body.emplace_back(Item{.words = caution, .number = {}, .size = k_small});
  }
}

void add_cautions_compact(std::vector<Block>& body, const Sheet& sheet) {
  if (sheet.cautions.empty()) return;
  body.emplace_back(Heading{"Cautions"});
  body.emplace_back(
      Paragraph{.words = joined(sheet.cautions, k_between), .label = {}, .size = k_small});
}

/// All of them, running on, in pieces that a column can hold.
void add_sources(std::vector<Block>& blocks, const Sheet& sheet) {
  constexpr std::size_t k_piece = 500;
  std::vector<std::string> lines;
  std::size_t length = 0;
  const auto put_piece = [&] {
    if (lines.empty()) return;
    const char* const first = blocks.empty() ? "From: " : "";
    blocks.emplace_back(
        Paragraph{.words = first + joined(lines, k_between), .label = {}, .size = k_tiny});
    lines.clear();
    length = 0;
  };
  for (const std::string& source : sheet.sources) {
    lines.push_back(source);
    length += source.size();
    if (length > k_piece) put_piece();
  }
  put_piece();
}

void add_sheet(CardText& text, const Card& card, double most_high) {
  const Sheet& sheet = *card.sheet;
  const job::Job& job = *sheet.job;
  if (sheet.fit) {
    std::string gland = sheet.fit->gland->part;
    if (sheet.state == sheet::State::none) gland += " (does not fit)";
    add_fact(text.facts, "Gland", std::move(gland), Fact::name, true);
    add_fact(text.facts, "", sheet.fit->gland->description, Fact::name);
  }
  add_fact(text.facts, "Entry", entry_words(job.entry), Fact::figures);
  add_fact(text.facts, "Cable", cable_of(job.cable), Fact::figures);
  add_fact(text.facts, "Place", place_words(job.area), Fact::figures);
  add_fact(text.facts, "Job", job.name, Fact::name);
  std::string stop = capitals(stop_words(sheet));
  if (sheet.state == sheet::State::measure) {
    stop += ": " + capitals(fit::lacks_text(sheet.lacks));
  }
  if (stop.empty() && lacks_marks(sheet))
    stop = "A MARK HAS NO FIGURE: TAKE IT FROM THE GLAND FIRST";
  if (!stop.empty()) text.alarm = Alarm{stop};
  if (sheet.has_marks()) {
    text.drawing = strip_picture(sheet, most_high);
    text.drawing_mm = strip_true_size_mm(sheet);
  }
  for (std::vector<Block>* body : {&text.body, &text.compact}) {
    const bool whole = body == &text.body;
    if (sheet.has_marks()) {
      add_gates(*body, sheet);
      add_marks(*body, sheet);
      add_depths(*body, sheet);
      add_tails(*body, sheet, Routes::left_out);
    }
    add_why(*body, sheet);
    if (sheet.has_marks()) {
      (whole ? add_parts : add_parts_compact)(*body, sheet);
      add_warnings(*body, sheet);
    }
    (whole ? add_cautions : add_cautions_compact)(*body, sheet);
    if (sheet.has_marks()) add_write_in(*body, sheet);
  }
  add_sources(text.sources, sheet);
  text.compact.emplace_back(
      Paragraph{.words = "From: gland figures, " + card.list_name +
                         "; rules and their clauses: on the sheet of this job (cutback sheet).",
                .label = {},
                .size = k_tiny});
}

void add_none(CardText& text, const Card& card) {
  text.alarm = Alarm{"NOTHING TO CUT BY: THIS END CANNOT BE USED"};
  text.body.emplace_back(Heading{"Why"});
  text.body.emplace_back(Paragraph{.words = first_upper(card.why_none), .label = {}});
  text.body.emplace_back(Paragraph{.words = "Mend it and print this card again.", .label = {}});
  text.compact = text.body;
}

}  // namespace

CardText card_text(const Card& card, double most_high) {
  CardText text;
  text.tag = tag_words(card.tag);
  text.facts.emplace_back(
      Paragraph{.words = text.tag, .label = {}, .bold = true, .size = 2.3, .most_lines = 2});
  add_fact(text.facts, "End", card.end, Fact::name, true);
  text.wants_code = !card.qr_text.empty();
  if (text.wants_code) text.code = make_qr_code(card.qr_text);
  text.again = card.end;
  if (card.sheet != nullptr && card.sheet->plan) {
    text.again += (text.again.empty() ? "" : ", ") + card.sheet->fit->gland->part;
  }
  if (card.sheet != nullptr) {
    add_sheet(text, card, most_high);
  } else {
    add_none(text, card);
  }
  return text;
}

}  // namespace cutback::print
