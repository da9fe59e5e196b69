#pragma once
// A dialogue from the caliper to the answer: which question comes next, and what an answer does.
//
// Nothing here reads or prints. A state is what was known at the start and every answer since, in
// order: the job, the next question and the way back are worked out from it. Asked is what can
// still change the answer, no more: a fact is asked for while a gland that is still open lacks it.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/fit/fit.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/input.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::ask {

/// What the answers are held against. Borrowed.
struct Facts {
  const tables::Standards& standards;
  std::span<const gland::Gland> glands;
};

/// One answer, as the field takes it. `?` is "not known"; empty is "go on".
struct Answer {
  std::string key;
  std::string text;
  std::string also = {};      ///< another field that the word told, as key=value
  std::string as_typed = {};  ///< of the type of protection: it may have been the whole plate
  friend bool operator==(const Answer&, const Answer&) = default;
};

struct State {
  job::JobInput start;  ///< of a file, or of the command line
  std::vector<Answer> answers;
  bool confirmed = false;
  /// A line of the summary is asked again: its key, and the state at the summary, which stands
  /// until the new answer is whole. At most one.
  std::string again = {};
  std::vector<State> before = {};
};

/// The job as far as it was told.
[[nodiscard]] job::JobInput job_of(const State& state);

/// The job to put into a file: while a line is asked again, with the old answer.
[[nodiscard]] job::JobInput job_to_keep(const State& state);

/// What is asked: of the dialogue, so that what is not known is never passed over.
[[nodiscard]] constexpr fit::Asking asking() {
  return {.purpose = fit::Purpose::sheet, .place = true};
}

/// A question as it is put.
struct Prompt {
  std::string key;                ///< of the field; empty: to confirm the summary
  std::string asks;               ///< the question, in one sentence
  std::string form;               ///< unit and example, or the words
  std::string usual;              ///< may be empty
  std::string now;                ///< of a line asked again: what it was; an empty line keeps it
  std::string not_known;          ///< what `?` costs
  std::string running;            ///< the estimate so far, and whether another reading is worth it
  std::string_view drawing = {};  ///< where the jaws go; of the first reading of a diameter
  bool may_skip = false;          ///< an empty line goes on
};

/// The next question; nothing once all is confirmed.
[[nodiscard]] std::optional<Prompt> next(const State& state, const Facts& facts);

/// What a line did.
struct Step {
  State state;
  std::vector<std::string> says;  ///< what it was taken for, what is wrong, what to look at
  bool refused = false;           ///< the state is as before
};

/// `<` goes back by one answer, `?` is "not known"; anything else is for the question at hand. At
/// the summary a number asks that line again and an empty line confirms; from there `<` and an
/// empty line go back to the summary as it was. After the end nothing changes.
/// @throws nothing for any line
[[nodiscard]] Step give(const State& state, const Facts& facts, std::string_view line);

/// The questions that were answered, "not known" among the answers, in the order in which they are
/// asked; then what a file told besides, in the order of the field table.
struct Told {
  std::string key;
  std::string name;  ///< in a few words: "wall"
  std::string text;  ///< with its unit
};
[[nodiscard]] std::vector<Told> summary(const State& state);

/// The arguments that ask the same of `cutback fit`, without the program's name and the list.
[[nodiscard]] std::vector<std::string> command_of(const State& state);

/// The same cable at its other end: what is measured is to be measured there, what belongs to the
/// end is gone.
[[nodiscard]] State other_end(const State& state);

}  // namespace cutback::ask
