#pragma once
// Which parts stand at an entry, and how thick they are: for the thread, the marks, the list of
// parts and the take-off alike.

#include <optional>
#include <string>
#include <vector>

#include "cutback/entry/entry.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::entry {

/// The kind of hole; one that will be made for the gland is a clearance hole.
[[nodiscard]] std::optional<Hole> hole_of(const Entry& entry);

/// The parts along the thread that stands in the wall, the gland's or the adaptor's. An absent
/// thickness is not known; 0 means that there is no such part. Lengths in mm.
struct Hardware {
  std::optional<Hole> hole;
  bool through_adaptor = false;
  std::optional<double> washer_mm;   ///< sealing washer, between shoulder and wall
  std::optional<double> wall_mm;     ///< or the depth of the tapped hole
  std::optional<double> locknut_mm;  ///< 0 in a tapped hole, never in another one
  double tag_mm = 0.0;               ///< earth tag; none where it is not given
  double serrated_mm = 0.0;          ///< serrated washer; none where it is not given
  /// Behind an adaptor: the gland's own washer, between its shoulder and the adaptor.
  double gland_washer_mm = 0.0;

  /// How many sealing washers of that thickness: a tag outside is sealed on both its sides.
  [[nodiscard]] int washers() const;
  /// All of them together [mm].
  [[nodiscard]] std::optional<double> washers_mm() const;
  /// Between shoulder and wall: the washers and, in a tapped hole, tag and serrated washer.
  [[nodiscard]] std::optional<double> outside_mm() const;
  /// From the shoulder to the inside face of the wall.
  [[nodiscard]] std::optional<double> inside_face_mm() const;
  /// Behind the wall: in a clearance hole tag, serrated washer and locknut; in a tapped one 0.
  [[nodiscard]] std::optional<double> inside_mm() const;
  /// What is not known of them: empty when every figure is there.
  [[nodiscard]] std::vector<fit::Lack> missing() const;
};

/// Washer and locknut: the entry's figure, else the gland's where the gland itself stands in the
/// wall, else not known. A locknut of 0 mm holds nothing, so it is not known either. Tag and
/// serrated washer may be taken as none where they are not given.
/// @param through_adaptor  an adaptor stands in the hole and the gland in the adaptor: the parts
/// are then the adaptor's
[[nodiscard]] Hardware hardware_of(const gland::Gland& gland, const Entry& entry,
                                   bool through_adaptor);

/// The thread of an adaptor that stands in the wall: the side that is not the gland's.
[[nodiscard]] const Thread& wall_side(const Adaptor& adaptor, const gland::Gland& gland);

}  // namespace cutback::entry
