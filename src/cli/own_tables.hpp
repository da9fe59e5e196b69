#pragma once
// What every result says where its tables of published values are not the built-in ones.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/tables/standards.hpp"

namespace cutback::cli {

/// The tables of --data or CUTBACK_DATA.
struct OwnTables {
  std::string folder;                                      ///< empty: all are built in
  std::vector<std::pair<std::string, std::string>> other;  ///< id and check sum of what differs

  [[nodiscard]] bool is_used() const { return !folder.empty(); }
};

[[nodiscard]] OwnTables own_tables(const tables::Standards& standards);

/// In words, without a line end.
[[nodiscard]] std::string words_of(const OwnTables& tables);

/// A result as text, the words under it.
[[nodiscard]] std::string with_words(const std::string& text, const OwnTables& tables);

/// A result as JSON, one or several objects that begin with `cutback` and `format`: each with
/// `own_tables` behind them.
[[nodiscard]] std::string with_json(std::string_view json, const OwnTables& tables);

}  // namespace cutback::cli
