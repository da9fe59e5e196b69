#include "cutback/area/ip.hpp"

#include <algorithm>

#include "cutback/text.hpp"

namespace cutback::area {
namespace {

struct Numerals {
  int solid = -1;  // -1: X, or not said
  int water = -1;
};

int numeral(std::string_view code, std::size_t at) {
  const bool digit = at < code.size() && is_digit(code[at]);
  return digit ? code[at] - '0' : -1;
}

Numerals numerals(std::string_view code) { return {numeral(code, 0), numeral(code, 1)}; }

/// The first numeral: each implies those below it.
IpAnswer solid_answer(int required, std::span<const std::string> marked) {
  if (required <= 0) return {Verdict::fits, {}};
  bool silent = false;
  for (const std::string& code : marked) {
    const int solid = numerals(code).solid;
    if (solid >= required) return {Verdict::fits, {}};
    silent = silent || solid < 0;
  }
  if (silent) return {Verdict::not_known, "an X in the marking says nothing about solids"};
  return {Verdict::no_fit, {}};
}

IpAnswer water_answer(int required, std::span<const std::string> marked,
                      std::span<const WaterRule> rules) {
  if (required <= 0) return {Verdict::fits, {}};
  IpAnswer best{Verdict::no_fit, {}};
  for (const std::string& code : marked) {
    const int water = numerals(code).water;
    if (water < 0 && best.verdict == Verdict::no_fit) {
      best = {Verdict::not_known, "an X in the marking says nothing about water"};
    }
    for (const WaterRule& rule : rules) {
      if (rule.required != required || water < rule.provided_min || water > rule.provided_max)
        continue;
      if (rule.sure) return {Verdict::fits, {}};
      best = {Verdict::not_known, rule.note};
    }
  }
  return best;
}

}  // namespace

std::vector<WaterRule> water_rules(const tables::Standards& standards) {
  const tables::Table& table = standards.table("ip_water");
  std::vector<WaterRule> rules;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    rules.push_back({.required = static_cast<int>(table.number(i, "required")),
                     .provided_min = static_cast<int>(table.number(i, "provided_min")),
                     .provided_max = static_cast<int>(table.number(i, "provided_max")),
                     .sure = table.text(i, "result") == "yes",
                     .note = table.text(i, "note")});
  }
  return rules;
}

IpAnswer serves(std::string_view required, std::span<const std::string> marked,
                std::span<const WaterRule> rules) {
  const Numerals needed = numerals(required);
  const IpAnswer solid = solid_answer(needed.solid, marked);
  const IpAnswer water = water_answer(needed.water, marked, rules);
  return water.verdict < solid.verdict ? water : solid;
}

std::vector<std::string> ip_codes(std::string_view text) {
  std::vector<std::string> codes;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("/ "), text.size());
    if (end > 0) codes.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return codes;
}

}  // namespace cutback::area
