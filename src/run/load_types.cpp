#include "run/load_types.hpp"

#include <utility>

#include "cutback/error.hpp"
#include "run/place_asked.hpp"

namespace cutback::run {

LoadedTypes load_types(const std::string& path, const Opening& opening) {
  Opening own = opening;
  own.sheets.clear();
  own.header_row.reset();
  own.check_first = false;
  own.format = {};
  own.format.usual = opening.format.usual;
  own.format.blanks = opening.format.blanks;
  own.format.decimal = opening.format.decimal;
  own.format.of_types = true;
  std::deque<ScheduleInput> inputs;
  inputs.push_back({path, take_pipe(path)});
  const Schedule opened = open_schedule(inputs, own);
  auto types = std::make_unique<schedule::CableTypes>(path);
  LoadedTypes loaded;
  std::vector<Fault> faults;
  for (const ScheduleTable& table : opened.tables) {
    const schedule::Layout& layout = table.file->layout();
    loaded.warnings.insert(loaded.warnings.end(), layout.warnings.begin(), layout.warnings.end());
    for (std::string& text : places_above(table)) loaded.places.push_back(std::move(text));
    if (layout.hazard_unread) loaded.places.emplace_back("a column that is not read");
    table.file->look_for_places();
    schedule::SkippedRows skipped;
    io::RowBlock block;
    while (table.file->read(block)) {
      table.file->finish(block);
      for (const schedule::SkippedRow& row : block.skipped) skipped.add(row);
      for (const io::PlaceText& text : block.places) {
        loaded.places.push_back(place_name(*table.file, text));
      }
      for (std::size_t i = 0; i < block.rows; ++i) {
        const io::CsvRecord& record = block.records[i];
        const std::string place = path + ", " + table.file->row_name(record.line);
        for (Fault& fault : types->add(layout, record.fields, place)) {
          faults.push_back(std::move(fault));
        }
      }
    }
    const std::string text = skipped.text(table.file->row_word());
    if (!text.empty()) loaded.warnings.push_back(path + ": skipped " + text);
    const std::string taken = skipped.answered_text(table.file->row_word());
    if (!taken.empty()) loaded.warnings.push_back(path + ": taken, and to be looked at: " + taken);
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  loaded.types = std::move(types);
  return loaded;
}

}  // namespace cutback::run
