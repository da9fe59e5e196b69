// Every row of the table of trade words, by a case made from the row.
#include "cutback/written/written.hpp"

#include <catch2/catch.hpp>
#include <optional>
#include <set>

#include "cutback/entry/thread.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/measure/reading.hpp"
#include "cutback/number.hpp"

namespace cutback::written {
namespace {

std::optional<Asked> job_asked(std::string_view key) {
  for (const job::Field& field : job::fields()) {
    if (field.key == key) return asked_of(field);
  }
  return std::nullopt;
}

Asked column_asked(std::string_view name) {
  return asked_of(gland::columns()[gland::column_place(name)]);
}

/// Of a field of a job, else of a column of a gland list.
Asked asked_for(std::string_view key) {
  const auto asked = job_asked(key);
  return asked ? *asked : column_asked(key);
}

std::string filled(std::string_view pattern, std::string_view with) {
  std::string text(pattern);
  const std::size_t sign = text.find_first_of("#*");
  if (sign != std::string::npos) text.replace(sign, 1, with);
  return text;
}

/// What may stand for the sign of a pattern.
std::vector<std::string> examples(const Asked& asked, std::string_view pattern) {
  if (pattern.find('*') != std::string_view::npos) return {asked.words.begin(), asked.words.end()};
  if (asked.key == "entry") return {pattern.ends_with("mm") ? "20" : "3/4"};
  if (asked.key == "ip") return {"66"};
  return {"3"};
}

bool is_accepted(const Asked& asked, const std::string& text) {
  for (const job::Field& field : job::fields()) {
    if (field.key != asked.key) continue;
    job::JobInput in;
    return job::set_from_text(in, field, text, "here").empty();
  }
  return parse_number(text).has_value();  // the price, of gland lists alone
}

std::string taken_for(std::string_view key, std::string_view text) {
  return take(asked_for(key), text, "here").text;
}

std::string typed_for(std::string_view key, std::string_view text) {
  return take_typed(asked_for(key), text, "here").text;
}

}  // namespace

TEST_CASE("written: every word is taken for what its row says and said", "[unit][written]") {
  for (const Word& row : words()) {
    const Asked asked = asked_for(row.key);
    for (const std::string& example : examples(asked, row.written)) {
      const std::string text = filled(row.written, example);
      CAPTURE(row.key, text);
      // `zone none` and `ex none` are nothing that anybody writes, but they are read as they say.
      const Taken taken = take(asked, text, "here");
      std::string wanted = filled(row.taken, example);
      CHECK(taken.text == wanted);
      CHECK_FALSE(taken.says.empty());
      CHECK(taken.also == row.also);
      CHECK(is_accepted(asked, taken.text));
      CHECK(take(asked, taken.text, "here").text == taken.text);  // it is read once
      std::string loud;
      for (const char c : text) {
        loud += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
      }
      CHECK(take(asked, loud, "here").text == wanted);
    }
  }
}

TEST_CASE("written: every doubtful word is refused with both readings", "[unit][written]") {
  for (const Doubt& row : doubts()) {
    const Asked asked = asked_for(row.key);
    const std::string text = filled(row.written, "3");
    CAPTURE(row.key, text);
    try {
      static_cast<void>(take(asked, text, "here"));
      FAIL("it was read");
    } catch (const InputError& error) {
      const Fault& fault = error.faults().front();
      CHECK(fault.allowed.find(filled(row.one, "3")) != std::string::npos);
      CHECK(fault.allowed.find(filled(row.other, "3")) != std::string::npos);
    }
  }
}

TEST_CASE("written: a value that no table holds is refused with what to do", "[unit][written]") {
  for (const Unheld& row : unheld()) {
    CAPTURE(row.key, row.written);
    try {
      static_cast<void>(take_typed(asked_for(row.key), row.written, "here"));
      FAIL("it was read");
    } catch (const InputError& error) {
      CHECK(error.faults().front().hint.find("leave it out") == 0);
    }
  }
}

TEST_CASE("written: whole markings", "[unit][written]") {
  const auto marking = read_marking("II 2 GD Ex db eb IIB+H2 T6 Gb");
  REQUIRE(marking);
  CHECK(marking->protection == std::vector<std::string>{"db", "eb"});
  CHECK(marking->gas_group == "IIB+H2");
  CHECK(marking->level == std::vector<std::string>{"Gb"});
  CHECK(read_marking("Ex tb IIIC T85C Db X")->dust_group == "IIIC");
  CHECK_FALSE(read_marking("Ex db IIC IIB"));
  const auto mines = read_marking("Ex db I Mb X");
  REQUIRE(mines);
  CHECK(mines->mines);
  CHECK(mines->conditions);
  CHECK(mines->protection == std::vector<std::string>{"db"});
  CHECK(mines->level == std::vector<std::string>{"Mb"});
  CHECK(mines->gas_group.empty());
  CHECK_FALSE(read_marking("Ex zz IIC"));
  CHECK(typed_for("protection", "Ex eb IIC T6 Gb") == "eb");
  CHECK_THROWS_AS(typed_for("protection", "Ex db eb IIC T6 Gb"), InputError);  // which of the two
  CHECK(typed_for("gas_group", "IIB T4") == "IIB");
  CHECK(typed_for("gas_group", "IIB+H2 T4") == "IIB+H2");
  CHECK(typed_for("zone", "zone 1 IIB+H2 T3") == "1");
  CHECK(typed_for("dust_group", "IIIC T85") == "IIIC");
  CHECK(typed_for("gas_group", "T4") == "T4");  // says nothing of a group
  const Taken zone = take_typed(asked_for("zone"), "Zone 1 IIB T4", "here");
  CHECK(zone.text == "1");
  CHECK(zone.also == "gas_group=IIB");
  CHECK(typed_for("zone", "zone 21 IIIC") == "21");
  CHECK(typed_for("zone", "none IIB") == "none IIB");
}

TEST_CASE("written: what a plate says against the place", "[unit][written]") {
  // IEC 60079-14:2013, 5.3 (levels and zones, Table 1) and 5.4 (groups).
  job::JobInput in;
  const auto faults = [&](const char* plate) {
    return faults_of_plate(plate, "--protection", in).size();
  };
  CHECK(faults("Ex d IIB T4 Gb") == 0);  // of a place that says nothing
  in.zone = area::Zone::zone_1;
  in.gas_group = area::GasGroup::IIC;
  CHECK(faults("Ex d IIB T4 Gb") == 1);
  CHECK(faults("Ex db IIC T6 Gb") == 0);
  CHECK(faults("Ex db IIB+H2 T6 Gb") == 1);
  CHECK(faults("Ex eb IIA T3 Gc") == 2);
  CHECK(faults("II 3 G Ex eb IIC T4") == 1);
  CHECK(faults("II 2G Ex eb IIC T4") == 0);
  CHECK(faults("II 2 GD Ex eb tb IIC IIIC T4 Db") == 0);
  CHECK(faults("Ex e II T4") == 0);  // no group to compare: gas_groups has it from memory
  CHECK(faults("d") == 0);
  CHECK(faults("Ex db I Mb") == 1);
  CHECK(faults("Ex db I Mb / Ex db IIC T6 Gb") == 0);
  in.gas_group = area::GasGroup::IIB;
  CHECK(faults("Ex db IIB+H2 T6 Gb") == 0);
  in.level = area::Level::Gc;  // stated for the place
  CHECK(faults("Ex ec IIC T4 Gc") == 0);
  in = {};
  in.zone = area::Zone::zone_21;
  in.dust_group = area::DustGroup::IIIC;
  CHECK(faults("Ex tb IIIA T80C Dc") == 2);
  CHECK(faults("II 2 D Ex tb IIIC T85C Db") == 0);
}

TEST_CASE("written: the two threads of an adaptor", "[unit][written]") {
  CHECK(taken_for("adaptor", "M16/M20") == "M16:M20");
  CHECK(taken_for("adaptor", "M25 to M20") == "M25:M20");
  CHECK(taken_for("adaptor", "M25 M20") == "M25:M20");
  CHECK(taken_for("adaptor", "M25 x M20; M20:M16:db") == "M25:M20;M20:M16:db");
  CHECK(taken_for("adaptor", "NPT 1/2 to M20") == "NPT 1/2:M20");
  CHECK(taken_for("adaptor", "M25:M20") == "M25:M20");
  CHECK(taken_for("adaptor", "M25") == "M25");
  CHECK(take(asked_for("adaptor"), "M16/M20", "").says.find("either order") != std::string::npos);
}

TEST_CASE("written: every unit becomes the one of its field", "[unit][written]") {
  for (const Unit& row : units()) {
    if (row.unit.empty()) continue;  // no field has figures of it
    std::optional<Asked> asked;
    for (const job::Field& field : job::fields()) {
      if (field.kind == job::FieldKind::number && field.allowed == row.unit) {
        asked = asked_of(field);
      }
    }
    if (!asked && row.unit == "Mohm") {  // of the register of finished ends alone
      asked =
          Asked{.key = "insulation_mohm", .form = Asked::Form::number, .unit = "Mohm", .words = {}};
    }
    if (!asked) asked = column_asked("torque_nm");
    CAPTURE(row.unit, row.written);
    REQUIRE(asked->unit == row.unit);
    for (const char* between : {"", " "}) {
      const Taken taken = take(*asked, "12.5" + (between + std::string(row.written)), "here");
      const auto value = parse_number(taken.text);
      REQUIRE(value);
      CHECK(*value == Approx(12.5 * row.factor + row.shift).margin(1e-9));
      CHECK_FALSE(taken.says.empty());
    }
  }
}

TEST_CASE("written: a unit has one name however it is written", "[unit][written]") {
  for (const auto& [text, name] :
       {std::pair("mm", "mm"), std::pair("sq.mm", "mm2"), std::pair("sq mm", "mm2"),
        std::pair("Inches", "in"), std::pair("km", "km"), std::pair("deg C", "C"),
        std::pair("AWG", "AWG"), std::pair("nos", "count"), std::pair("A", "A"),
        std::pair("furlong", ""), std::pair("", "")}) {
    CAPTURE(text);
    CHECK(unit_named(text) == name);
  }
  CHECK(unit_named("mm", true) == "mm");
  CHECK(unit_named("A", true).empty());  // "Cable A"
}

TEST_CASE("written: no two rows read one text", "[unit][written]") {
  std::set<std::pair<std::string_view, std::string_view>> seen;
  for (const Word& row : words()) CHECK(seen.emplace(row.key, row.written).second);
  for (const Doubt& row : doubts()) CHECK(seen.emplace(row.key, row.written).second);
  std::set<std::pair<std::string_view, std::string_view>> units_seen;
  for (const Unit& row : units()) CHECK(units_seen.emplace(row.unit, row.written).second);
}

TEST_CASE("written: no row takes a word that its field knows for another", "[unit][written]") {
  for (const Word& row : words()) {
    for (const std::string_view word : asked_for(row.key).words) {
      if (row.written == word) CHECK(row.taken == word);
    }
  }
}

TEST_CASE("written: only a plain room is ever taken for none", "[unit][written]") {
  for (const Word& row : words()) {
    if (row.taken == "none") CHECK((row.key == "zone" || row.key == "armour"));
  }
}

TEST_CASE("written: markings as they are stamped", "[unit][written]") {
  CHECK(taken_for("protection", "Ex d") == "d");
  CHECK(taken_for("protection", "exd") == "d");
  CHECK(taken_for("protection", "Ex nR") == "nR");
  CHECK(taken_for("protection", "EEx e") == "e");
  CHECK(taken_for("zone", "Zone 21") == "21");
  CHECK(taken_for("ip", "IP66") == "66");
  CHECK(taken_for("ip", "IP 66/68") == "66/68");
  CHECK(taken_for("ip", "IP66/IP68") == "66/68");
  CHECK(taken_for("ip", "IP69K") == "IP69K");  // no row: refused where the field is set
  CHECK(taken_for("material", "Galvanised Steel") == "galvanised-steel");
  CHECK(taken_for("protection", "Ex x") == "Ex x");
}

TEST_CASE("written: a bare figure is a thread where one kind alone has it", "[unit][written]") {
  CHECK(taken_for("entry", "20") == "M20");
  CHECK(taken_for("entry", "20 mm") == "M20");
  CHECK(taken_for("entry", "3/4") == "NPT 3/4");
  CHECK(taken_for("entry", "1 1/4") == "NPT 1 1/4");
  CHECK(taken_for("entry", "1-1/4") == "NPT 1 1/4");
  CHECK(taken_for("entry", "1/2\"") == "NPT 1/2");
  CHECK(taken_for("entry", "21") == "PG 21");
  CHECK(taken_for("entry", "M20") == "M20");
  CHECK_THROWS_AS(taken_for("entry", "16"), InputError);  // M16 or PG 16
  CHECK(taken_for("entry", "19") == "19");                // no thread has that size
}

TEST_CASE("written: inches in decimals and in fractions", "[unit][written]") {
  CHECK(taken_for("wall_mm", "0.1in") == "2.54");
  CHECK(taken_for("wall_mm", "1/8\"") == "3.175");
  CHECK(taken_for("wall_mm", "1 1/4 in") == "31.75");
  CHECK(taken_for("wall_mm", "1/8mm") == "1/8mm");  // a fraction is of inches alone
  CHECK(taken_for("sheath_od_mm", "15.1mm+15.2mm") == "15.1+15.2");
  CHECK(taken_for("sheath_od_mm", "19/32in") == "19/32in");
  CHECK(taken_for("sheath_od_mm", "0.59\"+0.6\"") == "0.59in+0.6in");
  CHECK(taken_for("sheath_od_mm", "0.59in") == "0.59in");
  for (const char* text : {"19/32in", "0.59\"", "15mm,15.1mm"}) {
    CHECK_FALSE(measure::parse_places(taken_for("sheath_od_mm", text), "--od").empty());
  }
}

TEST_CASE("written: wire gauges by their formula", "[unit][written]") {
  // ASTM B258: 36 is 0.005 in across and 4/0 is 0.46 in, the ends of the series.
  CHECK(awg_area_mm2(36) == Approx(0.0126677).epsilon(1e-5));
  CHECK(awg_area_mm2(-3) == Approx(107.2193).epsilon(1e-6));
  CHECK(taken_for("csa_mm2", "4/0 AWG") == taken_for("csa_mm2", "0000awg"));
  CHECK(parse_number(taken_for("csa_mm2", "12AWG")) == Approx(3.3088).epsilon(1e-4));
  CHECK(parse_number(taken_for("csa_mm2", "250 kcmil")) == Approx(126.677).epsilon(1e-5));
}

TEST_CASE("written: a second field is put in, and never over another", "[unit][written]") {
  const std::vector<Told> told{{"armour_material=aluminium", "--armour", "AWA"}};
  job::JobInput in;
  CHECK(put_told(told, in).empty());
  CHECK(in.armour_material == cable::ArmourMaterial::aluminium);
  in.armour_material = cable::ArmourMaterial::steel;
  CHECK(put_told(told, in).size() == 1);
}

TEST_CASE("written: cells of gland lists", "[unit][written]") {
  const auto cell = [](std::string_view column, std::string_view text) {
    return take(column_asked(column), text, "here").text;
  };
  CHECK(cell("price", "£6.20") == "6.20");
  CHECK(cell("ip", "IP66/68") == "66 68");
  CHECK(cell("protection", "Ex db, eb") == "db eb");
  CHECK(cell("armour", "SWA") == "wire");
  CHECK(cell("material", "Nickel plated brass") == "nickel-plated-brass");
  CHECK(cell("entry_thread", "20mm") == "M20");
  CHECK(cell("outer_min_mm", "11.5 mm") == "11.5");
  CHECK(cell("torque_nm", "25Nm") == "25");
  CHECK(cell("price", "1,200") == "1,200");
}

}  // namespace cutback::written
