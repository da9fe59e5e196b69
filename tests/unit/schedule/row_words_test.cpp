#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/schedule/row_kind.hpp"

using namespace cutback;
using schedule::RowKind;
using Words = std::vector<std::string_view>;

namespace {

schedule::Layout layout_of(const Words& headings) {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  schedule::Format format;
  format.usual = &k_usual;
  return schedule::make_layout(headings, format, "t.csv, line 1");
}

const schedule::Layout& layout() {
  static const schedule::Layout k_layout =
      layout_of({"Cable No", "From", "To", "O/D", "Qty", "Remarks", "Status"});
  return k_layout;
}

std::string said(const Words& cells) {
  std::string text;
  for (const auto& row : schedule::look_at_words(layout(), cells)) {
    const char* const kind = row.kind == RowKind::deleted          ? "deleted "
                             : row.kind == RowKind::may_be_deleted ? "may be "
                             : row.kind == RowKind::several_cables ? "several "
                                                                   : "unclear ";
    text += (text.empty() ? "" : "; ") + (kind + row.text);
  }
  return text;
}

std::string of_remark(std::string_view remark) {
  return said({"C-1", "MCC", "P-1", "15", "", remark});
}
std::string of_tag(std::string_view tag, std::string_view quantity = "",
                   std::string_view from = "MCC", std::string_view to = "P-1") {
  return said({tag, from, to, "15", quantity});
}

}  // namespace

TEST_CASE("look_at_words: a remark that the row is no cable any more", "[unit][schedule]") {
  for (const char* remark :
       {"Deleted", "DELETED", "deleted.", "Cable deleted", "Deleted rev C", "DELETED - see C-12",
        "Superseded by C-12", "Cancelled", "Canceled 12/03/2024", "VOID", "Void at rev 3",
        "not used", "Not Used.", "NOT REQUIRED", "SPARE", "This cable has been deleted",
        "removed as per TQ 14"}) {
    INFO(remark);
    CHECK(of_remark(remark) == "deleted C-1: " + std::string(remark));
  }
}

TEST_CASE("look_at_words: a remark that may say so", "[unit][schedule]") {
  for (const char* remark :
       {"Deleted in error, reinstated rev D", "void - not to be installed", "spare cable", "Hold",
        "ON HOLD", "Future", "existing cable", "by others", "tray deleted", "not deleted",
        "del. date 3 May", "to be deleted", "cancelled order 12, reordered"}) {
    INFO(remark);
    CHECK(of_remark(remark) == "may be C-1: " + std::string(remark));
  }
}

TEST_CASE("look_at_words: a remark that says nothing of it", "[unit][schedule]") {
  for (const char* remark :
       {"", "2 spare cores", "10% spare", "spare core earthed", "Pump 1", "see note 3",
        "delivery 4 weeks", "avoid tray 3", "Holding tank", "futures", "unvoided"}) {
    INFO(remark);
    CHECK(of_remark(remark).empty());
  }
}

TEST_CASE("look_at_words: in the tag, the equipment and a column of status", "[unit][schedule]") {
  CHECK(of_tag("C-12 (DELETED)") == "deleted C-12 (DELETED)");
  CHECK(of_tag("C-12-VOID") == "deleted C-12-VOID");
  CHECK(of_tag("SPARE") == "deleted SPARE");
  CHECK(of_tag("C-12 SPARE") == "may be C-12 SPARE");
  CHECK(of_tag("SPARE-01") == "may be SPARE-01");
  // A ceiling void, for example.
  CHECK(of_tag("VOID-12") == "may be VOID-12");
  CHECK(of_tag("C-12 (HOLD)") == "may be C-12 (HOLD)");
  CHECK(said({"C-1", "MCC", "DELETED", "15"}) == "deleted C-1: DELETED");
  CHECK(said({"C-1", "MCC", "Spare", "15"}) == "may be C-1: Spare");
  CHECK(said({"C-1", "Existing MCC", "P-1", "15"}).empty());
  CHECK(said({"C-1", "MCC", "P-1", "15", "", "", "D"}) == "may be C-1: D");
  CHECK(said({"C-1", "MCC", "P-1", "15", "", "D", ""}).empty());
}

TEST_CASE("look_at_words: a column that the user ignores is not looked at", "[unit][schedule]") {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  schedule::Format format;
  format.usual = &k_usual;
  format.ignored = {"Remarks"};
  const auto own =
      schedule::make_layout(Words{"Cable No", "O/D", "Remarks"}, format, "t.csv, line 1");
  CHECK(schedule::look_at_words(own, Words{"C-1", "15", "Deleted"}).empty());
}

TEST_CASE("count_of: a tag that names several cables", "[unit][schedule]") {
  for (const auto& [tag, count] :
       std::vector<std::pair<const char*, unsigned>>{{"P-8 to P-12", 5},
                                                     {"P-8 to 12", 5},
                                                     {"P-8..P-12", 5},
                                                     {"P-8...12", 5},
                                                     {"P-08 thru P-12", 5},
                                                     {"P-8 - P-12", 5},
                                                     {"P-8 \xE2\x80\x93 P-12", 5},
                                                     {"P-8A to P-8C", 3},
                                                     {"P-8/9/10", 3},
                                                     {"P-8/P-9/P-12", 3},
                                                     {"P-8A/B/C", 3},
                                                     {"P-8, P-9", 2},
                                                     {"P-8 & 9", 2},
                                                     {"P-8 and P-10", 2},
                                                     {"P-8, 9, 12", 3}}) {
    INFO(tag);
    CHECK(schedule::quantity_of(layout(), Words{tag, "MCC", "P-1", "15"}) == count);
    CHECK(of_tag(tag) == "several " + std::string(tag) + ": " + std::to_string(count));
    // The column says the same, or it is not known.
    CHECK(of_tag(tag, std::to_string(count)).empty());
    CHECK(of_tag(tag, "1") == "unclear " + std::string(tag) + ": the tag names " +
                                  std::to_string(count) + " cables, and the quantity is 1");
  }
}

TEST_CASE("count_of: a tag that may name several cables, or one", "[unit][schedule]") {
  for (const char* tag :
       {"P-8/9", "P-8A/B", "C101-C105", "8/9/10", "P-12 to P-8", "C-101 - 102", "P-8, P-10 to P-12",
        "C-12 (2 off)", "C-12 x 2", "2 x C-12", "2xC1", "C1 (2 of)", "C1-A/B", "P-101-A/B/C"}) {
    INFO(tag);
    CHECK(of_tag(tag) == "unclear " + std::string(tag) +
                             ": the tag may name several cables, and is counted as one");
    CHECK(of_tag(tag, "1").empty());
    CHECK(of_tag(tag, "2").empty());
  }
}

TEST_CASE("count_of: a tag that names one cable", "[unit][schedule]") {
  for (const char* tag :
       {"P-8", "MCC/P-8", "MCC1-P8", "P-8-12", "11-P-8", "C-101 - PUMP", "MCC1 to P-8",
        "Pump to MCC", "PUMP A/PUMP B", "W1", "1/2-W", "C_12", "-1+2", "P-8-A", "MCC-A/P-8"}) {
    INFO(tag);
    CHECK(of_tag(tag).empty());
  }
  // Between these two.
  CHECK(of_tag("JB-1 to JB-4", "", "JB-1", "JB-4").empty());
  CHECK(of_tag("JB1-JB4", "", "JB4", "JB1").empty());
}

TEST_CASE("count_of: what stands in a column of quantities", "[unit][schedule]") {
  const auto count = [](std::string_view text) {
    return schedule::count_of(layout(), Words{"C-1", "MCC", "P-1", "15", text});
  };
  for (const char* text : {"2", "2 off", "2off", "2x", "x2", "2 No.", "2 nos", "(2)", "2 runs",
                           "2.0", "2 cables", "2 ea"}) {
    INFO(text);
    REQUIRE(count(text));
    CHECK(count(text)->cables == 2);
    CHECK(count(text)->unclear.empty());
  }
  for (const char* text :
       {"0", "-2", "2+1", "2.5", "2/ph", "2 x 3", "two", "2 sets", "2-3", "1,5", "20000"}) {
    INFO(text);
    CHECK_FALSE(count(text));
  }
  CHECK(count("")->cables == 1);
  CHECK(count("")->unclear.empty());
  CHECK(count("-")->unclear.empty());
  for (const char* text : {"TBC", "tba", "?", "N/A"}) {
    INFO(text);
    CHECK(count(text)->cables == 1);
    CHECK(count(text)->unclear ==
          "the quantity is \"" + std::string(text) + "\", and is counted as one");
  }
}

TEST_CASE("make_layout: headings of quantities, and those that may be others", "[unit][schedule]") {
  for (const char* heading :
       {"Qty", "No off", "No. Off", "Runs", "Parallel runs", "Cables in parallel", "Quantity",
        "Qty (No.)", "Number off", "No. of cables"}) {
    INFO(heading);
    CHECK(layout_of({"Cable No", "O/D", heading}).quantity == 2);
  }
  for (const char* heading : {"No.", "Nos", "Sets", "No. of sets", "Cables per phase"}) {
    INFO(heading);
    const auto own = layout_of({"Cable No", "From", "To", "O/D", heading});
    CHECK(own.quantity == schedule::Layout::k_none);
    REQUIRE(own.warnings.size() == 1);
    CHECK_THAT(own.warnings.front(), Catch::Contains("is not read") && Catch::Contains("quantity"));
  }
}

TEST_CASE("look_at_words: a word takes a row out in a column of remarks alone",
          "[unit][schedule]") {
  const auto under = [](std::string_view heading, std::string_view text) {
    const auto own = layout_of({"Cable No", "From", "To", "O/D", heading});
    const auto rows = schedule::look_at_words(own, Words{"C-1", "MCC", "P-1", "15", text});
    if (rows.empty()) return "answered";
    return rows.front().kind == RowKind::deleted ? "out" : "named";
  };
  for (const char* heading : {"Remarks", "Comment", "Status", "Cable Status", "Notes / Comments",
                              "Description", "Rev. Status", "Change"}) {
    INFO(heading);
    CHECK(under(heading, "Deleted") == std::string_view("out"));
    CHECK(under(heading, "Not required") == std::string_view("out"));
  }
  for (const char* heading : {"Shroud", "Fire seal", "Test Status", "Tray Status", "Drum Status",
                              "From Gland Remark", "Earth tag"}) {
    INFO(heading);
    CHECK(under(heading, "Not required") == std::string_view("named"));
  }
  CHECK(under("Shroud", "Yes") == std::string_view("answered"));
}

TEST_CASE("look_at_words: deletion and glands of others in more words", "[unit][schedule]") {
  for (const char* text : {"entf\xC3\xA4llt", "gestrichen", "supprim\xC3\xA9", "anulado",
                           "Not req'd", "no longer needed", "Canc."}) {
    INFO(text);
    CHECK(of_remark(text) == "deleted C-1: " + std::string(text));
  }
  for (const char* text :
       {"duplicate of C9", "combined with C9", "pre-terminated", "N/R", "Factory fitted gland",
        "Pre-glanded cable", "Glands: vendor", "cable terminated by MCC supplier", "FIM",
        "Deleted from MCC-2, now MCC-1", "Not required at this stage"}) {
    INFO(text);
    CHECK(of_remark(text) == "may be C-1: " + std::string(text));
  }
}

TEST_CASE("title_of_deleted: titles that take the cables under them away", "[unit][schedule]") {
  const auto says = [](const char* text) {
    return !schedule::title_of_deleted(layout(), Words{"", text}).empty();
  };
  for (const char* text :
       {"DELETED CABLES", "CANCELLED", "SPARE CABLES", "GLANDS BY VENDOR", "BY OTHERS",
        "EXISTING CABLES (no work)", "The following cables are deleted:", "VOID",
        "ON HOLD - DO NOT ORDER", "PRELIMINARY - NOT FOR ORDER", "Superseded"}) {
    INFO(text);
    CHECK(says(text));
  }
  for (const char* text : {"PUMP HOUSE", "EXISTING SUBSTATION", "SPARE PARTS STORE",
                           "FUTURE EXTENSION", "Void under floor of level 2 and the plant room"}) {
    INFO(text);
    CHECK_FALSE(says(text));
  }
}

TEST_CASE("look_at_words: a remark that asks for another gland", "[unit][schedule]") {
  for (const char* text :
       {"barrier gland required", "IP68 required", "submerged", "lead covered"}) {
    INFO(text);
    CHECK(of_remark(text) == "may be C-1: " + std::string(text));
  }
  CHECK(of_remark("see note 3").empty());
}
