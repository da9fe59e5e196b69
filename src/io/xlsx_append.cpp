#include "cutback/io/xlsx_append.hpp"

#include <minizip/unzip.h>
#include <minizip/zip.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdio>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/text.hpp"
#include "cutback/xml.hpp"
#include "io/xlsx_book.hpp"
#include "io/xlsx_package.hpp"
#include "io/xlsx_workbook.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{1} << 30U;
constexpr std::size_t k_most_columns = 16384;

std::string letters_of(std::size_t column) {
  std::string text;
  for (std::size_t left = column; left > 0; left = (left - 1) / 26) {
    text.insert(text.begin(), static_cast<char>('A' + (left - 1) % 26));
  }
  return text;
}

/// The column of a reference such as AB12, from 1; 0 where it has none.
std::size_t column_of(std::string_view reference) {
  std::size_t column = 0;
  for (const char c : reference) {
    if (c == '$') continue;
    if (c < 'A' || c > 'Z') break;
    column = column * 26 + static_cast<std::size_t>(c - 'A' + 1);
  }
  return column;
}

/// A start tag in a text: where it begins and ends, and its attributes as they stand.
struct Tag {
  std::size_t begin = 0;
  std::size_t end = 0;  ///< behind its `>`
  bool closes = false;  ///< `<row/>`
  std::string_view text;

  [[nodiscard]] std::string_view attribute(std::string_view name) const {
    for (std::size_t at = text.find(name); at != std::string_view::npos;
         at = text.find(name, at + 1)) {
      const bool starts = at > 0 && (text[at - 1] == ' ' || text[at - 1] == '\n' ||
                                     text[at - 1] == '\t' || text[at - 1] == '\r');
      std::size_t i = at + name.size();
      while (i < text.size() && text[i] == ' ') ++i;
      if (!starts || i >= text.size() || text[i] != '=') continue;
      ++i;
      while (i < text.size() && text[i] == ' ') ++i;
      if (i >= text.size() || (text[i] != '"' && text[i] != '\'')) continue;
      const std::size_t close = text.find(text[i], i + 1);
      if (close == std::string_view::npos) return {};
      return text.substr(i + 1, close - i - 1);
    }
    return {};
  }
};

/// The splice of one sheet.
class Splice {
 public:
  Splice(std::string_view xml, const AddedColumns& added, const std::string& where)
      : xml_(xml), added_(added), where_(where) {}

  std::string run() {
    look();
    const std::size_t begin = data_.end;
    std::string out;
    out.reserve(xml_.size() + added_.rows.size() * 256);
    put_head(out, begin);
    std::size_t at = begin;
    std::size_t number = 0;
    std::size_t done = 0;
    for (auto row = next("row", at, data_end_); row; row = next("row", at, data_end_)) {
      number = number_of(*row, number);
      out += xml_.substr(at, row->begin - at);
      const std::size_t end = row->closes ? row->end : close_of("row", row->end);
      const auto cells = added_.rows.find(number);
      const bool any = cells != added_.rows.end();
      if (!any && (renewed_.empty() || row->closes)) {
        out += xml_.substr(row->begin, end - row->begin);
      } else {
        put_row(out, *row, end, number, any ? cells->second : std::vector<AddedCell>{});
      }
      if (any) ++done;
      at = end;
    }
    if (done != added_.rows.size()) refuse("a row of the schedule is not in it");
    out += xml_.substr(at);
    return out;
  }

 private:
  [[noreturn]] void refuse(const char* what) const {
    throw InputError(make_fault(
        ErrorCode::bad_value, std::string("columns cannot be added to this sheet: ") + what, where_,
        "", "", "save the workbook once with a spreadsheet program, or take --wide"));
  }

  /// Finds the sheet's data and its last column.
  void look() {
    if (xml_.find("encoding=\"UTF-8\"", 0) == std::string_view::npos &&
        xml_.find("encoding=\"utf-8\"", 0) == std::string_view::npos &&
        xml_.substr(0, 200).find("encoding=") != std::string_view::npos) {
      refuse("it is not UTF-8");
    }
    const std::size_t name = xml_.find("worksheet");
    const std::size_t open = name == std::string_view::npos ? name : xml_.rfind('<', name);
    if (open == std::string_view::npos) refuse("it has no element worksheet");
    prefix_ = xml_.substr(open + 1, name - open - 1);
    const auto data = next("sheetData", open, xml_.size());
    if (!data || data->closes) refuse("it has no rows");
    data_ = *data;
    data_end_ = xml_.find("</" + prefix_ + "sheetData", data_.end);
    if (data_end_ == std::string_view::npos) refuse("its rows do not end");
    std::size_t at = data_.end;
    while (const auto row = next("row", at, data_end_)) {
      at = row->end;
      if (row->closes) continue;
      const std::size_t end = close_of("row", row->end);
      std::size_t column = 0;
      while (const auto cell = next("c", at, end)) {
        const std::string_view reference = cell->attribute("r");
        column = reference.empty() ? column + 1 : column_of(reference);
        last_column_ = std::max(last_column_, column);
        at = cell->end;
      }
      at = end;
    }
    std::size_t merge = data_end_;
    while (const auto cell = next("mergeCell", merge, xml_.size())) {
      const std::string_view range = cell->attribute("ref");
      last_column_ = std::max(last_column_, column_of(range.substr(range.find(':') + 1)));
      merge = cell->end;
    }
    std::size_t most = 0;
    for (const auto& [row, cells] : added_.rows) most = std::max(most, cells.size());
    for (std::size_t i = 0; i < most; ++i) {
      const std::size_t own = i < added_.columns.size() ? added_.columns[i] : 0;
      targets_.push_back(own > 0 ? own : last_column_ + ++added_width_);
      if (own > 0) renewed_.insert(own);
    }
    renewed_.insert(added_.emptied.begin(), added_.emptied.end());
    if (last_column_ + added_width_ > k_most_columns) {
      refuse("there is no room behind its last column");
    }
  }

  [[nodiscard]] std::optional<Tag> next(std::string_view element, std::size_t from,
                                        std::size_t to) const {
    const std::string wanted = "<" + prefix_ + std::string(element);
    for (std::size_t at = xml_.find(wanted, from); at < to; at = xml_.find(wanted, at + 1)) {
      const char behind = at + wanted.size() < xml_.size() ? xml_[at + wanted.size()] : ' ';
      if (behind != ' ' && behind != '>' && behind != '/' && behind != '\n' && behind != '\r' &&
          behind != '\t') {
        continue;
      }
      const std::size_t end = xml_.find('>', at);
      if (end == std::string_view::npos) refuse("an element does not end");
      return Tag{.begin = at,
                 .end = end + 1,
                 .closes = xml_[end - 1] == '/',
                 .text = xml_.substr(at, end + 1 - at)};
    }
    return std::nullopt;
  }

  /// Behind the end tag of the element that is open.
  [[nodiscard]] std::size_t close_of(std::string_view element, std::size_t from) const {
    const std::size_t at = xml_.find("</" + prefix_ + std::string(element), from);
    const std::size_t end = at == std::string_view::npos ? at : xml_.find('>', at);
    if (end == std::string_view::npos) refuse("an element does not end");
    return end + 1;
  }

  [[nodiscard]] std::size_t number_of(const Tag& row, std::size_t before) const {
    const std::string_view text = row.attribute("r");
    if (text.empty()) return before + 1;
    std::size_t number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    if (read.ec != std::errc() || number == 0) refuse("a row has no number");
    return number;
  }

  /// What stands before the rows, the sheet's extent made wider.
  void put_head(std::string& out, std::size_t to) const {
    const auto dimension = next("dimension", 0, data_.begin);
    const std::string_view range = dimension ? dimension->attribute("ref") : std::string_view();
    const std::size_t colon = range.find(':');
    if (range.empty()) {
      out += xml_.substr(0, to);
      return;
    }
    const std::string_view last = colon == std::string_view::npos ? range : range.substr(colon + 1);
    const std::size_t digits = last.find_first_of("0123456789");
    const auto offset = static_cast<std::size_t>(range.data() - xml_.data());
    out += xml_.substr(0, offset);
    out += range.substr(0, colon);
    out += ":" + letters_of(last_column_ + added_width_);
    out += digits == std::string_view::npos ? std::string_view("1") : last.substr(digits);
    out += xml_.substr(offset + range.size(), to - offset - range.size());
  }

  void put_row(std::string& out, const Tag& row, std::size_t end, std::size_t number,
               const std::vector<AddedCell>& cells) const {
    // The extent of a row is a hint that would be wrong now.
    const std::string_view spans = row.attribute("spans");
    std::string tag(row.text);
    if (!spans.empty()) {
      const std::size_t value = static_cast<std::size_t>(spans.data() - row.text.data());
      const std::size_t begin = row.text.rfind("spans", value);
      tag.erase(begin, value + spans.size() + 1 - begin);
    }
    std::size_t body_end = end;
    if (row.closes) {
      tag.erase(tag.rfind('/'), 1);
    } else {
      body_end = xml_.rfind("</", end - 1);  // that of the row itself
    }
    out += tag;
    std::map<std::size_t, std::string> styles;  ///< of the cells that go, by column
    const std::vector<Part> kept =
        row.closes ? std::vector<Part>{} : parts_of(row, body_end, styles);
    std::vector<std::pair<std::size_t, const AddedCell*>> added;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (!cells[i].text.empty()) added.emplace_back(targets_[i], &cells[i]);
    }
    std::sort(added.begin(), added.end());
    auto next_added = added.begin();
    const auto put_before = [&](std::size_t column) {
      for (; next_added != added.end() && next_added->first < column; ++next_added) {
        put_cell(out, next_added->first, number, styles[next_added->first], *next_added->second);
      }
    };
    for (const Part& part : kept) {
      if (part.column > 0) put_before(part.column);
      out += part.text;
    }
    put_before(k_most_columns + 1);
    out +=
        row.closes ? "</" + prefix_ + "row>" : std::string(xml_.substr(body_end, end - body_end));
  }

  /// A piece of a row: a cell, or what stands between two (column 0).
  struct Part {
    std::size_t column = 0;
    std::string_view text;
  };

  /// The row as it stands, without the cells that are renewed.
  /// @param styles  gets the formats of those
  [[nodiscard]] std::vector<Part> parts_of(const Tag& row, std::size_t end,
                                           std::map<std::size_t, std::string>& styles) const {
    if (renewed_.empty()) return {{0, xml_.substr(row.end, end - row.end)}};
    std::vector<Part> parts;
    std::size_t at = row.end;
    std::size_t column = 0;
    while (const auto cell = next("c", at, end)) {
      const std::string_view reference = cell->attribute("r");
      column = reference.empty() ? column + 1 : column_of(reference);
      const std::size_t cell_end = cell->closes ? cell->end : close_of("c", cell->end);
      parts.push_back({0, xml_.substr(at, cell->begin - at)});
      // A cell without a reference stands behind the one before it, which must not go away.
      if (reference.empty() && !styles.empty()) refuse("a cell has no reference");
      if (renewed_.contains(column)) {
        styles[column] = cell->attribute("s");
      } else {
        parts.push_back({column, xml_.substr(cell->begin, cell_end - cell->begin)});
      }
      at = cell_end;
    }
    parts.push_back({0, xml_.substr(at, end - at)});
    return parts;
  }

  void put_cell(std::string& out, std::size_t column, std::size_t number, const std::string& style,
                const AddedCell& cell) const {
    out += "<" + prefix_ + "c r=\"" + letters_of(column) + std::to_string(number) + "\"";
    if (!style.empty()) out += " s=\"" + style + "\"";
    if (cell.is_number) {
      out += "><" + prefix_ + "v>" + cell.text + "</" + prefix_ + "v>";
    } else {
      out += " t=\"inlineStr\"><" + prefix_ + "is><" + prefix_ + "t xml:space=\"preserve\">";
      append_xml_text(out, xlsx_text(cell.text));
      out += "</" + prefix_ + "t></" + prefix_ + "is>";
    }
    out += "</" + prefix_ + "c>";
  }

  std::string_view xml_;
  const AddedColumns& added_;
  const std::string& where_;
  std::string prefix_;  ///< of the elements, with its colon; mostly empty
  Tag data_;
  std::size_t data_end_ = 0;
  std::size_t last_column_ = 0;
  std::size_t added_width_ = 0;       ///< behind the last column
  std::vector<std::size_t> targets_;  ///< columns of the cells of a row
  std::set<std::size_t> renewed_;     ///< columns of which nothing stays
};

/// The changed sheets, by part.
std::map<std::string, std::string> changed_parts(const std::string& from,
                                                 std::span<const AddedColumns> sheets) {
  const WholeFile file(from);
  XlsxPackage package(file.text(), from);
  const XlsxWorkbook workbook = read_xlsx_workbook(package);
  std::map<std::string, std::string> parts;
  for (const AddedColumns& added : sheets) {
    const auto sheet =
        std::find_if(workbook.sheets.begin(), workbook.sheets.end(),
                     [&](const XlsxSheet& each) { return each.name == added.sheet; });
    if (sheet == workbook.sheets.end()) throw InternalError("no sheet " + added.sheet);
    package.open(sheet->part, k_most_bytes);
    std::string xml(static_cast<std::size_t>(package.size()), '\0');
    std::size_t size = 0;
    while (size < xml.size()) {
      const std::size_t count = package.read(xml.data() + size, xml.size() - size);
      if (count == 0) break;
      size += count;
    }
    xml.resize(size);
    package.finish();
    parts[plain_part_name(sheet->part)] = with_columns(xml, added, from + ", sheet " + added.sheet);
  }
  return parts;
}

FileError cannot_copy(const std::string& path) {
  return FileError(Fault{.code = ErrorCode::cannot_write,
                         .what = "the workbook cannot be copied",
                         .where = path,
                         .given = {},
                         .allowed = {},
                         .hint = "look whether there is room for temporary files"});
}

struct CloseZip {
  void operator()(void* zip) const { zipClose(zip, nullptr); }
};
struct CloseUnzip {
  void operator()(void* zip) const { unzClose(zip); }
};
struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

/// One part after the other, packed as it is, but for those that are given.
class Copier {
 public:
  Copier(void* from, void* to, const std::string& name) : from_(from), to_(to), name_(name) {}

  void copy(const std::map<std::string, std::string>& changed) {
    for (int more = unzGoToFirstFile(from_); more == UNZ_OK; more = unzGoToNextFile(from_)) {
      std::array<char, 65536> name{};
      unz_file_info64 info{};
      std::string extra;
      check(unzGetCurrentFileInfo64(from_, &info, name.data(), name.size() - 1, nullptr, 0, nullptr,
                                    0));
      const auto part = changed.find(plain_part_name(name.data()));
      if (part != changed.end()) {
        write(name.data(), info, part->second);
      } else {
        pass(name.data(), info);
      }
    }
  }

 private:
  void check(int result) const {
    if (result != ZIP_OK) throw cannot_copy(name_);
  }

  void open(const char* name, const unz_file_info64& info, bool raw) {
    zip_fileinfo about{};
    about.dosDate = info.dosDate;
    about.internal_fa = info.internal_fa;
    about.external_fa = info.external_fa;
    constexpr unsigned long k_utf8 = 1U << 11U;
    const int method = raw ? static_cast<int>(info.compression_method) : Z_DEFLATED;
    check(zipOpenNewFileInZip4_64(to_, name, &about, nullptr, 0, nullptr, 0, nullptr, method,
                                  Z_DEFAULT_COMPRESSION, raw ? 1 : 0, -MAX_WBITS, DEF_MEM_LEVEL,
                                  Z_DEFAULT_STRATEGY, nullptr, 0, info.version, info.flag & k_utf8,
                                  0));
  }

  void write(const char* name, const unz_file_info64& info, const std::string& content) {
    open(name, info, false);
    check(zipWriteInFileInZip(to_, content.data(), static_cast<unsigned>(content.size())));
    check(zipCloseFileInZip(to_));
  }

  void pass(const char* name, const unz_file_info64& info) {
    int method = 0;
    int level = 0;
    check(unzOpenCurrentFile2(from_, &method, &level, 1));
    open(name, info, true);
    std::array<char, 65536> piece;
    for (;;) {
      const int size = unzReadCurrentFile(from_, piece.data(), piece.size());
      if (size < 0) throw cannot_copy(name_);
      if (size == 0) break;
      check(zipWriteInFileInZip(to_, piece.data(), static_cast<unsigned>(size)));
    }
    check(zipCloseFileInZipRaw64(to_, info.uncompressed_size, info.crc));
    unzCloseCurrentFile(from_);
  }

  void* from_;
  void* to_;
  const std::string& name_;
};

}  // namespace

std::string with_columns(std::string_view xml, const AddedColumns& added,
                         const std::string& where) {
  return Splice(xml, added, where).run();
}

void append_to_workbook(const std::string& from, FileWriter& to,
                        std::span<const AddedColumns> sheets) {
  const auto changed = changed_parts(from, sheets);
  const std::unique_ptr<std::FILE, CloseFile> file(std::tmpfile());
  if (!file) throw cannot_copy(from);
  const std::string place = "/proc/self/fd/" + std::to_string(::fileno(file.get()));
  {
    const std::unique_ptr<void, CloseUnzip> source(unzOpen64(from.c_str()));
    std::unique_ptr<void, CloseZip> target(zipOpen64(place.c_str(), APPEND_STATUS_CREATE));
    if (!source || !target) throw cannot_copy(from);
    Copier(source.get(), target.get(), from).copy(changed);
    if (zipClose(target.release(), nullptr) != ZIP_OK) throw cannot_copy(from);
  }
  std::array<char, 65536> piece;
  std::rewind(file.get());
  std::size_t total = 0;
  while (const std::size_t size = std::fread(piece.data(), 1, piece.size(), file.get())) {
    to.append({piece.data(), size});
    total += size;
  }
  if (total == 0 || std::ferror(file.get()) != 0) throw cannot_copy(from);
}

}  // namespace cutback::io
