#include "cutback/io/gland_convert.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/io/gland_list.hpp"

using namespace cutback;
using Catch::Contains;
using io::Converted;
using io::ConvertTerms;
using io::TableRow;

namespace {

ConvertTerms terms() {
  ConvertTerms terms;
  terms.headings = {{"part", "Order code"},   {"entry_thread", "Thread"},
                    {"outer_mm", "Cable OD"}, {"inner_mm", "Bedding"},
                    {"armour_mm", "SWA"},     {"bore_mm", "Bore (inch)"}};
  terms.values = {{"armour", "wire"}};
  return terms;
}

const TableRow k_head{3, {"Order code", "Thread", "Cable OD", "Bedding", "SWA", "Bore (inch)"}};

Converted convert(std::vector<TableRow> rows, const ConvertTerms& how = terms()) {
  rows.insert(rows.begin(), {{1, {"Our glands"}}, k_head});
  return io::convert_glands(rows, "theirs.csv", "row", how);
}

}  // namespace

TEST_CASE("gland_convert: headings, ranges in one cell, inches", "[unit][io]") {
  const Converted list = convert({{4, {"X1", "20mm", "11-16", "8 to 12", "0.9-1.25", "0.5"}},
                                  {5, {"", "", "", "", "", ""}},
                                  {6, {"X2", "M25", "0.5-0.75in", "-", "1.25", "n/a"}}});
  CHECK(list.glands == 2);
  CHECK(list.left_out.empty());
  const gland::GlandList read = io::read_gland_list(list.text, "list");
  REQUIRE(read.glands.size() == 2);
  const gland::Gland& first = read.glands[0];
  CHECK(first.part == "X1");
  CHECK(entry::to_text(first.entry_thread) == "M20");
  CHECK(first.outer.low_mm == 11.0);
  CHECK(first.inner->high_mm == 12.0);
  CHECK(first.armour_clamp.high_mm == 1.25);
  CHECK(*first.bore_mm == Approx(12.7));
  const gland::Gland& second = read.glands[1];
  CHECK(*second.outer.low_mm == Approx(12.7));
  CHECK(*second.outer.high_mm == Approx(19.05));
  CHECK_FALSE(second.inner);
  CHECK(second.armour_clamp.low_mm == second.armour_clamp.high_mm);
}

TEST_CASE("gland_convert: what cannot be read is left out with its row, never guessed",
          "[unit][io]") {
  const Converted list = convert({{4, {"X1", "M20", "11-16", "8-12", "0.9", ""}},
                                  {5, {"X2", "M20", "16", "8-12", "0.9", ""}},
                                  {6, {"X3", "M99", "11-16", "8-12", "0.9", ""}},
                                  {7, {"X1", "M25", "11-16", "8-12", "0.9", ""}},
                                  {8, {"X4", "M20", "16-11", "8-12", "0.9", ""}},
                                  {9, {"X5", "M20", "11-16", "8-12", "about 1", ""}}});
  CHECK(list.glands == 1);
  REQUIRE(list.left_out.size() == 5);
  CHECK_THAT(list.left_out[0], Contains("row 5") && Contains("outer_mm") && Contains("\"16\""));
  CHECK_THAT(list.left_out[1], Contains("row 6") && Contains("entry_thread") && Contains("M99"));
  CHECK_THAT(list.left_out[2], Contains("row 7") && Contains("row 4 already"));
  CHECK_THAT(list.left_out[3], Contains("row 8"));
  CHECK_THAT(list.left_out[4], Contains("row 9"));
}

TEST_CASE("gland_convert: a price that is no figure does not take the gland away", "[unit][io]") {
  const TableRow head{1,
                      {"Order code", "Thread", "Cable OD", "Bedding", "SWA", "Bore (inch)", "Price",
                       "Lead time", "Material"}};
  const auto row = [](std::size_t line, const char* part, const char* price) {
    return TableRow{line,
                    {part, "M20",
                     "\xC3\x98"
                     "11-16 mm",
                     "8-12", "0.9", "", price, "2 weeks", "CZ121"}};
  };
  const std::vector<TableRow> rows{head,
                                   row(2, "X1", "12.5"),
                                   row(3, "X2", "POA"),
                                   row(4, "X3", "1,250.00"),
                                   row(5, "X4",
                                       "\xC2\xA3"
                                       "14.00"),
                                   row(6, "X5", "12,50"),
                                   row(7, "X6", "1,250")};
  const Converted list = io::convert_glands(rows, "theirs.csv", "row", terms());
  CHECK(list.left_out.empty());
  CHECK(list.unread == std::vector<std::string>{"Lead time", "Material"});
  REQUIRE(list.unpriced.size() == 3);
  CHECK_THAT(list.unpriced[0], Contains("row 3") && Contains("\"POA\""));
  CHECK_THAT(list.unpriced[1], Contains("\"12,50\""));
  CHECK_THAT(list.unpriced[2], Contains("\"1,250\""));  // a decimal comma, or thousands
  const gland::GlandList read = io::read_gland_list(list.text, "list");
  REQUIRE(read.glands.size() == 6);
  CHECK(read.glands[0].price == 12.5);
  CHECK_FALSE(read.glands[1].price);
  CHECK(read.glands[2].price == 1250.0);
  CHECK(read.glands[3].price == 14.0);
  CHECK(read.glands[0].outer.low_mm == 11.0);
}

TEST_CASE("gland_convert: a decimal comma", "[unit][io]") {
  ConvertTerms how = terms();
  how.decimal = ',';
  const Converted list = convert({{4, {"X1", "M20", "11,4-16,6", "8-12", "0,9-1,25", ""}}}, how);
  CHECK(io::read_gland_list(list.text, "l").glands.front().outer.high_mm == 16.6);
}

TEST_CASE("gland_convert: headings that are not there, columns that are none", "[unit][io]") {
  ConvertTerms how = terms();
  how.headings.emplace_back("price", "Prise");
  CHECK_THROWS_WITH(convert({{4, {"X1"}}}, how), Contains("no such heading"));
  how = terms();
  how.headings.emplace_back("colour", "Bedding");
  CHECK_THROWS_WITH(convert({{4, {"X1"}}}, how), Contains("no such column"));
  CHECK_THROWS_AS(convert({{4, {"X1", "M20", "wide", "8-12", "0.9", ""}}}), InputError);
}
