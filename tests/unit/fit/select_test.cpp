#include "cutback/fit/select.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/gland_list.hpp"
#include "support/build_job.hpp"

using namespace cutback;

TEST_CASE("search: what it has learnt changes no answer about a figure that is not known",
          "[unit][fit]") {
  // The glands that the sheath's spread touches need a wire that is not given.
  const gland::GlandList list = io::demo_gland_list();
  const fit::Selector selector(list.glands, fit::Prefer::price);
  job::JobInput in = test::small_cable();
  in.armour = cable::ArmourKind::wire;
  in.armour_mm.reset();
  in.evidence = measure::Evidence::datasheet;
  in.sheath_od_mm = "15";
  in.bedding_mm = "10";
  const job::Job job = test::resolved(in);
  const fit::Question question = fit::ask(job, test::standards());
  fit::Search search(selector, question);
  for (int i = 0; i < 10; ++i) {
    INFO(i);
    CHECK_FALSE(search.wavering(search.find()));
  }
}
