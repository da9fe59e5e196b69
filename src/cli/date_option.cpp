#include "cli/date_option.hpp"

#include <fmt/format.h>
#include <charconv>
#include <chrono>

#include "cutback/error.hpp"

namespace cutback::cli {
namespace {

using std::chrono::seconds;
using std::chrono::sys_seconds;

sys_seconds moment_of(const Runtime& runtime) {
  const auto given = source_date_unix_s(runtime);
  if (!given) return std::chrono::floor<seconds>(std::chrono::system_clock::now());
  return sys_seconds(seconds(*given));
}

std::string day_text(std::chrono::sys_days at) {
  const std::chrono::year_month_day day(at);
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

}  // namespace

std::optional<std::int64_t> source_date_unix_s(const Runtime& runtime) {
  const auto& epoch = runtime.environment.source_date_epoch;
  if (!epoch) return std::nullopt;
  constexpr std::int64_t k_year_9999 = 253402300799;
  const char* const last = epoch->data() + epoch->size();
  std::int64_t value = 0;
  const auto [end, error] = std::from_chars(epoch->data(), last, value);
  if (error != std::errc{} || end != last || value < 0 || value > k_year_9999) {
    throw InputError(Fault{.code = ErrorCode::bad_number,
                           .what = "not a date",
                           .where = "SOURCE_DATE_EPOCH in the environment",
                           .given = *epoch,
                           .allowed = "whole seconds since 1970-01-01, 0 to 253402300799",
                           .hint = "set it so, or unset it"});
  }
  return value;
}

std::string utc_date(const Runtime& runtime) {
  const sys_seconds moment = moment_of(runtime);
  const auto midnight = std::chrono::floor<std::chrono::days>(moment);
  const std::chrono::year_month_day day(midnight);
  const std::chrono::hh_mm_ss time(moment - midnight);
  return fmt::format("{:04}{:02}{:02}{:02}{:02}{:02}Z", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
                     time.hours().count(), time.minutes().count(), time.seconds().count());
}

std::string today(const Runtime& runtime) {
  return day_text(std::chrono::floor<std::chrono::days>(moment_of(runtime)));
}

std::string tomorrow(const Runtime& runtime) {
  return day_text(std::chrono::floor<std::chrono::days>(moment_of(runtime)) + std::chrono::days(1));
}

}  // namespace cutback::cli
