#include "cli/schedule_run.hpp"

#include <condition_variable>
#include <exception>
#include <future>
#include <iterator>
#include <mutex>

#include "cli/tag_register.hpp"
#include "cutback/io/schedule_results.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/schedule/decider.hpp"

namespace cutback::cli {
namespace {

using schedule::Decided;
using schedule::Decision;
using schedule::Layout;
using schedule::Side;

constexpr std::size_t k_most_twice = 10;

/// Some rows of the schedule and what came of them.
struct Chunk {
  std::size_t number = 0;
  io::RowBlock block;
  std::optional<double> taken;          ///< of the file, with this chunk
  std::vector<std::size_t> tag_hashes;  ///< of the rows; 0 where the tag is blank
  std::string text;
  std::string csv;  ///< only beside JSON, and where it is asked for
  std::vector<schedule::Exception> exceptions;
  std::exception_ptr error;
};

/// One thread's work on chunks.
class Worker {
 public:
  Worker(const io::ScheduleFile& file, const ScheduleRun& run)
      : file_(file), layout_(file.layout()), run_(run), decider_(layout_, run.settings) {}

  void work(Chunk& chunk) {
    chunk.text.clear();
    chunk.csv.clear();
    chunk.tag_hashes.clear();
    chunk.exceptions.clear();
    file_.finish(chunk.block);
    for (std::size_t i = 0; i < chunk.block.rows; ++i) row(chunk, chunk.block.records[i]);
  }

  [[nodiscard]] schedule::Tally take_tally() { return std::move(tally_); }

 private:
  void row(Chunk& chunk, const io::CsvRecord& record) {
    ++tally_.rows;
    const std::string_view tag = schedule::cell(record.fields, layout_.tag);
    chunk.tag_hashes.push_back(tag.empty() ? 0 : hash_of(tag, record));
    for (const Side side : layout_.ends()) {
      const schedule::EndName name{tag, schedule::end_name(layout_, record.fields, side),
                                   record.line, file_.source().row_word()};
      if (tag.empty()) {
        put_unusable(chunk, name,
                     {.code = ErrorCode::missing,
                      .what = "the tag is blank",
                      .where = {},
                      .given = {},
                      .allowed = {},
                      .hint = "name the cable, or take the row out"});
      } else if (record.fields.size() > layout_.width) {
        put_unusable(chunk, name,
                     {.code = ErrorCode::bad_syntax,
                      .what = "more cells than headings",
                      .where = {},
                      .given = std::to_string(record.fields.size()),
                      .allowed = std::to_string(layout_.width),
                      .hint = "put cells that hold a comma in quotes"});
      } else {
        put(chunk, name, decider_.decide(record.fields, side));
      }
    }
  }

  /// Of what names the row: the tag, and the end where a row is one end.
  std::size_t hash_of(std::string_view tag, const io::CsvRecord& record) {
    const std::hash<std::string_view> hash;
    if (layout_.two_ends) return hash(tag);
    name_ = tag;
    name_ += '\n';
    name_ += schedule::end_name(layout_, record.fields, Side::both);
    return hash(name_);
  }

  void put_unusable(Chunk& chunk, const schedule::EndName& name, Fault fault) {
    Decided decided;
    decided.decision.faults.push_back(std::move(fault));
    put(chunk, name, decided);
  }

  void put(Chunk& chunk, const schedule::EndName& name, Decided& end) {
    const Decision& decision = end.decision;
    if (run_.json) {
      print::append_schedule_json(chunk.text, name, decision);
    }
    if (!run_.json || run_.write_csv) {
      if (end.text.empty() && decision.usable()) io::append_schedule_csv_tail(end.text, decision);
      io::append_schedule_csv(run_.json ? chunk.csv : chunk.text, name, decision, end.text);
    }
    tally_.add(decision);
    if (decision.proven || !run_.keep_exceptions) return;
    const bool usable = decision.usable();
    chunk.exceptions.push_back(
        {.line = name.line,
         .tag = std::string(name.tag),
         .end = std::string(name.end),
         .verdict = usable ? std::string(to_string(decision.verdict)) : "unusable",
         .group = schedule::group_of(decision),
         .nearest = decision.nearest != nullptr ? decision.nearest->part : "",
         .reason = usable ? decision.reason : schedule::unusable_text(decision),
         .change = decision.change});
  }

  const io::ScheduleFile& file_;
  const Layout& layout_;
  const ScheduleRun& run_;
  schedule::Decider decider_;
  schedule::Tally tally_;
  std::string name_;
};

/// Hands out chunks and takes them back in order.
class Line {
 public:
  Line(io::ScheduleFile& file, const ScheduleRun& run) : file_(file), run_(run) {}

  /// @return false at the end. Where reading fails the chunk carries the error to its turn.
  bool take(Chunk& chunk) {
    const std::lock_guard lock(reading_);
    if (ended_) return false;
    chunk.number = next_++;
    chunk.error = nullptr;
    try {
      ended_ = !file_.read(chunk.block);
    } catch (...) {
      chunk.error = std::current_exception();
      ended_ = true;
      return true;
    }
    chunk.taken = file_.source().taken();
    return !ended_;
  }

  /// Waits for its turn. @return false when the work has ended by an error
  bool give(Chunk& chunk) {
    std::unique_lock lock(writing_);
    turn_.wait(lock, [&] { return stopped_ || written_ == chunk.number; });
    if (stopped_) return false;
    try {
      if (chunk.error) std::rethrow_exception(chunk.error);
      put_out(chunk);
    } catch (...) {
      error_ = std::current_exception();
      stopped_ = true;
    }
    ++written_;
    turn_.notify_all();
    return !stopped_;
  }

  void add(schedule::Tally&& tally) {
    const std::lock_guard lock(writing_);
    result_.tally.add(std::move(tally));
  }

  /// Only when every thread is done.
  ScheduleResult result() {
    if (error_) std::rethrow_exception(error_);
    result_.all_compared = !tags_.full();
    return std::move(result_);
  }

 private:
  void put_out(Chunk& chunk) {
    run_.write(chunk.text);
    if (run_.write_csv) run_.write_csv(run_.json ? chunk.csv : chunk.text);
    find_twice(chunk);
    std::move(chunk.exceptions.begin(), chunk.exceptions.end(),
              std::back_inserter(result_.tally.list));
    rows_ += chunk.block.rows;
    if (run_.progress) run_.progress(rows_, chunk.taken);
  }

  void find_twice(const Chunk& chunk) {
    const Layout& layout = file_.layout();
    for (std::size_t i = 0; i < chunk.block.rows; ++i) {
      if (chunk.tag_hashes[i] == 0) continue;
      const io::CsvRecord& record = chunk.block.records[i];
      const auto before = tags_.put(chunk.tag_hashes[i], record.line);
      if (!before || ++result_.twice_count > k_most_twice) continue;
      std::string name(schedule::cell(record.fields, layout.tag));
      if (!layout.two_ends)
        name += " " + std::string(schedule::end_name(layout, record.fields, Side::both));
      result_.twice.push_back("the tag " + name + " stands on " + file_.row_name(*before) +
                              " and on " + file_.row_name(record.line) + "; both are answered");
    }
  }

  io::ScheduleFile& file_;
  const ScheduleRun& run_;
  std::mutex reading_;
  std::size_t next_ = 0;
  bool ended_ = false;
  std::mutex writing_;
  std::condition_variable turn_;
  std::size_t written_ = 0;
  bool stopped_ = false;
  std::exception_ptr error_;
  std::size_t rows_ = 0;
  ScheduleResult result_;
  TagRegister tags_;
};

void work_through(Line& line, const io::ScheduleFile& file, const ScheduleRun& run) {
  Worker worker(file, run);
  Chunk chunk;
  while (line.take(chunk)) {
    if (!chunk.error) {
      try {
        worker.work(chunk);
      } catch (...) {
        chunk.error = std::current_exception();
      }
    }
    if (!line.give(chunk)) return;
  }
  line.add(worker.take_tally());
}

}  // namespace

ScheduleResult run_schedule(io::ScheduleFile& file, const ScheduleRun& run) {
  Line line(file, run);
  std::vector<std::future<void>> others;
  for (unsigned i = 1; i < run.threads; ++i) {
    others.push_back(std::async(std::launch::async, [&] { work_through(line, file, run); }));
  }
  work_through(line, file, run);
  for (std::future<void>& other : others) other.get();
  return line.result();
}

}  // namespace cutback::cli
