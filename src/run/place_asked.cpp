#include "run/place_asked.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace cutback::run {
namespace {

/// The facts by which a place is asked about.
bool speaks(const schedule::Column& column) {
  constexpr std::array<std::string_view, 7> k_keys{
      "protection", "zone", "level", "gas_group", "dust_group", "volume_cm3", "ignition_source"};
  return column.field != nullptr &&
         std::find(k_keys.begin(), k_keys.end(), column.field->key) != k_keys.end();
}

bool speaks_of_place(const ScheduleTable& table) {
  std::vector<std::size_t> cells;
  for (const schedule::Column& column : table.file->layout().columns) {
    if (speaks(column)) cells.push_back(column.cell);
  }
  if (cells.empty()) return false;
  io::RowBlock block;
  while (table.file->read(block)) {
    table.file->finish(block);
    for (std::size_t row = 0; row < block.rows; ++row) {
      const auto& fields = block.records[row].fields;
      const bool said = std::any_of(cells.begin(), cells.end(), [&](std::size_t cell) {
        return !schedule::cell(fields, cell).empty();
      });
      if (said) return true;
    }
  }
  return false;
}

}  // namespace

bool has_place_column(const Schedule& schedule) {
  return std::any_of(schedule.tables.begin(), schedule.tables.end(), [](const auto& table) {
    const auto& columns = table.file->layout().columns;
    return std::any_of(columns.begin(), columns.end(), speaks);
  });
}

bool speaks_of_place(const Schedule& schedule) {
  return std::any_of(schedule.tables.begin(), schedule.tables.end(),
                     [](const ScheduleTable& table) { return speaks_of_place(table); });
}

}  // namespace cutback::run
