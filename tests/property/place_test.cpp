// The question of the place: a fact taken away never makes an end pass that did not pass before,
// unless the place is then not asked about, or what is taken for the fact is named as an
// assumption. Generated from the field table and the columns of the gland list.
#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <map>

#include "core/fit/rules.hpp"
#include "cutback/area/area.hpp"
#include "cutback/fit/questions.hpp"
#include "support/any.hpp"

using namespace cutback;

namespace {

/// The worst check of the place, its ingress and the adaptor's own marking among them.
struct Answer {
  Answer(const job::JobInput& in, const gland::Gland& gland)
      : job(test::resolved(in)), verdict(Verdict::fits) {
    const auto fit = fit::check_gland(fit::ask(job, test::standards()), gland);
    for (const fit::Check& check : fit.checks) {
      if (fit::topic_of(check.name) != fit::Topic::place) continue;
      verdict = worst(verdict, check.verdict);
      said += std::string(to_string(check.name)) + " " + std::string(to_string(check.verdict)) +
              ": " + check.says + "\n";
    }
  }
  job::Job job;
  Verdict verdict;
  std::string said;
};

bool names(const std::vector<Assumption>& list, std::string_view fact) {
  return std::any_of(list.begin(), list.end(),
                     [&](const Assumption& one) { return one.fact == fact; });
}

/// Facts with which an end mostly passes, so that there is something to be found; chance changes
/// some of them.
const std::map<std::string_view, std::vector<std::string>>& likely() {
  static const std::map<std::string_view, std::vector<std::string>> words = {
      {"zone", {"1", "1", "2", "21", "22", "none"}},
      {"protection", {"db", "eb", "eb", "e", "tb", "tb", "tb", "ec", "tc", "nA"}},
      {"level", {"Gb", "Gc", "Db", "Dc"}},
      {"gas_group", {"IIA", "IIB", "IIC"}},
      {"dust_group", {"IIIA", "IIIB", "IIIC"}},
      {"ip", {"54", "66", "66", "68", "2X"}},
      {"volume_cm3", {"500", "2000", "3000"}},
      {"ambient_min_c", {"-20", "-20", "-50"}},
      {"ambient_max_c", {"40", "60", "60", "120"}},
      {"entry_temp_c", {"60", "60", "75", "120"}},
      {"branch_temp_c", {"60", "60", "85"}},
      {"cable_max_c", {"90", "90", "130", "60"}},
      {"rules", {"strict", "iec-60079-14:2007", "iec-60079-14:2013"}},
      {"length_m", {"2", "50"}},
      {"cores", {"3", "4", "12"}},
      {"csa_mm2", {"1.5", "4"}},
      {"insulation", {"xlpe"}},
      {"circular", {"yes", "yes", "no"}},
      {"compact", {"yes", "yes", "no"}},
      {"bedding_made", {"extruded", "extruded", "lapped"}},
      {"fillers", {"none", "non-hygroscopic", "hygroscopic"}},
  };
  return words;
}

bool is_of_place(const job::Field& field) {
  return field.section == "area" || likely().count(field.key) > 0;
}

job::JobInput any_place() {
  job::JobInput in = test::any_end(40);
  for (const job::Field& field : job::fields()) {
    if (field.section == "area") job::take_away(in, field);
  }
  // The zone comes first: what does not go with it is left out.
  test::set(in, job::field_named("zone"), test::any_of(likely().at("zone")));
  if (*rc::gen::inRange(0, 15) == 0) in.zone.reset();
  for (const job::Field& field : job::fields()) {
    if (field.key == "zone" || !is_of_place(field) || *rc::gen::inRange(0, 15) == 0) continue;
    const job::JobInput before = in;
    const auto words = likely().find(field.key);
    const bool known = words != likely().end() && *rc::gen::inRange(0, 20) > 0;
    test::set(in, field, known ? test::any_of(words->second) : test::any_text(field));
    if (!test::can_be(in)) in = before;
  }
  return in;
}

gland::Gland any_marked_gland() {
  gland::Gland gland = test::small_gland();
  using area::Protection;
  gland.protection = {Protection::db, Protection::eb, Protection::tb};
  gland.level = {area::Level::Gb, area::Level::Db};
  gland.gas_group = area::GasMark::IIC;
  gland.dust_group = area::DustGroup::IIIC;
  gland.ip = *area::parse_ip_codes("66");
  gland.temp_min_degc = -40;
  gland.temp_max_degc = 100;
  gland.sealing = *rc::gen::element(gland::Sealing::compression, gland::Sealing::barrier,
                                    gland::Sealing::either);
  gland.max_cores = 7;
  if (*rc::gen::inRange(0, 2) == 0) gland.chamber_bore_mm = 9.0;
  for (const gland::Column& column : gland::columns()) {
    if (!column.required && *rc::gen::inRange(0, 25) == 0) test::put_any(gland, column);
  }
  return gland;
}

}  // namespace

TEST_CASE("place: a fact of an end taken away never makes it pass", "[property][area]") {
  int ends = 0, passed = 0, taken = 0, kept = 0;
  const auto one_end = [&] {
    const job::JobInput in = any_place();
    const gland::Gland gland = any_marked_gland();
    const Answer before(in, gland);
    ++ends;
    if (before.verdict == Verdict::fits && area::is_asked(before.job.area)) ++passed;
    for (const job::Field& field : job::fields()) {
      if (!is_of_place(field) || !job::text_of(in, field)) continue;
      job::JobInput less = in;
      job::take_away(less, field);
      if (!test::can_be(less)) continue;
      const Answer after(less, gland);
      ++taken;
      if (after.verdict != Verdict::fits || !area::is_asked(after.job.area)) continue;
      if (before.verdict == Verdict::fits) {
        ++kept;
        continue;
      }
      if (names(area::assumptions_of(after.job.area), field.key)) continue;
      RC_FAIL(std::string(field.key) + " taken away\nbefore:\n" + before.said + "after:\n" +
              after.said);
    }
  };
  CHECK(rc::check("over every field of the table", [&] {
    for (int i = 0; i < 5; ++i) one_end();
  }));
  CAPTURE(ends, passed, taken, kept);
  CHECK(ends >= 500);
  CHECK(passed > 15);
  CHECK(taken > 2500);
  CHECK(kept > 100);
}

TEST_CASE("place: a statement of a gland taken away never makes it pass", "[property][area]") {
  int taken = 0, kept = 0;
  CHECK(rc::check("over every column of the list", [&] {
    const job::JobInput in = any_place();
    const gland::Gland gland = any_marked_gland();
    const Answer before(in, gland);
    for (const gland::Column& column : gland::columns()) {
      if (column.required || !gland::text_of(gland, column)) continue;
      gland::Gland less = gland;
      gland::take_away(less, column);
      const Answer after(in, less);
      ++taken;
      if (after.verdict != Verdict::fits) continue;
      if (before.verdict == Verdict::fits) {
        ++kept;
        continue;
      }
      if (names(gland::assumptions_of(less), column.name)) continue;
      RC_FAIL(std::string(column.name) + " taken away\nbefore:\n" + before.said + "after:\n" +
              after.said);
    }
  }));
  CAPTURE(taken, kept);
  CHECK(taken > 500);
  CHECK(kept > 20);
}
