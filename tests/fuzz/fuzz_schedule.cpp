// Any bytes as a schedule: headings are found or faults say why not; every row is decided, a second
// time alike, and never as one that fits without a gland.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "cutback/fit/select.hpp"
#include "cutback/io/csv_rows.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/io/schedule_file.hpp"
#include "cutback/io/standards.hpp"
#include "cutback/schedule/decider.hpp"

using namespace cutback;

namespace {

struct Data {
  tables::Standards standards = io::builtin_standards();
  gland::GlandList list = io::demo_gland_list();
  fit::Selector glands{list.glands, fit::Prefer::price};
};

void decide_all(io::CsvRows& rows, const Data& data) {
  schedule::Format format;
  rows.set_separator(io::find_separator(rows.beginning(), format));
  io::ScheduleFile file(rows, "fuzz", format, std::nullopt);
  const schedule::Settings settings{.standards = &data.standards,
                                    .glands = &data.glands,
                                    .asking = {.purpose = fit::Purpose::schedule, .place = true}};
  schedule::Decider one(file.layout(), settings);
  schedule::Decider other(file.layout(), settings);
  io::RowBlock block;
  while (file.read(block)) {
    file.finish(block);
    for (std::size_t i = 0; i < block.rows; ++i) {
      for (const auto side : {schedule::Side::from, schedule::Side::to}) {
        const auto first = one.decide({block.records[i].fields}, side).decision;
        const auto& second = other.decide({block.records[i].fields}, side).decision;
        if (first.verdict != second.verdict || first.gland != second.gland) std::abort();
        if (first.verdict == Verdict::fits && first.gland == nullptr) std::abort();
      }
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Data k_data;
  try {
    io::CsvRows rows(std::string_view(reinterpret_cast<const char*>(data), size), "fuzz");
    decide_all(rows, k_data);
  } catch (const InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  return 0;
}
