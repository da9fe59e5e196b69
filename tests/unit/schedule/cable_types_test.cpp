#include "cutback/schedule/cable_types.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/gland_list.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/schedule/decider.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using measure::Evidence;
using schedule::CableTypes;
using schedule::Format;
using schedule::Layout;
using schedule::Side;
using Words = std::vector<std::string_view>;

namespace {

Layout types_layout(const Words& headings) {
  Format format;
  format.of_types = true;
  return schedule::make_layout(headings, format, "types.csv, line 1");
}

const Words k_type_headings{"type",    "sheath_od_mm", "bedding_mm", "armour_mm", "cores",
                            "csa_mm2", "evidence",     "voltage",    "cable_size"};

CableTypes types_of(const std::vector<Words>& rows) {
  const Layout layout = types_layout(k_type_headings);
  CableTypes types("types.csv");
  for (const Words& row : rows) {
    for (const Fault& fault : types.add(layout, row, "types.csv, line 2")) FAIL(to_line(fault));
  }
  return types;
}

const CableTypes& some_types() {
  static const CableTypes types = types_of({
      {"NX 3C", "15.2", "10.6", "0.9", "3", "4", "", "", ""},
      {"guess", "15.2", "10.6", "0.9", "3", "4", "estimated", "", ""},
      {"bare", "", "", "", "", "", "", "", "4C x 16 XLPE/SWA/PVC"},
      {"high", "66", "", "2.5", "3", "95", "", "6.35/11 kV", ""},
  });
  return types;
}

const Words k_headings{"tag",       "type",     "sheath_od_mm", "bedding_mm",
                       "armour_mm", "evidence", "cores",        "csa_mm2"};

Layout layout_of(const CableTypes& types, std::optional<Evidence> evidence = {}) {
  Format format;
  format.types = &types;
  format.evidence = evidence;
  return schedule::make_layout(k_headings, format, "t.csv");
}

struct Read {
  job::JobInput input;
  schedule::RowNotes notes;
};

Read read(const Layout& layout, const Words& cells) {
  std::vector<Fault> faults;
  Read row;
  row.input = schedule::input_of(layout, cells, Side::both, faults, &row.notes);
  for (const Fault& fault : faults) FAIL(to_line(fault));
  return row;
}

}  // namespace

TEST_CASE("cable types: case and spaces of the name are forgiven", "[unit][schedule]") {
  const Layout layout = layout_of(some_types());
  for (const char* const name : {"NX 3C", "nx3c", " Nx  3 C",
                                 "NX\xC2\xA0"
                                 "3C"}) {
    const Read row = read(layout, {"C1", name});
    CHECK(row.input.sheath_od_mm->text == "15.2");
    CHECK(row.input.cores == 3.0);
    CHECK(row.input.evidence == Evidence::datasheet);
    CHECK(row.notes.remarks.empty());
  }
}

TEST_CASE("cable types: a row's own cell wins, and another value is said", "[unit][schedule]") {
  const Layout layout = layout_of(some_types());
  const Read other = read(layout, {"C1", "NX 3C", "18.4", "", "", "", "4"});
  CHECK(other.input.sheath_od_mm->text == "18.4");
  CHECK(other.input.cores == 4.0);
  CHECK(other.input.bedding_mm->text == "10.6");
  REQUIRE(other.notes.remarks.size() == 2);
  CHECK_THAT(other.notes.remarks[0], Contains("sheath_od_mm 18.4") && Contains("15.2"));
  CHECK_THAT(other.notes.remarks[1], Contains("cores 4"));
  // As made, within what a datasheet is allowed.
  CHECK(read(layout, {"C1", "NX 3C", "15.9+16.1"}).notes.remarks.empty());
  CHECK(read(layout, {"C1", "NX 3C", "17.9+18.1"}).notes.remarks.size() == 1);
  CHECK(read(layout, {"C1", "NX 3C", "15.2"}).notes.remarks.empty());
}

TEST_CASE("cable types: a figure of a type is never taken for measured", "[unit][schedule]") {
  const Layout layout = layout_of(some_types());
  const Read mixed = read(layout, {"C1", "NX 3C", "15.1+15.2", "", "", "measured"});
  CHECK_FALSE(mixed.input.evidence);  // by its notation: the readings are, the type's is not
  CHECK(mixed.notes.remarks.size() == 1);
  CHECK(read(layout, {"C1", "NX 3C", "", "", "", "measured"}).input.evidence ==
        Evidence::datasheet);
  CHECK(read(layout_of(some_types(), Evidence::measured), {"C1", "NX 3C"}).input.evidence ==
        Evidence::datasheet);
  CHECK(read(layout, {"C1", "NX 3C", "15.1+15.2", "10.6+10.7", "0.9", "measured"}).input.evidence ==
        Evidence::measured);  // nothing is the type's
  CHECK(read(layout, {"C1", "NX 3C", "15.2", "", "", "estimated"}).input.evidence ==
        Evidence::estimated);
}

TEST_CASE("cable types: estimates of a type are not mixed with figures of the row",
          "[unit][schedule]") {
  const Layout layout = layout_of(some_types());
  CHECK(read(layout, {"C1", "guess"}).input.evidence == Evidence::estimated);
  const Read mixed = read(layout, {"C1", "guess", "15.1+15.2"});
  CHECK_FALSE(mixed.input.bedding_mm);
  CHECK_FALSE(mixed.input.evidence);
  CHECK(mixed.input.cores == 3.0);
  CHECK(mixed.notes.remarks.size() == 1);
}

TEST_CASE("cable types: without its type nothing of a row is estimated", "[unit][schedule]") {
  const Layout layout = layout_of(some_types());
  const Read row = read(layout, {"C1", "NX 4C", "", "", "", "", "3", "4"});
  CHECK(row.notes.no_estimate);
  CHECK_FALSE(row.input.csa_mm2);
  REQUIRE(row.notes.remarks.size() == 1);
  CHECK_THAT(row.notes.remarks[0], Contains("NX 4C is not in types.csv") && Contains("NX 3C"));
  CHECK_FALSE(read(layout, {"C1", "", "", "", "", "", "3", "4"}).notes.no_estimate);
  CHECK(read(layout, {"C1", "bare"}).input.cores == 4.0);
  CHECK(read(layout, {"C1", "high"}).notes.no_estimate);
}

TEST_CASE("cable types: what is not known is not-known", "[unit][schedule]") {
  const gland::GlandList list = io::demo_gland_list();
  const fit::Selector selector(list.glands, fit::Prefer::price);
  const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
  const Layout layout = layout_of(some_types());
  schedule::Decider decider(layout, settings);
  const auto decide = [&](const Words& cells) {
    return decider.decide({cells}, Side::both).decision;
  };
  const schedule::Decision lost = decide({"C1", "NX 4C", "", "", "", "", "3", "4"});
  CHECK(lost.usable());
  CHECK(lost.verdict == Verdict::not_known);
  CHECK_FALSE(lost.proven);
  CHECK_THAT(lost.reason, Contains("NX 4C is not in types.csv"));
  // With a wire its bedding would be estimated from the sheath by rules of another voltage.
  const schedule::Decision high = decide({"C2", "high"});
  REQUIRE(high.sheath_od);
  CHECK(high.sheath_od->evidence == Evidence::datasheet);
  CHECK_FALSE(high.bedding);
  CHECK(decide({"C3", "", "66", "", "2.5"}).bedding);  // nothing speaks against it here
}

TEST_CASE("cable types: what is wrong with a file", "[unit][schedule]") {
  const Layout layout = types_layout(k_type_headings);
  CableTypes types("types.csv");
  const auto faults = [&](const Words& cells) {
    std::string text;
    for (const Fault& fault : types.add(layout, cells, "types.csv, line 3")) {
      text += to_line(fault);
    }
    return text;
  };
  CHECK(faults({"A 1", "15.2"}).empty());
  CHECK_THAT(faults({"a1", "15.3"}), Contains("two types have one name"));
  CHECK_THAT(faults({"B", "15.1+15.3"}), Contains("one figure"));
  CHECK_THAT(faults({"M", "15.2", "", "", "", "", "measured"}),
             Contains("a type is not measured") && Contains("datasheet, estimated"));
  CHECK(types.find("M") == nullptr);
  CHECK_THAT(faults({"C", "x"}), Contains("line 3, column sheath_od_mm"));
  CHECK_THAT(faults({"", "15.2"}), Contains("no name"));
  CHECK_THROWS_WITH(types_layout({"tag", "sheath_od_mm"}), Contains("no column type"));
}
