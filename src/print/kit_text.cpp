#include <fmt/format.h>
#include <algorithm>

#include "cutback/glyph_width.hpp"
#include "cutback/number.hpp"
#include "cutback/print/kit.hpp"
#include "print/kit_words.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using schedule::KitBy;

constexpr std::size_t k_shown_tags = 3;

std::string head(const KitReport& report) {
  const schedule::Kit& kit = *report.kit;
  std::string text = wrapped(
      "Schedule  ", fmt::format("{}: {} cables or rows, {} ends, of which {} can be served",
                                report.file, report.rows, kit.served + kit.not_served, kit.served));
  text +=
      wrapped("Glands    ", fmt::format("{} in {}", report.list->glands.size(), report.list->name));
  return text + wrapped("Least     ", report.by == KitBy::parts
                                          ? "number of different parts; among those, the price"
                                          : "price of one of each part; among those, the number");
}

/// Where there are fewer of it than ends that may want it.
std::string stock_words(const schedule::KitPart& part, const gland::Gland& gland) {
  if (!gland.stock || *gland.stock >= part.fits) return {};
  const std::int64_t stock = *gland.stock;
  if (stock < part.alone) {
    return wrapped("  ! ", fmt::format("{} in stock are not enough: {} ends have no other part of "
                                       "this kit; order {} or more",
                                       stock, part.alone, part.alone - stock));
  }
  return wrapped("  ! ", fmt::format("{} in stock for up to {} ends", stock, part.fits));
}

std::string parts_table(const KitReport& report) {
  constexpr std::size_t k_part = 38;
  std::string text = cell("part", k_part) + right("fits", 8) + right("alone", 8) +
                     right("price", 12) + right("stock", 10) + "\n";
  for (const schedule::KitPart& part : report.kit->parts) {
    const gland::Gland& gland = report.list->glands[part.part];
    // A part is ordered by its code: nothing of it is left out.
    const bool is_long = columns_of(gland.part) > k_part;
    if (is_long) text += wrapped("", gland.part);
    text += cell(is_long ? "" : gland.part, k_part) + right(std::to_string(part.fits), 8) +
            right(std::to_string(part.alone), 8) +
            right(gland.price ? fixed(*gland.price, report.wanted->decimals) : "-", 12) +
            right(gland.stock ? std::to_string(*gland.stock) : "-", 10) + "\n";
    if (!gland.description.empty()) text += wrapped("    ", gland.description);
    text += stock_words(part, gland);
  }
  return text;
}

std::string price_text(const KitReport& report) {
  std::string text =
      "fits: ends that it fits; alone: ends that no other part of the kit fits. One of each "
      "costs " +
      money(report, report.kit->cost_units);
  const std::size_t unpriced = unpriced_in(report);
  if (unpriced > 0) {
    text += fmt::format("; {} without a price, counted as the dearest of the list", unpriced);
  }
  return text + ".";
}

std::string curve_lines(const KitReport& report) {
  constexpr std::size_t k_bar = 40;
  std::string text = right("parts", 6) + right("ends", 9) + "  of the ends that can be served\n";
  std::size_t parts = 0;
  for (const schedule::KitStep& step : report.kit->curve) {
    const auto filled =
        static_cast<std::size_t>(static_cast<double>(k_bar) * static_cast<double>(step.ends) /
                                 static_cast<double>(report.kit->served));
    text += right(std::to_string(++parts), 6) + right(std::to_string(step.ends), 9) + "  " +
            std::string(filled, '#') + std::string(k_bar - filled, '.') +
            right(fixed(share_percent(step.ends, report.kit->served), 1), 7) + " %" +
            (step.exact ? "" : " or more") + "\n";
  }
  return text;
}

std::string curve_text(const KitReport& report) {
  const auto& curve = report.kit->curve;
  std::string text = wrapped("", buys_text(*report.kit)) + curve_lines(report);
  const bool exact = std::all_of(curve.begin(), curve.end(), [](const auto& s) { return s.exact; });
  return text + wrapped("", exact
                                ? "Each line is the best set of so many parts, exact by integer "
                                  "programming; the sets need not hold each other."
                                : "Lines with \"or more\" are by greedy choice: time was too short "
                                  "to prove them.");
}

std::string not_served(const KitReport& report) {
  std::string text;
  for (const NotServed& group : not_served_groups(report)) {
    std::string tags;
    for (std::size_t i = 0; i < std::min(k_shown_tags, group.ends.size()); ++i) {
      const schedule::Exception& end = *group.ends[i];
      tags += (i > 0 ? ", " : "") + (end.tag.empty() ? fmt::format("line {}", end.line) : end.tag) +
              (end.end.empty() ? "" : " " + end.end);
    }
    if (group.ends.size() > k_shown_tags) {
      tags += fmt::format(" and {} more", group.ends.size() - k_shown_tags);
    }
    text += wrapped(right(std::to_string(group.ends.size()), 6) + "  ", group.group + ": " + tags);
    const std::string& change = group.ends.front()->change;
    if (!change.empty()) text += wrapped("        ", "first: " + change);
  }
  return text;
}

}  // namespace

std::string kit_text(const KitReport& report, const Style& style) {
  const schedule::Kit& kit = *report.kit;
  std::string text = head(report);
  if (kit.parts.empty()) {
    text += "\nNo part of the list fits any end.\n";
  } else {
    text += heading(fmt::format("kit ({} {})", kit.parts.size(),
                                kit.parts.size() == 1 ? "part" : "parts"),
                    style) +
            parts_table(report) + wrapped("", price_text(report));
    text += heading("what each further part buys", style) + curve_text(report);
  }
  if (kit.not_served > 0) {
    text += heading(fmt::format("not served ({} {}), by what they lack", kit.not_served,
                                kit.not_served == 1 ? "end" : "ends"),
                    style) +
            not_served(report);
  }
  if (!kit.parts.empty()) text += heading("proof", style) + wrapped("", proof_text(report));
  return text + "\n" +
         wrapped("",
                 "A kit is no take-off: it says which parts to carry, not how many; cutback "
                 "schedule --use-stock shares out what is in stock. Certificate, "
                 "instructions and local code come first; the work is for a competent person.");
}

}  // namespace cutback::print
