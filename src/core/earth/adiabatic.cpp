#include "cutback/earth/adiabatic.hpp"

#include <fmt/format.h>

#include <cmath>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::earth {
namespace {

constexpr double k_amperes_per_ka = 1000.0;

std::string_view describe(Use use) {
  switch (use) {
    case Use::line:
      return "line conductors";
    case Use::separate:
      return "protective conductors outside a cable";
    case Use::core:
      return "protective cores in a cable";
    case Use::armour:
      return "armour";
    case Use::conduit:
      return "conduit";
  }
  return "";
}

bool is_number(const tables::Table& table, std::size_t row, std::string_view column) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c] == column) return std::holds_alternative<double>(table.rows[row][c]);
  }
  return false;
}

/// The row of a use, material and insulation with the highest area_over_mm2 below `area_mm2`.
std::optional<std::size_t> find_row(const tables::Table& table, Use use, Material material,
                                    Insulation insulation, double area_mm2) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (table.text(i, "use") != to_string(use) ||
        table.text(i, "material") != to_string(material) ||
        table.text(i, "insulation") != to_string(insulation) ||
        at_most(area_mm2, table.number(i, "area_over_mm2"))) {
      continue;
    }
    const bool nearer =
        !found || table.number(i, "area_over_mm2") > table.number(*found, "area_over_mm2");
    if (nearer) found = i;
  }
  return found;
}

tables::Status status_of(const std::string& word) {
  return word == "checked" ? tables::Status::checked : tables::Status::derived;
}

}  // namespace

std::optional<Material> parse_material(std::string_view word) {
  for (const Material material :
       {Material::copper, Material::aluminium, Material::steel, Material::lead}) {
    if (word == to_string(material)) return material;
  }
  return std::nullopt;
}

std::optional<Insulation> parse_insulation(std::string_view word) {
  if (word == "epr") return Insulation::xlpe;
  for (const Insulation insulation : {Insulation::pvc, Insulation::pvc90, Insulation::xlpe,
                                      Insulation::rubber60, Insulation::rubber85}) {
    if (word == to_string(insulation)) return insulation;
  }
  return std::nullopt;
}

Metal metal(const tables::Standards& standards, Material material) {
  const tables::Table& table = standards.table("adiabatic_constants");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (table.text(i, "material") == to_string(material)) {
      return {table.number(i, "beta_degc"), table.number(i, "heat_j_per_k_mm3"),
              table.number(i, "resistivity_ohm_mm")};
    }
  }
  throw InternalError("no constants for " + std::string(to_string(material)));
}

double k_from_constants(const Metal& metal, double start_degc, double final_degc) {
  const bool usable = std::isfinite(start_degc) && std::isfinite(final_degc) &&
                      start_degc > -metal.beta_degc && final_degc > start_degc;
  if (!usable) {
    throw InputError(Fault{.code = ErrorCode::out_of_range,
                           .what = "the temperatures of a fault do not rise",
                           .where = "start and final temperature",
                           .given = plain(start_degc) + " and " + plain(final_degc),
                           .allowed = "a final temperature above the start [degC]",
                           .hint = {}});
  }
  const double prefactor =
      metal.heat_j_per_k_mm3 * (metal.beta_degc + 20.0) / metal.resistivity_ohm_mm;
  return std::sqrt(prefactor *
                   std::log((metal.beta_degc + final_degc) / (metal.beta_degc + start_degc)));
}

std::optional<KValue> k_value(const tables::Standards& standards, Use use, Material material,
                              Insulation insulation, double area_mm2) {
  const tables::Table& table = standards.table("k_values");
  const auto row = find_row(table, use, material, insulation, area_mm2);
  if (!row) return std::nullopt;
  const auto degc = [&](const char* column) {
    return is_number(table, *row, column) ? std::optional(table.number(*row, column))
                                          : std::nullopt;
  };
  const auto start_degc = degc("start_degc");
  const auto final_degc = degc("final_degc");
  const auto words = [&](double k) {
    return fmt::format("k {} for {} {} with {} insulation", plain(k), to_string(material),
                       describe(use), to_string(insulation));
  };
  if (is_number(table, *row, "k")) {
    const double k = table.number(*row, "k");
    const tables::Status status = status_of(table.text(*row, "status"));
    const std::string note = status == tables::Status::checked
                                 ? ""
                                 : " (worked out from the constants of IEC 60364-5-54 Annex A)";
    const std::string printed = table.text(*row, "table");
    const bool british = printed.front() >= '0' && printed.front() <= '9';
    return KValue{k,      words(k),   (british ? "BS 7671 table " : "") + printed + note,
                  status, start_degc, final_degc};
  }
  const double start = table.number(*row, "start_degc");
  const double end = table.number(*row, "final_degc");
  const double k = round_down(k_from_constants(metal(standards, material), start, end), 1.0);
  return KValue{k,
                fmt::format("{}, {} to {} degC", words(k), plain(start), plain(end)),
                "IEC 60364-5-54 Annex A, rounded down",
                tables::Status::derived,
                start_degc,
                final_degc};
}

double adiabatic_area_mm2(double energy_a2s, double k) { return std::sqrt(energy_a2s) / k; }

double withstand_ka(double area_mm2, double k, double time_s) {
  return k * area_mm2 / std::sqrt(time_s) / k_amperes_per_ka;
}

double longest_time_s(double area_mm2, double k, double current_ka) {
  const double root = k * area_mm2 / (current_ka * k_amperes_per_ka);
  return root * root;
}

double minimum_by_table_mm2(const tables::Table& minimum, double line_mm2, double k1, double k2) {
  for (std::size_t i = 0; i < minimum.rows.size(); ++i) {
    if (is_number(minimum, i, "line_max_mm2") &&
        !at_most(line_mm2, minimum.number(i, "line_max_mm2"))) {
      continue;
    }
    const double same = is_number(minimum, i, "fixed_mm2")
                            ? minimum.number(i, "fixed_mm2")
                            : line_mm2 * minimum.number(i, "line_ratio");
    return same * k1 / k2;
  }
  throw InternalError("table " + minimum.id + " has no last row without an upper end");
}

}  // namespace cutback::earth
