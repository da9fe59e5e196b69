#include "core/job/resolve.hpp"

namespace cutback::job::detail {
namespace {

std::vector<area::IpCode> ip_of(const JobInput& in, Faults& faults) {
  if (!in.ip) return {};
  if (auto codes = area::parse_ip_codes(*in.ip)) return *codes;
  faults.add(ErrorCode::bad_value, "this is not an ingress protection", "area.ip", *in.ip,
             "two figures such as 54, 66 or 66/68", "");
  return {};
}

}  // namespace

area::Area resolve_area(const JobInput& in, Faults& faults) {
  area::Area area;
  area.protection = in.protection;
  area.zone = in.zone;
  area.level = in.level;
  area.gas_group = in.gas_group;
  area.dust_group = in.dust_group;
  area.ip = ip_of(in, faults);
  area.volume_cm3 = in.volume_cm3;
  area.ignition_source = in.ignition_source;
  area.bare_live_parts = in.bare_live_parts;
  area.ambient_min_degc = in.ambient_min_c;
  area.ambient_max_degc = in.ambient_max_c;
  area.entry_temp_degc = in.entry_temp_c;
  area.branch_temp_degc = in.branch_temp_c;
  area.cable_max_degc = in.cable_max_c;
  area.rules = in.rules.value_or(area::RuleSet::strict);
  faults.add(area::contradictions(area));
  return area;
}

}  // namespace cutback::job::detail
