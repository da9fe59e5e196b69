#include "cutback/ask/ask.hpp"

#include <catch2/catch.hpp>
#include <initializer_list>
#include <map>

#include "cutback/io/job_file.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "support/ask_facts.hpp"

namespace cutback::ask {
namespace {

using test::standards;

Facts facts() { return test::ask_facts(); }

/// Every line is taken, or the case fails.
State told(std::initializer_list<const char*> lines, State state = {}) {
  for (const char* line : lines) {
    Step step = give(state, facts(), line);
    INFO(line << (step.says.empty() ? "" : ": " + step.says.front()));
    REQUIRE_FALSE(step.refused);
    state = std::move(step.state);
  }
  return state;
}

std::string asked(const State& state) {
  const auto prompt = next(state, facts());
  return prompt ? prompt->key : "over";
}

std::string written(const job::JobInput& in) { return io::write_job(in, 0); }

std::string refusal(const State& state, const char* line) {
  const Step step = give(state, facts(), line);
  REQUIRE(step.refused);
  CHECK(step.state.answers == state.answers);
  return step.says.front();
}

const std::initializer_list<const char*> k_box{"wire",  "14.9", "15.1", "9.9",       "10.1",
                                               "0.9",   "3",    "M20",  "clearance", "2.5",
                                               "steel", "none", "54",   ""};

}  // namespace

TEST_CASE("ask: from the caliper to a gland that fits", "[unit][ask]") {
  const State state = told(k_box);
  CHECK(asked(state).empty());  // the summary
  const State done = told({""}, state);
  CHECK(asked(done) == "over");
  const job::Job job = job::resolve(job_of(done), standards(), job::Unstated::measured);
  const auto ranked = fit::fit_all(fit::ask(job, standards(), asking()), test::demo_list().glands,
                                   fit::Prefer::price);
  CHECK(ranked.front().verdict == Verdict::fits);
}

TEST_CASE("ask: a plain room is not asked about gas", "[unit][ask]") {
  State state;
  for (const char* line : k_box) {
    CHECK(asked(state) != "gas_group");
    CHECK(asked(state) != "protection");
    state = told({line}, state);
  }
  const State gas = told(
      {"wire", "14.9", "15.1", "9.9", "10.1", "0.9", "3", "M20", "clearance", "2.5", "steel", "1"});
  CHECK(asked(gas) == "protection");  // what is not known of it forbids every gland till then
  const State e = told({"e"}, gas);
  CHECK(asked(e) == "gas_group");
}

TEST_CASE("ask: once no gland can fit nothing more is asked", "[unit][ask]") {
  const State state = told({"wire", "250", "251"});
  CHECK(asked(state).empty());
}

TEST_CASE("ask: an unarmoured cable has neither bedding nor wire to measure", "[unit][ask]") {
  const State state = told({"none", "14.9", "15.1"});
  CHECK(asked(state) != "bedding_mm");
  CHECK(asked(state) != "armour_mm");
}

TEST_CASE("ask: readings one by one, and whether another is worth taking", "[unit][ask]") {
  State state = told({"wire", "15.10"});
  CHECK(next(state, facts())->running.find("at right angles") != std::string::npos);
  state = told({"15.10"}, state);
  REQUIRE(asked(state) == "sheath_od_mm");  // alike to the last digit
  CHECK(next(state, facts())->running.find("alike to the last digit") != std::string::npos);
  CHECK(asked(told({""}, state)) == "bedding_mm");
  CHECK(asked(told({"15.2"}, state)) == "bedding_mm");
  CHECK(asked(told({"14.9+15.1"}, told({"wire"}))) == "bedding_mm");
  CHECK(asked(told({"12", "16"}, told({"wire"}))) == "sheath_od_mm");  // not round
}

TEST_CASE("ask: what cannot be is said at once", "[unit][ask]") {
  const State state = told({"wire", "14.9", "15.1"});
  CHECK(refusal(state, "15.2").find("not smaller than the sheath") != std::string::npos);
  CHECK(refusal(state, "wide").find("not a number") != std::string::npos);
  CHECK(refusal(state, "").find("?") != std::string::npos);
  const State inside = told({"9.9", "10.1"}, state);
  CHECK(refusal(inside, "2.6").find("wire") != std::string::npos);
  const Step step = give(inside, facts(), "2.3");  // leaves hardly any sheath
  REQUIRE_FALSE(step.refused);
  REQUIRE_FALSE(step.says.empty());
  CHECK(step.says.front().find("look: ") == 0);
}

TEST_CASE("ask: not known falls to the stricter side and says its price", "[unit][ask]") {
  const State state = told({"wire", "14.9", "15.1", "9.9", "10.1", "?", "3", "M20", "clearance",
                            "2.5", "steel", "none", "?", ""});
  const job::JobInput in = job_of(state);
  CHECK_FALSE(in.armour_mm);
  CHECK_FALSE(in.ip);  // nobody asked for 66/68
  const job::Job job = job::resolve(in, standards(), job::Unstated::measured);
  for (const auto& fit : fit::fit_all(fit::ask(job, standards(), asking()),
                                      test::demo_list().glands, fit::Prefer::price)) {
    CHECK(fit.verdict != Verdict::fits);
  }
  const State unknown_zone = told(
      {"wire", "14.9", "15.1", "9.9", "10.1", "0.9", "3", "M20", "clearance", "2.5", "steel", "?"});
  const job::Job place = job::resolve(job_of(unknown_zone), standards(), job::Unstated::measured);
  CHECK(fit::fit_all(fit::ask(place, standards(), asking()), test::demo_list().glands,
                     fit::Prefer::price)
            .front()
            .verdict == Verdict::not_known);
}

TEST_CASE("ask: back by one answer, and no further than the first question", "[unit][ask]") {
  State state = told({"SWA", "14.9"});
  CHECK(job_of(state).armour_material == cable::ArmourMaterial::steel);
  state = told({"<", "<"}, state);
  CHECK(state.answers.empty());
  CHECK_FALSE(job_of(state).armour_material);  // it went with the word that told it
  CHECK(refusal(state, "<").find("first") != std::string::npos);
}

TEST_CASE("ask: a line of the summary is asked again", "[unit][ask]") {
  const State state = told(k_box);
  const auto facts_told = summary(state);
  std::size_t line = 0;
  while (facts_told[line].key != "wall_mm") ++line;
  CHECK(facts_told[line].name == "Wall");
  CHECK(facts_told[line].text == "2.5 mm");
  const State again = told({std::to_string(line + 1).c_str()}, state);
  CHECK(asked(again) == "wall_mm");
  const State changed = told({"4"}, again);
  CHECK(job_of(changed).wall_mm == 4.0);
  CHECK(asked(changed).empty());  // the summary
  CHECK(refusal(state, "99").find("asks that line again") != std::string::npos);
}

TEST_CASE("ask: a line asked again keeps its old answer until the new one is whole",
          "[unit][ask]") {
  const State state = told(k_box);
  const std::string before = written(job_of(state));
  const State again = told({"2"}, state);  // the sheath
  REQUIRE(asked(again) == "sheath_od_mm");
  CHECK(next(again, facts())->now == "14.9+15.1 mm");
  CHECK(written(job_to_keep(again)) == before);
  for (const char* line : {"<", ""}) {
    const State back = told({line}, again);
    CHECK(asked(back).empty());  // the summary as it was
    CHECK(written(job_of(back)) == before);
  }
  const State begun = told({"16.0"}, again);
  CHECK(written(job_to_keep(begun)) == before);
  CHECK(asked(begun) == "sheath_od_mm");
  CHECK(written(job_of(told({"<", "<"}, begun))) == before);
  const State whole = told({"16.1"}, begun);
  CHECK(job_to_keep(whole).sheath_od_mm->text == "16.0+16.1");
  CHECK(asked(whole).empty());
}

TEST_CASE("ask: what is not known stands in the summary and can be asked again", "[unit][ask]") {
  State state;
  for (std::string key = asked(state); !key.empty(); key = asked(state)) {
    state = told({"?"}, state);
  }
  const std::vector<Told> lines = summary(state);
  REQUIRE(lines.size() >= 10);
  std::size_t ip = 0;
  for (const Told& line : lines) CHECK(line.text == "not known");
  while (lines[ip].key != "ip") ++ip;
  const State again = told({std::to_string(ip + 1).c_str(), "66"}, state);
  CHECK(summary(again)[ip].text == "IP66");
  const State none = told({std::to_string(ip + 1).c_str(), "none"}, state);
  CHECK(summary(none)[ip].text == "nobody asks");
}

TEST_CASE("ask: words for not known and back", "[unit][ask]") {
  const State state =
      told({"wire", "14.9", "15.1", "9.9", "10.1", "0.9", "3", "M20", "clearance", "2.5", "steel"});
  for (const char* word : {"dunno", "Don't know", "unknown", "-", "N/A", "TBC"}) {
    INFO(word);
    CHECK(give(state, facts(), word).state.answers == give(state, facts(), "?").state.answers);
  }
  CHECK(give(state, facts(), "back").state.answers == give(state, facts(), "<").state.answers);
  for (const char* word : {"help", "q", "somewhere", ""}) {
    INFO(word);
    const Step step = give(state, facts(), word);
    REQUIRE(step.refused);
    CHECK(step.says.back().ends_with("or ? not known, < back, Ctrl-C saves and stops"));
  }
  CHECK(job_of(told({"1", "q"}, state)).protection == area::Protection::q);  // a type of its own
  const State whole = told({"zone 1 IIB T4"}, state);
  CHECK(job_of(whole).zone == area::Zone::zone_1);
  CHECK(job_of(whole).gas_group == area::GasGroup::IIB);
}

TEST_CASE("ask: a flameproof entry asks about the cable in plain words", "[unit][ask]") {
  std::vector<gland::Gland> seals_on_bedding;
  for (const gland::Gland& gland : test::demo_list().glands) {
    if (gland.part == "ARM-16-M20") seals_on_bedding.push_back(gland);
  }
  const Facts few{standards(), seals_on_bedding};
  State state;
  for (const char* line : {"wire", "14.9", "15.1", "9.9", "10.1", "0.9", "3", "M20", "threaded",
                           "15", "steel", "1", "d"}) {
    Step step = give(state, few, line);
    INFO(line);
    REQUIRE_FALSE(step.refused);
    state = std::move(step.state);
  }
  const std::map<std::string, const char*> others{
      {"gas_group", "IIB"}, {"ignition_source", "no"}, {"volume_cm3", "2000"}, {"ip", "66"}};
  auto prompt = next(state, few);
  for (; others.contains(prompt->key); prompt = next(state, few)) {
    state = give(state, few, others.at(prompt->key)).state;
  }
  REQUIRE(prompt->key == "bedding_made");
  CHECK(prompt->asks == "Is the bedding one solid layer, or wound tape?");
  CHECK(next(give(state, few, "extruded").state, few)->key == "circular");
  // One of them not known leaves the others without a say.
  const std::string after = next(give(state, few, "?").state, few)->key;
  for (const char* key : {"circular", "compact", "fillers", "length_m"}) CHECK(after != key);
}

TEST_CASE("ask: no zone is proposed", "[unit][ask]") {
  const State state =
      told({"wire", "14.9", "15.1", "9.9", "10.1", "0.9", "3", "M20", "clearance", "2.5", "steel"});
  const auto prompt = next(state, facts());
  REQUIRE(prompt->key == "zone");
  CHECK(prompt->usual.empty());
  CHECK(prompt->not_known.find("plain room") == std::string::npos);
}

TEST_CASE("ask: what the first question says of a file", "[unit][ask]") {
  State state;
  state.start = job_of(told({"wire", "14.9"}));
  CHECK(refusal(state, "<").find("at the summary") != std::string::npos);
}

TEST_CASE("ask: one piece of the armour in the armour's own words", "[unit][ask]") {
  const auto piece_of = [](const char* armour) {
    State state;
    state.start = job_of(told({armour, "14.9", "15.1"}));
    state.again = "armour_mm";  // whether or not a gland takes it
    return next(state, facts())->asks;
  };
  CHECK(piece_of("wire") == "Armour: across one single wire");
  CHECK(piece_of("braid") == "Braid: across one single wire of it");
  CHECK(piece_of("tape") == "Armour: how thick is one tape?");
  CHECK(piece_of("strip") == "Armour: how thick is one strip?");
}

TEST_CASE("ask: what the plate says is compared with the place", "[unit][ask]") {
  const State zone_1 = told(
      {"wire", "14.9", "15.1", "9.9", "10.1", "0.9", "3", "M20", "clearance", "2.5", "steel", "1"});
  REQUIRE(asked(zone_1) == "protection");
  CHECK(give(zone_1, facts(), "Ex ec IIB T4 Gc").refused);
  const State plate = told({"Ex eb IIB T4 Gb"}, zone_1);
  REQUIRE(asked(plate) == "gas_group");
  CHECK(refusal(plate, "IIC").find("the plate says IIB, and the place asks for IIC") == 0);
  CHECK_FALSE(give(plate, facts(), "IIB").refused);
}

TEST_CASE("ask: a job is gone on with where it was left", "[unit][ask]") {
  State state;
  state.start = job_of(told({"wire", "14.9"}));
  CHECK(asked(state) == "sheath_od_mm");
  CHECK(asked(told({"15.1"}, state)) == "bedding_mm");
}

TEST_CASE("ask: the other end keeps the cable and nothing of the end", "[unit][ask]") {
  const State other = other_end(told(k_box));
  const job::JobInput in = job_of(other);
  CHECK(in.armour == cable::ArmourKind::wire);
  CHECK(in.cores == 3.0);
  CHECK_FALSE(in.sheath_od_mm);
  CHECK_FALSE(in.entry);
  CHECK_FALSE(in.zone);
  CHECK(asked(other) == "sheath_od_mm");
}

}  // namespace cutback::ask
