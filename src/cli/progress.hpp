#pragma once
// A bar on a terminal.

#include <chrono>
#include <cstddef>
#include <optional>
#include <ostream>
#include <string>

namespace cutback::cli {

/// Shows how far the work is, once it has taken a second; at most five times a second.
class Progress {
 public:
  /// @param things  what is counted, such as `rows`
  Progress(std::ostream& err, std::string things) : err_(err), things_(std::move(things)) {}

  /// @param part  of the work that is done, 0 to 1, where it is known
  void show(std::size_t done, std::optional<double> part);
  /// Takes the bar off the screen.
  void clear();

 private:
  std::ostream& err_;
  std::string things_;
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  std::chrono::steady_clock::time_point shown_ = start_;
  bool drawn_ = false;
};

}  // namespace cutback::cli
