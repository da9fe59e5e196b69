#include "cutback/io/accessory_list.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using Catch::Contains;

namespace {

std::string faults_of(std::string_view text) {
  try {
    (void)io::read_accessory_list(text, "a.csv");
  } catch (const InputError& error) {
    std::string all;
    for (const Fault& fault : error.faults()) all += to_line(fault) + "\n";
    return all;
  }
  return {};
}

}  // namespace

TEST_CASE("accessory list: names, threads and figures", "[unit][accessories]") {
  const auto list = io::read_accessory_list(
      "name,thread,part,price,stock,pack,min_order\n"
      "Locknut,M20x1.5,LN-20,0.125,30,50,\n"
      "washer,,,0.2,,,\n"
      "\n"
      "adaptor,M25x1.5 to M20x1.5,AD-1,4,0,,2\n",
      "a.csv");
  REQUIRE(list.size() == 3);
  CHECK(list[0].name == "locknut");
  CHECK(list[0].thread == entry::to_text(*entry::parse_thread("M20")));
  CHECK(list[0].part == "LN-20");
  CHECK(list[0].price == 0.125);
  CHECK(list[0].stock == 30U);
  CHECK(list[0].pack == 50U);
  CHECK_FALSE(list[0].min_order);
  CHECK(list[1].name == "sealing washer");
  CHECK(list[1].thread.empty());
  CHECK(list[2].thread == "M25x1.5 to M20x1.5");
  CHECK(list[2].stock == 0U);
  CHECK(list[2].min_order == 2U);
}

TEST_CASE("accessory list: everything that is wrong is told at once", "[unit][accessories]") {
  CHECK_THAT(faults_of(""), Contains("empty"));
  CHECK_THAT(faults_of("thread,price\nM20,1\n"), Contains("the column name is missing"));
  CHECK_THAT(faults_of("name,prise\nlocknut,1\n"), Contains("did you mean \"price\""));
  const std::string rows = faults_of(
      "name,thread,price,pack\n"
      "locknut,M20,x,1.5\n"
      "locknut,M20,1.1234567,0\n"
      ",M25,1,\n"
      "tag,M20,1,2,3\n");
  for (const char* const said :
       {"line 2, column price", "line 2, column pack", "two rows are for one thing",
        "more than six decimals", "sold in none", "no name", "more cells than headings"}) {
    CHECK_THAT(rows, Contains(said));
  }
}
