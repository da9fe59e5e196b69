#include "cutback/strip/bend.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::strip {
namespace {

using tables::Table;

/// Whether a value lies above the figure in one column and not above the one in the other.
bool in_row(const Table& table, std::size_t row, const char* low, const char* high, double value,
            bool low_is_closed) {
  const double from = table.number(row, low);
  if (low_is_closed ? !at_least(value, from) : at_most(value, from)) return false;
  const auto column = std::find(table.columns.begin(), table.columns.end(), high);
  const auto& cell = table.rows[row][static_cast<std::size_t>(column - table.columns.begin())];
  const double* const to = std::get_if<double>(&cell);
  return to == nullptr || at_most(value, *to);
}

/// The largest factor of the rows that can be meant.
template <class Meant>
double largest_factor(const Table& table, Meant meant) {
  double factor = 0.0;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (meant(i)) factor = std::max(factor, table.number(i, "factor"));
  }
  return factor;
}

bool conductor_meant(const Table& table, std::size_t row, const std::optional<bool>& shaped) {
  return !shaped || (table.text(row, "conductor") == "shaped") == *shaped;
}

double armoured_factor(const BendInput& in, const Table& table) {
  const double exact = largest_factor(table, [&](std::size_t i) {
    return conductor_meant(table, i, in.shaped) &&
           (!in.csa_mm2 || in_row(table, i, "csa_min_mm2", "csa_max_mm2", *in.csa_mm2, true));
  });
  // A size that no row names: the largest of all.
  return exact > 0.0 ? exact : largest_factor(table, [](std::size_t) { return true; });
}

double unarmoured_factor(const BendInput& in, const Table& table) {
  return largest_factor(table, [&](std::size_t i) {
    return conductor_meant(table, i, in.shaped) &&
           in_row(table, i, "od_over_mm", "od_max_mm", in.sheath_od_mm, false);
  });
}

std::string because(const BendInput& in) {
  if (!in.shaped || (in.armoured && !in.csa_mm2)) {
    return "size or shape of the conductors is not known: the larger factor";
  }
  std::string text = in.armoured ? "armoured, " : "unarmoured, ";
  text += *in.shaped ? "shaped or solid conductors" : "circular conductors";
  if (in.csa_mm2) text += " of " + plain(*in.csa_mm2) + " mm2";
  return text;
}

}  // namespace

Bend bend_of(const BendInput& in, const tables::Standards& standards) {
  const Table& table = standards.table(in.armoured ? "bend_radius" : "bend_radius_unarmoured");
  const Table& support = standards.table("first_support");
  const auto cited = [](const Table& one) {
    return one.source() + " (" + std::string(to_string(one.status)) + ")";
  };
  Bend out;
  out.factor = in.armoured ? armoured_factor(in, table) : unarmoured_factor(in, table);
  out.radius_mm = out.factor * in.sheath_od_mm;
  out.support_mm = support.number(0, "distance_mm");
  out.because = because(in);
  out.source = cited(table) + "; " + cited(support);
  return out;
}

std::optional<fit::Check> check_bend(const cable::Cable& cable,
                                     const std::optional<cable::Construction>& construction,
                                     const tables::Standards& standards) {
  if (!cable.sheath_od) return std::nullopt;
  BendInput in{.armoured = cable.armour != cable::ArmourKind::none,
               .sheath_od_mm = cable.sheath_od->value_mm,
               .csa_mm2 = cable.csa_mm2,
               .shaped = std::nullopt};
  if (construction && construction->in.conductor) {
    in.shaped = *construction->in.conductor != cable::Conductor::circular;
  }
  const Bend bend = bend_of(in, standards);
  return fit::Check{
      .name = fit::CheckName::bend,
      .verdict = Verdict::fits,
      .value = bend.radius_mm,
      .says = fmt::format(
          "outside the gland bend it no tighter than {} mm inside radius ({} x {} mm; {}), and "
          "support it within {} mm of the gland",
          plain(round_up(bend.radius_mm, 1.0)), plain(bend.factor), plain(in.sheath_od_mm, 2),
          bend.because, plain(bend.support_mm)),
      .source = bend.source};
}

}  // namespace cutback::strip
