#include "run/tag_register.hpp"

#include <catch2/catch.hpp>

using cutback::run::TagRegister;

TEST_CASE("TagRegister: the row on which a tag stood before", "[unit][run]") {
  TagRegister tags;
  CHECK_FALSE(tags.put(7, 2));
  CHECK_FALSE(tags.put(7 + 1024, 3));  // the same place in a small table
  CHECK(tags.put(7, 4) == 2);
  CHECK(tags.put(7 + 1024, 5) == 3);
  CHECK(tags.put(7, 6) == 2);
}

TEST_CASE("TagRegister: it grows, and says when it does not any more", "[unit][run]") {
  TagRegister tags;
  constexpr std::size_t k_many = 3'000'000;
  constexpr std::size_t k_kept = 2'000'000;
  for (std::size_t i = 1; i <= k_many; ++i) CHECK_FALSE(tags.put(i * 0x9E3779B97F4A7C15, i));
  CHECK(tags.full());
  for (std::size_t i = 1; i <= k_kept; i += 997) CHECK(tags.put(i * 0x9E3779B97F4A7C15, 1) == i);
}
