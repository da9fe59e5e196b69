#include "cutback/io/drum_file.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

#include "cutback/bounds.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/made_file.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

using measure::Drum;

enum Column : std::size_t { drum, place, value, column_count };
constexpr std::array<std::string_view, column_count> k_columns{"drum", "place", "value_mm"};
constexpr std::string_view k_spaces = " \t";
constexpr const char* k_allowed_value = "above 0 mm, at most 300 mm, with a decimal point";

/// Reads one file and gathers everything that is wrong with it.
class DrumFile {
 public:
  explicit DrumFile(const std::string& name) : name_(name) {}

  std::vector<Drum> read(std::string_view text) {
    try {
      records(text);
    } catch (const InputError& error) {  // it cannot be read beyond that place
      faults_.add(error.faults());
    }
    faults_.raise(name_);
    return std::move(drums_);
  }

 private:
  void records(std::string_view text) {
    CsvReader reader(text, name_);
    CsvRecord record;
    if (!reader.next(record)) {
      add(ErrorCode::bad_syntax, "the file is empty", name_, "", "",
          "its first row is drum,place,value_mm");
      return;
    }
    header(record);
    if (!faults_.is_empty()) return;  // without its columns no row can be read
    bool any = false;
    while (reader.next(record)) {
      row(record);
      any = true;
    }
    if (!any)
      add(ErrorCode::missing, "the file has no reading", name_, "", "one reading a row", "");
  }

  void header(const CsvRecord& record) {
    const std::string line = name_ + ", line " + std::to_string(record.line);
    if (record.fields.size() == 1 &&
        record.fields.front().find_first_of(";\t") != std::string_view::npos) {
      add(ErrorCode::bad_syntax, "the columns are not separated by commas", line, "", "commas",
          "save the table as CSV with commas and decimal points");
      return;
    }
    for (std::size_t field = 0; field < record.fields.size(); ++field) {
      const std::string_view heading = trimmed(record.fields[field], k_spaces);
      const auto it = std::find(k_columns.begin(), k_columns.end(), heading);
      if (it == k_columns.end()) {
        add(ErrorCode::unknown_name, "there is no such column", line, heading,
            "drum, place, value_mm", did_you_mean(heading, k_columns));
        continue;
      }
      std::optional<std::size_t>& known =
          field_of_[static_cast<std::size_t>(it - k_columns.begin())];
      if (known) {
        add(ErrorCode::duplicate, "a column is given twice", line, heading, "", "");
      }
      known = field;
    }
    for (std::size_t column = 0; column < column_count; ++column) {
      if (field_of_[column]) continue;
      add(ErrorCode::missing, "a column is missing",
          line + ", column " + std::string(k_columns[column]), "", "",
          "the first row is drum,place,value_mm");
    }
    fields_ = record.fields.size();
  }

  void row(const CsvRecord& record) {
    const std::string line = name_ + ", line " + std::to_string(record.line);
    if (record.fields.size() != fields_) {
      add(ErrorCode::bad_syntax, "a row does not have one field for each column", line,
          std::to_string(record.fields.size()) + " fields", std::to_string(fields_),
          record.fields.size() > fields_ ? "write the decimal mark as a point" : "");
      return;
    }
    std::array<std::string_view, column_count> cells{};
    bool whole = true;
    for (std::size_t column = 0; column < column_count; ++column) {
      cells[column] = trimmed(record.fields[*field_of_[column]], k_spaces);
      if (!cells[column].empty()) continue;
      whole = false;
      add(ErrorCode::missing, "a value is missing",
          line + ", column " + std::string(k_columns[column]), "",
          column == value ? k_allowed_value : "a name or a number", "");
    }
    const std::optional<double> reading = whole ? number(cells[value], line) : std::nullopt;
    if (reading) put(cells, *reading);
  }

  std::optional<double> number(std::string_view text, const std::string& line) {
    const std::string where = line + ", column value_mm";
    const std::optional<double> reading = parse_number(text);
    if (!reading) {
      add(ErrorCode::bad_number, "a reading is not a number", where, text, k_allowed_value,
          text.find(',') == std::string_view::npos ? "" : "write the decimal mark as a point");
      return std::nullopt;
    }
    if (*reading > 0.0 && *reading <= measure::k_largest_diameter_mm) return reading;
    add(ErrorCode::out_of_range,
        *reading > 0.0 ? "a cable of more than 300 mm is no cable" : "a reading is not above zero",
        where, text, k_allowed_value, "");
    return std::nullopt;
  }

  void put(const std::array<std::string_view, column_count>& cells, double reading) {
    const std::string drum_name(cells[drum]);
    const auto [known_drum, new_drum] = drum_of_name_.try_emplace(drum_name, drums_.size());
    if (new_drum) drums_.push_back({.name = drum_name, .places = {}});
    std::vector<measure::Place>& places = drums_[known_drum->second].places;
    const auto [known_place, new_place] =
        place_of_name_.try_emplace({known_drum->second, std::string(cells[place])}, places.size());
    if (new_place) places.emplace_back();
    places[known_place->second].readings_mm.push_back(reading);
  }

  void add(ErrorCode code, std::string what, std::string where, std::string_view given,
           std::string allowed, std::string hint) {
    faults_.add({.code = code,
                 .what = std::move(what),
                 .where = std::move(where),
                 .given = std::string(given),
                 .allowed = std::move(allowed),
                 .hint = std::move(hint)});
  }

  const std::string& name_;
  std::array<std::optional<std::size_t>, column_count> field_of_;
  std::size_t fields_ = 0;
  std::map<std::string, std::size_t> drum_of_name_;
  std::map<std::pair<std::size_t, std::string>, std::size_t> place_of_name_;
  std::vector<Drum> drums_;
  FaultList faults_;
};

/// A register of finished ends has tags; a file of readings has none.
bool is_register(std::string_view text) {
  const std::string_view line = text.substr(0, text.find_first_of("\r\n"));
  CsvReader reader(line, "");
  CsvRecord record;
  if (line.empty() || line.find('"') != std::string_view::npos || !reader.next(record))
    return false;
  return std::any_of(record.fields.begin(), record.fields.end(),
                     [](std::string_view field) { return trimmed(field, k_spaces) == "tag"; });
}

}  // namespace

std::vector<Drum> read_drums(std::string_view text, const std::string& name) {
  return DrumFile(name).read(text);
}

std::vector<Drum> load_drums(const std::string& path) {
  const WholeFile file(path, bounds::k_readings_bytes);
  if (!is_register(file.text())) return read_drums(file.text(), path);
  std::vector<Drum> drums = drums_of(read_made(file.text(), path));
  if (!drums.empty()) return drums;
  throw InputError(make_fault(ErrorCode::missing, "no row of the register tells of a drum", path,
                              "", "rows with drum and sheath_od_mm", ""));
}

}  // namespace cutback::io
