#include "print/kit_words.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "cutback/money.hpp"
#include "cutback/number.hpp"

namespace cutback::print {
namespace {

using schedule::KitBy;

std::string measure(const KitReport& report, std::int64_t value) {
  if (report.by == KitBy::price) return money(report, value);
  return fmt::format("{} {}", value, value == 1 ? "part" : "parts");
}

std::int64_t value_of(const KitReport& report) {
  return report.by == KitBy::parts ? static_cast<std::int64_t>(report.kit->parts.size())
                                   : report.kit->cost_units;
}

std::string searched(const schedule::Kit& kit) {
  if (kit.rows == 0) return "reduction alone, which leaves no choice";
  return fmt::format(
      "integer programming (CBC) over the {} groups of ends and {} parts that reduction leaves",
      kit.rows, kit.columns);
}

}  // namespace

std::string money(const KitReport& report, std::int64_t units) {
  const std::string text = money_text(units, report.wanted->decimals);
  return report.currency.empty() ? text : text + " " + report.currency;
}

double share_percent(std::int64_t ends, std::int64_t of) {
  if (of == 0) return 0.0;
  return round_down(100.0 * static_cast<double>(ends) / static_cast<double>(of), 0.1);
}

std::string buys_text(const schedule::Kit& kit) {
  std::string text;
  std::int64_t told = 0;
  for (const double percent : {50.0, 80.0, 95.0, 99.0}) {
    const auto step = std::find_if(kit.curve.begin(), kit.curve.end(), [&](const auto& one) {
      return 100.0 * static_cast<double>(one.ends) >= percent * static_cast<double>(kit.served);
    });
    if (step == kit.curve.end() || step->ends == kit.served || step->ends <= told) continue;
    const auto parts = step - kit.curve.begin() + 1;
    text += fmt::format("{}{} serve{} {} %", parts,
                        text.empty() ? (parts == 1 ? " part" : " parts") : "",
                        parts == 1 ? "s" : "", fixed(share_percent(step->ends, kit.served), 1));
    text += ", ";
    told = step->ends;
  }
  const std::size_t all = kit.curve.size();
  text += fmt::format("{}{} serve{} all", all, text.empty() ? (all == 1 ? " part" : " parts") : "",
                      all == 1 ? "s" : "");
  return text + " of the ends that can be served.";
}

double gap_of(const KitReport& report) {
  const auto value = static_cast<double>(value_of(report));
  if (value <= 0.0) return 0.0;
  return (value - static_cast<double>(report.kit->bound)) / value;
}

std::string proof_text(const KitReport& report) {
  const schedule::Kit& kit = *report.kit;
  if (kit.proven) {
    return fmt::format(
        "Optimal: no kit {}; proven by {}.{}",
        report.by == KitBy::parts ? "has fewer parts" : "costs less", searched(kit),
        kit.ties_broken ? "" : " Time was too short to choose between equally good kits.");
  }
  const char* has = report.by == KitBy::parts ? "has" : "costs";
  return fmt::format(
      "Not proven to be the least: the time limit of {} s ended the search. Every kit {} {} at "
      "least; this one {} {}: a gap of {} %.",
      plain(report.time_limit_s), has, measure(report, kit.bound), has,
      measure(report, value_of(report)), fixed(100.0 * gap_of(report), 1));
}

std::vector<NotServed> not_served_groups(const KitReport& report) {
  std::vector<NotServed> list;
  for (const schedule::Exception* exception : schedule::grouped(*report.not_served)) {
    if (list.empty() || list.back().group != exception->group) {
      list.push_back({.group = exception->group, .ends = {}});
    }
    list.back().ends.push_back(exception);
  }
  return list;
}

std::size_t unpriced_in(const KitReport& report) {
  const auto& parts = report.kit->parts;
  return static_cast<std::size_t>(std::count_if(
      parts.begin(), parts.end(),
      [&](const schedule::KitPart& part) { return !report.wanted->parts[part.part].priced; }));
}

}  // namespace cutback::print
