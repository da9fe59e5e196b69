#pragma once
// One row of a gland list.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "cutback/area/marking.hpp"
#include "cutback/assumption.hpp"
#include "cutback/cable/armour.hpp"
#include "cutback/entry/thread.hpp"
#include "cutback/measure/judge.hpp"

namespace cutback::gland {

/// What keeps gas and flame out of the enclosure inside the gland.
enum class Sealing { compression, barrier, either };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Sealing) {
  using enum Sealing;
  return std::array{compression, barrier, either};
}

[[nodiscard]] constexpr std::string_view to_string(Sealing sealing) {
  switch (sealing) {
    case Sealing::compression:
      return "compression";
    case Sealing::barrier:
      return "barrier";
    case Sealing::either:
      return "either";
  }
  return "";
}

/// A cable gland as its list states it; an absent member is not stated. Lengths in mm. Ranges are
/// closed. What every end of a schedule asks its gland for comes first, close together in memory.
struct Gland {
  std::string part;
  std::optional<double> price;
  cable::ArmourKind armour = cable::ArmourKind::none;
  std::optional<Sealing> sealing;       ///< see sealing_of()
  measure::Range outer;                 ///< outer seal on the sheath
  std::optional<measure::Range> inner;  ///< inner seal on the bedding; absent when it has none
  measure::Range armour_clamp;          ///< in nominal wire sizes
  std::optional<double> bore_mm;        ///< what passes the armour cone
  std::string range;
  std::string description;
  entry::Thread entry_thread;
  std::optional<double> entry_length_mm;
  std::optional<double> exposed_armour_mm;
  double exposed_plus_mm = 0.5;
  std::optional<double> armour_stop_mm;
  double bedding_past_mm = 5.0;
  std::optional<double> bedding_end_mm;
  std::optional<double> chamber_bore_mm;
  std::optional<double> chamber_length_mm;
  std::optional<int> max_cores;
  std::optional<double> max_bundle_mm;
  std::vector<area::Protection> protection;  ///< empty when not stated
  std::vector<area::Level> level;
  std::optional<area::GasMark> gas_group;
  std::optional<area::DustGroup> dust_group;
  std::vector<area::IpCode> ip;
  std::optional<double> temp_min_degc;
  std::optional<double> temp_max_degc;
  std::optional<std::string> material;
  std::optional<double> flats_mm;
  std::optional<double> torque_nm;
  std::optional<double> fault_ka;  ///< declared earth-fault rating for 1 s
  std::optional<double> washer_mm;
  std::optional<double> locknut_mm;
  std::optional<int> stock;
  std::optional<int> pack;  ///< it is sold in so many
  bool preferred = false;   ///< of the list that comes first among equals; no column says it
};

/// Compression where the list does not state it.
[[nodiscard]] inline Sealing sealing_of(const Gland& gland) {
  return gland.sealing.value_or(Sealing::compression);
}

/// What is taken for figures that the list does not state: compression where it says nothing of the
/// sealing; and of a chamber what is stated decides where cores, bundle or bore are not.
[[nodiscard]] std::vector<Assumption> assumptions_of(const Gland& gland);

/// A gland list as read: the glands in file order, and remarks that do not stop its use.
struct GlandList {
  std::string name;  ///< the file's name, or the words for the built-in list
  std::vector<Gland> glands;
  std::vector<std::string> warnings;  ///< for instance a column that is not known and was ignored
};

}  // namespace cutback::gland
