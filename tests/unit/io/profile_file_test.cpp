#include "cutback/io/profile_file.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;
using namespace cutback::io;

TEST_CASE("profile: every key is written and read again", "[unit][profile]") {
  const std::vector<std::pair<std::string_view, std::string_view>> values{
      {"glands", "stock.csv"},     {"prefer", "stock"},       {"step_mm", "0.01"},
      {"mpe_mm", "0.02"},          {"zero_mm", "-0.05"},      {"rules", "iec-60079-14:2013"},
      {"slack_mm", "40"},          {"adaptor", "M25:M20"},    {"adaptor_mm", "8"},
      {"adaptor_thread_mm", "15"}, {"adaptor_bore_mm", "18"}, {"units", "in"},
      {"compound_pack_cm3", "20"}, {"supplier", "north.csv"}};
  REQUIRE(values.size() == profile_keys().size());
  Profile profile;
  for (const auto& [key, value] : values) set_in_profile(profile, key, value, "here");
  const Profile again = read_profile(write_profile(profile), "profile.json");
  for (const auto& [key, value] : values) CHECK(text_in_profile(again, key) == value);
}

TEST_CASE("profile: a caliper in inches becomes millimetres", "[unit][profile]") {
  Profile profile;
  set_in_profile(profile, "step_mm", "0.001in", "here");
  CHECK(text_in_profile(profile, "step_mm") == "0.0254");
}

TEST_CASE("profile: several gland lists", "[unit][profile]") {
  Profile profile;
  CHECK(lists_of(profile).empty());
  set_in_profile(profile, "glands", "/van/north.csv; /van/south.csv;", "here");
  CHECK(lists_of(profile) == std::vector<std::string>{"/van/north.csv", "/van/south.csv"});
}

TEST_CASE("profile: a value is forgotten", "[unit][profile]") {
  Profile profile;
  for (const std::string_view key : {"glands", "step_mm"}) {
    set_in_profile(profile, key, key == "glands" ? "a.csv" : "0.02", "here");
    set_in_profile(profile, key, "", "here");
    CHECK_FALSE(text_in_profile(profile, key));
  }
  CHECK(write_profile(profile) == "{}\n");
}

TEST_CASE("profile: nothing of one end or of a place is remembered", "[unit][profile]") {
  for (const std::string_view key : {"zone", "ip", "entry", "sheath_od_mm", "armour", "wall_mm"}) {
    Profile profile;
    CHECK_THROWS_AS(set_in_profile(profile, key, "none", "here"), InputError);
  }
  for (const std::string_view key : profile_fields()) {
    CHECK(job::field_named(key).section != "area");
  }
}

TEST_CASE("profile: every fault of a file is named at once", "[unit][profile]") {
  try {
    static_cast<void>(read_profile(
        R"({"gland": "x", "step_mm": "wide", "prefer": "cheap", "units": "furlongs"})", "p"));
    FAIL("it was read");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 4);
  }
  CHECK_THROWS_AS(read_profile("[]", "p"), InputError);
}
