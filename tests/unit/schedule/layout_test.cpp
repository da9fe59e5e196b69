#include "cutback/schedule/layout.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using Catch::Contains;
using schedule::Format;
using schedule::Layout;
using schedule::Side;
using Words = std::vector<std::string_view>;

namespace {

Layout layout_of(const Words& headings, const Format& format = {}) {
  return schedule::make_layout(headings, format, "t.csv, line 1");
}

std::string message_of(const Words& headings, const Format& format = {}) {
  try {
    (void)layout_of(headings, format);
  } catch (const InputError& error) {
    return error.what();
  }
  return "no fault";
}

job::JobInput read(const Layout& layout, const Words& cells, Side side = Side::both) {
  std::vector<Fault> faults;
  job::JobInput input = schedule::input_of(layout, cells, side, faults);
  for (const Fault& fault : faults) FAIL(to_line(fault));
  return input;
}

/// The message of the one fault that a sheath diameter of `cell` gives.
std::string fault_of(std::string_view cell, char decimal = '.',
                     std::string_view key = "sheath_od_mm") {
  Format format;
  format.decimal = decimal;
  const Layout layout = layout_of({"tag", "bedding_mm", key == "bedding_mm" ? "to" : key}, format);
  std::vector<Fault> faults;
  (void)schedule::input_of(layout, Words{"C1", "", cell}, Side::both, faults);
  return faults.size() == 1 ? to_line(faults.front()) : std::to_string(faults.size()) + " faults";
}

}  // namespace

TEST_CASE("make_layout: one end a row without prefixes", "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "end", "sheath_od_mm", "entry"});
  CHECK_FALSE(layout.two_ends);
  REQUIRE(layout.ends().size() == 1);
  const Words cells{"C1", "motor", "15.2", "M20"};
  const job::JobInput input = read(layout, cells);
  CHECK(input.sheath_od_mm->text == "15.2");
  CHECK(input.entry == "M20");
  CHECK(schedule::end_name(layout, cells, Side::both) == "motor");
}

TEST_CASE("make_layout: a prefixed column makes two ends and comes before the plain one",
          "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "entry", "to_entry"});
  REQUIRE(layout.two_ends);
  CHECK(read(layout, {"C1", "15.2", "M20", "M25"}, Side::from).entry == "M20");
  CHECK(read(layout, {"C1", "15.2", "M20", "M25"}, Side::to).entry == "M25");
  CHECK(read(layout, {"C1", "15.2", "M20", ""}, Side::to).entry == "M20");
}

TEST_CASE("make_layout: the columns from and to make two ends unless there is a column end",
          "[unit][schedule]") {
  CHECK(layout_of({"tag", "from", "to", "sheath_od_mm"}).two_ends);
  CHECK_FALSE(layout_of({"tag", "from", "to", "end", "sheath_od_mm"}).two_ends);
}

TEST_CASE("make_layout: own headings stand for ours", "[unit][schedule]") {
  Format format;
  format.headings = {{"sheath_od_mm", "O/D (mm)"}, {"to_entry", "Hole B"}};
  const Layout layout = layout_of({"Tag", "O/D (mm)", "Hole B"}, format);
  const job::JobInput input = read(layout, {"C1", "15.2", "M20"}, Side::to);
  CHECK(input.sheath_od_mm->text == "15.2");
  CHECK(input.entry == "M20");
}

TEST_CASE("make_layout: headings that are not known are named with the nearest",
          "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "shade"});
  REQUIRE(layout.warnings.size() == 1);
  CHECK_THAT(layout.warnings.front(), Contains("\"shade\"") && Contains("ignored"));
  CHECK_THAT(layout_of({"tag", "sheath_od_mm", "beding_mm"}).warnings.front(),
             Contains("did you mean \"bedding_mm\"?"));
}

TEST_CASE("make_layout: every fault of the headings at once", "[unit][schedule]") {
  CHECK_THAT(message_of({"cores", "shade"}),
             Contains("no column tag") && Contains("nothing tells the sheath diameter"));
  CHECK_THAT(message_of({"tag", "sheath_od_mm", "sheath_od_mm"}), Contains("given twice"));
  CHECK_THAT(message_of({"tag", "sheath_od_mm", "end", "to_entry"}), Contains("one end or two"));
  Format format;
  format.headings = {{"sheath", "OD"}, {"bedding_mm", "Under armour"}};
  CHECK_THAT(message_of({"tag", "sheath_od_mm"}, format),
             Contains("no such column") && Contains("no such heading: t.csv, line 1"));
  CHECK(message_of({"tag", "cores", "csa_mm2"}) == "no fault");
}

TEST_CASE("make_layout: a prefix stands only before what differs between ends",
          "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "from_bedding_mm"});
  CHECK(layout.warnings.size() == 1);
  CHECK_FALSE(layout.two_ends);
}

TEST_CASE("input_of: cells that hold no value say what they hold", "[unit][schedule]") {
  CHECK_THAT(fault_of("15 mm"), Contains("without its unit") && Contains("column sheath_od_mm"));
  CHECK_THAT(fault_of("15mm"), Contains("without its unit"));
  CHECK_THAT(fault_of("\xC3\x98"
                      "15"),
             Contains("not a number"));
  CHECK_THAT(fault_of("18-20"), Contains("a range"));
  CHECK_THAT(fault_of("18 to 20"), Contains("a range"));
  CHECK_THAT(fault_of("18..20"), Contains("a range"));
  CHECK_THAT(fault_of("18\xE2\x80\x93"
                      "20"),
             Contains("a range"));
  CHECK_THAT(fault_of("=A1+2"), Contains("a formula"));
  CHECK_THAT(fault_of("#REF!"), Contains("spreadsheet's error"));
  CHECK_THAT(fault_of("0"), Contains("not above zero"));
}

TEST_CASE("input_of: decimal marks of the other kind are never guessed", "[unit][schedule]") {
  CHECK_THAT(fault_of("15,12"), Contains("--decimal ,"));
  CHECK_THAT(fault_of("2,5", '.', "wall_mm"), Contains("decimal comma"));
  CHECK_THAT(fault_of("15.12", ','), Contains("decimal point"));
  CHECK_THAT(fault_of("1.234,5", ',', "wall_mm"), Contains("decimal point"));
}

TEST_CASE("input_of: decimal commas where they are announced", "[unit][schedule]") {
  Format format;
  format.decimal = ',';
  const Layout layout = layout_of({"tag", "sheath_od_mm", "wall_mm"}, format);
  const job::JobInput input = read(layout, {"C1", "14,9+15,1;15,0+15,2", "2,5"});
  CHECK(input.sheath_od_mm->text == "14.9+15.1,15.0+15.2");
  CHECK(input.wall_mm == 2.5);
}

TEST_CASE("input_of: inches and exponents are figures", "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "volume_cm3"});
  const job::JobInput input = read(layout, {"C1", "0.59in+0.60in", "1e3"});
  CHECK(input.sheath_od_mm->text == "0.59in+0.60in");
  CHECK(input.volume_cm3 == 1000.0);
}
