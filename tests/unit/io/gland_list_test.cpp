#include "cutback/io/gland_list.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "cutback/error.hpp"
#include "cutback/gland/columns.hpp"

using namespace cutback;
using Catch::Contains;
using gland::Gland;

namespace {

const std::string k_header =
    "part,entry_thread,outer_min_mm,outer_max_mm,armour,armour_min_mm,armour_max_mm";

/// A list of one row with further columns.
std::string list(const std::string& columns = "", const std::string& cells = "") {
  return k_header + columns + "\nA-1,M20,9,16,wire,0.9,1.25" + cells + "\n";
}

Gland one(const std::string& columns = "", const std::string& cells = "") {
  return io::read_gland_list(list(columns, cells), "g.csv").glands.at(0);
}

std::vector<Fault> faults(const std::string& text) {
  try {
    static_cast<void>(io::read_gland_list(text, "g.csv"));
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

/// The one fault of a list, as its line.
std::string fault(const std::string& text) {
  const auto all = faults(text);
  INFO(text);
  REQUIRE(all.size() == 1);
  return to_line(all.front());
}

}  // namespace

TEST_CASE("read_gland_list: required columns alone give the defaults", "[unit][gland_list]") {
  const Gland g = one();
  CHECK(g.part == "A-1");
  CHECK(g.entry_thread == *entry::parse_thread("M20x1.5"));
  CHECK(g.outer.low_mm == 9.0);
  CHECK(g.outer.high_mm == 16.0);
  CHECK_FALSE(g.inner.has_value());
  CHECK(g.armour == cable::ArmourKind::wire);
  CHECK(g.armour_clamp.low_mm == 0.9);
  CHECK(g.armour_clamp.high_mm == 1.25);
  CHECK(g.exposed_plus_mm == 0.5);
  CHECK(g.bedding_past_mm == 5.0);
  CHECK_FALSE(g.sealing.has_value());
  CHECK(sealing_of(g) == gland::Sealing::compression);
  CHECK_FALSE(g.armour_stop_mm.has_value());
  CHECK_FALSE(g.stock.has_value());
  CHECK(g.protection.empty());
}

TEST_CASE("read_gland_list: every column reaches its member", "[unit][gland_list]") {
  const std::string text =
      "part,range,description,entry_thread,entry_length_mm,outer_min_mm,outer_max_mm,inner_min_mm,"
      "inner_max_mm,bore_mm,armour,armour_min_mm,armour_max_mm,exposed_armour_mm,exposed_plus_mm,"
      "armour_stop_mm,bedding_past_mm,bedding_end_mm,sealing,chamber_bore_mm,chamber_length_mm,"
      "max_cores,max_bundle_mm,protection,level,gas_group,dust_group,ip,temp_min_c,temp_max_c,"
      "material,flats_mm,torque_nm,fault_ka,washer_mm,locknut_mm,price,stock\r\n"
      "P,R,\"D, d\",NPT 3/4,15,1,2,3,4,5,braid,0.2,0.7,6,7,8,9,-10,barrier,11,12,13,14,"
      "db  eb nR,Gb Db,IIB+H2,IIIB,66 X8,-20,60,brass,15.5,16,17,18,19,20.25,21\r\n";
  const Gland g = io::read_gland_list(text, "g.csv").glands.at(0);
  CHECK(g.part + g.range + g.description == "PRD, d");
  CHECK(g.entry_thread == *entry::parse_thread("NPT 3/4"));
  CHECK(g.entry_length_mm == 15.0);
  CHECK(g.outer.low_mm == 1.0);
  CHECK(g.outer.high_mm == 2.0);
  REQUIRE(g.inner.has_value());
  CHECK(g.inner->low_mm == 3.0);
  CHECK(g.inner->high_mm == 4.0);
  CHECK(g.bore_mm == 5.0);
  CHECK(g.armour == cable::ArmourKind::braid);
  CHECK(g.armour_clamp.low_mm == 0.2);
  CHECK(g.armour_clamp.high_mm == 0.7);
  CHECK(g.exposed_armour_mm == 6.0);
  CHECK(g.exposed_plus_mm == 7.0);
  CHECK(g.armour_stop_mm == 8.0);
  CHECK(g.bedding_past_mm == 9.0);
  CHECK(g.bedding_end_mm == -10.0);
  CHECK(g.sealing == gland::Sealing::barrier);
  CHECK(g.chamber_bore_mm == 11.0);
  CHECK(g.chamber_length_mm == 12.0);
  CHECK(g.max_cores == 13);
  CHECK(g.max_bundle_mm == 14.0);
  CHECK(g.protection ==
        std::vector{area::Protection::db, area::Protection::eb, area::Protection::nR});
  CHECK(g.level == std::vector{area::Level::Gb, area::Level::Db});
  CHECK(g.gas_group == area::GasMark::IIB_H2);
  CHECK(g.dust_group == area::DustGroup::IIIB);
  CHECK(g.ip == area::parse_ip_codes("66 X8"));
  CHECK(g.temp_min_degc == -20.0);
  CHECK(g.temp_max_degc == 60.0);
  CHECK(g.material == "brass");
  CHECK(g.flats_mm == 15.5);
  CHECK(g.torque_nm == 16.0);
  CHECK(g.fault_ka == 17.0);
  CHECK(g.washer_mm == 18.0);
  CHECK(g.locknut_mm == 19.0);
  CHECK(g.price == 20.25);
  CHECK(g.stock == 21);
}

TEST_CASE("read_gland_list: order of columns and spaces and blank rows do not matter",
          "[unit][gland_list]") {
  const auto read = io::read_gland_list(
      "\xEF\xBB\xBF armour ,part,outer_max_mm,outer_min_mm,entry_thread,inner_min_mm\n"
      "none, A-1 ,16, 9,M20,\n,,,,,\nnone,A-2,16,9,M25,,,,\n",
      "g.csv");
  REQUIRE(read.glands.size() == 2);
  CHECK(read.glands[0].part == "A-1");
  CHECK(read.glands[0].armour == cable::ArmourKind::none);
  CHECK(read.glands[1].outer.low_mm == 9.0);
  CHECK(read.warnings.empty());
  CHECK(read.name == "g.csv");
}

TEST_CASE("read_gland_list: unknown columns are named and ignored", "[unit][gland_list]") {
  const auto read = io::read_gland_list(list(",prise,,colour", ",1,x,red"), "g.csv");
  REQUIRE(read.warnings.size() == 3);
  CHECK(read.warnings[0] ==
        "g.csv: column \"prise\" is not known and is ignored; did you mean \"price\"?");
  CHECK(read.warnings[1] == "g.csv: field 9 has no heading and is ignored");
  CHECK(read.warnings[2] == "g.csv: column \"colour\" is not known and is ignored");
  CHECK_FALSE(read.glands.at(0).price.has_value());
}

TEST_CASE("read_gland_list: a clamp on a gland without armour is a remark", "[unit][gland_list]") {
  const auto read = io::read_gland_list(k_header + "\nA,M20,9,16,none,0.9,\n", "g.csv");
  REQUIRE(read.warnings.size() == 1);
  CHECK_THAT(read.warnings[0], Contains("line 2, column armour_min_mm") && Contains("ignored"));
}

TEST_CASE("read_gland_list: each fault names place and value and what is allowed",
          "[unit][gland_list]") {
  CHECK(fault(list(",price", ",-1")) ==
        "a number outside its limits: g.csv, line 2, column price: given \"-1\", allowed a number "
        "from 0 to 10000000");
  CHECK_THAT(fault(list(",stock", ",2.5")), Contains("not a whole number") && Contains("\"2.5\""));
  CHECK_THAT(fault(list(",stock", ",-2")), Contains("column stock") && Contains("from 0 to"));
  CHECK_THAT(fault(list(",bore_mm", ",\"11,7\"")),
             Contains("not a number") && Contains("point: 11.7"));
  CHECK_THAT(fault(list(",bore_mm", ",11 ells")), Contains("with its unit or without"));
  CHECK_THAT(fault(list(",bore_mm", ",nan")), Contains("not a number"));
  CHECK_THAT(fault(list(",bore_mm", ",300.1")), Contains("from 0.1 to 300 mm"));
  CHECK_THAT(fault(list(",sealing", ",barier")), Contains("did you mean \"barrier\"?") &&
                                                     Contains("one of compression barrier either"));
  CHECK_THAT(fault(list(",protection", ",db xx")), Contains("given \"xx\"") && Contains("nR"));
  CHECK(one(",level", ",GB").level == std::vector{area::Level::Gb});
  CHECK_THAT(fault(list(",level", ",GX")), Contains("Ga Gb Gc"));
  CHECK_THAT(fault(list(",level", ",Gd")), !Contains("did you mean"));
  CHECK_THAT(fault(list(",gas_group", ",IID")), !Contains("did you mean"));
  CHECK_THAT(fault(list(",gas_group", ",IIA IIB")), Contains("IIB+H2"));
  CHECK(area::to_text(one(",ip", ",66 IP68").ip) == "66/68");
  CHECK_THAT(fault(list(",ip", ",76")), Contains("not a degree of protection"));
  CHECK_THAT(fault(list(",x", ",1,2,3")), Contains("more fields") &&
                                              Contains("given \"10 fields\"") &&
                                              Contains("at most 8") && Contains("decimal comma"));
  CHECK_THAT(fault(k_header + "\nA,M999,9,16,none\n"),
             Contains("not a thread") && Contains("PG 13.5"));
  CHECK_THAT(fault(k_header + "\nA,M20,9,16,wyre,0.9,1.25\n"), Contains("did you mean \"wire\"?"));
}

TEST_CASE("read_gland_list: what is missing", "[unit][gland_list]") {
  CHECK_THAT(fault(k_header + "\n,M20,9,16,none\n"), Contains("line 2, column part"));
  CHECK_THAT(fault(k_header + "\nA,M20,9,16,wire,0.9\n"),
             Contains("limits of its clamp") && Contains("armour_max_mm"));
  CHECK_THAT(fault(list(",inner_min_mm", ",9")), Contains("both of its limits"));
  CHECK_THAT(fault(list(",inner_min_mm,inner_max_mm", ",,9")), Contains("column inner_min_mm"));
  CHECK_THAT(fault(k_header + "\n"), Contains("no gland"));
  CHECK_THAT(
      fault("part,entry_thread,Outer_Min,outer_max_mm,armour\nA,M20,9,16,none\nB,M20,9,16,none\n"),
      Contains("required column is missing") && Contains("outer_min_mm") &&
          Contains("\"Outer_Min\" is near"));
  // Armoured rows without clamp columns: one fault a column, not one a row.
  CHECK(faults("part,entry_thread,outer_min_mm,outer_max_mm,armour\nA,M20,9,16,wire\n"
               "B,M20,9,16,wire\n")
            .size() == 2);
}

TEST_CASE("read_gland_list: contradictions and duplicates", "[unit][gland_list]") {
  CHECK_THAT(fault(k_header + "\nA,M20,16,9,none\n"),
             Contains("outer_min_mm and outer_max_mm") && Contains("\"16 and 9\""));
  CHECK(faults(k_header + "\nA,M20,9,9,none\n").empty());
  CHECK_THAT(fault(list(",temp_min_c,temp_max_c", ",60,-20")), Contains("temp_min_c"));
  CHECK_THAT(fault(k_header + "\nA,M20,9,16,none\nB,M20,9,16,none\nA,M25,9,16,none\n"),
             Contains("part is given twice: g.csv, line 4") && Contains("first on line 2"));
  CHECK_THAT(fault(list(",part", ",A-1")), Contains("column is given twice"));
}

TEST_CASE("read_gland_list: everything wrong with a file at once", "[unit][gland_list]") {
  const auto all = faults(
      "part,entry_thread,outer_min_mm,outer_max_mm,armour,price\n"
      "A,M20,x,16,none,-1\nA,Q20,9,,none,1\n\"B,M20,9,16,none,1\n");
  REQUIRE(all.size() == 6);
  CHECK_THAT(to_line(all[0]), Contains("line 2, column outer_min_mm"));
  CHECK_THAT(to_line(all[1]), Contains("line 2, column price"));
  CHECK_THAT(to_line(all[2]), Contains("line 3, column entry_thread"));
  CHECK_THAT(to_line(all[3]), Contains("line 3, column outer_max_mm"));
  CHECK_THAT(to_line(all[4]), Contains("twice"));
  CHECK_THAT(to_line(all[5]), Contains("never closed") && Contains("line 4"));
}

TEST_CASE("read_gland_list: files that are something else", "[unit][gland_list]") {
  CHECK_THAT(fault(""), Contains("empty"));
  CHECK_THAT(fault("\n\n"), Contains("empty"));
  CHECK_THAT(fault(std::string("PK\x03\x04\0\0", 6)), Contains("not a text file"));
  CHECK_THAT(fault("part;entry_thread\nA;M20\n"), Contains("semicolons"));
  CHECK_THAT(fault("part\tentry_thread\nA\tM20\n"), Contains("tabs"));
  CHECK_THAT(fault("part,r\xE9sum\xE9\n"), Contains("not UTF-8"));
  CHECK_THROWS_AS(io::load_gland_list("/no/such/list.csv"), FileError);
}

TEST_CASE("gland columns: names are unique and every message says what is allowed",
          "[unit][gland_list]") {
  std::set<std::string_view> names;
  for (const auto& column : gland::columns()) {
    INFO(column.name);
    CHECK(names.insert(column.name).second);
    CHECK_FALSE(gland::allowed_text(column).empty());
    const bool numeric =
        column.kind == gland::ColumnKind::number || column.kind == gland::ColumnKind::whole;
    CHECK((column.min < column.max) == numeric);
    Gland g;
    if (numeric) {
      gland::put(g, column, column.max);
      CHECK(gland::number_of(g, column) == column.max);
    } else {
      CHECK_THROWS_AS(gland::put(g, column, 1.0), InternalError);
    }
  }
  CHECK(names.size() == 39);
  CHECK_THROWS_AS(gland::column_place("colour"), InternalError);
}

TEST_CASE("gland columns: what is taken away is as in a list without the column",
          "[unit][gland_list]") {
  const std::string all =
      ",entry_length_mm,inner_min_mm,inner_max_mm,bore_mm,exposed_plus_mm,bedding_past_mm,sealing,"
      "max_cores,protection,gas_group,ip,price";
  Gland full = one(all, ",15,8,12,12.5,2,9,barrier,4,db eb,IIB,66 68,3");
  const Gland bare = one();
  for (const auto& column : gland::columns()) {
    if (all.find("," + std::string(column.name)) == std::string::npos) continue;
    INFO(column.name);
    CHECK(gland::text_of(full, column).has_value());
    CHECK(gland::text_of(full, column) != gland::text_of(bare, column));
    gland::take_away(full, column);
    CHECK(gland::text_of(full, column) == gland::text_of(bare, column));
  }
  CHECK_FALSE(full.inner.has_value());
}

TEST_CASE("gland columns: every word is read back as it was written", "[unit][gland_list]") {
  for (const auto& column : gland::columns()) {
    for (const std::string_view word : gland::words_of(column)) {
      Gland g;
      INFO(column.name << " " << word);
      gland::put(g, column, word);
      CHECK(gland::text_of(g, column) == std::string(word));
    }
  }
}
