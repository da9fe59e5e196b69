#include "run/place_asked.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

#include "cutback/area/area.hpp"
#include "cutback/schedule/row_place.hpp"

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

/// A text that speaks of a hazardous place: `row 4 "ZONE 1 AREA"`.
std::string named(const std::string& where, std::string_view text) {
  return where + " \"" + io::shortened(text) + "\"";
}

schedule::PlaceSaid said_of(const schedule::Layout& layout, std::string_view text) {
  const std::string_view one[] = {text};
  return schedule::place_in_note(layout, one);
}

bool speaks(const schedule::Layout& layout, std::string_view text) {
  return !said_of(layout, text).text.empty();
}

void put_asides(const schedule::Layout& layout, const std::vector<io::Aside>& asides,
                std::vector<std::string>& texts) {
  for (const io::Aside& aside : asides) {
    if (speaks(layout, aside.text)) texts.push_back(named(aside.where, aside.text));
  }
}

/// What a file or sheet is called.
std::array<std::string, 2> names_of(const ScheduleTable& table) {
  return {table.file->source_name(), std::filesystem::path(table.name).filename().string()};
}

/// Headings that are read for something else than a place: "To - Zone 1" over Entry and Hole. A
/// block is named once; what nobody reads is looked at with the headings.
std::vector<std::string> headings_of(const ScheduleTable& table) {
  const schedule::Layout& layout = table.file->layout();
  std::vector<std::string> texts;
  for (const schedule::Mapped& each : layout.mapping) {
    const auto column =
        std::find_if(layout.columns.begin(), layout.columns.end(),
                     [&](const schedule::Column& known) { return known.cell == each.cell; });
    if (column != layout.columns.end() && column->field->section == "area") continue;
    std::string text = each.heading;
    if (!speaks(layout, text)) continue;
    const std::string block = text.substr(0, text.rfind(" / "));
    if (speaks(layout, block)) text = block;
    if (std::find(texts.begin(), texts.end(), text) == texts.end()) texts.push_back(text);
  }
  return texts;
}

/// The name of a sheet or file, titles above the headings, the headings of what is read, and what
/// stands beside the cells.
std::vector<std::string> above(const ScheduleTable& table) {
  const schedule::Layout& layout = table.file->layout();
  std::vector<std::string> texts;
  for (const std::string& name : names_of(table)) {
    if (!speaks(layout, name)) continue;
    texts.push_back(named("the name", name));
    break;
  }
  for (const io::PlaceText& title : table.file->places_above()) {
    texts.push_back(named(table.file->row_name(title.line), title.text));
  }
  for (const std::string& heading : headings_of(table)) {
    texts.push_back(named("the heading", heading));
  }
  put_asides(layout, table.asides, texts);
  return texts;
}

/// Reads a table to its end and gathers what speaks of a hazardous place.
void gather_places(const ScheduleTable& table, std::vector<std::string>& texts) {
  table.file->look_for_places();
  io::RowBlock block;
  while (table.file->read(block)) {
    table.file->finish(block);
    for (const io::PlaceText& place : block.places) {
      texts.push_back(place_name(*table.file, place));
    }
  }
}

/// Reads a table until a row speaks of its place, and gathers what else does.
bool speaks_of_place(const ScheduleTable& table, std::vector<std::string>& texts) {
  std::vector<std::size_t> cells;
  for (const schedule::Column& column : table.file->layout().columns) {
    if (speaks(column)) cells.push_back(column.cell);
  }
  table.file->look_for_places();
  io::RowBlock block;
  while (table.file->read(block)) {
    table.file->finish(block);
    for (const io::PlaceText& place : block.places) {
      texts.push_back(place_name(*table.file, place));
    }
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

/// The next rows of a sheet that is no schedule. One without any cell has none.
bool read_other(const OtherSheet& sheet, io::RowBlock& block) {
  try {
    return sheet.rows->read(block);
  } catch (const InputError& error) {
    if (error.faults().front().code == ErrorCode::missing) return false;
    throw;
  }
}

/// What speaks of a hazardous place on a sheet that is no schedule: a cover says it of the site.
std::vector<std::string> texts_of(const OtherSheet& sheet, const schedule::Layout& layout) {
  std::vector<std::string> texts;
  put_asides(layout, sheet.rows->asides(), texts);
  schedule::NoteRows notes(layout);
  io::RowBlock block;
  while (read_other(sheet, block)) {
    sheet.rows->finish(block);
    for (std::size_t i = 0; i < block.rows; ++i) {
      const std::string text = notes.next(block.records[i].fields).text;
      if (!text.empty())
        texts.push_back(named("row " + std::to_string(block.records[i].line), text));
    }
  }
  return texts;
}

/// @param count  of all texts, of which these are the first
std::string named_places(const std::string& name, std::span<const std::string> texts,
                         std::size_t count) {
  std::string text = name + ": ";
  const std::size_t named = std::min(texts.size(), k_named_places);
  for (std::size_t i = 0; i < named; ++i) text += (i > 0 ? ", " : "") + texts[i];
  if (count > named) text += " and " + std::to_string(count - named) + " more";
  return text;
}

std::string sentence(const std::string& name, const std::vector<std::string>& texts) {
  return named_places(name, texts, texts.size()) +
         " may tell a hazardous place, so that every end is asked about its place; say it in "
         "columns (zone, protection, gas_group), or as the default zone=none where all are plain";
}

/// Whether a default says that blank cells are of a plain place.
bool any_told_plain(const Schedule& schedule) {
  return std::any_of(schedule.tables.begin(), schedule.tables.end(), [](const auto& table) {
    const auto& defaults = table.file->layout().defaults;
    return std::any_of(defaults.begin(), defaults.end(), [](const schedule::Default& each) {
      return each.column.field->key == "zone" && each.text == "none";
    });
  });
}

/// Names what a default takes for plain and a text tells otherwise.
/// @param rows  those of rows too, by another reading of them
void name_told_plain(const Schedule& schedule, bool rows, std::vector<std::string>& because) {
  for (const ScheduleTable& table : schedule.tables) {
    std::vector<std::string> texts = above(table);
    if (rows) gather_places(table, texts);
    if (!texts.empty()) because.push_back(told_plain_text(table.name, texts, texts.size()));
  }
  for (const OtherSheet& sheet : schedule.others) {
    const auto texts = texts_of(sheet, schedule.tables.front().file->layout());
    if (!texts.empty()) because.push_back(told_plain_text(sheet.name, texts, texts.size()));
  }
}

/// Names the titles over rows that are all told plain.
void name_titles(const Schedule& schedule, std::vector<std::string>& because) {
  for (const ScheduleTable& table : schedule.tables) {
    const std::string& title = table.file->title().place;
    if (title.empty()) continue;
    because.push_back(table.name + ": \"" + title +
                      "\" tells a hazardous place, and its rows tell a plain one; those that do at "
                      "every end need a person");
  }
}

/// Names what a file of types says of hazardous places.
void name_types(const Schedule& schedule, std::vector<std::string>& because) {
  const std::vector<std::string>& texts = schedule.places_of_types;
  if (texts.empty()) return;
  because.push_back(any_told_plain(schedule) ? told_plain_text("the types", texts, texts.size())
                                             : sentence("the types", texts));
}

}  // namespace

std::string told_plain_text(const std::string& name, std::span<const std::string> texts,
                            std::size_t count) {
  return named_places(name, texts, count) +
         " may tell a hazardous place, and the default takes blank cells for a plain one";
}

std::string place_name(const io::ScheduleFile& file, const io::PlaceText& place) {
  return named(file.row_name(place.line), place.text);
}

std::vector<std::string> places_above(const ScheduleTable& table) { return above(table); }

std::string title_of(const ScheduleTable& table) {
  const schedule::Layout& layout = table.file->layout();
  std::vector<std::string> texts;
  for (const io::PlaceText& title : table.file->places_above()) texts.push_back(title.text);
  for (std::string& name : names_of(table)) texts.push_back(std::move(name));
  for (std::string& heading : headings_of(table)) texts.push_back(std::move(heading));
  for (const io::Aside& aside : table.asides) texts.push_back(aside.text);
  for (const std::string& text : texts) {
    if (said_of(layout, text).told) return io::shortened(text);
  }
  return {};
}

PlaceAsked ask_place(const Schedule& schedule, const std::function<Schedule()>& again,
                     bool rows_noted) {
  PlaceAsked place;
  const auto& tables = schedule.tables;
  name_titles(schedule, place.because);
  name_types(schedule, place.because);
  place.asked = !schedule.places_of_types.empty() ||
                std::any_of(tables.begin(), tables.end(), [](const ScheduleTable& table) {
                  const schedule::Layout& layout = table.file->layout();
                  return layout.hazard_unread || speaks_by_default(layout);
                });
  if (place.asked && any_told_plain(schedule)) {
    if (rows_noted || !again) {
      name_told_plain(schedule, false, place.because);
    } else {
      name_told_plain(again(), true, place.because);
    }
    if (rows_noted) {
      for (const ScheduleTable& table : tables) table.file->look_for_places();
    }
  }
  if (place.asked) return place;
  const std::size_t titles = place.because.size();
  if (!again) {
    for (const ScheduleTable& table : tables) {
      const auto texts = above(table);
      if (!texts.empty()) place.because.push_back(sentence(table.name, texts));
    }
    place.asked =
        place.because.size() > titles || std::any_of(tables.begin(), tables.end(), has_column);
    return place;
  }
  const Schedule second = again();
  std::vector<std::string> because;
  for (const ScheduleTable& table : second.tables) {
    std::vector<std::string> texts = above(table);
    if (speaks_of_place(table, texts)) return {true, std::move(place.because)};
    if (!texts.empty()) because.push_back(sentence(table.name, texts));
  }
  for (const OtherSheet& sheet : second.others) {
    const auto texts = texts_of(sheet, second.tables.front().file->layout());
    if (!texts.empty()) because.push_back(sentence(sheet.name, texts));
  }
  place.asked = !because.empty();
  place.because.insert(place.because.end(), because.begin(), because.end());
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
