#include "run/place_asked.hpp"

#include <algorithm>

#include "cutback/area/area.hpp"

namespace cutback::run {
namespace {

bool speaks(const schedule::Column& column) {
  constexpr auto& keys = area::k_asking_fields;
  return column.field != nullptr &&
         std::find(keys.begin(), keys.end(), column.field->key) != keys.end();
}

/// A default speaks for every row that does not speak for itself.
bool speaks_by_default(const schedule::Layout& layout) {
  return std::any_of(layout.defaults.begin(), layout.defaults.end(),
                     [](const schedule::Default& each) { return speaks(each.column); });
}

bool speaks_of_place(const ScheduleTable& table) {
  const schedule::Layout& layout = table.file->layout();
  if (layout.hazard_unread || speaks_by_default(layout)) return true;
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
    const schedule::Layout& layout = table.file->layout();
    return layout.hazard_unread || speaks_by_default(layout) ||
           std::any_of(layout.columns.begin(), layout.columns.end(), speaks);
  });
}

bool speaks_of_place(const Schedule& schedule) {
  return std::any_of(schedule.tables.begin(), schedule.tables.end(),
                     [](const ScheduleTable& table) { return speaks_of_place(table); });
}

}  // namespace cutback::run
