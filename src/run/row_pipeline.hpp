#pragma once
// Rows read piece by piece, worked on by several threads, and delivered in the file's order.

#include <condition_variable>
#include <cstddef>
#include <exception>
#include <future>
#include <mutex>
#include <optional>
#include <vector>

#include "cutback/io/schedule_file.hpp"

namespace cutback::run {

/// Some rows of the schedule; what comes of them is added by a type derived from it.
struct RowChunk {
  std::size_t number = 0;
  io::RowBlock block;
  std::optional<double> taken;  ///< of the file, with this chunk
  std::exception_ptr error;
};

/// Hands out chunks and takes them back in order.
class RowLine {
 public:
  explicit RowLine(io::ScheduleFile& file) : file_(file) {}

  /// @return false at the end. Where reading fails the chunk carries the error to its turn.
  bool take(RowChunk& chunk) {
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

  /// Waits for the chunk's turn and delivers it. @return false when the work has ended by an error
  template <class Deliver>
  bool give(const RowChunk& chunk, Deliver deliver) {
    std::unique_lock lock(writing_);
    turn_.wait(lock, [&] { return stopped_ || written_ == chunk.number; });
    if (stopped_) return false;
    try {
      if (chunk.error) std::rethrow_exception(chunk.error);
      deliver();
    } catch (...) {
      error_ = std::current_exception();
      stopped_ = true;
    }
    ++written_;
    turn_.notify_all();
    return !stopped_;
  }

  /// Never at the same time as a delivery.
  template <class Finish>
  void finish(Finish finish_worker) {
    const std::lock_guard lock(writing_);
    finish_worker();
  }

  void rethrow_error() const {
    if (error_) std::rethrow_exception(error_);
  }

 private:
  io::ScheduleFile& file_;
  std::mutex reading_;
  std::size_t next_ = 0;
  bool ended_ = false;
  std::mutex writing_;
  std::condition_variable turn_;
  std::size_t written_ = 0;
  bool stopped_ = false;
  std::exception_ptr error_;
};

/// Reads `file` to its end on `threads` threads. `make` gives each its worker, `worker.work(chunk)`
/// works on a chunk whose rows are ready, `deliver(chunk, worker)` follows in the file's order and
/// `finish(worker)` when a worker is done, both never at once.
/// @throws the first error in the order of the file
template <class Chunk, class Make, class Deliver, class Finish>
void work_through_rows(io::ScheduleFile& file, unsigned threads, Make make, Deliver deliver,
                       Finish finish) {
  RowLine line(file);
  const auto work = [&] {
    auto worker = make();
    Chunk chunk;
    while (line.take(chunk)) {
      if (!chunk.error) {
        try {
          file.finish(chunk.block);
          worker->work(chunk);
        } catch (...) {
          chunk.error = std::current_exception();
        }
      }
      if (!line.give(chunk, [&] { deliver(chunk, *worker); })) return;
    }
    line.finish([&] { finish(*worker); });
  };
  std::vector<std::future<void>> others;
  for (unsigned i = 1; i < threads; ++i) others.push_back(std::async(std::launch::async, work));
  work();
  for (std::future<void>& other : others) other.get();
  line.rethrow_error();
}

}  // namespace cutback::run
