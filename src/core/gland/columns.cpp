#include "cutback/gland/columns.hpp"

#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::gland {
namespace {

using measure::Range;
using Text = std::string_view;
using enum ColumnKind;
using fit::Reads;
using Check = fit::CheckName;

constexpr Reads k_none = Reads::none();

/// Largest diameter that is taken for one [mm]: above it a figure is in another unit.
constexpr double k_largest_mm = 300.0;

constexpr Text k_material = "brass nickel-plated-brass stainless-steel aluminium polymer steel";

constexpr RangeLimit k_outer_min{&Gland::outer, &Range::low_mm};
constexpr RangeLimit k_outer_max{&Gland::outer, &Range::high_mm};
constexpr RangeLimit k_clamp_min{&Gland::armour_clamp, &Range::low_mm};
constexpr RangeLimit k_clamp_max{&Gland::armour_clamp, &Range::high_mm};

// clang-format off
constexpr Column k_columns[] = {
    {"part",              text,    &Gland::part, k_none, 0, 0, "", "", true},
    {"range",             text,    &Gland::range, k_none},
    {"description",       text,    &Gland::description, k_none},
    {"entry_thread",      thread,  &Gland::entry_thread, Reads{Check::bore, Check::entry, Check::thread, Check::joint, Check::metals, Check::earth}, 0, 0, "", "", true},
    {"entry_length_mm",   number,  &Gland::entry_length_mm, Reads{Check::thread}, 0.1, 200, "mm"},
    {"outer_min_mm",      number,  k_outer_min, Reads{Check::outer_seal}, 0, k_largest_mm, "mm", "", true},
    {"outer_max_mm",      number,  k_outer_max, Reads{Check::outer_seal}, 0.1, k_largest_mm, "mm", "", true},
    {"inner_min_mm",      number,  InnerLimit{&Range::low_mm}, Reads{Check::inner_seal, Check::bore, Check::sealing}, 0, k_largest_mm, "mm"},
    {"inner_max_mm",      number,  InnerLimit{&Range::high_mm}, Reads{Check::inner_seal, Check::bore, Check::sealing}, 0.1, k_largest_mm, "mm"},
    {"bore_mm",           number,  &Gland::bore_mm, Reads{Check::bore, Check::inner_seal}, 0.1, k_largest_mm, "mm"},
    {"armour",            word,    cutback::word<&Gland::armour>(), Reads{Check::armour, Check::bore}, 0, 0, "", "", true},
    {"armour_min_mm",     number,  k_clamp_min, Reads{Check::armour}, 0, 20, "mm"},
    {"armour_max_mm",     number,  k_clamp_max, Reads{Check::armour}, 0.01, 20, "mm"},
    {"exposed_armour_mm", number,  &Gland::exposed_armour_mm, Reads{Check::armour}, 0.1, k_largest_mm, "mm"},
    {"exposed_plus_mm",   number,  &Gland::exposed_plus_mm, k_none, 0, 50, "mm"},
    {"armour_stop_mm",    number,  &Gland::armour_stop_mm, k_none, 0, k_largest_mm, "mm"},
    {"bedding_past_mm",   number,  &Gland::bedding_past_mm, Reads{Check::thread}, 0, 200, "mm"},
    {"bedding_end_mm",    number,  &Gland::bedding_end_mm, Reads{Check::thread}, -200, 200, "mm"},
    {"sealing",           word,    cutback::word<&Gland::sealing>(), Reads{Check::inner_seal, Check::bore, Check::entry, Check::sealing, Check::thread}},
    {"chamber_bore_mm",   number,  &Gland::chamber_bore_mm, Reads{Check::sealing, Check::thread}, 0.1, k_largest_mm, "mm"},
    {"chamber_length_mm", number,  &Gland::chamber_length_mm, Reads{Check::thread}, 0.1, k_largest_mm, "mm"},
    {"max_cores",         whole,   &Gland::max_cores, Reads{Check::sealing}, 1, 1000},
    {"max_bundle_mm",     number,  &Gland::max_bundle_mm, Reads{Check::sealing, Check::thread}, 0.1, k_largest_mm, "mm"},
    {"protection",        words,   cutback::word<&Gland::protection, area::k_part_protections>(), Reads{Check::protection}},
    {"level",             words,   cutback::word<&Gland::level>(), Reads{Check::level}},
    {"gas_group",         word,    cutback::word<&Gland::gas_group>(), Reads{Check::group}},
    {"dust_group",        word,    cutback::word<&Gland::dust_group>(), Reads{Check::group}},
    {"ip",                ip,      &Gland::ip, Reads{Check::ingress}},
    {"temp_min_c",        number,  &Gland::temp_min_degc, Reads{Check::temperature}, -273, 1000, "deg C"},
    {"temp_max_c",        number,  &Gland::temp_max_degc, Reads{Check::temperature}, -273, 1000, "deg C"},
    {"material",          word,    &Gland::material, Reads{Check::metals, Check::earth}, 0, 0, "", k_material},
    {"flats_mm",          number,  &Gland::flats_mm, k_none, 1, 500, "mm"},
    {"torque_nm",         number,  &Gland::torque_nm, k_none, 0.1, 5000, "N m"},
    {"fault_ka",          number,  &Gland::fault_ka, Reads{Check::fault}, 0.01, 1000, "kA"},
    {"washer_mm",         number,  &Gland::washer_mm, Reads{Check::thread, Check::joint}, 0, 50, "mm"},
    {"locknut_mm",        number,  &Gland::locknut_mm, Reads{Check::thread}, 0, 100, "mm"},
    {"price",             number,  &Gland::price, k_none, 0, 1e7},
    {"stock",             whole,   &Gland::stock, k_none, 0, 1e7},
    {"pack",              whole,   &Gland::pack, k_none, 1, 1e6},
};
// clang-format on

std::string limits(const Column& column) {
  std::string said = " from " + plain(column.min) + " to " + plain(column.max);
  if (!column.unit.empty()) said += " " + std::string(column.unit);
  return said;
}

/// Where the word stands in the list. @throws InternalError for one that does not
std::size_t place_of(std::span<const Text> words, Text word) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == word) return i;
  }
  throw InternalError("a column of a gland list does not know " + std::string(word));
}

/// Puts a number into whichever member takes one.
struct PutNumber {
  Gland& gland;
  double value;

  void operator()(std::optional<double> Gland::*member) const { gland.*member = value; }
  void operator()(double Gland::*member) const { gland.*member = value; }
  void operator()(std::optional<int> Gland::*member) const {
    gland.*member = static_cast<int>(value);
  }
  void operator()(const RangeLimit& at) const { gland.*at.range.*at.limit = value; }
  void operator()(const InnerLimit& at) const {
    if (!gland.inner) gland.inner.emplace();
    *gland.inner.*at.limit = value;
  }
  template <class Other>
  void operator()(const Other&) const {
    throw InternalError("a column of a gland list takes no number");
  }
};

struct PutText {
  Gland& gland;
  Text text;

  void operator()(std::string Gland::*member) const { gland.*member = text; }
  void operator()(std::optional<std::string> Gland::*member) const { gland.*member = text; }
  void operator()(std::vector<area::IpCode> Gland::*member) const {
    gland.*member = area::parse_ip_codes(text).value();
  }
  void operator()(entry::Thread Gland::*member) const {
    gland.*member = entry::parse_thread(text).value();
  }
  void operator()(const WordMember<Gland>& member) const {
    member.put(gland, place_of(member.words, text));
  }
  void operator()(const WordListMember<Gland>& member) const {
    std::vector<std::size_t> places;
    for (const Text part : split_words(text)) places.push_back(place_of(member.words, part));
    member.put(gland, places);
  }
  template <class Other>
  void operator()(const Other&) const {
    throw InternalError("a column of a gland list takes no text");
  }
};

struct NumberOf {
  const Gland& gland;

  std::optional<double> operator()(std::optional<double> Gland::*member) const {
    return gland.*member;
  }
  std::optional<double> operator()(double Gland::*member) const { return gland.*member; }
  std::optional<double> operator()(std::optional<int> Gland::*member) const {
    if (!(gland.*member)) return std::nullopt;
    return *(gland.*member);
  }
  std::optional<double> operator()(const RangeLimit& at) const { return gland.*at.range.*at.limit; }
  std::optional<double> operator()(const InnerLimit& at) const {
    return gland.inner ? *gland.inner.*at.limit : std::nullopt;
  }
  template <class Other>
  std::optional<double> operator()(const Other&) const {
    return std::nullopt;
  }
};

struct TextOf {
  const Gland& gland;

  std::string operator()(std::string Gland::*member) const { return gland.*member; }
  std::string operator()(std::optional<std::string> Gland::*member) const {
    return (gland.*member).value_or("");
  }
  std::string operator()(std::vector<area::IpCode> Gland::*member) const {
    return area::to_text(gland.*member, " ");
  }
  std::string operator()(entry::Thread Gland::*member) const {
    return gland.*member == entry::Thread{} ? "" : entry::to_text(gland.*member);
  }
  std::string operator()(const WordMember<Gland>& member) const {
    const auto place = member.place(gland);
    return place ? std::string(member.words[*place]) : "";
  }
  std::string operator()(const WordListMember<Gland>& member) const {
    std::string line;
    for (const std::size_t place : member.places(gland)) {
      line += (line.empty() ? "" : " ") + std::string(member.words[place]);
    }
    return line;
  }
  template <class Other>
  std::string operator()(const Other& member) const {
    const std::optional<double> value = NumberOf{gland}(member);
    return value ? plain(*value, 9) : "";
  }
};

struct TakeAway {
  Gland& gland;

  void operator()(const WordMember<Gland>& member) const { member.put(gland, std::nullopt); }
  void operator()(const WordListMember<Gland>& member) const { member.put(gland, {}); }
  void operator()(const RangeLimit& at) const { (gland.*at.range.*at.limit).reset(); }
  void operator()(const InnerLimit& at) const {
    if (!gland.inner) return;
    (*gland.inner.*at.limit).reset();
    if (!gland.inner->low_mm && !gland.inner->high_mm) gland.inner.reset();
  }
  template <class Value>
  void operator()(Value Gland::*member) const {
    gland.*member = Gland{}.*member;
  }
};

}  // namespace

std::span<const Column> columns() { return k_columns; }

std::size_t column_place(std::string_view name) {
  for (std::size_t i = 0; i < std::size(k_columns); ++i) {
    if (k_columns[i].name == name) return i;
  }
  throw InternalError("a gland list has no column " + std::string(name));
}

std::vector<std::string_view> words_of(const Column& column) {
  if (const auto* typed = std::get_if<WordMember<Gland>>(&column.member)) {
    return {typed->words.begin(), typed->words.end()};
  }
  if (const auto* list = std::get_if<WordListMember<Gland>>(&column.member)) {
    return {list->words.begin(), list->words.end()};
  }
  return split_words(column.words);
}

bool is_graded(const Column& column) {
  if (const auto* typed = std::get_if<WordMember<Gland>>(&column.member)) return typed->graded;
  return std::holds_alternative<WordListMember<Gland>>(column.member) &&
         std::get<WordListMember<Gland>>(column.member).graded;
}

std::string allowed_text(const Column& column) {
  std::string listed;
  for (const Text each : words_of(column))
    listed += (listed.empty() ? "" : " ") + std::string(each);
  switch (column.kind) {
    case number:
      return "a number" + limits(column);
    case whole:
      return "a whole number" + limits(column);
    case word:
      return "one of " + listed;
    case words:
      return listed + ", with spaces between them";
    case ip:
      return "two characters each, 0 to 6 or X and 0 to 9 or X, with spaces between them";
    case thread:
      return std::string(entry::thread_forms());
    case text:
      return "some text";
  }
  return {};
}

void put(Gland& gland, const Column& column, double value) {
  std::visit(PutNumber{gland, value}, column.member);
}

void put(Gland& gland, const Column& column, std::string_view cell) {
  std::visit(PutText{gland, cell}, column.member);
}

std::optional<std::string> text_of(const Gland& gland, const Column& column) {
  std::string cell = std::visit(TextOf{gland}, column.member);
  if (cell.empty()) return std::nullopt;
  return cell;
}

std::optional<double> number_of(const Gland& gland, const Column& column) {
  return std::visit(NumberOf{gland}, column.member);
}

void take_away(Gland& gland, const Column& column) { std::visit(TakeAway{gland}, column.member); }

}  // namespace cutback::gland
