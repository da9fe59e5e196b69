#include "cli/schedule_groups.hpp"

#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>

#include "cli/row_pipeline.hpp"

namespace cutback::cli {
namespace {

using schedule::Decision;
using schedule::Layout;
using schedule::Side;

constexpr std::size_t k_most_remembered = 20000;  // different ends a thread keeps
constexpr std::uint32_t k_no_group = std::numeric_limits<std::uint32_t>::max();

/// What is known of one kind of end.
struct Known {
  std::uint32_t group = k_no_group;  ///< of the thread's own groups
  std::optional<Decision> decision;  ///< why nothing fits
};

/// Some rows of the schedule and what came of them.
struct Chunk : RowChunk {
  std::vector<std::uint32_t> groups;  ///< of the ends that something fits
  schedule::Tally not_served;
};

/// One thread's work: looks up which glands fit, for each different end once.
class Worker {
 public:
  Worker(const io::ScheduleFile& file, const schedule::Settings& settings)
      : file_(file), layout_(file.layout()), settings_(settings) {}

  void work(Chunk& chunk) {
    chunk.groups.clear();
    chunk.not_served = {};
    for (std::size_t i = 0; i < chunk.block.rows; ++i) row(chunk, chunk.block.records[i]);
  }

  [[nodiscard]] const schedule::PartSet& parts(std::uint32_t group) const {
    return grouper_.groups()[group].parts;
  }
  /// The number in the whole schedule of each of its own groups, as far as it is known.
  std::vector<std::size_t> numbers;

 private:
  void row(Chunk& chunk, const io::CsvRecord& record) {
    const auto fault = schedule::fault_of_row(layout_, record.fields);
    for (const Side side : layout_.ends()) {
      const schedule::EndName name{schedule::cell(record.fields, layout_.tag),
                                   schedule::end_name(layout_, record.fields, side), record.line,
                                   file_.source().row_word()};
      if (fault) {
        Decision decision;
        decision.faults.push_back(*fault);
        leave_out(chunk, name, decision);
        continue;
      }
      const Known& known = look_up(record.fields, side);
      if (known.decision) {
        leave_out(chunk, name, *known.decision);
      } else {
        chunk.groups.push_back(known.group);
      }
    }
  }

  static void leave_out(Chunk& chunk, const schedule::EndName& name, const Decision& decision) {
    chunk.not_served.add(decision);
    chunk.not_served.list.push_back(schedule::exception_of(name, decision));
  }

  const Known& look_up(schedule::Cells cells, Side side) {
    schedule::key_of(layout_, cells, side, key_);
    const auto found = memory_.find(key_);
    if (found != memory_.end()) return found->second;
    if (memory_.size() >= k_most_remembered) memory_.clear();
    Known known;
    std::vector<Fault> faults;
    const job::JobInput input = schedule::input_of(layout_, cells, side, faults);
    if (faults.empty()) {
      const schedule::PartSet parts = schedule::fitting_of(input, settings_);
      if (parts.empty()) {
        known.decision = schedule::decide(input, settings_);
      } else {
        known.group = static_cast<std::uint32_t>(grouper_.add(parts, 0));
      }
    } else {
      known.decision.emplace();
      known.decision->faults = std::move(faults);
    }
    return memory_.emplace(key_, std::move(known)).first->second;
  }

  const io::ScheduleFile& file_;
  const Layout& layout_;
  const schedule::Settings& settings_;
  schedule::Grouper grouper_;
  std::unordered_map<std::string, Known> memory_;
  std::string key_;
};

}  // namespace

GroupedSchedule group_schedule(io::ScheduleFile& file, const schedule::Settings& settings,
                               unsigned threads) {
  GroupedSchedule result;
  schedule::Grouper grouper;
  const auto deliver = [&](Chunk& chunk, Worker& worker) {
    for (const std::uint32_t own : chunk.groups) {
      if (own >= worker.numbers.size()) worker.numbers.resize(own + 1, k_no_group);
      if (worker.numbers[own] == k_no_group)
        worker.numbers[own] = grouper.add(worker.parts(own), 0);
      grouper.add_to(worker.numbers[own], 1);
    }
    result.rows += chunk.block.rows;
    result.not_served.add(std::move(chunk.not_served));
  };
  work_through_rows<Chunk>(
      file, threads, [&] { return std::make_unique<Worker>(file, settings); }, deliver,
      [](Worker&) {});
  result.groups = grouper.groups();
  return result;
}

}  // namespace cutback::cli
