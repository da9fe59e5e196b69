#pragma once
// The glands that an earlier run over a schedule, or a person, has chosen.

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "cutback/gland/gland.hpp"
#include "cutback/io/csv_rows.hpp"

namespace cutback::run {

/// Where the layers of an end are cut, from the cable's end: armour, sheath, bedding [mm].
using Cuts = std::array<std::optional<double>, 3>;

/// What the results say of one end.
struct ChosenEnd {
  const gland::Gland* gland = nullptr;  ///< null where no part is chosen
  Cuts cuts_mm;                         ///< absent where there is no figure
};

/// The results of a schedule (CSV with the columns tag, end and part), read beside the schedule:
/// one row for each of its ends, in its order. Neither is held in memory.
class ChosenParts {
 public:
  /// @param list      borrowed
  /// @param how_made  says how such results are made, for messages
  /// @throws InputError when a column is missing; FileError
  ChosenParts(const std::string& path, const gland::GlandList& list, const std::string& how_made);

  /// The next row, which must be that of this end.
  /// @throws InputError when it is another end's, or the part is not in the list
  ChosenEnd next(std::string_view tag, std::string_view end);

  /// @throws InputError where there are more rows than the schedule has ends
  void finish();

 private:
  const io::CsvRecord* next_row();
  [[nodiscard]] const gland::Gland* gland_of(const io::CsvRecord& row) const;
  [[nodiscard]] std::string place_of(const io::CsvRecord& row) const;

  std::string path_;
  std::string list_name_;
  std::unordered_map<std::string_view, const gland::Gland*> parts_;
  io::CsvRows rows_;
  io::RowBlock block_;
  std::size_t next_ = 0;
  std::size_t tag_ = 0;
  std::size_t end_ = 0;
  std::size_t part_ = 0;
  std::array<std::optional<std::size_t>, 3> cuts_;  ///< columns, where they are there
};

}  // namespace cutback::run
