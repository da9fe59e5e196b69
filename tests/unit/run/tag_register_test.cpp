#include "run/tag_register.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using run::TagRegister;

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

TEST_CASE("row_above: whatever the case of its letters", "[unit][run]") {
  const std::vector<std::string_view> headings{"tag", "from", "to", "sheath_od_mm"};
  const auto layout = schedule::make_layout(headings, {}, "t.csv");
  TagRegister tags;
  std::string room;
  const auto above = [&](std::string_view tag, std::size_t row) {
    const std::vector<std::string_view> cells{tag, "A", "B", "15"};
    return run::row_above(tags, layout, cells, run::name_hash(layout, cells, room), row);
  };
  CHECK_FALSE(above("C1", 2));
  CHECK(above("C1", 3) == 2);
  CHECK(above("c1 ", 4) == 2);
  CHECK_FALSE(above("C2", 5));
  CHECK_FALSE(above("", 6));
  CHECK_FALSE(above("", 7));
}

TEST_CASE("row_above: of nameless ends a cable has two", "[unit][run]") {
  const std::vector<std::string_view> bare{"tag", "sheath_od_mm"};
  const std::vector<std::string_view> named{"tag", "sheath_od_mm", "end"};
  std::string room;
  const auto rows = [&](const std::vector<std::string_view>& headings, const char* end) {
    const auto layout = schedule::make_layout(headings, {}, "t.csv");
    TagRegister tags;
    std::string text;
    for (std::size_t row = 1; row <= 3; ++row) {
      const std::vector<std::string_view> cells{"C1", "15", end};
      const auto above =
          run::row_above(tags, layout, cells, run::name_hash(layout, cells, room), row);
      text += above ? std::to_string(*above) : "-";
    }
    return text;
  };
  CHECK(rows(bare, "") == "--2");
  CHECK(rows(named, "") == "--2");
  CHECK(rows(named, "motor") == "-11");
}
