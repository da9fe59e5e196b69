#include "run/schedule_stock.hpp"

#include "run/schedule_groups.hpp"

namespace cutback::run {
SharedStock share_stock(std::span<io::ScheduleFile* const> files,
                        const schedule::Settings& settings, unsigned threads,
                        const schedule::TransportSolver& solve) {
  const auto glands = settings.glands->glands();
  GroupedSchedule grouped = group_schedule(files, settings, threads, Keep::ends);
  const int decimals = schedule::decimals_of(glands);
  schedule::Wanted wanted{.parts = schedule::parts_of(glands, decimals),
                          .decimals = decimals,
                          .groups = std::move(grouped.groups)};
  schedule::Share share = schedule::share_out(wanted, solve);
  schedule::Supplies supplies(wanted, share, grouped.ends, glands);
  return {std::move(wanted), std::move(share), std::move(supplies)};
}

}  // namespace cutback::run
