#include "run/collect_ends.hpp"

#include <string>
#include <utility>

#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/decider.hpp"
#include "cutback/schedule/groups.hpp"
#include "run/row_doubts.hpp"
#include "run/tag_register.hpp"

namespace cutback::run {
namespace {

using schedule::Cells;
using schedule::EndRecord;
using schedule::Layout;
using schedule::Side;

/// 15.0 and 15 are one reading.
std::string one_notation(const measure::Readings& readings) {
  std::string text;
  for (const measure::Place& place : readings.places) {
    if (!text.empty()) text += ',';
    for (std::size_t i = 0; i < place.readings_mm.size(); ++i) {
      text += (i > 0 ? "+" : "") + plain(place.readings_mm[i], 6);
    }
  }
  return text;
}

/// What an end says, each value in one notation; a cell that cannot be read stays as it stands.
void put_values(const Layout& layout, Cells cells, Side side, EndRecord& end) {
  const auto add = [&](std::string_view key, std::string text) {
    if (!text.empty()) end.values.emplace_back(key, std::move(text));
  };
  std::vector<Fault> faults;
  const job::JobInput input = schedule::input_of(layout, cells, side, faults);
  for (const job::Field& field : job::fields()) {
    if (!schedule::decides(field) || field.key == "tag") continue;
    auto text = job::text_of(input, field);
    if (!text) continue;
    using Readings = std::optional<measure::Readings> job::JobInput::*;
    if (const auto* const member = std::get_if<Readings>(&field.member)) {
      text = one_notation(*(input.**member));
    }
    add(field.key, std::move(*text));
  }
  for (const schedule::Source& source : layout.sources(side)) {
    const schedule::Given cell = schedule::given(layout, source, cells);
    const std::string_view key = source.field->key;
    // Columns of a schedule's own have no place in a job.
    const bool own = key == "cable_size" || key == "type";
    // What it says stands in the fields of the job already.
    if (!cell.is_cell() || !schedule::decides(*source.field) || key == "ambient_c") continue;
    if (own || !job::text_of(input, *source.field)) add(key, std::string(cell.text));
  }
  const std::size_t place = side == Side::from ? layout.from
                            : side == Side::to ? layout.to
                                               : Layout::k_none;
  add(side == Side::from ? "from" : "to", std::string(schedule::cell(cells, place)));
  // What the take-off may be grouped by.
  add("area_name", std::string(schedule::cell(cells, layout.area_name)));
  add("drawing", std::string(schedule::cell(cells, layout.drawing)));
  if (layout.quantity != Layout::k_none || layout.quantity_default) {
    const auto count = schedule::count_of(layout, cells);
    add("quantity", count && count->unclear.empty()
                        ? std::to_string(count->cables)
                        : std::string(schedule::cell(cells, layout.quantity)));
  }
}

}  // namespace

CollectedEnds collect_ends(std::span<io::ScheduleFile* const> files,
                           const schedule::Settings& settings, schedule::GroupBy by) {
  CollectedEnds all;
  TagRegister tags;
  TitleOver titles;
  std::string room;
  for (io::ScheduleFile* const file : files) {
    const Layout& layout = file->layout();
    schedule::Decider decider(layout, settings);
    const RowDoubts doubts(layout);
    titles.begin(*file);
    io::RowBlock block;
    while (file->read(block)) {
      file->finish(block);
      titles.begin(block);
      for (std::size_t i = 0; i < block.rows; ++i) {
        const io::CsvRecord& record = block.records[i];
        ++all.tally.rows;
        const auto fault = schedule::fault_of_row(layout, record.fields);
        const schedule::RowCount count =
            schedule::count_of(layout, record.fields).value_or(schedule::RowCount{});
        const std::size_t hash = name_hash(layout, record.fields, room);
        const bool again =
            row_above(tags, layout, record.fields, hash, file->row_id(record.line)).has_value();
        const OutsideRow outside{.above = again ? "a row above" : "",
                                 .title = titles.over(record.line)};
        const std::string_view group = schedule::group_of_row(layout, record.fields, by);
        for (const Side side : layout.ends()) {
          EndRecord& end = all.ends.emplace_back();
          end.tag = schedule::tag_of(layout, record.fields);
          end.end = schedule::end_name(layout, record.fields, side);
          end.line = record.line;
          end.source = file->source_name();
          put_values(layout, record.fields, side, end);
          schedule::Decision faulty;
          if (fault) faulty.faults.push_back(*fault);
          schedule::Decision decision =
              fault ? faulty : decider.decide({record.fields, record.bare}, side).decision;
          doubts.of(record.fields, side, count, outside).say(decision);
          end.verdict = schedule::verdict_word(decision);
          if (decision.gland != nullptr) end.part = decision.gland->part;
          all.tally.add(decision, count.cables, group);
        }
      }
      titles.end();
    }
  }
  return all;
}

}  // namespace cutback::run
