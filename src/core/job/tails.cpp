#include <algorithm>
#include <string>
#include <unordered_set>

#include "core/job/resolve.hpp"
#include "cutback/number.hpp"

namespace cutback::job::detail {

strip::Tails resolve_tails(const JobInput& in, Faults& faults) {
  strip::Tails tails;
  tails.slack_mm = in.slack_mm.value_or(0.0);
  tails.strip_mm = in.strip_mm;
  tails.bend_radius_mm = in.bend_radius_mm;
  std::unordered_set<std::string> names;
  for (std::size_t i = 0; i < in.core_list.size(); ++i) {
    const CoreInput& given = in.core_list[i];
    const std::string where = "tails.cores[" + std::to_string(i) + "]";
    strip::Core core;
    core.name = given.core.value_or(std::to_string(i + 1));
    core.spare = given.spare.value_or(false);
    core.x_mm = given.x_mm;
    core.y_mm = given.y_mm;
    core.z_mm = given.z_mm;
    core.strip_mm = given.strip_mm ? given.strip_mm : in.strip_mm;
    const bool placed = given.x_mm || given.y_mm || given.z_mm;
    core.reach_mm = given.reach_mm;
    if (given.reach_mm && placed) {
      faults.add(ErrorCode::contradiction, "a route is a length or coordinates, not both", where,
                 "", "", "leave one of the two out");
    }
    if (!given.reach_mm && !placed && !core.spare) core.reach_mm = in.reach_mm;
    if (!names.insert(core.name).second) {
      faults.add(ErrorCode::duplicate, "two cores have one name", where + ".core", core.name, "",
                 "give each core its own name");
    }
    tails.cores.push_back(std::move(core));
  }
  if (!in.core_list.empty() && in.cores && static_cast<double>(in.core_list.size()) < *in.cores) {
    faults.add(
        ErrorCode::missing, "some cores have no route", "tails.cores",
        std::to_string(in.core_list.size()) + " cores listed, the cable has " + plain(*in.cores),
        "a row for each core", "list the others, spare ones with \"spare\": \"yes\"");
  }
  if (!in.core_list.empty() && in.cores && static_cast<double>(in.core_list.size()) > *in.cores) {
    faults.add(
        ErrorCode::contradiction, "more routes than cores", "tails.cores",
        std::to_string(in.core_list.size()) + " cores listed, the cable has " + plain(*in.cores),
        "a row for each core", "check which of the two is right");
  }
  const bool all_routed = std::all_of(
      in.core_list.begin(), in.core_list.end(),
      [](const CoreInput& c) { return c.reach_mm || c.x_mm || c.y_mm || c.z_mm || c.spare; });
  if (!in.core_list.empty() && in.reach_mm && all_routed) {
    faults.add(ErrorCode::contradiction, "a reach for all cores beside a route for each",
               "tails.reach_mm", plain(*in.reach_mm), "one of the two",
               "leave reach_mm out, or the routes of the cores");
  }
  if (tails.cores.empty() && in.reach_mm) {
    const int count = whole(in.cores).value_or(1);
    for (int i = 1; i <= count; ++i) {
      tails.cores.push_back({.name = in.cores ? std::to_string(i) : "all",
                             .reach_mm = in.reach_mm,
                             .strip_mm = in.strip_mm});
    }
  }
  return tails;
}

}  // namespace cutback::job::detail

namespace cutback::job {

std::vector<Fault> put_tails(const JobInput& in, Job& job) {
  detail::Faults faults;
  job.tails = detail::resolve_tails(in, faults);
  job.armour_stop_mm = in.armour_stop_mm;
  return faults.take();
}

}  // namespace cutback::job
