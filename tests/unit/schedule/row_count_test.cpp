#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"
#include "cutback/schedule/layout.hpp"

using namespace cutback;
using schedule::Layout;
using Words = std::vector<std::string_view>;
using Catch::Contains;

namespace {

Layout layout_of(const Words& headings, std::optional<int> ends = {},
                 schedule::Sample sample = {}) {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  schedule::Format format;
  format.usual = &k_usual;
  format.ends = ends;
  const std::vector<std::string> row(headings.begin(), headings.end());
  return schedule::make_layout(schedule::join_headings({&row, 1}), format, "t.csv, line 1", sample);
}

/// What is not clear of the row's number; "2" where it is clear.
std::string count(const Layout& layout, const Words& cells) {
  const auto count = schedule::count_of(layout, cells);
  REQUIRE(count.has_value());
  return count->unclear.empty() ? std::to_string(count->cables) : count->unclear;
}

bool warns(const Layout& layout, std::string_view text) {
  return std::any_of(layout.warnings.begin(), layout.warnings.end(),
                     [&](const std::string& each) { return each.find(text) != std::string::npos; });
}

}  // namespace

TEST_CASE("count_of: a quantity beside a unit of length is no number of cables",
          "[unit][schedule]") {
  for (const char* heading : {"Unit", "UoM", "Units", "Unit of Measure"}) {
    INFO(heading);
    const Layout layout = layout_of({"Cable No", "From", "To", "OD", heading, "Qty"});
    const auto of = [&](std::string_view unit, std::string_view quantity) {
      return count(layout, {"C1", "MCC", "P1", "23.2", unit, quantity});
    };
    CHECK(of("m", "150") ==
          "the quantity is 150 m, which is no number of cables; it is counted as one");
    CHECK_THAT(of("drum", "2"), Contains("2 drum"));
    for (const char* unit : {"No", "No.", "nos", "Nr", "ea", "Each", "pcs", ""}) {
      INFO(unit);
      CHECK(of(unit, "3") == "3");
    }
    CHECK(of("m", "") == "1");
    CHECK(warns(layout, "taken for what the quantity is of"));
    CHECK_FALSE(warns(layout, "is ignored"));
  }
  // A unit behind a length is that of the length.
  const Layout length =
      layout_of({"Cable No", "From", "To", "OD", "Qty", "Remarks", "Length (m)", "Unit"});
  CHECK(count(length, {"C1", "MCC", "P1", "23.2", "3", "", "150", "m"}) == "3");
}

TEST_CASE("count_of: a column of glands or ends that says another number", "[unit][schedule]") {
  for (const char* heading : {"Glands Required", "No. of Ends", "Gland Qty", "Qty of Glands",
                              "Ends", "Glands Req'd", "Number of glands"}) {
    INFO(heading);
    const Layout layout = layout_of({"Cable No", "From", "To", "OD", heading, "Qty"});
    const auto of = [&](std::string_view glands, std::string_view quantity = "") {
      return count(layout, {"C1", "MCC", "P1", "23.2", glands, quantity});
    };
    CHECK(of("1") == "the column " + std::string(heading) + " says 1, and 2 are counted");
    CHECK_THAT(of("0"), Contains("says 0, and 2 are counted"));
    CHECK_THAT(of("by vendor"), Contains("says by vendor"));
    CHECK(of("2") == "1");
    CHECK(of("") == "1");
    CHECK(of("-") == "1");
    CHECK(of("Y") == "1");
    // Of each cable, or of all of them.
    CHECK(of("2", "3") == "3");
    CHECK(of("6", "3") == "3");
    CHECK_THAT(of("4", "3"), Contains("says 4, and 6 are counted"));
  }
  for (const char* heading : {"Gland No", "Gland Type", "Gland", "Gland Size", "End Box"}) {
    INFO(heading);
    CHECK(layout_of({"Cable No", "From", "To", "OD", heading}).counts.empty());
  }
  const Layout one = layout_of({"Cable No", "From", "To", "OD", "Gland Qty (From)"});
  CHECK(count(one, {"C1", "MCC", "P1", "23.2", "1"}) == "1");
  CHECK_THAT(count(one, {"C1", "MCC", "P1", "23.2", "0"}), Contains("says 0, and 1 is counted"));
}

TEST_CASE("count_of: an end that lies at several places", "[unit][schedule]") {
  const Layout layout = layout_of({"Cable No", "From", "To", "OD"});
  const auto to = [&](std::string_view place) {
    return count(layout, {"C1", "MCC", place, "23.2"});
  };
  CHECK(to("P1/P2/P3 (looped)") == "\"P1/P2/P3\" may be 3 places, and one end is counted there");
  CHECK_THAT(to("JB-1\nJB-2"), Contains("2 places"));
  for (const char* place : {"P1", "MCC-1", "Pump 1, Room 3", "UPS/DB", "P-101/102"}) {
    INFO(place);
    CHECK(to(place) == "1");
  }
}

TEST_CASE("make_layout: without from and to nothing tells whether a row is one end",
          "[unit][schedule]") {
  const Words cables{"Cable No", "Cores", "Size (mm2)", "OD", "Length (m)"};
  const Layout open = layout_of(cables);
  CHECK_FALSE(open.two_ends);
  CHECK(open.ends_not_told);
  CHECK(open.may_be_cables);
  CHECK_THAT(open.warnings.front(), Contains("no heading tells from and to"));
  CHECK_THAT(open.warnings.front(), Contains("--ends 2"));

  const Layout two = layout_of(cables, 2);
  CHECK(two.two_ends);
  CHECK_FALSE(two.ends_not_told);
  CHECK_FALSE(warns(two, "from and to"));
  const Layout one = layout_of(cables, 1);
  CHECK_FALSE(one.two_ends);
  CHECK_FALSE(one.may_be_cables);
  CHECK_FALSE(warns(one, "from and to"));

  // Nothing of a whole cable stands there: it is said, and not asked.
  const Layout bare = layout_of({"Cable No", "OD", "Entry"});
  CHECK(bare.ends_not_told);
  CHECK_FALSE(bare.may_be_cables);
  CHECK_THAT(bare.warnings.front(), Contains("each row is taken for one end"));

  // Two headings of a language that is not known here may be from and to.
  CHECK(layout_of({"Cable No", "Von", "Nach", "OD", "Entry"}).may_be_cables);
  CHECK_FALSE(layout_of({"Cable No", "Equipment", "OD", "Entry"}).may_be_cables);

  // What the headings tell counts, whatever is said.
  CHECK(layout_of({"Cable No", "From", "To", "OD"}, 1).two_ends);
  CHECK_FALSE(layout_of({"Cable No", "End", "OD"}, 2).two_ends);
  CHECK_FALSE(layout_of({"Cable No", "End", "OD"}).ends_not_told);
}

TEST_CASE("make_layout: tags that stand twice name the two ends of a cable", "[unit][schedule]") {
  const Words headings{"Cable No", "Cores", "Size (mm2)", "OD"};
  using Rows = std::vector<std::vector<std::string>>;
  const Rows ends{{"C1", "4", "16", "23"},
                  {"C1", "4", "16", "23"},
                  {"C2", "4", "16", "23"},
                  {"C2", "4", "16", "23"}};
  const Rows pasted{{"C1", "4", "16", "23"},
                    {"C1", "4", "16", "23"},
                    {"C2", "4", "16", "23"},
                    {"C3", "4", "16", "23"}};
  CHECK_FALSE(layout_of(headings, {}, ends).may_be_cables);
  CHECK(layout_of(headings, {}, ends).ends_not_told);
  CHECK(layout_of(headings, {}, pasted).may_be_cables);
}

TEST_CASE("make_layout: columns of an earlier result are left out in one line",
          "[unit][schedule]") {
  const Layout layout = layout_of({"Cable No", "From", "To", "OD", "cutback from_verdict",
                                   "cutback from_reason", "Cutback (mm)"});
  CHECK(layout.own_results == std::vector<std::pair<std::string, std::size_t>>{
                                  {"cutback from_verdict", 4}, {"cutback from_reason", 5}});
  CHECK(warns(layout, "2 columns of an earlier result are not read"));
  CHECK_FALSE(warns(layout, "cutback from_verdict"));
  CHECK(warns(layout, "\"Cutback (mm)\""));
  CHECK(layout.unread.size() == 1);
}

TEST_CASE("count_of: C10-12 among C9 and C13 may be three cables", "[unit][schedule]") {
  using Rows = std::vector<std::vector<std::string>>;
  const auto says = [](const Rows& rows, std::string_view tag) {
    const Layout layout = layout_of({"Cable No", "From", "To", "OD"}, {}, rows);
    return count(layout, {tag, "MCC", "P1", "23.2"});
  };
  const Rows runs{{"C8"}, {"C9"}, {"C10-12"}, {"C13"}, {"C14"}};
  for (const char* tag : {"C10-12", "C101-05", "c10-12", "C10A-12A"}) {
    INFO(tag);
    CHECK(says(runs, tag) == "the tag may name several cables, and is counted as one");
  }
  for (const char* tag : {"C12-10", "MCC1-12", "C10-A", "C105-03"}) {
    INFO(tag);
    CHECK(says(runs, tag) == "1");
  }
  // Where tags are made so, each is one cable.
  CHECK(says({{"C1-11"}, {"C1-12"}, {"C2-11"}}, "C10-12") == "1");
  CHECK(says({}, "C10-12") == "1");
}

TEST_CASE("count_of: tags that may name several cables", "[unit][schedule]") {
  const Layout layout = layout_of({"Cable No", "From", "To", "OD"});
  const auto says = [&](std::string_view tag) { return count(layout, {tag, "MCC", "P1", "23.2"}); };
  for (const char* tag : {"C11 C12", "C23 (1-3)", "C24(R,Y,B)", "C32 [2 runs]"}) {
    INFO(tag);
    CHECK(says(tag) == "the tag may name several cables, and is counted as one");
  }
  for (const char* tag : {"C11 PUMP", "C23 (spare)", "C24 (415V)", "MCC 1", "C1 (rev A)"}) {
    INFO(tag);
    CHECK(says(tag) == "1");
  }
}

TEST_CASE("count_of: very many cables of one tag, and a percentage", "[unit][schedule]") {
  const Layout layout = layout_of({"Cable No", "From", "To", "OD", "Qty"});
  const auto of = [&](std::string_view quantity) {
    return schedule::count_of(layout, Words{"C1", "MCC", "P1", "23.2", quantity});
  };
  CHECK(of("100")->unclear.empty());
  CHECK(of("150")->unclear == "150 cables of one tag may be a length");
  CHECK_FALSE(of("100%").has_value());
}
