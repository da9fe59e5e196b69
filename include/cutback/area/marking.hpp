#pragma once
// What is marked on equipment and said of a place: zones, levels, groups, types of protection and
// degrees of ingress protection, as values.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/words.hpp"

namespace cutback::area {

/// What the place holds: nothing (an ordinary place), gas or vapour, or dust.
enum class Hazard { none, gas, dust };

inline constexpr std::array<std::string_view, 3> k_hazard_words{"none", "gas", "dust"};
[[nodiscard]] constexpr std::string_view to_string(Hazard hazard) {
  return k_hazard_words[static_cast<std::size_t>(hazard)];
}
[[nodiscard]] constexpr auto all_values(Hazard) {
  using enum Hazard;
  return std::array{none, gas, dust};
}

/// `none` is a plain room.
enum class Zone { none, zone_0, zone_1, zone_2, zone_20, zone_21, zone_22 };

inline constexpr std::array<std::string_view, 7> k_zone_words{"none", "0",  "1", "2",
                                                              "20",   "21", "22"};
[[nodiscard]] constexpr std::string_view to_string(Zone zone) {
  return k_zone_words[static_cast<std::size_t>(zone)];
}
[[nodiscard]] constexpr auto all_values(Zone) {
  using enum Zone;
  return std::array{none, zone_0, zone_1, zone_2, zone_20, zone_21, zone_22};
}
[[nodiscard]] constexpr bool is_graded(Zone) { return true; }

/// Of a plain room: none.
[[nodiscard]] constexpr Hazard hazard_of(Zone zone) {
  if (zone == Zone::none) return Hazard::none;
  return zone <= Zone::zone_2 ? Hazard::gas : Hazard::dust;
}

/// Equipment protection levels. Ma and Mb are for mines, which no place here is.
enum class Level { Ga, Gb, Gc, Da, Db, Dc, Ma, Mb };

inline constexpr std::array<std::string_view, 8> k_level_words{"Ga", "Gb", "Gc", "Da",
                                                               "Db", "Dc", "Ma", "Mb"};
[[nodiscard]] constexpr std::string_view to_string(Level level) {
  return k_level_words[static_cast<std::size_t>(level)];
}
[[nodiscard]] constexpr auto all_values(Level) {
  using enum Level;
  return std::array{Ga, Gb, Gc, Da, Db, Dc, Ma, Mb};
}
[[nodiscard]] constexpr bool is_graded(Level) { return true; }
/// Those that a place may ask for.
inline constexpr std::array k_place_levels{Level::Ga, Level::Gb, Level::Gc,
                                           Level::Da, Level::Db, Level::Dc};

/// Of a level for mines: none.
[[nodiscard]] constexpr Hazard hazard_of(Level level) {
  if (level >= Level::Ma) return Hazard::none;
  return level <= Level::Gc ? Hazard::gas : Hazard::dust;
}

/// What the gas of a place asks for. IIB+H2: gases of group IIB, and hydrogen.
enum class GasGroup { IIA, IIB, IIB_H2, IIC };

inline constexpr std::array<std::string_view, 4> k_gas_group_words{"IIA", "IIB", "IIB+H2", "IIC"};
[[nodiscard]] constexpr std::string_view to_string(GasGroup group) {
  return k_gas_group_words[static_cast<std::size_t>(group)];
}
[[nodiscard]] constexpr auto all_values(GasGroup) {
  using enum GasGroup;
  return std::array{IIA, IIB, IIB_H2, IIC};
}
[[nodiscard]] constexpr bool is_graded(GasGroup) { return true; }

/// What equipment for gas is marked with.
enum class GasMark { II, IIA, IIB, IIB_H2, IIC };

inline constexpr std::array<std::string_view, 5> k_gas_mark_words{"II", "IIA", "IIB", "IIB+H2",
                                                                  "IIC"};
[[nodiscard]] constexpr std::string_view to_string(GasMark mark) {
  return k_gas_mark_words[static_cast<std::size_t>(mark)];
}
[[nodiscard]] constexpr auto all_values(GasMark) {
  using enum GasMark;
  return std::array{II, IIA, IIB, IIB_H2, IIC};
}
[[nodiscard]] constexpr bool is_graded(GasMark) { return true; }

/// Of a place and of equipment alike.
enum class DustGroup { IIIA, IIIB, IIIC };

inline constexpr std::array<std::string_view, 3> k_dust_group_words{"IIIA", "IIIB", "IIIC"};
[[nodiscard]] constexpr std::string_view to_string(DustGroup group) {
  return k_dust_group_words[static_cast<std::size_t>(group)];
}
[[nodiscard]] constexpr auto all_values(DustGroup) {
  using enum DustGroup;
  return std::array{IIIA, IIIB, IIIC};
}
[[nodiscard]] constexpr bool is_graded(DustGroup) { return true; }

/// Types of protection, without the letter of a level.
enum class Type { none, d, e, i, m, n, nL, nR, o, p, pz, q, s, t };

inline constexpr std::array<std::string_view, 14> k_type_words{
    "none", "d", "e", "i", "m", "n", "nL", "nR", "o", "p", "pz", "q", "s", "t"};
[[nodiscard]] constexpr std::string_view to_string(Type type) {
  return k_type_words[static_cast<std::size_t>(type)];
}
[[nodiscard]] constexpr auto all_values(Type) {
  using enum Type;
  return std::array{none, d, e, i, m, n, nL, nR, o, p, pz, q, s, t};
}

/// The one hazard that a type of protection is for; nothing where it may be for either.
[[nodiscard]] constexpr std::optional<Hazard> only_for(Type type) {
  using enum Type;
  switch (type) {
    case d:
    case e:
    case n:
    case nL:
    case nR:
    case o:
    case q:
      return Hazard::gas;
    case t:
      return Hazard::dust;
    case none:
    case i:
    case m:
    case p:
    case pz:
    case s:
      return std::nullopt;
  }
  return std::nullopt;
}

/// Markings of a type of protection, as IEC 60079-0:2017 and the standards before it have them;
/// `none` is an enclosure without one.
enum class Protection {
  none,
  d,
  da,
  db,
  dc,
  e,
  eb,
  ec,
  i,
  ia,
  ib,
  ic,
  m,
  ma,
  mb,
  mc,
  n,
  nA,
  nC,
  nL,
  nR,
  o,
  ob,
  oc,
  p,
  pv,
  px,
  pxb,
  py,
  pyb,
  pz,
  pzc,
  q,
  qb,
  s,
  sa,
  sb,
  sc,
  t,
  ta,
  tb,
  tc,
  tD,
};

struct ProtectionMark {
  Protection protection;
  std::string_view word;
  Type type;
};

/// In the order of the enumeration.
inline constexpr std::array k_protection_marks{
    ProtectionMark{Protection::none, "none", Type::none},
    ProtectionMark{Protection::d, "d", Type::d},
    ProtectionMark{Protection::da, "da", Type::d},
    ProtectionMark{Protection::db, "db", Type::d},
    ProtectionMark{Protection::dc, "dc", Type::d},
    ProtectionMark{Protection::e, "e", Type::e},
    ProtectionMark{Protection::eb, "eb", Type::e},
    ProtectionMark{Protection::ec, "ec", Type::e},
    ProtectionMark{Protection::i, "i", Type::i},
    ProtectionMark{Protection::ia, "ia", Type::i},
    ProtectionMark{Protection::ib, "ib", Type::i},
    ProtectionMark{Protection::ic, "ic", Type::i},
    ProtectionMark{Protection::m, "m", Type::m},
    ProtectionMark{Protection::ma, "ma", Type::m},
    ProtectionMark{Protection::mb, "mb", Type::m},
    ProtectionMark{Protection::mc, "mc", Type::m},
    ProtectionMark{Protection::n, "n", Type::n},
    ProtectionMark{Protection::nA, "nA", Type::n},
    ProtectionMark{Protection::nC, "nC", Type::n},
    ProtectionMark{Protection::nL, "nL", Type::nL},
    ProtectionMark{Protection::nR, "nR", Type::nR},
    ProtectionMark{Protection::o, "o", Type::o},
    ProtectionMark{Protection::ob, "ob", Type::o},
    ProtectionMark{Protection::oc, "oc", Type::o},
    ProtectionMark{Protection::p, "p", Type::p},
    ProtectionMark{Protection::pv, "pv", Type::p},
    ProtectionMark{Protection::px, "px", Type::p},
    ProtectionMark{Protection::pxb, "pxb", Type::p},
    ProtectionMark{Protection::py, "py", Type::p},
    ProtectionMark{Protection::pyb, "pyb", Type::p},
    ProtectionMark{Protection::pz, "pz", Type::pz},
    ProtectionMark{Protection::pzc, "pzc", Type::pz},
    ProtectionMark{Protection::q, "q", Type::q},
    ProtectionMark{Protection::qb, "qb", Type::q},
    ProtectionMark{Protection::s, "s", Type::s},
    ProtectionMark{Protection::sa, "sa", Type::s},
    ProtectionMark{Protection::sb, "sb", Type::s},
    ProtectionMark{Protection::sc, "sc", Type::s},
    ProtectionMark{Protection::t, "t", Type::t},
    ProtectionMark{Protection::ta, "ta", Type::t},
    ProtectionMark{Protection::tb, "tb", Type::t},
    ProtectionMark{Protection::tc, "tc", Type::t},
    ProtectionMark{Protection::tD, "tD", Type::t},
};
static_assert(k_protection_marks.back().protection == Protection::tD &&
              k_protection_marks.size() == static_cast<std::size_t>(Protection::tD) + 1);

[[nodiscard]] constexpr std::string_view to_string(Protection protection) {
  return k_protection_marks[static_cast<std::size_t>(protection)].word;
}
[[nodiscard]] constexpr auto all_values(Protection) {
  std::array<Protection, k_protection_marks.size()> all{};
  for (std::size_t at = 0; at < all.size(); ++at) all[at] = k_protection_marks[at].protection;
  return all;
}
[[nodiscard]] constexpr bool is_graded(Protection) { return true; }
[[nodiscard]] constexpr Type type_of(Protection protection) {
  return k_protection_marks[static_cast<std::size_t>(protection)].type;
}
/// Those that may stand on a gland or an adaptor: all but `none`.
inline constexpr auto k_part_protections = [] {
  std::array<Protection, k_protection_marks.size() - 1> all{};
  for (std::size_t at = 0; at < all.size(); ++at) all[at] = k_protection_marks[at + 1].protection;
  return all;
}();

/// One degree of ingress protection (IEC 60529). X, or nothing said, is an absent numeral.
struct IpCode {
  std::optional<int> solids;  ///< 0 to 6
  std::optional<int> water;   ///< 0 to 9
  friend bool operator==(const IpCode&, const IpCode&) = default;
};

/// `66` or `5X`; a small x is one too. Nothing for anything else.
[[nodiscard]] std::optional<IpCode> parse_ip_code(std::string_view text);

/// `66/68`, `66 68` or `IP66/IP68`. Nothing where a part is no code, or there is none.
[[nodiscard]] std::optional<std::vector<IpCode>> parse_ip_codes(std::string_view text);

/// `66`, `5X`.
[[nodiscard]] std::string to_text(const IpCode& code);
/// `66/68`. @param between  what stands between two codes
[[nodiscard]] std::string to_text(std::span<const IpCode> codes, std::string_view between = "/");

}  // namespace cutback::area
