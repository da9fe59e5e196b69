#include <fmt/format.h>
#include <algorithm>

#include "cutback/fit/needs.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/fit/taken.hpp"
#include "cutback/job/input.hpp"
#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "cutback/text.hpp"
#include "print/fit_parts.hpp"
#include "print/inches_text.hpp"
#include "print/layout.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using fit::CheckName;
using fit::GlandFit;
using fit::State;

constexpr std::size_t k_narrow = 60;  // below it no column has room beside its label
constexpr std::size_t k_also = 4;
constexpr std::size_t k_misses = 2;
constexpr std::size_t k_looks = 2;
constexpr std::size_t k_label = 14;

bool is_narrow(const Style& style) { return style.columns < k_narrow; }

/// The first line at the margin, the others moved in.
std::string hanging(std::string_view text, std::size_t columns) {
  constexpr std::string_view k_in = "  ";
  return wrapped(k_in, text, columns).substr(k_in.size());
}

std::string labelled(std::string_view label, std::string_view text, const Style& style) {
  if (!is_narrow(style)) return wrapped(cell(label, k_label), text);
  const std::string before = label.empty() ? std::string() : std::string(label) + ": ";
  return hanging(before + std::string(text), style.columns);
}

/// One line, shortened where it is too long: what is left out stands under --why and --all.
std::string one_line(std::string_view label, std::string_view text, const Style& style) {
  if (is_narrow(style)) return labelled(label, text, style);
  return line_of(cell(label, k_label) + cell(text, k_columns - 1 - k_label));
}

std::size_t lines_of(const std::string& text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

std::string state_word(State state, const Style& style) {
  switch (state) {
    case State::fits:
      return verdict_word(Verdict::fits, style, 0);
    case State::order:
      return "FITS BY THE DATASHEET: MEASURE BEFORE CUTTING";
    case State::not_yet:
      return "NOT YET";
    case State::none:
      return "NO GLAND FITS";
  }
  return {};
}

std::string price_words(const gland::Gland& gland) {
  std::string text;
  const auto add = [&](const std::string& words) { text += (text.empty() ? "" : ", ") + words; };
  if (gland.price) add(fixed(*gland.price, 2));
  if (gland.stock) add(std::to_string(*gland.stock) + " in stock");
  return text;
}

/// How it is bought, where there is something to say of it.
std::string bought_words(const gland::Gland& gland) {
  std::string text;
  if (gland.pack.value_or(1) > 1) text = "sold in packs of " + std::to_string(*gland.pack);
  if (gland.preferred) text += (text.empty() ? "" : "; ") + std::string("of the preferred list");
  return text;
}

std::string margin_cell(const GlandFit& fit, CheckName name) {
  const fit::Check* check = fit.find(name);
  if (check == nullptr) return "-";
  if (!check->margin_mm || check->verdict == Verdict::not_known) return "?";
  return margin_text(*check->margin_mm);
}

/// What a narrow row has room for: the part, the smallest margin, the price.
std::string narrow_row(std::string_view part, std::string_view margin, std::string_view price) {
  return line_of(cell(part, 20) + right(margin, 8) + right(price, 9));
}

std::string table_row(const GlandFit& fit, const Style& style) {
  const gland::Gland& gland = *fit.gland;
  if (is_narrow(style)) {
    return narrow_row(gland.part, fit.margin_mm ? margin_text(*fit.margin_mm) : "?",
                      gland.price ? fixed(*gland.price, 2) : "-");
  }
  return line_of(cell(gland.part, 18) + " " + cell(entry::to_text(gland.entry_thread), 8) +
                 right(margin_cell(fit, CheckName::outer_seal), 8) +
                 right(margin_cell(fit, CheckName::inner_seal), 8) +
                 right(gland.price ? fixed(*gland.price, 2) : "-", 9) +
                 right(gland.stock ? std::to_string(*gland.stock) : "-", 7) + "  " +
                 cell(gland.description, 18));
}

std::string table_head(const std::string& words, const Style& style) {
  std::string head = cell(words, 18) + " thread    sheath bedding    price  stock";
  if (is_narrow(style)) {
    head = narrow_row(words, "spare", "price");
    head.pop_back();
  }
  return style.colour ? "\x1b[1m" + head + "\x1b[0m\n" : head + "\n";
}

/// What keeps a gland from fitting, worst first, in one sentence.
std::string reason(const GlandFit& fit) {
  std::vector<const fit::Check*> failing;
  for (const fit::Check& check : fit.checks) {
    if (check.verdict != Verdict::fits) failing.push_back(&check);
  }
  std::stable_sort(failing.begin(), failing.end(), [](const fit::Check* a, const fit::Check* b) {
    return a->verdict < b->verdict;
  });
  return fit::miss_text(failing);
}

/// A fact with how to give it: "wall (--wall)".
std::string lack_words(const fit::Lack& lack) {
  if (lack.key.empty()) return lack.fact;
  for (const job::Field& field : job::fields()) {
    if (field.key == lack.key && !field.option.empty()) {
      return lack.fact + " (" + std::string(field.option) + ")";
    }
  }
  return lack.fact + " (" + std::string(lack.key) + " of the list)";
}

std::string lacks_words(std::vector<fit::Lack> lacks) {
  for (fit::Lack& lack : lacks) lack.fact = lack_words(lack);
  return fit::lacks_text(lacks);
}

/// How the first gland holds, in one line: margins of the seals, the clamp.
std::string how_it_fits(const GlandFit& best) {
  std::string text;
  const auto add = [&](CheckName name, const char* words) {
    const fit::Check* check = best.find(name);
    if (check == nullptr || !check->margin_mm) return;
    text += (text.empty() ? "" : ", ") + std::string(words) + " " +
            fixed(round_down(*check->margin_mm, 0.01), 2);
  };
  add(CheckName::outer_seal, "sheath");
  add(CheckName::inner_seal, "bedding");
  add(CheckName::bore, "bore");
  if (text.empty()) return {};
  text += " mm to spare";
  const fit::Check* armour = best.find(CheckName::armour);
  if (armour != nullptr && armour->value) text += "; the armour is gripped";
  return text;
}

std::string needs_text(const std::vector<fit::Need>& needs) {
  std::string text;
  for (const fit::Need& need : needs) {
    text += (text.empty() ? "" : ", ") + need.name;
    if (!need.note.empty()) text += " " + need.note;
  }
  return text;
}

std::string not_asked_words(const fit::Question& question) {
  const auto words_of = [](fit::Topic topic) {
    switch (topic) {
      case fit::Topic::entry:
        return "entry (--entry)";
      case fit::Topic::joint:
        return "joint (--hole --wall)";
      case fit::Topic::place:
        return "place (--zone --protection)";
      case fit::Topic::earth:
        return "earth (--material)";
      case fit::Topic::fault:
        return "fault (--fault-ka)";
      case fit::Topic::cable:
        break;
    }
    return "cable";
  };
  std::string text;
  for (const fit::Topic topic : fit::not_asked(question)) {
    text += (text.empty() ? "" : ", ") + std::string(words_of(topic));
  }
  return text;
}

/// Glands with this verdict behind the first, as rows under a heading.
std::string also(std::span<const GlandFit> ranked, std::size_t begin, std::size_t count,
                 Verdict verdict, const std::string& words, const Style& style) {
  std::string rows;
  for (std::size_t i = begin; i < ranked.size() && i < begin + count; ++i) {
    if (ranked[i].verdict != verdict) break;
    rows += table_row(ranked[i], style);
  }
  return rows.empty() ? rows : "\n" + table_head(words, style) + rows;
}

/// The glands that are outside, those that fail in least first.
std::vector<const GlandFit*> misses_of(std::span<const GlandFit> ranked) {
  std::vector<const GlandFit*> list;
  for (const GlandFit& fit : ranked) {
    if (fit.verdict <= Verdict::marginal_outside) list.push_back(&fit);
  }
  std::stable_sort(list.begin(), list.end(), [](const GlandFit* a, const GlandFit* b) {
    return fit::miss_of(*a) < fit::miss_of(*b);
  });
  return list;
}

std::string nearest_misses(std::span<const GlandFit* const> misses, std::size_t count,
                           const Style& style) {
  if (misses.empty() || count == 0) return {};
  std::string text = heading("nearest misses", style);
  for (const GlandFit* miss : misses.first(std::min(count, misses.size()))) {
    text += is_narrow(style) ? hanging(miss->gland->part + ": " + reason(*miss), style.columns)
                             : line_of(cell(miss->gland->part, 18) + " " + cell(reason(*miss), 60));
  }
  return text;
}

/// A gland that would fit through an adaptor, with what goes along.
std::string adaptor_words(const fit::Question& question, std::span<const GlandFit> ranked) {
  const auto through = fit::nearest_through(question, ranked);
  if (!through) return {};
  std::string text = "or " + through->fit.gland->part + " with a" +
                     (through->adaptor.starts_with("a") ? "n " : " ") + through->adaptor;
  if (!through->with.empty()) text += "; " + needs_text(through->with);
  if (!through->lacks.empty()) text += "; of the adaptor give: " + lacks_words(through->lacks);
  return text;
}

std::string first_line(const fit::Question& question, std::span<const GlandFit> ranked, State state,
                       const Style& style) {
  const std::string word = state_word(state, style);
  const auto padded = [&](const std::string& text) {
    if (is_narrow(style)) return word + "\n" + hanging(text, style.columns);
    const std::string plain_word = state_word(state, {});
    const std::size_t width = std::max(k_label, plain_word.size() + 2);
    return wrapped(word + std::string(width - plain_word.size(), ' '), text);
  };
  if (const auto& remark = question.job->cable.contradiction; remark && state == State::none) {
    return padded("measure again: " + remark->says);
  }
  if (state == State::none) {
    const std::string nearest = fit::advise(*question.job, ranked).nearest_says;
    return padded(nearest.empty() ? "the list is empty" : "nearest " + nearest);
  }
  if (state == State::not_yet) {
    return padded(lacks_words(fit::lacks_of(ranked.front())));
  }
  const gland::Gland& gland = *ranked.front().gland;
  if (state == State::order)
    return word + "\n" + one_line("Gland", gland.part + "  " + price_words(gland), style);
  if (is_narrow(style)) {
    return word + "  " + line_of(gland.part) + line_of("  " + price_words(gland));
  }
  return word + std::string(k_label - 4, ' ') +
         line_of(cell(gland.part, 34) + "  " + price_words(gland));
}

/// What is always there, from the answer down to what goes along.
std::string top(const fit::Question& question, std::span<const GlandFit> ranked, State state,
                const Style& style) {
  const job::Job& job = *question.job;
  std::string text = first_line(question, ranked, state, style);
  const bool passes = state == State::fits || state == State::order;
  if (passes) {
    const std::string& description = ranked.front().gland->description;
    if (!description.empty()) text += one_line("", description, style);
    const std::string bought = bought_words(*ranked.front().gland);
    if (!bought.empty()) text += one_line("", bought, style);
    const std::string how = how_it_fits(ranked.front());
    if (!how.empty()) text += one_line("", how, style);
  }
  text += labelled("Cable", cable_words(job.cable), style);
  if (job.entry.thread || job.entry.to_suit)
    text += one_line(
        "Entry", entry_words(job.entry, ranked.empty() ? nullptr : ranked.front().gland), style);
  if (const std::string place = place_words(job.area); !place.empty()) {
    text += one_line("Place", place, style);
    if (question.demand->sealing != area::SealingDemand::none) {
      text += one_line("Sealing", question.demand->says, style);
    }
  }
  if (passes) {
    const std::string along = needs_text(fit::needs_of(question, ranked.front()));
    if (!along.empty()) text += labelled("Take along", along, style);
  }
  return text;
}

/// What was taken for facts that nobody gave and could be otherwise.
std::string taken_line(const fit::Question& question, std::span<const GlandFit> ranked,
                       const Style& style) {
  if (ranked.empty() || ranked.front().verdict <= Verdict::marginal_outside) return {};
  const GlandFit& best = ranked.front();
  const auto taken = fit::taken_that_may_fail(fit::assumptions(question, best.gland), best);
  return taken.empty() ? std::string() : labelled("Taken", joined(taken, ", "), style);
}

/// Of a gland that the list has none of: which other one is there and fits.
std::string none_in_stock(std::span<const GlandFit> ranked, const Style& style) {
  if (ranked.empty() || ranked.front().verdict != Verdict::fits) return {};
  const gland::Gland& first = *ranked.front().gland;
  if (first.stock != 0) return {};
  const auto other = std::find_if(ranked.begin(), ranked.end(), [](const GlandFit& fit) {
    return fit.verdict == Verdict::fits && fit.gland->stock.value_or(0) > 0;
  });
  if (other == ranked.end()) return one_line("Look", "none of it is in stock", style);
  return one_line("Look",
                  fmt::format("none of it is in stock; {} fits, {} in stock", other->gland->part,
                              *other->gland->stock),
                  style);
}

std::string foot(const fit::Question& question, std::span<const GlandFit> ranked,
                 const std::string& list_name, std::size_t looks, const Style& style) {
  const job::Job& job = *question.job;
  std::string text = "\n" + none_in_stock(ranked, style);
  for (std::size_t i = 0; i < std::min(looks, job.cable.warnings.size()); ++i) {
    text += one_line("Look", job.cable.warnings[i], style);
  }
  text += taken_line(question, ranked, style);
  const std::string not_asked = not_asked_words(question);
  if (!not_asked.empty()) text += labelled("Not asked", not_asked, style);
  const std::string first =
      "Certificate, instructions and local code come first; a competent person decides.";
  text += is_narrow(style) ? hanging(first, style.columns) : first + "\n";
  return text + one_line("More",
                         fmt::format("--why, --sources, --all: {} gland{} in {}", ranked.size(),
                                     ranked.size() == 1 ? "" : "s", list_name),
                         style);
}

/// What to do where nothing fits.
std::string what_to_do(const fit::Question& question, std::span<const GlandFit> ranked, State state,
                       const Style& style) {
  const job::Job& job = *question.job;
  const fit::Advice advice = fit::advise(job, ranked);
  std::string text;
  if (state == State::not_yet || advice.order_says.empty()) {
    if (!advice.measure_says.empty()) text += labelled("Measure", advice.measure_says, style);
    return text;
  }
  text += labelled("Order", advice.order_says, style);
  const std::string adaptor = adaptor_words(question, ranked);
  if (!adaptor.empty()) text += labelled("", adaptor, style);
  return text;
}

std::string whole_reasons(const GlandFit& best, const Style& style) {
  std::string text = heading("why " + best.gland->part, style);
  for (const fit::Check& check : best.checks) {
    text += "  " + cell(to_string(check.name), 12) + check_word(check, style, 0) +
            (check.margin_mm ? "  " + margin_text(*check.margin_mm) + " mm" : "") + "\n";
    text += wrapped("      ", check.says);
  }
  return text;
}

std::string every_gland(std::span<const GlandFit> ranked, const Style& style) {
  std::string text = "\n" + table_head("every gland", style);
  for (const GlandFit& fit : ranked) {
    text += table_row(fit, style);
    if (fit.verdict != Verdict::fits) {
      text += wrapped("    " + verdict_word(fit.verdict, style, 0) + ": ", reason(fit));
    }
  }
  return text;
}

std::string every_source(const fit::Question& question, const GlandFit& best, const Style& style) {
  std::vector<std::string> sources;
  const auto add = [&](const std::string& source) {
    if (source.empty() || std::find(sources.begin(), sources.end(), source) != sources.end())
      return;
    sources.push_back(source);
  };
  for (const fit::Check& check : best.checks) add(check.source);
  if (question.demand->sealing != area::SealingDemand::none) add(question.demand->source);
  return bullets("where it comes from", sources, style);
}

}  // namespace

std::string cable_lines(const cable::Cable& cable) {
  return wrapped("Cable    ", cable_words(cable));
}

std::string entry_line(const entry::Entry& entry) {
  return wrapped("Entry    ", entry_words(entry));
}

std::string check_word(const fit::Check& check, const Style& style, std::size_t width) {
  const bool caution = check.name == CheckName::bend || check.name == CheckName::metals;
  if (!caution || check.verdict != Verdict::fits) return verdict_word(check.verdict, style, width);
  return width > 0 ? cell("CAUTION", width) : "CAUTION";
}

std::string area_lines(const job::Job& job, const area::Demand& demand) {
  const std::string asked = place_words(job.area);
  if (asked.empty()) return {};
  std::string text = wrapped("Area     ", asked);
  if (demand.sealing == area::SealingDemand::none) return text;
  text += wrapped("Sealing  ", demand.says);
  for (const area::Answer& answer : demand.path) {
    std::string line =
        answer.question + " " + (answer.yes ? "yes" : "no") + " (" + answer.from + ")";
    if (line.front() >= 'a' && line.front() <= 'z')
      line.front() = static_cast<char>(line.front() - 'a' + 'A');
    text += wrapped("         ", line);
  }
  if (!demand.would_change.empty()) {
    text += wrapped("         ",
                    "Not known, and could change it: " + joined(demand.would_change, ", "));
  }
  return text + wrapped("         ", demand.source);
}

std::string fit_text(const fit::Question& question, std::span<const GlandFit> ranked,
                     const std::string& list_name, const Style& style) {
  const job::Job& job = *question.job;
  const Verdict best = ranked.empty() ? Verdict::no_fit : ranked.front().verdict;
  const State state = fit::state_of(best, job.cable);
  const bool passes = state == State::fits || state == State::order;
  const std::vector<const GlandFit*> misses = misses_of(ranked);
  std::string begin = top(question, ranked, state, style);
  if (!passes) begin += what_to_do(question, ranked, state, style);
  const auto screen = [&](std::size_t rows, std::size_t near, std::size_t looks) {
    std::string text = begin;
    if (passes) text += also(ranked, 1, rows, Verdict::fits, "ALSO FIT", style);
    if (state == State::not_yet) text += also(ranked, 0, rows, best, "LIKELY", style);
    return text + nearest_misses(misses, near, style) +
           foot(question, ranked, list_name, looks, style);
  };
  std::size_t rows = k_also + (state == State::not_yet ? 1 : 0);
  std::size_t near = k_misses;
  std::size_t looks = k_looks;
  std::string text = screen(rows, near, looks);
  while (lines_of(text) > style.lines && rows + near + looks > 1) {
    if (rows > 1) {
      --rows;
    } else if (near > 0) {
      --near;
    } else {
      --looks;
    }
    text = screen(rows, near, looks);
  }
  if (style.inches) {
    text += inches_of(question, ranked.empty() ? nullptr : &ranked.front(), style);
  }
  if (ranked.empty()) return text;
  if (style.why) text += whole_reasons(ranked.front(), style) + area_lines(job, *question.demand);
  if (style.all) text += every_gland(ranked, style);
  if (style.sources) text += every_source(question, ranked.front(), style);
  if (style.why && !job.cable.warnings.empty()) {
    text += bullets("worth a look", job.cable.warnings, style);
  }
  return text;
}

}  // namespace cutback::print
