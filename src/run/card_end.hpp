#pragma once
// One end, decided once: what its card is made from.

#include <cstdint>
#include <memory>
#include <string>

#include "cutback/error.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/input.hpp"
#include "cutback/job/job.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/sheet/sheet.hpp"
#include "run/chosen_parts.hpp"
#include "run/row_doubts.hpp"

namespace cutback::run {

/// The job, the question that it puts, and the gland that was chosen for it: nothing of it is
/// worked out again for the card. What it borrows is that of schedule::Settings.
struct CardEnd {
  std::string tag;
  std::string end;
  std::string place;      ///< for messages: `pump.json: `, or `cables.csv, line 7: `
  bool is_file = false;   ///< a job is a whole file, and one that is wrong is not printed
  std::string part;       ///< under which it is looked for; empty where there is none
  std::string why_none;   ///< not empty: it cannot be used, and the rest is empty
  std::string why;        ///< where no gland fits: as the exceptions of a schedule say it
  std::string remedy;     ///< where the gland is not proven: what would help, as there
  std::string made;       ///< not empty: it is finished, and how; its card has nothing to cut by
  std::string made_says;  ///< of a finished end: what its readings carry
  Verdict made_verdict = Verdict::not_known;  ///< the same
  bool made_measured = false;                 ///< the same: every diameter that decides was read
  job::JobInput input;
  std::unique_ptr<const job::Job> job;
  fit::Question question;  ///< of this job
  sheet::Choice choice;
  Cuts stated_mm;              ///< the cuts that the card is expected to have
  std::uint64_t defaults = 0;  ///< bit n: the default of this number was taken (Format::defaults)
};

/// The end of a job file.
/// @param made  what a register says of it; null where there is none
/// @throws InputError where it cannot be used, or names a gland that is not in the list
[[nodiscard]] CardEnd decide_job(const std::string& path, const job::JobInput& input,
                                 const schedule::Settings& settings,
                                 const schedule::MadeEnd* made = nullptr);

/// One end of a row of a schedule.
/// @param place   of the row, for messages
/// @param chosen  what the results of the schedule say of it
/// @param outside  what stands outside of the row and speaks against it
[[nodiscard]] CardEnd decide_row(const schedule::Layout& layout, schedule::Cells cells,
                                 schedule::Side side, const ChosenEnd& chosen, std::string place,
                                 const OutsideRow& outside, const schedule::Settings& settings);

/// Why the end cannot be used, without the folder that its file lay in, which is nobody's business
/// on paper.
[[nodiscard]] std::string on_paper(const CardEnd& end);

/// The error with its place before those of its faults.
[[nodiscard]] InputError at_place(const InputError& error, const std::string& place);

/// `from: Switchroom`, the name of the end with that of its place.
[[nodiscard]] std::string end_words(const schedule::Layout& layout, schedule::Cells cells,
                                    schedule::Side side);

/// The place that this end of the row lies at; empty where the schedule does not say.
[[nodiscard]] std::string place_of(const schedule::Layout& layout, schedule::Cells cells,
                                   schedule::Side side);

}  // namespace cutback::run
