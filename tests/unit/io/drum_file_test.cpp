#include "cutback/io/drum_file.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;

namespace {

std::vector<Fault> faults_of(std::string_view text) {
  try {
    (void)io::read_drums(text, "drums.csv");
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

}  // namespace

TEST_CASE("read_drums: rows of the same drum and place are one place", "[unit][io]") {
  const auto drums = io::read_drums(
      "drum,place,value_mm\n"
      "A,1,14.9\n"
      "A,2,15.0\n"
      "B,1,15.2\n"
      "A, 1 ,15.1\n"
      "\"Drum, the third\",end, 15.3 \n",
      "drums.csv");
  REQUIRE(drums.size() == 3);
  CHECK(drums[0].name == "A");
  REQUIRE(drums[0].places.size() == 2);
  CHECK(drums[0].places[0].readings_mm == std::vector<double>{14.9, 15.1});
  CHECK(drums[1].places[0].readings_mm == std::vector<double>{15.2});
  CHECK(drums[2].name == "Drum, the third");
}

TEST_CASE("read_drums: columns in any order, CRLF and a byte order mark", "[unit][io]") {
  const auto drums =
      io::read_drums("\xEF\xBB\xBFvalue_mm,drum,place\r\n15,A,1\r\n\r\n15.1,A,1\r\n", "drums.csv");
  REQUIRE(drums.size() == 1);
  CHECK(drums[0].places[0].readings_mm == std::vector<double>{15.0, 15.1});
}

TEST_CASE("read_drums: what is wrong with the header", "[unit][io]") {
  CHECK(faults_of("").at(0).code == ErrorCode::bad_syntax);
  CHECK(faults_of("drum,place,value_mm\n").at(0).code == ErrorCode::missing);
  CHECK(faults_of("drum;place;value_mm\nA;1;15\n").size() == 1);
  const auto faults = faults_of("drum,drum,plaice\nA,1,x\n");
  REQUIRE(faults.size() == 4);
  CHECK(faults[0].code == ErrorCode::duplicate);
  CHECK(faults[1].code == ErrorCode::unknown_name);
  CHECK(faults[1].hint == "did you mean \"place\"?");
  CHECK(faults[2].code == ErrorCode::missing);
  CHECK(faults[2].where == "drums.csv, line 1, column place");
  CHECK(faults[3].where == "drums.csv, line 1, column value_mm");
}

TEST_CASE("read_drums: every faulty row is a fault with its line", "[unit][io]") {
  const auto faults = faults_of(
      "drum,place,value_mm\n"
      "A,1,15\n"
      "A,1,15,1\n"
      "A,1\n"
      "A,1,\"15,1\"\n"
      ",,\n"
      "A,1,0\n"
      "A,1,300.5\n"
      "A,1,15mm\n");
  REQUIRE(faults.size() == 9);
  CHECK(faults[0].where == "drums.csv, line 3");
  CHECK(faults[0].hint == "write the decimal mark as a point");
  CHECK(faults[1].where == "drums.csv, line 4");
  CHECK(faults[1].hint.empty());
  CHECK(faults[2].where == "drums.csv, line 5, column value_mm");
  CHECK(faults[2].hint == "write the decimal mark as a point");
  for (std::size_t i = 3; i < 6; ++i) CHECK(faults[i].code == ErrorCode::missing);
  CHECK(faults[6].what == "a reading is not above zero");
  CHECK(faults[7].what == "a cable of more than 300 mm is no cable");
  CHECK(faults[8].code == ErrorCode::bad_number);
}

TEST_CASE("read_drums: a fault of the syntax comes after those before it", "[unit][io]") {
  const auto faults = faults_of("drum,place,value_mm\nA,1,x\nA,1,\"15\n");
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].code == ErrorCode::bad_number);
  CHECK(faults[1].code == ErrorCode::bad_syntax);
}
