#include "cli/date_option.hpp"

#include <fmt/format.h>
#include <chrono>
#include <cmath>

#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::cli {
namespace {

using std::chrono::seconds;
using std::chrono::sys_seconds;

sys_seconds moment_of(const Runtime& runtime) {
  const auto& epoch = runtime.environment.source_date_epoch;
  if (!epoch) return std::chrono::floor<seconds>(std::chrono::system_clock::now());
  constexpr double k_year_9999 = 253402300799.0;
  const auto value = parse_number(*epoch);
  if (!value || *value < 0.0 || *value > k_year_9999 || *value != std::floor(*value)) {
    throw InputError(Fault{.code = ErrorCode::bad_number,
                           .what = "not a date",
                           .where = "SOURCE_DATE_EPOCH in the environment",
                           .given = *epoch,
                           .allowed = "whole seconds since 1970-01-01",
                           .hint = "unset it for today's date"});
  }
  return sys_seconds(seconds(static_cast<long long>(*value)));
}

}  // namespace

std::string utc_date(const Runtime& runtime) {
  const sys_seconds moment = moment_of(runtime);
  const auto midnight = std::chrono::floor<std::chrono::days>(moment);
  const std::chrono::year_month_day day(midnight);
  const std::chrono::hh_mm_ss time(moment - midnight);
  return fmt::format("{:04}{:02}{:02}{:02}{:02}{:02}Z", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
                     time.hours().count(), time.minutes().count(), time.seconds().count());
}

}  // namespace cutback::cli
