#include "cutback/fit/needs.hpp"

#include <catch2/catch.hpp>

#include "cutback/fit/taken.hpp"
#include "support/build_job.hpp"

using namespace cutback;

namespace {

std::string text_of(const std::vector<fit::Need>& needs) {
  std::string text;
  for (const fit::Need& need : needs) {
    text += (text.empty() ? "" : "; ") + need.name + (need.note.empty() ? "" : " " + need.note);
  }
  return text;
}

std::vector<fit::Need> needs(const job::JobInput& in, const gland::Gland& gland) {
  const job::Job job = test::resolved(in);
  const fit::Question question = fit::ask(job, test::standards());
  return fit::needs_of(question, fit::check_gland(question, gland));
}

}  // namespace

TEST_CASE("needs: washer, locknut, tag and shroud of a clearance hole", "[unit][fit]") {
  job::JobInput in = test::small_cable();
  in.tag_mm = 1.5;
  CHECK(text_of(needs(in, test::small_gland())) ==
        "sealing washer 1.5 mm; earth tag 1.5 mm; locknut 4 mm; shroud if one is used");
}

TEST_CASE("needs: an adaptor, and the parts of its thread", "[unit][fit]") {
  job::JobInput in = test::small_cable();
  in.entry = "M25";
  in.adaptor = "M25:M20";
  CHECK(text_of(needs(in, test::small_gland())) ==
        "reducer M25 to M20; sealing washer M25 1.5 mm; locknut M25 4 mm; shroud if one is used");
  CHECK(fit::adaptor_name(*entry::parse_thread("M16"), *entry::parse_thread("M20")) ==
        "adaptor M16 to M20");
  CHECK(fit::adaptor_name(*entry::parse_thread("NPT 3/4"), *entry::parse_thread("M20")) ==
        "adaptor NPT 3/4 to M20");
}

TEST_CASE("needs: compound by its volume, in whole packs", "[unit][fit]") {
  CHECK(fit::packs_of(0.1, 20.0) == 1);
  CHECK(fit::packs_of(20.0, 20.0) == 1);
  CHECK(fit::packs_of(20.1, 20.0) == 2);
  gland::Gland gland = test::small_gland();
  gland.sealing = gland::Sealing::barrier;
  gland.chamber_bore_mm = 12.0;
  gland.chamber_length_mm = 30.0;
  gland.max_cores = 4;
  gland.bedding_end_mm = -10.0;
  job::JobInput in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 1.5;
  in.insulation = cable::Insulation::xlpe;
  const job::Job job = test::resolved(in);
  REQUIRE(job.construction);
  REQUIRE(job.construction->core_mm);
  const fit::Question question = fit::ask(job, test::standards());
  const auto compound = fit::compound_of(question, fit::check_gland(question, gland));
  REQUIRE(compound);
  const double core = *job.construction->core_mm;
  CHECK(compound->volume_cm3 ==
        Approx(30.0 * 3.14159265358979 / 4.0 * (144.0 - 3.0 * core * core) / 1000.0));
  in.compound_pack_cm3 = 1.0;
  const std::string text = text_of(needs(in, gland));
  CHECK_THAT(text, Catch::Contains("cm3 round the cores, ") && Catch::Contains("packs of 1 cm3"));
}

TEST_CASE("needs: the nearest gland through an adaptor that is not at hand", "[unit][fit]") {
  job::JobInput in = test::small_cable();
  in.entry = "M25";
  const std::vector<gland::Gland> glands{test::small_gland()};
  const job::Job job = test::resolved(in);
  const fit::Question question = fit::ask(job, test::standards());
  const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
  REQUIRE(ranked.front().verdict == Verdict::no_fit);
  const auto through = fit::nearest_through(question, ranked);
  REQUIRE(through);
  CHECK(through->adaptor == "reducer M25 to M20");
  CHECK(through->fit.gland == glands.data());
  CHECK(through->fit.verdict >= Verdict::not_known);
  CHECK_FALSE(through->lacks.empty());  // how long it is, and its bore
  for (const fit::Lack& lack : through->lacks) CHECK(lack.key.starts_with("adaptor"));
  CHECK(text_of(through->with) ==
        "sealing washer M25 1.5 mm; locknut M25 4 mm; shroud if one is used");
  in.washer_mm.reset();  // of the wall: they are bought with the adaptor
  in.locknut_mm.reset();
  const job::Job bare = test::resolved(in);
  const fit::Question open = fit::ask(bare, test::standards());
  CHECK(fit::nearest_through(open, fit::fit_all(open, glands, fit::Prefer::price)));
  in.sheath_od_mm = "24.9+25.1";  // no adaptor mends the seal
  const job::Job thick = test::resolved(in);
  const fit::Question other = fit::ask(thick, test::standards());
  CHECK_FALSE(fit::nearest_through(other, fit::fit_all(other, glands, fit::Prefer::price)));
}

TEST_CASE("taken: what a profile decided is always shown", "[unit][fit]") {
  const std::string profile(fit::k_of_profile);
  const std::vector<Assumption> assumed{{"glands", "stock.csv", profile},
                                        {"step_mm", "0.01", profile},
                                        {"slack_mm", "40", profile},
                                        {"slack_mm", "40", "anything else"}};
  CHECK(fit::taken_that_may_fail(assumed, {}) ==
        std::vector<std::string>{"caliper step 0.01 mm (your profile)",
                                 "slack 40 mm (your profile)"});
}
