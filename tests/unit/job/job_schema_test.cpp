// The schema of a job file says what the field table says.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cutback/io/files.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/input.hpp"
#include "cutback/number.hpp"

using cutback::job::FieldKind;
using cutback::job::FieldOf;
using nlohmann::ordered_json;

namespace {

/// The words, and the figures among them as numbers too: `"zone": 1` is taken as `"zone": "1"`.
ordered_json enum_of(const std::vector<std::string_view>& words) {
  ordered_json list = ordered_json::array();
  ordered_json numbers = ordered_json::array();
  for (const std::string_view word : words) {
    list.push_back(word);
    if (const auto number = cutback::parse_number(word)) numbers.push_back(*number);
  }
  list.insert(list.end(), numbers.begin(), numbers.end());
  return list;
}

template <class Record>
ordered_json property_of(const FieldOf<Record>& field) {
  const std::string help(field.help);
  const std::string allowed(field.allowed);
  ordered_json item;
  switch (field.kind) {
    case FieldKind::number:
    case FieldKind::whole:
      item["description"] = help + " [" + allowed + "]";
      item["type"] = field.kind == FieldKind::whole ? "integer" : "number";
      item["minimum"] = field.min;
      item["maximum"] = field.max;
      break;
    case FieldKind::words:
      item["description"] = help;
      item["enum"] = enum_of(words_of(field));
      break;
    case FieldKind::yes_no:
      item["description"] = help;
      item["enum"] = {"yes", "no", true, false};
      break;
    case FieldKind::readings:
    case FieldKind::text:
      item["description"] = allowed == "text" ? help : help + ": " + allowed;
      item["type"] = {"string", "number"};
      item["minLength"] = 1;
      break;
  }
  return item;
}

/// @return the part of the schema that describes a section: "", "cable", "tails.cores" ...
const ordered_json& section_of(const ordered_json& schema, std::string_view section) {
  if (section.empty()) return schema;
  if (section == "tails.cores") return section_of(schema, "tails")["properties"]["cores"]["items"];
  return schema.at("properties").at(std::string(section));
}

template <class Record>
void compare(const ordered_json& schema, std::span<const FieldOf<Record>> table) {
  for (const FieldOf<Record>& field : table) {
    const ordered_json want = property_of(field);
    INFO(field.section << "." << field.key << ": the schema needs " << want.dump());
    const ordered_json& properties = section_of(schema, field.section).at("properties");
    REQUIRE(properties.contains(std::string(field.key)));
    const ordered_json& found = properties.at(std::string(field.key));
    CHECK(found == want);
  }
}

ordered_json read_schema() {
  const std::string path = CUTBACK_SOURCE_DIR "/data/schema/job.schema.json";
  const cutback::io::WholeFile file(path);
  return ordered_json::parse(file.text());
}

}  // namespace

TEST_CASE("job schema: every field stands in it with its kind and limits", "[unit][job]") {
  const ordered_json schema = read_schema();
  compare(schema, cutback::job::fields());
  compare(schema, cutback::job::core_fields());
}

TEST_CASE("job schema: holds no key that the field table lacks", "[unit][job]") {
  const ordered_json schema = read_schema();
  const auto count = [&](std::string_view section) {
    const ordered_json& part = section_of(schema, section);
    CHECK(part.at("additionalProperties") == false);
    return part.at("properties").size();
  };
  const std::size_t found = count("") + count("cable") + count("entry") + count("area") +
                            count("tails") + count("fault") + count("tails.cores");
  const std::size_t sections = 5;
  const std::size_t core_list = 1;
  CHECK(found ==
        cutback::job::fields().size() + cutback::job::core_fields().size() + sections + core_list);
}
