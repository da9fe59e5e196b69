#include <fmt/format.h>
#include <algorithm>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "cutback/print/words.hpp"
#include "cutback/text.hpp"
#include "print/fit_parts.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using fit::CheckName;
using fit::GlandFit;

constexpr std::size_t k_shown_misses = 6;

std::string margin_cell(const GlandFit& fit, CheckName name) {
  const fit::Check* check = fit.find(name);
  if (check == nullptr) return "-";
  if (!check->margin_mm || check->verdict == Verdict::not_known) return "?";
  return margin_text(*check->margin_mm);
}

std::string armour_cell(const GlandFit& fit) {
  const fit::Check* check = fit.find(CheckName::armour);
  if (check == nullptr || check->verdict == Verdict::not_known) return "?";
  if (check->verdict == Verdict::fits) return check->value ? "grips" : "none";
  return check->verdict == Verdict::no_fit ? "no grip" : "near";
}

std::string table_row(const GlandFit& fit) {
  const gland::Gland& gland = *fit.gland;
  return cell(gland.part, 24) + " " + cell(entry::to_text(gland.entry_thread), 10) +
         right(margin_cell(fit, CheckName::outer_seal), 8) +
         right(margin_cell(fit, CheckName::inner_seal), 8) + "  " + cell(armour_cell(fit), 8) +
         right(gland.price ? fixed(*gland.price, 2) : "-", 9) +
         right(gland.stock ? std::to_string(*gland.stock) : "-", 8) + "\n";
}

std::string table_head() {
  return cell("gland", 24) + " " + cell("thread", 10) + right("outer mm", 8) + right("inner", 8) +
         "  " + cell("armour", 8) + right("price", 9) + right("stock", 8) + "\n";
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

std::string why_best(const GlandFit& best) {
  std::string text;
  for (const fit::Check& check : best.checks) {
    text += wrapped("  " + cell(to_string(check.name), 11) + " ", check.says);
  }
  return text;
}

std::string misses(std::span<const GlandFit> ranked, const Style& style) {
  std::vector<const GlandFit*> list;
  for (const GlandFit& fit : ranked) {
    if (fit.verdict <= Verdict::marginal_outside) list.push_back(&fit);
  }
  if (list.empty()) return {};
  // The ones that fail in least are worth a look; the rest only on request.
  std::stable_sort(list.begin(), list.end(), [](const GlandFit* a, const GlandFit* b) {
    return fit::miss_of(*a) < fit::miss_of(*b);
  });
  const std::size_t shown = style.all ? list.size() : std::min(list.size(), k_shown_misses);
  std::string text = heading(
      shown == list.size() ? fmt::format("does not fit ({})", list.size())
                           : fmt::format("does not fit ({} nearest of {})", shown, list.size()),
      style);
  for (std::size_t i = 0; i < shown; ++i) {
    text += wrapped(cell(list[i]->gland->part, 24) + " ", reason(*list[i]));
  }
  if (shown < list.size()) text += "The others miss by more: --all shows them.\n";
  return text;
}

std::string not_proven(std::span<const GlandFit> ranked, const Style& style) {
  std::string text;
  for (const GlandFit& fit : ranked) {
    if (fit.verdict != Verdict::marginal_inside && fit.verdict != Verdict::not_known) continue;
    if (text.empty()) text = heading("not proven: do not cut on these yet", style) + table_head();
    text += table_row(fit);
    text += wrapped("    " + verdict_word(fit.verdict, style, 0) + ": ", reason(fit));
  }
  return text;
}

std::string advice_lines(const job::Job& job, std::span<const GlandFit> ranked,
                         const Style& style) {
  const fit::Advice advice = fit::advise(job, ranked);
  std::string text = heading("no gland of the list is proven to fit", style);
  if (!advice.nearest_says.empty()) text += wrapped("Nearest  ", advice.nearest_says);
  if (!advice.measure_says.empty()) text += wrapped("Measure  ", advice.measure_says);
  return text + wrapped("Order    ", advice.order_says);
}

}  // namespace

std::string cable_lines(const cable::Cable& cable) {
  return wrapped("Cable    ", cable_words(cable));
}

std::string entry_line(const entry::Entry& entry) {
  return wrapped("Entry    ", entry_words(entry));
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
  const auto count = std::count_if(ranked.begin(), ranked.end(), [](const GlandFit& fit) {
    return fit.verdict == Verdict::fits;
  });
  std::string text = wrapped("Glands   ", fmt::format("{} in {}", ranked.size(), list_name));
  text += cable_lines(job.cable) + entry_line(job.entry) + area_lines(job, question.demand);
  for (const std::string& warning : job.cable.warnings) text += wrapped("Look     ", warning);
  if (!job.armour_fault.empty()) text += wrapped("Earth    ", job.armour_fault);
  if (count > 0) {
    text += heading(fmt::format("fits ({}), with its margins, best first", count), style) +
            table_head();
    for (const GlandFit& fit : ranked) {
      if (fit.verdict == Verdict::fits) text += table_row(fit);
    }
    text += heading("why the first", style);
    text += wrapped("", ranked.front().gland->part +
                            (ranked.front().gland->description.empty() ? "" : ", ") +
                            ranked.front().gland->description);
    text += why_best(ranked.front());
  } else {
    text += advice_lines(job, ranked, style);
  }
  text += not_proven(ranked, style);
  text += misses(ranked, style);
  text += "\n" + wrapped("",
                         "Rule: D +/- U wholly inside a range fits (JCGM 106:2012 clause 8). "
                         "Certificate, instructions and "
                         "local code come first; the work is for a competent person.");
  return text;
}

}  // namespace cutback::print
