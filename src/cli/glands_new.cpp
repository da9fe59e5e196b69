#include "cli/glands_new.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <system_error>
#include <vector>

#include "cli/exit_code.hpp"
#include "cli/talk.hpp"
#include "cutback/error.hpp"
#include "cutback/gland/asked.hpp"
#include "cutback/gland/columns.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/gland_edit.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::cli {
namespace {

using Row = std::map<std::string, std::string, std::less<>>;  ///< value by column

std::string line_of(const Row& row) {
  std::string line;
  bool first = true;
  for (const std::string_view column : gland::template_columns()) {
    if (!first) line += ',';
    first = false;
    const auto at = row.find(column);
    if (at != row.end()) line += io::csv_field(at->second);
  }
  return line + "\n";
}

std::string header_line() {
  std::string line;
  for (const std::string_view column : gland::template_columns()) {
    line += (line.empty() ? "" : ",") + std::string(column);
  }
  return line + "\n";
}

/// What is wrong with a value of this column in the row at hand; empty where nothing is.
std::string fault_of(const Row& row, std::string_view low, std::string_view high) {
  try {
    // What else a row needs is not asked for yet.
    static_cast<void>(io::read_gland_list(header_line() + line_of(row), ""));
  } catch (const InputError& error) {
    for (const Fault& fault : error.faults()) {
      const bool own = fault.where.find("column " + std::string(low)) != std::string::npos ||
                       fault.where.find("column " + std::string(high)) != std::string::npos;
      if (own && fault.code != ErrorCode::missing) {
        Fault shown = fault;
        shown.where.clear();
        return to_line(shown);
      }
    }
  }
  return {};
}

enum class Heard { value, back, over };

/// One question until it has an answer that can stand.
Heard ask_one(const gland::Asked& asked, Row& row, Talk& talk) {
  for (;;) {
    talk.say(std::string(asked.asks) + (asked.needed ? "" : "; ? not stated") + "  (" +
             std::string(asked.example) + ")");
    const auto line = talk.hear();
    if (!line) return Heard::over;
    const std::string answer(trimmed(*line));
    if (answer == "<") return Heard::back;
    const bool none = answer.empty() || answer == "?" || answer == "none";
    // `none` is a kind of armour.
    if (none && !(answer == "none" && asked.column == "armour")) {
      if (asked.needed) {
        talk.say("! a list needs it");
        continue;
      }
      row.erase(std::string(asked.low));
      row.erase(std::string(asked.high));
      return Heard::value;
    }
    Row tried = row;
    if (asked.is_range()) {
      const auto ends = gland::read_range(answer);
      const auto one = parse_number(answer);
      if (!ends && !(one && asked.column == "armour_mm")) {
        talk.say("! not a range such as " + std::string(asked.example));
        continue;
      }
      tried[std::string(asked.low)] = plain(ends ? ends->low : *one, 6);
      tried[std::string(asked.high)] = plain(ends ? ends->high : *one, 6);
    } else {
      tried[std::string(asked.low)] = answer;
    }
    const std::string fault = fault_of(tried, asked.low, asked.high);
    if (fault.empty()) {
      if (!asked.is_range()) {
        const gland::Column& column = gland::columns()[gland::column_place(asked.low)];
        tried[std::string(asked.low)] = written::take(written::asked_of(column), answer, "").text;
      }
      row = std::move(tried);
      return Heard::value;
    }
    talk.say("! " + fault);
  }
}

bool applies(const gland::Asked& asked, const Row& row) {
  if (!asked.of_armoured) return true;
  const auto armour = row.find("armour");
  return armour == row.end() || armour->second != "none";
}

/// The figures of one gland. @return false where no more comes: the row is not whole then
bool ask_gland(Row& row, Talk& talk) {
  const auto questions = gland::asked();
  std::vector<std::size_t> answered;
  for (std::size_t i = 0; i < questions.size();) {
    if (!applies(questions[i], row)) {
      ++i;
      continue;
    }
    const Heard heard = ask_one(questions[i], row, talk);
    if (heard == Heard::over) return false;
    if (heard == Heard::back) {
      if (answered.empty()) {
        talk.say("! this is the first question");
      } else {
        i = answered.back();
        answered.pop_back();
      }
      continue;
    }
    answered.push_back(i);
    ++i;
  }
  return true;
}

}  // namespace

int new_gland_list(const std::string& path, const Runtime& runtime) {
  std::error_code error;
  if (std::filesystem::exists(path, error)) {
    throw InputError(make_fault(ErrorCode::contradiction, "the file is there already", "--new",
                                path, "the name of a new file",
                                "cutback glands " + path + " checks it"));
  }
  Talk talk(runtime);
  std::string rows;
  std::size_t count = 0;
  talk.say(
      "One question a line, off the gland's packet or papers. ? not stated, < back; end of "
      "input (Ctrl-D): done.");
  for (bool more = true; more;) {
    Row row;
    talk.say("");
    talk.say("GLAND " + std::to_string(count + 1));
    more = ask_gland(row, talk);
    if (!more) {
      if (!row.empty()) talk.say("! The gland that was begun is not in the list.");
      break;
    }
    const std::string line = line_of(row);
    try {
      static_cast<void>(io::read_gland_list(header_line() + rows + line, path));
      rows += line;
      ++count;
    } catch (const InputError& fault) {
      for (const Fault& each : fault.faults()) talk.say("! " + to_line(each));
      talk.say("! This gland is not in the list: once more.");
    }
  }
  runtime.files.add(path).append(gland::template_text() + rows);
  talk.say(
      count == 0
          ? "Written: " + path + ", a template to fill in. cutback glands " + path + " checks it."
          : "Written: " + path + ", " + std::to_string(count) +
                (count == 1 ? " gland." : " glands.") + " cutback glands " + path + " checks it.");
  return k_exit_fits;
}

namespace {

constexpr std::string_view k_drawing =
    "      back nut      body     shoulder   entry thread\n"
    "    __________ ______________ |\n"
    "   |          |              ||==============\n"
    "   |__________|______________||==============\n"
    "        |<---- stop --------->|             |<- past ->\n"
    "   tips of the clamped wires  |             |         end of the bedding\n";

struct Figure {
  const char* column;
  const char* asks;
  const char* how;
};
constexpr Figure k_figures[] = {
    {"armour_stop_mm", "Armour stop, in mm",
     "Clamp a piece of armoured cable, or hold a wire in the cone where it is gripped. Measure "
     "from "
     "the shoulder back to the tips of the wires."},
    {"exposed_armour_mm", "Bare armour, in mm",
     "Measure from the tips of the wires back to where the outer sheath ends when the gland is "
     "made "
     "up."},
    {"bedding_past_mm", "How far the bedding goes past the thread, in mm",
     "Made up, look into the thread: measure from the end of the thread to the end of the bedding "
     "that the gland's leaflet asks for; 0 where they end together."},
};

}  // namespace

int measure_gland(const std::string& path, const std::string& part, const Runtime& runtime) {
  std::string text;
  {
    const io::WholeFile file(path);
    text = file.text();
  }
  const gland::GlandList before = io::read_gland_list(text, path);
  // The part is looked for before anybody measures.
  static_cast<void>(io::with_gland_cells(text, path, part, {}));
  Talk talk(runtime);
  talk.say("Measured once on a gland in hand, kept in " + path + ". ? leave as it is.");
  talk.show(k_drawing);
  std::vector<io::CellEdit> cells;
  const auto& gland = *std::find_if(before.glands.begin(), before.glands.end(),
                                    [&](const gland::Gland& each) { return each.part == part; });
  for (const Figure& figure : k_figures) {
    const gland::Column& column = gland::columns()[gland::column_place(figure.column)];
    const bool armoured = gland.armour != cable::ArmourKind::none;
    if (!armoured && std::string_view(figure.column) != "bedding_past_mm") continue;
    talk.say("");
    talk.say(figure.how);
    const auto now = gland::text_of(gland, column);
    for (;;) {
      talk.say(std::string(figure.asks) + "  (now " + now.value_or("not stated") + ")");
      const auto line = talk.hear();
      if (!line) {
        talk.say("Nothing was changed.");
        return k_exit_no_fit;
      }
      const std::string answer(trimmed(*line));
      if (answer.empty() || answer == "?") break;
      const std::string value = written::take(written::asked_of(column), answer, "").text;
      const auto number = parse_number(value);
      if (number && *number >= column.min && *number <= column.max) {
        cells.emplace_back(figure.column, value);
        break;
      }
      talk.say("! " + gland::allowed_text(column));
    }
  }
  if (cells.empty()) {
    talk.say("Nothing was changed.");
    return k_exit_fits;
  }
  const std::string changed = io::with_gland_cells(text, path, part, cells);
  // Nothing else may have changed, whatever the file is like.
  const gland::GlandList after = io::read_gland_list(changed, path);
  for (std::size_t i = 0; i < before.glands.size(); ++i) {
    for (const gland::Column& column : gland::columns()) {
      const bool meant = before.glands[i].part == part &&
                         std::any_of(cells.begin(), cells.end(), [&](const io::CellEdit& cell) {
                           return cell.first == column.name;
                         });
      if (!meant &&
          gland::text_of(before.glands[i], column) != gland::text_of(after.glands[i], column)) {
        throw InternalError("another cell of the list would have changed");
      }
    }
  }
  io::write_file(path, changed);
  std::string said;
  for (const auto& [column, value] : cells)
    said += (said.empty() ? "" : ", ") + column + " " + value;
  talk.say("Kept in " + path + ": " + said + ".");
  return k_exit_fits;
}

}  // namespace cutback::cli
