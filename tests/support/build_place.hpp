#pragma once
// A gland and a cable for tests of hazardous places.

#include "cutback/area/marking.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::test {

/// A barrier gland whose every marking is stated.
inline gland::Gland marked_gland() {
  gland::Gland gland;
  gland.part = "TEST-20";
  gland.protection = {area::Protection::db, area::Protection::eb, area::Protection::tb};
  gland.level = {area::Level::Gb, area::Level::Db};
  gland.gas_group = area::GasMark::IIC;
  gland.dust_group = area::DustGroup::IIIC;
  gland.ip = *area::parse_ip_codes("66/68");
  gland.temp_min_degc = -40;
  gland.temp_max_degc = 100;
  gland.material = "brass";
  gland.inner = measure::Range{8.0, 12.0};
  gland.sealing = gland::Sealing::barrier;
  gland.max_cores = 7;
  return gland;
}

/// A cable that may be sealed by a ring.
inline cable::Cable solid_cable() {
  cable::Cable cable;
  cable.cores = 4;
  cable.length_m = 50;
  cable.circular = true;
  cable.compact = true;
  cable.bedding_made = cable::BeddingMade::extruded;
  cable.fillers = cable::Fillers::none;
  return cable;
}

}  // namespace cutback::test
