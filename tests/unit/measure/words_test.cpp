// What the readings of a cable come to, whole: figures, words and faults.
#include <catch2/catch.hpp>

#include "cutback/measure/drums.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/measure/judge.hpp"
#include "cutback/measure/reading.hpp"
#include "support/build_job.hpp"
#include "support/whole.hpp"

using namespace cutback;
using test::refusal_of;

namespace {

std::string of_estimate(const measure::Estimate& estimate) {
  std::string text = fmt::format("{} std {} U {} k {} nu {} | {} | {}", plain(estimate.value_mm, 4),
                                 plain(estimate.standard_mm, 4), plain(estimate.expanded_mm, 4),
                                 plain(estimate.k, 3), plain(estimate.degrees_of_freedom, 2),
                                 measure::with_spread(estimate), estimate.source);
  for (const measure::Cap& cap : estimate.caps)
    text += " | cap: " + cap.reason + " -> " + std::string(cap.wanted);
  for (const std::string& warning : estimate.warnings) text += " | warning: " + warning;
  return text;
}

std::string measured(const char* readings, measure::Section section = measure::Section::oval,
                     measure::Caliper caliper = {}, std::optional<double> ovality = {}) {
  return of_estimate(measure::measure_here({.places = measure::parse_places(readings, "test"),
                                            .caliper = caliper,
                                            .section = section,
                                            .declared_ovality_mm = ovality},
                                           test::standards().caliper_limits));
}

std::string of_judgement(const measure::Judgement& out) {
  std::string text = fmt::format("{} margin {} p {} below {} above {}{}", to_string(out.verdict),
                                 plain(out.margin_mm, 4), plain(out.probability, 4),
                                 plain(out.probability_below, 4), plain(out.probability_above, 4),
                                 out.narrow ? " narrow" : "");
  for (const std::string& reason : out.reasons) text += " | " + reason;
  return text;
}

std::string reading_faults(const char* text) {
  return refusal_of([&] { (void)measure::parse_places(text, "--od"); });
}

}  // namespace

TEST_CASE("measure_here, whole", "[unit][measure]") {
  CHECK(measured("15.0+15.2") ==
        "15.1 std 0.0323 U 0.0633 k 1.96 nu inf | 15.10 +/- 0.07 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(
      measured("15.0") ==
      "15 std 0.0323 U 0.0633 k 1.96 nu inf | 15.00 +/- 0.07 mm | mean of 1 reading at the place "
      "where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1) | cap: one reading does not show "
      "how oval the cable is: take a second reading at right angles -> once more, at right angles");
  CHECK(measured("15.0", measure::Section::oval, {}, 0.4) ==
        "15 std 0.1451 U 0.2843 k 1.96 nu inf | 15.00 +/- 0.29 mm | mean of 1 reading at the place "
        "where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(measured("0.9", measure::Section::round) ==
        "0.9 std 0.0323 U 0.0633 k 1.96 nu inf | 0.90 +/- 0.07 mm | mean of 1 reading at the place "
        "where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(
      measured("0.9+1.0", measure::Section::round) ==
      "0.95 std 0.0323 U 0.0633 k 1.96 nu inf | 0.95 +/- 0.07 mm | mean of 2 readings at the place "
      "where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1) | warning: place 1: the readings "
      "differ by 0.1 mm, 10.5 % of their mean; crushed there, or a typing error? Read again");
  CHECK(measured("14.9+15.1,15.0+15.2,15.1+15.1") ==
        "15.0667 std 0.0741 U 0.2357 k 3.182 nu 3 | 15.07 +/- 0.24 mm | mean of 6 readings at 3 "
        "places, spread for a new place (JCGM 100:2008 4.2, 4.3.7, F.2.2.1, G.4.1)");
  CHECK(measured("15.0+15.0,15.0+15.0") ==
        "15 std 0.0323 U 0.0633 k 1.96 nu inf | 15.00 +/- 0.07 mm | mean of 4 readings at 2 "
        "places, spread for a new place (JCGM 100:2008 4.2, 4.3.7, F.2.2.1, G.4.1)");
  CHECK(measured("15.0+16.6") ==
        "15.8 std 0.0323 U 0.0633 k 1.96 nu inf | 15.80 +/- 0.07 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1) | warning: place 1: the "
        "readings differ by 1.6 mm, 10.1 % of their mean; crushed there, or a typing error? Read "
        "again");
  CHECK(measured("15.0+18.0") ==
        "16.5 std 0.0323 U 0.0633 k 1.96 nu inf | 16.50 +/- 0.07 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1) | cap: not round: ask the "
        "seal maker -> again, it is not round | warning: place 1: the readings differ by 3 mm, "
        "18.2 % of their mean; the limit is 15 %");
  CHECK(measured("25.0+25.0") ==
        "25 std 0.0323 U 0.0633 k 1.96 nu inf | 25.00 +/- 0.07 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(measured("25.1+25.1") ==
        "25.1 std 0.1472 U 0.2885 k 1.96 nu inf | 25.10 +/- 0.29 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1); above 25 mm IEC "
        "60811-203:2012 4.2 takes it from the circumference, by tape, to 0.5 mm");
  CHECK(measured("15.01+15.02") ==
        "15.015 std 0.0323 U 0.0633 k 1.96 nu inf | 15.02 +/- 0.07 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1) | warning: 15.01, 15.02: no "
        "multiple of the caliper's step of 0.05 mm; a typing error, or the step is another");
  CHECK(measured("15.0+15.2", measure::Section::oval,
                 {.step_mm = 0.01, .mpe_mm = 0.02, .zero_mm = 0.1}) ==
        "15 std 0.0119 U 0.0233 k 1.96 nu inf | 15.00 +/- 0.03 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(measured("15.0+15.2", measure::Section::oval, {.step_mm = 0.0}) ==
        "15.1 std 0.0115 U 0.0226 k 1.96 nu inf | 15.10 +/- 0.03 mm | mean of 2 readings at the "
        "place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(measured("15.1+15.2,15.3+15.4,15.6+15.7,15.8+15.9", measure::Section::oval,
                 {.step_mm = 0.5}) ==
        "15.5 std 0.4743 U 1.0569 k 2.228 nu 10 | 15.5 +/- 1.1 mm | mean of 8 readings at 4 "
        "places, spread for a new place (JCGM 100:2008 4.2, 4.3.7, F.2.2.1, G.4.1) | warning: "
        "15.1, 15.2, 15.3, 15.4, 15.6 and 3 more: no multiple of the caliper's step of 0.5 mm; a "
        "typing error, or the step is another");
}

TEST_CASE("judge, whole", "[unit][measure]") {
  const auto readings = measure::measure_here(
      {.places = measure::parse_places("14.9+15.1", "test")}, test::standards().caliper_limits);
  const auto judged = [](const measure::Estimate& estimate, std::optional<double> low,
                         std::optional<double> high) {
    return of_judgement(measure::judge(estimate, {low, high}));
  };
  CHECK(judged(readings, {}, {}) == "not-known margin 0 p 0 below 0 above 0 | no limit is stated");
  CHECK(judged(readings, 11.0, 16.0) == "fits margin 0.9367 p 1 below 0 above 0");
  CHECK(judged(readings, 14.95, 16.0) ==
        "marginal-inside margin -0.0133 p 0.9393 below 0.0607 above 0 | reading outside the range: "
        "14.9 mm");
  CHECK(judged(readings, {}, 15.05) ==
        "marginal-inside margin -0.0133 p 0.9393 below 0 above 0.0607 | reading outside the range: "
        "15.1 mm");
  CHECK(judged(readings, 15.02, {}) ==
        "marginal-outside margin -0.0833 p 0.2677 below 0.7323 above 0");
  CHECK(judged(readings, 16.0, {}) == "no-fit margin -1.0633 p 0 below 1 above 0");
  CHECK(judged(readings, 14.99, 15.01) ==
        "marginal-inside margin -0.0533 p 0.2433 below 0.3783 above 0.3783 narrow | the range is "
        "narrower than the interval of 0.127 mm: measure more places or use a better caliper | "
        "reading outside the range: 14.9, 15.1 mm");
  const auto sheet = measure::from_datasheet(15.0, 1.0);
  CHECK(judged(sheet, 14.0, 16.0) == "fits margin 0 p 1 below 0 above 0");
  CHECK(judged(sheet, 14.5, 15.5) ==
        "marginal-inside margin -0.5 p 0.5 below 0.25 above 0.25 narrow | the range is narrower "
        "than the interval of 2 mm: measure the cable");
  CHECK(judged(sheet, 15.5, 20.0) == "marginal-outside margin -1.5 p 0.25 below 0.75 above 0");
  CHECK(judged(sheet, 16.0, 20.0) == "marginal-outside margin -2 p 0 below 1 above 0");
  CHECK(judged(sheet, 16.1, 20.0) == "no-fit margin -2.1 p 0 below 1 above 0");
  const auto exact = measure::from_datasheet(15.0, 0.0);
  CHECK(judged(exact, 15.0, 16.0) == "fits margin 0 p 1 below 0 above 0");
  CHECK(judged(exact, 14.0, 15.0) == "fits margin 0 p 1 below 0 above 0");
  CHECK(judged(exact, 15.1, 16.0) == "no-fit margin -0.1 p 0 below 1 above 0");
  CHECK(judged(measure::from_model(15.0, 0.5, "a model"), 14.0, 16.0) ==
        "marginal-inside margin 0.5 p 1 below 0 above 0 | an estimate alone passes no gland");
  CHECK(of_estimate(measure::from_model(15.0, 0.5, "a model")) ==
        "15 std 0.2887 U 0.5 k 0 nu inf | 15.00 +/- 0.50 mm | a model | cap: an estimate alone "
        "passes no gland -> measured");
  CHECK(of_estimate(sheet) ==
        "15 std 0.5774 U 1 k 0 nu inf | 15.0 +/- 1.0 mm | datasheet +-1 mm, every value in between "
        "alike (JCGM 100:2008 4.3.7)");
  CHECK(of_estimate(measure::from_datasheet(15.0, 0.05)) ==
        "15 std 0.0289 U 0.05 k 0 nu inf | 15.00 +/- 0.05 mm | datasheet +-0.05 mm, every value in "
        "between alike (JCGM 100:2008 4.3.7)");
}

TEST_CASE("readings as they are noted, whole", "[unit][measure]") {
  CHECK(reading_faults("15,1") ==
        "a decimal comma, it seems: here a comma begins the next place [--od] given: 15,1; "
        "allowed: places in whole mm as 15.0,1.0; hint: write the decimal mark as a point: 15.1;");
  CHECK(reading_faults("15,14+15,16") ==
        "a decimal comma, it seems: here a comma begins the next place [--od] given: 15,14+15,16; "
        "allowed: places in whole mm as 15.0,14.0+15.0,16.0; hint: write the decimal mark as a "
        "point: 15.14+15.16;");
  CHECK(reading_faults("15,14+15") == "no fault");
  CHECK(reading_faults("") ==
        "there is no reading [--od] allowed: above 0 mm, at most 300 mm; inches as 0.59in;");
  CHECK(reading_faults("15+") ==
        "a reading is empty [--od, place 1, reading 2] allowed: above 0 mm, at most 300 mm; inches "
        "as 0.59in; hint: write 14.9+15.1 for one place and a comma before the next place;");
  CHECK(reading_faults("15,,16") ==
        "a reading is empty [--od, place 2, reading 1] allowed: above 0 mm, at most 300 mm; inches "
        "as 0.59in; hint: write 14.9+15.1 for one place and a comma before the next place;");
  CHECK(reading_faults("15x15.2") ==
        "a reading is not a number [--od, place 1, reading 1] given: 15x15.2; allowed: above 0 mm, "
        "at most 300 mm; inches as 0.59in; hint: write 15+15.2 for two readings at right angles;");
  CHECK(reading_faults("15 and 15.2") ==
        "a reading is not a number [--od, place 1, reading 1] given: 15 and 15.2; allowed: above 0 "
        "mm, at most 300 mm; inches as 0.59in; hint: write 15+15.2 for two readings at right "
        "angles;");
  CHECK(
      reading_faults("15.0 15.2") ==
      "a reading is not a number [--od, place 1, reading 1] given: 15.0 15.2; allowed: above 0 mm, "
      "at most 300 mm; inches as 0.59in; hint: write 15.0+15.2 for two readings at right angles;");
  CHECK(reading_faults("big") ==
        "a reading is not a number [--od, place 1, reading 1] given: big; allowed: above 0 mm, at "
        "most 300 mm; inches as 0.59in;");
  CHECK(reading_faults("0,15.1,15.2") ==
        "a reading is not above zero [--od, place 1, reading 1] given: 0; allowed: above 0 mm, at "
        "most 300 mm; inches as 0.59in; hint: write the decimal mark as a point;");
  CHECK(reading_faults("-3") ==
        "a reading is not above zero [--od, place 1, reading 1] given: -3; allowed: above 0 mm, at "
        "most 300 mm; inches as 0.59in;");
  CHECK(reading_faults("300") == "no fault");
  CHECK(reading_faults("300.1") ==
        "a cable of more than 300 mm is no cable [--od, place 1, reading 1] given: 300.1; allowed: "
        "above 0 mm, at most 300 mm; inches as 0.59in;");
  CHECK(reading_faults("12in") ==
        "a cable of more than 300 mm is no cable [--od, place 1, reading 1] given: 12in; allowed: "
        "above 0 mm, at most 300 mm; inches as 0.59in;");
  CHECK(reading_faults("10.0,15.0") == "no fault");
  CHECK(reading_faults("10.0,15.1") ==
        "a decimal comma, it seems: readings of one cable differ by more than a half [--od] given: "
        "10.0,15.1; hint: write the decimal mark as a point; a comma begins the next place;");
  CHECK(measure::to_text(measure::parse_places("15+15.25, 16", "test")) == "15.0+15.25,16.0");
  CHECK(measure::to_text(measure::parse_places("15+16", "test")) == "15+16");
  CHECK(*measure::Readings("0.59in+0.6in", "test").scale_mm == Approx(0.254));
  CHECK(*measure::Readings("1in", "test").scale_mm == Approx(3.175));
  CHECK(*measure::Readings("15.0+0.6in", "test").scale_mm == Approx(2.54));
  CHECK(measure::plain_reading("300").has_value());
  CHECK_FALSE(measure::plain_reading("301").has_value());
  CHECK_FALSE(measure::plain_reading("0").has_value());
}

TEST_CASE("figures of a measurement that cannot be, whole", "[unit][measure]") {
  const auto places = measure::parse_places("15.0+15.2", "test");
  const auto faults = [&](measure::MeasureInput in) {
    if (in.places.empty()) in.places = places;
    return refusal_of([&] { (void)measure::measure_here(in, test::standards().caliper_limits); });
  };
  CHECK(
      faults({.places = {}, .caliper = {.step_mm = -1.0, .mpe_mm = -0.1}}) ==
      "a length that cannot be [step of the caliper] given: -1; allowed: 0 mm or more; | a length "
      "that cannot be [permissible error of the caliper] given: -0.1; allowed: 0 mm or more;");
  CHECK(faults({.places = {}, .caliper = {.zero_mm = 15.1}}) ==
        "a reading less the zero is no diameter of a cable [readings, place 1] given: -0.1; "
        "allowed: above 0 mm, at most 300 mm;");
  CHECK(faults({.places = {{{}}}}) == "there is no reading [readings, place 1]");
  CHECK(faults({.places = {}, .ovality_limit_ratio = 1.1, .level_ratio = 0.49}) ==
        "not a level for an interval [confidence] given: 0.49; allowed: 0.5 to 0.9999; | not a "
        "share of a diameter [limit on ovality] given: 1.1; allowed: 0 to 1;");
  CHECK(faults({.places = {}, .ovality_limit_ratio = 1.0, .level_ratio = 0.9999}) == "no fault");
  CHECK(faults({.places = {}, .ovality_limit_ratio = 0.0, .level_ratio = 0.5}) == "no fault");
  CHECK(faults({.places = {}, .declared_ovality_mm = -0.1}) ==
        "a length that cannot be [declared ovality] given: -0.1; allowed: 0 mm or more;");
  CHECK(refusal_of([] { (void)measure::from_datasheet(300.1, -0.1); }) ==
        "not a diameter of a cable [datasheet figure] given: 300.1; allowed: above 0 mm, at most "
        "300 mm; | an allowance is given without its sign [datasheet figure] given: -0.1; allowed: "
        "0 mm or more;");
  CHECK(refusal_of([] { (void)measure::from_datasheet(300.0, 0.0); }) == "no fault");
  CHECK(refusal_of([] { (void)measure::from_datasheet(0.0, 0.0); }) ==
        "not a diameter of a cable [datasheet figure] given: 0; allowed: above 0 mm, at most 300 "
        "mm;");
}

namespace {

std::string of_drums(const measure::DrumsInput& in) {
  const measure::DrumsResult out = measure::analyse_drums(in, test::standards().caliper_limits);
  std::string text =
      of_estimate(out.estimate) + " || " + of_judgement(out.judgement) +
      fmt::format(" || nu {} pooled {} nu {} caliper {} {}", plain(out.effective_degrees, 2),
                  plain(out.pooled_standard_mm, 4), plain(out.pooled_degrees, 2),
                  plain(out.caliper_error_mm, 4), plain(out.caliper_standard_mm, 4));
  if (out.deciding) text += " deciding " + std::to_string(*out.deciding);
  if (out.difference) {
    text += fmt::format(" F {} of {} {}", out.difference->f ? plain(*out.difference->f, 3) : "none",
                        plain(out.difference->critical, 3),
                        out.difference->differ ? "differ" : "alike");
  }
  for (const measure::DrumResult& drum : out.drums) {
    text += fmt::format(" || {}: {} {} U {}", drum.name, to_string(drum.judgement.verdict),
                        plain(drum.estimate.value_mm, 4), plain(drum.estimate.expanded_mm, 4));
    if (drum.tolerance) {
      text += fmt::format(" tolerance {} {} {}", plain(drum.tolerance->factor, 3),
                          plain(drum.tolerance->low_mm, 3), plain(drum.tolerance->high_mm, 3));
    }
    text += fmt::format(" further {} {} {}", static_cast<int>(drum.further.settling),
                        drum.further.places, to_string(drum.further.verdict));
  }
  for (const std::string& warning : out.warnings) text += " || warning: " + warning;
  return text;
}

measure::DrumsInput drums(std::initializer_list<const char*> readings) {
  measure::DrumsInput in;
  for (const char* each : readings) {
    in.drums.push_back({std::to_string(in.drums.size() + 1), measure::parse_places(each, "test")});
  }
  in.range = {14.0, 16.0};
  return in;
}

}  // namespace

TEST_CASE("analyse_drums, whole", "[unit][measure]") {
  CHECK(of_drums(drums({"15.0+15.2"})) ==
        "15.1 std 0.0323 U 0.0633 k 1.96 nu inf | 15.10 +/- 0.07 mm | a new place on drum 1 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) | cap: one place does not show how a drum varies: "
        "measure more places, or state the variation along it -> at more places of the drum || "
        "marginal-inside margin 0.8367 p 1 below 0 above 0 | one place does not show how a drum "
        "varies: measure more places, or state the variation along it || nu inf pooled 0 nu 0 "
        "caliper 0.05 0.0323 deciding 0 || 1: marginal-inside 15.1 U 0.0633 further 3 0 not-known");
  CHECK(of_drums(drums({"15.0+15.2,15.1+15.3,15.0+15.1,15.2+15.2,15.1+15.1"})) ==
        "15.13 std 0.0803 U 0.2063 k 2.571 nu 5 | 15.13 +/- 0.21 mm | a new place on drum 1 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || fits margin 0.6637 p 0.9999 below 0 above "
        "0.0001 || nu 5.69 pooled 0.0671 nu 4 caliper 0.05 0.0323 deciding 0 || 1: fits 15.13 U "
        "0.2063 tolerance 5.077 14.789 15.471 further 0 0 not-known");
  measure::DrumsInput in = drums({"15.0+15.2,15.1+15.3", "15.6+15.8,15.7+15.9"});
  CHECK(of_drums(in) ==
        "15.75 std 0.0924 U 0.3977 k 4.303 nu 2 | 15.75 +/- 0.40 mm | a new place on drum 2 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || marginal-inside margin -0.1477 p 0.9417 below "
        "0.0014 above 0.0569 || nu 2.59 pooled 0.0707 nu 2 caliper 0.05 0.0323 deciding 1 F 72 of "
        "18.513 differ || 1: fits 15.15 U 0.3977 further 0 0 not-known || 2: marginal-inside 15.75 "
        "U 0.3977 further 1 1 fits || warning: drums differ: do not use one mean for them || "
        "warning: few places: the interval holds a little less often than it says; measure five "
        "places on a drum, or four on each of three");
  in.unmeasured = true;
  CHECK(of_drums(in) ==
        "15.45 std 0.523 U 6.6455 k 12.706 nu 1 | 15.5 +/- 6.7 mm | a place on a drum not measured "
        "(JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || marginal-inside margin -6.0955 p 0.6478 "
        "below 0.1102 above 0.242 narrow | the range is narrower than the interval of 13.291 mm: "
        "measure more places or use a better caliper || nu 1.03 pooled 0.0707 nu 2 caliper 0.05 "
        "0.0323 F 72 of 18.513 differ || 1: fits 15.15 U 0.3977 further 0 0 not-known || 2: "
        "marginal-inside 15.75 U 0.3977 further 1 1 fits || warning: drums differ: do not use one "
        "mean for them || warning: few places: the interval holds a little less often than it "
        "says; measure five places on a drum, or four on each of three");
  in.range = {14.0, 17.5};
  in.between_mm = 0.3;
  in.along_mm = 0.2;
  CHECK(of_drums(in) ==
        "15.45 std 0.523 U 6.6455 k 12.706 nu 1 | 15.5 +/- 6.7 mm | a place on a drum not measured "
        "(JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || marginal-inside margin -5.1955 p 0.8103 "
        "below 0.1102 above 0.0795 narrow | the range is narrower than the interval of 13.291 mm: "
        "measure more places or use a better caliper || nu 1.03 pooled 0.0707 nu 2 caliper 0.05 "
        "0.0323 F 72 of 18.513 differ || 1: fits 15.15 U 0.3977 further 0 0 not-known || 2: fits "
        "15.75 U 0.3977 further 0 0 not-known || warning: drums differ: do not use one mean for "
        "them || warning: few places: the interval holds a little less often than it says; measure "
        "five places on a drum, or four on each of three || warning: the stated variation along a "
        "drum is not used: the places show it || warning: the stated difference between drums is "
        "not used: the drums show it");
  in.unmeasured = false;
  CHECK(of_drums(in) ==
        "15.15 std 0.0924 U 0.3977 k 4.303 nu 2 | 15.15 +/- 0.40 mm | a new place on drum 1 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || fits margin 0.7523 p 0.996 below 0.0032 above "
        "0.0008 || nu 2.59 pooled 0.0707 nu 2 caliper 0.05 0.0323 deciding 0 F 72 of 18.513 differ "
        "|| 1: fits 15.15 U 0.3977 further 0 0 not-known || 2: fits 15.75 U 0.3977 further 0 0 "
        "not-known || warning: drums differ: do not use one mean for them || warning: few places: "
        "the interval holds a little less often than it says; measure five places on a drum, or "
        "four on each of three || warning: the stated variation along a drum is not used: the "
        "places show it || warning: the stated difference between drums is not used: it is for a "
        "drum that was not measured");
  in = drums({"15.0+15.2"});
  in.along_mm = 0.2;
  CHECK(of_drums(in) ==
        "15.1 std 0.1665 U 0.3263 k 1.96 nu inf | 15.10 +/- 0.33 mm | a new place on drum 1 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || fits margin 0.5737 p 1 below 0 above 0 || nu "
        "inf pooled 0.1155 nu inf caliper 0.05 0.0323 deciding 0 || 1: fits 15.1 U 0.3263 further "
        "0 0 not-known");
  in.unmeasured = true;
  CHECK(of_drums(in) ==
        "15.1 std 0.0323 U 0.0633 k 1.96 nu inf | 15.10 +/- 0.07 mm | a place on a drum not "
        "measured (JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) | cap: one drum does not show how "
        "drums differ: measure another, or state the difference between drums -> on another drum "
        "as well || marginal-inside margin 0.8367 p 1 below 0 above 0 | one drum does not show how "
        "drums differ: measure another, or state the difference between drums || nu inf pooled "
        "0.1155 nu inf caliper 0.05 0.0323 || 1: fits 15.1 U 0.3263 further 0 0 not-known");
  in.between_mm = 0.3;
  CHECK(of_drums(in) ==
        "15.1 std 0.2471 U 0.4842 k 1.96 nu inf | 15.10 +/- 0.49 mm | a place on a drum not "
        "measured (JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || fits margin 0.4158 p 0.9999 "
        "below 0 above 0.0001 || nu inf pooled 0.1155 nu inf caliper 0.05 0.0323 || 1: fits 15.1 U "
        "0.3263 further 0 0 not-known");
  CHECK(of_drums(drums({"15.0,15.0", "15.0,15.0"})) ==
        "15 std 0.0323 U 0.0633 k 1.96 nu inf | 15.00 +/- 0.07 mm | a new place on drum 1 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) | cap: one reading does not show how oval the "
        "cable is: take a second reading at right angles -> once more, at right angles || "
        "marginal-inside margin 0.9367 p 1 below 0 above 0 | one reading does not show how oval "
        "the cable is: take a second reading at right angles || nu inf pooled 0 nu 2 caliper 0.05 "
        "0.0323 deciding 0 F 0 of 18.513 alike || 1: marginal-inside 15 U 0.0633 further 2 0 "
        "not-known || 2: marginal-inside 15 U 0.0633 further 2 0 not-known || warning: few places: "
        "the interval holds a little less often than it says; measure five places on a drum, or "
        "four on each of three");
  CHECK(of_drums(drums({"15.0+15.0,15.0+15.0", "15.2+15.2,15.2+15.2"})) ==
        "15.2 std 0.0323 U 0.0633 k 1.96 nu inf | 15.20 +/- 0.07 mm | a new place on drum 2 (JCGM "
        "100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || fits margin 0.7367 p 1 below 0 above 0 || nu "
        "inf pooled 0 nu 2 caliper 0.05 0.0323 deciding 1 F none of 18.513 differ || 1: fits 15 U "
        "0.0633 further 0 0 not-known || 2: fits 15.2 U 0.0633 further 0 0 not-known || warning: "
        "drums differ: do not use one mean for them || warning: few places: the interval holds a "
        "little less often than it says; measure five places on a drum, or four on each of three");
  in = drums({"15.5+15.7,15.7+15.9,15.6+15.6"});
  CHECK(of_drums(in) ==
        "15.6667 std 0.1372 U 0.5903 k 4.303 nu 2 | 15.67 +/- 0.60 mm | a new place on drum 1 "
        "(JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || marginal-inside margin -0.2569 p 0.9288 "
        "below 0.0034 above 0.0679 || nu 2.24 pooled 0.1155 nu 2 caliper 0.05 0.0323 deciding 0 || "
        "1: marginal-inside 15.6667 U 0.5903 further 1 3 fits || warning: few places: the interval "
        "holds a little less often than it says; measure five places on a drum, or four on each of "
        "three");
  in.caliper.step_mm = 0.5;
  CHECK(of_drums(in) ==
        "15.6667 std 0.3492 U 0.6934 k 1.986 nu 94 | 15.67 +/- 0.70 mm | a new place on drum 1 "
        "(JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || marginal-inside margin -0.36 p 0.8289 "
        "below 0 above 0.1711 || nu 94.1 pooled 0.1155 nu 2 caliper 0.5 0.3227 deciding 0 || 1: "
        "marginal-inside 15.6667 U 0.6934 further 2 0 not-known || warning: few places: the "
        "interval holds a little less often than it says; measure five places on a drum, or four "
        "on each of three || warning: no published permissible error for a caliper step of 0.5 mm: "
        "the step itself is taken, +/- 0.5 mm || warning: drum 1, 15.7, 15.7, 15.9, 15.6, 15.6: no "
        "multiple of the caliper's step of 0.5 mm; a typing error, or the step is another");
  in.range = {};
  CHECK(of_drums(in) ==
        "15.6667 std 0.3492 U 0.6934 k 1.986 nu 94 | 15.67 +/- 0.70 mm | a new place on drum 1 "
        "(JCGM 100:2008 4.2.4, 4.3.7, F.2.2.1, G.4.1) || not-known margin 0 p 0 below 0 above 0 | "
        "no limit is stated || nu 94.1 pooled 0.1155 nu 2 caliper 0.5 0.3227 deciding 0 || 1: "
        "not-known 15.6667 U 0.6934 further 0 0 not-known || warning: few places: the interval "
        "holds a little less often than it says; measure five places on a drum, or four on each of "
        "three || warning: no published permissible error for a caliper step of 0.5 mm: the step "
        "itself is taken, +/- 0.5 mm || warning: drum 1, 15.7, 15.7, 15.9, 15.6, 15.6: no multiple "
        "of the caliper's step of 0.5 mm; a typing error, or the step is another");
  in = drums({"15.0+15.2"});
  in.range = {16.0, 14.0};
  in.along_mm = -1.0;
  CHECK(refusal_of([&] { (void)of_drums(in); }) ==
        "a length that cannot be [variation along a drum] given: -1; allowed: 0 mm or more; | the "
        "lower limit of the range is above the upper one [range] given: 16 to 14;");
  CHECK(refusal_of([&] { (void)of_drums(measure::DrumsInput{}); }) == "there is no drum [drums]");
}
