#include <algorithm>
#include <array>

#include "core/schedule/cell_text.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/text.hpp"
#include "cutback/written/cores.hpp"

namespace cutback::schedule {
namespace {

/// Puts a value into a field that another cell of the row may have filled already.
std::vector<Fault> set_once(job::JobInput& input, const job::Field& field, std::string_view text,
                            const std::string& where) {
  const auto before = job::text_of(input, field);
  auto faults = job::set_from_text(input, field, text, where);
  if (!faults.empty() || !before || job::text_of(input, field) == before) return faults;
  return {make_fault(ErrorCode::contradiction,
                     "two cells of the row give another " + std::string(field.key), where, text,
                     *before, "make them alike, or leave one out")};
}

/// A cell with cores and size, and what else stands there.
std::vector<Fault> set_written(const Layout& layout, const Given& cell, const std::string& where,
                               job::JobInput& input, RowNotes& notes) {
  const written::CoresReading reading = written::read_cores(cell.text, layout.decimal);
  if (!reading.cores) {
    return {make_fault(ErrorCode::bad_value,
                       "the cores and sizes cannot be read for certain: " + reading.why_not, where,
                       cell.text, "a form such as 4C x 16mm2, 3x25+16, 12G1.5 or 2x2x1.5",
                       "or give them in columns of their own, cores and csa_mm2")};
  }
  const written::Cores& cores = *reading.cores;
  std::vector<Fault> faults;
  const auto put = [&](std::string_view key, const std::string& text) {
    if (text.empty()) return;
    for (Fault& fault : set_once(input, job::field_named(key), text, where)) {
      faults.push_back(std::move(fault));
    }
  };
  const auto figure = [](const std::optional<double>& value) {
    return value ? plain(*value, 9) : std::string();
  };
  put("cores", cores.cores > 0 ? std::to_string(cores.cores) : "");
  put("csa_mm2", figure(cores.csa_mm2));
  put("earth_csa_mm2", figure(cores.earth_csa_mm2));
  put("insulation", cores.insulation);
  put("armour", cores.armour);
  put("armour_material", cores.armour_material);
  if (cores.groups || cores.earth_unknown) notes.no_estimate = true;
  return faults;
}

/// One voltage or two, which no built-in construction has: 11 kV, 6.35/11, 300/500 V.
bool is_other_voltage(std::string_view text) {
  const std::string full = heading_form(text).full;
  std::size_t figures = 0;
  for (std::string_view part : {std::string_view(full)}) {
    for (const std::string_view unit : {"kv", "v"}) {
      if (part.ends_with(unit)) part = trimmed(part.substr(0, part.size() - unit.size()));
    }
    while (!part.empty()) {
      const std::size_t end = std::min(part.find('/'), part.size());
      const auto number = parse_number(trimmed(part.substr(0, end)));
      if (!number || *number <= 0.0) return false;
      ++figures;
      part.remove_prefix(std::min(end + 1, part.size()));
    }
  }
  return figures == 1 || figures == 2;
}

}  // namespace

std::vector<Fault> set_cell(const Layout& layout, const Given& cell, job::JobInput& input,
                            RowNotes& notes) {
  const job::Field& field = *cell.column->field;
  const std::string where = "column " + cell.column->heading;
  if (is_sheet_error(cell.text)) {
    std::string none;
    if (auto fault = to_plain_text(*cell.column, cell.text, layout.decimal, none)) {
      fault->where = where;
      return {std::move(*fault)};
    }
  }
  if (field.key == "cable_size") return set_written(layout, cell, where, input, notes);
  std::string plain_text;
  if (auto fault = to_plain_text(*cell.column, cell.text, layout.decimal, plain_text)) {
    // 4C, 3c+e; and 4C x 16mm2 in a column of sizes.
    const bool counts = field.key == "cores" || field.key == "csa_mm2";
    if (counts && cell.text.front() != '=') return set_written(layout, cell, where, input, notes);
    fault->where = where;
    return {std::move(*fault)};
  }
  if (plain_text.empty()) return {};
  auto faults = set_once(input, field, plain_text, where);
  if (!faults.empty() && field.key == "voltage" && is_other_voltage(plain_text)) {
    notes.no_estimate = true;
    return {};
  }
  return faults;
}

void finish_input(const Layout& layout, const RowNotes& notes, job::JobInput& input) {
  if (!input.evidence) input.evidence = layout.evidence;
  if (!notes.no_estimate) return;
  input.csa_mm2.reset();
  input.earth_csa_mm2.reset();
}

bool decides(const job::Field& field) { return field.key != "job" && field.key != "end"; }

std::vector<Fault> put_cells(const Layout& layout, std::span<const Source> sources, Cells cells,
                             job::JobInput& input, RowNotes& notes) {
  std::vector<Fault> faults;
  std::vector<Given> open;
  for (const Source& source : sources) {
    const Given cell = given(layout, source, cells);
    if (cell.column == nullptr) continue;
    if (cell.by_default != Layout::k_none) {
      open.push_back(cell);
      continue;
    }
    for (Fault& fault : set_cell(layout, cell, input, notes)) faults.push_back(std::move(fault));
  }
  for (const Given& cell : open) {
    // Another cell may have said it: 4C x 16mm2 tells the cores.
    if (job::text_of(input, *cell.column->field)) continue;
    notes.defaults |= std::uint64_t{1} << layout.defaults[cell.by_default].number;
    for (Fault& fault : set_cell(layout, cell, input, notes)) faults.push_back(std::move(fault));
  }
  return faults;
}

job::JobInput input_of(const Layout& layout, Cells cells, Side side, std::vector<Fault>& faults,
                       RowNotes* notes) {
  job::JobInput input;
  RowNotes own;
  RowNotes& said = notes != nullptr ? *notes : own;
  for (Fault& fault : put_cells(layout, layout.sources(side), cells, input, said)) {
    faults.push_back(std::move(fault));
  }
  finish_input(layout, said, input);
  return input;
}

}  // namespace cutback::schedule
