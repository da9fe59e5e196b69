#pragma once
// The termination sheet: everything that goes to site for one end, before it is set as text, JSON
// or a page.

#include <optional>
#include <string>
#include <vector>

#include "cutback/area/inspection.hpp"
#include "cutback/earth/armour_earth.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/fit/gates.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/job/job.hpp"
#include "cutback/strip/cut_plan.hpp"

namespace cutback::sheet {

/// One thing to lay out before starting, in the order in which it goes on.
struct Part {
  std::string name;
  std::string note;
};

/// One numbered step. A hold point is ticked before work goes on.
struct Step {
  std::string text;
  bool hold = false;
};

/// What the page is good for.
enum class State {
  cut,      ///< everything is proven and every cut has its figure, or the way to take it
  measure,  ///< once every gate is met and every blank is filled
  not_yet,  ///< something is missing that only paper knows, or the verdict is marginal
  none,     ///< the gland does not fit
};

[[nodiscard]] constexpr std::string_view to_string(State state) {
  switch (state) {
    case State::cut:
      return "cut";
    case State::measure:
      return "measure";
    case State::not_yet:
      return "not-yet";
    case State::none:
      return "none";
  }
  return "";
}

/// What is to be read off the finished end, with a blank beside it. A limit that is not known is
/// absent, and `says` names what is missing.
struct Test {
  std::string name;
  std::string says = {};
  std::string unit;
  std::optional<double> least = {};
  std::optional<double> most = {};
  std::string source = {};
};

/// What a blank of the sheet may be filled with.
struct Accepted {
  std::string_view key;  ///< of the field
  std::string words;     ///< `at most 8 mm`, `metal: go on; plastic: stop and ask`
};

/// A sheet borrows the question and the gland list that it was made from.
struct Sheet {
  const job::Job* job = nullptr;
  const area::Demand* demand = nullptr;
  std::optional<fit::GlandFit> fit;  ///< the gland; absent when there is none to be made off
  State state = State::none;
  std::vector<fit::Lack> lacks;   ///< what is missing, each once; empty for `cut` and `none`
  std::vector<Accepted> accepts;  ///< of what is read at the end, for `measure`
  fit::Gates gates;               ///< what the diameters must read before anything is cut
  /// What sheath less bedding must be, so that the plan's depths hold: below it, by eye.
  std::optional<double> depths_from_mm;
  std::vector<fit::Topic> not_asked;    ///< questions that nobody asked
  std::vector<Assumption> assumptions;  ///< what is taken for facts that nobody gave
  std::vector<std::string> not_ready;   ///< why nothing may be cut yet; empty when it may
  std::string fits_instead;  ///< where the named gland does not fit: the first one that does
  std::string chosen_because;
  fit::Advice advice;  ///< where no gland fits
  std::optional<strip::CutPlan> plan;
  std::optional<earth::EarthResult>
      earth;  ///< the armour as protective conductor, where it is known
  std::vector<area::InspectionItem> inspection;
  std::vector<Part> parts;
  std::vector<Step> steps;
  std::vector<Test> tests;
  std::vector<std::string> remarks;  ///< about readings and missing figures
  std::vector<std::string> cautions;
  /// Of them those that are not for every end, in a few words, in the same order.
  std::vector<std::string> own_cautions;
  std::vector<std::string> sources;

  /// Whether marks may stand on paper: with another state they would be an invitation to cut.
  [[nodiscard]] bool has_marks() const {
    return plan && (state == State::cut || state == State::measure);
  }
};

/// The gland of a sheet, and why it.
struct Choice {
  fit::GlandFit fit;
  std::string because;
  std::string fits_instead;  ///< where the gland was named and does not fit: the first that does
  fit::Advice advice;        ///< where no gland fits
};

/// @param ranked  every gland, best first (fit::fit_all); borrowed
/// @param part    the gland to make off, by its part code; empty for the best
/// @throws InputError when `part` is not in the list
[[nodiscard]] Choice choose(const job::Job& job, const std::vector<fit::GlandFit>& ranked,
                            const std::string& part);

/// The job with the gland of its sheet, where it can be made off, so that it comes to the same
/// sheet with any list that has the gland.
[[nodiscard]] job::JobInput with_gland(job::JobInput input, const Sheet& sheet);

/// Makes the sheet of one end.
/// @param list_name  of the gland list, for the sources
/// @throws InputError when the cuts contradict each other
[[nodiscard]] Sheet make_sheet(const fit::Question& question, Choice choice,
                               const std::string& list_name);

}  // namespace cutback::sheet
