#pragma once
// What goes with a gland at an end, whatever the diameters are.

#include <memory>
#include <string>
#include <unordered_map>

#include "cutback/fit/fit.hpp"
#include "cutback/schedule/decide.hpp"

namespace cutback::schedule::detail {

struct Fittings {
  bool barrier = false;
  bool adaptor = false;
  std::shared_ptr<const Accessories> accessories;
};

/// Equal lists of accessories are one list, so that whoever counts them need not compare them.
class FittingsMemory {
 public:
  [[nodiscard]] Fittings of(const fit::Question& question, const gland::Gland& gland);

 private:
  std::unordered_map<std::string, std::shared_ptr<const Accessories>> known_;  ///< by what they are
  std::string key_;
};

}  // namespace cutback::schedule::detail
