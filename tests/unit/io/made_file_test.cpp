#include "cutback/io/made_file.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;
using namespace cutback::io;

namespace {

const std::string k_header =
    "tag,end,made_at,by,part,batch,sheath_od_mm,bedding_mm,armour_mm,drum,torque_nm,armour_ohm,"
    "insulation_mohm,test_v,remark\n";

}  // namespace

TEST_CASE("made: rows of a register", "[unit][made]") {
  const MadeFile file = read_made(
      k_header + "A,motor,2026-03-31,JB,ARM,,15.1+15.2,,,,25,,,,\"two, words\"\n", "m.csv");
  REQUIRE(file.rows.size() == 1);
  CHECK(file.rows[0].cell("part") == "ARM");
  CHECK(file.rows[0].cell("remark") == "two, words");
  CHECK(file.warnings.empty());
}

TEST_CASE("made: a row that was not written to its end is left out and said", "[unit][made]") {
  const std::string whole = k_header + "A,motor,,,ARM,,,,,,,,,,\n";
  for (const char* torn : {"B,motor,,,A", "\"B\",\"motor\",\"", "\"B\",\"mo\ntor"}) {
    const MadeFile file = read_made(whole + torn, "m.csv");
    CHECK(file.rows.size() == 1);
    CHECK(file.warnings.size() == 1);
  }
  const MadeFile hand = read_made(whole + "B,motor,,,ARM,,,,,,,,,,by hand", "m.csv");
  CHECK(hand.rows.size() == 2);  // somebody forgot the line end
}

TEST_CASE("made: every fault of a row is named", "[unit][made]") {
  MadeRow row;
  row.set("made_at", "soon");
  row.set("sheath_od_mm", "wide");
  row.set("torque_nm", "-1");
  CHECK(faults_of(row).size() == 5);  // tag and end are missing too
  row = MadeRow();
  row.set("tag", "A");
  row.set("end", "motor");
  row.set("made_at", "2026-03-31T12:00");
  row.set("sheath_od_mm", "15.1+15.2");
  row.set("test_v", "1000");
  row.set("insulation_mohm", ">200");
  CHECK(faults_of(row).empty());
}

TEST_CASE("made: a day is one of the calendar", "[unit][made]") {
  MadeRow row;
  row.set("tag", "A");
  row.set("end", "motor");
  for (const char* day : {"2026-13-45", "2026-02-29", "2026-00-10", "2026-01-00", "28/11/2026"}) {
    INFO(day);
    row.set("made_at", day);
    CHECK(faults_of(row).size() == 1);
  }
  for (const char* day : {"2024-02-29", "2026-12-31", "2026-11-28 07:30"}) {
    INFO(day);
    row.set("made_at", day);
    CHECK(faults_of(row).empty());
  }
}

TEST_CASE("made: figures with their units", "[unit][made]") {
  MadeRow row;
  row.set("torque_nm", "25Nm");
  row.set("insulation_mohm", "1 Gohm");
  row.set("test_v", "0.5kV");
  row.set("sheath_od_mm", "15.1mm+15.2mm");
  row.set("armour_ohm", "0.1");
  CHECK(take_units(row).size() == 4);
  CHECK(row.cell("torque_nm") == "25");
  CHECK(row.cell("insulation_mohm") == "1000");
  CHECK(row.cell("test_v") == "500");
  CHECK(row.cell("sheath_od_mm") == "15.1+15.2");
  CHECK(row.cell("armour_ohm") == "0.1");
  row.set("torque_nm", "strong");
  CHECK(take_units(row).empty());
  CHECK(row.cell("torque_nm") == "strong");
}

TEST_CASE("made: one end under two spellings", "[unit][made]") {
  const MadeFile file = read_made(k_header + "P-201,from,,,ARM,,,,,,,,,,\n", "m.csv");
  const auto named = [](const char* tag, const char* end) {
    MadeRow row;
    row.set("tag", tag);
    row.set("end", end);
    return row;
  };
  CHECK_FALSE(same_end_otherwise(file, named("P-201", "from")));
  CHECK_FALSE(same_end_otherwise(file, named("P-201", "to")));
  CHECK_FALSE(same_end_otherwise(file, named("P-202", "FROM")));
  CHECK_FALSE(same_end_otherwise(file, named("p-201", "FROM")));  // case tells no two apart
  const auto fault = same_end_otherwise(file, named("p 201", "FROM"));
  REQUIRE(fault);
  CHECK(fault->allowed == "P-201, from");
}

TEST_CASE("made: an end has the spelling of its first row", "[unit][made]") {
  const MadeFile file = read_made(k_header +
                                      "C-1,From,,,,,15.1+15.2,,,,,,,,\n"
                                      "c-1,to,,,,,,,,,,,,,\n"
                                      "c-1,FROM,,,ARM,,,,,,,,,,\n",
                                  "m.csv");
  REQUIRE(file.rows.size() == 3);
  for (const MadeRow& row : file.rows) CHECK(row.cell("tag") == "C-1");
  CHECK(file.rows[1].cell("end") == "to");
  CHECK(file.rows[2].cell("end") == "From");
  REQUIRE(file.warnings.size() == 1);
  CHECK(file.warnings[0] ==
        "m.csv: 2 rows name their end in other letters than a row above (line 3: c-1, to for C-1, "
        "to)");
}

TEST_CASE("made: a file of other columns is no register", "[unit][made]") {
  CHECK_THROWS_AS(read_made("tag,from,to\n", "m.csv"), InputError);
  CHECK_THROWS_AS(read_made("part,entry_thread\n", "m.csv"), InputError);
  CHECK(read_made("", "m.csv").rows.empty());
}

TEST_CASE("made: the drums of a register, each end a place, its last row", "[unit][made]") {
  const MadeFile file = read_made(k_header +
                                      "A,motor,,,,,15.1+15.2,,,D7,,,,,\n"
                                      "A,panel,,,,,15.3+15.4,,,D7,,,,,\n"
                                      "B,motor,,,,,20.1+20.2,,,D8,,,,,\n"
                                      "C,motor,,,,,18.1,,,,,,,,no drum\n"
                                      "A,motor,,,ARM,,15.0+15.2,,,D7,,,,,read again\n",
                                  "m.csv");
  const std::vector<measure::Drum> drums = drums_of(file);
  REQUIRE(drums.size() == 2);
  CHECK(drums[0].name == "D7");
  CHECK(measure::to_text(drums[0].places) == "15.3+15.4,15.0+15.2");
  CHECK(drums[1].name == "D8");
  CHECK(drums[1].places.size() == 1);
}
