#include "cutback/schedule/decider.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "cutback/io/gland_list.hpp"
#include "cutback/schedule/defaults.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using schedule::Decision;
using schedule::Side;

namespace {

using Words = std::vector<std::string_view>;

const Words k_headings{"tag",       "type",        "evidence",    "sheath_od_mm", "bedding_mm",
                       "armour_mm", "armour",      "od_allow_mm", "from_entry",   "to_entry",
                       "entry",     "protection",  "zone",        "cores",        "csa_mm2",
                       "reach_mm",  "to_reach_mm", "strip_mm",    "bedding_made"};

/// One of a few words, so that rows come again whole and in parts; some cannot be used.
std::string any_cell(std::string_view heading) {
  const auto one_of = [](std::vector<std::string> words) {
    return *rc::gen::elementOf(std::move(words));
  };
  if (heading == "type") return one_of({"", "", "A1", "a 1", "guess", "pairs", "A2"});
  if (heading == "evidence") return one_of({"", "", "", "measured", "estimated"});
  if (heading == "sheath_od_mm") {
    return one_of({"15", "15.25", "14.9+15.1", "24", "38.5", " 15", "+15", "0", "301", "x", ""});
  }
  if (heading == "bedding_mm") return one_of({"10", "10.05", "9.9+10.1", "17", "", "16 mm"});
  if (heading == "armour_mm") return one_of({"0.9", "1.25", "1.4", "0.9+0.92", ""});
  if (heading == "armour") return one_of({"", "", "", "none", "braid", "wire"});
  if (heading == "od_allow_mm") return one_of({"", "0.3", "-1"});
  if (heading.ends_with("entry")) return one_of({"", "M20", "M25", "M99"});
  if (heading == "protection") return one_of({"", "", "e", "d"});
  if (heading == "zone") return one_of({"", "1", "21"});
  if (heading == "cores") return one_of({"", "3", "4", "1"});
  if (heading == "csa_mm2") return one_of({"", "4", "4", "95"});
  if (heading.ends_with("reach_mm")) return one_of({"", "200", "180", "0"});
  if (heading == "strip_mm") return one_of({"", "10", "500"});
  if (heading == "bedding_made") return one_of({"", "extruded"});
  return "C1";
}

/// The parts of a line between its commas.
Words split(std::string_view line) {
  Words parts;
  for (;;) {
    const std::size_t comma = line.find(',');
    parts.push_back(line.substr(0, comma));
    if (comma == std::string_view::npos) return parts;
    line.remove_prefix(comma + 1);
  }
}

void must_be_alike(const Decision& got, const Decision& want) {
  RC_ASSERT(got.faults.size() == want.faults.size());
  for (std::size_t i = 0; i < got.faults.size(); ++i) {
    // Of a row the place is a column, of a job by itself the key.
    RC_ASSERT(got.faults[i].what == want.faults[i].what);
    RC_ASSERT(got.faults[i].given == want.faults[i].given);
    RC_ASSERT(got.faults[i].allowed == want.faults[i].allowed);
    RC_ASSERT(got.faults[i].hint == want.faults[i].hint);
  }
  RC_ASSERT(got.verdict == want.verdict);
  RC_ASSERT(got.gland == want.gland);
  RC_ASSERT(got.fits == want.fits);
  RC_ASSERT(got.outer_margin_mm == want.outer_margin_mm);
  RC_ASSERT(got.inner_margin_mm == want.inner_margin_mm);
  RC_ASSERT(got.armour_margin_mm == want.armour_margin_mm);
  RC_ASSERT(got.barrier == want.barrier);
  RC_ASSERT(got.armour_cut_mm == want.armour_cut_mm);
  RC_ASSERT(got.sheath_cut_mm == want.sheath_cut_mm);
  RC_ASSERT(got.bedding_cut_mm == want.bedding_cut_mm);
  RC_ASSERT(got.reason == want.reason);
  RC_ASSERT(got.group == want.group);
  RC_ASSERT(got.change == want.change);
  RC_ASSERT(got.nearest == want.nearest);
  RC_ASSERT(got.remarks == want.remarks);
  RC_ASSERT(got.sheath_od == want.sheath_od);
  RC_ASSERT(got.bedding == want.bedding);
  RC_ASSERT(got.armour == want.armour);
  RC_ASSERT(got.defaults == want.defaults);
  RC_ASSERT(got.proven == want.proven);
  RC_ASSERT((got.accessories == nullptr) == (want.accessories == nullptr));
  if (got.accessories != nullptr) RC_ASSERT(*got.accessories == *want.accessories);
}

}  // namespace

schedule::CableTypes some_types() {
  schedule::Format format;
  format.of_types = true;
  const schedule::Layout layout =
      schedule::make_layout(Words{"type", "sheath_od_mm", "bedding_mm", "armour_mm", "od_allow_mm",
                                  "cores", "csa_mm2", "evidence", "cable_size", "circular"},
                            format, "types.csv");
  schedule::CableTypes types("types.csv");
  for (const Words& row : {Words{"A1", "15.2", "10.6", "0.9", "0.4", "3", "4", "", "", "yes"},
                           Words{"guess", "24", "", "1.25", "", "4", "", "estimated", "", ""},
                           Words{"pairs", "15.5", "", "0.9", "", "", "", "", "2x2x1.5", ""}}) {
    REQUIRE(types.add(layout, row, "types.csv").empty());
  }
  return types;
}

TEST_CASE("decider: what is remembered changes no answer", "[property][schedule]") {
  const gland::GlandList list = io::demo_gland_list();
  const fit::Selector selector(list.glands, fit::Prefer::price);
  const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
  const schedule::CableTypes types = some_types();
  int fits = 0;
  int unusable = 0;
  CHECK(rc::check("the same as decide() for the end by itself", [&] {
    schedule::Format format;
    if (*rc::gen::inRange(0, 3) == 0) format.evidence = measure::Evidence::datasheet;
    for (const auto& [column, text] :
         {std::pair("bedding_mm", "10.05"), std::pair("entry", "M20"),
          std::pair("from_entry", "M25"), std::pair("zone", "none"), std::pair("cores", "3"),
          std::pair("reach_mm", "150"), std::pair("wall_mm", "3")}) {
      if (*rc::gen::inRange(0, 4) == 0) format.defaults.push_back({column, text});
    }
    RC_ASSERT(schedule::check_defaults(format).empty());
    if (*rc::gen::inRange(0, 3) > 0) format.types = &types;
    const schedule::Layout layout = schedule::make_layout(k_headings, format, "t.csv");
    schedule::Decider decider(layout, settings);
    for (int row = 0; row < 25; ++row) {
      std::vector<std::string> texts;
      for (const std::string_view heading : k_headings) texts.push_back(any_cell(heading));
      const Words cells(texts.begin(), texts.end());
      const std::string line = fmt::format("{}", fmt::join(texts, ","));
      const Words bare_cells = split(line);
      const bool bare = line.find('"') == std::string::npos && bare_cells.size() == cells.size();
      for (const Side side : layout.ends()) {
        std::vector<Fault> faults;
        schedule::RowNotes notes;
        const job::JobInput input = schedule::input_of(layout, cells, side, faults, &notes);
        Decision want;
        if (faults.empty()) {
          want = schedule::decide(input, settings, nullptr, notes);
        } else {
          want.faults = faults;
        }
        want.defaults = notes.defaults;
        ++(want.usable() ? fits : unusable);
        std::uint64_t taken = 0;
        const auto fitting = decider.fitting({cells}, side, &taken);
        RC_ASSERT(fitting.size() == want.fits);
        const bool asked = want.usable() && want.sheath_od.has_value();
        if (asked) RC_ASSERT(taken == notes.defaults);
        if (asked && !notes.no_estimate) {
          const job::Job job = job::resolve(input, *settings.standards, job::Unstated::by_notation);
          RC_ASSERT(fitting ==
                    selector.fitting(fit::ask(job, *settings.standards, settings.asking)));
        }
        must_be_alike(decider.decide({cells}, side).decision, want);
        must_be_alike(decider.decide({cells}, side).decision, want);
        if (bare) must_be_alike(decider.decide({bare_cells, true}, side).decision, want);
      }
    }
  }));
  CHECK(fits > 100);
  CHECK(unusable > 100);
}

TEST_CASE("decider: figures that share a place in memory stay apart", "[property][schedule]") {
  const gland::GlandList list = io::demo_gland_list();
  const fit::Selector selector(list.glands, fit::Prefer::price);
  const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
  const schedule::Layout layout = schedule::make_layout(
      Words{"tag", "sheath_od_mm", "bedding_mm", "armour_mm", "od_allow_mm", "bedding_allow_mm"},
      {}, "t.csv");
  schedule::Decider decider(layout, settings);
  // So many different figures that some of one end meet: about one end in three thousand.
  std::size_t different = 0;
  for (int i = 0; i < 40'000; ++i) {
    const double bedding = 7.0 + 0.0011 * i;
    const std::string sheath = fmt::format("{:.4f}", bedding + 4.9 + 0.0001 * (i % 977));
    const std::string under = fmt::format("{:.4f}", bedding);
    const std::string wire = fmt::format("{:.5f}", 0.86 + 0.000002 * i);
    const Words cells{"C1", sheath, under, wire, "0.3", "0.3"};
    std::vector<Fault> faults;
    const job::JobInput input = schedule::input_of(layout, cells, Side::both, faults);
    const Decision want = schedule::decide(input, settings);
    const bool fits = !decider.fitting({cells}, Side::both).empty();
    const Decision& got = decider.decide({cells}, Side::both).decision;
    if (got.verdict != want.verdict || got.gland != want.gland || got.reason != want.reason ||
        got.outer_margin_mm != want.outer_margin_mm ||
        got.inner_margin_mm != want.inner_margin_mm ||
        got.armour_margin_mm != want.armour_margin_mm || got.fits != want.fits ||
        got.wavering.one != want.wavering.one || got.remarks != want.remarks ||
        fits != (want.verdict == Verdict::fits)) {
      ++different;
    }
  }
  CHECK(different == 0);
}

TEST_CASE("decider: one text in columns of two fields is not one end", "[property][schedule]") {
  const gland::GlandList list = io::demo_gland_list();
  const fit::Selector selector(list.glands, fit::Prefer::price);
  const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
  const schedule::Layout layout =
      schedule::make_layout(Words{"tag", "sheath_od_mm", "bedding_mm", "armour_mm", "entry", "hole",
                                  "reach_mm", "strip_mm", "from_wall_mm", "to_washer_mm"},
                            {}, "t.csv");
  schedule::Decider decider(layout, settings);
  const Words cells{"C1",        "15.2+15.2", "10.1+10.1", "0.9", "M20",
                    "clearance", "200",       "10",        "3",   "3"};
  std::vector<std::optional<double>> cuts;
  for (const Side side : layout.ends()) {
    std::vector<Fault> faults;
    const job::JobInput input = schedule::input_of(layout, cells, side, faults);
    REQUIRE(faults.empty());
    const Decision want = schedule::decide(input, settings);
    const Decision& got = decider.decide({cells}, side).decision;
    CHECK(got.gland == want.gland);
    CHECK(got.reason == want.reason);
    CHECK(got.armour_cut_mm == want.armour_cut_mm);
    CHECK(got.bedding_cut_mm == want.bedding_cut_mm);
    cuts.push_back(got.armour_cut_mm);
  }
  CHECK(cuts[0] != cuts[1]);  // else the two ends would be alike in any case
}
