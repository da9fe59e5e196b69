#pragma once
// The published values that the calculations use, each table with its source and status.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "cutback/cable/armour.hpp"
#include "cutback/measure/caliper.hpp"

namespace cutback::tables {

/// A cell of a table as printed in its source: a number, words, or nothing.
using Cell = std::variant<std::monostate, double, std::string>;

/// How far the values of a table can be trusted.
enum class Status {
  checked,      ///< read in the standard or in two independent public copies of it
  secondary,    ///< read in a public page that quotes it
  own,          ///< the user's: put in the place of a built-in table, whatever it says of itself
  derived,      ///< worked out from checked values; the notes say how
  from_memory,  ///< not seen: never decides a pass
};

[[nodiscard]] constexpr auto all_values(Status) {
  using enum Status;
  return std::array{checked, secondary, own, derived, from_memory};
}

[[nodiscard]] constexpr std::string_view to_string(Status status) {
  switch (status) {
    case Status::checked:
      return "checked";
    case Status::secondary:
      return "secondary";
    case Status::own:
      return "users-own";
    case Status::derived:
      return "derived";
    case Status::from_memory:
      return "from-memory";
  }
  return "";
}

/// One published table. `columns` and each row have the same length.
struct Table {
  std::string id;
  Status status = Status::from_memory;
  std::string title;
  std::string document;
  std::string edition;
  std::string clause;
  std::string interval;  ///< which end of a range column is closed
  std::string notes;
  std::vector<std::string> columns;
  std::vector<std::vector<Cell>> rows;
  std::string checksum;  ///< SHA-256 of the file it was read from

  /// "document edition, clause" for a printed result.
  [[nodiscard]] std::string source() const;
  /// The number in a row and a named column. @throws InternalError when it is not there
  [[nodiscard]] double number(std::size_t row, std::string_view column) const;
  /// The words in a row and a named column; empty for an empty cell. @throws InternalError
  [[nodiscard]] std::string text(std::size_t row, std::string_view column) const;
  /// The first row, from row `from` on, whose column holds these words; nothing where none does.
  [[nodiscard]] std::optional<std::size_t> find(std::string_view column, std::string_view words,
                                                std::size_t from = 0) const;
  /// The same of a row that must be there. @throws InternalError
  [[nodiscard]] std::size_t row(std::string_view column, std::string_view words,
                                std::size_t from = 0) const;
};

/// Every table, and the ones that the core reads as typed rows. Made by io::load_standards.
struct Standards {
  std::vector<Table> tables;
  std::vector<measure::CaliperLimit> caliper_limits;
  std::vector<cable::WireBand> wire_bands;
  std::vector<cable::OversheathRule> oversheath_rules;
  std::string folder;            ///< where the tables come from; empty: built in
  std::vector<std::string> own;  ///< ids of those that differ from the built-in ones

  /// @throws InternalError when there is no such table
  [[nodiscard]] const Table& table(std::string_view id) const;
};

}  // namespace cutback::tables
