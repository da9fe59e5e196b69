// The JSON Schemas (draft 7) of data/schema/ accept what the program writes and the demonstration
// jobs, and refuse a broken document.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>
#include <vector>

namespace fs = std::filesystem;
using nlohmann::json;
using Adapter = valijson::adapters::NlohmannJsonAdapter;

namespace {

const fs::path k_root = CUTBACK_SOURCE_DIR;

std::string read_text(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  if (!stream) FAIL("cannot read " << path.string());
  return text.str();
}

json read_json(const fs::path& path) { return json::parse(read_text(path)); }

/// Everything that the schema of this name finds wrong with the document; empty when nothing.
std::string faults_of(const std::string& name, const json& document) {
  static std::map<std::string, valijson::Schema> schemas;
  auto found = schemas.find(name);
  if (found == schemas.end()) {
    found = schemas.try_emplace(name).first;
    const json text = read_json(k_root / "data/schema" / (name + ".schema.json"));
    // One schema borrows pieces of another by its file name.
    const auto fetch = [](const std::string& uri) -> const json* {
      return new json(read_json(k_root / "data/schema" / fs::path(uri).filename()));
    };
    valijson::SchemaParser parser(valijson::SchemaParser::kDraft7);
    parser.populateSchema(Adapter(text), found->second, fetch,
                          [](const json* fetched) { delete fetched; });
  }
  valijson::Validator validator;
  valijson::ValidationResults results;
  const Adapter adapter(document);
  if (validator.validate(found->second, adapter, &results)) return {};
  std::string text;
  for (const auto& error : results) {
    for (const std::string& step : error.context) text += step;
    text += ": " + error.description + "\n";
  }
  return text.empty() ? "refused" : text;
}

struct Golden {
  fs::path folder;
  std::string schema;  ///< of its command, or `errors`
  json document;
};

/// The golden cases of tests/cli that print JSON.
std::vector<Golden> golden_cases() {
  std::vector<Golden> list;
  for (const auto& entry : fs::recursive_directory_iterator(k_root / "tests/cli")) {
    if (entry.path().filename() != "args") continue;
    std::vector<std::string> args;
    std::istringstream lines(read_text(entry.path()));
    for (std::string line; std::getline(lines, line);) args.push_back(line);
    if (std::find(args.begin(), args.end(), "--json") == args.end()) continue;
    const fs::path folder = entry.path().parent_path();
    const bool answered = fs::exists(folder / "stdout");
    if (!answered && !fs::exists(folder / "stderr")) continue;  // written to a file
    if (answered && args.front() == "schedule") {               // one object a line
      std::istringstream objects(read_text(folder / "stdout"));
      for (std::string line; std::getline(objects, line);) {
        list.push_back({folder, "schedule", json::parse(line)});
      }
      continue;
    }
    list.push_back({folder, answered ? args.front() : "errors",
                    read_json(folder / (answered ? "stdout" : "stderr"))});
  }
  return list;
}

const Golden& golden_of(const std::vector<Golden>& list, const std::string& schema) {
  for (const Golden& golden : list) {
    if (golden.schema == schema) return golden;
  }
  FAIL("no golden case prints the JSON of " << schema);
  return list.front();
}

const std::vector<std::string> k_results{"fit",     "sheet", "cards",    "cable",    "earth",
                                         "glands",  "rules", "readings", "schedule", "kit",
                                         "profile", "made",  "errors"};

}  // namespace

TEST_CASE("schema: every JSON that a golden case prints is accepted", "[schema]") {
  const std::vector<Golden> list = golden_cases();
  for (const Golden& golden : list) {
    INFO(golden.folder.string());
    CHECK(faults_of(golden.schema, golden.document) == "");
  }
  for (const std::string& name : k_results) golden_of(list, name);
}

TEST_CASE("schema: the demonstration jobs are accepted", "[schema]") {
  int jobs = 0;
  for (const auto& entry : fs::directory_iterator(k_root / "data/demo/site")) {
    if (entry.path().extension() != ".json") continue;
    INFO(entry.path().string());
    CHECK(faults_of("job", read_json(entry.path())) == "");
    ++jobs;
  }
  CHECK(jobs >= 3);
}

TEST_CASE("schema: a result with a key too many or too few is refused", "[schema]") {
  const std::vector<Golden> list = golden_cases();
  for (const std::string& name : k_results) {
    INFO(name);
    const json& good = golden_of(list, name).document;
    json extra = good;
    extra["surprise"] = 1;
    CHECK(faults_of(name, extra) != "");
    for (const char* key : {"cutback", "format"}) {
      json lost = good;
      lost.erase(key);
      CHECK(faults_of(name, lost) != "");
    }
    json other_form = good;
    other_form["format"] = 2;
    CHECK(faults_of(name, other_form) != "");
    CHECK(faults_of(name, json::array({good})) != "");
  }
}

TEST_CASE("schema: a result with one wrong value is refused", "[schema]") {
  struct Break {
    const char* schema;
    const char* pointer;
    json value;
  };
  const std::vector<Break> breaks{
      {"fit", "/glands/0/verdict", "perhaps"},
      {"fit", "/glands/0/checks/0/value", "15"},
      {"fit", "/glands/0/checks/0/check", "outer seal"},
      {"fit", "/cable/sheath_od_mm/evidence", "guessed"},
      {"fit", "/demand/sealing", nullptr},
      {"sheet", "/marks/armour_cut_mm", -1},
      {"sheet", "/checks/0/verdict", "ok"},
      {"sheet", "/cable/sheath_od_mm/value", nullptr},
      {"sheet", "/tails/0/length_mm", "214"},
      {"sheet", "/ready", "yes"},
      {"cable", "/cable/cores", 2.5},
      {"cable", "/evidence", "measured"},
      {"cable", "/layers/bedding_mm", "0.8"},
      {"earth", "/armour", nullptr},
      {"earth", "/findings/0/about", "weather"},
      {"glands", "/groups/0/armour", "rope"},
      {"glands", "/count", -1},
      {"rules", "/status", "believed"},
      {"rules", "/rows", 3},
      {"readings", "/drums/0/places", json::array()},
      {"readings", "/probability", 1.5},
      {"errors", "/errors", json::array()},
      {"errors", "/errors/0/code", "oops"},
  };
  const std::vector<Golden> list = golden_cases();
  for (const Break& wrong : breaks) {
    INFO(wrong.schema << " " << wrong.pointer);
    json document;
    for (const Golden& golden : list) {
      if (golden.schema == wrong.schema &&
          golden.document.contains(json::json_pointer(wrong.pointer)))
        document = golden.document;
    }
    REQUIRE(document.is_object());
    document[json::json_pointer(wrong.pointer)] = wrong.value;
    CHECK(faults_of(wrong.schema, document) != "");
  }
}

TEST_CASE("schema: a broken job is refused", "[schema]") {
  const json good = read_json(k_root / "data/demo/site/pump-motor.json");
  const std::vector<std::pair<const char*, json>> breaks{
      {"/colour", "red"},
      {"/cable/diameter_mm", 15},
      {"/cable/cores", 2.5},
      {"/cable/cores", 0},
      {"/cable/csa_mm2", "4"},
      {"/cable/armour", "rope"},
      {"/cable/circular", "perhaps"},
      {"/cable/sheath_od_mm", ""},
      {"/cable/sheath_od_mm", json::array({15.1, 15.3})},
      {"/entry/wall_mm", 201},
      {"/area/zone", 3},
      {"/area/ambient_min_c", -101},
      {"/tails/cores/0/length_mm", 180},
      {"/tails/cores/0/spare", 1},
      {"/fault/time_s", nullptr},
      {"/entry", "M20"},
  };
  for (const auto& [pointer, value] : breaks) {
    json document = good;
    document[json::json_pointer(pointer)] = value;
    INFO(pointer << " " << value.dump());
    CHECK(faults_of("job", document) != "");
  }
}
