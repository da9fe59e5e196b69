#include "run/schedule_groups.hpp"

#include <iterator>
#include <limits>
#include <memory>
#include <string>

#include "cutback/error.hpp"
#include "cutback/schedule/decider.hpp"
#include "run/place_asked.hpp"
#include "run/row_pipeline.hpp"

namespace cutback::run {
namespace {

using schedule::Decision;
using schedule::EndName;
using schedule::Layout;
using schedule::Side;
using schedule::WantedEnd;

constexpr std::uint32_t k_no_number = std::numeric_limits<std::uint32_t>::max();

/// Some rows of the schedule and what came of them.
struct Chunk : RowChunk {
  std::vector<WantedEnd> ends;  ///< that something fits; their groups are the thread's own
  schedule::Tally not_served;
  schedule::DefaultCounts defaults;
};

/// One thread's work: looks up which glands fit.
class Worker {
 public:
  Worker(const io::ScheduleFile& file, const schedule::Settings& settings, Keep keep)
      : file_(file), layout_(file.layout()), keep_(keep), decider_(layout_, settings) {}

  void work(Chunk& chunk) {
    chunk.ends.clear();
    chunk.not_served = {};
    chunk.defaults = {};
    for (std::size_t i = 0; i < chunk.block.rows; ++i) row(chunk, chunk.block.records[i]);
  }

  [[nodiscard]] const std::set<std::string>& taken() const { return decider_.taken(); }

  /// The number in the whole schedule of one of the thread's own groups.
  std::uint32_t number_in(schedule::Grouper& whole, std::uint32_t own) {
    numbers_.resize(grouper_.groups().size(), k_no_number);
    std::uint32_t& number = numbers_[own];
    if (number == k_no_number) number = whole.add(grouper_.groups()[own].parts, 0);
    return number;
  }

 private:
  void row(Chunk& chunk, const io::CsvRecord& record) {
    const auto fault = schedule::fault_of_row(layout_, record.fields);
    const std::uint64_t quantity = schedule::quantity_of(layout_, record.fields).value_or(1);
    if (quantity > 1 && keep_ == Keep::ends) throw several_runs(record.line, quantity);
    std::uint64_t defaults = fault ? 0 : quantity_default_of(layout_, record.fields);
    for (const Side side : layout_.ends()) {
      const EndName name{schedule::tag_of(layout_, record.fields),
                         schedule::end_name(layout_, record.fields, side),
                         record.line,
                         file_.row_word(),
                         file_.source_name(),
                         quantity};
      if (fault) {
        Decision decision;
        decision.faults.push_back(*fault);
        leave_out(chunk, name, decision);
        continue;
      }
      std::uint64_t taken = 0;
      const schedule::PartSet parts = decider_.fitting({record.fields, record.bare}, side, &taken);
      defaults |= taken;
      if (!parts.empty()) {
        add(chunk, name, side, parts);
      } else if (keep_ == Keep::not_served) {
        const Decision& decision = decider_.decide({record.fields, record.bare}, side).decision;
        defaults |= decision.defaults;
        leave_out(chunk, name, decision);
      }
    }
    chunk.defaults.add(defaults);
  }

  void add(Chunk& chunk, const EndName& name, Side side, const schedule::PartSet& parts) {
    WantedEnd end{.row = file_.row_id(name.line),
                  .side = side,
                  .quantity = static_cast<std::int64_t>(name.quantity),
                  .group = grouper_.add(parts, 0),
                  .name = {}};
    if (keep_ == Keep::ends) end.name = std::string(name.tag) + " " + std::string(name.end);
    chunk.ends.push_back(std::move(end));
  }

  [[nodiscard]] InputError several_runs(std::size_t line, std::uint64_t quantity) const {
    return InputError(
        make_fault(ErrorCode::contradiction, "stock is shared out to single cables",
                   file_.row_name(line), "a quantity of " + std::to_string(quantity), "1",
                   "write the cables as rows of their own, or leave the limit of stock out"));
  }

  void leave_out(Chunk& chunk, const EndName& name, const Decision& decision) const {
    if (keep_ != Keep::not_served) return;
    chunk.not_served.add(decision, name.quantity);
    chunk.not_served.list.push_back(schedule::exception_of(name, decision));
  }

  const io::ScheduleFile& file_;
  const Layout& layout_;
  Keep keep_;
  schedule::Decider decider_;
  schedule::Grouper grouper_;
  std::vector<std::uint32_t> numbers_;  ///< of its groups, as far as they are known
};

}  // namespace

GroupedSchedule group_schedule(std::span<io::ScheduleFile* const> files,
                               const schedule::Settings& settings, unsigned threads, Keep keep) {
  GroupedSchedule result;
  schedule::Grouper grouper;
  const io::ScheduleFile* at = nullptr;
  const auto deliver = [&](Chunk& chunk, Worker& worker) {
    if (!settings.asking.place && !chunk.block.places.empty()) {
      throw too_late_to_ask(*at, chunk.block.places.front());
    }
    for (WantedEnd& end : chunk.ends) {
      end.group = worker.number_in(grouper, end.group);
      grouper.add_to(end.group, end.quantity);
    }
    if (keep == Keep::ends) {
      std::move(chunk.ends.begin(), chunk.ends.end(), std::back_inserter(result.ends));
    }
    for (const schedule::SkippedRow& row : chunk.block.skipped) result.skipped.back().add(row);
    result.rows += chunk.block.rows;
    result.not_served.add(std::move(chunk.not_served));
    result.defaults.add(chunk.defaults);
  };
  for (io::ScheduleFile* const file : files) {
    result.skipped.emplace_back();
    at = file;
    work_through_rows<Chunk>(
        *file, threads, [&] { return std::make_unique<Worker>(*file, settings, keep); }, deliver,
        [&](const Worker& worker) {
          result.taken.insert(worker.taken().begin(), worker.taken().end());
        });
  }
  result.groups = grouper.groups();
  return result;
}

}  // namespace cutback::run
