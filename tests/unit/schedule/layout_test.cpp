#include "cutback/schedule/layout.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"
#include "cutback/job/field_text.hpp"

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

/// With what the trade usually means.
Format usual_format() {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  Format format;
  format.usual = &k_usual;
  return format;
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
  CHECK_THAT(fault_of("15 cm"), Contains("more than a figure") && Contains("column sheath_od_mm"));
  CHECK_THAT(fault_of("15 mm2"), Contains("more than a figure"));
  CHECK_THAT(fault_of("15 mm thick"), Contains("more than a figure"));
  CHECK_THAT(fault_of("15 in", '.', "wall_mm"), Contains("more than a figure"));
  CHECK_THAT(fault_of("#struck-through"), Contains("is struck through"));
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
  CHECK_THAT(fault_of("1.23,5", ',', "wall_mm"), Contains("decimal point"));
  CHECK_THAT(fault_of("1,234", '.', "wall_mm"), Contains("decimal comma"));
  CHECK_THAT(fault_of("1,23.5", '.', "wall_mm"), Contains("decimal comma"));
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

TEST_CASE("input_of: the column's own unit, a diameter sign and spaces are no part of a figure",
          "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "length_m", "csa_mm2"});
  struct Case {
    const char* cell;
    const char* text;
  };
  for (const Case& each : {Case{"22.5 mm", "22.5"}, Case{"22.5mm", "22.5"},
                           Case{"\xC3\x98"
                                "22.5",
                                "22.5"},
                           Case{"dia 22.5 mm", "22.5"}, Case{"22.5\xC2\xA0mm", "22.5"},
                           Case{"0.885in", "0.885in"}, Case{"0.885 in", "0.885in"},
                           Case{"0.885\"", "0.885in"}, Case{"14.9 mm + 15.1 mm", "14.9+ 15.1"},
                           Case{"14.9mm+15.1mm,15mm+15.2mm", "14.9+15.1,15+15.2"}}) {
    INFO(each.cell);
    CHECK(read(layout, {"C1", each.cell}).sheath_od_mm->text == each.text);
  }
  CHECK(read(layout, {"C1", "15", "1,234.50"}).length_m == 1234.5);
  CHECK(read(layout, {"C1", "15", "120 m"}).length_m == 120.0);
  CHECK(read(layout, {"C1", "15", "", "16mm2"}).csa_mm2 == 16.0);
  CHECK(read(layout, {"C1", "15", "", "16 sq.mm"}).csa_mm2 == 16.0);
  CHECK(read(layout, {"C1", "15", "", "16 mm\xC2\xB2"}).csa_mm2 == 16.0);
}

TEST_CASE("input_of: a bare size is the one thread that has it, or what the heading says",
          "[unit][schedule]") {
  const Layout any = layout_of({"tag", "sheath_od_mm", "entry"});
  CHECK(read(any, {"C1", "15", "25"}).entry == "M25");
  CHECK(read(any, {"C1", "15", "25mm"}).entry == "M25");
  CHECK(read(any, {"C1", "15", "1 x M25"}).entry == "M25");
  CHECK(read(any, {"C1", "15", "M25x1.5"}).entry == "M25x1.5");
  const job::JobInput tapped = read(any, {"C1", "15", "M25 tapped"});
  CHECK(tapped.entry == "M25");
  CHECK(job::text_of(tapped, job::field_named("hole")) == "threaded");
  std::vector<Fault> faults;
  (void)schedule::input_of(any, Words{"C1", "15", "16"}, Side::both, faults);  // M16 or PG 16
  REQUIRE(faults.size() == 1);
  CHECK_THAT(to_line(faults.front()), Contains("two ways"));
  CHECK(read(any, {"C1", "15", "M25"}).entry == "M25");
  CHECK(read(any, {"C1", "15", "to-suit"}).entry == "to-suit");
  Format format;
  for (const char* heading : {"Entry (mm)", "Metric entry", "Entry, metric"}) {
    format.headings = {{"entry", heading}};
    const Layout metric = layout_of({"tag", "sheath_od_mm", heading}, format);
    CHECK(read(metric, {"C1", "15", "25"}).entry == "M25");
    CHECK(read(metric, {"C1", "15", "25 mm"}).entry == "M25");
    CHECK(read(metric, {"C1", "15", "NPT 1/2"}).entry == "NPT 1/2");
  }
}

TEST_CASE("input_of: words for nothing are blank, and those for the column are left out",
          "[unit][schedule]") {
  Format format;
  format.blanks = {"Later"};
  const Layout layout =
      layout_of({"tag", "sheath_od_mm", "zone", "gas_group", "ip", "protection"}, format);
  for (const char* nothing : {"TBC", "tba", "N/A", "-", "\xE2\x80\x93", "?", "later"}) {
    CHECK_FALSE(read(layout, {"C1", nothing}).sheath_od_mm.has_value());
    CHECK_FALSE(job::text_of(read(layout, {"C1", "15", nothing}), job::field_named("zone")));
    CHECK(schedule::tag_of(layout, Words{nothing}).empty());
  }
  const job::JobInput place = read(layout, {"C1", "15", "Zone 21", "Group IIB", "IP 66", "Ex e"});
  for (const auto& [key, value] : {std::pair("zone", "21"), std::pair("gas_group", "IIB"),
                                   std::pair("ip", "66"), std::pair("protection", "e")}) {
    CHECK(job::text_of(place, job::field_named(key)) == value);
  }
  const job::JobInput mark = read(layout, {"C1", "15", "", "", "", "nA"});
  CHECK(job::text_of(mark, job::field_named("protection")) == "nA");
}

TEST_CASE("make_layout: own headings are matched loosely, or by letter", "[unit][schedule]") {
  Format format;
  format.headings = {{"sheath_od_mm", "o/d"}, {"entry", "C"}};
  const Layout layout =
      layout_of({"Cable", "O/D (mm)", "x"},
                {.headings = {{"tag", "cable"}, {"sheath_od_mm", "o/d"}, {"entry", "C"}}});
  CHECK(layout.columns.at(1).heading == "x");
  CHECK(read(layout, {"C1", "15", "M20"}).entry == "M20");
  CHECK_THAT(message_of({"tag", "O/D (mm)", "O/D mm"}, {.headings = {{"sheath_od_mm", "o/d"}}}),
             Contains("several headings are this one") && Contains("columns B, C"));
  CHECK_THAT(message_of({"tag", "O/D (cm)"}, {.headings = {{"sheath_od_mm", "O/D (cm)"}}}),
             Contains("the heading's unit is not that of the column sheath_od_mm"));
  const Layout inches =
      layout_of({"tag", "O/D (in)"}, {.headings = {{"sheath_od_mm", "O/D (in)"}}});
  CHECK(read(inches, {"C1", "0.59+0.6,0.61"}).sheath_od_mm->text == "0.59in+0.6in,0.61in");
  CHECK(layout_of({"tag", "sheath_od_mm", "Shade"}, {.ignored = {"shade"}}).warnings.empty());
  CHECK_THAT(message_of({"tag", "sheath_od_mm"}, {.ignored = {"shade"}}),
             Contains("no such heading"));
}

TEST_CASE("make_layout: a column that may tell a hazardous place is never passed over",
          "[unit][schedule]") {
  const auto unread = [](std::string_view heading, const char* cell,
                         std::vector<std::string> ignored = {}) {
    const std::vector<std::vector<std::string>> head{{"tag", "sheath_od_mm", std::string(heading)}};
    const std::vector<std::vector<std::string>> sample{{"C1", "15", cell}, {"C2", "15", ""}};
    Format format = usual_format();
    format.ignored = std::move(ignored);
    return schedule::make_layout(schedule::join_headings(head), format, "t.csv, line 1", sample)
        .hazard_unread;
  };
  CHECK(unread("Hazard Class", "1"));
  CHECK(unread("Electrical Area Classification", "IIB T3"));
  CHECK(unread("ATEX", "II 2G"));
  CHECK(unread("Zone at load end", "1"));
  CHECK(unread("Remarks", "Ex d IIB"));
  CHECK(unread("", "Zone 1"));
  CHECK_FALSE(unread("Zone at load end", "Area 3"));  // a part of the site
  CHECK_FALSE(unread("Hazardous?", "No"));
  CHECK_FALSE(unread("Fire classification", "B2"));
  CHECK_FALSE(unread("Remarks", "spare"));
  CHECK_FALSE(unread("Hazard Class", "1", {"Hazard Class"}));
}

TEST_CASE("input_of: the words of the trade, and what they tell besides", "[unit][schedule]") {
  const Layout layout =
      layout_of({"tag", "sheath_od_mm", "armour", "hole", "material", "zone", "protection", "ip"},
                usual_format());
  struct Case {
    std::size_t cell;
    const char* text;
    std::vector<std::pair<const char*, const char*>> means;
  };
  for (const Case& each : {
           Case{2, "SWA", {{"armour", "wire"}, {"armour_material", "steel"}}},
           Case{2, "AWA", {{"armour", "wire"}, {"armour_material", "aluminium"}}},
           Case{2, "STA", {{"armour", "tape"}, {"armour_material", "steel"}}},
           Case{2, "NONE", {{"armour", "none"}}},
           Case{2, "Braid", {{"armour", "braid"}}},
           Case{3, "Tapped", {{"hole", "threaded"}}},
           Case{3, "clearance", {{"hole", "clearance"}}},
           Case{4, "GRP", {{"material", "polymer"}}},
           Case{4, "316 SS", {{"material", "stainless-steel"}}},
           Case{5, "Safe area", {{"zone", "none"}}},
           Case{5, "Non-haz", {{"zone", "none"}}},
           Case{5, "Non hazardous", {{"zone", "none"}}},
           Case{5, "Unclassified", {{"zone", "none"}}},
           Case{5, "Zone 1 IIB T4", {{"zone", "1"}, {"gas_group", "IIB"}}},
           Case{5, "Zone 22, IIIC", {{"zone", "22"}, {"dust_group", "IIIC"}}},
           Case{
               6, "Ex db IIC T6 Gb", {{"protection", "db"}, {"gas_group", "IIC"}, {"level", "Gb"}}},
           Case{6, "EEx d IIB", {{"protection", "d"}, {"gas_group", "IIB"}}},
           Case{7, "IP66", {{"ip", "66"}}},
       }) {
    INFO(each.text);
    Words cells{"C1", "15", "", "", "", "", "", ""};
    cells[each.cell] = each.text;
    const job::JobInput input = read(layout, cells);
    for (const auto& [key, value] : each.means) {
      INFO(key);
      CHECK(job::text_of(input, job::field_named(key)) == value);
    }
  }
  // Two of a kind, a word that nobody knows, and a second cell that says otherwise.
  for (const auto& [cell, text] : std::vector<std::pair<std::size_t, const char*>>{
           {5, "Zone 1 Zone 2"}, {5, "Area 3"}, {6, "Ex de IIC"}, {2, "Foo"}, {3, "drilled"}}) {
    INFO(text);
    Words cells{"C1", "15", "", "", "", "", "", ""};
    cells[cell] = text;
    std::vector<Fault> faults;
    (void)schedule::input_of(layout, cells, Side::both, faults);
    CHECK(faults.size() == 1);
  }
  std::vector<Fault> faults;
  const Layout both = layout_of({"tag", "sheath_od_mm", "zone", "gas_group"}, usual_format());
  (void)schedule::input_of(both, Words{"C1", "15", "Zone 1 IIB", "IIC"}, Side::both, faults);
  REQUIRE(faults.size() == 1);
  CHECK_THAT(to_line(faults.front()), Contains("two cells of the row say gas_group differently"));
}

TEST_CASE("input_of: a word of the user's own stands for its value", "[unit][schedule]") {
  Format format = usual_format();
  format.words = {{"my place", "none"}};
  const Layout layout = layout_of({"tag", "sheath_od_mm", "zone"}, format);
  schedule::RowNotes notes;
  std::vector<Fault> faults;
  const job::JobInput input =
      schedule::input_of(layout, Words{"C1", "15", "My  Place"}, Side::both, faults, &notes);
  CHECK(faults.empty());
  CHECK(job::text_of(input, job::field_named("zone")) == "none");
  CHECK(notes.taken == std::vector<std::string>{"\"My  Place\" for none (--word)"});
}

TEST_CASE("input_of: a voltage above that of the built-in constructions is never estimated",
          "[unit][schedule]") {
  const auto no_estimate = [](std::string_view heading, std::string_view text) {
    const std::vector<std::vector<std::string>> head{
        {"tag", "cores", "csa_mm2", std::string(heading)}};
    const std::vector<std::vector<std::string>> sample{{"C1", "3", "2.5", std::string(text)}};
    const Layout layout = schedule::make_layout(schedule::join_headings(head), usual_format(),
                                                "t.csv, line 1", sample);
    schedule::RowNotes notes;
    std::vector<Fault> faults;
    const std::vector<std::string_view> cells{"C1", "3", "2.5", text};
    (void)schedule::input_of(layout, cells, Side::both, faults, &notes);
    return notes.no_estimate || !faults.empty();
  };
  for (const char* heading : {"Cable Voltage Rating", "Voltage", "System voltage"}) {
    INFO(heading);
    for (const char* text :
         {"11kV", "11 kV", "6.6kV", "11000", "11000 V", "11", "33", "6.6", "6.6/11 kV",
          "6350/11000V", "HV", "MV", "3ph 11kV 50Hz", "3.3kV system"}) {
      INFO(text);
      CHECK(no_estimate(heading, text));
    }
    for (const char* text : {"415", "400 V", "0.4kV", "3ph 415V 50Hz", "24", "LV"}) {
      INFO(text);
      CHECK_FALSE(no_estimate(heading, text));
    }
  }
  CHECK(no_estimate("Voltage (kV)", "11"));
  CHECK_FALSE(no_estimate("Voltage (kV)", "0.4"));
  CHECK_FALSE(no_estimate("Cable Voltage Rating", "0.6/1 kV"));
}

TEST_CASE("input_of: a voltage in the cell of cores and size", "[unit][schedule]") {
  const auto voltage = [](std::string_view text) {
    const Layout layout = layout_of({"tag", "cable_size"}, usual_format());
    schedule::RowNotes notes;
    std::vector<Fault> faults;
    const auto input = schedule::input_of(layout, Words{"C1", text}, Side::both, faults, &notes);
    CHECK(faults.empty());
    if (notes.no_estimate) return std::string("nothing is estimated");
    return job::text_of(input, job::field_named("voltage")).value_or("not given");
  };
  CHECK(voltage("4C 16") == "not given");
  CHECK(voltage("4C 16 600/1000V") == "0.6/1");
  CHECK(voltage("4C x 16mm2 0.6/1kV") == "0.6/1");
  CHECK(voltage("4C x 16mm2 1.9/3.3 kV") == "1.9/3.3");
  CHECK(voltage("3C x 95 11kV") == "nothing is estimated");
  CHECK(voltage("4C 16 450/750V") == "nothing is estimated");
}

TEST_CASE("input_of: one column of ambient temperatures", "[unit][schedule]") {
  const auto ambient = [](std::string_view text, std::string_view heading =
                                                     "Ambient (\xC2\xB0"
                                                     "C)") {
    const Layout layout = layout_of({"tag", "sheath_od_mm", heading}, usual_format());
    std::vector<Fault> faults;
    const auto input = schedule::input_of(layout, Words{"C1", "15", text}, Side::both, faults);
    if (!faults.empty()) return faults.front().what;
    return job::text_of(input, job::field_named("ambient_min_c")).value_or("") + " to " +
           job::text_of(input, job::field_named("ambient_max_c")).value_or("");
  };
  for (const char* text : {"-20/+50", "-20 to +50",
                           "-20 to 50 \xC2\xB0"
                           "C",
                           "-20..50", "-20...+50",
                           "\xE2\x88\x92"
                           "20/50",
                           "-20C/+50C", "-20 - +50", "-20 deg C to 50 deg C"}) {
    INFO(text);
    CHECK(ambient(text) == "-20 to 50");
  }
  CHECK(ambient("5-40") == "5 to 40");
  CHECK(ambient("-40/-10") == "-40 to -10");
  CHECK(ambient("50") == " to 50");
  CHECK(ambient("-20") == "-20 to ");
  CHECK(ambient("-20/+50", "Ambient Temperature") == "-20 to 50");
  CHECK(ambient("TBC") == " to ");
  for (const char* text : {"high", "-20/20/50", "40 F"}) {
    INFO(text);
    CHECK(ambient(text) == "this is no range of temperatures");
  }
  const Layout sided =
      layout_of({"tag", "sheath_od_mm", "From Ambient", "To Ambient"}, usual_format());
  std::vector<Fault> faults;
  const Words cells{"C1", "15", "0/40", "-20/+60"};
  const auto to = schedule::input_of(sided, cells, Side::to, faults);
  CHECK(faults.empty());
  CHECK(job::text_of(to, job::field_named("ambient_max_c")) == "60");
  // A column of degrees Fahrenheit is none of it.
  const Layout fahrenheit = layout_of({"tag", "sheath_od_mm",
                                       "Ambient (\xC2\xB0"
                                       "F)"},
                                      usual_format());
  CHECK(fahrenheit.columns.size() == 1);
}

TEST_CASE("make_layout: the columns behind From and To are of that end", "[unit][schedule]") {
  const Layout layout = layout_of(
      {"Cable No", "O/D", "From", "Entry", "Hole", "Wall (mm)", "To", "Entry", "Hole", "Wall (mm)"},
      usual_format());
  std::vector<std::string> columns;
  for (const schedule::Mapped& each : layout.mapping) columns.push_back(each.column);
  std::sort(columns.begin(), columns.end());
  CHECK(columns == std::vector<std::string>{"from", "from_entry", "from_hole", "from_wall_mm",
                                            "sheath_od_mm", "tag", "to", "to_entry", "to_hole",
                                            "to_wall_mm"});
}

TEST_CASE("make_layout: a column that may ask more is named", "[unit][schedule]") {
  for (const char* heading : {"OD Max", "Tol. (%)", "Weatherproof", "Short circuit rating (kA)"}) {
    INFO(heading);
    const Layout layout = layout_of({"Cable No", "O/D", heading}, usual_format());
    REQUIRE(layout.unread.size() == 1);
    CHECK(layout.unread.front().may_ask);
  }
  CHECK_FALSE(layout_of({"Cable No", "O/D", "Rack"}, usual_format()).unread.front().may_ask);
}

TEST_CASE("make_layout: a failed look-up says nothing of what a column is", "[unit][schedule]") {
  const std::vector<std::vector<std::string>> head{{"Cable No", "O/D", "Zone"}};
  const std::vector<std::vector<std::string>> sample{{"C1", "15", "#N/A"}, {"C2", "15", "none"}};
  const Layout layout =
      schedule::make_layout(schedule::join_headings(head), usual_format(), "t.csv, line 1", sample);
  CHECK(layout.columns.size() == 2);
}

TEST_CASE("input_of: a length that is not certain does not take the row away", "[unit][schedule]") {
  const Layout layout = layout_of({"Cable No", "O/D", "Length (m)"}, usual_format());
  for (const char* text : {"~100", "100-120", "125 m + 10%", "-5"}) {
    INFO(text);
    schedule::RowNotes notes;
    std::vector<Fault> faults;
    const auto input =
        schedule::input_of(layout, Words{"C1", "15", text}, Side::both, faults, &notes);
    CHECK(faults.empty());
    CHECK(notes.taken ==
          std::vector<std::string>{"\"" + std::string(text) + "\" for no certain length"});
    CHECK_FALSE(job::text_of(input, job::field_named("length_m")).has_value());
  }
}

TEST_CASE("make_layout: two tables side by side", "[unit][schedule]") {
  const std::string message =
      message_of({"Cable No", "O/D", "Bedding", "Entry", "", "Cable No", "O/D", "Bedding", "Entry"},
                 usual_format());
  CHECK_THAT(message, Contains("two tables stand side by side"));
  CHECK_THAT(message, Contains("A to D, and F to I"));
  CHECK_THAT(message, !Contains("given twice"));
  Format format = usual_format();
  format.ignored = {"F", "G", "H", "I"};
  CHECK(
      layout_of({"Cable No", "O/D", "Bedding", "Entry", "", "Cable No", "O/D", "Bedding", "Entry"},
                format)
          .columns.size() == 3);
}

TEST_CASE("make_layout: headings whose cells do not suit are the other column",
          "[unit][schedule]") {
  const auto column = [](std::vector<std::string> headings, std::vector<std::string> row,
                         std::string_view heading) {
    const std::vector<std::vector<std::string>> head{std::move(headings)};
    const std::vector<std::vector<std::string>> sample{std::move(row)};
    const Layout layout = schedule::make_layout(schedule::join_headings(head), usual_format(),
                                                "t.csv, line 1", sample);
    for (const schedule::Mapped& each : layout.mapping) {
      if (each.heading == heading) return each.column;
    }
    return std::string("none");
  };
  CHECK(column({"Cable No", "Cores", "Cable Size (mm2)"}, {"C1", "3", "2.5"}, "Cable Size (mm2)") ==
        "csa_mm2");
  CHECK(column({"Cable No", "Cores", "Cable Size"}, {"C1", "3", "2.5"}, "Cable Size") == "csa_mm2");
  CHECK(column({"Cable No", "Cable Size"}, {"C1", "3C x 2.5"}, "Cable Size") == "cable_size");
  CHECK(column({"Tag", "Cable"}, {"C1", "3C x 2.5mm2"}, "Cable") == "cable_size");
  CHECK(column({"Cable", "O/D"}, {"C1", "15"}, "Cable") == "tag");
  CHECK(column({"Cable No", "O/D", "Armour"}, {"C1", "15", "SWA"}, "Armour") == "armour");
  CHECK(column({"Cable No", "O/D", "Armour"}, {"C1", "15", "Foo"}, "Armour") == "armour");
  CHECK(column({"Cable No", "O/D", "Armour"}, {"C1", "15", "0.9"}, "Armour") == "armour_mm");
  CHECK(column({"Cable No", "O/D", "Wire"}, {"C1", "15", "SWA"}, "Wire") == "armour");
  CHECK(column({"Cable No", "O/D", "Wire Size"}, {"C1", "15", "2.5"}, "Wire Size") == "none");
  for (const char* od : {"Approx OD", "O.D.", "\xC3\x98 (mm)", "Overall diameter", "Diameter",
                         "OD (approx.)", "Cable \xC3\xB8"}) {
    INFO(od);
    CHECK(column({"Cable No", od}, {"C1", "15"}, od) == "sheath_od_mm");
  }
  CHECK(column({"Cable No", "O/D", "Diameter"}, {"C1", "15", "9"}, "Diameter") == "none");
  CHECK(column({"Cable No", "O/D", "OD Max"}, {"C1", "15", "16"}, "OD Max") == "none");
  CHECK_THAT(message_of({"Item", "O/D"}, usual_format()), Contains("--column tag=\"Item\""));
}

TEST_CASE("make_layout: words for the two ends of a cable", "[unit][schedule]") {
  for (const auto& [from, to] : std::vector<std::pair<const char*, const char*>>{
           {"From Equip.", "To Equip."},
           {"Source Equipment", "Destination Equipment"},
           {"Start", "Finish"},
           {"Near", "Far"},
           {"Near End", "Far End"},
           {"Origin", "Destination"},
           {"End A", "End B"},
           {"From Tag No", "To Tag No"},
           {"From Cell", "To Cell"},
           {"From Item", "To Item"}}) {
    INFO(from);
    const Layout layout = layout_of({"Cable No", from, to, "O/D"}, usual_format());
    CHECK(layout.two_ends);
    CHECK(layout.from == 1);
    CHECK(layout.to == 2);
  }
  // The first of several; the others are named.
  const Layout several = layout_of(
      {"Cable No", "From Equipment", "From Location", "To Equipment", "To Location", "O/D"},
      usual_format());
  CHECK(several.from == 1);
  CHECK(several.to == 3);
  CHECK(several.warnings.size() == 2);
  const Layout alone = layout_of({"Cable No", "Equipment", "O/D"}, usual_format());
  CHECK_FALSE(alone.two_ends);
  REQUIRE(alone.warnings.size() == 2);
  CHECK_THAT(alone.warnings.front(), Contains("no heading tells from and to"));
  CHECK_THAT(alone.warnings.back(), Contains("no word says at which"));
}

TEST_CASE("make_layout: a column whose heading is blank, named by its letter", "[unit][schedule]") {
  for (const bool usual : {false, true}) {
    Format format = usual ? usual_format() : Format();
    format.headings = {{"sheath_od_mm", "C"}, {"from_entry", "D"}};
    const Layout layout = layout_of({"tag", "to", "", ""}, format);
    REQUIRE(layout.columns.size() == 2);
    CHECK(layout.columns[0].heading == "column C");
    CHECK(read(layout, {"C1", "P-1", "15.2", "M20"}, Side::from).sheath_od_mm->text == "15.2");
    REQUIRE(layout.mapping.size() == 4);
    CHECK(layout.mapping[2].heading == "C");  // by which it can be named again
  }
  Format format;
  format.headings = {{"sheath_od_mm", "B"}, {"bedding_mm", "B"}};
  CHECK_THAT(message_of({"tag", ""}, format), Contains("one heading is given to two columns"));
}

TEST_CASE("group_of_row: the spaces of a word processor are no part of a name",
          "[unit][schedule]") {
  const Layout layout = layout_of({"tag", "sheath_od_mm", "area_name"});
  const auto group = [&](std::string_view name) {
    return schedule::group_of_row(layout, Words{"C1", "15", name}, schedule::GroupBy::area_name);
  };
  CHECK(group("A\xC2\xA0") == "A");
  CHECK(group(" \xE2\x80\xAF"
              "A \xC2\xA0 ") == "A");
  CHECK(group("\xC2\xA0").empty());
}

TEST_CASE("make_layout: None is no plain place where it stands for missing figures",
          "[unit][schedule]") {
  const auto zone = [](const std::string& sheath, const std::string& written) {
    const std::vector<std::vector<std::string>> rows{{"tag", "sheath_od_mm", "zone"}};
    const std::vector<std::vector<std::string>> sample{{"C1", sheath, "None"}, {"C2", "15", "1"}};
    const Layout layout =
        schedule::make_layout(schedule::join_headings(rows), usual_format(), "t.csv", sample);
    return read(layout, {"C3", "15.2", written}).zone;
  };
  CHECK(zone("15", "None").has_value());
  CHECK(zone("none", "None").has_value());  // as a person writes it, of a cable without a sheath
  for (const char* const missing : {"None", "nan", "NULL"}) {
    CHECK_FALSE(zone(missing, "None").has_value());
    CHECK(zone(missing, "none").has_value());
  }
}
