#include "run/place_asked.hpp"

#include <algorithm>
#include <filesystem>

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

bool has_column(const ScheduleTable& table) {
  const schedule::Layout& layout = table.file->layout();
  return std::any_of(layout.columns.begin(), layout.columns.end(), speaks);
}

/// The name of a sheet or file, and titles above the headings, that speak of a hazardous place.
std::vector<io::PlaceText> above(const ScheduleTable& table) {
  std::vector<io::PlaceText> texts;
  const std::string file = std::filesystem::path(table.name).filename().string();
  for (const std::string& name : {table.file->source_name(), file}) {
    const std::string_view one[] = {name};
    if (schedule::place_in_note(table.file->layout(), one).empty()) continue;
    io::PlaceText text;
    text.line = table.file->heading_line();
    text.text = "the name " + name;
    texts.push_back(std::move(text));
    break;
  }
  const auto& titles = table.file->places_above();
  texts.insert(texts.end(), titles.begin(), titles.end());
  return texts;
}

/// Reads a table until a row speaks of its place, and gathers what else does.
bool speaks_of_place(const ScheduleTable& table, std::vector<io::PlaceText>& texts) {
  std::vector<std::size_t> cells;
  for (const schedule::Column& column : table.file->layout().columns) {
    if (speaks(column)) cells.push_back(column.cell);
  }
  table.file->look_for_places();
  io::RowBlock block;
  while (table.file->read(block)) {
    table.file->finish(block);
    texts.insert(texts.end(), block.places.begin(), block.places.end());
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

std::string sentence(const ScheduleTable& table, const std::vector<io::PlaceText>& texts) {
  constexpr std::size_t k_named = 5;
  std::string text = table.name + ": ";
  for (std::size_t i = 0; i < std::min(texts.size(), k_named); ++i) {
    text +=
        (i > 0 ? ", " : "") + table.file->row_name(texts[i].line) + " \"" + texts[i].text + "\"";
  }
  if (texts.size() > k_named) text += " and " + std::to_string(texts.size() - k_named) + " more";
  return text +
         " may tell a hazardous place, so that every end is asked about its place; say it in "
         "columns (zone, protection, gas_group), or as the default zone=none where all are plain";
}

}  // namespace

PlaceAsked ask_place(const Schedule& schedule, const std::function<Schedule()>& again) {
  PlaceAsked place;
  const auto& tables = schedule.tables;
  place.asked = std::any_of(tables.begin(), tables.end(), [](const ScheduleTable& table) {
    const schedule::Layout& layout = table.file->layout();
    return layout.hazard_unread || speaks_by_default(layout);
  });
  if (place.asked) return place;
  if (!again) {
    for (const ScheduleTable& table : tables) {
      const auto texts = above(table);
      if (!texts.empty()) place.because.push_back(sentence(table, texts));
    }
    place.asked = !place.because.empty() || std::any_of(tables.begin(), tables.end(), has_column);
    return place;
  }
  for (const ScheduleTable& table : again().tables) {
    std::vector<io::PlaceText> texts = above(table);
    if (speaks_of_place(table, texts)) return {true, {}};
    if (!texts.empty()) place.because.push_back(sentence(table, texts));
  }
  place.asked = !place.because.empty();
  return place;
}

InputError too_late_to_ask(const io::ScheduleFile& file, const io::PlaceText& text) {
  return InputError(
      make_fault(ErrorCode::contradiction,
                 "a text may tell a hazardous place, and rows before it were answered without one",
                 file.row_name(text.line), text.text, "",
                 "give the schedule as a file, or the default zone=none where all is plain"));
}

}  // namespace cutback::run
