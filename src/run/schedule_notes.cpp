#include "run/schedule_notes.hpp"

#include <filesystem>
#include <string_view>

#include "cutback/text.hpp"

namespace cutback::run {
namespace {

/// Without its folder, which says nothing elsewhere.
std::string file_name(const std::string& path) {
  return std::filesystem::path(path).filename().string();
}

/// Without the line breaks and spaces of a screen.
std::string one_line(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const bool space = c == '\n' || c == ' ';
    if (!space) line += c;
    if (space && !line.empty() && line.back() != ' ') line += ' ';
  }
  trim_end(line);
  return line;
}

}  // namespace

std::vector<std::string> schedule_notes(const std::string& schedule, const std::string& list,
                                        const std::string& defaults,
                                        const std::vector<std::string>& about,
                                        const std::vector<std::string>& read) {
  std::vector<std::string> notes{
      "Made by cutback " CUTBACK_VERSION ".",
      "Schedule: " + file_name(schedule) + ". Gland list: " + file_name(list) + ".",
      "The certificates, the instructions of gland and enclosure and the local code come before "
      "these sheets; a competent, licensed person checks every choice before it is ordered or "
      "installed.",
      "What was not measured on the cable itself is as good as its source: measure before cutting.",
      "fits: proven by the figures given. marginal-inside: the figures lie inside the gland's "
      "ranges, but their uncertainty reaches over an edge; measure before ordering. not-known: a "
      "figure is missing. marginal-outside: outside by less than the uncertainty. no-fit: no gland "
      "of the list. no-stock: glands of the list fit, but none of them is left. unusable: the row "
      "cannot be read as a cable; its reason says why.",
      "In Take-off, what is to be ordered and the totals are formulas: change quantity, stock or "
      "price and they follow; the totals are those of the rows that a filter leaves. A price is "
      "that of the gland list, without tax or carriage.",
      "Lengths and margins are in millimetres.",
  };
  notes.insert(notes.begin() + 2, about.begin(), about.end());
  if (!defaults.empty()) notes.insert(notes.begin() + 2, one_line(defaults));
  for (const std::string& line : read) notes.push_back("Read: " + one_line(line));
  return notes;
}

}  // namespace cutback::run
