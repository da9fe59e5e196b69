// Which gland of a list fits one measured cable, and where the cable is cut for it.
#include <cutback/error.hpp>
#include <cutback/fit/fit.hpp>
#include <cutback/io/gland_list.hpp>
#include <cutback/io/standards.hpp>
#include <cutback/job/job.hpp>
#include <cutback/sheet/sheet.hpp>
#include <iostream>

/// GLANDS.csv SHEATH BEDDING WIRE, for example 14.9+15.1 9.9+10.1 0.9
int main(int argc, char** argv) {
  if (argc != 5) return 2;
  try {
    const auto list = cutback::io::load_gland_list(argv[1]);
    const auto standards = cutback::io::builtin_standards();
    cutback::job::JobInput input;
    input.sheath_od_mm = argv[2];
    input.bedding_mm = argv[3];
    input.armour_mm = argv[4];
    input.entry = "M20";
    input.hole = cutback::entry::Hole::clearance;
    input.wall_mm = 2.5;
    input.reach_mm = 150.0;
    const auto job = cutback::job::resolve(input, standards, cutback::job::Unstated::measured);
    const auto question = cutback::fit::ask(job, standards);
    const auto ranked = cutback::fit::fit_all(question, list.glands, cutback::fit::Prefer::price);
    for (const cutback::fit::GlandFit& fit : ranked) {
      std::cout << fit.gland->part << ": " << to_string(fit.verdict) << "; " << fit.deciding().says
                << '\n';
    }
    if (ranked.empty() || ranked.front().verdict != cutback::Verdict::fits) return 1;
    const auto choice = cutback::sheet::choose(job, ranked, ranked.front().gland->part);
    const auto sheet = cutback::sheet::make_sheet(question, choice, list.name);
    std::cout << "the longest core ends " << sheet.plan.value().axis.tip_mm.value()
              << " mm beyond the shoulder\n";
    return 0;
  } catch (const cutback::Error& error) {
    std::cerr << error.what() << '\n';
    return 2;
  }
}
