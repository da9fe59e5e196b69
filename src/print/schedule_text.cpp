#include <fmt/format.h>
#include <algorithm>
#include <utility>

#include "cutback/job/field_text.hpp"
#include "cutback/money.hpp"
#include "cutback/number.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/schedule/layout.hpp"
#include "print/layout.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

/// Not rounded to all or to none where it is neither.
std::string part_of(std::uint64_t part, std::uint64_t whole) {
  if (whole == 0) return "0";
  double percent = 100.0 * static_cast<double>(part) / static_cast<double>(whole);
  if (part > 0 && part < whole) percent = std::clamp(percent, 0.1, 99.9);
  return fmt::format("{} ({} %)", part, fixed(percent, 1));
}

/// The groups with the most exceptions, largest first.
std::string most_often(const schedule::Tally& tally) {
  constexpr std::size_t k_shown = 3;
  std::vector<std::pair<std::string, std::uint64_t>> groups(tally.groups.begin(),
                                                            tally.groups.end());
  std::stable_sort(groups.begin(), groups.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::string text;
  for (std::size_t i = 0; i < std::min(k_shown, groups.size()); ++i) {
    text += fmt::format("{}{} ({})", i > 0 ? ", " : "", groups[i].first, groups[i].second);
  }
  return text;
}

/// How many ends were decided by what was measured, by a datasheet, by an estimate.
std::string evidence_text(const schedule::Tally& tally) {
  std::string text;
  for (const measure::Evidence evidence : all_values(measure::Evidence{})) {
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", to_string(evidence),
                        tally.by_evidence[static_cast<std::size_t>(evidence)]);
  }
  return text + "; the weakest counts";
}

std::string section_heading(std::string_view section, const Style& style) {
  if (section.empty()) return heading("NAMES AND RULES", style);
  if (section == "cable") return heading("CABLE", style);
  return heading(capitals(section) + ", OF EACH END", style);
}

}  // namespace

std::string columns_text(const Style& style) {
  std::string text =
      wrapped("",
              "Columns of a cable schedule: tag is needed, and one of sheath_od_mm, bedding_mm, "
              "or cores and csa_mm2 for an estimate. All others may be absent, and cells may be "
              "blank. A heading of your own is named with --column sheath_od_mm=\"O/D (mm)\".") +
      "\n" +
      wrapped("",
              "What is said of each end stands once for both, or twice with from_ and to_ before "
              "its name: from_entry, to_entry. Columns from and to (where the cable begins and "
              "ends) make two ends a row as well. A job file (JSON) has the same keys, those of a "
              "section in an object of its name.");
  std::string_view section = "none yet";
  for (const job::Field* const each : schedule::column_fields()) {
    const job::Field& field = *each;
    if (field.section != section) {
      section = field.section;
      text += section_heading(section, style);
    }
    const std::string allowed = job::allowed_text(field);
    text += wrapped(fmt::format("  {:<18}", field.key),
                    std::string(field.help) + (allowed == "text" ? "" : ": " + allowed));
  }
  return text;
}

std::string defaults_summary(std::span<const schedule::OwnValue> defaults,
                             const schedule::DefaultCounts& counts) {
  if (defaults.empty()) return {};
  std::string text;
  for (std::size_t i = 0; i < defaults.size(); ++i) {
    const std::uint64_t cells = counts.of(i);
    text += fmt::format("{}{}={} in {} {}", i > 0 ? ", " : "", defaults[i].column, defaults[i].text,
                        cells, cells == 1 ? "cell" : "cells");
  }
  return wrapped("Taken for blanks  ", text);
}

std::string changes_summary(const std::string& old_file,
                            std::span<const schedule::EndChange> changes,
                            const schedule::Takeoff& takeoff) {
  using Kind = schedule::EndChange::Kind;
  const auto count = [&](auto wanted) {
    return std::count_if(changes.begin(), changes.end(), wanted);
  };
  const auto of = [&](Kind kind) {
    return count([kind](const schedule::EndChange& each) { return each.kind == kind; });
  };
  const auto glands = count([](const schedule::EndChange& each) { return each.gland_changed(); });
  std::string text =
      wrapped("Against           ",
              fmt::format("{}: {} ends added, {} removed, {} changed, of {} the gland", old_file,
                          of(Kind::added), of(Kind::removed), of(Kind::changed), glands));
  constexpr std::size_t k_shown = 6;
  std::string lines;
  std::size_t number = 0;
  for (const schedule::TakeoffLine& line : takeoff.lines) {
    if (!line.old_quantity || *line.old_quantity == line.quantity) continue;
    if (++number > k_shown) continue;
    const auto difference =
        static_cast<std::int64_t>(line.quantity) - static_cast<std::int64_t>(*line.old_quantity);
    lines += fmt::format("{}{}{} {:+d}", lines.empty() ? "" : ", ",
                         line.group.empty() ? "" : line.group + ": ", schedule::name_of(line),
                         difference);
  }
  if (number > k_shown) lines += fmt::format(" and {} more", number - k_shown);
  return text + wrapped("Take-off          ", lines.empty() ? "as it was" : lines);
}

std::string ends_not_told(const schedule::Tally& tally) {
  if (tally.ends_not_told == 0) return {};
  constexpr const char* k_say =
      "say --ends 2 where a row is a whole cable, --ends 1 where it is "
      "one end";
  if (tally.may_be_cables == 0) {
    return fmt::format("one per row, for no heading tells from and to: {}", k_say);
  }
  return fmt::format(
      "NOT KNOWN: no heading tells from and to, and each row is counted as one end; "
      "where a row is a whole cable, half of its glands are missing; {}",
      k_say);
}

std::string schedule_summary(const schedule::Tally& tally, const std::string& file,
                             std::size_t glands, const std::string& list_name) {
  const auto verdict = [&](Verdict which) {
    return part_of(tally.by_verdict[static_cast<std::size_t>(which)], tally.ends);
  };
  const std::string often = most_often(tally);
  const std::string made =
      tally.made == 0
          ? std::string()
          : wrapped("Made              ", part_of(tally.made, tally.ends) +
                                              ": finished by the register, and not ordered again");
  const std::string ends = ends_not_told(tally);
  const bool one_end = tally.rows > 0 && tally.one_end_rows == tally.rows;
  // Names of files are not broken.
  const char* const each_one = tally.rows == 1 ? "row of one end" : "rows of one end each";
  return fmt::format("Schedule          {}: {} {}, {} {}\n", file, tally.rows,
                     one_end ? each_one : "cables or rows", tally.ends,
                     tally.ends == 1 ? "end" : "ends") +
         (ends.empty() ? ends : wrapped("Ends              ", ends)) +
         fmt::format("Glands            {} in {}\n", glands, list_name) +
         wrapped("Fits              ", verdict(Verdict::fits)) +
         wrapped("Marginal, inside  ",
                 verdict(Verdict::marginal_inside) + ": measure before cutting") +
         wrapped("Not known         ", verdict(Verdict::not_known)) +
         wrapped("Marginal, outside ", verdict(Verdict::marginal_outside)) +
         wrapped("No gland fits     ", verdict(Verdict::no_fit)) +
         wrapped("Unusable          ", part_of(tally.unusable, tally.ends)) +
         wrapped("By its figures    ", evidence_text(tally)) +
         wrapped("With compound     ",
                 fmt::format("{} ends; figures to look at: {}; measure before ordering: {}",
                             tally.barrier, tally.remarked, tally.wavering)) +
         made +
         wrapped("Needs a person    ", part_of(tally.exceptions, tally.ends) +
                                           (often.empty() ? "" : ", most often " + often));
}

std::string stock_summary(const schedule::Wanted& wanted, const schedule::Share& share,
                          const std::string& currency) {
  std::int64_t units = 0;
  std::int64_t not_priced = 0;
  for (std::size_t part = 0; part < wanted.parts.size(); ++part) {
    if (wanted.parts[part].priced) {
      units += share.used[part] * wanted.parts[part].cost_units;
    } else {
      not_priced += share.used[part];
    }
  }
  const auto served = static_cast<std::uint64_t>(share.served);
  const auto all = static_cast<std::uint64_t>(share.served + share.out_of_stock);
  std::string cost = money_text(units, wanted.decimals);
  if (!currency.empty()) cost += " " + currency;
  if (not_priced > 0) cost += fmt::format(" and {} parts without a price", not_priced);
  cost += share.proven ? "; no share serves more, or as many for less: proven by its dual"
                       : "; NOT proven: another share may serve more or cost less";
  return wrapped("From stock        ",
                 fmt::format("{} of the {} ends that a gland fits, {} go without",
                             part_of(served, all), all, share.out_of_stock)) +
         wrapped("Its cost          ", cost);
}

}  // namespace cutback::print
