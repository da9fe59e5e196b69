#pragma once
// The words of a cell with cores and sizes, one after the other.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cutback::written {

enum class Mark {
  number,
  cores,       ///< c, core, cores
  pairs,       ///< p, pr, pair: two cores each
  triples,     ///< t, triad, triple: three
  quads,       ///< q, quad: four
  size_unit,   ///< mm2
  times,       ///< x
  plus,        ///< +, &, and
  earth,       ///< e, earth, cpc, pe
  green,       ///< g: cores, one of them green and yellow
  stroke,      ///< /
  insulation,  ///< of the cores, or of the sheath: `word` is its field's word
  sheath,      ///< of a sheath alone
  armour,
  unarmoured,
  voltage,  ///< that the cable is made for: 600/1000v
  metal,    ///< of the conductors
  filler    ///< words that say nothing here: of, cable, nos
};

struct CellWord {
  Mark mark = Mark::number;
  double number = 0.0;
  std::string word;  ///< as it is written; of insulation and armour the field's word
};

/// @return nothing where a word is not known; it is put into `unknown`
[[nodiscard]] std::optional<std::vector<CellWord>> cores_words(std::string_view text, char decimal,
                                                               std::string& unknown);

}  // namespace cutback::written
