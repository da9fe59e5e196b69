#include "cutback/entry/geometry.hpp"

#include <cmath>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"

namespace cutback::entry {
namespace {

constexpr double k_mm_per_inch = 25.4;

bool same(double a, double b) { return std::abs(a - b) < k_epsilon_mm; }

double pg_figure(const Thread& thread, const tables::Standards& standards,
                 std::string_view column) {
  const tables::Table& table = standards.table("pg_threads");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (same(table.number(i, "number"), thread.size)) return table.number(i, column);
  }
  throw InternalError("no PG thread: " + to_text(thread));
}

}  // namespace

MetricProfile metric_profile(const Thread& thread) {
  if (thread.kind != ThreadKind::metric) throw InternalError("not metric: " + to_text(thread));
  // Height of the fundamental triangle; the factors of ISO 68-1 are 3/8, 5/8 and 17/24 of it,
  // twice.
  const double height_mm = std::sqrt(3.0) / 2.0 * thread.pitch_mm;
  return {thread.size - 0.75 * height_mm, thread.size - 1.25 * height_mm,
          thread.size - 17.0 / 12.0 * height_mm};
}

NptGeometry npt_geometry(const Thread& thread, const tables::Table& npt) {
  for (std::size_t i = 0; i < npt.rows.size(); ++i) {
    if (thread.kind != ThreadKind::npt || !same(npt.number(i, "size_in"), thread.size)) continue;
    const double outside = npt.number(i, "outside_in");
    const double per_inch = npt.number(i, "threads_per_inch");
    const double hand_tight = npt.number(i, "hand_tight_in");
    const double effective = (0.80 * outside + 6.8) / per_inch;
    const double small_end = outside - (0.050 * outside + 1.1) / per_inch;
    return {outside * k_mm_per_inch,
            hand_tight * k_mm_per_inch,
            effective * k_mm_per_inch,
            (effective + 3.47 / per_inch) * k_mm_per_inch,
            small_end * k_mm_per_inch,
            (small_end + hand_tight / 16.0) * k_mm_per_inch,
            (small_end - 0.8 / per_inch) * k_mm_per_inch,
            npt.text(i, "status") == tables::to_string(tables::Status::from_memory)};
  }
  throw InternalError("no NPT thread: " + to_text(thread));
}

ThreadDiameter male_root(const Thread& thread, const tables::Standards& standards) {
  switch (thread.kind) {
    case ThreadKind::metric:
      return {metric_profile(thread).core_mm, false, "ISO 68-1, root of the male thread"};
    case ThreadKind::npt: {
      const NptGeometry npt = npt_geometry(thread, standards.table("npt_threads"));
      return {npt.small_end_core_mm, npt.from_memory,
              "ASME B1.20.1, root of the male thread at its small end"};
    }
    case ThreadKind::pg:
      return {pg_figure(thread, standards, "inner_mm"), false,
              "DIN 40430, inner diameter (secondary)"};
  }
  throw InternalError("no kind of thread");
}

ThreadDiameter male_outside(const Thread& thread, const tables::Standards& standards) {
  switch (thread.kind) {
    case ThreadKind::metric:
      return {thread.size, false, "ISO 68-1, nominal diameter"};
    case ThreadKind::npt: {
      const NptGeometry npt = npt_geometry(thread, standards.table("npt_threads"));
      return {npt.outside_mm, npt.from_memory, "ASME B1.20.1, outside diameter"};
    }
    case ThreadKind::pg:
      return {pg_figure(thread, standards, "outside_mm"), false,
              "DIN 40430, outside diameter (secondary)"};
  }
  throw InternalError("no kind of thread");
}

std::optional<double> short_engagement_mm(const Thread& thread, const tables::Table& group_n) {
  if (thread.kind != ThreadKind::metric) return std::nullopt;
  for (std::size_t i = 0; i < group_n.rows.size(); ++i) {
    if (same(group_n.number(i, "pitch_mm"), thread.pitch_mm) &&
        !at_most(thread.size, group_n.number(i, "diameter_over_mm")) &&
        at_most(thread.size, group_n.number(i, "diameter_max_mm"))) {
      return group_n.number(i, "normal_over_mm");
    }
  }
  return std::nullopt;
}

}  // namespace cutback::entry
