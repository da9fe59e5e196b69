#include "run/made_account.hpp"

#include <algorithm>
#include <utility>

#include "cutback/error.hpp"
#include "cutback/fit/gates.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/decider.hpp"
#include "cutback/schedule/groups.hpp"
#include "cutback/print/words.hpp"
#include "run/card_end.hpp"

namespace cutback::run {
namespace {

using schedule::MadeEnd;

/// The readings of one diameter against the gates that it may meet, one of them.
void compare(const char* name, const std::optional<measure::Readings>& readings, double zero_mm,
             const std::vector<fit::Gate>& gates, int decimals, const std::string& part,
             std::vector<std::string>& outside) {
  if (!readings || gates.empty()) return;
  std::string far;
  for (const measure::Place& place : readings->places) {
    for (const double reading : place.readings_mm) {
      const bool good = std::any_of(gates.begin(), gates.end(), [&](const fit::Gate& gate) {
        return gate.holds(reading - zero_mm);
      });
      if (!good) far += (far.empty() ? "" : ", ") + plain(reading, 3);
    }
  }
  if (far.empty()) return;
  std::string must;
  for (const fit::Gate& gate : gates)
    must += (must.empty() ? "" : " or ") + print::gate_words(gate, decimals);
  outside.push_back(std::string(name) + " reads " + far + ", must read " + must + " for " + part);
}

/// What of the readings cannot be for this gland.
std::vector<std::string> outside_of(const job::JobInput& input, const MadeEnd& made,
                                    const schedule::RowNotes& notes,
                                    const schedule::Settings& settings, const std::string& part) {
  std::vector<std::string> outside;
  const auto glands = settings.glands->glands();
  const auto gland = std::find_if(glands.begin(), glands.end(),
                                  [&](const gland::Gland& each) { return each.part == part; });
  try {
    const job::Job job = schedule::job_of(input, settings, notes, &made);
    if (part.empty()) return outside;
    if (gland == glands.end())
      return {part + " is not in the gland list: its ranges are not known"};
    const fit::Question question = fit::ask(job, *settings.standards, settings.asking);
    const fit::Gates gates = fit::gates_of(question, *gland);
    const auto list = [](const fit::Gate& gate) {
      return gate.low_mm || gate.high_mm ? std::vector<fit::Gate>{gate} : std::vector<fit::Gate>{};
    };
    const double zero_mm = job.caliper.zero_mm;
    compare("sheath", made.sheath_od, zero_mm, list(gates.sheath), 1, part, outside);
    compare("bedding", made.bedding, zero_mm, list(gates.bedding), 1, part, outside);
    std::vector<fit::Gate> wire;
    for (const fit::WireGate& each : gates.wire) wire.push_back(each.gate);
    if (std::all_of(wire.begin(), wire.end(),
                    [](const fit::Gate& gate) { return gate.low_mm || gate.high_mm; })) {
      compare(std::string(print::piece_words(job.cable.armour)).c_str(), made.armour, zero_mm, wire,
              2, part, outside);
    }
  } catch (const InputError& error) {
    for (const Fault& fault : error.faults()) outside.push_back(to_line(fault));
  }
  return outside;
}

}  // namespace

std::vector<AccountedEnd> account_of(const Schedule& schedule, const schedule::Settings& settings,
                                     const schedule::MadeEnds& made) {
  std::vector<AccountedEnd> ends;
  for (const ScheduleTable& table : schedule.tables) {
    const schedule::Layout& layout = table.file->layout();
    schedule::Decider decider(layout, settings);
    io::RowBlock block;
    while (table.file->read(block)) {
      table.file->finish(block);
      for (std::size_t i = 0; i < block.rows; ++i) {
        const io::CsvRecord& record = block.records[i];
        const bool usable = !schedule::fault_of_row(layout, record.fields);
        for (const schedule::Side side : layout.ends()) {
          AccountedEnd end;
          end.tag = schedule::tag_of(layout, record.fields);
          end.end = schedule::end_name(layout, record.fields, side);
          end.place = place_of(layout, record.fields, side);
          if (usable) {
            const auto& decision = decider.decide({record.fields, record.bare}, side).decision;
            if (decision.gland != nullptr) end.part = decision.gland->part;
          }
          if (const MadeEnd* const found = made.find(end.tag, end.end)) {
            end.made = found->part;
            std::vector<Fault> faults;
            schedule::RowNotes notes;
            const job::JobInput input =
                schedule::input_of(layout, record.fields, side, faults, &notes);
            if (usable && faults.empty() && found->is_measured()) {
              end.outside = outside_of(input, *found, notes, settings,
                                       found->is_finished() ? found->part : end.part);
            }
          }
          ends.push_back(std::move(end));
        }
      }
    }
  }
  return ends;
}

}  // namespace cutback::run
