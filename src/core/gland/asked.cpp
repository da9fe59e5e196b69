#include "cutback/gland/asked.hpp"

#include <algorithm>

#include "cutback/gland/columns.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::gland {
namespace {

constexpr Asked one(std::string_view column, std::string_view asks, std::string_view example,
                    bool needed = false, bool of_armoured = false) {
  return {column, column, column, asks, example, needed, of_armoured};
}

constexpr Asked of_barrier(std::string_view column, std::string_view asks,
                           std::string_view example) {
  Asked asked = one(column, asks, example);
  asked.of_barrier = true;
  return asked;
}

/// Of a figure without which no place passes.
constexpr Asked of_place(std::string_view column, std::string_view asks, std::string_view example,
                         std::string_view cost) {
  Asked asked = one(column, asks, example);
  asked.cost = cost;
  return asked;
}

constexpr Asked inner_seal() {
  Asked asked{"inner_mm", "inner_min_mm", "inner_max_mm", "Inner seal: bedding from - to", "8-12"};
  asked.blank_is_none = true;
  return asked;
}

constexpr std::string_view k_no_hazard = "no hazardous place passes";
constexpr std::string_view k_no_place = "no place passes, not even a plain room";

// clang-format off
constexpr Asked k_asked[] = {
    one("part", "Its part code, as it is ordered", "AB-20", true),
    one("description", "In a few words, for a person", "seals on sheath and bedding"),
    one("entry_thread", "Entry thread", "M20, NPT 1/2", true),
    one("entry_length_mm", "Length of the entry thread", "15"),
    one("armour", "Armour that it clamps: wire braid tape strip none", "wire", true),
    {"outer_mm", "outer_min_mm", "outer_max_mm", "Outer seal: sheath from - to", "11-16", true, false},
    inner_seal(),
    one("bore_mm", "What passes the armour cone", "12.5", false, true),
    {"armour_mm", "armour_min_mm", "armour_max_mm", "Clamp: wire from - to", "0.9-1.25", true, true},
    one("exposed_armour_mm", "Bare armour in front of the sheath", "12", false, true),
    one("sealing", "What seals inside it: compression (rings), barrier (compound round the cores) or either", "compression"),
    of_barrier("chamber_bore_mm", "Bore of its chamber", "18"),
    of_barrier("chamber_length_mm", "Depth of the compound", "25"),
    of_barrier("max_cores", "Most cores that it takes", "12"),
    of_barrier("max_bundle_mm", "Largest diameter over the cores laid together", "16"),
    of_barrier("bedding_end_mm", "Where the bedding ends, from the shoulder; outside it minus", "-5"),
    of_place("protection", "Types of protection on its certificate, or the whole marking", "db eb tb, or Ex db eb IIC Gb", k_no_hazard),
    of_place("level", "Protection levels on its certificate", "Gb Db", k_no_hazard),
    of_place("gas_group", "Gas group on its certificate", "IIC", "no gas group passes"),
    of_place("dust_group", "Dust group on its certificate", "IIIC", "no dust group passes"),
    of_place("ip", "Degrees of protection", "66 68", "no IP that is asked for passes"),
    of_place("temp_min_c", "Coldest service temperature, in C", "-20", k_no_place),
    of_place("temp_max_c", "Hottest service temperature, in C", "80", k_no_place),
    one("material", "Material of the body", "brass"),
    one("fault_ka", "Earth fault that it is rated for, 1 s, in kA", "3.2", false, true),
    one("torque_nm", "Tightening torque of the body, in N m", "25"),
    one("washer_mm", "Sealing washer that comes with it, thickness", "1.5"),
    one("locknut_mm", "Locknut that comes with it, thickness", "4"),
    one("price", "Price of one", "11.20"),
    one("stock", "How many are at hand", "4"),
    one("pack", "How many are in a pack, where it is sold in packs", "10"),
};
// clang-format on

std::string_view without(std::string_view text, std::string_view unit) {
  return trimmed(text.substr(0, text.size() - unit.size()));
}

}  // namespace

std::span<const Asked> asked() { return k_asked; }

std::optional<Ends> read_range(std::string_view text) {
  std::string plain_text;
  // A dash of the typesetter is one.
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i).starts_with("\xE2\x80\x93") || text.substr(i).starts_with("\xE2\x80\x94")) {
      plain_text += '-';
      i += 2;
    } else {
      plain_text += small_letter(text[i]);
    }
  }
  std::string_view rest = trimmed(plain_text);
  std::string_view unit;
  for (const std::string_view each : {"mm", "inches", "inch", "in", "\""}) {
    if (!rest.ends_with(each)) continue;
    unit = each;
    rest = without(rest, each);
    break;
  }
  std::size_t at = std::string_view::npos;
  std::size_t length = 0;
  for (const std::string_view between : {"...", " to ", "-"}) {
    const std::size_t found = rest.find(between);
    if (found == std::string_view::npos || found == 0) continue;
    if (rest.find(between, found + between.size()) != std::string_view::npos) return std::nullopt;
    at = found;
    length = between.size();
    break;
  }
  if (at == std::string_view::npos) return std::nullopt;
  std::string_view low = trimmed(rest.substr(0, at));
  const std::string_view high = trimmed(rest.substr(at + length));
  if (!unit.empty() && low.ends_with(unit)) low = without(low, unit);
  const written::Asked length_of{
      .key = {}, .form = written::Asked::Form::number, .unit = "mm", .words = {}};
  const auto figure = [&](std::string_view figure_text) -> std::optional<double> {
    if (figure_text.empty() || figure_text.front() == '-') return std::nullopt;
    const std::string with_unit =
        std::string(figure_text) + (unit == "mm" ? "" : std::string(unit));
    return parse_number(written::take(length_of, with_unit, "").text);
  };
  const auto a = figure(low);
  const auto b = figure(high);
  if (!a || !b || *a < 0.0 || *b < *a) return std::nullopt;
  return Ends{*a, *b};
}

std::vector<std::string_view> template_columns() {
  std::vector<std::string_view> names;
  for (const Asked& each : asked()) {
    names.push_back(each.low);
    if (each.is_range()) names.push_back(each.high);
  }
  return names;
}

std::string template_text() {
  std::string text =
      "# A gland list: one row per gland, every figure off its own papers. Blank: not stated.\n"
      "# Rows that begin with # are remarks. cutback glands FILE checks the list.\n";
  std::string heads;
  for (const std::string_view name : template_columns()) {
    heads += (heads.empty() ? "" : ",") + std::string(name);
  }
  text += heads + "\n";
  for (const Asked& each : asked()) {
    text += "# " + std::string(each.low);
    if (each.is_range()) text += " and " + std::string(each.high);
    text += ": " + std::string(each.asks) + ", such as " + std::string(each.example) + "; " +
            allowed_text(columns()[column_place(each.low)]) + (each.needed ? "; needed" : "") +
            (each.blank_is_none ? "; blank: it has none" : "") + "\n";
  }
  return text;
}

}  // namespace cutback::gland
