#include "cli/talk.hpp"

#include <unistd.h>
#include <algorithm>
#include <istream>

#include "cli/terminal.hpp"

namespace cutback::cli {
namespace {

constexpr std::size_t k_columns = 80;

/// A signal came, perhaps while nothing was read.
volatile std::sig_atomic_t interrupted = 0;

}  // namespace

StopsReading::StopsReading() {
  struct sigaction action {};
  action.sa_handler = [](int) { interrupted = 1; };  // without SA_RESTART the read returns
  for (std::size_t i = 0; i < k_signals.size(); ++i) {
    ::sigaction(k_signals[i], &action, &before_[i]);
  }
}

StopsReading::~StopsReading() {
  for (std::size_t i = 0; i < k_signals.size(); ++i) {
    ::sigaction(k_signals[i], &before_[i], nullptr);
  }
}

Talk::Talk(const Runtime& runtime)
    : runtime_(runtime),
      out_(runtime.common.json || !runtime.common.output.empty() ? runtime.err : runtime.out),
      columns_(std::min(
          runtime.environment.out_columns == 0 ? k_columns : runtime.environment.out_columns,
          k_columns)),
      edited_(runtime.environment.in_is_terminal && runtime.environment.out_is_terminal) {}

void Talk::say(std::string_view text, std::size_t indent) {
  out_ << folded(text, columns_, indent) << '\n';
}

void Talk::copy(std::string_view line) {
  std::string text = folded(line, columns_ - 2, 2);
  for (std::size_t end = text.find('\n'); end != std::string::npos;
       end = text.find('\n', end + 3)) {
    text.insert(end, " \\");
  }
  out_ << text << '\n';
}

void Talk::show(std::string_view lines) {
  while (!lines.empty()) {
    const std::size_t end = std::min(lines.find('\n'), lines.size());
    say(lines.substr(0, end));
    lines.remove_prefix(std::min(end + 1, lines.size()));
  }
}

std::size_t Talk::rows() const { return edited_ ? terminal_rows(STDOUT_FILENO) : 0; }

std::size_t Talk::lines_of(std::string_view text) const {
  if (!edited_) return 0;
  std::size_t count = 0;
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const std::string line = folded(rest.substr(0, end), columns_);
    count += static_cast<std::size_t>(std::count(line.begin(), line.end(), '\n')) + 1;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return count;
}

std::optional<std::string> Talk::hear() {
  if (interrupted != 0) return std::nullopt;
  auto line = read();
  return interrupted != 0 ? std::nullopt : std::move(line);
}

std::optional<std::string> Talk::read() {
  out_ << std::flush;
  if (edited_) return runtime_.extras().read_line("> ");
  out_ << "> " << std::flush;
  std::string line;
  if (runtime_.environment.in == nullptr || !std::getline(*runtime_.environment.in, line)) {
    out_ << '\n';
    return std::nullopt;
  }
  out_ << line << '\n';
  return line;
}

}  // namespace cutback::cli
