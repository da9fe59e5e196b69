#pragma once
// Termination sheets for tests.

#include <utility>
#include <vector>

#include "cutback/sheet/sheet.hpp"
#include "support/build_job.hpp"

namespace cutback::test {

/// The cable of small_cable() with everything that a sheet asks, in a place that asks nothing.
inline job::JobInput whole_end() {
  job::JobInput in = small_cable();
  in.material = "steel";
  in.cores = 3;
  in.reach_mm = 180;
  in.strip_mm = 10;
  return in;
}

/// A sheet of one brass gland, and what it borrows.
struct MadeSheet {
  explicit MadeSheet(const job::JobInput& in, gland::Gland gland = small_gland())
      : glands{std::move(gland)},
        job(resolved(in)),
        question(fit::ask(job, standards(), {.purpose = fit::Purpose::sheet})) {
    glands.front().material = "brass";
    const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
    sheet = sheet::make_sheet(question, sheet::choose(job, ranked, ""), "test");
  }
  std::vector<gland::Gland> glands;
  job::Job job;
  fit::Question question;
  sheet::Sheet sheet;
};

}  // namespace cutback::test
