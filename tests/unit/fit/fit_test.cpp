#include "cutback/fit/fit.hpp"
#include "cutback/fit/absurd.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cutback/io/files.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using fit::CheckName;
using gland::Gland;

namespace {

Verdict verdict_of(const job::JobInput& in, const Gland& gland, CheckName name) {
  const auto fit = test::checked(in, gland);
  const fit::Check* check = fit.find(name);
  REQUIRE(check != nullptr);
  CHECK_FALSE(check->says.empty());
  CHECK_FALSE(check->source.empty());
  return check->verdict;
}

}  // namespace

TEST_CASE("check_gland: a gland that suits fits with its margin", "[unit][fit]") {
  const auto gland = test::small_gland();
  const auto fit = test::checked(test::small_cable(), gland);
  CHECK(fit.verdict == Verdict::fits);
  CHECK(fit.checks.size() == 9);
  CHECK(*fit.margin_mm == Approx(16.0 - 15.0632575655941));
  CHECK(fit.find(CheckName::outer_seal)->probability == Approx(1.0));
}

TEST_CASE("check_gland: each part of the gland can say no", "[unit][fit]") {
  const auto in = test::small_cable();
  auto gland = test::small_gland();
  gland.outer = {11.0, 14.6};
  CHECK(verdict_of(in, gland, CheckName::outer_seal) == Verdict::no_fit);
  gland = test::small_gland();
  gland.inner = measure::Range{10.5, 12.0};
  CHECK(verdict_of(in, gland, CheckName::inner_seal) == Verdict::no_fit);
  gland = test::small_gland();
  gland.bore_mm = 9.0;
  CHECK(verdict_of(in, gland, CheckName::bore) == Verdict::no_fit);
  gland = test::small_gland();
  gland.armour_clamp = {1.25, 2.0};
  CHECK(verdict_of(in, gland, CheckName::armour) == Verdict::no_fit);
  gland = test::small_gland();
  gland.armour = cable::ArmourKind::none;
  CHECK(verdict_of(in, gland, CheckName::armour) == Verdict::no_fit);
  gland = test::small_gland();
  gland.entry_thread = *entry::parse_thread("M25");
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::no_fit);
}

TEST_CASE("check_gland: margins at a limit", "[unit][fit]") {
  auto gland = test::small_gland();
  gland.outer = {11.0, 15.05};
  CHECK(verdict_of(test::small_cable(), gland, CheckName::outer_seal) == Verdict::marginal_inside);
  gland.outer = {11.0, 14.95};
  CHECK(verdict_of(test::small_cable(), gland, CheckName::outer_seal) == Verdict::marginal_outside);
}

TEST_CASE("check_gland: one uncrossed reading of the sheath is capped and of the wire is not",
          "[unit][fit]") {
  auto in = test::small_cable();
  in.sheath_od_mm = "13.5";
  in.bedding_mm = "9.9+10.1";
  const auto gland = test::small_gland();
  const auto fit = test::checked(in, gland);
  CHECK(fit.find(CheckName::outer_seal)->verdict == Verdict::marginal_inside);
  CHECK_THAT(fit.find(CheckName::outer_seal)->says, Contains("right angles"));
  CHECK(fit.find(CheckName::armour)->verdict == Verdict::fits);
}

TEST_CASE("check_gland: a missing figure is not known", "[unit][fit]") {
  auto in = test::small_cable();
  in.bedding_mm.reset();
  in.armour_mm.reset();
  const auto gland = test::small_gland();
  const auto fit = test::checked(in, gland);
  CHECK(fit.verdict == Verdict::not_known);
  CHECK(fit.find(CheckName::inner_seal)->verdict == Verdict::not_known);
  CHECK(fit.find(CheckName::build_up)->verdict == Verdict::not_known);
  CHECK_THAT(fit.find(CheckName::build_up)->says, Contains("bedding and wire not given"));
}

TEST_CASE("check_gland: a bedding estimated from sheath and wire says measure before cutting",
          "[unit][fit]") {
  auto in = test::small_cable();
  in.bedding_mm.reset();
  const auto gland = test::small_gland();
  const auto fit = test::checked(in, gland);
  const fit::Check* inner = fit.find(CheckName::inner_seal);
  REQUIRE(inner != nullptr);
  CHECK(inner->verdict == Verdict::marginal_inside);
  CHECK_THAT(inner->says, Contains("measure before cutting"));
  CHECK_THAT(inner->says, Contains("an estimate alone passes no gland"));
  CHECK(fit.find(CheckName::build_up)->verdict == Verdict::marginal_inside);
}

TEST_CASE("check_gland: what is given as an estimate passes no gland, the same measured does",
          "[unit][fit]") {
  auto in = test::small_cable();
  const auto gland = test::small_gland();
  CHECK(test::checked(in, gland).verdict == Verdict::fits);
  in.sheath_od_mm = "13.5";
  in.bedding_mm = "9.5";
  in.armour_mm = "0.9";
  in.od_allow_mm = 0.0;
  in.bedding_allow_mm = 0.0;
  in.evidence = measure::Evidence::estimated;
  const auto fit = test::checked(in, gland);
  CHECK(fit.verdict == Verdict::marginal_inside);
  CHECK(fit.find(CheckName::armour)->verdict == Verdict::marginal_inside);
}

TEST_CASE("check_gland: a gland without an inner seal must state its bore", "[unit][fit]") {
  auto gland = test::small_gland();
  gland.inner.reset();
  CHECK(verdict_of(test::small_cable(), gland, CheckName::bore) == Verdict::fits);
  gland.bore_mm.reset();
  CHECK(verdict_of(test::small_cable(), gland, CheckName::bore) == Verdict::not_known);
}

TEST_CASE("check_gland: a figure of the list that cannot be decides nothing", "[unit][fit]") {
  const auto cable = test::small_cable();
  const auto changed = [](auto change) {
    auto gland = test::small_gland();
    change(gland);
    return gland;
  };
  CHECK(verdict_of(cable, changed([](auto& gland) { gland.outer.high_mm = 60.0; }),
                   CheckName::outer_seal) == Verdict::not_known);
  CHECK(verdict_of(cable, changed([](auto& gland) { gland.inner->high_mm = 40.0; }),
                   CheckName::inner_seal) == Verdict::not_known);
  CHECK(verdict_of(cable, changed([](auto& gland) { gland.bore_mm = 7.0; }),
                   CheckName::inner_seal) == Verdict::not_known);
  // The root of an M20x1.5 is 18.16 mm (ISO 68-1).
  CHECK(verdict_of(cable, changed([](auto& gland) { gland.bore_mm = 18.2; }), CheckName::bore) ==
        Verdict::not_known);
  CHECK(verdict_of(cable, changed([](auto& gland) { gland.bore_mm = 18.1; }), CheckName::bore) ==
        Verdict::fits);
  CHECK(verdict_of(cable, changed([](auto& gland) { gland.armour_clamp.high_mm = 9.0; }),
                   CheckName::armour) == Verdict::not_known);
}

TEST_CASE("absurdities: each is named with its part, a sound list has none", "[unit][fit]") {
  auto gland = test::small_gland();
  CHECK(fit::absurdities({&gland, 1}, test::standards()).empty());
  gland.entry_length_mm = 1.5;
  gland.armour_clamp.high_mm = 9.0;
  const auto said = fit::absurdities({&gland, 1}, test::standards());
  REQUIRE(said.size() == 2);
  CHECK_THAT(said[0], Contains("gland TEST-20: armour clamp up to 9 mm"));
  CHECK_THAT(said[1], Contains("entry thread 1.5 mm long"));
}

TEST_CASE("check_gland: a wire is a standard size as far as its reading tells", "[unit][fit]") {
  auto in = test::small_cable();
  const auto gland = test::small_gland();
  in.armour_mm = "0.9";
  CHECK(verdict_of(in, gland, CheckName::armour) == Verdict::fits);
  // A tape measure with steps of 1 mm tells 0.9 from nothing.
  in.step_mm = 1.0;
  in.mpe_mm = 0.5;
  CHECK(verdict_of(in, gland, CheckName::armour) == Verdict::marginal_inside);
  in = test::small_cable();
  in.armour_mm = "0.9+1.2";  // two wires of two sizes are no size
  CHECK(verdict_of(in, gland, CheckName::armour) != Verdict::no_fit);
  in.armour_mm = "0.8";  // IEC 60502-1
  CHECK(verdict_of(in, gland, CheckName::armour) == Verdict::no_fit);
  auto thin = gland;
  thin.armour_clamp.low_mm = 0.8;
  CHECK(verdict_of(in, thin, CheckName::armour) == Verdict::fits);
}

TEST_CASE("check_gland: datasheet figures say measure before cutting", "[unit][fit]") {
  auto in = test::small_cable();
  in.sheath_od_mm = "14";
  in.bedding_mm = "10";
  in.evidence = measure::Evidence::datasheet;
  const auto gland = test::small_gland();
  const auto fit = test::checked(in, gland);
  CHECK(fit.verdict == Verdict::fits);
  CHECK_THAT(fit.find(CheckName::outer_seal)->says, Contains("measure before cutting"));
}

TEST_CASE("check_gland: an odd wire is compared as an interval", "[unit][fit]") {
  auto in = test::small_cable();
  in.armour_mm = "1.00";
  const auto gland = test::small_gland();
  const auto fit = test::checked(in, gland);
  CHECK(fit.find(CheckName::armour)->verdict == Verdict::fits);
  CHECK_THAT(fit.find(CheckName::armour)->says, Contains("look twice"));
  CHECK(*fit.find(CheckName::armour)->margin_mm < 0.1);
}

TEST_CASE("check_gland: one adaptor in either spelling", "[unit][fit]") {
  auto gland = test::small_gland();
  gland.entry_thread = *entry::parse_thread("M25");
  for (const char* adaptor : {"M25:M20", "M20:M25"}) {
    auto in = test::small_cable();
    in.adaptor = adaptor;
    CHECK(test::checked(in, gland).verdict == Verdict::not_known);  // its lengths
    in.adaptor_mm = 10.0;
    in.adaptor_thread_mm = 10.0;
    in.adaptor_bore_mm = 14.0;
    const auto fit = test::checked(in, gland);
    CHECK(fit.verdict == Verdict::fits);
    CHECK(fit.adaptor.has_value());
  }
  auto in = test::small_cable();
  in.adaptor = "M32:M20";
  CHECK(test::checked(in, gland).verdict == Verdict::no_fit);
}

TEST_CASE("check_gland: in a hazardous area the adaptor has a protection of its own",
          "[unit][fit]") {
  auto gland = test::small_gland();
  gland.entry_thread = *entry::parse_thread("M25");
  gland.protection = {area::Protection::eb, area::Protection::db};
  gland.level = {area::Level::Gb};
  gland.gas_group = area::GasMark::IIC;
  gland.ip = *area::parse_ip_codes("66");
  auto in = test::small_cable();
  in.hole = entry::Hole::clearance;
  in.protection = area::Protection::e;
  in.zone = area::Zone::zone_1;
  in.gas_group = area::GasGroup::IIB;
  in.adaptor_bore_mm = 14.0;
  in.adaptor = "M25:M20";
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::not_known);
  in.adaptor = "M25:M20:eb";
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::fits);
  in.adaptor = "M25:M20:tb";
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::no_fit);
}

TEST_CASE("check_gland: the bedding passes the gland's thread and the adaptor", "[unit][fit]") {
  auto gland = test::small_gland();
  CHECK(verdict_of(test::small_cable(), gland, CheckName::entry) == Verdict::fits);
  gland.entry_thread = *entry::parse_thread("M12");  // d3 10.160 mm (ISO 68-1), bedding 10.00
  auto in = test::small_cable();
  in.entry = "M12";
  const auto near = test::checked(in, gland);
  CHECK(near.find(CheckName::entry)->verdict == Verdict::fits);
  CHECK(*near.find(CheckName::entry)->margin_mm == Approx(0.0964).margin(0.0005));
  in.bedding_mm = "10.2+10.4";
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::no_fit);
  in = test::small_cable();
  in.adaptor = "M20:M25";
  gland.entry_thread = *entry::parse_thread("M25");
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::not_known);
  in.adaptor_bore_mm = 10.1;
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::fits);
  in.adaptor_bore_mm = 9.9;
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::no_fit);
}

TEST_CASE("check_gland: where only the cores pass, a wide bedding is no obstacle", "[unit][fit]") {
  auto gland = test::small_gland();
  gland.sealing = gland::Sealing::barrier;
  gland.bore_mm.reset();
  gland.entry_thread = *entry::parse_thread("M12");
  auto in = test::small_cable();
  in.entry = "M12";
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::fits);  // 10.00 within 10.16
  in.bedding_mm = "10.4+10.6";
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::not_known);
  in.cores = 2;
  in.csa_mm2 = 1.5;
  // Two cores of about 2.8 mm.
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::marginal_inside);
  in.cores = 37;
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::no_fit);
  gland.sealing = gland::Sealing::compression;
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::no_fit);
  const auto misses = test::checked(in, gland);
  CHECK(fit::miss_text(*misses.find(CheckName::entry)) == "entry thread 0.4 mm too small");
}

TEST_CASE("check_gland: an either gland is a barrier only where one is demanded", "[unit][fit]") {
  auto gland = test::small_gland();
  gland.sealing = gland::Sealing::either;
  auto in = test::small_cable();
  CHECK_FALSE(test::checked(in, gland).barrier);
  CHECK(test::checked(in, gland).find(CheckName::inner_seal) != nullptr);
  in.protection = area::Protection::d;
  in.zone = area::Zone::zone_1;
  in.gas_group = area::GasGroup::IIC;
  CHECK(test::checked(in, gland).barrier);
  CHECK(test::checked(in, gland).find(CheckName::inner_seal) == nullptr);
  CHECK(test::checked(in, gland).find(CheckName::sealing) != nullptr);
}

TEST_CASE("check_gland: readings that contradict the construction stop a fit", "[unit][fit]") {
  auto in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 4;
  in.insulation = cable::Insulation::xlpe;
  const auto gland = test::small_gland();
  CHECK(test::checked(in, gland).find(CheckName::build_up)->verdict == Verdict::fits);
  in.bedding_mm = "9.3+9.3";  // 1.3 mm off the construction's 10.6 mm, whose error is 1 mm
  CHECK(test::checked(in, gland).find(CheckName::build_up)->verdict == Verdict::marginal_inside);
  in.sheath_od_mm = "15.9+15.9";
  in.bedding_mm = "8.0+8.0";  // 3.05 mm against a nominal 1.4 mm
  const auto fit = test::checked(in, gland);
  CHECK(fit.find(CheckName::build_up)->verdict == Verdict::marginal_inside);
  CHECK_THAT(fit.find(CheckName::build_up)->says, Contains("Repeat: bedding"));
}

TEST_CASE("check_gland: whoever speaks of the joint is asked about all of it", "[unit][fit]") {
  auto in = test::small_cable();
  const auto gland = test::small_gland();
  CHECK(test::checked(in, gland).find(CheckName::thread)->verdict == Verdict::fits);
  in.wall_mm = 12;
  CHECK(test::checked(in, gland).find(CheckName::thread)->verdict == Verdict::no_fit);
  in.wall_mm.reset();
  const auto fit = test::checked(in, gland);
  CHECK(fit.find(CheckName::thread)->verdict == Verdict::not_known);
  CHECK(fit.find(CheckName::thread)->lacks.front().key == "wall_mm");
  in = test::small_cable();
  in.hole.reset();
  in.wall_mm.reset();
  in.washer_mm.reset();
  in.locknut_mm.reset();
  CHECK(test::checked(in, gland).find(CheckName::thread) == nullptr);
}

TEST_CASE("check_gland: a gland that states no fault rating is not known where a fault is given",
          "[unit][fit]") {
  auto in = test::small_cable();
  in.time_s = 1.0;
  auto gland = test::small_gland();
  in.current_ka = 0.5;
  CHECK(verdict_of(in, gland, CheckName::fault) == Verdict::not_known);
  gland.fault_ka = 3.0;
  CHECK(verdict_of(in, gland, CheckName::fault) == Verdict::fits);
  gland.fault_ka = 0.4;
  CHECK(verdict_of(in, gland, CheckName::fault) == Verdict::no_fit);
}

TEST_CASE("check_gland: who speaks of the hole or the area must name the thread", "[unit][fit]") {
  auto in = test::small_cable();
  in.entry.reset();
  const auto gland = test::small_gland();
  CHECK(verdict_of(in, gland, CheckName::entry) == Verdict::not_known);
  in.hole.reset();
  in.wall_mm.reset();
  in.washer_mm.reset();
  in.locknut_mm.reset();
  CHECK(test::checked(in, gland).find(CheckName::entry) == nullptr);
}

TEST_CASE("check_gland: a coarser caliper never makes the build-up fit", "[unit][fit]") {
  auto in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 4;
  in.sheath_od_mm = "15+15";
  in.bedding_mm = "11.48+11.48";  // leaves 0.86 mm, under the least of 0.92 mm
  const auto gland = test::small_gland();
  for (const double error : {0.01, 0.06, 0.2}) {
    in.mpe_mm = error;
    CHECK(verdict_of(in, gland, CheckName::build_up) == Verdict::marginal_inside);
  }
}

TEST_CASE("fit_all: verdict then preference then margin then part code", "[unit][fit]") {
  std::vector<Gland> glands(4, test::small_gland());
  glands[0].part = "B";
  glands[1].part = "A";
  glands[2].part = "CHEAP";
  glands[2].price = 5.0;
  glands[3].part = "CHEAPEST-BUT-NO";
  glands[3].price = 1.0;
  glands[3].outer = {20.0, 25.0};
  const auto job = test::resolved(test::small_cable());
  const auto ranked = fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::price);
  CHECK(ranked[0].gland->part == "CHEAP");
  CHECK(ranked[1].gland->part == "A");
  CHECK(ranked[2].gland->part == "B");
  CHECK(ranked[3].gland->part == "CHEAPEST-BUT-NO");
  glands[0].outer = {10.0, 20.0};
  CHECK(
      fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::margin)[0].gland->part ==
      "B");
  glands[1].stock = 99;
  CHECK(fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::stock)[0].gland->part ==
        "A");
}

TEST_CASE("fit_all: among equals the preferred supplier's gland comes first", "[unit][fit]") {
  std::vector<Gland> glands(3, test::small_gland());
  glands[0].part = "A";
  glands[0].outer = {10.0, 20.0};  // the larger margin
  glands[1].part = "B";
  glands[1].preferred = true;
  glands[2].part = "CHEAP";
  glands[2].price = 9.99;
  const auto job = test::resolved(test::small_cable());
  const fit::Question question = fit::ask(job, test::standards());
  const auto first = [&](fit::Prefer prefer, std::size_t place) {
    return fit::fit_all(question, glands, prefer)[place].gland->part;
  };
  CHECK(first(fit::Prefer::price, 0) == "CHEAP");
  CHECK(first(fit::Prefer::price, 1) == "B");
  CHECK(first(fit::Prefer::stock, 0) == "B");
  CHECK(first(fit::Prefer::margin, 0) == "A");
  for (Gland& gland : glands) gland.price.reset();
  CHECK(first(fit::Prefer::price, 0) == "B");
}

TEST_CASE("fit_all: of glands that are not known the one that lacks least comes first",
          "[unit][fit]") {
  job::JobInput in = test::small_cable();
  in.zone.reset();
  in.protection = area::Protection::eb;
  in.gas_group = area::GasGroup::IIB;
  in.ip = "54";
  const job::Job job = test::resolved(in);
  gland::Gland bare = test::small_gland();
  bare.part = "BARE";
  bare.price = 1.0;
  gland::Gland certified = test::small_gland();
  certified.part = "CERTIFIED";
  certified.price = 9.0;
  certified.protection = {area::Protection::eb};
  certified.gas_group = area::GasMark::IIC;
  certified.ip = *area::parse_ip_codes("66");
  const std::vector<gland::Gland> list{bare, certified};
  const auto ranked = fit::fit_all(fit::ask(job, test::standards()), list, fit::Prefer::price);
  REQUIRE(ranked.front().verdict == Verdict::not_known);
  CHECK(ranked.front().gland->part == "CERTIFIED");
}

TEST_CASE("advise: readings that contradict each other order nothing", "[unit][fit]") {
  job::JobInput in = test::small_cable();
  in.bedding_mm = "12.9+13.1";
  const job::Job job = test::resolved(in);
  REQUIRE(job.cable.contradiction.has_value());
  const fit::Advice advice =
      fit::advise(job, fit::check_gland(fit::ask(job, test::standards()), test::small_gland()));
  CHECK(advice.order_says.empty());
  CHECK(advice.measure_says.find("again") != std::string::npos);
}

TEST_CASE("advise: the nearest gland and by how much it misses", "[unit][fit]") {
  std::vector<Gland> glands(2, test::small_gland());
  glands[0].part = "NEAR";
  glands[0].outer = {11.0, 14.6};
  glands[1].part = "FAR";
  glands[1].outer = {20.0, 30.0};
  const auto job = test::resolved(test::small_cable());
  const auto ranked = fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::price);
  const auto advice = fit::advise(job, ranked);
  REQUIRE(advice.nearest != nullptr);
  CHECK(advice.nearest->gland->part == "NEAR");
  CHECK_THAT(advice.nearest_says, Contains("outer seal 0.4 mm too small"));
  CHECK_THAT(advice.order_says,
             Contains("M20") && Contains("14.9 to 15.1") && Contains("0.9 mm wire"));
}

// Root of the male thread by ISO 68-1: M20 x 1.5 has d - 1.226869 P = 18.16 mm.
TEST_CASE("advise: a thread that is too small for the cable's inside", "[unit][fit]") {
  auto input = test::small_cable();
  input.sheath_od_mm = "24.0";
  const auto order = [&](const char* bedding, const char* entry) {
    input.bedding_mm = bedding;
    input.entry = entry;
    return fit::advise(test::resolved(input), std::vector<fit::GlandFit>{}).order_says;
  };
  CHECK_THAT(order("19.0", "M20"),
             Contains("a thread M20 leaves less than 18.2 mm for a bedding of 18.9 mm"));
  CHECK_THAT(order("18.1", "M20"), !Contains("leaves less"));
  CHECK_THAT(order("19.0", "M25"), !Contains("leaves less"));
  input.armour = cable::ArmourKind::none;
  input.armour_mm.reset();
  CHECK_THAT(order("19.0", "M20"), Contains("for a sheath of 23.9 mm"));
}

TEST_CASE("advise: a hole that no gland mends", "[unit][fit]") {
  auto input = test::small_cable();
  input.entry = "M20";
  input.protection = area::Protection::d;
  input.wall_mm = 12.0;
  const std::vector<Gland> glands(1, test::small_gland());
  const auto order = [&](entry::Hole hole) {
    input.hole = hole;
    const auto job = test::resolved(input);
    const auto ranked = fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::price);
    return fit::advise(job, ranked).order_says;
  };
  CHECK_THAT(order(entry::Hole::clearance),
             Contains("but no gland mends the entry: a flameproof entry is "
                      "tapped: a clearance hole is not permitted"));
  CHECK_THAT(order(entry::Hole::threaded), !Contains("mends"));
}

TEST_CASE("fit_all and advise: an empty list", "[unit][fit]") {
  const auto job = test::resolved(test::small_cable());
  CHECK(fit::fit_all(fit::ask(job, test::standards()), {}, fit::Prefer::price).empty());
  CHECK(fit::advise(job, std::vector<fit::GlandFit>{}).nearest == nullptr);
  CHECK_FALSE(fit::advise(job, std::vector<fit::GlandFit>{}).order_says.empty());
}

TEST_CASE("check names: the JSON schema has those of the table, in its order", "[unit][fit]") {
  const io::WholeFile file(CUTBACK_SOURCE_DIR "/data/schema/fit.schema.json");
  const auto schema = nlohmann::json::parse(file.text());
  std::vector<std::string> names;
  for (const fit::CheckName name : fit::check_names()) names.emplace_back(to_string(name));
  names.erase(std::unique(names.begin(), names.end()), names.end());  // entry has two rows
  CHECK(schema["definitions"]["check"]["properties"]["check"]["enum"] == names);
}

TEST_CASE("advise: only a metric thread is held against the cable's inside", "[unit][fit]") {
  auto input = test::small_cable();
  input.sheath_od_mm = "24.0";
  input.bedding_mm = "19.0";
  const auto order = [&](std::optional<std::string> entry) {
    input.entry = std::move(entry);
    return fit::advise(test::resolved(input), std::vector<fit::GlandFit>{}).order_says;
  };
  CHECK_THAT(order("M20"), Contains("leaves less"));
  CHECK_THAT(order("NPT 1/2"), Contains("NPT 1/2") && !Contains("leaves less"));
  CHECK_THAT(order("PG 13.5"), !Contains("leaves less"));
  CHECK_THAT(order(std::nullopt), Contains("a gland") && !Contains("leaves less"));
}

TEST_CASE("fit: the spread of the sheath counts at the upper limit of the seal", "[unit][fit]") {
  auto input = test::small_cable();
  input.sheath_od_mm = "15.0+15.1,15.1+15.0";
  const auto job = test::resolved(input);
  const double high_mm = job.cable.sheath_od->high_mm();
  REQUIRE(high_mm > job.cable.sheath_od->value_mm);
  const auto verdict = [&](double limit_mm) {
    std::vector<Gland> glands(1, test::small_gland());
    glands[0].outer = {11.0, limit_mm};
    const auto ranked = fit::fit_all(fit::ask(job, test::standards()), glands, fit::Prefer::price);
    for (const fit::Check& check : ranked.front().checks) {
      if (check.name == fit::CheckName::outer_seal) return check.verdict;
    }
    return Verdict::not_known;
  };
  CHECK(verdict(high_mm + 0.01) == Verdict::fits);
  CHECK(verdict(high_mm - 0.01) == Verdict::marginal_inside);
  CHECK(verdict(job.cable.sheath_od->value_mm - 0.01) == Verdict::marginal_outside);
  CHECK(verdict(job.cable.sheath_od->low_mm() - 0.01) == Verdict::no_fit);
}
