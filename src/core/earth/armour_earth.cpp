#include "cutback/earth/armour_earth.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "cutback/compare.hpp"
#include "cutback/earth/gland_rating.hpp"
#include "cutback/earth/resistance.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::earth {
namespace {

constexpr double k_m_per_km = 1000.0;
constexpr double k_amperes_per_ka = 1000.0;
/// Resistances of the same armour as made: the largest wires and the longest lay take off a
/// quarter.
constexpr double k_least_of_largest = 0.75;
constexpr const char* k_adiabatic_source = "IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3";
constexpr const char* k_table_source = "BS 7671 table 54.7; k1 and k2: ";
constexpr const char* k_resistance_source =
    "resistivity and beta: IEC 60364-5-54 Annex A; thinnest wires: HD 604 S1/A1; lay of the wires: "
    "from memory where not given";
constexpr const char* k_loop_source =
    "1.1 R2 and 0.3 mohm/m: PD CLC/TR 50480:2011 [secondary]; R1: IEC 60228 Table 2";

void need_positive(std::vector<Fault>& faults, const char* where, std::optional<double> value) {
  if (!value || (std::isfinite(*value) && *value > 0.0)) return;
  faults.push_back({.code = ErrorCode::out_of_range,
                    .what = "not a figure above 0",
                    .where = where,
                    .given = plain(*value),
                    .allowed = "a finite number above 0",
                    .hint = {}});
}

void check_input(const EarthInput& in) {
  std::vector<Fault> faults;
  if (in.armour) need_positive(faults, "armour area [mm2]", in.armour->area_mm2);
  need_positive(faults, "line conductor [mm2]", in.line_mm2);
  need_positive(faults, "k of the line conductor", in.line_k);
  need_positive(faults, "fault current [kA]", in.fault.current_ka);
  need_positive(faults, "fault time [s]", in.fault.time_s);
  need_positive(faults, "let-through energy [A2 s]", in.fault.let_through_a2s);
  need_positive(faults, "gland's rating [kA]", in.gland_ka);
  need_positive(faults, "length [m]", in.length_m);
  need_positive(faults, "lay ratio", in.lay_ratio);
  need_positive(faults, "loop [ohm]", in.fault.loop_ohm);
  need_positive(faults, "voltage to earth [V]", in.fault.u0_v);
  if (in.start_degc.has_value() != in.final_degc.has_value()) {
    faults.push_back({.code = ErrorCode::missing,
                      .what = "start and final temperature go together",
                      .where = in.start_degc ? "final temperature" : "start temperature",
                      .given = {},
                      .allowed = "degC",
                      .hint = {}});
  }
  if (!faults.empty()) throw InputError(std::move(faults));
}

/// The armour's k: from the temperatures where they are given, else from the table.
void find_armour_k(const EarthInput& in, const tables::Standards& standards, EarthResult& out) {
  if (in.start_degc) {
    const Metal constants = metal(standards, in.armour_material);
    double final_degc = *in.final_degc;
    std::string words;
    // A stated insulation stands no more than its table says.
    if (in.insulation && !in.insulation_is_taken) {
      const double area_mm2 = in.armour ? in.armour->area_mm2 : 1.0;
      const auto most =
          k_value(standards, Use::armour, in.armour_material, *in.insulation, area_mm2);
      if (most && most->final_degc && !at_most(final_degc, *most->final_degc)) {
        final_degc = *most->final_degc;
        words = fmt::format(": {} insulation stands no {} degC", to_string(*in.insulation),
                            plain(*in.final_degc));
      }
    }
    const double k = k_from_constants(constants, *in.start_degc, final_degc);
    out.k = KValue{
        k,
        fmt::format("k {} for {} armour, {} to {} degC{}", fixed(k, 2),
                    to_string(in.armour_material), plain(*in.start_degc), plain(final_degc), words),
        "IEC 60364-5-54 Annex A", tables::Status::derived, in.start_degc};
  } else if (in.insulation) {
    const double area_mm2 = in.armour ? in.armour->area_mm2 : 1.0;
    out.k = k_value(standards, Use::armour, in.armour_material, *in.insulation, area_mm2);
  }
  if (out.k) {
    out.factor = {Verdict::fits, out.k->says, out.k->source};
    if (in.insulation_is_taken && !in.start_degc) {
      out.factor.says += ", the lowest: the insulation is not given";
    }
  } else {
    out.factor.says = in.insulation ? fmt::format("the tables have no k for {} armour",
                                                  to_string(in.armour_material))
                                    : "the cable's insulation is not given: no k";
    out.factor.source = "BS 7671 table 54.4";
  }
}

void find_line_k(const EarthInput& in, const tables::Standards& standards, EarthResult& out) {
  if (in.line_k) {
    out.line_k = KValue{*in.line_k, "k1 " + plain(*in.line_k) + " as given", "as given",
                        tables::Status::derived, std::nullopt};
  } else if (in.insulation && in.line_mm2) {
    out.line_k = k_value(standards, Use::line, in.line_material, *in.insulation, *in.line_mm2);
  }
}

/// An area against what is needed; the area's own error blurs the edge.
Verdict compare(const ArmourArea& armour, double required_mm2) {
  if (at_least(armour.area_mm2 * (1.0 - armour.error_ratio), required_mm2)) return Verdict::fits;
  if (at_least(armour.area_mm2, required_mm2)) return Verdict::marginal_inside;
  if (at_least(armour.area_mm2 * (1.0 + armour.error_ratio), required_mm2)) {
    return Verdict::marginal_outside;
  }
  return Verdict::no_fit;
}

std::string_view relation(Verdict verdict) {
  switch (verdict) {
    case Verdict::fits:
      return "is enough";
    case Verdict::marginal_inside:
      return "is enough only if its estimate holds: count the wires";
    case Verdict::marginal_outside:
      return "is too little unless it is underestimated: count the wires";
    default:
      return "is too little";
  }
}

// Rounded to the stricter side, so that the printed figures never say more than is true.
std::string area_text(const EarthInput& in) {
  return plain(round_down(in.armour->area_mm2, 0.01), 2);
}
std::string needed_text(double required_mm2) { return fixed(round_up(required_mm2, 0.01), 2); }
std::string ohm_text(double most_ohm) { return fixed(round_up(most_ohm, 0.0001), 4); }

struct Energy {
  double a2s;
  std::string words;
};

/// What counts as I^2 t: the current and time, or the let-through energy under 0.1 s; where both
/// hold, the larger.
std::optional<Energy> energy_of(const EarthFault& fault) {
  std::optional<Energy> energy;
  const bool short_time = fault.time_s && !at_least(*fault.time_s, k_shortest_time_s);
  const auto current = current_ka(fault);
  if (current && fault.time_s) {
    const double current_a = *current * k_amperes_per_ka;
    energy = Energy{current_a * current_a * *fault.time_s,
                    fmt::format("sqrt({}^2 x {})", plain(current_a, 1), plain(*fault.time_s))};
  }
  if (fault.let_through_a2s && (short_time || !energy || *fault.let_through_a2s > energy->a2s)) {
    energy = Energy{*fault.let_through_a2s, fmt::format("sqrt({})", plain(*fault.let_through_a2s))};
  }
  return energy;
}

/// Why the equation alone does not decide, or nothing.
std::string outside_the_method(const EarthFault& fault, const tables::Standards& standards) {
  if (!fault.time_s) return {};
  const auto current = current_ka(fault);
  if (fault.device && current && !fault.let_through_a2s) {
    std::string doubt = why_not_so_soon(*fault.device, *current, *fault.time_s, standards);
    if (!doubt.empty()) return doubt;
  }
  if (!at_least(*fault.time_s, k_shortest_time_s) && !fault.let_through_a2s) {
    return "under 0.1 s the let-through energy of the device counts: give it";
  }
  if (!at_most(*fault.time_s, k_longest_time_s)) return "the equation is for at most 5 s";
  return {};
}

/// What of the fault is not known, where there is no energy.
std::string missing_of(const EarthFault& fault, const tables::Standards& standards) {
  std::string text;
  if (!current_ka(fault)) text = current_says(fault);
  if (!fault.time_s) {
    text +=
        (text.empty() ? "" : "; ") + std::string("the time for which the fault lasts is not given");
    if (fault.device) text += "; " + device_says(*fault.device, current_ka(fault), standards);
  }
  return text;
}

void check_adiabatic(const EarthInput& in, const tables::Standards& standards, EarthResult& out) {
  out.adiabatic.source = k_adiabatic_source;
  const auto energy = energy_of(in.fault);
  if (!energy || !out.k) {
    out.adiabatic.says = !energy ? missing_of(in.fault, standards) : out.factor.says;
    return;
  }
  out.required_mm2 = adiabatic_area_mm2(energy->a2s, out.k->k);
  const std::string by_loop =
      in.fault.loop_ohm && !in.fault.current_ka ? current_says(in.fault) + "; " : "";
  const std::string sum = fmt::format("{}{} / {} = {} mm2 needed", by_loop, energy->words,
                                      plain(out.k->k, 2), needed_text(*out.required_mm2));
  if (!in.armour) {
    out.adiabatic.says = sum + "; the area of the armour is not known";
    return;
  }
  const Verdict verdict = compare(*in.armour, *out.required_mm2);
  out.adiabatic.says =
      fmt::format("{}; {} mm2 ({}) {}", sum, area_text(in), in.armour->origin, relation(verdict));
  if (in.fault.device) out.adiabatic.says += "; " + at_once_says(*in.fault.device, standards);
  const std::string limit = outside_the_method(in.fault, standards);
  const bool too_long = in.fault.time_s && !at_most(*in.fault.time_s, k_longest_time_s);
  if (limit.empty() || (too_long && verdict < Verdict::not_known)) {
    out.adiabatic.verdict = verdict;
  } else {
    out.adiabatic.says += "; but " + limit;
  }
}

void check_table(const EarthInput& in, const tables::Standards& standards, EarthResult& out) {
  const bool same = in.line_material == in.armour_material;
  out.table.source = k_table_source;
  if (!in.line_mm2 || (!same && (!out.k || !out.line_k))) {
    out.table.source = "BS 7671 table 54.7";
    out.table.says = !in.line_mm2 ? "the size of the line conductor is not given"
                                  : "without k1 and k2 the table cannot be used";
    return;
  }
  const double k1 = same ? 1.0 : out.line_k->k;
  const double k2 = same ? 1.0 : out.k->k;
  out.table_required_mm2 =
      minimum_by_table_mm2(standards.table("minimum_protective"), *in.line_mm2, k1, k2);
  const std::string factor =
      same ? "same material, no factor"
           : fmt::format("k1/k2 = {}/{} with {}", plain(k1, 2), plain(k2, 2), out.line_k->says);
  out.table.source =
      same ? "BS 7671 table 54.7" : k_table_source + out.line_k->source + ", " + out.k->source;
  const std::string sum =
      fmt::format("{} mm2 {} line: {} mm2 needed ({})", plain(*in.line_mm2),
                  to_string(in.line_material), needed_text(*out.table_required_mm2), factor);
  if (!in.armour) {
    out.table.says = sum + "; the area of the armour is not known";
    return;
  }
  out.table.verdict = compare(*in.armour, *out.table_required_mm2);
  out.table.says = fmt::format("{}; {} mm2 {}", sum, area_text(in), relation(out.table.verdict));
}

void find_capacity(const EarthInput& in, EarthResult& out) {
  if (!in.armour || !out.k) return;
  if (in.fault.time_s && within(*in.fault.time_s, k_shortest_time_s, k_longest_time_s)) {
    out.withstand_s = *in.fault.time_s;
  }
  const double least_mm2 = in.armour->area_mm2 * (1.0 - in.armour->error_ratio);
  out.least_mm2 = least_mm2;
  out.withstand_ka = withstand_ka(least_mm2, out.k->k, out.withstand_s);
  const auto current = current_ka(in.fault);
  if (!current) return;
  const double time_s = longest_time_s(least_mm2, out.k->k, *current);
  if (at_least(time_s, k_shortest_time_s)) out.longest_s = std::min(k_longest_time_s, time_s);
}

/// Resistance [ohm] of the line conductor at the temperature that its k starts from; nothing where
/// size, metal or insulation are not those of the table.
std::optional<double> line_ohm(const EarthInput& in, const tables::Standards& standards,
                               const EarthResult& out) {
  const bool known =
      in.line_mm2 && out.line_k && out.line_k->start_degc && in.line_material == Material::copper;
  if (!known) return std::nullopt;
  const tables::Table& table = standards.table("conductors");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (std::abs(table.number(i, "csa_mm2") - *in.line_mm2) > 1e-9) continue;
    const double cold = table.number(i, "r20_ohm_per_km") * *in.length_m / k_m_per_km;
    return at_temperature(cold, metal(standards, Material::copper), *out.line_k->start_degc);
  }
  return std::nullopt;
}

/// What the armour, and the line with it, are in a loop.
void find_path(const EarthInput& in, const tables::Standards& standards, double hot_degc,
               EarthResult& out) {
  const double hot = *out.resistance_hot_ohm;
  const auto line = line_ohm(in, standards, out);
  if (line) {
    out.path_ohm = loop_impedance_ohm(*line, hot, *in.length_m, standards);
    out.resistance.says +=
        fmt::format("; line at {} degC and armour at {} degC, |R1 + 1.1 R2 + jX|: {} ohm at most",
                    plain(*out.line_k->start_degc), plain(hot_degc), ohm_text(*out.path_ohm));
  }
  if (line || in.fault.loop_ohm) out.resistance.source += "; " + std::string(k_loop_source);
  if (!in.fault.loop_ohm) return;
  const double armour = loop_impedance_ohm(0.0, hot, *in.length_m, standards);
  out.loop_share = armour / *in.fault.loop_ohm;
  out.resistance.says +=
      fmt::format("; of the loop of {} ohm the armour is at most {} %",
                  plain(*in.fault.loop_ohm, 4), fixed(round_up(*out.loop_share * 100.0, 1.0), 0));
  const double least = k_least_of_largest * *out.resistance_ohm / (1.0 + in.armour->error_ratio);
  if (!at_least(*in.fault.loop_ohm, least)) {
    out.resistance.verdict = Verdict::not_known;
    out.resistance.says += ", which cannot be: look again at length, area and loop";
  }
}

void find_resistance(const EarthInput& in, const tables::Standards& standards, EarthResult& out) {
  out.resistance.source = k_resistance_source;
  if (!in.armour || !in.length_m) {
    out.resistance.says =
        !in.armour ? "the area of the armour is not known" : "the length of the cable is not given";
    return;
  }
  const Metal constants = metal(standards, in.armour_material);
  const LargestResistance largest = largest_resistance({.area_mm2 = in.armour->area_mm2,
                                                        .material = in.armour_material,
                                                        .wire_mm = in.armour->wire_mm,
                                                        .lay_ratio = in.lay_ratio},
                                                       standards);
  out.resistance_ohm = largest.ohm_per_km * *in.length_m / k_m_per_km;
  out.resistance.verdict = Verdict::fits;
  out.resistance.says = fmt::format(
      "at most {} ohm mm x {} x {} m / ({} mm2 x {}) = {} ohm at 20 degC",
      plain(constants.resistivity_ohm_mm, 9), plain(largest.lay_ratio, 4), plain(*in.length_m),
      area_text(in), fixed(largest.thin_ratio, 3), ohm_text(*out.resistance_ohm));
  const auto hot_degc = in.hot_degc ? in.hot_degc : out.k ? out.k->start_degc : std::nullopt;
  if (!hot_degc) {
    out.resistance.says += "; warm it is more: the temperature in service is not known";
    return;
  }
  out.resistance_hot_ohm = at_temperature(*out.resistance_ohm, constants, *hot_degc);
  out.resistance.says +=
      fmt::format(", {} ohm at {} degC", ohm_text(*out.resistance_hot_ohm), plain(*hot_degc));
  find_path(in, standards, *hot_degc, out);
}

Verdict armour_verdict(const EarthInput& in, const EarthResult& out) {
  if (is_asked(in.fault)) return out.adiabatic.verdict;
  return out.table.verdict == Verdict::fits ? Verdict::fits : Verdict::not_known;
}

}  // namespace

Finding judge_armour(const EarthInput& in, const tables::Standards& standards) {
  EarthResult out;
  find_armour_k(in, standards, out);
  check_adiabatic(in, standards, out);
  return out.adiabatic;
}

EarthResult check_armour_earth(const EarthInput& in, const tables::Standards& standards) {
  check_input(in);
  EarthResult out;
  if (in.armour) {
    out.area_mm2 = in.armour->area_mm2;
    out.area = {Verdict::fits, fmt::format("{} mm2: {}", area_text(in), in.armour->origin),
                in.armour->origin};
  } else {
    out.area.says = "the area of the armour is not known: count its wires or give it";
  }
  find_armour_k(in, standards, out);
  find_line_k(in, standards, out);
  check_adiabatic(in, standards, out);
  check_table(in, standards, out);
  const GlandRating rating = judge_gland_rating(in.gland_ka, in.fault);
  out.gland = rating.finding;
  find_capacity(in, out);
  find_resistance(in, standards, out);
  out.armour = armour_verdict(in, out);
  return out;
}

}  // namespace cutback::earth
