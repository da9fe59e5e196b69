#include "cli/glands_new.hpp"

#include <algorithm>
#include <array>
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

/// The parts of a whole marking, each in its column where the row does not tell it.
void put_marking(Row& row, std::string_view text, Talk& talk) {
  const auto marking = written::read_marking(text);
  if (!marking || marking->protection.empty()) return;
  std::string said;
  const auto put = [&](const char* column, const std::string& value) {
    if (value.empty() || row.contains(column)) return;
    row[column] = value;
    said += (said.empty() ? "" : ", ") + std::string(column) + " " + value;
  };
  put("level", joined(marking->level, " "));
  put("gas_group", marking->gas_group);
  put("dust_group", marking->dust_group);
  if (!said.empty()) talk.say("  taken from the marking: " + said);
  if (marking->mines) {
    talk.say("  group I is for mines: it serves no place of gas group II or dust group III");
  }
  if (marking->conditions) {
    std::string& words = row["description"];
    words += (words.empty() ? "" : "; ") + std::string("X: special conditions of use");
    talk.say("  X: its certificate has special conditions of use; the description says so");
  }
}

/// What is asked, with what is not stated and an example.
std::string words_of(const gland::Asked& asked) {
  std::string words(asked.asks);
  if (gland::columns()[gland::column_place(asked.low)].unit == "mm") words += ", in mm";
  words += ", such as " + std::string(asked.example);
  if (asked.blank_is_none) return words + "; none: it has no such seal";
  if (!asked.needed) words += "; Enter or ? not stated";
  if (!asked.cost.empty()) words += ": " + std::string(asked.cost);
  return words;
}

enum class Said { value, none, not_known };

/// Whether an answer is one of the words for nothing.
Said said_of(const gland::Asked& asked, const std::string& answer) {
  constexpr std::array<std::string_view, 5> k_none{"none", "no", "no seal", "no such seal", "nil"};
  const std::string small = small_letters(answer);
  if (small.empty() || small == "?" || small == "-") return Said::not_known;
  if (asked.column == "armour") return Said::value;  // `none` is a kind of it
  return std::find(k_none.begin(), k_none.end(), small) != k_none.end() ? Said::none : Said::value;
}

/// Why a question must not be left open.
std::string must_be_told(const gland::Asked& asked) {
  if (asked.needed) {
    return "nothing was typed, and a list needs it: such as " + std::string(asked.example);
  }
  return "left open it would count as a gland without this seal: look it up, or type none; Ctrl-D "
         "keeps the gland that is begun";
}

/// A marking engraved in capitals: DB is a type of protection, or the level Db.
bool in_capitals_alone(const std::string& text) {
  const bool small =
      std::any_of(text.begin(), text.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  return !small && text.starts_with("EX ");
}

/// One question until it has an answer that can stand.
/// @param parts  that the list has already
Heard ask_one(const gland::Asked& asked, const std::vector<std::string>& parts, Row& row,
              Talk& talk) {
  for (;;) {
    talk.say(words_of(asked));
    const auto line = talk.hear();
    if (!line) return Heard::over;
    const std::string answer(trimmed(*line));
    if (answer == "<") return Heard::back;
    const Said said = said_of(asked, answer);
    if (said != Said::value) {
      if (asked.needed || (asked.blank_is_none && said == Said::not_known)) {
        talk.say("! " + must_be_told(asked));
        continue;
      }
      row[std::string(asked.low)] = "";
      row[std::string(asked.high)] = "";
      return Heard::value;
    }
    if (asked.column == "part" && std::find(parts.begin(), parts.end(), answer) != parts.end()) {
      talk.say("! the list has this gland already; its figures are changed in the file itself");
      continue;
    }
    Row tried = row;
    if (asked.is_range()) {
      const auto ends = gland::read_range(answer);
      const auto one = parse_number(answer);
      if (!ends && !(one && asked.column == "armour_mm")) {
        talk.say("! not a range such as " + std::string(asked.example) +
                 (asked.blank_is_none ? ", and not none" : ""));
        continue;
      }
      tried[std::string(asked.low)] = plain(ends ? ends->low : *one, 6);
      tried[std::string(asked.high)] = plain(ends ? ends->high : *one, 6);
    } else {
      const auto marking = written::read_marking(answer);
      const bool whole = asked.column == "protection" && marking && !marking->protection.empty();
      tried[std::string(asked.low)] = whole ? joined(marking->protection, " ") : answer;
    }
    const std::string fault = fault_of(tried, asked.low, asked.high);
    if (!fault.empty() && in_capitals_alone(answer)) {
      talk.say("! capitals alone can be read in two ways: write it as in Ex db eb IIC T6 Gb");
      continue;
    }
    const std::vector<std::string_view> words = split_words(answer);
    const bool marked =
        asked.column == "protection" && std::find(words.begin(), words.end(), "Ex") != words.end();
    if (!fault.empty() && marked) {
      talk.say(
          "! not one marking, such as Ex db eb IIC T6 Gb: where its types differ in group or "
          "level, "
          "make one row of each");
      continue;
    }
    if (fault.empty()) {
      if (!asked.is_range()) {
        const gland::Column& column = gland::columns()[gland::column_place(asked.low)];
        std::string& value = tried[std::string(asked.low)];
        written::Taken taken = written::take(written::asked_of(column), value, "");
        if (!taken.says.empty()) talk.say("  taken: " + taken.says);
        value = std::move(taken.text);
      }
      row = std::move(tried);
      if (asked.column == "protection") put_marking(row, answer, talk);
      return Heard::value;
    }
    talk.say("! " + fault);
  }
}

bool applies(const gland::Asked& asked, const Row& row) {
  const auto is = [&](std::string_view column, std::string_view value) {
    const auto found = row.find(column);
    return found != row.end() && found->second == value;
  };
  if (asked.of_armoured && is("armour", "none")) return false;
  return !asked.of_barrier || is("sealing", "barrier") || is("sealing", "either");
}

/// The figures of one gland that the row does not tell yet. @return false where no more comes: the
/// row is not whole then
bool ask_gland(const std::vector<std::string>& parts, Row& row, Talk& talk) {
  const auto questions = gland::asked();
  std::vector<std::size_t> answered;
  for (std::size_t i = 0; i < questions.size();) {
    const bool told = row.contains(questions[i].low);
    if (told) answered.push_back(i);
    if (told || !applies(questions[i], row)) {
      ++i;
      continue;
    }
    const Heard heard = ask_one(questions[i], parts, row, talk);
    if (heard == Heard::over) return false;
    if (heard == Heard::value) continue;  // the row tells it now
    if (answered.empty()) {
      talk.say("! this is the first question");
      continue;
    }
    i = answered.back();
    answered.pop_back();
    row.erase(std::string(questions[i].low));
    row.erase(std::string(questions[i].high));
  }
  return true;
}

std::vector<io::CellEdit> cells_of(const Row& row) {
  std::vector<io::CellEdit> cells;
  for (const gland::Asked& asked : gland::asked()) {
    const auto add = [&](std::string_view column) {
      const auto at = row.find(column);
      if (at != row.end()) cells.emplace_back(at->first, at->second);
    };
    add(asked.low);
    if (asked.is_range()) add(asked.high);
  }
  return cells;
}

/// The cells that say something: no column is made for a figure that is not stated.
std::vector<io::CellEdit> stated(const Row& row) {
  std::vector<io::CellEdit> cells = cells_of(row);
  std::erase_if(cells, [](const io::CellEdit& cell) { return cell.second.empty(); });
  return cells;
}

/// The part codes of a list that may have no gland yet.
/// @throws InputError where the text is no gland list
std::vector<std::string> parts_of(const std::string& text, const std::string& path) {
  // A list without a gland is none: it is read with one more.
  const std::string probe = io::with_gland_added(text, path,
                                                 std::vector<io::CellEdit>{{"part", "?"},
                                                                           {"entry_thread", "M20"},
                                                                           {"outer_min_mm", "1"},
                                                                           {"outer_max_mm", "2"},
                                                                           {"armour", "none"}});
  std::vector<std::string> parts;
  for (const gland::Gland& gland : io::read_gland_list(probe, path).glands) {
    if (gland.part != "?") parts.push_back(gland.part);
  }
  return parts;
}

/// Takes out what faults name, so that it is asked again; all where they name nothing.
void forget(Row& row, const std::vector<Fault>& faults) {
  bool named = false;
  for (const gland::Asked& asked : gland::asked()) {
    for (const Fault& fault : faults) {
      const auto has = [&](std::string_view column) {
        return fault.where.ends_with("column " + std::string(column));
      };
      if (!has(asked.low) && !has(asked.high)) continue;
      named = true;
      row.erase(std::string(asked.low));
      row.erase(std::string(asked.high));
    }
  }
  if (!named) row.clear();
}

std::string count_words(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " gland" : " glands");
}

}  // namespace

int new_gland_list(const std::string& path, const Runtime& runtime) {
  std::error_code error;
  const bool there = std::filesystem::exists(path, error);
  std::string text = gland::template_text();
  if (there) text = io::WholeFile(path).text();
  Row row;
  for (auto& [column, value] : io::take_begun(text)) row.insert_or_assign(column, value);
  std::vector<std::string> parts = parts_of(text, path);
  Talk talk(runtime);
  talk.say(
      "One question per line, off the gland's packet or papers. < back; end of "
      "input (Ctrl-D) or Ctrl-C: done, and the gland that is begun is kept.");
  if (there) talk.say(path + " has " + count_words(parts.size()) + "; the next is put behind.");
  for (;;) {
    talk.say("");
    talk.say("GLAND " + std::to_string(parts.size() + 1));
    for (const gland::Asked& asked : gland::asked()) {
      const auto low = row.find(asked.low);
      if (low == row.end() || low->second.empty()) continue;
      const auto high = row.find(asked.high);
      const bool range = asked.is_range() && high != row.end();
      talk.say("  " + std::string(asked.asks) + ": " + low->second +
               (range ? " - " + high->second : ""));
    }
    if (!ask_gland(parts, row, talk)) break;
    try {
      std::string longer = io::with_gland_added(text, path, stated(row));
      static_cast<void>(io::read_gland_list(longer, path));
      text = std::move(longer);
      io::write_file(path, text);  // what is told is on the disk before the next is asked
      parts.push_back(row["part"]);
    } catch (const InputError& fault) {
      for (const Fault& each : fault.faults()) talk.say("! " + to_line(each));
      forget(row, fault.faults());
      continue;
    }
    row.clear();
  }
  if (!row.empty()) {
    talk.say("The gland that was begun is kept: cutback glands --new " + path +
             " goes on with it.");
  }
  if (!there || !row.empty())
    io::write_file(path, row.empty() ? text : io::with_begun(text, cells_of(row)));
  talk.say("Written: " + path + ", " +
           (parts.empty() ? "a template to fill in" : count_words(parts.size())) +
           ". cutback glands " + path + " checks it.");
  if (!parts.empty()) {
    talk.say("cutback ask --glands " + path + " goes by it; cutback profile --set glands=" + path +
             " makes it yours for good.");
  }
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
     "Clamp a piece of armoured cable, or hold a wire in the cone where it is gripped. "
     "Measure from the shoulder back to the tips of the wires."},
    {"exposed_armour_mm", "Bare armour, in mm",
     "With the gland made up, measure from the tips of the wires back to the outer sheath."},
    {"bedding_past_mm", "How far the bedding goes past the thread, in mm",
     "With the gland made up, look into the thread. Measure from the end of the thread to where "
     "the gland's leaflet wants the bedding to end; 0 where they end together."},
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
  talk.say("Measured once on a gland in hand and kept in " + path + ". ? leaves it as it is.");
  talk.show(k_drawing);
  std::vector<io::CellEdit> cells;
  const auto& gland = *std::find_if(before.glands.begin(), before.glands.end(),
                                    [&](const gland::Gland& each) { return each.part == part; });
  bool stopped = false;
  for (const Figure& figure : k_figures) {
    if (stopped) break;
    const gland::Column& column = gland::columns()[gland::column_place(figure.column)];
    const bool armoured = gland.armour != cable::ArmourKind::none;
    if (!armoured && std::string_view(figure.column) != "bedding_past_mm") continue;
    talk.say("");
    talk.say(figure.how);
    const auto now = gland::text_of(gland, column);
    for (;;) {
      talk.say(std::string(figure.asks) + "  (now " + now.value_or("not stated") + ")");
      const auto line = talk.hear();
      stopped = !line;
      const std::string answer(line ? trimmed(*line) : std::string_view{});
      if (answer.empty() || answer == "?") break;
      const std::string value = written::take(written::asked_of(column), answer, "").text;
      const auto number = parse_number(value);
      if (number && *number >= column.min && *number <= column.max) {
        cells.emplace_back(figure.column, value);
        break;
      }
      talk.say("! allowed: " + gland::allowed_text(column));
    }
  }
  const int status = stopped ? k_exit_no_fit : k_exit_fits;
  if (cells.empty()) {
    talk.say("Nothing was changed.");
    return status;
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
  return status;
}

}  // namespace cutback::cli
