#include "print/pages/columns.hpp"

#include <catch2/catch.hpp>
#include <vector>

using cutback::print::balanced_height;
using cutback::print::fill_columns;
using cutback::print::Measured;

namespace {

std::vector<std::size_t> filled(const std::vector<Measured>& blocks, double room) {
  return fill_columns(blocks, [&](std::size_t) { return room; });
}

}  // namespace

TEST_CASE("Columns are filled one after another") {
  CHECK(filled({{3}, {3}, {3}, {3}}, 6) == std::vector<std::size_t>{0, 0, 1, 1});
  CHECK(filled({{4}, {3}, {3}, {4}}, 6) == std::vector<std::size_t>{0, 1, 1, 2});
  CHECK(filled({}, 6).empty());
}

TEST_CASE("A heading stays with what follows it") {
  const std::vector<Measured> blocks{{4}, {1, false}, {3}, {1, false}, {1, false}, {2}};
  CHECK(filled(blocks, 6) == std::vector<std::size_t>{0, 1, 1, 2, 2, 2});
}

TEST_CASE("What no column holds stands alone in one") {
  CHECK(filled({{9}, {2}, {9}, {2}}, 6) == std::vector<std::size_t>{0, 1, 2, 3});
  // The first column is short: the group waits for a longer one.
  const std::vector<Measured> blocks{{5}, {1}};
  CHECK(fill_columns(blocks, [](std::size_t column) { return column == 0 ? 3.0 : 6.0; }) ==
        std::vector<std::size_t>{1, 1});
  // So does the second, of the same card.
  CHECK(fill_columns(blocks, [](std::size_t column) { return column < 2 ? 3.0 : 6.0; }) ==
        std::vector<std::size_t>{2, 2});
}

TEST_CASE("Balanced columns are as low as they can be") {
  const std::vector<Measured> blocks{{3}, {3}, {3}, {3}, {2}};
  CHECK(balanced_height(blocks, 2, 20) == Approx(8).margin(0.1));  // 6 and 8, or 9 and 5
  CHECK(balanced_height(blocks, 1, 20) == Approx(14).margin(0.1));
  CHECK(balanced_height(blocks, 2, 7) > 7);  // does not go
  CHECK(balanced_height({}, 2, 7) <= 7);
}
