#pragma once
// What is taken for a fact that nobody gave.

#include <string>

namespace cutback {

/// Named beside every answer that rests on it.
struct Assumption {
  std::string fact;   ///< field of an end or column of the gland list, as `ambient_min_c`
  std::string taken;  ///< in words, with its unit
  std::string why;    ///< and the document, where there is one
};

}  // namespace cutback
