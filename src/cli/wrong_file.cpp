#include "cli/wrong_file.hpp"

#include <algorithm>
#include <filesystem>
#include <set>
#include <string>
#include <system_error>

#include "cutback/io/files.hpp"
#include "cutback/io/standards.hpp"
#include "cutback/io/table_kind.hpp"
#include "cutback/schedule/headings.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

enum class Kind {
  unknown,
  gland_list,
  schedule,
  cable_types,
  readings,
  made,
  results,
  job,
  json_result,
  workbook,
  pdf
};

std::string_view name_of(Kind kind) {
  switch (kind) {
    case Kind::gland_list:
      return "a gland list";
    case Kind::schedule:
      return "a cable schedule";
    case Kind::cable_types:
      return "a list of cable types";
    case Kind::readings:
      return "a file of readings";
    case Kind::made:
      return "a register of finished ends";
    case Kind::results:
      return "results of a schedule";
    case Kind::job:
      return "a job file";
    case Kind::json_result:
      return "a result of --json";
    case Kind::workbook:
      return "a workbook";
    case Kind::pdf:
      return "a PDF";
    case Kind::unknown:
      break;
  }
  return "another file";
}

/// Where such a file is read.
std::string_view place_of(Kind kind) {
  switch (kind) {
    case Kind::gland_list:
      return "it goes behind --glands";
    case Kind::schedule:
      return "it is read by cutback schedule, cards and kit";
    case Kind::cable_types:
      return "it goes behind --types";
    case Kind::readings:
      return "it is read by cutback readings";
    case Kind::made:
      return "it is read by cutback made, and goes behind --made";
    case Kind::job:
      return "it is read by cutback sheet";
    case Kind::workbook:
      return "save its sheet as CSV";
    case Kind::results:
    case Kind::json_result:
    case Kind::pdf:
    case Kind::unknown:
      break;
  }
  return "";
}

/// The cells of one line, whatever stands between them.
std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  for (;;) {
    const std::size_t end = std::min(line.find_first_of(",;\t"), line.size());
    cells.push_back(trimmed(line.substr(0, end), " \"\r"));
    if (end == line.size()) return cells;
    line.remove_prefix(end + 1);
  }
}

/// As the trade writes them over a cable schedule: what the cable is called, and what it is.
bool has_usual_headings(const std::vector<std::string_view>& headings) {
  static const schedule::UsualHeadings usual = schedule::usual_headings(io::builtin_standards());
  std::set<std::string> columns;
  for (const std::string_view heading : headings) {
    if (const auto* found = usual.find(schedule::heading_form(heading).plain)) {
      columns.insert(found->column);
    }
  }
  return columns.count("tag") > 0 &&
         columns.count("sheath_od_mm") + columns.count("cores") + columns.count("csa_mm2") > 0;
}

/// Of a table with these headings.
Kind kind_by(const std::vector<std::string_view>& headings) {
  const auto has = [&](std::string_view name) {
    return std::find(headings.begin(), headings.end(), name) != headings.end();
  };
  if (has("part") && (has("entry_thread") || has("outer_min_mm"))) return Kind::gland_list;
  if (has("drum") && has("value_mm")) return Kind::readings;
  if (has("made_at")) return Kind::made;
  if (has("verdict") && has("reason")) return Kind::results;
  if (has("type") && !has("tag") && has("sheath_od_mm")) return Kind::cable_types;
  if (has("tag") && (has("sheath_od_mm") || has("armour") || has("from_entry"))) {
    return Kind::schedule;
  }
  return has_usual_headings(headings) ? Kind::schedule : Kind::unknown;
}

Kind kind_of(std::string_view text) {
  if (text.empty()) return Kind::unknown;
  if (text.starts_with("%PDF")) return Kind::pdf;
  const io::TableKind table = io::table_kind(text);
  if (table == io::TableKind::xlsx || table == io::TableKind::old_workbook) return Kind::workbook;
  if (trimmed(text).starts_with("{")) {
    return text.find("\"cutback\"") == std::string_view::npos ? Kind::job : Kind::json_result;
  }
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  constexpr int k_titles = 10;  // titles may stand over the headings
  for (int line = 0; line < k_titles && !text.empty(); ++line) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const Kind kind = kind_by(cells_of(text.substr(0, end)));
    if (kind != Kind::unknown) return kind;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return Kind::unknown;
}

/// What may stand behind an option or in a file's place of a command; nothing: anything may.
std::vector<Kind> expected(std::string_view command, std::string_view by) {
  if (by == "--glands" || by == "CUTBACK_GLANDS") return {Kind::gland_list};
  if (by == "--readings") return {Kind::readings, Kind::made};
  if (by == "--types") return {Kind::cable_types, Kind::schedule, Kind::workbook};
  if (by == "--made") return {Kind::made};
  if (by.starts_with("-")) return {};
  if (command == "sheet" || command == "ask") return {Kind::job};
  if (command == "glands") return {Kind::gland_list};
  if (command == "readings") return {Kind::readings, Kind::made};
  if (command == "made") return {Kind::made};
  if (command == "cards") return {Kind::schedule, Kind::workbook, Kind::job};
  if (command == "schedule" || command == "kit") return {Kind::schedule, Kind::workbook};
  return {};
}

std::string first_of(const std::string& path) {
  constexpr std::size_t k_enough = 4096;
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return {};
  io::PieceReader file(path);
  std::string text;
  file.read(text, k_enough);
  return text;
}

}  // namespace

std::optional<Fault> wrong_file(std::string_view command, const std::vector<NamedFile>& files) {
  for (const NamedFile& file : files) {
    const bool is_asked = !file.written && !file.is_folder;
    const std::vector<Kind> kinds = is_asked ? expected(command, file.by) : std::vector<Kind>{};
    if (kinds.empty()) continue;
    const Kind kind = kind_of(first_of(file.path));
    if (kind == Kind::unknown || std::find(kinds.begin(), kinds.end(), kind) != kinds.end()) {
      continue;
    }
    return make_fault(ErrorCode::bad_value, "this is " + std::string(name_of(kind)), file.path, "",
                      std::string(name_of(kinds.front())), std::string(place_of(kind)));
  }
  return std::nullopt;
}

}  // namespace cutback::cli
