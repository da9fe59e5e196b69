#include "cutback/io/made_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <map>
#include <utility>

#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/measure/reading.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::io {
namespace {

constexpr std::array<std::string_view, 15> k_columns{
    "tag",       "end",          "made_at",         "by",        "part",
    "batch",     "sheath_od_mm", "bedding_mm",      "armour_mm", "drum",
    "torque_nm", "armour_ohm",   "insulation_mohm", "test_v",    "remark"};
constexpr std::array<std::string_view, 3> k_readings{"sheath_od_mm", "bedding_mm", "armour_mm"};
struct Figure {
  std::string_view column;
  std::string_view unit;
};
constexpr std::array<Figure, 4> k_figures{
    {{"torque_nm", "N m"}, {"armour_ohm", "ohm"}, {"insulation_mohm", "Mohm"}, {"test_v", "V"}}};
constexpr std::string_view k_date_form = "a day as YYYY-MM-DD, with a time or without";

template <class List>
bool has(const List& list, std::string_view name) {
  return std::find(list.begin(), list.end(), name) != list.end();
}

/// `2026-03-31`, a day that there is, and what follows it after a T or a space.
bool is_day(std::string_view text) {
  constexpr std::string_view k_form = "0000-00-00";
  if (text.size() < k_form.size()) return false;
  for (std::size_t i = 0; i < k_form.size(); ++i) {
    if (k_form[i] == '-' ? text[i] != '-' : !is_digit(text[i])) return false;
  }
  const auto number = [&](std::size_t at, std::size_t digits) {
    int value = 0;
    for (const char c : text.substr(at, digits)) value = 10 * value + (c - '0');
    return value;
  };
  const std::chrono::year_month_day day{std::chrono::year(number(0, 4)),
                                        std::chrono::month(static_cast<unsigned>(number(5, 2))),
                                        std::chrono::day(static_cast<unsigned>(number(8, 2)))};
  if (!day.ok()) return false;
  return text.size() == k_form.size() || text[k_form.size()] == 'T' || text[k_form.size()] == ' ';
}

std::string quoted_cell(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

std::string header_line() {
  std::string line;
  for (const std::string_view column : k_columns) {
    line += (line.empty() ? "" : ",") + std::string(column);
  }
  return line + "\n";
}

/// Every cell in quotes: a row that lost its end has a quote that does not close.
std::string line_of(const MadeRow& row) {
  std::string line;
  for (const std::string& cell : row.cells) line += (line.empty() ? "" : ",") + quoted_cell(cell);
  return line + "\n";
}

FileError cannot_write(const std::string& path, int error) {
  return FileError(make_fault(ErrorCode::cannot_write, "the register cannot be written", path, "",
                              "", std::strerror(error)));
}

/// Where the last row ends that was written whole: behind the last line end that stands in no
/// quotes.
std::size_t whole_size(std::string_view text) {
  bool in_quotes = false;
  std::size_t whole = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '"') in_quotes = !in_quotes;
    if (text[i] == '\n' && !in_quotes) whole = i + 1;
  }
  return whole;
}

/// A last line that somebody wrote by hand without its line end: as many cells as there are
/// columns.
bool is_whole_row(std::string_view text) {
  if (text.empty() || std::count(text.begin(), text.end(), '"') % 2 != 0) return false;
  if (text.back() == '"') return true;
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), ',')) + 1 >=
         k_columns.size();
}

/// An open file that nobody else writes meanwhile.
class Locked {
 public:
  explicit Locked(const std::string& path)
      : path_(path), descriptor_(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666)) {
    if (descriptor_ < 0) throw cannot_write(path, errno);
    while (::flock(descriptor_, LOCK_EX) != 0) {
      if (errno == EINTR) continue;
      const int error = errno;
      ::close(descriptor_);
      throw cannot_write(path, error);
    }
  }
  Locked(const Locked&) = delete;
  Locked& operator=(const Locked&) = delete;
  ~Locked() { ::close(descriptor_); }

  std::string read() const {
    std::string text;
    std::array<char, 65536> piece{};
    off_t at = 0;
    for (;;) {
      const ssize_t count = ::pread(descriptor_, piece.data(), piece.size(), at);
      if (count < 0 && errno == EINTR) continue;
      if (count < 0) throw cannot_write(path_, errno);
      if (count == 0) return text;
      text.append(piece.data(), static_cast<std::size_t>(count));
      at += count;
    }
  }

  /// One write at `size`, what stood behind it cut off before. After a fault the file ends at
  /// `size`.
  void write(std::size_t size, std::string_view text) {
    const auto end = static_cast<off_t>(size);
    if (::ftruncate(descriptor_, end) != 0) throw cannot_write(path_, errno);
    ssize_t count = 0;
    do {
      count = ::pwrite(descriptor_, text.data(), text.size(), end);
    } while (count < 0 && errno == EINTR);
    const bool whole = count == static_cast<ssize_t>(text.size());
    if (whole && ::fsync(descriptor_) == 0) return;
    const int error = count < 0 || whole ? errno : ENOSPC;
    if (::ftruncate(descriptor_, end) != 0) throw cannot_write(path_, errno);
    throw cannot_write(path_, error);
  }

 private:
  const std::string& path_;
  int descriptor_;
};

/// Whether rows may go behind it: the columns in their order, saved by a spreadsheet or not.
bool has_header(std::string_view text) {
  constexpr std::string_view k_byte_order_mark = "\xEF\xBB\xBF";
  if (text.starts_with(k_byte_order_mark)) text.remove_prefix(k_byte_order_mark.size());
  std::string line(text.substr(0, std::min(text.find('\n'), text.size())));
  if (!line.empty() && line.back() == '\r') line.pop_back();
  return line + "\n" == header_line();
}

/// What is left of a row, behind what was left before it.
void set_aside(const std::string& path, std::string_view torn) {
  const std::string place = path + ".torn";
  Locked file(place);
  const std::string before = file.read();
  file.write(before.size(), std::string(torn) + "\n");
}

std::string end_name(const MadeRow& row) { return row.cell("tag") + ", " + row.cell("end"); }

/// The first spelling of each tag, and of each of its ends: case tells no two of them apart.
class Spellings {
 public:
  /// Gives a row the spelling that was there before it; where there was none, its own counts.
  void put(MadeRow& row) {
    const std::string tag = small_letters(row.cell("tag"));
    row.set("tag", tags_.try_emplace(tag, row.cell("tag")).first->second);
    const std::pair end(tag, small_letters(row.cell("end")));
    row.set("end", ends_.try_emplace(end, row.cell("end")).first->second);
  }

 private:
  std::map<std::string, std::string> tags_;
  std::map<std::pair<std::string, std::string>, std::string> ends_;
};

/// Reads rows and gathers what is wrong.
class Reading {
 public:
  explicit Reading(const std::string& name) : name_(name) {}

  MadeFile read(std::string_view text) {
    const std::size_t whole = whole_size(text);
    if (whole < text.size() && !is_whole_row(text.substr(whole))) {
      file_.warnings.push_back(name_ + ": the last row was not written to its end and is left out");
      text = text.substr(0, whole);
    }
    CsvReader reader(text, name_);
    CsvRecord record;
    if (!reader.next(record)) return std::move(file_);
    header(record);
    while (faults_.empty() && reader.next(record)) row(record);
    if (!faults_.empty()) throw InputError(std::move(faults_));
    one_spelling();
    return std::move(file_);
  }

 private:
  void header(const CsvRecord& record) {
    for (const std::string_view field : record.fields) {
      const std::string_view heading = trimmed(field);
      if (!has(k_columns, heading)) {
        faults_.push_back(make_fault(ErrorCode::unknown_name, "a register has no such column",
                                     name_ + ", line " + std::to_string(record.line), heading, "",
                                     did_you_mean(heading, k_columns)));
      }
      headings_.emplace_back(heading);
    }
    for (const std::string_view needed : {"tag", "end"}) {
      if (has(headings_, needed)) continue;
      faults_.push_back(make_fault(ErrorCode::missing, "a column is missing", name_, needed, ""));
    }
  }

  void row(const CsvRecord& record) {
    MadeRow row;
    row.line = record.line;
    const std::string where = name_ + ", line " + std::to_string(record.line);
    if (record.fields.size() > headings_.size()) {
      faults_.push_back(make_fault(ErrorCode::bad_syntax,
                                   "a row has more fields than there are columns", where, "", ""));
      return;
    }
    for (std::size_t i = 0; i < record.fields.size(); ++i) {
      row.set(headings_[i], std::string(trimmed(record.fields[i])));
    }
    for (Fault fault : faults_of(row)) {
      fault.where = where + ", column " + fault.where;
      faults_.push_back(std::move(fault));
    }
    file_.rows.push_back(std::move(row));
  }

  /// An end has the spelling of its first row: case does not tell two ends apart.
  void one_spelling() {
    Spellings spellings;
    std::string said;
    std::size_t count = 0;
    for (MadeRow& row : file_.rows) {
      const std::string name = end_name(row);
      spellings.put(row);
      if (end_name(row) == name || count++ > 0) continue;
      said = "line " + std::to_string(row.line) + ": " + name + " for " + end_name(row);
    }
    if (count == 0) return;
    file_.warnings.push_back(name_ + ": " + std::to_string(count) +
                             (count == 1 ? " row names its end" : " rows name their end") +
                             " in other letters than a row above (" + said + ")");
  }

  const std::string& name_;
  std::vector<std::string> headings_;
  MadeFile file_;
  std::vector<Fault> faults_;
};

}  // namespace

std::span<const std::string_view> made_columns() { return k_columns; }

MadeRow::MadeRow() : cells(k_columns.size()) {}

const std::string& MadeRow::cell(std::string_view column) const {
  for (std::size_t i = 0; i < k_columns.size(); ++i) {
    if (k_columns[i] == column) return cells[i];
  }
  throw InternalError("a register has no column " + std::string(column));
}

void MadeRow::set(std::string_view column, std::string text) {
  for (std::size_t i = 0; i < k_columns.size(); ++i) {
    if (k_columns[i] == column) cells[i] = std::move(text);
  }
}

std::vector<Fault> faults_of(const MadeRow& row) {
  std::vector<Fault> faults;
  for (const std::string_view column : {"tag", "end"}) {
    if (!row.cell(column).empty()) continue;
    faults.push_back(make_fault(ErrorCode::missing, "every row names its end", column, "",
                                "the tag of the cable, and which end"));
  }
  const std::string& day = row.cell("made_at");
  if (!day.empty() && !is_day(day)) {
    faults.push_back(make_fault(ErrorCode::bad_value, "no day of the calendar", "made_at", day,
                                std::string(k_date_form)));
  }
  for (const std::string_view column : k_readings) {
    if (row.cell(column).empty()) continue;
    try {
      static_cast<void>(measure::parse_places(row.cell(column), column));
    } catch (const InputError& error) {
      faults.insert(faults.end(), error.faults().begin(), error.faults().end());
    }
  }
  for (const Figure& figure : k_figures) {
    const std::string& text = row.cell(figure.column);
    // Above the end of its scale a tester shows >200.
    const bool above = figure.column == "insulation_mohm" && text.starts_with('>');
    const auto value = parse_number(above ? trimmed(std::string_view(text).substr(1)) : text);
    if (text.empty() || (value && *value >= 0.0)) continue;
    faults.push_back(make_fault(ErrorCode::bad_number, "not a figure of 0 or more", figure.column,
                                text, "a figure in " + std::string(figure.unit)));
  }
  return faults;
}

std::vector<std::string> take_units(MadeRow& row) {
  using Form = written::Asked::Form;
  std::vector<std::string> says;
  const auto take = [&](std::string_view column, Form form, std::string_view unit) {
    const written::Asked asked{.key = column, .form = form, .unit = unit, .words = {}};
    written::Taken taken = written::take(asked, row.cell(column), column);
    if (taken.says.empty()) return;
    says.push_back(std::move(taken.says));
    row.set(column, std::move(taken.text));
  };
  for (const std::string_view column : k_readings) take(column, Form::readings, "mm");
  for (const Figure& figure : k_figures) take(figure.column, Form::number, figure.unit);
  return says;
}

std::optional<Fault> same_end_otherwise(const MadeFile& file, const MadeRow& row) {
  const auto bare = [](const std::string& name) {
    std::string out;
    for (const char c : name) {
      if (c != ' ' && c != '-' && c != '_') out += small_letter(c);
    }
    return out;
  };
  const std::string name = end_name(row);
  const MadeRow* other = nullptr;
  for (const MadeRow& each : file.rows) {
    if (small_letters(end_name(each)) == small_letters(name)) return std::nullopt;
    if (bare(end_name(each)) == bare(name)) other = &each;
  }
  if (other == nullptr) return std::nullopt;
  return make_fault(ErrorCode::contradiction, "the register has this end, written otherwise",
                    "tag, end", name, end_name(*other),
                    "write it as it stands there, or give another end a name that differs by more "
                    "than spaces and hyphens");
}

MadeFile read_made(std::string_view text, const std::string& name) {
  return Reading(name).read(text);
}

MadeFile load_made(const std::string& path) {
  const WholeFile file(path);
  return read_made(file.text(), path);
}

std::vector<measure::Drum> drums_of(const MadeFile& file) {
  std::map<std::pair<std::string, std::string>, const MadeRow*> last;
  for (const MadeRow& row : file.rows) {
    if (row.cell("drum").empty() || row.cell("sheath_od_mm").empty()) continue;
    last[{row.cell("tag"), row.cell("end")}] = &row;
  }
  std::vector<measure::Drum> drums;
  for (const MadeRow& row : file.rows) {
    const auto found = last.find({row.cell("tag"), row.cell("end")});
    if (found == last.end() || found->second != &row) continue;
    const std::string& name = row.cell("drum");
    auto drum = std::find_if(drums.begin(), drums.end(),
                             [&](const measure::Drum& each) { return each.name == name; });
    if (drum == drums.end()) drum = drums.insert(drums.end(), {.name = name, .places = {}});
    for (measure::Place& place : measure::parse_places(row.cell("sheath_od_mm"), "sheath_od_mm")) {
      drum->places.push_back(std::move(place));
    }
  }
  return drums;
}

std::vector<std::string> append_made(const std::string& path, MadeRow row) {
  if (auto faults = faults_of(row); !faults.empty()) throw InputError(std::move(faults));
  Locked file(path);
  const std::string text = file.read();
  std::size_t whole = whole_size(text);
  std::string_view rest = std::string_view(text).substr(whole);
  std::string written;
  std::vector<std::string> remarks;
  if (!rest.empty() && is_whole_row(rest)) {
    whole = text.size();
    written = "\n";
  } else if (!rest.empty()) {
    set_aside(path, rest);
    remarks.push_back(path + ": a row that was not written to its end is put into " + path +
                      ".torn");
  }
  const MadeFile before = read_made(std::string_view(text).substr(0, whole), path);
  const std::string name = end_name(row);
  Spellings spellings;
  for (MadeRow each : before.rows) spellings.put(each);
  spellings.put(row);
  if (end_name(row) != name) {
    remarks.push_back(name + " is taken for " + end_name(row) + ", as the register has it");
  }
  if (auto fault = same_end_otherwise(before, row)) throw InputError(*std::move(fault));
  if (whole == 0) {
    written += header_line();
  } else if (!has_header(text)) {
    throw InputError(make_fault(
        ErrorCode::bad_syntax, "rows are put behind the columns of a register in their order", path,
        text.substr(0, text.find('\n')), header_line().substr(0, header_line().size() - 1),
        "begin a new file"));
  }
  file.write(whole, written + line_of(row));
  return remarks;
}

}  // namespace cutback::io
