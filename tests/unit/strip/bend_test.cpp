#include "cutback/strip/bend.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;

TEST_CASE("bend_of: says by what the factor was chosen", "[unit][strip]") {
  strip::BendInput in{.armoured = true, .sheath_od_mm = 20.0, .csa_mm2 = 16.0, .shaped = false};
  CHECK(strip::bend_of(in, test::standards()).because == "armoured, circular conductors of 16 mm2");
  in.csa_mm2.reset();
  CHECK(strip::bend_of(in, test::standards()).because ==
        "size or shape of the conductors is not known: the larger factor");
}
