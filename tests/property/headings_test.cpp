// Headings in one or two rows, any of them blank, and columns named by letter or by heading.
#include "cutback/schedule/headings.hpp"

#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"
#include "cutback/schedule/layout.hpp"

using namespace cutback;
using HeadingRow = std::vector<std::string>;

namespace {

HeadingRow any_headings(std::size_t width) {
  static const HeadingRow k_texts{"",           "",          "",          "Cable No",   "From",
                           "To",         "O/D (mm)",  "Bedding",   "Wire (mm)",  "Motor end",
                           "Entry",      "Hole",      "Wall (mm)", "Zone",       "To - Zone 1",
                           "Gland data", "Size",      "Remarks",   "Tag / Size", "A",
                           "B",          "cores",     "mm",        "Qty",        "Drawing No",
                           "Cable Type", "Area Name", "%",         "\xC2\xA0",   "cutback verdict"};
  return *rc::gen::container<HeadingRow>(width, rc::gen::elementOf(k_texts));
}

/// The letter of one of the columns, one past them, or a heading.
std::string any_name(std::size_t width, const std::vector<HeadingRow>& rows) {
  if (*rc::gen::inRange(0, 4) > 0)
    return schedule::column_letter(*rc::gen::inRange<std::size_t>(0, width + 1));
  return *rc::gen::elementOf(*rc::gen::elementOf(rows));
}

}  // namespace

TEST_CASE("headings: whatever they are, a layout or its faults", "[property][schedule]") {
  static const auto k_usual = schedule::usual_headings(io::builtin_standards());
  HeadingRow columns{"from", "to"};
  for (const job::Field* const field : schedule::column_fields()) {
    columns.emplace_back(field->key);
    if (schedule::is_of_end(*field)) columns.push_back("to_" + std::string(field->key));
  }
  CHECK(rc::check("make_layout of any headings", [&] {
    const auto width = *rc::gen::inRange<std::size_t>(1, 10);
    std::vector<HeadingRow> rows{any_headings(width)};
    if (*rc::gen::arbitrary<bool>()) rows.push_back(any_headings(width));
    const auto headings = schedule::join_headings(rows);
    schedule::Format format;
    if (*rc::gen::inRange(0, 4) > 0) format.usual = &k_usual;
    format.ends = 1;
    const auto named = *rc::gen::inRange(0, 5);
    for (int i = 0; i < named; ++i) {
      format.headings.emplace_back(*rc::gen::elementOf(columns), any_name(width, rows));
    }
    if (*rc::gen::inRange(0, 4) == 0) format.ignored.push_back(any_name(width, rows));
    const std::vector<HeadingRow> sample(2, any_headings(width));
    (void)schedule::known_headings(headings, format);
    try {
      const schedule::Layout layout = schedule::make_layout(headings, format, "t.csv", sample);
      RC_ASSERT(layout.tag < width);
      for (const schedule::Column& column : layout.columns) {
        RC_ASSERT(column.cell < width);
        RC_ASSERT(!column.heading.empty());
      }
      // What was asked for is read, and can be asked for again.
      for (const auto& [own, theirs] : format.headings) {
        RC_ASSERT(std::any_of(layout.mapping.begin(), layout.mapping.end(),
                              [&](const auto& each) { return each.column == own; }));
      }
      for (const schedule::Mapped& each : layout.mapping) RC_ASSERT(!each.heading.empty());
      std::vector<std::string_view> cells(sample.front().begin(), sample.front().end());
      std::vector<Fault> faults;
      (void)schedule::input_of(layout, cells, layout.ends().front(), faults);
    } catch (const InputError& error) {
      RC_ASSERT(!error.faults().empty());
    }
  }));
}
