#include "cli/own_tables.hpp"

#include <array>
#include <nlohmann/json.hpp>

#include "cutback/hidden.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {

using nlohmann::ordered_json;

OwnTables own_tables(const tables::Standards& standards) {
  OwnTables tables{.folder = standards.folder, .other = {}};
  for (const std::string& id : standards.own) {
    tables.other.emplace_back(id, standards.table(id).checksum);
  }
  return tables;
}

std::string words_of(const OwnTables& tables) {
  const std::string folder = without_controls(tables.folder);
  if (tables.other.empty()) {
    return "tables of published values from " + folder + ", the same as the built-in ones";
  }
  std::string names;
  for (const auto& [id, sum] : tables.other) names += (names.empty() ? "" : ", ") + id;
  return "THE USER'S OWN TABLES in place of the built-in ones, not checked here, from " + folder +
         ": " + names;
}

std::string with_words(const std::string& text, const OwnTables& tables) {
  if (!tables.is_used()) return text;
  constexpr std::size_t k_columns = 79;
  std::string rest = words_of(tables);
  std::string out = text + "\n";
  while (rest.size() > k_columns) {
    const std::size_t cut = rest.rfind(' ', k_columns);
    if (cut == std::string::npos || cut == 0) break;
    out += rest.substr(0, cut) + "\n";
    rest.erase(0, cut + 1);
  }
  return out + rest + "\n";
}

std::string with_json(std::string_view json, const OwnTables& tables) {
  if (!tables.is_used()) return std::string(json);
  ordered_json own;
  own["folder"] = tables.folder;
  own["differ"] = ordered_json::array();
  for (const auto& [id, sum] : tables.other) {
    own["differ"].push_back({{"table", id}, {"status", "users-own"}, {"checksum", sum}});
  }
  const std::string value =
      harmless_json(own.dump(-1, ' ', false, ordered_json::error_handler_t::replace));
  // A quote inside a text is escaped, so that no text looks like this.
  struct Head {
    std::string_view text;
    std::string_view before;
  };
  constexpr std::array k_heads{
      Head{"{\n  \"cutback\": \"" CUTBACK_VERSION "\",\n  \"format\": 1", ",\n  \"own_tables\": "},
      Head{"{\"cutback\":\"" CUTBACK_VERSION "\",\"format\":1", ",\"own_tables\":"}};
  std::string out;
  while (!json.empty()) {
    std::size_t end = std::string_view::npos;
    std::string_view before;
    for (const Head& head : k_heads) {
      const std::size_t at = json.find(head.text);
      if (at != std::string_view::npos &&
          (end == std::string_view::npos || at + head.text.size() < end)) {
        end = at + head.text.size();
        before = head.before;
      }
    }
    out += json.substr(0, end);
    if (end == std::string_view::npos) break;
    json.remove_prefix(end);
    out.append(before).append(value);
  }
  return out;
}

}  // namespace cutback::cli
