#include "run/row_doubts.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/csv_rows.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using run::OutsideRow;
using run::RowDoubts;
using schedule::Side;
using Words = std::vector<std::string_view>;

namespace {

schedule::Format usual_format() {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  schedule::Format format;
  format.usual = &k_usual;
  return format;
}

schedule::Layout layout_of(const Words& headings) {
  return schedule::make_layout(headings, usual_format(), "t.csv, line 1");
}

}  // namespace

TEST_CASE("RowDoubts: a tag above, a title over the row, a number that is not clear",
          "[unit][run]") {
  const auto layout = layout_of({"Cable No", "From", "To", "O/D", "From Zone", "To Zone"});
  const RowDoubts doubts(layout);
  const Words cells{"C-1", "MCC", "P-1", "15", "none", "none"};
  CHECK_FALSE(doubts.of(cells, Side::from, {}).any());

  const OutsideRow twice{.above = "line 4", .title = {}};
  const auto again = doubts.of(cells, Side::from, {}, twice);
  REQUIRE(again.count.has_value());
  CHECK(again.count->says == "its tag stands on line 4 already");
  CHECK(again.place.empty());

  const OutsideRow titled{.above = "", .title = {"ZONE 1", ""}};
  CHECK(doubts.of(cells, Side::to, {}, titled).place == "ZONE 1");
  // One end in the place that the title names: the other may lie outside of it.
  const Words mixed{"C-1", "MCC", "P-1", "15", "none", "1"};
  CHECK_FALSE(doubts.of(mixed, Side::from, {}, titled).any());

  const OutsideRow away{.above = "", .title = {"", "DELETED CABLES"}};
  CHECK(doubts.of(cells, Side::to, {}, away).count->says == "it stands under \"DELETED CABLES\"");

  const OutsideRow second{.above = "", .title = {.place = "", .away = "", .beside = "Cables"}};
  CHECK(std::string_view(doubts.of(cells, Side::to, {}, second).count->group) ==
        "a second list beside that of the cables");

  schedule::RowCount count;
  count.unclear = "the tag may name several cables";
  CHECK(doubts.of(cells, Side::from, count).count->says == "the tag may name several cables");
}

TEST_CASE("EndDoubt: what it says of a decision", "[unit][run]") {
  schedule::Decision decision;
  decision.verdict = Verdict::fits;
  decision.proven = true;
  decision.reason = "fits";
  run::EndDoubt doubt;
  doubt.say(decision);
  CHECK(decision.proven);
  doubt.count = schedule::CountDoubt{.says = "seen twice"};
  doubt.place = "ZONE 1";
  doubt.say(decision);
  CHECK_FALSE(decision.proven);
  CHECK(decision.reason ==
        "fits; seen twice; the place is told plain, and \"ZONE 1\" speaks of a hazardous one");
  CHECK(std::string_view(decision.group) == "number of cables not known");
}

TEST_CASE("TitleOver: a title holds until another follows cables", "[unit][run]") {
  const std::string text =
      "Cable No,From,To,O/D,Zone\n"
      "C-1,MCC,P-1,15,none\n"
      "ZONE 1,,,,\n"
      "Process pumps,,,,\n"
      "C-2,MCC,P-2,15,none\n"
      "SWITCHROOM,,,,\n"
      "C-3,MCC,P-3,15,none\n"
      "CABLES BY OTHERS,,,,\n"
      "C-4,MCC,P-4,15,none\n";
  io::CsvRows rows(text, "t.csv");
  io::ScheduleFile file(rows, "t.csv", usual_format(), std::nullopt);
  CHECK(file.is_told_plain());
  run::TitleOver titles;
  titles.begin(file);
  std::vector<std::string> over;
  io::RowBlock block;
  while (file.read(block)) {
    file.finish(block);
    titles.begin(block);
    for (std::size_t i = 0; i < block.rows; ++i) {
      const io::TitleSays& says = titles.over(block.records[i].line);
      over.push_back(says.place + "|" + says.away);
    }
    titles.end();
  }
  CHECK(over == std::vector<std::string>{"|", "ZONE 1|", "|", "|CABLES BY OTHERS"});
}
