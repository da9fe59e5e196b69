#pragma once
// What a register of finished ends says of the ends of a schedule.

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "cutback/job/input.hpp"
#include "cutback/job/job.hpp"
#include "cutback/measure/reading.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::schedule {

/// One end that was measured, or is finished.
struct MadeEnd {
  std::optional<measure::Readings> sheath_od;
  std::optional<measure::Readings> bedding;
  std::optional<measure::Readings> armour;
  std::string part;                  ///< of its gland; empty: not finished
  std::string words;                 ///< `made with ARM-16-M20 on 2026-03-31 by JB`
  std::vector<std::string> remarks;  ///< what of the readings was taken elsewhere on the cable

  [[nodiscard]] bool is_finished() const { return !part.empty(); }
  [[nodiscard]] bool is_measured() const { return sheath_od || bedding || armour; }
};

/// The ends of a schedule that stand in the register, by tag and by the end's name in the results.
class MadeEnds {
 public:
  /// The place for an end, made where there is none.
  MadeEnd& at(std::string_view tag, std::string_view end);
  /// Null where the register does not say anything of it.
  [[nodiscard]] const MadeEnd* find(std::string_view tag, std::string_view end) const;

 private:
  std::unordered_map<std::string, MadeEnd> ends_;
};

/// The job of an end as job::resolve() understands it, with what was measured in place of its own
/// figures: each diameter keeps the evidence that it has, so that a figure of a datasheet beside
/// readings stays one, and a single reading of a sheath is worth no more than it is alone.
/// @throws InputError as job::resolve(), and where the readings and the rest contradict each other
[[nodiscard]] job::Job resolve_made(const job::JobInput& in, const MadeEnd& made,
                                    const tables::Standards& standards);

/// The same for a job file, whose figures have one evidence in common: what would be taken for more
/// than it is beside the readings is left out.
void put_readings(const MadeEnd& made, job::JobInput& in);

}  // namespace cutback::schedule
