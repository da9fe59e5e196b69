#include "cutback/entry/hardware.hpp"

namespace cutback::entry {
namespace {

std::optional<double> sum(std::optional<double> a, const std::optional<double>& b) {
  if (!a || !b) return std::nullopt;
  return *a + *b;
}

}  // namespace

std::optional<Hole> hole_of(const Entry& entry) {
  if (!entry.hole && entry.to_suit) return Hole::clearance;
  return entry.hole;
}

int Hardware::washers() const { return hole == Hole::threaded && tag_mm > 0.0 ? 2 : 1; }

std::optional<double> Hardware::washers_mm() const {
  return washer_mm ? std::optional(washers() * *washer_mm) : std::nullopt;
}

std::optional<double> Hardware::outside_mm() const {
  const double beside_mm = tag_mm + serrated_mm;
  if (!hole && beside_mm > 0.0) return std::nullopt;  // on which side they stand is not known
  return sum(washers_mm(), hole == Hole::threaded ? beside_mm : 0.0);
}

std::optional<double> Hardware::inside_face_mm() const { return sum(outside_mm(), wall_mm); }

std::optional<double> Hardware::inside_mm() const {
  if (!hole) return std::nullopt;
  return hole == Hole::threaded ? 0.0 : sum(locknut_mm, tag_mm + serrated_mm);
}

std::vector<fit::Lack> Hardware::missing() const {
  using enum fit::Lack::Where;
  std::vector<fit::Lack> lacks;
  const std::string of = through_adaptor ? " of the adaptor" : "";
  if (!hole) lacks.push_back({"kind of hole, threaded or clearance", "hole", at_the_end});
  if (!wall_mm) lacks.push_back({"wall", "wall_mm", at_the_end});
  if (!washer_mm) {
    lacks.push_back({"sealing washer" + of + " (0: none)", "washer_mm", elsewhere});
  }
  if (hole == Hole::clearance && !locknut_mm) {
    lacks.push_back({"locknut" + of, "locknut_mm", elsewhere});
  }
  return lacks;
}

Hardware hardware_of(const gland::Gland& gland, const Entry& entry, bool through_adaptor) {
  const auto own_or = [&](const std::optional<double>& own, const std::optional<double>& other) {
    return own || through_adaptor ? own : other;
  };
  Hardware out;
  out.hole = hole_of(entry);
  out.through_adaptor = through_adaptor;
  out.washer_mm = own_or(entry.washer_mm, gland.washer_mm);
  out.wall_mm = entry.wall_mm;
  if (out.hole == Hole::threaded) {
    out.locknut_mm = 0.0;
  } else {
    out.locknut_mm = own_or(entry.locknut_mm, gland.locknut_mm);
    if (out.locknut_mm && *out.locknut_mm <= 0.0) out.locknut_mm.reset();
  }
  out.tag_mm = entry.tag_mm.value_or(0.0);
  out.serrated_mm = entry.serrated_mm.value_or(0.0);
  // A taper thread is made up without one.
  const bool taper = gland.entry_thread.kind == ThreadKind::npt;
  if (through_adaptor && !taper) out.gland_washer_mm = gland.washer_mm.value_or(0.0);
  return out;
}

const Thread& wall_side(const Adaptor& adaptor, const gland::Gland& gland) {
  return adaptor.b == gland.entry_thread ? adaptor.a : adaptor.b;
}

}  // namespace cutback::entry
