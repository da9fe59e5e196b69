#include "cutback/nearest.hpp"

#include <array>
#include <catch2/catch.hpp>

using namespace cutback;

TEST_CASE("nearest: a slip of the finger is found and another word is not", "[unit][nearest]") {
  constexpr std::array<std::string_view, 3> words{"sheath_od_mm", "bedding_mm", "armour_mm"};
  CHECK(nearest("sheat_od_mm", words) == "sheath_od_mm");
  CHECK(nearest("Armor_mm", words) == "armour_mm");
  CHECK(nearest("voltage", words).empty());
  CHECK(nearest("", words).empty());
  CHECK(did_you_mean("beding_mm", words) == "did you mean \"bedding_mm\"?");
}
