#include "io/json_strict.hpp"

#include <algorithm>
#include <set>
#include <vector>

#include "cutback/error.hpp"

namespace cutback::io {
namespace {

constexpr int k_deepest = 32;

struct Level {
  std::set<std::string> keys;
  std::string key;  ///< the key whose value is being read
};

std::string path_of(const std::vector<Level>& levels) {
  std::string path;
  for (const Level& level : levels) {
    if (!level.key.empty()) path += (path.empty() ? "" : ".") + level.key;
  }
  return path;
}

/// Length of the deepest nesting, found without recursion and before the parser recurses.
int nesting(std::string_view text) {
  int depth = 0;
  int deepest = 0;
  bool in_string = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (in_string) {
      if (c == '\\')
        ++i;
      else if (c == '"')
        in_string = false;
    } else if (c == '"') {
      in_string = true;
    } else if (c == '{' || c == '[') {
      deepest = std::max(deepest, ++depth);
    } else if (c == '}' || c == ']') {
      --depth;
    }
  }
  return deepest;
}

std::string line_and_column(std::string_view text, std::size_t byte) {
  // `byte` counts from 1 and names the character at which the parser gave up.
  const std::string_view before = text.substr(0, byte == 0 ? 0 : byte - 1);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t start = before.rfind('\n');
  const std::size_t column =
      start == std::string_view::npos ? before.size() : before.size() - start - 1;
  return "line " + std::to_string(line) + ", column " + std::to_string(column + 1);
}

}  // namespace

nlohmann::ordered_json parse_json(std::string_view text, const std::string& name) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    throw InputError(
        make_fault(ErrorCode::bad_syntax, "the file is empty", name, "", "a JSON object", ""));
  }
  if (text.find('\0') != std::string_view::npos) {
    throw InputError(make_fault(ErrorCode::bad_syntax, "this is not a text file", name, "",
                                "JSON in UTF-8", "give the job file itself"));
  }
  if (nesting(text) > k_deepest) {
    throw InputError(make_fault(ErrorCode::bad_syntax, "brackets are nested too deep", name, "",
                                "at most " + std::to_string(k_deepest) + " levels", ""));
  }
  std::vector<Level> levels;
  std::vector<Fault> duplicates;
  const auto watch = [&](int, nlohmann::ordered_json::parse_event_t event,
                         nlohmann::ordered_json& parsed) {
    using Event = nlohmann::ordered_json::parse_event_t;
    if (event == Event::object_start || event == Event::array_start) {
      levels.emplace_back();
    } else if (event == Event::object_end || event == Event::array_end) {
      levels.pop_back();
    } else if (event == Event::key) {
      levels.back().key = parsed.get<std::string>();
      if (!levels.back().keys.insert(levels.back().key).second) {
        duplicates.push_back(make_fault(ErrorCode::duplicate, "a key is given twice",
                                        name + ": " + path_of(levels), "", "",
                                        "keep one of the two"));
      }
    }
    return true;
  };
  nlohmann::ordered_json parsed;
  try {
    parsed = nlohmann::ordered_json::parse(text, watch);
  } catch (const nlohmann::json::parse_error& error) {
    throw InputError(
        make_fault(ErrorCode::bad_syntax, "this is not valid JSON",
                   name + ", " + line_and_column(text, error.byte), "", "",
                   "look for a missing comma, quote or bracket just before that place"));
  } catch (const nlohmann::json::out_of_range&) {
    throw InputError(make_fault(ErrorCode::bad_number, "a number is too large", name, "",
                                "numbers of everyday size", "look for an exponent such as 1e400"));
  }
  if (!duplicates.empty()) throw InputError(std::move(duplicates));
  return parsed;
}

std::string_view json_kind(const nlohmann::ordered_json& value) {
  switch (value.type()) {
    case nlohmann::json::value_t::null:
      return "null";
    case nlohmann::json::value_t::object:
      return "an object";
    case nlohmann::json::value_t::array:
      return "a list";
    case nlohmann::json::value_t::string:
      return "text";
    case nlohmann::json::value_t::boolean:
      return "true or false";
    case nlohmann::json::value_t::number_integer:
    case nlohmann::json::value_t::number_unsigned:
    case nlohmann::json::value_t::number_float:
      return "a number";
    case nlohmann::json::value_t::binary:
    case nlohmann::json::value_t::discarded:
      return "nothing";
  }
  return "nothing";
}

}  // namespace cutback::io
