#pragma once
// The stock of the gland list, shared out over a whole schedule.

#include "cutback/io/schedule_file.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/supply.hpp"

namespace cutback::run {

struct SharedStock {
  schedule::Wanted wanted;
  schedule::Share share;
  schedule::Supplies supplies;
};

/// @param files  are read to their ends: to decide their rows they have to be opened again
/// @param solve  finds the cheapest plan
[[nodiscard]] SharedStock share_stock(std::span<io::ScheduleFile* const> files,
                                      const schedule::Settings& settings, unsigned threads,
                                      const schedule::TransportSolver& solve);

}  // namespace cutback::run
