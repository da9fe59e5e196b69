#include "cli/schedule_stock.hpp"

#include <algorithm>

#include "cli/schedule_groups.hpp"
#include "cutback/error.hpp"

namespace cutback::cli {
namespace {

void check_stock(std::span<const gland::Gland> glands, const std::string& name) {
  const bool stated = std::any_of(glands.begin(), glands.end(), [](const gland::Gland& gland) {
    return gland.stock.has_value();
  });
  if (stated) return;
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "no gland has a stock",
                         .where = name,
                         .given = "--use-stock",
                         .allowed = {},
                         .hint = "fill in the column stock, or leave --use-stock out"});
}

}  // namespace

SharedStock share_stock(io::ScheduleFile& file, const schedule::Settings& settings,
                        unsigned threads, const Extras& extras, const std::string& name) {
  const auto glands = settings.glands->glands();
  check_stock(glands, name);
  GroupedSchedule grouped = group_schedule(file, settings, threads, Keep::ends);
  schedule::Wanted wanted{.parts = schedule::parts_of(glands), .groups = std::move(grouped.groups)};
  schedule::Share share = schedule::share_out(wanted, extras.cheapest_plan);
  schedule::Supplies supplies(wanted, share, grouped.ends, glands);
  return {std::move(wanted), std::move(share), std::move(supplies)};
}

}  // namespace cutback::cli
