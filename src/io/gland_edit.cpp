#include "cutback/io/gland_edit.hpp"

#include <algorithm>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

struct FieldSpan {
  std::size_t begin = 0;
  std::size_t end = 0;
};
using RecordSpan = std::vector<FieldSpan>;  ///< never empty

/// Where the fields of every record stand, quotes included; lines without a character are none.
std::vector<RecordSpan> spans_of(std::string_view text) {
  std::vector<RecordSpan> records;
  std::size_t at = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  while (at < text.size()) {
    RecordSpan record;
    std::size_t begin = at;
    bool in_quotes = false;
    for (;; ++at) {
      const bool over = at == text.size();
      if (!over && text[at] == '"') in_quotes = !in_quotes;
      if (!over && in_quotes) continue;
      const bool line_end = over || text[at] == '\n';
      if (!line_end && text[at] != ',') continue;
      std::size_t end = at;
      if (line_end && end > begin && text[end - 1] == '\r') --end;
      record.push_back({begin, end});
      begin = at + 1;
      if (line_end) break;
    }
    if (at < text.size()) ++at;
    if (record.size() > 1 || record.front().end > record.front().begin) {
      records.push_back(std::move(record));
    }
  }
  return records;
}

std::string value_of(std::string_view text, const FieldSpan& span) {
  std::string_view field = trimmed(text.substr(span.begin, span.end - span.begin));
  if (field.size() < 2 || field.front() != '"') return std::string(field);
  field = field.substr(1, field.size() - 2);
  std::string out;
  for (std::size_t i = 0; i < field.size(); ++i) {
    out += field[i];
    if (field[i] == '"') ++i;  // doubled
  }
  return std::string(trimmed(out));
}

constexpr std::string_view k_begun = "# begun";

/// The text with its last line ended.
std::string ended(std::string_view text) {
  std::string out(text);
  if (!out.empty() && out.back() != '\n') out += '\n';
  return out;
}

struct Change {
  std::size_t begin;
  std::size_t end;
  std::string text;
};

}  // namespace

std::string with_gland_cells(std::string_view text, const std::string& name, std::string_view part,
                             std::span<const CellEdit> cells) {
  std::vector<RecordSpan> records = spans_of(text);
  std::erase_if(records, [&](const RecordSpan& record) {
    return value_of(text, record.front()).starts_with('#');
  });
  if (records.empty()) {
    throw InputError(make_fault(ErrorCode::bad_syntax, "the file is empty", name, "", "", ""));
  }
  std::vector<std::string> heads;
  for (const FieldSpan& span : records.front()) heads.push_back(value_of(text, span));
  const auto column_of = [&](std::string_view wanted) {
    return static_cast<std::size_t>(std::find(heads.begin(), heads.end(), wanted) - heads.begin());
  };
  const std::size_t part_column = column_of("part");
  const RecordSpan* row = nullptr;
  std::vector<std::string> parts;
  for (std::size_t i = 1; i < records.size(); ++i) {
    if (part_column >= records[i].size()) continue;
    parts.push_back(value_of(text, records[i][part_column]));
    if (parts.back() != part) continue;
    if (row != nullptr) {
      throw InputError(
          make_fault(ErrorCode::duplicate, "two rows have this part code", name, part, "", ""));
    }
    row = &records[i];
  }
  if (row == nullptr) {
    const std::vector<std::string_view> views(parts.begin(), parts.end());
    throw InputError(make_fault(ErrorCode::unknown_name, "no gland of the list has this part code",
                                name, part, "", did_you_mean(part, views)));
  }
  std::vector<Change> changes;
  std::vector<std::string> behind(heads.size() > row->size() ? heads.size() - row->size() : 0);
  std::string new_heads;
  std::string new_cells;
  for (const auto& [column, value] : cells) {
    const std::size_t at = column_of(column);
    if (at < row->size()) {
      changes.push_back({(*row)[at].begin, (*row)[at].end, csv_field(value)});
    } else if (at < heads.size()) {
      behind[at - row->size()] = csv_field(value);
    } else {
      new_heads += "," + csv_field(column);
      new_cells += "," + csv_field(value);
    }
  }
  // A row may end before the last column.
  while (new_cells.empty() && !behind.empty() && behind.back().empty()) behind.pop_back();
  std::string more;
  for (const std::string& cell : behind) more += "," + cell;
  more += new_cells;
  if (!new_heads.empty()) {
    changes.push_back({records.front().back().end, records.front().back().end, new_heads});
  }
  // First, so that it stands behind a last cell that was blank.
  if (!more.empty()) changes.insert(changes.begin(), {row->back().end, row->back().end, more});
  std::stable_sort(changes.begin(), changes.end(),
                   [](const Change& a, const Change& b) { return a.begin > b.begin; });
  std::string out(text);
  for (const Change& change : changes) {
    out.replace(change.begin, change.end - change.begin, change.text);
  }
  return out;
}

std::string with_gland_added(std::string_view text, const std::string& name,
                             std::span<const CellEdit> cells) {
  const auto part = std::find_if(cells.begin(), cells.end(),
                                 [](const CellEdit& cell) { return cell.first == "part"; });
  if (part == cells.end()) throw InternalError("a gland is added without its part");
  std::size_t place = 0;
  for (const RecordSpan& record : spans_of(text)) {
    if (value_of(text, record.front()).starts_with('#')) continue;
    while (place < record.size() && value_of(text, record[place]) != "part") ++place;
    if (place < record.size()) break;
    throw InputError(
        make_fault(ErrorCode::missing, "the list has no column for the part", name, "", "part"));
  }
  const bool dos = text.find("\r\n") != std::string_view::npos;
  // A field alone that is blank would be no row.
  const std::string row = std::string(place, ',') + csv_field(part->second) + (dos ? "\r\n" : "\n");
  return with_gland_cells(ended(text) + row, name, part->second, cells);
}

std::string with_begun(std::string_view text, std::span<const CellEdit> cells) {
  std::string line(k_begun);
  for (const auto& [column, value] : cells) line += "," + csv_field(column + "=" + value);
  return ended(text) + line + "\n";
}

std::vector<CellEdit> take_begun(std::string& text) {
  std::vector<CellEdit> cells;
  for (const RecordSpan& record : spans_of(text)) {
    if (value_of(text, record.front()) != k_begun) continue;
    for (std::size_t i = 1; i < record.size(); ++i) {
      const std::string cell = value_of(text, record[i]);
      const std::size_t equals = cell.find('=');
      if (equals != std::string::npos) {
        cells.emplace_back(cell.substr(0, equals), cell.substr(equals + 1));
      }
    }
    const std::size_t begin = record.front().begin;
    const std::size_t end = std::min(text.find('\n', record.back().end), text.size() - 1) + 1;
    text.erase(begin, end - begin);
    break;
  }
  return cells;
}

}  // namespace cutback::io
