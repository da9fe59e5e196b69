#include "cli/made_report.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "cli/terminal.hpp"
#include "cutback/hidden.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

constexpr std::size_t k_columns = 80;

/// A text of a file in one piece of a line.
std::string shown(std::string_view text) {
  constexpr std::size_t k_longest = 60;
  std::string out = without_controls(text);
  std::replace_if(
      out.begin(), out.end(), [](char c) { return c == '\n' || c == '\t'; }, ' ');
  if (out.size() <= k_longest) return out;
  std::size_t end = k_longest;
  while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0U) == 0x80U) --end;
  return out.substr(0, end) + "...";
}

std::string shown_name(const End& end) { return shown(end.first) + ", " + shown(end.second); }
std::string shown_name(const io::MadeRow& row) {
  return shown_name({row.cell("tag"), row.cell("end")});
}

/// Lines of 80 columns; a word that is longer than a line is shortened.
std::string lines_of(const std::string& first, std::string_view text) {
  std::string line = first;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    line += shown(text.substr(0, end));
    if (end < text.size()) line += ' ';
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return folded(line, k_columns, 4) + "\n";
}

std::string or_none(const std::string& part, const char* none) {
  return part.empty() ? none : shown(part);
}

/// What is to be done, place by place.
std::string outstanding_text(const std::vector<Planned>& list) {
  std::string text;
  for (std::size_t first = 0; first < list.size();) {
    std::size_t last = first;
    while (last < list.size() && list[last].place == list[first].place) ++last;
    const bool placed = !list[first].place.empty();
    if (placed) {
      text += "  " + shown(list[first].place) + ": " + std::to_string(last - first) + "\n";
    }
    for (; first < last; ++first) {
      text += std::string(placed ? "    " : "  ") + shown_name(list[first].end) + "  " +
              or_none(list[first].part, "no gland yet") + "\n";
    }
  }
  return text;
}

}  // namespace

std::string name_of(const End& end) { return end.first + ", " + end.second; }

std::string made_text(const Account& account) {
  std::string text;
  const auto part = [&](const char* heading, std::size_t count) {
    text += std::string(text.empty() ? "" : "\n") + heading + ": " + std::to_string(count) + "\n";
  };
  // A row of no end of the schedule is in neither sum of its ends.
  const auto rows = [&](const char* heading, const std::vector<io::MadeRow>& list) {
    part(heading, list.size());
    const auto strangers = std::count_if(list.begin(), list.end(), [&](const io::MadeRow& row) {
      return std::any_of(account.not_found.begin(), account.not_found.end(),
                         [&](const run::NotFound& each) { return each.line == row.line; });
    });
    if (strangers == 0) return;
    text.insert(text.size() - 1,
                ", of which " + std::to_string(strangers) + " not in the schedule");
  };
  rows("FINISHED", account.finished);
  for (const io::MadeRow& row : account.finished) {
    text += "  " + shown_name(row) + "  " + shown(row.cell("part")) + "  " +
            shown(row.cell("made_at")) + "  " + shown(row.cell("by")) + "\n";
    if (!row.cell("remark").empty()) text += lines_of("    ", row.cell("remark"));
  }
  if (!account.measured.empty()) {
    rows("MEASURED, NOT FINISHED", account.measured);
    for (const io::MadeRow& row : account.measured) text += "  " + shown_name(row) + "\n";
  }
  if (!account.tests.empty()) {
    part("TESTS TO LOOK AT", account.tests.size());
    for (const Tested& each : account.tests) {
      for (const std::string& says : each.says) {
        text += lines_of("  " + shown_name(each.end) + ": ", says);
      }
    }
  }
  if (!account.planned) return text;
  part("OUTSTANDING", account.outstanding.size());
  text += outstanding_text(account.outstanding);
  part("MADE WITH ANOTHER GLAND", account.other_gland.size());
  for (const Planned& each : account.other_gland) {
    text += "  " + shown_name(each.end) + "  " + shown(each.made) + ", the schedule has " +
            or_none(each.part, "none") + "\n";
  }
  if (!account.outside.empty()) {
    part("READINGS OUTSIDE WHAT THE GLAND TAKES", account.outside.size());
    for (const Planned& each : account.outside) {
      for (const std::string& says : each.outside) {
        text += lines_of("  " + shown_name(each.end) + ": ", says);
      }
    }
  }
  if (!account.not_found.empty()) {
    part("NOT IN THE SCHEDULE", account.not_found.size());
    for (const run::NotFound& row : account.not_found) {
      text += lines_of("  ", row.says);
    }
  }
  return text;
}

std::string made_json(const Account& account, const io::MadeFile& file) {
  using Json = nlohmann::ordered_json;
  Json result;
  result["cutback"] = CUTBACK_VERSION;
  result["format"] = 1;
  const auto rows = [](const std::vector<io::MadeRow>& list) {
    Json array = Json::array();
    for (const io::MadeRow& row : list) {
      Json item = Json::object();
      for (const std::string_view column : io::made_columns()) {
        if (!row.cell(column).empty()) item[std::string(column)] = row.cell(column);
      }
      array.push_back(std::move(item));
    }
    return array;
  };
  result["finished"] = rows(account.finished);
  result["measured"] = rows(account.measured);
  if (!account.tests.empty()) {
    Json tests = Json::array();
    for (const Tested& each : account.tests) {
      tests.push_back({{"tag", each.end.first}, {"end", each.end.second}, {"says", each.says}});
    }
    result["tests"] = std::move(tests);
  }
  if (account.planned) {
    const auto ends = [](const std::vector<Planned>& list, auto put) {
      Json array = Json::array();
      for (const Planned& each : list) {
        Json item{{"tag", each.end.first}, {"end", each.end.second}};
        if (!each.place.empty()) item["place"] = each.place;
        put(item, each);
        array.push_back(std::move(item));
      }
      return array;
    };
    result["outstanding"] = ends(account.outstanding,
                                 [](Json& item, const Planned& each) { item["part"] = each.part; });
    result["other_gland"] = ends(account.other_gland, [](Json& item, const Planned& each) {
      item["part"] = each.made;
      item["planned"] = each.part;
    });
    result["outside"] =
        ends(account.outside, [](Json& item, const Planned& each) { item["says"] = each.outside; });
    std::vector<io::MadeRow> none;
    for (const run::NotFound& row : account.not_found) {
      const auto same = [&](const io::MadeRow& each) { return each.line == row.line; };
      none.push_back(*std::find_if(file.rows.begin(), file.rows.end(), same));
    }
    result["not_planned"] = rows(none);
  }
  return harmless_json(result.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

}  // namespace cutback::cli
