#pragma once
// Which questions are asked of an end, and what the answer lacks.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/assumption.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit {

/// The question that a check belongs to.
/// @throws InternalError for a name that is in no row of the table of checks
[[nodiscard]] Topic topic_of(CheckName name);

/// Whether a question is asked: by its own facts, or because of who asks. Inside a question that is
/// asked every fact that a check needs is given, or the check is not-known and names it.
[[nodiscard]] bool is_asked(Topic topic, const Question& question);

/// The questions that apply to this end and are not asked, in the order of Topic. Named wherever a
/// verdict stands.
[[nodiscard]] std::vector<Topic> not_asked(const Question& question);

/// The diameters that decide and are not measured, each as what is to be read at the end.
[[nodiscard]] std::vector<Lack> not_measured(const cable::Cable& cable);
/// Whether there is none.
[[nodiscard]] bool is_measured(const cable::Cable& cable);

/// What is taken for facts that nobody gave, of the end and, where there is one, of its gland. No
/// other missing fact is replaced by anything.
[[nodiscard]] std::vector<Assumption> assumptions(const Question& question,
                                                  const gland::Gland* gland);

/// What keeps the fit from being proven, each fact once, in the order of the questions: facts that
/// nobody gave, figures of the gland that its list lacks, and what only a standard or a certificate
/// tells. Empty for a gland that fits or is wholly outside.
[[nodiscard]] std::vector<Lack> lacks_of(const GlandFit& fit);

/// The first three, and how many more: "wall (--wall), hole (--hole) and 2 more".
[[nodiscard]] std::string lacks_text(const std::vector<Lack>& lacks);

/// What the answer is good for.
enum class State {
  fits,     ///< a gland fits, and what decides is measured
  order,    ///< a gland fits by datasheets: enough to order by, not to cut by
  not_yet,  ///< something is missing or marginal
  none,     ///< every gland is wholly outside
};

[[nodiscard]] constexpr std::string_view to_string(State state) {
  switch (state) {
    case State::fits:
      return "fits";
    case State::order:
      return "order";
    case State::not_yet:
      return "not-yet";
    case State::none:
      return "none";
  }
  return "";
}

/// By the verdict of the best gland.
[[nodiscard]] State state_of(Verdict best, const cable::Cable& cable);

}  // namespace cutback::fit
