#pragma once
// Termination sheets for tests.

#include <utility>
#include <vector>

#include "cutback/sheet/sheet.hpp"
#include "support/build_job.hpp"

namespace cutback::test {

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
