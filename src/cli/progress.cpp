#include "cli/progress.hpp"

#include <algorithm>

#include "cutback/number.hpp"

namespace cutback::cli {

void Progress::show(std::size_t done, std::optional<double> part) {
  const auto now = std::chrono::steady_clock::now();
  const double seconds = std::chrono::duration<double>(now - start_).count();
  if (seconds < 1.0 || now - shown_ < std::chrono::milliseconds(200)) return;
  shown_ = now;
  drawn_ = true;
  const std::string rate = fixed(static_cast<double>(done) / seconds, 0) + " " + things_ + "/s";
  if (!part || *part <= 0.0) {
    err_ << '\r' << done << ' ' << things_ << ", " << rate << "   " << std::flush;
    return;
  }
  constexpr std::size_t k_width = 30;
  const double whole = std::min(1.0, *part);
  const auto filled = static_cast<std::size_t>(whole * static_cast<double>(k_width));
  err_ << "\r[" << std::string(filled, '#') << std::string(k_width - filled, '.') << "] " << rate
       << ", " << fixed(seconds * (1.0 - whole) / whole, 0) << " s left   " << std::flush;
}

void Progress::clear() {
  if (drawn_) err_ << '\r' << std::string(76, ' ') << '\r' << std::flush;
}

}  // namespace cutback::cli
