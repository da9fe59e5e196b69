#pragma once
// Work shared out among threads.

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <future>
#include <vector>

namespace cutback {

/// Calls `work(i, worker)` once for every i below `count`, on as many threads as there are workers;
/// the calling thread is one of them. What comes of it must not depend on who takes what.
/// @throws the error of the lowest i that has one
template <class Work>
void in_parallel(std::size_t count, std::size_t workers, Work work) {
  std::atomic<std::size_t> next{0};
  std::vector<std::exception_ptr> errors(count);
  const auto take = [&](std::size_t worker) {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i, worker);
      } catch (...) {
        errors[i] = std::current_exception();
      }
    }
  };
  std::vector<std::future<void>> others;
  for (std::size_t i = 1; i < std::min(workers, count); ++i) {
    others.push_back(std::async(std::launch::async, take, i));
  }
  take(0);
  for (std::future<void>& other : others) other.get();
  for (const std::exception_ptr& error : errors) {
    if (error) std::rethrow_exception(error);
  }
}

}  // namespace cutback
