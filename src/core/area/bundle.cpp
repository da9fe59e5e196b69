#include "cutback/area/bundle.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>
#include <variant>

#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::area {
namespace {

constexpr double k_mm3_per_cm3 = 1000.0;
constexpr const char* k_source =
    "gland's stated limits; best-known circle packings and IEC 60502-1 Annex A";

struct Factors {
  double packing;
  std::optional<double> assembly;
};

std::optional<Factors> factors_of(const tables::Table& table, int cores) {
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (table.number(i, "cores") != cores) continue;
    Factors out{table.number(i, "packing_ratio"), std::nullopt};
    const auto column = std::find(table.columns.begin(), table.columns.end(), "assembly_ratio");
    const auto index = static_cast<std::size_t>(column - table.columns.begin());
    const bool printed = std::holds_alternative<double>(table.rows[i].at(index));
    if (printed) out.assembly = table.number(i, "assembly_ratio");
    return out;
  }
  return std::nullopt;
}

/// Why nothing can be said about the bundle, or nothing.
std::string missing(double limit_mm, const SealingCores& in) {
  if (in.enclosing_mm && at_most(*in.enclosing_mm, limit_mm)) return {};
  if (!in.cores) return "the number of cores is not given";
  if (!in.core_mm) return "the diameter of one core is not given";
  return {};
}

void judge_bundle(SealingBundle& out, const SealingCores& in, const std::optional<Bundle>& bundle) {
  const double limit_mm = *out.limit_mm;
  if (bundle) {
    out.bundle_mm = bundle->laid_mm.value_or(bundle->least_mm);
    out.says =
        fmt::format("{} cores of {} mm make a bundle of {}{} mm", *in.cores, plain(*in.core_mm, 2),
                    bundle->laid_mm ? "" : "at least ", fixed(*out.bundle_mm, 1));
  } else {
    out.says = "the table of bundles ends at 61 cores";
  }
  if (bundle && !at_most(bundle->least_mm, limit_mm)) {
    out.verdict = Verdict::no_fit;
    out.says += fmt::format(", too wide for {} mm however they lie", plain(limit_mm));
  } else if (bundle && bundle->laid_mm && at_most(*bundle->laid_mm, limit_mm)) {
    out.verdict = Verdict::fits;
    out.says += fmt::format(", within {} mm", plain(limit_mm));
  } else if (bundle && bundle->laid_mm) {
    out.verdict = Verdict::marginal_outside;
    out.says += fmt::format(": as laid up over {} mm; tightest packed {} mm", plain(limit_mm),
                            fixed(bundle->least_mm, 1));
  } else {
    out.says += fmt::format("; the limit is {} mm: measure the bundle", plain(limit_mm));
  }
}

}  // namespace

std::optional<Bundle> bundle_of(const tables::Table& factors, int cores, double core_mm) {
  const auto found = factors_of(factors, cores);
  if (!found) return std::nullopt;
  Bundle out{found->packing * core_mm, std::nullopt};
  if (found->assembly) {
    out.laid_mm = std::max(found->packing, *found->assembly) * core_mm;
  } else if (cores == 1) {
    out.laid_mm = core_mm;
  }
  return out;
}

std::optional<double> chamber_limit_mm(const gland::Gland& gland) {
  if (gland.max_bundle_mm && gland.chamber_bore_mm) {
    return std::min(*gland.max_bundle_mm, *gland.chamber_bore_mm);
  }
  return gland.max_bundle_mm ? gland.max_bundle_mm : gland.chamber_bore_mm;
}

SealingBundle check_sealing_bundle(const gland::Gland& gland, const SealingCores& cores,
                                   const tables::Table& factors) {
  SealingBundle out;
  out.source = k_source;
  out.limit_mm = chamber_limit_mm(gland);
  if (cores.cores && gland.max_cores && *cores.cores > *gland.max_cores) {
    out.verdict = Verdict::no_fit;
    out.says = fmt::format("{} cores; the gland takes {} at most", *cores.cores, *gland.max_cores);
    return out;
  }
  if (gland.max_cores && !cores.cores) {
    out.says = "the number of cores is not given";
    return out;
  }
  if (!out.limit_mm && gland.max_cores) {
    out.verdict = Verdict::fits;
    out.says = fmt::format("{} cores; the gland takes {}", *cores.cores, *gland.max_cores);
    return out;
  }
  out.says = out.limit_mm ? missing(*out.limit_mm, cores)
                          : "the gland list states neither max_cores nor the chamber "
                            "(chamber_bore_mm, max_bundle_mm)";
  if (!out.says.empty()) return out;
  if (cores.enclosing_mm && at_most(*cores.enclosing_mm, *out.limit_mm)) {
    out.verdict = Verdict::fits;
    out.bundle_mm = cores.enclosing_mm;
    out.says = fmt::format("the cores lie within {} mm; the gland takes {} mm",
                           plain(*cores.enclosing_mm, 2), plain(*out.limit_mm));
    return out;
  }
  judge_bundle(out, cores, bundle_of(factors, *cores.cores, *cores.core_mm));
  return out;
}

std::optional<Compound> compound_of(const tables::Table& factors, const Chamber& chamber) {
  const auto found = factors_of(factors, chamber.cores);
  if (!found || !at_most(found->packing * chamber.core_mm, chamber.bore_mm)) return std::nullopt;
  const double bore_mm2 = chamber.bore_mm * chamber.bore_mm;
  const double cores_mm2 = chamber.cores * chamber.core_mm * chamber.core_mm;
  const double gap_mm =
      (chamber.bore_mm - found->packing * chamber.core_mm) / (found->packing + 1.0);
  return Compound{
      chamber.length_mm * std::numbers::pi / 4.0 * (bore_mm2 - cores_mm2) / k_mm3_per_cm3,
      cores_mm2 / bore_mm2, std::max(0.0, gap_mm)};
}

}  // namespace cutback::area
