#include "cutback/measure/reading.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;
using namespace cutback::measure;

namespace {

std::vector<Fault> faults_of(std::string_view text) {
  try {
    (void)parse_places(text, "--od");
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

}  // namespace

TEST_CASE("parse_places: plus joins readings and a comma begins the next place",
          "[unit][measure]") {
  CHECK(to_text(parse_places("15", "--od")) == "15");
  CHECK(to_text(parse_places("14.9+15.1", "--od")) == "14.9+15.1");
  const auto places = parse_places(" 14.9 + 15.1 , 15.0+15.2+15.05 ", "--od");
  REQUIRE(places.size() == 2);
  CHECK(places[0].readings_mm == std::vector<double>{14.9, 15.1});
  CHECK(places[1].readings_mm == std::vector<double>{15.0, 15.2, 15.05});
  CHECK(to_text(places) == "14.9+15.1,15.0+15.2+15.05");
}

TEST_CASE("parse_places: inches are 25.4 mm reading by reading", "[unit][measure]") {
  const auto places = parse_places("0.59in+15.1, 0.6 in", "--od");
  REQUIRE(places.size() == 2);
  CHECK(places[0].readings_mm[0] == Approx(14.986).margin(1e-12));
  CHECK(places[0].readings_mm[1] == 15.1);
  CHECK(places[1].readings_mm[0] == Approx(15.24).margin(1e-12));
  CHECK(to_text(parse_places("0.5905in", "--od")) == "14.9987");
}

TEST_CASE("Readings: inches show how finely they were read", "[unit][measure]") {
  const auto scale = [](const char* text) { return Readings(text, "--od").scale_mm; };
  CHECK(scale("0.52in+0.5in") == Approx(0.254));
  CHECK(scale("17/32in") == Approx(25.4 / 32));
  CHECK(scale("1 1/8in+17/16in") == Approx(25.4 / 16));
  CHECK(scale("0.5905in") == Approx(0.00254));
  CHECK(scale("1in") == Approx(25.4 / 8));
  CHECK_FALSE(scale("15.1+15.2").has_value());
  CHECK(scale("0.5in+13.2") == Approx(2.54));  // the one in mm makes the other no finer
  CHECK(parse_places("1 1/4in", "--od").front().readings_mm.front() == Approx(31.75));
  CHECK_FALSE(faults_of("17/0in").empty());
  CHECK_FALSE(faults_of("17/32").empty());
}

TEST_CASE("parse_places: every faulty reading is a fault of its own", "[unit][measure]") {
  struct Row {
    const char* text;
    std::vector<ErrorCode> codes;
  };
  using enum ErrorCode;
  const Row rows[] = {{"", {missing}},
                      {"   ", {missing}},
                      {"15+", {missing}},
                      {"+15", {missing}},
                      {"15,,15", {missing}},
                      {"15,", {missing}},
                      {"+,+", {missing, missing, missing, missing}},
                      {"abc+15mm", {bad_number, bad_number}},
                      {"in", {bad_number}},
                      {"0x10", {bad_number}},
                      {"nan+inf", {bad_number, bad_number}},
                      {"1e400", {bad_number}},
                      {"15 15", {bad_number}},
                      {"0+15", {out_of_range}},
                      {"-15", {out_of_range}},
                      {"300.1", {out_of_range}},
                      {"12in", {out_of_range}},
                      {"x,0,-1+301", {bad_number, out_of_range, out_of_range, out_of_range}}};
  for (const Row& row : rows) {
    INFO(row.text);
    const auto faults = faults_of(row.text);
    REQUIRE(faults.size() == row.codes.size());
    for (std::size_t i = 0; i < faults.size(); ++i) CHECK(faults[i].code == row.codes[i]);
  }
  CHECK(parse_places("300", "--od").size() == 1);
  CHECK(faults_of("15+x")[0].where == "--od, place 1, reading 2");
  CHECK(faults_of("301")[0].what == "a cable of more than 300 mm is no cable");
}

TEST_CASE("parse_places: two readings as many people write them", "[unit][measure]") {
  for (const char* text : {"15x15.2", "15 15.2", "15/15.2", "15 and 15.2", "15 X 15.2"}) {
    INFO(text);
    try {
      static_cast<void>(parse_places(text, "--od"));
      FAIL("it was read");
    } catch (const InputError& error) {
      CHECK(error.faults().front().hint == "write 15+15.2 for two readings at right angles");
    }
  }
}

TEST_CASE("parse_places: a decimal comma is found out", "[unit][measure]") {
  for (const char* text :
       {"15,1", "15,1+15,2", "0,9", "1,25", "15.0+15.2,151", "15,14+15,16", "15,14", "10,15"}) {
    INFO(text);
    const auto faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].what.find("a decimal comma, it seems") == 0);
    CHECK(faults[0].hint.find("write the decimal mark as a point") == 0);
  }
  CHECK(faults_of("15,14+15,16")[0].hint.ends_with(": 15.14+15.16"));
  CHECK(to_text(parse_places("15.0,16.0", "--od")) == "15.0,16.0");  // it can be read again
  // Within one place a typing error is left to the limit on ovality.
  CHECK(parse_places("15+1.5", "--od").size() == 1);
  CHECK(parse_places("10.0,15.0", "--od").size() == 2);
}
