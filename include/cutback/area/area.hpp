#pragma once
// What the place and the enclosure ask of the gland.

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "cutback/area/marking.hpp"
#include "cutback/assumption.hpp"
#include "cutback/error.hpp"

namespace cutback::area {

/// Rule sets are named after the published edition; `strict` demands what either demands.
enum class RuleSet { iec_60079_14_2007, iec_60079_14_2013, strict };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(RuleSet) {
  using enum RuleSet;
  return std::array{strict, iec_60079_14_2007, iec_60079_14_2013};
}

[[nodiscard]] constexpr std::string_view to_string(RuleSet rules) {
  switch (rules) {
    case RuleSet::iec_60079_14_2007:
      return "iec-60079-14:2007";
    case RuleSet::iec_60079_14_2013:
      return "iec-60079-14:2013";
    case RuleSet::strict:
      return "strict";
  }
  return "";
}

/// An edition is not a slip of the pen for another one.
[[nodiscard]] constexpr bool is_graded(RuleSet) { return true; }

/// What is said of the place and the enclosure. An absent member is not known, which falls to the
/// stricter side.
struct Area {
  std::optional<Protection> protection;  ///< of the enclosure
  std::optional<Zone> zone;
  std::optional<Level> level;  ///< that the place asks for
  std::optional<GasGroup> gas_group;
  std::optional<DustGroup> dust_group;
  std::vector<IpCode> ip;  ///< each is asked for; empty where nothing is said
  std::optional<double> volume_cm3;
  std::optional<bool> ignition_source;
  std::optional<double> ambient_min_degc;
  std::optional<double> ambient_max_degc;
  std::optional<double> entry_temp_degc;   ///< at the entry point, rated conditions
  std::optional<double> branch_temp_degc;  ///< where the cores branch
  std::optional<double> cable_max_degc;    ///< what the cable is rated for
  std::optional<bool> bare_live_parts;     ///< in an increased-safety enclosure
  RuleSet rules = RuleSet::strict;
};

/// Whether the place is asked about: protection, zone, level, group, volume or ignition source is
/// given. Then every fact that its checks need is given too, or the check is not_known and names
/// it. Zone `none` is asked about as well, a plain room: of it only ingress and temperature are.
[[nodiscard]] bool is_asked(const Area& area);

/// The fields by any of which it is asked about.
inline constexpr std::array<std::string_view, 7> k_asking_fields{
    "protection", "zone", "level", "gas_group", "dust_group", "volume_cm3", "ignition_source"};

/// What the place holds: by zone, level or group, else by a type of protection that is for one
/// hazard alone, else gas. None where the place is not asked about or is a plain room.
[[nodiscard]] Hazard hazard_of(const Area& area);

/// Data that cannot all be true: a zone and a level, group or protection that is for the other
/// kind of hazard, a level in a place without a zone, a group of gas and one of dust, an ambient
/// range upside down. `where` is the name of the field.
[[nodiscard]] std::vector<Fault> contradictions(const Area& area);

// What is taken where a place that is asked about does not say it [degC]: ambient of equipment
// that is not marked for another (IEC 60079-0); the temperatures at entry and branching point up to
// which nothing needs to be marked (IEC 60079-0, 16.6).
inline constexpr double k_ambient_min_degc = -20.0;
inline constexpr double k_ambient_max_degc = 40.0;
inline constexpr double k_entry_degc = 70.0;
inline constexpr double k_branching_degc = 80.0;

/// What is stated of a place without a zone although it means something only where there is one:
/// "enclosure d, group IIC"; empty where nothing is, or the place is another.
[[nodiscard]] std::string said_beside_plain(const Area& area);

/// What is taken for facts of the place that were not given; none where the place is not asked
/// about. An ambient given on one side moves what is taken for the other, so that it is no
/// contradiction.
[[nodiscard]] std::vector<Assumption> assumptions_of(const Area& area);

}  // namespace cutback::area
