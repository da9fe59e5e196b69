#pragma once
// Cores and sizes as people write them in one cell: 4C x 16mm2, 3x25+16, 12G1.5.

#include <optional>
#include <string>
#include <string_view>

namespace cutback::written {

/// What such a cell says. Common practice, no source: nobody has laid these forms down.
struct Cores {
  int cores = 0;                        ///< without an earth core of another size
  std::optional<double> csa_mm2;        ///< of each of them; absent where it is not written
  std::optional<double> earth_csa_mm2;  ///< of one earth core of another size
  /// An earth core stands there without its size; `cores` counts it.
  bool earth_unknown = false;
  /// Pairs, triples or quads that are twisted by themselves; `cores` counts all of their cores.
  bool groups = false;
  std::string voltage;          ///< that it is made for, as it is written; empty where none is
  std::string insulation;       ///< a word of the field `insulation`; empty where none is written
  std::string armour;           ///< the same of `armour`
  std::string armour_material;  ///< the same of `armour_material`

  /// Whether a layer rule can be asked of it: what is written leaves nothing open.
  [[nodiscard]] bool can_be_estimated() const { return csa_mm2 && !earth_unknown && !groups; }
};

/// A reading of a cell, or why it has none that is certain.
struct CoresReading {
  std::optional<Cores> cores;
  std::string why_not;  ///< a part of a sentence; empty where there is a reading
};

/// Reads one cell. Letters and their case, spaces, `x` or a cross, and units of mm2 are taken as
/// they come; a word that is not known, or two readings that are both possible, give none.
/// @param text     UTF-8, trimmed, not blank
/// @param decimal  `.` or `,`
[[nodiscard]] CoresReading read_cores(std::string_view text, char decimal);

/// The layers of a cable alone: XLPE/SWA/PVC. Nothing where a word is not known, or a figure stands
/// there.
/// @param text  UTF-8, trimmed, not blank
[[nodiscard]] std::optional<Cores> read_layers(std::string_view text);

}  // namespace cutback::written
