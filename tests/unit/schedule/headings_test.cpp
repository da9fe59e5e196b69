#include "cutback/schedule/headings.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"
#include "cutback/schedule/layout.hpp"

using namespace cutback;
using schedule::heading_form;
using Rows = std::vector<std::vector<std::string>>;

namespace {

std::vector<std::string> shown(const Rows& rows) {
  std::vector<std::string> texts;
  for (const auto& heading : schedule::join_headings(rows)) texts.push_back(heading.shown());
  return texts;
}

/// `column = heading` of what is taken, and `?heading` of what is left.
std::vector<std::string> taken(const Rows& rows, schedule::Sample sample = {}) {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  schedule::Format format;
  format.usual = &k_usual;
  const auto layout =
      schedule::make_layout(schedule::join_headings(rows), format, "t.csv, line 1", sample);
  std::vector<std::string> texts;
  for (const schedule::Mapped& each : layout.mapping) {
    texts.push_back(each.column + " = " + each.heading);
  }
  for (const auto& warning : layout.warnings) {
    if (warning.find('"') == std::string::npos) continue;  // of no heading
    const std::size_t begin = warning.find('"') + 1;
    texts.push_back("?" + warning.substr(begin, warning.find('"', begin) - begin));
  }
  std::sort(texts.begin(), texts.end());
  return texts;
}

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("heading_form: case, spaces, line breaks and points do not count", "[unit][schedule]") {
  for (const char* text :
       {"Cable No", "CABLE NO.", " cable\nno ", "Cable\xC2\xA0No:", "cable_no", "Cable-No",
        "\xEF\xBB\xBF"
        "Cable  No*"}) {
    CHECK(heading_form(text).plain == "cable no");
  }
}

TEST_CASE("heading_form: a unit is told apart", "[unit][schedule]") {
  struct Case {
    const char* text;
    const char* plain;
    const char* unit;
  };
  for (const Case& each :
       {Case{"O/D (mm)", "o/d", "mm"}, Case{"O/D [MM]", "o/d", "mm"},
        Case{"Size (mm\xC2\xB2)", "size", "mm2"}, Case{"Size sq.mm", "size", "mm2"},
        Case{"Size (sq. mm)", "size", "mm2"}, Case{"OD in mm", "od", "mm"},
        Case{"Length m", "length", "m"}, Case{"O/D (inch)", "o/d", "in"},
        Case{"O/D (nominal)", "o/d nominal", ""}, Case{"Entry A", "entry a", ""},
        Case{"Cores (No.)", "cores", "count"},
        Case{"Temp (\xC2\xB0"
             "C)",
             "temp", "C"}}) {
    INFO(each.text);
    CHECK(heading_form(each.text).plain == each.plain);
    CHECK(heading_form(each.text).unit == each.unit);
  }
}

TEST_CASE("join_headings: a group counts for what it leaves blank to its right",
          "[unit][schedule]") {
  CHECK(shown({{"No", "Gland", "", "IP"}, {"", "From", "To", ""}}) ==
        Texts{"No", "Gland / From", "Gland / To", "IP"});
  CHECK(shown({{"Gland", "Gland"}, {"From", "To"}}) == Texts{"Gland / From", "Gland / To"});
  CHECK(shown({{"Gland", "", ""}, {"From", "", "Wall"}}) == Texts{"Gland / From", "", "Wall"});
  CHECK(shown({{"No"}, {"No"}}) == Texts{"No"});
}

TEST_CASE("usual headings: taken where they alone mean a column", "[unit][schedule]") {
  CHECK(taken({{"Cable Ref.", "Overall Dia (mm)", "A Entry", "Entry Size To"}}) ==
        Texts{"from_entry = A Entry", "sheath_od_mm = Overall Dia (mm)", "tag = Cable Ref.",
              "to_entry = Entry Size To"});
  CHECK(taken({{"tag", "sheath_od_mm", "Length", "Route Length"}}) ==
        Texts{"?Length", "?Route Length", "sheath_od_mm = sheath_od_mm", "tag = tag"});
  CHECK(taken({{"tag", "sheath_od_mm", "Diameter", "Gland No"}}) ==
        Texts{"?Diameter", "?Gland No", "sheath_od_mm = sheath_od_mm", "tag = tag"});
}

TEST_CASE("usual headings: what may mean several things goes by its cells", "[unit][schedule]") {
  const Rows head{{"tag", "sheath_od_mm", "Zone", "Level", "Material", "Voltage"}};
  const Rows other{{"C1", "15", "Area 3", "2", "Cu", "11000"}};
  CHECK(taken(head, other) == Texts{"?Level", "?Material", "?Zone", "sheath_od_mm = sheath_od_mm",
                                    "system_voltage = Voltage", "tag = tag"});
  // One cell that may be a place with gas is enough.
  const Rows gas{{"C1", "15", "Area 3", "Gb", "steel", "0.6/1"}, {"C2", "15", "Z1", "", "", ""}};
  CHECK(taken(head, gas) == Texts{"level = Level", "material = Material",
                                  "sheath_od_mm = sheath_od_mm", "tag = tag", "voltage = Voltage",
                                  "zone = Zone"});
}

TEST_CASE("usual headings: two that may be one hazardous place are an error", "[unit][schedule]") {
  CHECK_THROWS_WITH(taken({{"tag", "sheath_od_mm", "Zone", "Hazardous Zone"}}),
                    Catch::Contains("two headings may be one column"));
}

TEST_CASE("usual headings: every row of the table means a column, or says why not",
          "[unit][schedule]") {
  const auto usual = schedule::usual_headings(io::builtin_standards());
  REQUIRE(usual.headings.size() > 300);
  for (std::size_t i = 0; i < usual.headings.size(); ++i) {
    const auto& row = usual.headings[i];
    INFO(row.plain);
    if (i > 0) CHECK(usual.headings[i - 1].plain != row.plain);
    CHECK(row.column.empty() == (row.column.empty() && !row.instead.empty()));
    if (row.column.empty()) continue;
    // Alone with what a schedule needs it is taken, or is one of these itself.
    const bool need = row.column == "tag" || row.column == "sheath_od_mm";
    Rows head{{row.column == "tag" ? "x" : "tag",
               row.column == "sheath_od_mm" ? "y" : "sheath_od_mm", row.plain}};
    const Texts texts = taken(head);
    const std::string want = row.column + " = " + row.plain;
    CHECK(std::find(texts.begin(), texts.end(), want) != texts.end());
    CHECK(texts.size() >= (need ? 2U : 3U));
  }
}

TEST_CASE("usual headings: a gland is an entry where threads stand in it", "[unit][schedule]") {
  const Rows head{{"tag", "sheath_od_mm", "Gland", ""}, {"", "", "From", "To"}};
  CHECK(taken(head, Rows{{"C1", "15", "M20", "M25"}}) ==
        Texts{"from_entry = Gland / From", "sheath_od_mm = sheath_od_mm", "tag = tag",
              "to_entry = Gland / To"});
  CHECK(taken(head, Rows{{"C1", "15", "20S", "25"}}) ==
        Texts{"?Gland / From", "?Gland / To", "sheath_od_mm = sheath_od_mm", "tag = tag"});
}
