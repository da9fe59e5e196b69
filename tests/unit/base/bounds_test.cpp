#include "cutback/bounds.hpp"

#include <catch2/catch.hpp>

using namespace cutback;

TEST_CASE("FaultList: the first faults, and how many more", "[unit][bounds]") {
  FaultList faults;
  CHECK(faults.is_empty());
  CHECK_NOTHROW(faults.raise("a.csv"));
  const auto count = [&] {
    try {
      faults.raise("a.csv");
    } catch (const InputError& error) {
      return std::pair(error.faults().size(), to_line(error.faults().back()));
    }
    return std::pair(std::size_t{0}, std::string());
  };
  SECTION("as many as are shown") {
    for (std::size_t i = 0; i < bounds::k_faults.most; ++i) faults.add(Fault{.what = "bad"});
    const auto [number, last] = count();
    CHECK(number == bounds::k_faults.most);
    CHECK(last == "bad");
  }
  SECTION("more") {
    for (std::size_t i = 0; i < bounds::k_faults.most + 7; ++i) faults.add(Fault{.what = "bad"});
    const auto [number, last] = count();
    CHECK(number == bounds::k_faults.most + 1);
    CHECK(last == "and 7 more faults of this file: a.csv; mend these first, then look again");
  }
}

TEST_CASE("beyond: says how much is allowed", "[unit][bounds]") {
  CHECK(
      to_line(beyond(bounds::k_cores, "a.json: tails.cores", "70 cores")) ==
      "more cores are listed than a cable has: a.json: tails.cores: given \"70 cores\", allowed at "
      "most 61 cores; list those of this cable");
}
