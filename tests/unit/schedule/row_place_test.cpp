#include "cutback/schedule/row_place.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using schedule::Layout;
using schedule::PlainPlaces;
using schedule::Side;
using Words = std::vector<std::string_view>;

namespace {

Layout layout_of(const Words& headings, std::vector<schedule::OwnValue> defaults = {},
                 std::vector<schedule::OwnWord> words = {}) {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  schedule::Format format;
  format.usual = &k_usual;
  format.defaults = std::move(defaults);
  format.words = std::move(words);
  return schedule::make_layout(headings, format, "t.csv, line 1");
}

const Layout& plain() {
  static const Layout k_layout = layout_of({"Cable No", "From", "To", "O/D", "Remarks"});
  return k_layout;
}

const Layout& with_zone() {
  static const Layout k_layout = layout_of({"Cable No", "From", "To", "O/D", "Zone", "Remarks"});
  return k_layout;
}

schedule::PlaceSaid note(const char* text) {
  return schedule::place_in_note(plain(), Words{"", text});
}

}  // namespace

TEST_CASE("place_in_note: texts that tell a hazardous place", "[unit][schedule]") {
  for (const char* text : {"ZONE 1 AREA",
                           "Hazardous area 3",
                           "Zone 21 - dust",
                           "AREA 4 (Ex d IIB)",
                           "ATEX",
                           "Haz. Area",
                           "Class I Division 2",
                           "non hazardous and Zone 2",
                           "Zone\xC2\xA0"
                           "1",
                           "Zone 01",
                           "Zone no. 1",
                           "Zone one",
                           "EExd",
                           "EEXIA glands",
                           "II2G",
                           "II 2GD",
                           "2G Ex",
                           "EPL Gb",
                           "IIBT3",
                           "IICT4",
                           "explosionproof",
                           "flame-proof",
                           "FLP glands",
                           "Increased safety JB",
                           "C1D2",
                           "CID1",
                           "hazloc",
                           "A.T.E.X.",
                           "Gas group IIB",
                           "IIB+H2",
                           "expl. proof",
                           "NEMA 7",
                           "zone explosible",
                           "Zona 1",
                           "Atmosph\xC3\xA8re explosive",
                           "Explosionsgef\xC3\xA4hrdeter Bereich"}) {
    INFO(text);
    CHECK(note(text).text == text);
    CHECK(note(text).told);
  }
}

TEST_CASE("place_in_note: areas that often are hazardous ask about the place", "[unit][schedule]") {
  for (const char* text :
       {"Petrol pump forecourt", "Fuel store", "LPG bullets", "Battery room", "Solvent Store 2",
        "Spray booth", "TANK FARM 2", "Grain silo", "IS circuits", "Area Class: 1",
        "Zona clasificada", "emplacement dangereux"}) {
    INFO(text);
    CHECK(note(text).text == text);
    CHECK_FALSE(note(text).told);
  }
  // What tells it comes before what asks.
  const Words both{"Fuel store", "Zone 2"};
  CHECK(schedule::place_in_note(plain(), both).text == "Zone 2");
}

TEST_CASE("place_in_note: texts that speak of no such place", "[unit][schedule]") {
  for (const char* text :
       {"PUMP HOUSE", "Non hazardous area", "SAFE AREA", "Zone 3", "Zone A", "Area 12",
        "Exchanger 1", "not hazardous", "Excavation", "unclassified area", "non classified",
        "Class 2 conductors", "this is it", "CIDER PRESS"}) {
    INFO(text);
    CHECK(note(text).text.empty());
  }
}

TEST_CASE("place_in_row: names of equipment, and columns that nobody reads", "[unit][schedule]") {
  const auto to = [](std::string_view name) {
    return schedule::place_in_row(plain(), Words{"C-1", "MCC", name, "15"});
  };
  for (const char* name : {"JB-1 Zone 2", "EXD-LCS-101", "Flameproof motor",
                           "P-101 Zone\xC2\xA0"
                           "1",
                           "Petrol pump 1", "JB-3 (Z1)", "EEXD JB"}) {
    INFO(name);
    CHECK(to(name) == name);
  }
  for (const char* name : {"EXP-1", "EXT-LIGHT", "P-1", "Exhaust fan", "Coalescer", "Silica"}) {
    INFO(name);
    CHECK(to(name).empty());
  }
  CHECK(schedule::place_in_row(plain(), Words{"C-1", "MCC", "P-1", "15", "Ex e"}) == "Ex e");
}

TEST_CASE("PlainPlaces: a plain zone and a text that tells another", "[unit][schedule]") {
  const PlainPlaces places(with_zone());
  CHECK(places.any());
  CHECK_FALSE(PlainPlaces(plain()).any());
  const Words named{"C-1", "MCC", "JB-4 (Zone 2)", "15", "none"};
  CHECK(places.told_otherwise(named, Side::to) == "JB-4 (Zone 2)");
  CHECK(places.told_otherwise(named, Side::from).empty());
  const Words remark{"C-1", "MCC", "P-1", "15", "Safe", "Motor is in Zone 1"};
  CHECK(places.told_otherwise(remark, Side::from) == "Motor is in Zone 1");
  const Words other{"C-1", "MCC", "JB-4 (Zone 2)", "15", "2"};
  CHECK(places.told_otherwise(other, Side::to).empty());
  const Words none{"C-1", "MCC", "P-1", "15", "none"};
  CHECK(places.told_otherwise(none, Side::to).empty());
  // An area that may be hazardous is answered by a cell that says that it is not.
  const Words answered{"C-1", "MCC", "Battery room", "15", "none"};
  CHECK(places.told_otherwise(answered, Side::to).empty());

  const Layout by_default = layout_of({"Cable No", "From", "To", "O/D"}, {{"zone", "none"}});
  const Words blank{"C-1", "JB Zone 1", "P-1", "15"};
  CHECK(PlainPlaces(by_default).told_otherwise(blank, Side::from) == "JB Zone 1");

  const Layout own =
      layout_of({"Cable No", "From", "To", "O/D", "Zone"}, {}, {{"Our yard", "none"}});
  const Words yard{"C-1", "MCC", "JB Zone 1", "15", "Our yard"};
  CHECK(PlainPlaces(own).told_otherwise(yard, Side::to) == "JB Zone 1");
}

TEST_CASE("PlainPlaces: whether a whole row is told plain", "[unit][schedule]") {
  const Layout sided = layout_of({"Cable No", "From", "To", "O/D", "From Zone", "To Zone"});
  const PlainPlaces places(sided);
  CHECK(places.whole_row(Words{"C-1", "MCC", "P-1", "15", "none", "Safe"}));
  CHECK_FALSE(places.whole_row(Words{"C-1", "MCC", "P-1", "15", "none", "1"}));
  CHECK_FALSE(places.whole_row(Words{"C-1", "MCC", "P-1", "15", "none", ""}));
}

TEST_CASE("all_told_plain: rows that tell no other place than a plain one", "[unit][schedule]") {
  using Rows = std::vector<std::vector<std::string>>;
  const auto of = [](const Rows& rows) { return schedule::all_told_plain(with_zone(), rows); };
  CHECK(of({{"C-1", "MCC", "P-1", "15", "none"}, {"C-2", "MCC", "P-2", "15", ""}}));
  CHECK_FALSE(of({{"C-1", "MCC", "P-1", "15", "none"}, {"C-2", "MCC", "P-2", "15", "2"}}));
  CHECK_FALSE(of({{"C-1", "MCC", "P-1", "15", "TBC"}}));
  CHECK_FALSE(of({}));
}

TEST_CASE("place_in_note, NoteRows: a label and its value in two cells", "[unit][schedule]") {
  const auto beside = [](const Words& cells) {
    return schedule::place_in_note(plain(), cells).text;
  };
  CHECK(beside({"Zone:", "1"}) == "Zone: 1");
  CHECK(beside({"Zone:", "", "1"}) == "Zone: 1");
  CHECK(beside({"Project", "P-7", "Area classification", "2"}) == "Area classification 2");
  CHECK(beside({"Ex", "Yes"}) == "Ex Yes");
  CHECK(beside({"EPL", "Gb"}) == "EPL Gb");
  CHECK(beside({"Temp. class", "T4"}) == "Temp. class T4");
  CHECK(beside({"Protection", "Ex", "d"}) == "Ex d");
  for (const Words& cells :
       {Words{"Area classification", "Safe area"}, Words{"Zone", "N/A"}, Words{"Ex", "No"},
        Words{"Fire zone", "1"}, Words{"Ex", "Remarks"}, Words{"Revision", "2"}}) {
    INFO(cells[0] << " " << cells[1]);
    CHECK(beside(cells).empty());
  }
  schedule::NoteRows rows(plain());
  CHECK(rows.next(Words{"Tag", "Ex", "T class"}).text.empty());
  CHECK(rows.next(Words{"P-1", "No", ""}).text.empty());
  CHECK(rows.next(Words{"P-2", "Yes", "T4"}).text == "Ex Yes");
}

TEST_CASE("place_in_row: columns of texts that are read for something else", "[unit][schedule]") {
  const Layout own = layout_of({"Cable No", "End", "O/D", "Cable Type", "Drawing No"});
  const Words end{"C-1", "Motor P-1 (Zone 1, Ex d)", "15", "SWA", "D-1"};
  CHECK(schedule::place_in_row(own, end) == "Motor P-1 (Zone 1, Ex d)");
  const Words type{"C-1", "Motor", "15", "4C SWA Ex d", "D-1"};
  CHECK(schedule::place_in_row(own, type) == "4C SWA Ex d");
  const Words drawing{"C-1", "Motor", "15", "SWA", "HAC Zone 1"};
  CHECK(schedule::place_in_row(own, drawing) == "HAC Zone 1");
}
