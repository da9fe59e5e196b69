#include "run/open_schedule.hpp"

#include <algorithm>
#include <filesystem>
#include <span>
#include <system_error>
#include <utility>

#include "cutback/error.hpp"
#include "cutback/io/csv_rows.hpp"
#include "cutback/io/table_kind.hpp"
#include "cutback/text.hpp"
#include "run/place_asked.hpp"

namespace cutback::run {
namespace {

bool is_ordinary(const std::string& path) {
  std::error_code error;
  return std::filesystem::is_regular_file(io::input_place(path), error);
}

/// What an ordinary file is; what comes through a pipe shows when it is read.
io::TableKind kind_of(const std::string& path) {
  if (!is_ordinary(path)) return io::TableKind::text;
  io::PieceReader file(io::input_place(path));
  std::string first;
  file.read(first, io::k_kind_bytes);
  return io::table_kind(first);
}

/// Whether what is wrong is that a sheet holds no schedule, and not that the file is damaged.
bool is_no_schedule(const InputError& error) {
  return std::none_of(error.faults().begin(), error.faults().end(), [](const Fault& fault) {
    return fault.code == ErrorCode::bad_syntax || fault.code == ErrorCode::out_of_range;
  });
}

/// The columns that the sheet does not show, and that are read.
std::string hidden_text(const schedule::Layout& layout, std::span<const std::size_t> hidden) {
  std::string text;
  for (const schedule::Mapped& each : layout.mapping) {
    if (std::find(hidden.begin(), hidden.end(), each.cell) == hidden.end()) continue;
    text +=
        (text.empty() ? "" : ", ") + schedule::column_letter(each.cell) + " (" + each.column + ")";
  }
  return text.empty() ? text : "columns that the sheet hides are read: " + text;
}

/// What stands in comments and text boxes, which nobody reads for values. What is printed round the
/// pages is left out: it names the site and the page.
std::string asides_text(std::span<const io::Aside> asides) {
  constexpr std::size_t k_named = 20;
  std::string text;
  std::size_t count = 0;
  for (const io::Aside& aside : asides) {
    if (aside.where.starts_with("page ")) continue;
    if (++count > k_named) continue;
    text += (text.empty() ? "" : ", ") + aside.where + " \"" + io::shortened(aside.text) + "\"";
  }
  if (count > k_named) text += " and " + std::to_string(count - k_named) + " more";
  return text.empty() ? text : "not read, and to be looked at: " + text;
}

/// Opens the tables of one file after the other.
class Opener {
 public:
  explicit Opener(const Opening& opening)
      : opening_(opening), found_(opening.sheets.size(), false) {}

  void add(const ScheduleInput& input) {
    first_of_file_ = schedule_.tables.size();
    const io::TableKind kind = input.pipe
                                   ? io::table_kind(input.pipe->text().substr(0, io::k_kind_bytes))
                                   : kind_of(input.path);
    if (kind != io::TableKind::text && kind != io::TableKind::xlsx) {
      io::refuse_table(kind, input.path);
    }
    if (!input.pipe && kind == io::TableKind::xlsx) {
      if (opening_.open_workbook == nullptr) throw InternalError("no workbook can be opened");
      add_workbook(input.path);
    } else {
      add_csv(input);
    }
    for (std::size_t i = first_of_file_; i < schedule_.tables.size(); ++i) {
      files_.push_back(input.path);
    }
  }

  Schedule finish() {
    for (std::size_t i = 0; i < found_.size(); ++i) {
      if (found_[i]) continue;
      throw InputError(
          make_fault(names_.empty() ? ErrorCode::contradiction : ErrorCode::unknown_name,
                     names_.empty() ? "the file is no workbook (.xlsx) and has no sheets"
                                    : "the workbook has no such sheet",
                     opening_.sheets_option, opening_.sheets[i], joined(names_, ", "),
                     names_.empty() ? "leave " + opening_.sheets_option + " out" : std::string()));
    }
    name_tables();
    if (opening_.sheets.empty()) note_second_lists();
    for (const ScheduleTable& table : schedule_.tables) {
      if (table.file->is_told_plain()) table.file->set_title_place(title_of(table));
    }
    return std::move(schedule_);
  }

 private:
  void add_csv(const ScheduleInput& input) {
    auto rows = input.pipe ? std::make_unique<io::CsvRows>(input.pipe->text(), input.path)
                           : std::make_unique<io::CsvRows>(input.path);
    const char separator = io::find_separator(rows->beginning(), opening_.format);
    rows->set_separator(separator);
    std::vector<std::string> notes;
    if (!rows->encoding().empty()) notes.push_back("the text is " + rows->encoding());
    if (separator == ';') notes.emplace_back("semicolons stand between the cells");
    if (separator == '\t') notes.emplace_back("tabs stand between the cells");
    if (separator == '|') notes.emplace_back("strokes (|) stand between the cells");
    if (opening_.check_first) rows->check_all();
    auto file =
        std::make_unique<io::ScheduleFile>(*rows, input.path, opening_.format, opening_.header_row);
    schedule_.tables.push_back(
        {std::move(notes), input.path, std::move(rows), std::move(file), {}});
    sheets_.emplace_back();
  }

  void add_workbook(const std::string& path) {
    const auto book = opening_.open_workbook(io::input_place(path), opening_.format.decimal);
    std::optional<InputError> why;
    const std::vector<std::size_t> chosen = chosen_of(path, book->sheets());
    take_others(*book, chosen);
    for (const std::size_t place : chosen) {
      const std::string& sheet = book->sheets()[place].name;
      const std::string name = chosen.size() > 1 ? path + ", sheet " + sheet : path;
      try {
        add_sheet(name, *book, place);
        sheets_.push_back(sheet);
      } catch (const InputError& error) {
        if (!opening_.sheets.empty() || !is_no_schedule(error)) throw;
        const Fault& fault = error.faults().front();
        // Where no sheet is a schedule, the one that comes nearest says why.
        constexpr std::string_view k_no_headings = "there is no row of headings";
        if (!why || (why->faults().front().what.starts_with(k_no_headings) &&
                     !fault.what.starts_with(k_no_headings))) {
          why = error;
        }
        schedule_.not_read.push_back("sheet " + sheet + ": " + fault.what);
        // It may hold a text box and no cell.
        schedule_.others.push_back({"sheet " + sheet, book->open(place)});
      }
    }
    if (schedule_.tables.size() > first_of_file_ || !opening_.sheets.empty()) return;
    if (why) {
      std::vector<Fault> faults = why->faults();
      if (names_.size() > 1) faults.front().hint += "; its sheets are " + joined(names_, ", ");
      throw InputError(std::move(faults));
    }
    throw InputError(make_fault(ErrorCode::missing,
                                "the workbook has no sheet of cells that is not hidden", path, "",
                                joined(names_, ", "), "name one with " + opening_.sheets_option));
  }

  /// A sheet that is not asked for may say of the whole site that it is hazardous.
  void take_others(io::Workbook& book, const std::vector<std::size_t>& chosen) {
    const std::vector<io::SheetName>& sheets = book.sheets();
    for (std::size_t i = 0; i < sheets.size(); ++i) {
      const bool is_chosen = std::find(chosen.begin(), chosen.end(), i) != chosen.end();
      if (is_chosen || sheets[i].hidden || !sheets[i].has_cells) continue;
      schedule_.others.push_back({"sheet " + sheets[i].name, book.open(i)});
    }
  }

  std::vector<std::size_t> chosen_of(const std::string& path,
                                     const std::vector<io::SheetName>& sheets) {
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
      names_.push_back(sheets[i].name);
      const auto asked = std::find(opening_.sheets.begin(), opening_.sheets.end(), sheets[i].name);
      const bool named = asked != opening_.sheets.end();
      if (named) found_[static_cast<std::size_t>(asked - opening_.sheets.begin())] = true;
      if (named && !sheets[i].has_cells) {
        throw InputError(
            make_fault(ErrorCode::bad_value, "this sheet holds no cells (a chart, for example)",
                       opening_.sheets_option, sheets[i].name + " of " + path, "", ""));
      }
      if (named || (opening_.sheets.empty() && !sheets[i].hidden && sheets[i].has_cells)) {
        chosen.push_back(i);
      } else {
        const char* const why = !sheets[i].has_cells ? "it holds no cells"
                                : sheets[i].hidden   ? "it is hidden"
                                                     : "another is asked for";
        schedule_.not_read.push_back("sheet " + sheets[i].name + ": " + why);
      }
    }
    return chosen;
  }

  void add_sheet(const std::string& name, io::Workbook& book, std::size_t place) {
    auto rows = book.open(place);
    std::vector<io::Aside> asides = rows->asides();
    const std::vector<std::size_t> hidden = rows->hidden_columns();
    auto file =
        std::make_unique<io::ScheduleFile>(*rows, name, opening_.format, opening_.header_row);
    if (opening_.check_first) {
      io::RowBlock block;
      while (rows->read(block)) rows->finish(block);
      rows->restart();
    }
    std::vector<std::string> notes;
    for (std::string text : {hidden_text(file->layout(), hidden), asides_text(asides)}) {
      if (!text.empty()) notes.push_back(std::move(text));
    }
    schedule_.tables.push_back(
        {std::move(notes), name, std::move(rows), std::move(file), std::move(asides)});
  }

  /// Of several tables each row is named with its own.
  void name_tables() {
    auto& tables = schedule_.tables;
    if (tables.size() < 2) {
      if (!sheets_.front().empty()) tables.front().file->set_place(0, "", sheets_.front());
      return;
    }
    const bool one_file = std::count(files_.begin(), files_.end(), files_.front()) ==
                          static_cast<std::ptrdiff_t>(files_.size());
    for (std::size_t i = 0; i < tables.size(); ++i) {
      // One file of text may be named twice.
      std::string source = one_file && !sheets_[i].empty() ? "" : files_[i];
      if (!sheets_[i].empty()) source += (source.empty() ? "sheet " : ", sheet ") + sheets_[i];
      const std::string name = one_file && !sheets_[i].empty() ? sheets_[i] : source;
      tables[i].file->set_place(i, source + ", ", name);
    }
  }

  /// A list of drums, routes or glands in the workbook of a list of cables: nothing in its rows
  /// tells an end, and its cables are those of the other sheet.
  void note_second_lists() {
    auto& tables = schedule_.tables;
    for (std::size_t i = 0; i < tables.size(); ++i) {
      if (sheets_[i].empty() || tables[i].file->layout().two_ends) continue;
      for (std::size_t k = 0; k < tables.size(); ++k) {
        if (files_[k] != files_[i] || !tables[k].file->layout().two_ends) continue;
        tables[i].file->set_beside(sheets_[k]);
        tables[i].notes.push_back("sheet " + sheets_[k] +
                                  " lists whole cables, and the rows here may be of them again, so "
                                  "that each needs a person; name the sheets to be read with " +
                                  opening_.sheets_option);
        break;
      }
    }
  }

  const Opening& opening_;
  Schedule schedule_;
  std::size_t first_of_file_ = 0;
  std::vector<std::string> files_;   ///< of the tables
  std::vector<std::string> sheets_;  ///< the same; empty of a file that has none
  std::vector<std::string> names_;   ///< of all sheets
  std::vector<bool> found_;          ///< of the sheets that are asked for
};

}  // namespace

bool is_workbook(const std::string& path) { return kind_of(path) == io::TableKind::xlsx; }

Schedule open_schedule(const std::deque<ScheduleInput>& inputs, const Opening& opening) {
  Opener opener(opening);
  for (const ScheduleInput& input : inputs) opener.add(input);
  return opener.finish();
}

std::optional<io::WholeFile> take_text(const std::string& path) {
  if (is_workbook(path)) return std::nullopt;
  return io::WholeFile(io::input_place(path),
                       is_ordinary(path) ? bounds::k_schedule_bytes : bounds::k_file_bytes);
}

std::optional<io::WholeFile> take_pipe(const std::string& path) {
  if (is_ordinary(path)) return std::nullopt;
  return io::WholeFile(io::input_place(path));
}

}  // namespace cutback::run
