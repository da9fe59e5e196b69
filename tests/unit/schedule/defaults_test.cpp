#include "cutback/schedule/defaults.hpp"

#include <catch2/catch.hpp>

#include "cutback/job/field_text.hpp"

using namespace cutback;
using schedule::Format;
using schedule::Layout;
using schedule::Side;
using Words = std::vector<std::string_view>;

namespace {

Layout layout_of(const Words& headings, std::vector<schedule::OwnValue> defaults,
                 char decimal = '.') {
  Format format;
  format.decimal = decimal;
  format.defaults = std::move(defaults);
  REQUIRE(schedule::check_defaults(format).empty());
  return schedule::make_layout(headings, format, "t.csv");
}

struct Read {
  job::JobInput input;
  std::uint64_t defaults = 0;
};

Read read(const Layout& layout, const Words& cells, Side side = Side::both) {
  std::vector<Fault> faults;
  schedule::RowNotes notes;
  Read result{schedule::input_of(layout, cells, side, faults, &notes), 0};
  for (const Fault& fault : faults) FAIL(to_line(fault));
  result.defaults = notes.defaults;
  return result;
}

std::string fault_of(const std::string& column, const std::string& text, char decimal = '.') {
  Format format;
  format.decimal = decimal;
  format.defaults = {{column, text}};
  const auto faults = schedule::check_defaults(format);
  return faults.size() == 1 ? to_line(faults.front()) : std::to_string(faults.size()) + " faults";
}

}  // namespace

TEST_CASE("defaults: a blank cell is as if it said so", "[unit][schedule]") {
  const Layout layout =
      layout_of({"tag", "sheath_od_mm", "entry"}, {{"entry", "M20"}, {"wall_mm", "3"}});
  for (const char* const blank : {"", " ", "TBC", "-"}) {
    const Read row = read(layout, {"C1", "15.2", blank});
    CHECK(row.input.entry == "M20");
    CHECK(row.input.wall_mm == 3.0);  // the schedule has no such column
    CHECK(row.defaults == 0b11);
  }
  const Read own = read(layout, {"C1", "15.2", "M25"});
  CHECK(own.input.entry == "M25");
  CHECK(own.defaults == 0b10);
  CHECK(read(layout, {"C1", "15.2"}).input.entry == "M20");  // a short row
}

TEST_CASE("defaults: that of an end comes before that of both and after every cell",
          "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "from", "to", "sheath_od_mm", "zone", "to_zone"},
                                  {{"from_zone", "2"}, {"zone", "1"}});
  CHECK(layout.two_ends);
  const auto zone = [&](const Words& cells, Side side) {
    return read(layout, cells, side).input.zone;
  };
  const Words nothing{"C1", "A", "B", "15.2", "", ""};
  CHECK(zone(nothing, Side::from) == area::Zone::zone_2);
  CHECK(zone(nothing, Side::to) == area::Zone::zone_1);
  const Words plain{"C1", "A", "B", "15.2", "0", ""};
  CHECK(zone(plain, Side::from) == area::Zone::zone_0);  // a cell speaks for this end
  CHECK(zone(plain, Side::to) == area::Zone::zone_0);
}

TEST_CASE("defaults: a prefix makes two ends a row", "[unit][schedule]") {
  CHECK(layout_of({"tag", "sheath_od_mm"}, {{"to_entry", "M20"}}).two_ends);
  CHECK_FALSE(layout_of({"tag", "sheath_od_mm"}, {{"entry", "M20"}}).two_ends);
  Format format;
  format.defaults = {{"to_entry", "M20"}};
  CHECK_THROWS_AS(schedule::make_layout(Words{"tag", "end", "sheath_od_mm"}, format, "t.csv"),
                  InputError);
}

TEST_CASE("defaults: what another cell of the row says is not contradicted", "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "cable_size"}, {{"cores", "3"}, {"csa_mm2", "4"}});
  const Read row = read(layout, {"C1", "4C x 16mm2"});
  CHECK(row.input.cores == 4.0);
  CHECK(row.input.csa_mm2 == 16.0);
  CHECK(row.defaults == 0);
  CHECK(read(layout, {"C2", ""}).input.cores == 3.0);
}

TEST_CASE("defaults: they are written as the schedule is", "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "O/D (in)", "sheath_od_mm"}, {{"wall_mm", "2,5"}}, ',');
  CHECK(read(layout, {"C1", "", "15,2"}).input.wall_mm == 2.5);
  CHECK(fault_of("wall_mm", "2.5", ',').find("decimal point") != std::string::npos);
  CHECK(fault_of("wall_mm", "2,5").find("decimal comma") != std::string::npos);
}

TEST_CASE("defaults: the number of cables may have one", "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "quantity"}, {{"quantity", "4"}});
  CHECK(schedule::quantity_of(layout, Words{"C1", "15.2", ""}) == 4U);
  CHECK(schedule::quantity_default_of(layout, Words{"C1", "15.2", ""}) == 1U);
  CHECK(schedule::quantity_of(layout, Words{"C1", "15.2", "2"}) == 2U);
  CHECK(schedule::quantity_default_of(layout, Words{"C1", "15.2", "2"}) == 0U);
  CHECK(schedule::quantity_of(layout_of({"tag", "sheath_od_mm"}, {{"quantity", "4"}}),
                              Words{"C1", "15.2"}) == 4U);
}

TEST_CASE("defaults: what a column does not take is a fault", "[unit][schedule]") {
  CHECK(fault_of("zon", "1").find("did you mean \"zone\"") != std::string::npos);
  CHECK(fault_of("zone", "3").find("--default") != std::string::npos);
  CHECK(fault_of("entry", "16").find("two ways") != std::string::npos);
  CHECK(fault_of("cores", "4C x 16").find("other columns") != std::string::npos);
  CHECK(fault_of("wall_mm", "3 ft") != "0 faults");
  CHECK(fault_of("quantity", "0") != "0 faults");
  for (const char* const name : {"tag", "end", "from", "to", "cable_size"}) {
    CHECK(fault_of(name, "x").find("takes no default") != std::string::npos);
  }
  Format format;
  format.defaults = {{"zone", "1"}, {"Zone", "2"}};
  CHECK(schedule::check_defaults(format).size() == 1);
}

TEST_CASE("defaults: counted by cell", "[unit][schedule]") {
  schedule::DefaultCounts counts;
  counts.add(0b101);
  counts.add(0b100);
  schedule::DefaultCounts others;
  others.add(0b11);
  counts.add(others);
  CHECK(counts.of(0) == 2);
  CHECK(counts.of(1) == 1);
  CHECK(counts.of(2) == 2);
  CHECK(counts.of(3) == 0);
  const std::vector<schedule::OwnValue> defaults{{"zone", "1"}, {"ip", "54"}, {"wall_mm", "3"}};
  CHECK(schedule::defaults_text(defaults, 0b101) == "zone=1; wall_mm=3");
  CHECK(schedule::defaults_text(defaults, 0).empty());
}
