#include <fmt/format.h>

#include <vector>

#include "cutback/number.hpp"
#include "cutback/print/earth.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using earth::EarthResult;
using earth::Finding;

std::string judged(std::string_view name, const Finding& finding, const Style& style) {
  const std::string head = "  " + cell(name, 13);
  return head + verdict_word(finding.verdict, style, to_string(finding.verdict).size()) + "\n" +
         wrapped(std::string(head.size(), ' '), finding.says);
}

std::string capacity(const EarthResult& result) {
  if (!result.withstand_ka) return {};
  std::string text =
      fmt::format("{} x {} / sqrt({}) = {} A for {} s", plain(result.k->k, 2),
                  plain(round_down(*result.least_mm2, 0.01), 2), plain(result.withstand_s),
                  plain(round_down(*result.withstand_ka * 1000.0, 1.0)), plain(result.withstand_s));
  if (result.longest_s) {
    text += fmt::format("; the fault's current for {} s",
                        fixed(round_down(*result.longest_s, 0.01), 2));
    if (*result.longest_s >= earth::k_longest_time_s) text += ", the most that the equation is for";
  }
  return wrapped("Stands   ", text);
}

std::vector<std::string> sources(const EarthResult& result, const EarthAsked& asked) {
  std::vector<std::string> out;
  const auto add = [&](bool shown, const char* name, const Finding& finding) {
    if (shown && !finding.source.empty())
      out.push_back(fmt::format("{}: {}", name, finding.source));
  };
  add(result.k.has_value(), "k", result.factor);
  add(asked.fault, "calculation", result.adiabatic);
  add(asked.line, "table", result.table);
  add(asked.gland, "gland", result.gland);
  add(asked.resistance, "resistance", result.resistance);
  return out;
}

std::vector<std::string> cautions() {
  return {
      "Work dead: isolate, lock off, prove dead with a proved tester.",
      "The armour earths only what its glands connect: measure its continuity, end to end and to "
      "the earth terminals, before the circuit is used.",
      "The clearing time comes from the device's own characteristic at this current.",
      "The wiring rules of the place and a competent person come before these sums."};
}

}  // namespace

std::string earth_text(const EarthResult& result, const EarthAsked& asked, const Style& style) {
  std::string text =
      wrapped("Armour   ", result.area.says) + wrapped("Factor   ", result.factor.says);
  text += capacity(result);
  if (asked.fault || asked.line || asked.gland) text += heading("is it enough", style);
  if (asked.fault) text += judged("calculation", result.adiabatic, style);
  if (asked.line) text += judged("table 54.7", result.table, style);
  if (asked.gland) text += judged("gland", result.gland, style);
  if (asked.fault && asked.line) {
    text += wrapped("  ",
                    "A calculation that is possible decides; the table serves where there is "
                    "none.");
  }
  if (asked.resistance)
    text += heading("resistance", style) + wrapped("  ", result.resistance.says);
  return text + bullets("cautions", cautions(), style) +
         bullets("where the figures come from", sources(result, asked), style);
}

}  // namespace cutback::print
