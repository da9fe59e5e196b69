#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <sstream>

#include "cutback/compare.hpp"
#include "cutback/gland/columns.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/io/job_file.hpp"

using namespace cutback;
using Catch::Contains;
using gland::Gland;

namespace {

const std::string k_data = CUTBACK_SOURCE_DIR "/data/";

bool holds(const measure::Range& range, double value_mm) {
  return within(value_mm, range.low_mm.value(), range.high_mm.value());
}

}  // namespace

TEST_CASE("demo_gland_list: every gland is marked as invented", "[unit][demo]") {
  const auto list = io::demo_gland_list();
  CHECK(list.warnings.empty());
  CHECK_THAT(list.name, Contains("invented"));
  CHECK(list.glands.size() >= 60);
  for (const Gland& gland : list.glands) {
    INFO(gland.part);
    CHECK(gland.range == "invented demonstration range");
  }
}

TEST_CASE("demo_gland_list: a common cable finds an armoured gland for M20", "[unit][demo]") {
  const auto list = io::demo_gland_list();
  struct Diameters {
    double sheath_mm, bedding_mm;
  };
  for (const Diameters& size : {Diameters{15.2, 10.65}, Diameters{15.0, 10.0}}) {
    const auto count = std::count_if(list.glands.begin(), list.glands.end(), [&](const Gland& g) {
      return g.armour == cable::ArmourKind::wire && g.inner && g.entry_thread.size == 20.0 &&
             holds(g.outer, size.sheath_mm) && holds(*g.inner, size.bedding_mm) &&
             holds(g.armour_clamp, 0.9) &&
             std::find(g.protection.begin(), g.protection.end(), area::Protection::eb) !=
                 g.protection.end();
    });
    CHECK(count >= 1);
  }
}

TEST_CASE("demo_gland_list: sheaths from 3 to 75 mm find an outer seal", "[unit][demo]") {
  const auto list = io::demo_gland_list();
  for (int tenths = 30; tenths <= 750; ++tenths) {
    INFO(tenths);
    CHECK(std::any_of(list.glands.begin(), list.glands.end(),
                      [&](const Gland& g) { return holds(g.outer, tenths / 10.0); }));
  }
}

TEST_CASE("demo_gland_list: figures that go together", "[unit][demo]") {
  for (const Gland& g : io::demo_gland_list().glands) {
    INFO(g.part);
    const bool barrier = sealing_of(g) != gland::Sealing::compression;
    CHECK(g.bedding_end_mm.has_value() == barrier);
    CHECK(g.chamber_bore_mm.has_value() == barrier);
    if (g.inner && g.bore_mm) CHECK(*g.inner->high_mm <= *g.bore_mm);
    if (barrier && g.armour_stop_mm) CHECK(*g.bedding_end_mm > -*g.armour_stop_mm);
    if (g.max_bundle_mm) CHECK(*g.max_bundle_mm < *g.chamber_bore_mm);
  }
}

TEST_CASE("demonstration site: each job file loads and is marked as invented", "[unit][demo]") {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(k_data + "demo/site")) {
    const std::string path = entry.path().string();
    INFO(path);
    const auto job = io::load_job(path);
    CHECK_THAT(job.job.value(), Catch::StartsWith("Invented site:"));
    CHECK(job.sheath_od_mm.has_value());
    CHECK(job.entry == "M20");
    CHECK(job.protection.has_value());
    ++count;
  }
  CHECK(count == 3);
}

TEST_CASE("data README: its table of columns is the reader's table", "[unit][demo]") {
  const io::WholeFile file(k_data + "README.md");
  std::istringstream text{std::string(file.text())};
  std::vector<std::string> names;
  for (std::string line; std::getline(text, line);) {
    if (!line.starts_with("| `") || names.size() == gland::columns().size()) continue;
    const std::string name = line.substr(3, line.find('`', 3) - 3);
    if (names.empty() && name != "part") continue;  // the table of folders
    names.push_back(name);
    INFO(line);
    const auto& column = gland::columns()[names.size() - 1];
    CHECK(name == column.name);
    CHECK_THAT(line, Catch::EndsWith("| " + gland::allowed_text(column) + " |"));
    CHECK((line.find("| **") != std::string::npos) == column.required);
  }
  CHECK(names.size() == gland::columns().size());
}
