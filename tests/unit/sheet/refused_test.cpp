// Ends that a competent person refuses or cannot yet decide, each with its twin that may be cut.
#include <catch2/catch.hpp>

#include "cutback/fit/gates.hpp"
#include "cutback/gland/columns.hpp"
#include "support/build_sheet.hpp"

using namespace cutback;
using sheet::State;
using test::whole_end;

namespace {

void put(gland::Gland& gland, const char* column, const char* text) {
  gland::put(gland, gland::columns()[gland::column_place(column)], std::string_view(text));
}

void put(gland::Gland& gland, const char* column, double figure) {
  gland::put(gland, gland::columns()[gland::column_place(column)], figure);
}

job::JobInput tapped_end(double wall_mm) {
  job::JobInput in = whole_end();
  in.hole = entry::Hole::threaded;
  in.wall_mm = wall_mm;
  in.locknut_mm.reset();
  in.chamfer_mm = 0.0;
  return in;
}

/// The place of an enclosure with this type of protection, where everything is told.
void put_gas_place(job::JobInput& in, area::Protection protection, area::Zone zone) {
  in.protection = protection;
  in.zone = zone;
  in.gas_group = area::GasGroup::IIB;
  in.ip = "54";
}

/// A gland that states everything.
gland::Gland whole_gland() {
  gland::Gland gland = test::small_gland();
  put(gland, "protection", "db eb nR tb");
  put(gland, "level", "Gb Db");
  put(gland, "gas_group", "IIC");
  put(gland, "dust_group", "IIIC");
  put(gland, "ip", "66 68");
  put(gland, "temp_min_c", -40.0);
  put(gland, "temp_max_c", 100.0);
  put(gland, "material", "brass");
  return gland;
}

struct Answer {
  State state;
  Verdict verdict;
  std::vector<fit::Lack> lacks;
  [[nodiscard]] bool lacks_key(std::string_view key) const {
    for (const fit::Lack& lack : lacks) {
      if (lack.key == key) return true;
    }
    return false;
  }
};

Answer answer(const job::JobInput& in, const gland::Gland& gland = whole_gland()) {
  const test::MadeSheet made(in, gland);
  return {made.sheet.state, made.sheet.fit->verdict, made.sheet.lacks};
}

}  // namespace

TEST_CASE("refused: the joint serves the least protection of the type too", "[unit][sheet]") {
  job::JobInput dust = tapped_end(12.0);
  dust.washer_mm = 0.0;
  dust.protection = area::Protection::tb;
  dust.zone = area::Zone::zone_21;
  dust.dust_group = area::DustGroup::IIIC;
  dust.ip = "54";
  CHECK(answer(dust).state == State::none);  // IP6X against dust, whatever was typed
  dust.washer_mm = 1.5;
  CHECK(answer(dust).state == State::cut);
  job::JobInput safety = whole_end();
  safety.protection = area::Protection::eb;
  safety.zone = area::Zone::zone_1;
  safety.gas_group = area::GasGroup::IIB;
  safety.ip = "00";
  safety.washer_mm = 0.0;
  CHECK(answer(safety).state == State::none);
  safety.washer_mm = 1.5;
  CHECK(answer(safety).state == State::cut);
}

TEST_CASE("refused: restricted breathing without a washer", "[unit][sheet]") {
  job::JobInput in = tapped_end(12.0);
  put_gas_place(in, area::Protection::nR, area::Zone::zone_2);
  in.washer_mm = 0.0;
  CHECK(answer(in).state == State::none);
}

TEST_CASE("refused: compound in a chamber that does not take the cores", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.csa_mm2 = 4.0;
  in.insulation = cable::Insulation::xlpe;
  in.bedding_mm = "10.6+10.7";
  in.sheath_od_mm = "15.2+15.3";
  gland::Gland barrier = whole_gland();
  put(barrier, "sealing", "barrier");
  put(barrier, "bedding_end_mm", -10.0);
  put(barrier, "max_cores", 2.0);
  CHECK(answer(in, barrier).state == State::none);
  put(barrier, "max_cores", 6.0);
  CHECK(answer(in, barrier).state == State::cut);
  barrier.max_cores.reset();
  CHECK(answer(in, barrier).state == State::not_yet);
}

TEST_CASE("refused: where the bedding ends is a figure that no mark can do without",
          "[unit][sheet]") {
  gland::Gland barrier = whole_gland();
  put(barrier, "sealing", "barrier");
  put(barrier, "max_cores", 6.0);
  CHECK(answer(whole_end(), barrier).state == State::not_yet);
  put(barrier, "bedding_end_mm", -10.0);
  CHECK(answer(whole_end(), barrier).state == State::cut);
}

TEST_CASE("refused: an unarmoured cable that may be a single core in steel", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.armour = cable::ArmourKind::none;
  in.bedding_mm.reset();
  in.armour_mm.reset();
  gland::Gland plain = whole_gland();
  plain.armour = cable::ArmourKind::none;
  plain.inner.reset();
  CHECK(answer(in, plain).state == State::cut);
  in.cores.reset();
  CHECK(answer(in, plain).lacks_key("cores"));
  CHECK(answer(in, plain).state == State::measure);
  in.supply = cable::Supply::dc;
  CHECK(answer(in, plain).state == State::cut);
  in.supply = cable::Supply::ac;
  in.cores = 1;
  CHECK(answer(in, plain).state == State::none);
  in.material = "brass";
  CHECK(answer(in, plain).state == State::cut);
}

TEST_CASE("refused: a hole to suit in a flameproof wall", "[unit][sheet]") {
  job::JobInput in = tapped_end(14.0);
  in.entry = "to-suit";
  put_gas_place(in, area::Protection::d, area::Zone::zone_1);
  CHECK(answer(in).verdict <= Verdict::not_known);
  CHECK(answer(in).state != State::cut);
}

TEST_CASE("refused: heat and cold that cable and gland do not stand", "[unit][sheet]") {
  job::JobInput in = whole_end();
  put_gas_place(in, area::Protection::eb, area::Zone::zone_1);
  CHECK(answer(in).state == State::cut);
  in.cable_max_c = 35;
  CHECK(answer(in).state == State::none);  // the place alone comes to 40 degC
  in.cable_max_c = 60;
  CHECK(answer(in).lacks_key("entry_temp_c"));
  in.cable_max_c = 90;
  CHECK(answer(in).state == State::cut);
  in.cable_max_c.reset();
  in.entry_temp_c = 60;  // what may be taken where nothing is said passes where it is said
  CHECK(answer(in).state == State::cut);
  in.entry_temp_c = 80;
  CHECK(answer(in).state == State::not_yet);
  job::JobInput cold = whole_end();
  cold.ambient_max_c = -50;
  CHECK(answer(cold).state == State::none);
}

TEST_CASE("refused: a chamfer that nobody measured, where it decides", "[unit][sheet]") {
  job::JobInput in = tapped_end(6.0);
  CHECK(answer(in).state == State::cut);
  in.chamfer_mm.reset();
  CHECK(answer(in).lacks_key("chamfer_mm"));
  CHECK(answer(in).state == State::measure);
  in.chamfer_mm = 2.0;
  CHECK(answer(in).state == State::not_yet);
}

TEST_CASE("refused: the gland's own washer takes thread in an adaptor", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.entry = "M25";
  in.locknut_mm = 5.0;
  in.adaptor = "M25:M20";
  in.adaptor_mm = 10.0;
  in.adaptor_thread_mm = 15.0;
  in.adaptor_bore_mm = 16.0;
  in.adaptor_material = "brass";
  gland::Gland gland = whole_gland();
  gland.washer_mm = 1.5;
  gland.entry_length_mm = 9.0;
  CHECK(answer(in, gland).state == State::cut);
  gland.washer_mm = 6.0;
  CHECK(answer(in, gland).state != State::cut);
}

TEST_CASE("refused: an odd wire has a gate of its own", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.sheath_od_mm = "16.0+16.0";
  in.bedding_mm = "10.6+10.7";
  in.armour_mm = "1.05";
  const std::vector<gland::Gland> glands{whole_gland()};
  const job::Job job = test::resolved(in);
  const auto question = fit::ask(job, test::standards(), {.purpose = fit::Purpose::sheet});
  const fit::Gates gates = fit::gates_of(question, glands.front());
  REQUIRE(gates.wire.size() == 1);
  CHECK_FALSE(gates.wire[0].nominal_mm.has_value());
  CHECK(*gates.wire[0].gate.low_mm < 1.05);
  CHECK(*gates.wire[0].gate.high_mm > 1.05);
  CHECK(*gates.wire[0].gate.high_mm < 1.18);  // there the next standard wire begins
}

TEST_CASE("refused: a gland below the level of its enclosure", "[unit][sheet]") {
  job::JobInput in = tapped_end(14.0);
  put_gas_place(in, area::Protection::eb, area::Zone::zone_2);
  gland::Gland gland = whole_gland();
  CHECK(answer(in, gland).state == State::cut);
  gland.protection.clear();
  put(gland, "protection", "ec");
  CHECK(answer(in, gland).state == State::not_yet);
}

TEST_CASE("refused: figures of a list that cannot be", "[unit][sheet]") {
  for (const auto& [column, figure] :
       {std::pair("exposed_armour_mm", 300.0), std::pair("bedding_past_mm", 200.0),
        std::pair("washer_mm", 50.0)}) {
    gland::Gland gland = whole_gland();
    put(gland, column, figure);
    INFO(column);
    job::JobInput in = whole_end();
    in.reach_mm = 600;
    CHECK(answer(in, gland).state == State::not_yet);
  }
}

TEST_CASE("refused: data that cannot all be true", "[unit][sheet]") {
  job::JobInput routes = whole_end();
  routes.reach_mm.reset();
  for (const char* name : {"1", "2", "3", "4"}) {
    routes.core_list.push_back({.core = name, .reach_mm = 100.0});
  }
  CHECK_THROWS_AS(answer(routes), InputError);
  routes.core_list.pop_back();
  CHECK(answer(routes).state == State::cut);
  job::JobInput hole = tapped_end(12.0);
  hole.hole_dia_mm = 20.5;
  CHECK_THROWS_AS(answer(hole), InputError);
}

TEST_CASE("refused: a fact that is missing is not a gland that fails", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.zone = area::Zone::zone_2;
  in.gas_group = area::GasGroup::IIB;
  in.ip = "54";
  CHECK(answer(in).state == State::not_yet);
  CHECK(answer(in).lacks_key("protection"));
  job::JobInput plain = whole_end();
  plain.protection = area::Protection::none;
  plain.ip = "54";
  CHECK(answer(plain).state == State::not_yet);
  CHECK(answer(plain).lacks_key("zone"));
}
