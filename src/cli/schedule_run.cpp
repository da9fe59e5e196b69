#include "cli/schedule_run.hpp"

#include <condition_variable>
#include <future>
#include <mutex>
#include <unordered_map>

#include "cutback/io/schedule_results.hpp"
#include "cutback/print/schedule.hpp"

namespace cutback::cli {
namespace {

using schedule::Decision;
using schedule::Layout;
using schedule::Side;

constexpr std::size_t k_rows_a_chunk = 256;
constexpr std::size_t k_most_remembered = 20000;  // decisions a thread keeps, some 20 MB
constexpr std::size_t k_most_twice = 10;

/// Some rows of the schedule and what came of them.
struct Chunk {
  std::size_t number = 0;
  std::size_t rows = 0;
  std::vector<io::CsvRecord> records;
  std::string text;
  schedule::Tally tally;
};

/// A decision with the part of its line that does not name the end.
struct Remembered {
  Decision decision;
  std::string tail;
};

Decision unusable(Fault fault) {
  Decision decision;
  decision.faults.push_back(std::move(fault));
  return decision;
}

/// One thread's work: decides chunks, each different end once.
class Worker {
 public:
  Worker(const Layout& layout, const ScheduleRun& run) : layout_(layout), run_(run) {}

  void work(Chunk& chunk) {
    chunk.text.clear();
    chunk.tally = {};
    chunk.tally.rows = chunk.rows;
    for (std::size_t i = 0; i < chunk.rows; ++i) row(chunk, chunk.records[i]);
  }

 private:
  void row(Chunk& chunk, const io::CsvRecord& record) {
    const std::string_view tag = schedule::cell(record.fields, layout_.tag);
    for (const Side side : layout_.ends()) {
      const schedule::EndName name{tag, schedule::end_name(layout_, record.fields, side),
                                   record.line};
      if (tag.empty()) {
        put(chunk, name,
            {unusable({.code = ErrorCode::missing,
                       .what = "the tag is blank",
                       .where = {},
                       .given = {},
                       .allowed = {},
                       .hint = "name the cable, or take the row out"}),
             {}});
      } else if (record.fields.size() > layout_.width) {
        put(chunk, name,
            {unusable({.code = ErrorCode::bad_syntax,
                       .what = "more cells than headings",
                       .where = {},
                       .given = std::to_string(record.fields.size()),
                       .allowed = std::to_string(layout_.width),
                       .hint = "put cells that hold a comma in quotes"}),
             {}});
      } else {
        put(chunk, name, decided(record.fields, side));
      }
    }
  }

  const Remembered& decided(schedule::Cells cells, Side side) {
    schedule::key_of(layout_, cells, side, key_);
    const auto found = memory_.find(key_);
    if (found != memory_.end()) return found->second;
    if (memory_.size() >= k_most_remembered) memory_.clear();
    std::vector<Fault> faults;
    const job::JobInput input = schedule::input_of(layout_, cells, side, faults);
    Remembered fresh;
    if (faults.empty()) {
      fresh.decision = schedule::decide(input, run_.settings);
    } else {
      fresh.decision.faults = std::move(faults);
    }
    if (fresh.decision.usable()) fresh.tail = io::schedule_csv_tail(fresh.decision);
    return memory_.emplace(key_, std::move(fresh)).first->second;
  }

  void put(Chunk& chunk, const schedule::EndName& name, const Remembered& end) {
    const Decision& decision = end.decision;
    if (run_.json) {
      print::append_schedule_json(chunk.text, name, decision);
    } else {
      io::append_schedule_csv(chunk.text, name, decision, end.tail);
    }
    chunk.tally.add(decision);
    if (decision.proven || !run_.keep_exceptions) return;
    const bool usable = decision.usable();
    chunk.tally.list.push_back(
        {.line = name.line,
         .tag = std::string(name.tag),
         .end = std::string(name.end),
         .verdict = usable ? std::string(to_string(decision.verdict)) : "unusable",
         .group = schedule::group_of(decision),
         .nearest = decision.nearest != nullptr ? decision.nearest->part : "",
         .reason = usable ? decision.reason : schedule::unusable_text(decision),
         .change = decision.change});
  }

  const Layout& layout_;
  const ScheduleRun& run_;
  std::unordered_map<std::string, Remembered> memory_;
  std::string key_;
};

/// Hands out chunks and takes them back in order.
class Line {
 public:
  Line(io::ScheduleFile& file, const ScheduleRun& run) : file_(file), run_(run) {}

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

  /// Waits for its turn. @return false when another thread failed
  bool give(Chunk& chunk) {
    std::unique_lock lock(writing_);
    turn_.wait(lock, [&] { return stopped_ || written_ == chunk.number; });
    if (stopped_) return false;
    run_.write(chunk.text);
    find_twice(chunk);
    result_.tally.add(std::move(chunk.tally));
    if (run_.progress) run_.progress(static_cast<std::size_t>(result_.tally.rows));
    ++written_;
    turn_.notify_all();
    return true;
  }

  void stop() {
    const std::lock_guard lock(writing_);
    stopped_ = true;
    turn_.notify_all();
  }

  ScheduleResult result() { return std::move(result_); }
  [[nodiscard]] const Layout& layout() const { return file_.layout(); }

 private:
  void find_twice(const Chunk& chunk) {
    const Layout& layout = file_.layout();
    for (std::size_t i = 0; i < chunk.rows; ++i) {
      const io::CsvRecord& record = chunk.records[i];
      const std::string_view tag = schedule::cell(record.fields, layout.tag);
      if (tag.empty()) continue;
      const Side side = layout.two_ends ? Side::from : Side::both;
      std::string name(tag);
      if (!layout.two_ends)
        name += " " + std::string(schedule::end_name(layout, record.fields, side));
      // Only the hash is kept: a schedule may have a million tags.
      const auto [at, fresh] = lines_.emplace(std::hash<std::string>{}(name), record.line);
      if (fresh) continue;
      if (++result_.twice_count > k_most_twice) continue;
      result_.twice.push_back("the tag " + name + " stands on line " + std::to_string(at->second) +
                              " and on line " + std::to_string(record.line) +
                              "; both are answered");
    }
  }

  io::ScheduleFile& file_;
  const ScheduleRun& run_;
  std::mutex reading_;
  std::size_t next_ = 0;
  std::mutex writing_;
  std::condition_variable turn_;
  std::size_t written_ = 0;
  bool stopped_ = false;
  ScheduleResult result_;
  std::unordered_map<std::size_t, std::size_t> lines_;
};

/// Stops the line when a thread leaves it by an error, so that no other waits for its chunk.
class StopAtError {
 public:
  explicit StopAtError(Line& line) : line_(line) {}
  StopAtError(const StopAtError&) = delete;
  StopAtError& operator=(const StopAtError&) = delete;
  ~StopAtError() {
    if (!done_) line_.stop();
  }
  void done() { done_ = true; }

 private:
  Line& line_;
  bool done_ = false;
};

void work_through(Line& line, const ScheduleRun& run) {
  StopAtError guard(line);
  Worker worker(line.layout(), run);
  Chunk chunk;
  while (line.take(chunk)) {
    worker.work(chunk);
    if (!line.give(chunk)) break;
  }
  guard.done();
}

}  // namespace

ScheduleResult run_schedule(io::ScheduleFile& file, const ScheduleRun& run) {
  Line line(file, run);
  std::vector<std::future<void>> others;
  for (unsigned i = 1; i < run.threads; ++i) {
    others.push_back(std::async(std::launch::async, [&] { work_through(line, run); }));
  }
  work_through(line, run);
  for (std::future<void>& other : others) other.get();
  return line.result();
}

}  // namespace cutback::cli
