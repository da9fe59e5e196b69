#include <algorithm>
#include <array>
#include <cmath>

#include "core/schedule/cell_text.hpp"
#include "core/schedule/cell_words.hpp"
#include "core/schedule/spaces.hpp"
#include "cutback/compare.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/text.hpp"
#include "cutback/written/cores.hpp"
#include "cutback/written/written.hpp"

namespace cutback::schedule {
namespace {

constexpr std::string_view k_type = "type";

/// Puts a value into a field that another cell of the row may have filled already.
std::vector<Fault> set_once(job::JobInput& input, const job::Field& field, std::string_view text,
                            const std::string& where) {
  const auto before = job::text_of(input, field);
  auto faults = job::set_from_text(input, field, text, where);
  if (!faults.empty() || !before || job::text_of(input, field) == before) return faults;
  return {make_fault(ErrorCode::contradiction,
                     "two cells of the row say " + std::string(field.key) + " differently", where,
                     text, *before, "make them alike, or leave one out")};
}

std::vector<Fault> set_value(const Layout& layout, const Given& cell, const std::string& where,
                             job::JobInput& input, RowNotes& notes);

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
  const std::string small = small_letters(cell.text);
  const std::size_t mm = small.find("mm");
  const bool square =
      small.find("sq") != std::string::npos || small.find("mm2") != std::string::npos ||
      small.find("mm\xC2\xB2") != std::string::npos || small.find("mm^2") != std::string::npos;
  if (mm != std::string::npos && !square) {
    notes.taken.push_back("\"" + std::string(cell.text) + "\" for a size in mm2");
  }
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
  if (!cores.voltage.empty()) {
    Column voltage = *cell.column;
    voltage.field = &job::field_named("voltage");
    for (Fault& fault :
         set_value(layout, {.text = cores.voltage, .column = &voltage}, where, input, notes)) {
      faults.push_back(std::move(fault));
    }
  }
  return faults;
}

/// A cell of cores and size; a number alone is the size where the cores stand in a column.
std::vector<Fault> set_size(const Layout& layout, const Given& cell, const std::string& where,
                            job::JobInput& input, RowNotes& notes) {
  const bool cores = std::any_of(layout.columns.begin(), layout.columns.end(),
                                 [](const Column& each) { return each.field->key == "cores"; });
  std::string figure(cell.text);
  if (layout.decimal == ',') std::replace(figure.begin(), figure.end(), ',', '.');
  if (!cores || !parse_number(figure)) return set_written(layout, cell, where, input, notes);
  return set_once(input, job::field_named("csa_mm2"), figure, where);
}

std::vector<Fault> set_words(const CellSays& says, const std::string& where, job::JobInput& input,
                             RowNotes& notes) {
  std::vector<Fault> faults;
  for (const auto& [field, value] : says.values) {
    for (Fault& fault : set_once(input, *field, value, where)) faults.push_back(std::move(fault));
  }
  if (!says.taken.empty()) notes.taken.push_back(says.taken);
  return faults;
}

/// A type that no file explains: XLPE/SWA/PVC says its layers; of any other nothing is estimated.
std::vector<Fault> set_layers(const Given& cell, job::JobInput& input, RowNotes& notes) {
  const auto layers = written::read_layers(cell.text);
  if (!layers || layers->armour.empty()) {
    notes.no_estimate = true;
    return {};
  }
  std::vector<Fault> faults;
  const std::string where = "column " + cell.column->heading;
  for (const auto& [key, text] :
       {std::pair("insulation", &layers->insulation), std::pair("armour", &layers->armour),
        std::pair("armour_material", &layers->armour_material)}) {
    if (text->empty()) continue;
    for (Fault& fault : set_once(input, job::field_named(key), *text, where)) {
      faults.push_back(std::move(fault));
    }
  }
  return faults;
}

/// 22.5±0.5, 22.5 +/- 0.5: a diameter and its tolerance; nothing for anything else.
struct Tolerated {
  std::string_view figure;
  std::string_view allow;
};
std::optional<Tolerated> tolerated(std::string_view text) {
  for (const std::string_view sign : {"\xC2\xB1", "+/-", "+-"}) {
    const std::size_t at = text.find(sign);
    if (at == std::string_view::npos) continue;
    const Tolerated parts{trimmed(text.substr(0, at)), trimmed(text.substr(at + sign.size()))};
    if (parts.figure.empty() || parts.allow.empty()) return std::nullopt;
    return parts;
  }
  return std::nullopt;
}

/// What a tolerance of this diameter is: od_allow_mm of sheath_od_mm.
const job::Field* allowance_of(const job::Field& field) {
  if (field.key == "sheath_od_mm") return &job::field_named("od_allow_mm");
  if (field.key == "bedding_mm") return &job::field_named("bedding_allow_mm");
  return field.key == "armour_mm" ? &job::field_named("armour_allow_mm") : nullptr;
}

bool has_wide_space(std::string_view text) {
  return std::any_of(k_wide_spaces.begin(), k_wide_spaces.end(), [&](std::string_view space) {
    return text.find(space) != std::string_view::npos;
  });
}

std::string plain_spaces(std::string_view text) {
  std::string out(text);
  for (const std::string_view space : k_wide_spaces) {
    for (std::size_t at = out.find(space); at != std::string::npos; at = out.find(space, at)) {
      out.replace(at, space.size(), " ");
    }
  }
  return std::string(trimmed(out));
}

/// The figures of -20/+50, -20 to 50 or 40 deg C; nothing for anything else.
std::optional<std::vector<double>> temperatures(std::string_view raw, char decimal) {
  std::string text = small_letters(raw);
  if (decimal == ',') std::replace(text.begin(), text.end(), ',', '.');
  const auto replace = [&](std::string_view what, std::string_view by) {
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at)) {
      text.replace(at, what.size(), by);
      at += by.size();
    }
  };
  replace("\xE2\x88\x92", "-");  // a minus sign
  for (const std::string_view unit : {"\xC2\xB0"
                                      "c",
                                      "deg c", "degc", "\xC2\xB0", "c"}) {
    replace(unit, " ");
  }
  for (const std::string_view between : {"\xE2\x80\xA6", "\xE2\x80\x93", "...", "..", "to", "/"}) {
    replace(between, " ");
  }
  std::vector<double> figures;
  for (std::string_view word : split_words(text)) {
    // 20-50: no sign stands behind a figure.
    const std::size_t dash = word.find('-', 1);
    for (const std::string_view part :
         {word.substr(0, dash),
          dash == std::string_view::npos ? std::string_view() : word.substr(dash + 1)}) {
      if (part.empty() || part == "-") continue;
      const auto figure = parse_number(part.starts_with('+') ? part.substr(1) : part);
      if (!figure) return std::nullopt;
      figures.push_back(*figure);
    }
  }
  if (figures.empty() || figures.size() > 2) return std::nullopt;
  return figures;
}

/// One temperature is the greatest where it is above freezing, else the least: common practice, no
/// source. Either asks more of a gland than none.
std::vector<Fault> set_ambient(const Layout& layout, const Given& cell, const std::string& where,
                               job::JobInput& input, RowNotes& notes) {
  const auto figures = temperatures(cell.text, layout.decimal);
  if (!figures) {
    return {make_fault(ErrorCode::bad_value, "this is no range of temperatures", where, cell.text,
                       "-20/+50, -20 to 50, or one temperature in deg C",
                       "or give them in columns of their own, ambient_min_c and ambient_max_c")};
  }
  std::vector<Fault> faults;
  const auto put = [&](std::string_view key, double figure) {
    for (Fault& fault : set_once(input, job::field_named(key), plain(figure, 9), where)) {
      faults.push_back(std::move(fault));
    }
  };
  if (figures->size() == 1) {
    const double figure = figures->front();
    const char* const key = figure > 0.0 ? "ambient_max_c" : "ambient_min_c";
    put(key, figure);
    notes.taken.push_back("\"" + std::string(cell.text) + "\" for " + key + " " + plain(figure, 9));
    return faults;
  }
  put("ambient_min_c", std::min(figures->front(), figures->back()));
  put("ambient_max_c", std::max(figures->front(), figures->back()));
  return faults;
}

/// No rating that a built-in construction has: that of the system, or of another cable.
std::vector<Fault> set_other_voltage(const Given& cell, job::JobInput& input, RowNotes& notes) {
  std::string_view text = cell.text;
  const std::string small = small_letters(text);
  for (const std::string_view sign : {"u0/u", "uo/u"}) {
    if (!small.starts_with(sign)) continue;
    text = trimmed(text.substr(sign.size()), " :=()\t");
    const auto& voltage = job::field_named("voltage");
    const auto taken = written::take(written::asked_of(voltage), text, "");
    if (set_once(input, voltage, taken.text, "").empty()) {
      notes.taken.push_back("\"" + std::string(cell.text) + "\" for voltage " + taken.text);
      return {};
    }
  }
  // 450/750 V is the rating of another cable; 400/230 V, with the greater first, a system's.
  const std::size_t stroke = text.find('/');
  const auto first = parse_number(trimmed(text.substr(0, stroke)));
  const std::string_view rest =
      stroke == std::string_view::npos ? std::string_view() : trimmed(text.substr(stroke + 1));
  const auto second = parse_number(rest.substr(0, rest.find_first_not_of("0123456789.")));
  const bool rating = stroke != std::string_view::npos && !(first && second && *first > *second);
  const bool kilovolts = heading_form(cell.column->heading).unit == "kV";
  if (!rating && !is_beyond_low_voltage(text, kilovolts)) {
    notes.taken.push_back("\"" + std::string(cell.text) +
                          "\" for the voltage of a system up to 1 kV");
    return {};
  }
  notes.no_estimate = true;
  notes.taken.push_back("\"" + std::string(cell.text) +
                        "\" for a voltage of which nothing is estimated");
  return {};
}

/// About 100 m, 100-120: no gland hangs on it, and where a fault is asked the length is not known.
std::vector<Fault> say_no_length(const Given& cell, RowNotes& notes) {
  notes.taken.push_back("\"" + std::string(cell.text) + "\" for no certain length");
  return {};
}

/// That there is none.
bool says_none(std::string_view text) {
  constexpr std::array<std::string_view, 6> k_words{"no",           "none",     "nil",
                                                    "not required", "not reqd", "not needed"};
  const std::string small = small_letters(text);
  return std::find(k_words.begin(), k_words.end(), small) != k_words.end();
}

/// A mark that means the value of the row above.
bool is_ditto(std::string_view text) {
  constexpr std::array<std::string_view, 11> k_marks{
      "\"",   "''",    "\xE2\x80\x9D", "\xE2\x80\x9C", "\xE2\x80\xB3", "\xE3\x80\x83",
      "-\"-", "ditto", "do",           "do.",          "as above"};
  std::string small = small_letters(text);
  if (small.size() > 2 && small.front() == '-' && small.back() == '-') {
    small = small.substr(1, small.size() - 2);  // -do-
  }
  return std::find(k_marks.begin(), k_marks.end(), small) != k_marks.end();
}

}  // namespace

std::vector<Fault> set_cell(const Layout& layout, const Given& cell, job::JobInput& input,
                            RowNotes& notes) {
  const std::string where = "column " + cell.column->heading;
  if (is_sheet_error(cell.text)) {
    std::string none;
    if (auto fault = to_plain_text(*cell.column, cell.text, layout.decimal, none)) {
      fault->where = where;
      return {std::move(*fault)};
    }
  }
  if (const OwnWord* const word = layout.word_of(cell.text)) {
    notes.taken.push_back("\"" + std::string(cell.text) + "\" for " + word->value + " (--word)");
    Given own = cell;
    own.text = word->value;
    return set_value(layout, own, where, input, notes);
  }
  if (has_wide_space(cell.text)) {
    const std::string spaced = plain_spaces(cell.text);
    Given own = cell;
    own.text = spaced;
    return set_value(layout, own, where, input, notes);
  }
  auto faults = set_value(layout, cell, where, input, notes);
  if (faults.empty()) return faults;
  if (is_ditto(cell.text)) {
    return {make_fault(ErrorCode::bad_value, "a ditto mark is not filled in from the row above",
                       where, cell.text, job::allowed_text(*cell.column->field),
                       "write the value out")};
  }
  // A word that the trade does not share has a meaning on this site.
  for (Fault& fault : faults) {
    const bool words = cell.column->field->kind == job::FieldKind::words;
    if (!words || !fault.hint.empty() || fault.code != ErrorCode::bad_value) continue;
    fault.hint = "write one of these, or say what it stands for: --word \"" +
                 std::string(cell.text) + "\"=VALUE";
  }
  return faults;
}

namespace {

std::vector<Fault> set_value(const Layout& layout, const Given& cell, const std::string& where,
                             job::JobInput& input, RowNotes& notes) {
  const job::Field& field = *cell.column->field;
  if (const job::Field* const allowance = allowance_of(field)) {
    if (const auto parts = tolerated(cell.text)) {
      Column column = *cell.column;
      const Given figure{.text = parts->figure, .column = &column};
      auto faults = set_value(layout, figure, where, input, notes);
      column.field = allowance;
      const Given allow{.text = parts->allow, .column = &column};
      for (Fault& fault : set_value(layout, allow, where, input, notes)) {
        faults.push_back(std::move(fault));
      }
      return faults;
    }
  }
  const bool is_length = field.key == "length_m" && cell.is_cell();
  if (field.key == "cable_size") return set_size(layout, cell, where, input, notes);
  if (field.key == "system_voltage") {
    const bool kilovolts = heading_form(cell.column->heading).unit == "kV";
    if (is_beyond_low_voltage(cell.text, kilovolts)) notes.no_estimate = true;
    return {};
  }
  if (field.key == "ambient_c") return set_ambient(layout, cell, where, input, notes);
  if (field.key == "adaptor" && says_none(cell.text)) return {};
  if (has_words(field)) {
    try {
      if (const auto says = words_of_cell(layout, *cell.column, cell.text, where)) {
        return set_words(*says, where, input, notes);
      }
    } catch (const InputError& error) {
      return error.faults();
    }
  }
  std::string plain_text;
  if (auto fault = to_plain_text(*cell.column, cell.text, layout.decimal, plain_text)) {
    // 4C, 3c+e; and 4C x 16mm2 in a column of sizes.
    const bool counts = field.key == "cores" || field.key == "csa_mm2";
    if (counts && cell.text.front() != '=') return set_written(layout, cell, where, input, notes);
    if (is_length) return say_no_length(cell, notes);
    fault->where = where;
    return {std::move(*fault)};
  }
  if (plain_text.empty()) return {};
  auto faults = set_once(input, field, plain_text, where);
  if (!faults.empty() && field.key == "voltage" &&
      faults.front().code != ErrorCode::contradiction) {
    return set_other_voltage(cell, input, notes);
  }
  if (!faults.empty() && is_length) return say_no_length(cell, notes);
  return faults;
}

}  // namespace

const TypeValue* RowType::find(const job::Field& field) const {
  if (type == nullptr || (!diameters && field.feeds.into == job::Feeds::Into::figure)) {
    return nullptr;
  }
  return type->find(field);
}

RowType row_type(const Layout& layout, Cells cells) {
  RowType row;
  if (layout.types == nullptr) return row;
  row.name = cell(cells, layout.type);
  if (layout.is_not_given(row.name)) {
    const auto by_default =
        std::find_if(layout.defaults.begin(), layout.defaults.end(),
                     [](const Default& each) { return each.column.field->key == k_type; });
    if (by_default == layout.defaults.end()) return {};
    row.name = by_default->text;
  }
  row.type = layout.types->find(row.name);
  if (row.type == nullptr) return row;
  for (std::size_t i = 0; i < layout.diameters.size(); ++i) {
    if (!layout.is_not_given(cell(cells, layout.diameters[i]))) row.own |= 1U << i;
  }
  row.diameters = row.own == 0 || row.type->evidence != measure::Evidence::estimated;
  return row;
}

namespace {

/// A sentence where they differ; else empty.
std::string other_diameter(const CableType& type, const job::Field& field,
                           const measure::Readings& own) {
  const TypeValue* const value = type.find(field);
  if (value == nullptr || own.text == value->text) return {};
  double sum = 0.0;
  std::size_t count = 0;
  for (const measure::Place& place : own.places) {
    for (const double reading : place.readings_mm) {
      sum += reading;
      ++count;
    }
  }
  const double mean = sum / static_cast<double>(count);
  const double typed = measure::Readings(value->text, "").places.front().readings_mm.front();
  // Readings of a cable as made may differ from its book; another single figure is another book.
  const double room = count == 1                  ? 0.0
                      : field.key == "armour_mm"  ? job::k_wire_allow_mm
                      : field.key == "bedding_mm" ? job::k_bedding_allow_mm
                                                  : job::k_od_allow_mm;
  if (at_most(std::abs(mean - typed), room)) return {};
  return "the row has " + std::string(field.key) + " " + own.text + ", its type " + type.name +
         " has " + value->text + "; the row counts";
}

void put_typed(const TypeValue& value, const CableType& type, job::JobInput& input,
               RowNotes& notes) {
  const auto before = job::text_of(input, *value.field);
  if (!before) {
    const auto faults = job::set_from_text(input, *value.field, value.text, "type " + type.name);
    if (!faults.empty()) throw InternalError("a type was not looked at: " + type.name);
    return;
  }
  if (value.field->feeds.into == job::Feeds::Into::figure || *before == value.text) return;
  notes.remarks.push_back("the row has " + std::string(value.field->key) + " " + *before +
                          ", its type " + type.name + " has " + value.text + "; the row counts");
}

/// What of a row with a type its figures are worth: never more than the weaker of the two.
void put_evidence(const RowType& row, RowNotes& notes, job::JobInput& input) {
  using measure::Evidence;
  const CableType& type = *row.type;
  unsigned typed = 0;
  for (unsigned i = 0; i < 3; ++i) {
    constexpr std::array<std::string_view, 3> k_keys{"sheath_od_mm", "bedding_mm", "armour_mm"};
    if (type.find(job::field_named(k_keys[i])) != nullptr) typed |= 1U << i;
  }
  if (!row.diameters && (typed & ~row.own) != 0) {
    notes.remarks.push_back("the diameters of the type " + type.name +
                            " are estimates, and are not taken beside those of the row");
  }
  if ((typed & ~row.own) == 0 || !row.diameters) return;
  if (row.own == 0) {
    input.evidence = type.evidence;
    return;
  }
  if (input.evidence != Evidence::measured) return;
  // By their notation: several readings are measured, one figure is a datasheet's.
  input.evidence.reset();
  notes.remarks.push_back("some figures are those of the type " + type.name +
                          ": of the row's own only several readings count as measured");
}

}  // namespace

void finish_input(const Layout& layout, const RowType& type, RowNotes& notes,
                  job::JobInput& input) {
  if (!input.evidence) input.evidence = layout.evidence;
  if (!layout.asked.empty()) input.asked = layout.asked;
  if (type.type != nullptr) put_evidence(type, notes, input);
  if (!notes.no_estimate) return;
  input.csa_mm2.reset();
  input.earth_csa_mm2.reset();
}

bool decides(const job::Field& field) { return field.key != "job" && field.key != "end"; }

std::string own_diameter_remark(const Layout& layout, const Source& source, Cells cells,
                                const CableType& type) {
  if (source.field->feeds.into != job::Feeds::Into::figure) return {};
  const Given cell = given(layout, source, cells);
  if (!cell.is_cell()) return {};
  job::JobInput own;
  RowNotes none;
  if (!set_cell(layout, cell, own, none).empty()) return {};
  for (const auto* const readings : {&own.sheath_od_mm, &own.bedding_mm, &own.armour_mm}) {
    if (*readings) return other_diameter(type, *source.field, **readings);
  }
  return {};
}

std::vector<Fault> put_cells(const Layout& layout, std::span<const Source> sources, Cells cells,
                             const RowType& type, job::JobInput& input, RowNotes& notes) {
  std::vector<Fault> faults;
  std::vector<Given> open;
  for (const Source& source : sources) {
    const Given cell = given(layout, source, cells, type);
    if (cell.is_blank() || cell.typed != nullptr) continue;
    if (source.field->key == k_type) {
      if (cell.by_default != Layout::k_none && layout.types != nullptr) {
        notes.defaults |= std::uint64_t{1} << layout.defaults[cell.by_default].number;
      }
      if (layout.types == nullptr) {
        for (Fault& fault : set_layers(cell, input, notes)) faults.push_back(std::move(fault));
      }
      continue;
    }
    if (cell.by_default != Layout::k_none) {
      open.push_back(cell);
      continue;
    }
    for (Fault& fault : set_cell(layout, cell, input, notes)) faults.push_back(std::move(fault));
  }
  if (type.type != nullptr) {
    notes.no_estimate = notes.no_estimate || type.type->no_estimate;
    for (const Source& source : sources) {
      const TypeValue* const value = type.find(*source.field);
      if (value != nullptr) put_typed(*value, *type.type, input, notes);
    }
  } else if (!type.name.empty()) {
    notes.no_estimate = true;
    const std::string near = layout.types->nearest(type.name);
    notes.remarks.push_back("the type " + std::string(type.name) + " is not in " +
                            layout.types->name() +
                            (near.empty() ? "" : "; did you mean \"" + near + "\"?"));
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
  const RowType type = row_type(layout, cells);
  const std::vector<Source> sources = layout.sources(side);
  for (Fault& fault : put_cells(layout, sources, cells, type, input, said)) {
    faults.push_back(std::move(fault));
  }
  finish_input(layout, type, said, input);
  if (type.type != nullptr) {
    std::vector<std::string> remarks;
    for (const Source& source : sources) {
      const std::string remark = own_diameter_remark(layout, source, cells, *type.type);
      if (!remark.empty()) remarks.push_back(remark);
    }
    said.remarks.insert(said.remarks.begin(), remarks.begin(), remarks.end());
  }
  return input;
}

void name_columns(const Layout& layout, Cells cells, Side side, std::vector<Fault>& faults) {
  if (faults.empty()) return;
  const RowType type = row_type(layout, cells);
  const std::vector<Source> sources = layout.sources(side);
  for (Fault& fault : faults) {
    for (const Source& source : sources) {
      const std::string key =
          std::string(source.field->section) + "." + std::string(source.field->key);
      // "cable.sheath_od_mm, place 1, reading 2"
      if (!fault.where.starts_with(key)) continue;
      const std::string rest = fault.where.substr(key.size());
      if (!rest.empty() && rest.front() != ',') continue;
      const Given cell = given(layout, source, cells, type);
      fault.where = "column ";
      fault.where += cell.column != nullptr ? cell.column->heading : std::string(source.field->key);
      fault.where += rest;
      break;
    }
  }
}

}  // namespace cutback::schedule
