#pragma once
// What the place and the enclosure ask of the gland.

#include <optional>
#include <string>

namespace cutback::area {

/// Rule sets are named after the published edition; `strict` demands what either demands.
enum class RuleSet { iec_60079_14_2007, iec_60079_14_2013, strict };

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

}  // namespace cutback::area
