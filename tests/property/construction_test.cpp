// Laws of the construction model.
#include "cutback/cable/construction.hpp"

#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::cable;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

const std::vector<double> k_sizes{1.5, 2.5, 4,   6,   10,  16,  25,  35, 50,
                                  70,  95,  120, 150, 185, 240, 300, 400};

double od(int cores, double csa, Insulation insulation, Pattern pattern,
          std::optional<Conductor> conductor, Voltage voltage = Voltage::kv_0_6_1) {
  return construct({.cores = cores,
                    .csa_mm2 = csa,
                    .insulation = insulation,
                    .voltage = voltage,
                    .conductor = conductor,
                    .pattern = pattern},
                   standards())
      .sheath_od_mm;
}

}  // namespace

TEST_CASE("construction: a larger size is never a smaller cable", "[property][cable]") {
  // Of one form: a shaped conductor makes a smaller cable than a circular one of the size below.
  CHECK(rc::check("csa", [] {
    const int cores = *rc::gen::inRange(1, 62);
    const auto i = *rc::gen::inRange<std::size_t>(0, k_sizes.size() - 1);
    const auto insulation = *rc::gen::element(Insulation::xlpe, Insulation::pvc);
    const auto pattern = *rc::gen::element(Pattern::british, Pattern::iec);
    const double small = od(cores, k_sizes[i], insulation, pattern, Conductor::circular);
    RC_ASSERT(od(cores, k_sizes[i + 1], insulation, pattern, Conductor::circular) > small);
    if (cores >= 2 && cores <= 4 && k_sizes[i] >= 25) {
      RC_ASSERT(od(cores, k_sizes[i + 1], insulation, pattern, Conductor::shaped) >
                od(cores, k_sizes[i], insulation, pattern, Conductor::shaped));
    }
  }));
}

TEST_CASE("construction: one core more is never a smaller cable", "[property][cable]") {
  // From two cores: one core alone has no lay, and its layers are chosen by the core itself.
  CHECK(rc::check("cores", [] {
    const int cores = *rc::gen::inRange(1, 61);
    const double csa = *rc::gen::elementOf(k_sizes);
    const auto pattern = *rc::gen::element(Pattern::british, Pattern::iec);
    RC_ASSERT(od(cores + 1, csa, Insulation::xlpe, pattern, Conductor::circular) >=
              od(cores, csa, Insulation::xlpe, pattern, Conductor::circular) - 1e-9);
    if (cores >= 2 && cores <= 3 && csa >= 25) {
      RC_ASSERT(od(cores + 1, csa, Insulation::xlpe, pattern, Conductor::shaped) >
                od(cores, csa, Insulation::xlpe, pattern, Conductor::shaped));
    }
  }));
}

TEST_CASE("construction: thicker insulation is never a smaller cable", "[property][cable]") {
  CHECK(rc::check("insulation", [] {
    const int cores = *rc::gen::inRange(1, 62);
    const double csa = *rc::gen::elementOf(k_sizes);
    const auto pattern = *rc::gen::element(Pattern::british, Pattern::iec);
    const double xlpe = od(cores, csa, Insulation::xlpe, pattern, Conductor::circular);
    const double pvc = od(cores, csa, Insulation::pvc, pattern, Conductor::circular);
    RC_ASSERT(pvc >= xlpe);
    if (csa >= 16) {
      RC_ASSERT(od(cores, csa, Insulation::pvc, pattern, Conductor::circular,
                   Voltage::kv_1_9_3_3) >= pvc);
    }
  }));
}

TEST_CASE("construction: layers add up and the wires lie round the bedding", "[property][cable]") {
  CHECK(rc::check("sum", [] {
    const int cores = *rc::gen::inRange(1, 62);
    const double csa = *rc::gen::elementOf(k_sizes);
    const auto pattern = *rc::gen::element(Pattern::british, Pattern::iec);
    const Construction cable =
        construct({.cores = cores, .csa_mm2 = csa, .pattern = pattern}, standards());
    const double sum =
        cable.bedding_diameter_mm + 2 * (*cable.layers.armour_mm + cable.layers.oversheath_mm);
    RC_ASSERT(std::abs(sum - cable.sheath_od_mm) < 1e-9);
    RC_ASSERT(cable.bedding_diameter_mm > 0.0);
    RC_ASSERT(*cable.wires > 6);
    RC_ASSERT(!cable.steps.empty());
    RC_ASSERT(!cable.sources.empty());
  }));
}
