#include "cutback/job/job.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/job/field_text.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using job::JobInput;

namespace {

std::string message(const JobInput& in) {
  try {
    (void)test::resolved(in);
  } catch (const InputError& error) {
    return error.what();
  }
  return "no error";
}

const job::Field& field(std::string_view key) {
  for (const job::Field& f : job::fields()) {
    if (f.key == key) return f;
  }
  throw std::runtime_error("no field");
}

}  // namespace

TEST_CASE("resolve: readings become estimates and the wire its nominal size", "[unit][job]") {
  const job::Job job = test::resolved(test::small_cable());
  REQUIRE(job.cable.sheath_od.has_value());
  CHECK(job.cable.sheath_od->value_mm == Approx(15.0));
  CHECK(job.cable.sheath_od->expanded_mm == Approx(0.0632575655941).epsilon(1e-9));
  REQUIRE(job.cable.wire_nominal.has_value());
  CHECK(job.cable.wire_nominal->nominal_mm == 0.9);
  CHECK(job.cable.warnings.empty());
}

TEST_CASE("resolve: common practice check of layers that agree", "[unit][job]") {
  // Common practice, no source: 15 mm over 10 mm with 0.9 mm wire is coherent, sheath 1.6 mm.
  const auto sheath = cable::sheath_thickness(test::resolved(test::small_cable()).cable);
  REQUIRE(sheath.has_value());
  CHECK(sheath->value_mm == Approx(1.6));
}

TEST_CASE("resolve: datasheet allowances by default and as given", "[unit][job]") {
  JobInput in = test::small_cable();
  in.sheath_od_mm = "15";
  in.bedding_mm = "10";
  in.evidence = measure::Evidence::datasheet;
  CHECK(test::resolved(in).cable.sheath_od->expanded_mm == Approx(2.0));
  CHECK(test::resolved(in).cable.bedding->expanded_mm == Approx(1.0));
  in.od_allow_mm = 0.5;
  CHECK(test::resolved(in).cable.sheath_od->expanded_mm == Approx(0.5));
  CHECK(test::resolved(in).cable.warnings.empty());
}

TEST_CASE("resolve: an allowance of 0 is none, and is said to be taken so", "[unit][job]") {
  JobInput in = test::small_cable();
  in.sheath_od_mm = "15";
  in.bedding_mm = "10";
  in.evidence = measure::Evidence::datasheet;
  const auto usual = test::resolved(in).cable;
  in.od_allow_mm = 0.0;
  in.bedding_allow_mm = 0.0;
  const auto job = test::resolved(in);
  CHECK(job.cable.sheath_od->expanded_mm == usual.sheath_od->expanded_mm);
  CHECK(job.cable.bedding->expanded_mm == usual.bedding->expanded_mm);
  REQUIRE(job.cable.warnings.size() == 2);
  CHECK(job.cable.warnings[0] ==
        "sheath: a tolerance of 0 is taken as not stated, and +/- 2 mm counts");
  CHECK(job.cable.warnings[1] ==
        "bedding: a tolerance of 0 is taken as not stated, and +/- 1 mm counts");
  CHECK(std::any_of(job.assumed.begin(), job.assumed.end(),
                    [](const auto& each) { return each.fact == "od_allow_mm"; }));
  // What was measured has no use for it.
  in.evidence = measure::Evidence::measured;
  CHECK(test::resolved(in).cable.warnings.empty());
}

TEST_CASE("resolve: a tolerance that no cable is made to is named", "[unit][job]") {
  JobInput in = test::small_cable();
  in.sheath_od_mm = "15";
  in.evidence = measure::Evidence::datasheet;
  in.bedding_mm = "10";
  in.od_allow_mm = 0.1;
  REQUIRE(test::resolved(in).cable.warnings.size() == 1);
  CHECK(test::resolved(in).cable.warnings[0].starts_with("sheath: a tolerance of 0.1 mm is less"));
  in.od_allow_mm = 0.2;
  CHECK(test::resolved(in).cable.warnings.empty());
}

TEST_CASE("resolve: in a file one figure is a datasheet's and several are readings",
          "[unit][job]") {
  JobInput in = test::small_cable();
  in.bedding_mm = "10";
  const auto job = job::resolve(in, test::standards(), job::Unstated::by_notation);
  CHECK(job.cable.sheath_od->evidence == measure::Evidence::measured);
  CHECK(job.cable.bedding->evidence == measure::Evidence::datasheet);
}

TEST_CASE("resolve: what no cable can be is refused with both figures", "[unit][job]") {
  JobInput in = test::small_cable();
  in.bedding_mm = "16.0+16.0";
  CHECK_THAT(message(in),
             Contains("bedding is not smaller") && Contains("16 mm") && Contains("15 mm"));
  in = test::small_cable();
  in.armour_mm = "2.5";
  CHECK_THAT(message(in), Contains("wire does not fit between"));
  in = test::small_cable();
  in.armour = cable::ArmourKind::none;
  CHECK_THAT(message(in), Contains("unarmoured"));
}

TEST_CASE("resolve: every fault at once", "[unit][job]") {
  JobInput in = test::small_cable();
  in.entry = "X20";
  in.ip = "99";
  in.adaptor = "M25";
  in.bedding_mm = "20";
  try {
    (void)test::resolved(in);
    FAIL("no error");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 4);
  }
}

TEST_CASE("resolve: a wire in no band is warned about", "[unit][job]") {
  JobInput in = test::small_cable();
  in.armour_mm = "1.05";
  const auto job = test::resolved(in);
  CHECK_FALSE(job.cable.wire_nominal.has_value());
  REQUIRE_FALSE(job.cable.warnings.empty());
  CHECK_THAT(job.cable.warnings.front(), Contains("look twice"));
}

TEST_CASE("resolve: tails from one reach for every core", "[unit][job]") {
  JobInput in = test::small_cable();
  in.reach_mm = 180;
  in.cores = 3;
  CHECK(test::resolved(in).tails.cores.size() == 3);
  in.core_list = {{.core = "U", .reach_mm = 100.0}, {.core = "U", .reach_mm = 120.0}};
  CHECK_THAT(message(in), Contains("two cores have one name"));
  in.core_list = {{.core = "U", .reach_mm = 100.0, .x_mm = 5.0}};
  CHECK_THAT(message(in), Contains("not both"));
}

TEST_CASE("set_from_text: numbers within their limits only", "[unit][job]") {
  JobInput in;
  CHECK(set_from_text(in, field("cores"), "3", "--cores").empty());
  CHECK(in.cores == 3.0);
  for (const char* bad :
       {"2.5", "0", "-1", "nan", "inf", "1e400", "0x3", "", "3 cores", "62", "3,0"}) {
    INFO(bad);
    CHECK(set_from_text(in, field("cores"), bad, "--cores").size() == 1);
    CHECK(in.cores == 3.0);
  }
  CHECK_THAT(to_line(set_from_text(in, field("wall_mm"), "2,5", "--wall").front()),
             Contains("point"));
}

TEST_CASE("set_from_text: words by their list with the nearest", "[unit][job]") {
  JobInput in;
  CHECK(set_from_text(in, field("hole"), "Clearance", "--hole").empty());
  CHECK(in.hole == entry::Hole::clearance);
  const auto faults = set_from_text(in, field("hole"), "treaded", "--hole");
  REQUIRE(faults.size() == 1);
  CHECK_THAT(to_line(faults.front()), Contains("did you mean \"threaded\"?"));
}

TEST_CASE("set_from_text: readings are checked one by one", "[unit][job]") {
  JobInput in;
  const auto& od = field("sheath_od_mm");
  for (const char* bad :
       {"15+", "15,,15", "+", "0", "-15", "301", "nan", "0x10", "1e400", "15mm"}) {
    INFO(bad);
    CHECK_FALSE(set_from_text(in, od, bad, "--od").empty());
  }
  CHECK(set_from_text(in, od, "0.59in+15", "--od").empty());
}

TEST_CASE("resolve: routes that leave a core out or are given twice", "[unit][job]") {
  JobInput in = test::small_cable();
  in.cores = 3;
  in.core_list = {{.core = "U", .reach_mm = 100.0}, {.core = "V", .reach_mm = 100.0}};
  CHECK_THAT(message(in), Contains("some cores have no route") && Contains("2 cores listed"));
  in.core_list.push_back({.core = "W", .reach_mm = 100.0});
  in.reach_mm = 120;
  CHECK_THAT(message(in), Contains("--reach") && Contains("one of the two"));
}

TEST_CASE("resolve: a place is named as the user wrote it", "[unit][job]") {
  JobInput in = test::small_cable();
  in.ip = "99";
  CHECK_THAT(message(in), Contains("--ip"));
  try {
    (void)job::resolve(in, test::standards(), job::Unstated::by_notation);
    FAIL("no error");
  } catch (const InputError& error) {
    CHECK_THAT(error.what(), Contains("area.ip"));
  }
}

TEST_CASE("resolve: inches are no finer than they are written", "[unit][job]") {
  job::JobInput in = test::small_cable();
  const auto expanded = [&](const char* readings) {
    in.sheath_od_mm = readings;
    return test::resolved(in).cable.sheath_od->expanded_mm;
  };
  const double by_mm = expanded("15.24+15.24");
  CHECK(expanded("0.600in+0.600in") == Approx(by_mm));
  CHECK(expanded("0.6in+0.60in") > 0.25);
  CHECK(expanded("19/32in+5/8in") > 0.7);
  in.step_mm = 0.05;  // whoever states the step is believed
  CHECK(expanded("0.6in+0.60in") == Approx(by_mm));
}

TEST_CASE("estimate: single figures that are not measured differ in their value alone",
          "[unit][job]") {
  JobInput in;
  in.od_allow_mm = 0.3;
  using Stated = std::optional<measure::Evidence>;
  for (const Stated& evidence :
       {Stated(), Stated(measure::Evidence::datasheet), Stated(measure::Evidence::estimated)}) {
    INFO((evidence ? to_string(*evidence) : "by notation"));
    in.evidence = evidence;
    job::Job job;
    const job::Frame frame =
        job::make_frame(in, test::standards(), job::Unstated::by_notation, job);
    for (const job::Layer layer : {job::Layer::sheath, job::Layer::bedding, job::Layer::wire}) {
      const auto one = job::estimate(frame, layer, "15.2", test::standards());
      const auto other = job::estimate(frame, layer, "41.37", test::standards());
      CHECK(one.value_mm == 15.2);
      CHECK(other.value_mm == 41.37);
      CHECK(one.evidence != measure::Evidence::measured);
      CHECK(one.evidence == other.evidence);
      CHECK(one.spread == other.spread);
      CHECK(one.standard_mm == other.standard_mm);
      CHECK(one.expanded_mm == other.expanded_mm);
      CHECK(one.k == other.k);
      CHECK(one.degrees_of_freedom == other.degrees_of_freedom);
      CHECK(one.source == other.source);
      for (const auto& estimate : {one, other}) {
        CHECK(estimate.readings_mm.empty());
        CHECK(estimate.caps.size() ==
              (estimate.evidence == measure::Evidence::estimated ? 1U : 0U));
        CHECK(estimate.warnings.empty());
      }
    }
  }
}

TEST_CASE("fields: every word is read back as it was written", "[unit][job]") {
  for (const job::Field& row : job::fields()) {
    for (const std::string_view word : job::words_of(row)) {
      JobInput in;
      INFO(row.key << " " << word);
      CHECK(job::set_from_text(in, row, word, "here").empty());
      CHECK(job::text_of(in, row) == std::string(word));
      job::take_away(in, row);
      CHECK_FALSE(job::text_of(in, row).has_value());
    }
  }
}

TEST_CASE("fields: a word that is none leaves the value as it was", "[unit][job]") {
  JobInput in;
  in.hole = entry::Hole::threaded;
  const auto faults = job::set_from_text(in, field("hole"), "tapped", "--hole");
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().allowed == "threaded or clearance");
  CHECK(in.hole == entry::Hole::threaded);
}

TEST_CASE("fields: readings are read once and keep their text", "[unit][job]") {
  JobInput in;
  CHECK(job::set_from_text(in, field("sheath_od_mm"), " 14.9+15.1 ", "--od").empty());
  REQUIRE(in.sheath_od_mm.has_value());
  CHECK(in.sheath_od_mm->text == "14.9+15.1");
  REQUIRE(in.sheath_od_mm->places.size() == 1);
  CHECK(in.sheath_od_mm->places.front().readings_mm == std::vector<double>{14.9, 15.1});
}

TEST_CASE("set_from_text: no word is offered that could ask for less", "[unit][job]") {
  const std::pair<const char*, const char*> wrong[] = {
      {"zone", "one"},        {"zone", "3"},
      {"protection", "one"},  {"protection", "ef"},
      {"level", "Gd"},        {"gas_group", "IID"},
      {"dust_group", "IIID"}, {"circular", "yees"},
      {"fillers", "one"},     {"rules", "iec-60079-14:2024"},
      {"armour", "one"},      {"bedding_made", "on"}};
  for (const auto& [key, text] : wrong) {
    INFO(key << " " << text);
    job::JobInput in;
    const auto faults = job::set_from_text(in, job::field_named(key), text, "here");
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].hint.empty());
    CHECK_FALSE(faults[0].allowed.empty());
  }
  // A slip in a word that stands for itself is still found.
  job::JobInput in;
  CHECK(job::set_from_text(in, job::field_named("armour"), "wirr", "here")[0].hint.find("wire") !=
        std::string::npos);
}

TEST_CASE("resolve: an adaptor's marking is one that there is", "[unit][job]") {
  const auto marks = [](const char* text) {
    job::JobInput in = test::small_cable();
    in.adaptor = text;
    return test::resolved(in).entry.adaptors.at(0).protection;
  };
  using area::Protection;
  CHECK(marks("M25:M20").empty());
  CHECK(marks("M25:M20:db") == std::vector{Protection::db});
  CHECK(marks("M25:M20:db eb") == std::vector{Protection::db, Protection::eb});
  CHECK_THROWS_AS(marks("M25:M20:zz"), InputError);
  CHECK_THROWS_AS(marks("M25:M20:none"), InputError);
}

TEST_CASE("resolve: the codes of an IP are read once", "[unit][job]") {
  const auto codes = [](const char* text) {
    job::JobInput in = test::small_cable();
    in.ip = text;
    return area::to_text(test::resolved(in).area.ip);
  };
  CHECK(codes("66") == "66");
  CHECK(codes("IP66/IP68") == "66/68");
  CHECK(codes("ip5x 67") == "5X/67");
  for (const char* text : {"6", "76", "6A", "/", "666", "66/6"}) {
    INFO(text);
    CHECK_THROWS_AS(codes(text), InputError);
  }
}

TEST_CASE("resolve: the place is asked about by the fields that are said to ask", "[unit][job]") {
  for (const job::Field& field : job::fields()) {
    if (field.section != "area") continue;
    INFO(field.key);
    job::JobInput in = test::small_cable();
    const auto words = job::words_of(field);
    const std::string text = field.key == "ip" ? "66"
                             : words.empty()   ? "20"
                                               : std::string(words[0]);
    CHECK(job::set_from_text(in, field, text, "test").empty());
    const auto& asking = area::k_asking_fields;
    const bool asks = std::find(asking.begin(), asking.end(), field.key) != asking.end();
    CHECK(area::is_asked(test::resolved(in).area) == asks);
  }
}
