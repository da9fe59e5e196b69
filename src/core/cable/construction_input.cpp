#include "core/cable/construction_input.hpp"

#include "core/cable/lookup.hpp"

namespace cutback::cable {
namespace detail {
namespace {

using tables::Standards;
using tables::Table;

constexpr int k_most_cores = 61;                      // last row of IEC 60502-1 Table A.2
constexpr double k_largest_multicore_mm2 = 400.0;     // last row of HD 604 S1/A1 Table 6A
constexpr double k_smallest_3k3_mm2 = 16.0;           // first row of HD 604 S1/A1 Part 3 Table 12
constexpr double k_smallest_shaped_mm2 = 25.0;        // first shaped row of HD 604 S1/A1 Table 6A
constexpr double k_shaped_by_default_3k3_mm2 = 50.0;  // Table 12 has 35 mm2 circular, 70 mm2 shaped
constexpr double k_smallest_rod_mm2 = 50.0;           // solid aluminium: 50 to 300 mm2
constexpr double k_largest_rod_mm2 = 300.0;
constexpr double k_largest_solid_multicore_mm2 = 16.0;
constexpr int k_most_shaped_cores = 4;

class Faults {
 public:
  void add(std::string what, std::string where, std::string given, std::string allowed,
           ErrorCode code = ErrorCode::bad_value) {
    faults_.push_back({.code = code,
                       .what = std::move(what),
                       .where = std::move(where),
                       .given = std::move(given),
                       .allowed = std::move(allowed),
                       .hint = {}});
  }
  [[nodiscard]] bool any() const { return !faults_.empty(); }
  void raise() const {
    if (any()) throw InputError(faults_);
  }

 private:
  std::vector<Fault> faults_;
};

int all_cores(const ConstructionInput& in) { return in.cores + (in.earth_csa_mm2 ? 1 : 0); }

/// Sizes of the table between two limits, as words.
std::string sizes(const Table& table, double from_mm2, double to_mm2) {
  std::string text;
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    const double csa = table.number(r, "csa_mm2");
    if (within(csa, from_mm2, to_mm2)) text += (text.empty() ? "" : ", ") + plain(csa);
  }
  return text;
}

/// Sizes and numbers that must hold whatever the rest is.
void check_sizes(const ConstructionInput& in, const Standards& standards, Faults& faults) {
  const Table& table = standards.table("fictitious_conductors");
  const bool high = in.voltage == Voltage::kv_1_9_3_3;
  const double least = high ? k_smallest_3k3_mm2 : 0.0;
  const bool sectors = in.cores == 1 && !in.earth_csa_mm2 && is_sectoral(standards, in.csa_mm2);
  if (in.cores < 1 || all_cores(in) > k_most_cores) {
    faults.add("number of cores is out of range", "cores", std::to_string(in.cores),
               "1 to " + std::to_string(k_most_cores) + ", an earth core included",
               ErrorCode::out_of_range);
  }
  const double most = in.cores > 1 ? k_largest_multicore_mm2 : 1e9;
  const std::string allowed = sizes(table, least, most) + " mm2";
  if (!sectors && !(row_of(table, "csa_mm2", in.csa_mm2) && within(in.csa_mm2, least, most))) {
    faults.add("no table row for this cross-section", "csa_mm2", plain(in.csa_mm2), allowed);
  }
  if (!in.earth_csa_mm2) return;
  const double earth = *in.earth_csa_mm2;
  if (in.cores < 2) {
    faults.add("an earth core is laid up with two or more cores", "earth_csa_mm2", plain(earth),
               "none for a single core", ErrorCode::contradiction);
  } else if (!row_of(table, "csa_mm2", earth) || !within(earth, least, in.csa_mm2)) {
    faults.add("no table row for an earth core of this size", "earth_csa_mm2", plain(earth),
               sizes(table, least, in.csa_mm2) + " mm2, no larger than the other cores");
  }
}

void check_conductor(const ConstructionInput& in, const Standards& standards, Faults& faults) {
  const int cores = all_cores(in);
  if (*in.conductor == Conductor::shaped) {
    if (cores < 2 || cores > k_most_shaped_cores) {
      faults.add("shaped conductors are made for two to four cores", "conductor", "shaped",
                 "circular for " + std::to_string(cores) + " core" + (cores == 1 ? "" : "s"));
    } else if (!at_least(in.csa_mm2, k_smallest_shaped_mm2)) {
      faults.add("no table row for a shaped conductor of this size", "conductor", "shaped",
                 "circular below " + plain(k_smallest_shaped_mm2) + " mm2");
    }
    return;
  }
  const bool sectors = cores == 1 && is_sectoral(standards, in.csa_mm2);
  if (*in.conductor == Conductor::circular) {
    if (sectors) {
      faults.add("this cross-section is made of four solid sectors only", "conductor", "circular",
                 "solid");
    }
    return;
  }
  if (in.voltage != Voltage::kv_0_6_1) {
    faults.add("no table row for solid conductors at 1.9/3.3 kV", "conductor", "solid",
               "circular or shaped");
  } else if (cores > 1 && !at_most(in.csa_mm2, k_largest_solid_multicore_mm2)) {
    faults.add("no table row for laid-up solid conductors of this size", "conductor", "solid",
               "circular or shaped above " + plain(k_largest_solid_multicore_mm2) + " mm2");
  } else if (cores == 1 && !sectors && !within(in.csa_mm2, k_smallest_rod_mm2, k_largest_rod_mm2)) {
    faults.add(
        "no table row for a solid conductor of this size", "csa_mm2", plain(in.csa_mm2),
        sizes(standards.table("fictitious_conductors"), k_smallest_rod_mm2, k_largest_rod_mm2) +
            ", or four sectors: " + listed(standards.table("sectoral_conductors"), "csa_mm2") +
            " mm2");
  }
  if (sectors && *in.insulation == Insulation::pvc) {
    faults.add("no table row for PVC on four solid sectors", "insulation", "pvc", "xlpe");
  }
}

void check_armour(const ConstructionInput& in, Faults& faults) {
  const std::string given(to_string(in.armour));
  if (in.armour == ArmourKind::braid) {
    faults.add("no published rule gives the layers of a braided cable", "armour", given,
               in.pattern == Pattern::iec ? "wire, tape, strip or none" : "wire");
  } else if (in.pattern == Pattern::british && in.armour != ArmourKind::wire) {
    faults.add("the British-pattern tables have wire armour only", "armour", given,
               "wire, or pattern iec for tape, strip and none");
  }
}

Conductor default_conductor(const ConstructionInput& in, const Standards& standards) {
  if (in.cores == 1) {
    return is_sectoral(standards, in.csa_mm2) ? Conductor::solid : Conductor::circular;
  }
  const double from =
      in.voltage == Voltage::kv_0_6_1 ? k_smallest_shaped_mm2 : k_shaped_by_default_3k3_mm2;
  const bool shaped =
      !in.earth_csa_mm2 && in.cores <= k_most_shaped_cores && at_least(in.csa_mm2, from);
  return shaped ? Conductor::shaped : Conductor::circular;
}

}  // namespace

bool is_sectoral(const Standards& standards, double csa_mm2) {
  return row_of(standards.table("sectoral_conductors"), "csa_mm2", csa_mm2).has_value();
}

ConstructionInput resolve(const ConstructionInput& given, const Standards& standards) {
  ConstructionInput in = given;
  if (!in.insulation) {
    in.insulation = in.voltage == Voltage::kv_0_6_1 ? Insulation::xlpe : Insulation::pvc;
  }
  if (!in.conductor) in.conductor = default_conductor(in, standards);
  Faults faults;
  check_sizes(in, standards, faults);
  check_armour(in, faults);
  // Which conductors there are depends on the size: no second fault for the same slip.
  if (!faults.any()) check_conductor(in, standards, faults);
  faults.raise();
  return in;
}

}  // namespace detail
}  // namespace cutback::cable
