#include "cutback/schedule/row_kind.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using schedule::RowKind;
using Words = std::vector<std::string_view>;

namespace {

const schedule::Layout& layout() {
  static const schedule::Layout k_layout = schedule::make_layout(
      Words{"tag", "from", "sheath_od_mm", "zone", "length_m", "note"}, {}, "t.csv, line 1");
  return k_layout;
}

RowKind kind(const Words& cells, std::vector<schedule::Covered> covered = {},
             std::vector<std::size_t> struck = {}, bool hidden = false) {
  return schedule::kind_of(
      layout(), {.cells = cells, .covered = covered, .struck = struck, .hidden = hidden});
}

}  // namespace

TEST_CASE("kind_of: cables, whatever is wrong with them", "[unit][schedule]") {
  CHECK(kind({"C1", "MCC", "15", "1"}) == RowKind::cable);
  CHECK(kind({"C1"}) == RowKind::cable);
  CHECK(kind({"C1", "", "", "", "40"}) == RowKind::cable);
  CHECK(kind({"PUMP HOUSE", "", "15"}) == RowKind::cable);
  CHECK(kind({"", "MCC", "15"}) == RowKind::cable);
  CHECK(kind({"", "MCC", "", "1"}) == RowKind::cable);
  CHECK(kind({"Total", "MCC", "15"}) == RowKind::cable);
  CHECK(kind({"SUM-101", "", "15"}) == RowKind::cable);
}

TEST_CASE("kind_of: titles, sums and headings", "[unit][schedule]") {
  CHECK(kind({"", " ", ""}) == RowKind::blank);
  CHECK(kind({"PUMP HOUSE"}) == RowKind::title);
  CHECK(kind({"Level 2"}) == RowKind::title);
  CHECK(kind({"", "", "see drawing 7"}) == RowKind::title);
  CHECK(kind({"", "", "", "", "120"}) == RowKind::no_tag);
  CHECK(kind({"", "MCC", "", "", "120"}) == RowKind::no_tag);
  CHECK(kind({"Sub-total", "", "", "", "120"}) == RowKind::no_tag);
  // A spreadsheet sums the diameters too.
  for (const char* sum : {"Total", "TOTAL MCC-1", "SUBTOTAL", "Grand Total", "Sum", "Summe"}) {
    INFO(sum);
    CHECK(kind({sum, "", "46.4"}) == RowKind::no_tag);
  }
  CHECK(kind({"Carried forward", "", "", "", "120"}) == RowKind::no_tag);
  CHECK(kind({"", "", "", "Total", "140"}) == RowKind::no_tag);
  CHECK(kind({"Tag", "From", "sheath_od_mm", "zone"}) == RowKind::headings);
}

TEST_CASE("kind_of: a merged cell is no cell of the row", "[unit][schedule]") {
  CHECK(kind({"SEC-1", "SEC-1", "SEC-1"}, {{1, false}, {2, false}}) == RowKind::title);
  CHECK(kind({"SEC-1", "SEC-1", "SEC-1", "1"}, {{1, false}, {2, false}, {3, true}}) ==
        RowKind::title);
  CHECK(kind({"C1", "MCC", "15", "1"}, {{0, true}, {1, true}, {2, true}, {3, true}}) ==
        RowKind::goes_on);
  CHECK(kind({"C1", "MCC", "15", "1"}, {{0, true}, {2, true}, {3, true}}) == RowKind::cable);
  CHECK(kind({"C2", "MCC", "15", "1"}, {{3, true}}) == RowKind::cable);
}

TEST_CASE("kind_of: the cores of a cable beside its merged cells", "[unit][schedule]") {
  // note is read by nobody.
  CHECK(kind({"C1", "MCC", "15", "", "", "BN"}, {{0, true}, {1, true}, {2, true}}) ==
        RowKind::goes_on);
  CHECK(kind({"C1", "MCC", "15", "1", "", "BN"}, {{0, true}, {1, true}, {2, true}}) ==
        RowKind::cable);
}

TEST_CASE("kind_of: hidden and struck through", "[unit][schedule]") {
  CHECK(kind({"C1", "MCC", "15"}, {}, {}, true) == RowKind::hidden);
  CHECK(kind({"", ""}, {}, {}, true) == RowKind::blank);
  CHECK(kind({"C1", "MCC", "15"}, {}, {0}) == RowKind::struck);
  CHECK(kind({"C1", "MCC", "15"}, {}, {0, 1, 2}) == RowKind::struck);
  CHECK(kind({"C1", "MCC", "15"}, {}, {2}) == RowKind::cable);
}

TEST_CASE("kind_of: headings of other columns, units and numbers of columns", "[unit][schedule]") {
  CHECK(kind({"tag", "sheath_od_mm", "from", "zone"}) == RowKind::other_headings);
  CHECK(kind({"from", "tag", "sheath_od_mm", "zone", "note"}) == RowKind::other_headings);
  CHECK(kind({"", "", "mm", "", "m"}) == RowKind::headings);
  CHECK(kind({"-", "-", "mm", "-", "m", "-"}) == RowKind::headings);
  CHECK(kind({"1", "2", "3", "4", "5", "6"}) == RowKind::headings);
  CHECK(kind({"(1)", "(2)", "(3)", "(4)"}) == RowKind::headings);
  CHECK(kind({"1", "2", "15", "1", "5"}) == RowKind::cable);
  CHECK(kind({"1", "MCC", "15"}) == RowKind::cable);
}

TEST_CASE("SkippedRows: names the first of each kind and counts the rest", "[unit][schedule]") {
  schedule::SkippedRows rows;
  rows.add({3, RowKind::blank, ""});
  CHECK(rows.text("row").empty());
  for (std::size_t i = 0; i < 12; ++i) rows.add({10 + i, RowKind::hidden, "C" + std::to_string(i)});
  rows.add({40, RowKind::title, "TANKS"});
  CHECK(rows.count(RowKind::hidden) == 12);
  CHECK(rows.text("row").starts_with(
      "1 blank, 1 title (row 40 \"TANKS\"), 12 hidden (row 10 \"C0\""));
  CHECK(rows.text("row").ends_with("row 19 \"C9\", ...)"));
}
