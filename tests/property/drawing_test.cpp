#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "cutback/print/print.hpp"

using namespace cutback;
using cable::ArmourKind;

namespace {

double in_tenths(int low, int high) { return *rc::gen::inRange(low, high) / 10.0; }

/// Lengths as glands have them, barrier glands among them, whose bedding may end behind the
/// shoulder.
strip::CutPlan any_plan(bool armoured) {
  strip::CutPlan plan;
  strip::Axis& axis = plan.axis;
  axis.bedding_end_mm = in_tenths(armoured ? -150 : -50, 900);
  if (armoured) {
    axis.armour_stop_mm = std::max(0.0, -*axis.bedding_end_mm) + in_tenths(1, 600);
    axis.exposed_mm = in_tenths(1, 400);
  }
  axis.tip_mm = std::ceil(std::max(0.0, *axis.bedding_end_mm)) + *rc::gen::inRange(5, 600);
  return plan;
}

struct Drawn {
  std::map<char, double> column;  ///< of each mark
  double mm_per_column = 0.0;
  std::size_t widest = 0;
};

/// As a reader finds it: marks under the drawing, the scale in the sentence below.
Drawn read(const std::string& text) {
  Drawn drawn;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    drawn.widest = std::max(drawn.widest, line.size());
    constexpr std::string_view k_scale = "one character is ";
    if (const std::size_t at = line.find(k_scale); at != std::string::npos) {
      drawn.mm_per_column = std::stod(line.substr(at + k_scale.size()));
    }
    if (line.find_first_not_of(" 123Send") != std::string::npos) continue;
    for (const char mark : {'1', '2', '3', 'S'}) {
      if (const std::size_t at = line.find(mark); at != std::string::npos) {
        drawn.column[mark] = static_cast<double>(at);
      }
    }
  }
  return drawn;
}

}  // namespace

TEST_CASE("drawing_text: marks stand in their order and at their distances", "[property][print]") {
  for (const bool armoured : {true, false}) {
    CHECK(rc::check(armoured ? "armoured" : "unarmoured", [armoured] {
      job::Job job;
      job.cable.armour = armoured ? ArmourKind::wire : ArmourKind::none;
      const strip::CutPlan plan = any_plan(armoured);
      const strip::Axis& axis = plan.axis;
      std::map<char, double> places{{'S', 0.0}};
      if (armoured) {
        places['1'] = -*axis.armour_stop_mm;
        places['2'] = -*axis.armour_stop_mm - *axis.exposed_mm;
        places['3'] = *axis.bedding_end_mm;
      } else {
        places['1'] = *axis.bedding_end_mm;
      }
      const Drawn drawn = read(print::drawing_text(job, plan));
      RC_ASSERT(drawn.widest < 80U);
      RC_ASSERT(drawn.mm_per_column > 0.0);
      RC_ASSERT(drawn.column.size() == places.size());
      for (const auto& [a, at_a] : places) {
        for (const auto& [b, at_b] : places) {
          if (at_a < at_b) RC_ASSERT(drawn.column.at(a) < drawn.column.at(b));
          if (at_a == at_b) RC_ASSERT(drawn.column.at(a) == drawn.column.at(b));
          // One column by rounding, and one for each mark that has to give way.
          const double off = std::abs(drawn.column.at(b) - drawn.column.at(a)) -
                             std::abs(at_b - at_a) / drawn.mm_per_column;
          RC_ASSERT(std::abs(off) <= 2.0);
        }
      }
    }));
  }
}

TEST_CASE("drawing_text: a shoulder 17 mm in front of the bedding's end is drawn 17 mm from it",
          "[unit][print]") {
  job::Job job;
  job.cable.armour = ArmourKind::wire;
  strip::CutPlan plan;
  plan.axis.bedding_end_mm = -17.0;
  plan.axis.armour_stop_mm = 38.0;
  plan.axis.exposed_mm = 14.0;
  plan.axis.tip_mm = 268.0;
  const Drawn drawn = read(print::drawing_text(job, plan));
  CHECK(drawn.mm_per_column == 1.0);
  CHECK(drawn.column.at('S') - drawn.column.at('3') == 17.0);
  CHECK(drawn.column.at('3') - drawn.column.at('1') == 21.0);
  CHECK(drawn.column.at('1') - drawn.column.at('2') == 14.0);
}
