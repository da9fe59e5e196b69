#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "cutback/sheet/sheet.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Matchers::Contains;

namespace {

/// A sheet and what it borrows.
struct Made {
  explicit Made(const job::JobInput& in)
      : glands{test::small_gland()},
        job(test::resolved(in)),
        question(fit::ask(job, test::standards(), {.purpose = fit::Purpose::sheet})) {
    glands.front().material = "brass";
    const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
    sheet = sheet::make_sheet(question, sheet::choose(job, ranked, ""), "test");
  }
  std::vector<gland::Gland> glands;
  job::Job job;
  fit::Question question;
  sheet::Sheet sheet;
};

}  // namespace

TEST_CASE("sheet_text: a mark without a route is route and strip length less far than with them",
          "[unit][print]") {
  job::JobInput in = test::small_cable();
  in.material = "steel";
  in.cores = 3;
  in.slack_mm = 40;
  const Made open(in);
  in.reach_mm = 180;
  in.strip_mm = 10;
  const Made known(in);
  REQUIRE(open.sheet.state == sheet::State::measure);
  REQUIRE(known.sheet.plan->marks.armour_cut_mm.has_value());
  const double rest = *known.sheet.plan->marks.armour_cut_mm - 180.0 - 10.0;
  CHECK_THAT(print::sheet_text(open.sheet, {}),
             Contains(fmt::format("1 armour    route + strip + {} mm from the end", plain(rest))));
}
