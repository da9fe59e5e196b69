#include "cli/schedule_groups.hpp"

#include <condition_variable>
#include <future>
#include <limits>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_map>

namespace cutback::cli {
namespace {

using schedule::Decision;
using schedule::Layout;
using schedule::Side;

constexpr std::size_t k_rows_a_chunk = 256;
constexpr std::size_t k_most_remembered = 20000;  // different ends a thread keeps
constexpr std::uint32_t k_no_group = std::numeric_limits<std::uint32_t>::max();

/// What is known of one kind of end.
struct Known {
  std::uint32_t group = k_no_group;  ///< of the thread's own groups
  std::optional<Decision> decision;  ///< why nothing fits
};

/// Some rows of the schedule and what came of them.
struct Chunk {
  std::size_t number = 0;
  std::size_t rows = 0;
  std::vector<io::CsvRecord> records;
  std::vector<std::uint32_t> groups;  ///< of the ends that something fits
  schedule::Tally not_served;
};

/// One thread's work: looks up which glands fit, for each different end once.
class Worker {
 public:
  Worker(const Layout& layout, const schedule::Settings& settings)
      : layout_(layout), settings_(settings) {}

  void work(Chunk& chunk) {
    chunk.groups.clear();
    chunk.not_served = {};
    for (std::size_t i = 0; i < chunk.rows; ++i) row(chunk, chunk.records[i]);
  }

  [[nodiscard]] const std::vector<schedule::EndGroup>& groups() const { return grouper_.groups(); }

 private:
  void row(Chunk& chunk, const io::CsvRecord& record) {
    const auto fault = schedule::fault_of_row(layout_, record.fields);
    for (const Side side : layout_.ends()) {
      const schedule::EndName name{schedule::cell(record.fields, layout_.tag),
                                   schedule::end_name(layout_, record.fields, side), record.line};
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

  const Layout& layout_;
  const schedule::Settings& settings_;
  schedule::Grouper grouper_;
  std::unordered_map<std::string, Known> memory_;
  std::string key_;
};

/// Hands out chunks and takes them back in order.
class Line {
 public:
  explicit Line(io::ScheduleFile& file) : file_(file) {}

  bool take(Chunk& chunk) {
    const std::lock_guard lock(reading_);
    chunk.number = next_++;
    chunk.rows = 0;
    while (chunk.rows < k_rows_a_chunk) {
      if (chunk.records.size() == chunk.rows) chunk.records.emplace_back();
      if (!file_.next(chunk.records[chunk.rows])) break;
      ++chunk.rows;
    }
    return chunk.rows > 0;
  }

  /// Waits for its turn. `worker` is that of the calling thread, and `numbers` the groups of the
  /// whole schedule that its own are, as far as they are known. @return false when another failed
  bool give(Chunk& chunk, const Worker& worker, std::vector<std::size_t>& numbers) {
    std::unique_lock lock(writing_);
    turn_.wait(lock, [&] { return stopped_ || written_ == chunk.number; });
    if (stopped_) return false;
    numbers.resize(worker.groups().size(), k_no_group);
    for (const std::uint32_t own : chunk.groups) {
      const schedule::PartSet& parts = worker.groups()[own].parts;
      if (numbers[own] == k_no_group) numbers[own] = grouper_.add(parts, 0);
      grouper_.add_to(numbers[own], 1);
    }
    result_.rows += chunk.rows;
    result_.not_served.add(std::move(chunk.not_served));
    ++written_;
    turn_.notify_all();
    return true;
  }

  void stop() {
    const std::lock_guard lock(writing_);
    stopped_ = true;
    turn_.notify_all();
  }

  GroupedSchedule result() {
    result_.groups = grouper_.groups();
    return std::move(result_);
  }

 private:
  io::ScheduleFile& file_;
  std::mutex reading_;
  std::size_t next_ = 0;
  std::mutex writing_;
  std::condition_variable turn_;
  std::size_t written_ = 0;
  bool stopped_ = false;
  schedule::Grouper grouper_;
  GroupedSchedule result_;
};

void work_through(Line& line, const Layout& layout, const schedule::Settings& settings) {
  try {
    Worker worker(layout, settings);
    std::vector<std::size_t> numbers;
    Chunk chunk;
    while (line.take(chunk)) {
      worker.work(chunk);
      if (!line.give(chunk, worker, numbers)) break;
    }
  } catch (...) {
    line.stop();
    throw;
  }
}

}  // namespace

GroupedSchedule group_schedule(io::ScheduleFile& file, const schedule::Settings& settings,
                               unsigned threads) {
  Line line(file);
  std::vector<std::future<void>> others;
  for (unsigned i = 1; i < threads; ++i) {
    others.push_back(
        std::async(std::launch::async, [&] { work_through(line, file.layout(), settings); }));
  }
  work_through(line, file.layout(), settings);
  for (std::future<void>& other : others) other.get();
  return line.result();
}

}  // namespace cutback::cli
