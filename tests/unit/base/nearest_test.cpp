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
  // Nobody asks for nothing by a slip.
  const std::vector<std::string_view> kinds = {"none", "bone-dry"};
  CHECK(did_you_mean("one", kinds).empty());
  CHECK(did_you_mean("nonee", kinds).empty());
  // Nor for less than was meant: of words that grade it the case alone is a slip.
  const std::vector<std::string_view> levels = {"Ga", "Gb", "Gc"};
  CHECK(did_you_mean("Gd", levels, true).empty());
  CHECK(did_you_mean("GB", levels, true) == "did you mean \"Gb\"?");
  CHECK(did_you_mean("beding_mm", words) == "did you mean \"bedding_mm\"?");
}

TEST_CASE("Nearest: the first of the nearest stays, whatever comes after it", "[unit][nearest]") {
  Nearest nearest("P-20");
  CHECK(nearest.best().empty());
  nearest.offer("Q-31");
  CHECK(nearest.best().empty());
  nearest.offer("P-10");
  nearest.offer("P-2");
  CHECK(nearest.best() == "P-10");
  nearest.offer("p-20");  // only the case differs
  nearest.offer("P-10");
  CHECK(nearest.best() == "p-20");
}

TEST_CASE("Nearest: what is too long to be a slip has none", "[unit][nearest]") {
  const std::string longest(64, 'a');
  Nearest within(longest);
  within.offer(longest + "b");
  CHECK(within.best() == longest + "b");
  Nearest beyond(longest + "a");
  beyond.offer(longest + "a");
  CHECK(beyond.best().empty());
}
TEST_CASE("did_you_mean: names that begin with what was given", "[unit][base]") {
  const std::vector<std::string_view> parts{"ARM-13-M16", "ARM-13-M20", "ARM-16-M20", "none"};
  CHECK(did_you_mean("ARM-13", parts) == "did you mean \"ARM-13-M16\" or \"ARM-13-M20\"?");
  CHECK(did_you_mean("arm-1", parts) ==
        "did you mean \"ARM-13-M16\" or \"ARM-13-M20\" or \"ARM-16-M20\"?");
  CHECK(did_you_mean("A", parts).empty());
  CHECK(did_you_mean("ARM-13", parts, true).empty());
}

TEST_CASE("did you mean: never the opposite", "[unit][base]") {
  constexpr std::array<std::string_view, 2> k_hole{"threaded", "clearance"};
  CHECK(did_you_mean("unthreaded", k_hole).empty());
  CHECK(did_you_mean("Not threaded", k_hole).empty());
  CHECK(did_you_mean("thraeded", k_hole) == "did you mean \"threaded\"?");
}
