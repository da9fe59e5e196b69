#pragma once
// The one table of a gland list's columns: reader, messages and documentation follow it.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "cutback/gland/gland.hpp"

namespace cutback::io {

enum class GlandKind {
  number,  ///< within [min, max]
  whole,   ///< a whole number within [min, max]
  word,    ///< one of `words`
  words,   ///< any number of `words`, separated by spaces
  ip,      ///< two characters each, separated by spaces
  thread,
  text,
};

/// One column. A blank cell leaves the gland's member as it is, at its default.
struct GlandColumn {
  using SetNumber = void (*)(gland::Gland&, double);
  using SetText = void (*)(gland::Gland&, std::string_view);

  std::string_view name;
  GlandKind kind;
  double min;  ///< number and whole: closed limits
  double max;
  std::string_view unit;   ///< of a number; may be empty
  std::string_view words;  ///< word and words: all of them, separated by spaces
  std::variant<SetNumber, SetText> set;
  bool required = false;  ///< in every row
};

/// The columns in the order in which data/README.md lists them.
[[nodiscard]] std::span<const GlandColumn> gland_columns();

/// Position of a column in gland_columns(). @throws InternalError for a name that is not there
[[nodiscard]] std::size_t gland_column(std::string_view name);

/// What may stand in the column, for messages: "a number from 0.1 to 300 mm".
[[nodiscard]] std::string allowed(const GlandColumn& column);

/// The parts of `text` between runs of spaces.
[[nodiscard]] std::vector<std::string_view> split_words(std::string_view text);

}  // namespace cutback::io
