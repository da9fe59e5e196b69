#pragma once
// What the place and the enclosure ask of the gland.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

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

/// The words as they were given, already checked against the lists of job/fields. An absent
/// member is not known, which falls to the stricter side.
struct Area {
  std::optional<std::string>
      protection;  ///< of the enclosure: `d`, `e`, `i`, `n`, `nR`, `p`, `t`, `none` ...
  std::optional<std::string> zone;        ///< `0` `1` `2` `20` `21` `22` or `none`
  std::optional<std::string> level;       ///< `Ga` ... `Dc`
  std::optional<std::string> gas_group;   ///< `IIA` `IIB` `IIC`
  std::optional<std::string> dust_group;  ///< `IIIA` `IIIB` `IIIC`
  std::optional<std::string> ip;          ///< `54`, `66`, `66/68`
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

/// What the place holds. Both are false in an ordinary place.
struct Hazard {
  bool gas = false;
  bool dust = false;
  [[nodiscard]] bool any() const { return gas || dust; }
};

/// What the area says of its hazard: by zone, level and groups, else by the type of protection of
/// the enclosure (`t` dust, any other gas). Zone `none` is an ordinary place, and so is one without
/// zone and level where nothing is said of protection or the enclosure has none.
[[nodiscard]] Hazard hazard_of(const Area& area);

/// Data that cannot all be true: a zone and a level, group or protection that is for the other
/// kind of hazard, a level in a place without a zone, an ambient range upside down. `where` is the
/// name of the field.
[[nodiscard]] std::vector<Fault> contradictions(const Area& area);

}  // namespace cutback::area
