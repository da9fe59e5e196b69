#include "io/gland_columns.hpp"

#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::io {
namespace {

using cable::ArmourKind;
using entry::Thread;
using gland::Gland;
using gland::Sealing;
using enum GlandKind;
using Text = std::string_view;

/// Largest diameter that is taken for one [mm]: above it a figure is in another unit.
constexpr double k_largest_mm = 300.0;

constexpr Text k_armour = "wire braid tape strip none";
constexpr Text k_sealing = "compression barrier either";
// Types of protection as IEC 60079-0:2017 4 and the standards before it mark them.
constexpr Text k_protection =
    "d da db dc e eb ec i ia ib ic m ma mb mc n nA nC nL nR o ob oc p pv px pxb py pyb pz pzc "
    "q qb s sa sb sc t ta tb tc tD";
constexpr Text k_level = "Ga Gb Gc Da Db Dc Ma Mb";
constexpr Text k_gas_group = "II IIA IIB IIB+H2 IIC";
constexpr Text k_dust_group = "IIIA IIIB IIIC";
constexpr Text k_material = "brass nickel-plated-brass stainless-steel aluminium polymer steel";

ArmourKind armour_of(Text word) {
  using enum ArmourKind;
  for (const ArmourKind kind : {wire, braid, tape, strip}) {
    if (word == to_string(kind)) return kind;
  }
  return none;
}

Sealing sealing_of(Text word) {
  for (const Sealing sealing : {Sealing::barrier, Sealing::either}) {
    if (word == to_string(sealing)) return sealing;
  }
  return Sealing::compression;
}

std::vector<std::string> list_of(Text text) {
  std::vector<std::string> list;
  for (const Text part : split_words(text)) list.emplace_back(part);
  return list;
}

/// The range of the inner seal, made when the first of its two limits is set.
measure::Range& inner_of(Gland& g) {
  if (!g.inner) g.inner.emplace();
  return *g.inner;
}

// clang-format off
constexpr GlandColumn k_columns[] = {
    {"part",              text,   0, 0, "", "", [](Gland& g, Text t) { g.part = t; }, true},
    {"range",             text,   0, 0, "", "", [](Gland& g, Text t) { g.range = t; }},
    {"description",       text,   0, 0, "", "", [](Gland& g, Text t) { g.description = t; }},
    {"entry_thread",      thread, 0, 0, "", "", [](Gland& g, Text t) { g.entry_thread = entry::parse_thread(t).value(); }, true},
    {"entry_length_mm",   number, 0.1, 200, "mm", "", [](Gland& g, double v) { g.entry_length_mm = v; }},
    {"outer_min_mm",      number, 0, k_largest_mm, "mm", "", [](Gland& g, double v) { g.outer.low_mm = v; }, true},
    {"outer_max_mm",      number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { g.outer.high_mm = v; }, true},
    {"inner_min_mm",      number, 0, k_largest_mm, "mm", "", [](Gland& g, double v) { inner_of(g).low_mm = v; }},
    {"inner_max_mm",      number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { inner_of(g).high_mm = v; }},
    {"bore_mm",           number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { g.bore_mm = v; }},
    {"armour",            word,   0, 0, "", k_armour, [](Gland& g, Text t) { g.armour = armour_of(t); }, true},
    {"armour_min_mm",     number, 0, 20, "mm", "", [](Gland& g, double v) { g.armour_clamp.low_mm = v; }},
    {"armour_max_mm",     number, 0.01, 20, "mm", "", [](Gland& g, double v) { g.armour_clamp.high_mm = v; }},
    {"exposed_armour_mm", number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { g.exposed_armour_mm = v; }},
    {"exposed_plus_mm",   number, 0, 50, "mm", "", [](Gland& g, double v) { g.exposed_plus_mm = v; }},
    {"armour_stop_mm",    number, 0, k_largest_mm, "mm", "", [](Gland& g, double v) { g.armour_stop_mm = v; }},
    {"bedding_past_mm",   number, 0, 200, "mm", "", [](Gland& g, double v) { g.bedding_past_mm = v; }},
    {"bedding_end_mm",    number, -200, 200, "mm", "", [](Gland& g, double v) { g.bedding_end_mm = v; }},
    {"sealing",           word,   0, 0, "", k_sealing, [](Gland& g, Text t) { g.sealing = sealing_of(t); }},
    {"chamber_bore_mm",   number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { g.chamber_bore_mm = v; }},
    {"chamber_length_mm", number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { g.chamber_length_mm = v; }},
    {"max_cores",         whole,  1, 1000, "", "", [](Gland& g, double v) { g.max_cores = static_cast<int>(v); }},
    {"max_bundle_mm",     number, 0.1, k_largest_mm, "mm", "", [](Gland& g, double v) { g.max_bundle_mm = v; }},
    {"protection",        words,  0, 0, "", k_protection, [](Gland& g, Text t) { g.protection = list_of(t); }},
    {"level",             words,  0, 0, "", k_level, [](Gland& g, Text t) { g.level = list_of(t); }},
    {"gas_group",         word,   0, 0, "", k_gas_group, [](Gland& g, Text t) { g.gas_group = t; }},
    {"dust_group",        word,   0, 0, "", k_dust_group, [](Gland& g, Text t) { g.dust_group = t; }},
    {"ip",                ip,     0, 0, "", "", [](Gland& g, Text t) { g.ip = list_of(t); }},
    {"temp_min_c",        number, -273, 1000, "deg C", "", [](Gland& g, double v) { g.temp_min_degc = v; }},
    {"temp_max_c",        number, -273, 1000, "deg C", "", [](Gland& g, double v) { g.temp_max_degc = v; }},
    {"material",          word,   0, 0, "", k_material, [](Gland& g, Text t) { g.material = t; }},
    {"flats_mm",          number, 1, 500, "mm", "", [](Gland& g, double v) { g.flats_mm = v; }},
    {"torque_nm",         number, 0.1, 5000, "N m", "", [](Gland& g, double v) { g.torque_nm = v; }},
    {"fault_ka",          number, 0.01, 1000, "kA", "", [](Gland& g, double v) { g.fault_ka = v; }},
    {"washer_mm",         number, 0, 50, "mm", "", [](Gland& g, double v) { g.washer_mm = v; }},
    {"locknut_mm",        number, 0, 100, "mm", "", [](Gland& g, double v) { g.locknut_mm = v; }},
    {"price",             number, 0, 1e7, "", "", [](Gland& g, double v) { g.price = v; }},
    {"stock",             whole,  0, 1e7, "", "", [](Gland& g, double v) { g.stock = static_cast<int>(v); }},
};
// clang-format on

std::string limits(const GlandColumn& column) {
  std::string text = " from " + plain(column.min) + " to " + plain(column.max);
  if (!column.unit.empty()) text += " " + std::string(column.unit);
  return text;
}

}  // namespace

std::span<const GlandColumn> gland_columns() { return k_columns; }

std::size_t gland_column(std::string_view name) {
  for (std::size_t i = 0; i < std::size(k_columns); ++i) {
    if (k_columns[i].name == name) return i;
  }
  throw InternalError("a gland list has no column " + std::string(name));
}

std::string allowed(const GlandColumn& column) {
  switch (column.kind) {
    case number:
      return "a number" + limits(column);
    case whole:
      return "a whole number" + limits(column);
    case word:
      return "one of " + std::string(column.words);
    case words:
      return std::string(column.words) + ", with spaces between them";
    case ip:
      return "two characters each, 0 to 6 or X and 0 to 9 or X, with spaces between them";
    case thread:
      return std::string(entry::thread_forms());
    case text:
      return "some text";
  }
  return {};
}

std::vector<std::string_view> split_words(std::string_view text) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t start = text.find_first_not_of(' ');
    if (start == std::string_view::npos) return parts;
    const std::size_t end = text.find(' ', start);
    parts.push_back(text.substr(start, end - start));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end);
  }
}

}  // namespace cutback::io
