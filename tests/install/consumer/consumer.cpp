// Fits the built-in (invented) glands to one measured cable, with the installed library alone.
#include <cutback/fit/fit.hpp>
#include <cutback/io/gland_list.hpp>
#include <cutback/io/standards.hpp>
#include <cutback/job/job.hpp>
#include <cutback/print/print.hpp>
#include <iostream>

int main() {
  const cutback::tables::Standards standards = cutback::io::builtin_standards();
  const cutback::gland::GlandList list = cutback::io::demo_gland_list();
  cutback::job::JobInput input;
  input.sheath_od_mm = "14.9+15.1";
  input.bedding_mm = "9.9+10.1";
  input.armour_mm = "0.9";
  input.entry = "M20";
  const auto job = cutback::job::resolve(input, standards, cutback::job::Unstated::measured);
  const auto question = cutback::fit::ask(job, standards);
  const auto ranked = cutback::fit::fit_all(question, list.glands, cutback::fit::Prefer::price);
  std::cout << ranked.front().gland->part << ": " << to_string(ranked.front().verdict) << '\n';
  const bool json = cutback::print::fit_json(question, ranked).starts_with("{");
  return ranked.front().verdict == cutback::Verdict::fits && json ? 0 : 1;
}
