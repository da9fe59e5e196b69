#include "cutback/area/ip.hpp"

#include "core/area/source.hpp"

namespace cutback::area {
namespace {

/// How one second numeral serves another.
enum class Service { yes, check };
constexpr auto all_values(Service) { return std::array{Service::yes, Service::check}; }
constexpr std::string_view to_string(Service service) {
  return service == Service::yes ? "yes" : "check";
}

/// The first numeral: each implies those below it.
IpAnswer solid_answer(int required, std::span<const IpCode> marked) {
  bool silent = false;
  for (const IpCode& code : marked) {
    if (code.solids && *code.solids >= required) return {Verdict::fits, {}};
    silent = silent || !code.solids;
  }
  if (silent) return {Verdict::not_known, "an X in the marking says nothing about solids"};
  return {Verdict::no_fit, {}};
}

IpAnswer water_answer(int required, std::span<const IpCode> marked,
                      std::span<const WaterRule> rules) {
  IpAnswer best{Verdict::no_fit, {}};
  for (const IpCode& code : marked) {
    if (!code.water) {
      if (best.verdict == Verdict::no_fit) {
        best = {Verdict::not_known, "an X in the marking says nothing about water"};
      }
      continue;
    }
    for (const WaterRule& rule : rules) {
      if (rule.required != required) continue;
      if (*code.water < rule.provided_min || *code.water > rule.provided_max) continue;
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
                     .sure = detail::value_in<Service>(table, i, "result") == Service::yes,
                     .note = table.text(i, "note")});
  }
  return rules;
}

IpAnswer serves(const IpCode& required, std::span<const IpCode> marked,
                std::span<const WaterRule> rules) {
  IpAnswer solid{Verdict::fits, {}};
  IpAnswer water{Verdict::fits, {}};
  if (required.solids.value_or(0) > 0) solid = solid_answer(*required.solids, marked);
  if (required.water.value_or(0) > 0) water = water_answer(*required.water, marked, rules);
  return water.verdict < solid.verdict ? water : solid;
}

}  // namespace cutback::area
