#pragma once
// Jobs and glands for tests, each with round figures.

#include <memory>
#include <string>

#include "cutback/fit/fit.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/io/standards.hpp"
#include "cutback/job/job.hpp"

namespace cutback::test {

/// Sheath 15, bedding 10, wire 0.9 mm, crossed readings; an M20 clearance hole.
inline job::JobInput small_cable() {
  job::JobInput in;
  in.sheath_od_mm = "14.9+15.1";
  in.bedding_mm = "9.9+10.1";
  in.armour_mm = "0.9";
  in.entry = "M20";
  in.hole = entry::Hole::clearance;
  in.wall_mm = 2.5;
  in.washer_mm = 1.5;
  in.locknut_mm = 4.0;
  return in;
}

inline const tables::Standards& standards() {
  static const tables::Standards tables = io::builtin_standards();
  return tables;
}

inline job::Job resolved(const job::JobInput& in) {
  return job::resolve(in, standards(), job::Unstated::measured);
}

/// One gland against one end that is resolved for it; the job lives as long as the fit is looked
/// at.
struct Checked : fit::GlandFit {
  std::shared_ptr<const job::Job> job;
};
inline Checked checked(const job::JobInput& in, const gland::Gland& gland) {
  Checked result;
  result.job = std::make_shared<const job::Job>(resolved(in));
  static_cast<fit::GlandFit&>(result) = fit::check_gland(fit::ask(*result.job, standards()), gland);
  return result;
}

/// An armoured M20 gland that takes small_cable with room to spare.
inline gland::Gland small_gland() {
  gland::Gland gland;
  gland.part = "TEST-20";
  gland.entry_thread = *entry::parse_thread("M20");
  gland.entry_length_mm = 15.0;
  gland.outer = {11.0, 16.0};
  gland.inner = measure::Range{8.0, 12.0};
  gland.bore_mm = 12.5;
  gland.armour = cable::ArmourKind::wire;
  gland.armour_clamp = {0.9, 1.25};
  gland.exposed_armour_mm = 10.5;
  gland.armour_stop_mm = 20.0;
  gland.price = 10.0;
  gland.stock = 4;
  return gland;
}

}  // namespace cutback::test
