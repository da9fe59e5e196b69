#include "cutback/earth/device.hpp"

#include <catch2/catch.hpp>

#include "cutback/fit/fit.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using earth::Device;

TEST_CASE("device: type and rating of a breaker", "[unit][earth]") {
  CHECK(earth::parse_device("C32") == Device{'C', 32.0});
  CHECK(earth::parse_device("b 16 A") == Device{'B', 16.0});
  CHECK(earth::parse_device("D0.5") == Device{'D', 0.5});
  CHECK(earth::to_text(Device{'C', 32.0}) == "C32");
  for (const char* text :
       {"", "C", "32", "K32", "A16", "C0", "C126", "C-6", "CC6", "BS 88", "C32A32"}) {
    INFO(text);
    CHECK_FALSE(earth::parse_device(text));
  }
}

TEST_CASE("device: it says which time to look up", "[unit][earth]") {
  const auto says = [](const char* device, double ka) {
    return earth::device_says(*earth::parse_device(device), ka, test::standards());
  };
  CHECK_THAT(says("C32", 0.46), Contains("from 320 A") && Contains("at 460 A so it should"));
  CHECK_THAT(says("C32", 0.32), Contains("so it should"));  // the limit belongs to it
  CHECK_THAT(says("C32", 0.2), Contains("may or may not"));
  CHECK_THAT(says("C32", 0.16), Contains("it does not"));
  CHECK_THAT(says("C32", 0.46), Contains("from memory"));
}

TEST_CASE("device: a curve from memory decides no pass", "[unit][earth]") {
  gland::Gland gland = test::small_gland();
  gland.fault_ka = 10.0;
  job::JobInput in = test::small_cable();
  in.current_ka = 0.46;
  in.device = "C32";
  const auto by_device = test::checked(in, gland);
  const fit::Check* check = by_device.find(fit::CheckName::fault);
  REQUIRE(check != nullptr);
  CHECK(check->verdict == Verdict::not_known);
  CHECK_THAT(check->says, Contains("a breaker C32 trips at once"));
  in.time_s = 0.1;  // which the user has looked up
  CHECK(test::checked(in, gland).find(fit::CheckName::fault)->verdict == Verdict::fits);
  in.time_s.reset();
  in.current_ka.reset();  // a device alone asks for the rest
  CHECK(test::checked(in, gland).find(fit::CheckName::fault)->verdict == Verdict::not_known);
}

TEST_CASE("device: a time that it cannot meet is not known", "[unit][earth]") {
  gland::Gland gland = test::small_gland();
  gland.fault_ka = 10.0;
  job::JobInput in = test::small_cable();
  in.loop_ohm = 3.0;
  in.u0_v = 230.0;  // 77 A, less than the 320 A from which a C32 trips at once
  in.time_s = 0.1;
  const auto verdict = [&] {
    return test::checked(in, gland).find(fit::CheckName::fault)->verdict;
  };
  CHECK(verdict() == Verdict::fits);
  in.device = "C32";
  CHECK(verdict() == Verdict::not_known);
  const auto fit = test::checked(in, gland);
  CHECK_THAT(fit.find(fit::CheckName::fault)->says,
             Contains("a breaker C32") && Contains("77 A") && Contains("its own curve"));
  in.time_s = 5.0;  // by the standard its heat may take longer
  CHECK(verdict() == Verdict::not_known);
  in.loop_ohm = 7.0;  // 33 A: it need not trip at all
  CHECK_THAT(test::checked(in, gland).find(fit::CheckName::fault)->says,
             Contains("33 A") && Contains("need not trip at all"));
  CHECK(verdict() == Verdict::not_known);
  in.time_s = 0.1;
  in.loop_ohm = 0.7;  // 329 A
  CHECK(verdict() == Verdict::fits);
  in.loop_ohm = 0.72;  // 319 A
  CHECK(verdict() == Verdict::not_known);
}
