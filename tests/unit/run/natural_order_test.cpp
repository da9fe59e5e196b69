#include "run/natural_order.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

TEST_CASE("Tags are ordered as people read them") {
  const std::vector<std::string> sorted{
      "",     "A",    "P-1",   "P-02",  "P-2",
      "P-2A", "P-10", "P-10B", "P-100", "P-1000000000000000000000",
      "Q-1",  "a"};
  std::vector<std::string> list(sorted.rbegin(), sorted.rend());
  std::sort(list.begin(), list.end(), cutback::run::natural_less);
  CHECK(list == sorted);
  for (const std::string& one : sorted) CHECK_FALSE(cutback::run::natural_less(one, one));
}
