#pragma once
// What a heading means: a column by its own name, or by what the trade usually calls it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/schedule/headings.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// A column by its own name. `field` is absent for `from` and `to`.
struct Meaning {
  Side side = Side::both;
  const job::Field* field = nullptr;
  const UsualHeading* usual = nullptr;  ///< it is meant because the trade usually does

  [[nodiscard]] std::string name() const {
    const char* const prefix = side == Side::from ? "from" : side == Side::to ? "to" : "";
    if (field == nullptr) return prefix;
    return side == Side::both ? std::string(field->key) : prefix + ("_" + std::string(field->key));
  }
  friend bool operator==(const Meaning& a, const Meaning& b) {
    return a.side == b.side && a.field == b.field;
  }
};

/// A column by its own name, as a heading.
[[nodiscard]] std::optional<Meaning> own_meaning(std::string_view full);

/// What the trade usually means by a heading, with or without a word for the end that it is of.
[[nodiscard]] std::optional<Meaning> usual_meaning(const UsualHeadings& usual,
                                                   std::string_view plain);

/// The names that --column takes, without prefixes.
[[nodiscard]] std::vector<std::string_view> column_names();

}  // namespace cutback::schedule
