#include "cutback/earth/armour_earth.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::earth {
namespace {

constexpr double k_mm_per_m = 1000.0;
constexpr double k_amperes_per_ka = 1000.0;
constexpr double k_reference_degc = 20.0;
constexpr const char* k_adiabatic_source = "IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3";
constexpr const char* k_table_source = "BS 7671 table 54.7; k1 and k2: ";
constexpr const char* k_resistance_source =
    "resistivity and beta: IEC 60364-5-54 Annex A; lay of the wires: from memory where not given";

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
  need_positive(faults, "loop [ohm]", in.loop_ohm);
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
    const double k = k_from_constants(constants, *in.start_degc, *in.final_degc);
    out.k = KValue{
        k,
        fmt::format("k {} for {} armour, {} to {} degC", fixed(k, 2), to_string(in.armour_material),
                    plain(*in.start_degc), plain(*in.final_degc)),
        "IEC 60364-5-54 Annex A", tables::Status::derived};
  } else if (in.insulation) {
    const double area_mm2 = in.armour ? in.armour->area_mm2 : 1.0;
    out.k = k_value(standards, Use::armour, in.armour_material, *in.insulation, area_mm2);
  }
  if (out.k) {
    out.factor = {Verdict::fits, out.k->says, out.k->source};
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
                        tables::Status::derived};
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

// Rounded to the strict side, so that the printed figures never say more than is true.
std::string area_text(const EarthInput& in) {
  return plain(round_down(in.armour->area_mm2, 0.01), 2);
}
std::string needed_text(double required_mm2) { return fixed(round_up(required_mm2, 0.01), 2); }

struct Energy {
  double a2s;
  std::string words;
};

/// What counts as I^2 t: the current and time, or the let-through energy under 0.1 s; where both
/// hold, the larger.
std::optional<Energy> energy_of(const EarthFault& fault) {
  std::optional<Energy> energy;
  const bool short_time = fault.time_s && !at_least(*fault.time_s, k_shortest_time_s);
  if (fault.current_ka && fault.time_s) {
    const double current_a = *fault.current_ka * k_amperes_per_ka;
    energy = Energy{current_a * current_a * *fault.time_s,
                    fmt::format("sqrt({}^2 x {})", plain(current_a), plain(*fault.time_s))};
  }
  if (fault.let_through_a2s && (short_time || !energy || *fault.let_through_a2s > energy->a2s)) {
    energy = Energy{*fault.let_through_a2s, fmt::format("sqrt({})", plain(*fault.let_through_a2s))};
  }
  return energy;
}

/// Why the equation alone does not decide, or nothing.
std::string outside_the_method(const EarthFault& fault) {
  if (!fault.time_s) return {};
  if (!at_least(*fault.time_s, k_shortest_time_s) && !fault.let_through_a2s) {
    return "under 0.1 s the let-through energy of the device counts: give it";
  }
  if (!at_most(*fault.time_s, k_longest_time_s)) return "the equation is for at most 5 s";
  return {};
}

void check_adiabatic(const EarthInput& in, EarthResult& out) {
  out.adiabatic.source = k_adiabatic_source;
  const auto energy = energy_of(in.fault);
  if (!energy || !out.k) {
    out.adiabatic.says = !energy ? "the fault current and its time are not given"
                                 : "without k the calculation is not possible";
    return;
  }
  out.required_mm2 = adiabatic_area_mm2(energy->a2s, out.k->k);
  const std::string sum = fmt::format("{} / {} = {} mm2 needed", energy->words, plain(out.k->k, 2),
                                      needed_text(*out.required_mm2));
  if (!in.armour) {
    out.adiabatic.says = sum + "; the area of the armour is not known";
    return;
  }
  const Verdict verdict = compare(*in.armour, *out.required_mm2);
  out.adiabatic.says = fmt::format("{}; {} mm2 {}", sum, area_text(in), relation(verdict));
  const std::string limit = outside_the_method(in.fault);
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
  out.withstand_ka = withstand_ka(in.armour->area_mm2, out.k->k, out.withstand_s);
  if (!in.fault.current_ka) return;
  const double time_s = longest_time_s(in.armour->area_mm2, out.k->k, *in.fault.current_ka);
  if (at_least(time_s, k_shortest_time_s)) out.longest_s = std::min(k_longest_time_s, time_s);
}

void find_resistance(const EarthInput& in, const tables::Standards& standards, EarthResult& out) {
  out.resistance.source = k_resistance_source;
  if (!in.armour || !in.length_m) {
    out.resistance.says =
        !in.armour ? "the area of the armour is not known" : "the length of the cable is not given";
    return;
  }
  const Metal constants = metal(standards, in.armour_material);
  const double cold =
      constants.resistivity_ohm_mm * in.lay_ratio * *in.length_m * k_mm_per_m / in.armour->area_mm2;
  const double hot =
      cold * (constants.beta_degc + in.hot_degc) / (constants.beta_degc + k_reference_degc);
  out.resistance_ohm = cold;
  out.resistance_hot_ohm = hot;
  out.resistance.verdict = Verdict::fits;
  out.resistance.says = fmt::format(
      "{} ohm mm x {} x {} m / {} mm2 = {} ohm at 20 degC, {} ohm at {} degC",
      plain(constants.resistivity_ohm_mm, 9), plain(in.lay_ratio, 4), plain(*in.length_m),
      area_text(in), fixed(cold, 4), fixed(hot, 4), plain(in.hot_degc));
  if (!in.loop_ohm) return;
  out.loop_share = hot / *in.loop_ohm;
  out.resistance.says += fmt::format(": {} % of the loop", fixed(*out.loop_share * 100.0, 0));
  if (*out.loop_share > 1.0) {
    out.resistance.verdict = Verdict::not_known;
    out.resistance.says += ", which cannot be: look again at length, area and loop";
  }
}

Verdict armour_verdict(const EarthResult& out) {
  if (out.adiabatic.verdict != Verdict::not_known || out.required_mm2) return out.adiabatic.verdict;
  return out.table.verdict == Verdict::fits ? Verdict::fits : Verdict::not_known;
}

}  // namespace

ArmourArea counted_area(int wires, double wire_mm) {
  if (wires < 1 || !std::isfinite(wire_mm) || wire_mm <= 0.0) {
    throw InputError(Fault{.code = ErrorCode::out_of_range,
                           .what = "no armour",
                           .where = "wires and their diameter",
                           .given = fmt::format("{} of {} mm", wires, plain(wire_mm)),
                           .allowed = "both above 0",
                           .hint = {}});
  }
  return {wires * std::numbers::pi * wire_mm * wire_mm / 4.0,
          fmt::format("{} wires of {} mm", wires, plain(wire_mm)), 0.0};
}

std::optional<ArmourArea> constructed_area(const cable::Construction& construction) {
  if (!construction.armour_area_mm2) return std::nullopt;
  return ArmourArea{*construction.armour_area_mm2,
                    construction.wires
                        ? std::to_string(*construction.wires) + " wires of " +
                              plain(*construction.layers.armour_mm) + " mm, from the construction"
                        : "from the construction",
                    cable::armour_area_error(construction)};
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
  check_adiabatic(in, out);
  check_table(in, standards, out);
  const GlandRating rating = judge_gland_rating(in.gland_ka, in.fault);
  out.gland = rating.finding;
  find_capacity(in, out);
  find_resistance(in, standards, out);
  out.armour = armour_verdict(out);
  return out;
}

}  // namespace cutback::earth
