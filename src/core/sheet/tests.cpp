#include <fmt/format.h>

#include <cmath>

#include "core/sheet/steps.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::sheet::detail {
namespace {

/// The armour's largest resistance; what is missing for it where it is not known.
Test armour_test(const job::Job& job, const tables::Standards& standards) {
  Test test{.name = "armour, end to end", .unit = "ohm"};
  const earth::EarthResult earth =
      earth::check_armour_earth(job::armour_earth_input(job, standards), standards);
  test.source = earth.resistance.source;
  if (!earth.resistance_ohm) {
    test.says = "no figure: " + earth.resistance.says;
    return test;
  }
  test.most = round_up(*earth.resistance_ohm, 0.0001);
  test.says = fmt::format("at most {} ohm at 20 degC ({} m)", fixed(*test.most, 4),
                          plain(*job.cable.length_m));
  return test;
}

/// By the nominal voltage between lines, which the voltage to earth gives.
Test insulation_test(const job::Job& job, const tables::Standards& standards) {
  const tables::Table& table = standards.table("insulation_resistance");
  Test test{.name = "insulation", .unit = "Mohm"};
  test.source = table.source() + " (" + std::string(to_string(table.status)) + ")";
  const auto row_says = [&](std::size_t row) {
    return fmt::format("at least {} Mohm at {} V d.c.", fixed(table.number(row, "least_mohm"), 1),
                       plain(table.number(row, "test_v")));
  };
  if (!job.fault.u0_v) {
    test.least = table.number(0, "least_mohm");
    test.says =
        fmt::format("{}; over {} V nominal {} V d.c.", row_says(0),
                    plain(table.number(0, "nominal_max_v")), plain(table.number(1, "test_v")));
    return test;
  }
  const double nominal_v = *job.fault.u0_v * std::sqrt(3.0);
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    if (!at_most(nominal_v, table.number(row, "nominal_max_v"))) continue;
    test.least = table.number(row, "least_mohm");
    test.says = row_says(row);
    return test;
  }
  test.says = "no figure for so high a voltage: ask the cable's maker";
  return test;
}

}  // namespace

std::vector<Test> tests_of(const job::Job& job, const fit::GlandFit& fit,
                           const tables::Standards& standards) {
  std::vector<Test> tests;
  if (job.cable.armour == cable::ArmourKind::none) {
    tests.push_back({.name = "cores, end to end", .says = "every core", .unit = "ohm"});
  } else {
    tests.push_back(armour_test(job, standards));
  }
  tests.push_back(insulation_test(job, standards));
  const fit::Check* const bend = fit.find(fit::CheckName::bend);
  if (bend == nullptr || !bend->value) return tests;
  Test radius{.name = "bend outside the gland", .unit = "mm"};
  radius.least = round_up(*bend->value, 1.0);
  radius.says = fmt::format("inside radius at least {} mm", plain(*radius.least));
  Test support{.name = "first support", .unit = "mm"};
  support.most = standards.table("first_support").number(0, "distance_mm");
  support.says = fmt::format("at most {} mm from the gland", plain(*support.most));
  tests.push_back(std::move(radius));
  tests.push_back(std::move(support));
  return tests;
}

}  // namespace cutback::sheet::detail
