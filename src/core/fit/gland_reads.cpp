#include "core/fit/gland_reads.hpp"

#include <array>
#include <cstring>
#include <optional>
#include <string_view>
#include <type_traits>
#include <vector>

#include "cutback/fit/reads.hpp"

namespace cutback::fit::detail {
namespace {

using gland::Gland;

void add(std::string& key, double value) {
  std::array<char, sizeof(double)> bytes{};
  std::memcpy(bytes.data(), &value, bytes.size());
  key.append(bytes.data(), bytes.size());
}
void add(std::string& key, int value) { add(key, static_cast<double>(value)); }
void add(std::string& key, std::string_view text) { (key += text) += '\0'; }
template <class Enum>
requires std::is_enum_v<Enum>
void add(std::string& key, Enum value) { key += static_cast<char>('a' + static_cast<int>(value)); }
void add(std::string& key, const entry::Thread& thread) {
  add(key, thread.kind);
  add(key, thread.size);
  add(key, thread.pitch_mm);
}
template <class T>
void add(std::string& key, const std::optional<T>& value);
void add(std::string& key, const measure::Range& range) {
  add(key, range.low_mm);
  add(key, range.high_mm);
}
template <class T>
void add(std::string& key, const std::optional<T>& value) {
  key += value ? '1' : '0';
  if (value) add(key, *value);
}
void add(std::string& key, const std::vector<std::string>& words) {
  for (const std::string& word : words) add(key, std::string_view(word));
  key += ';';
}

template <auto Member>
void append(const Gland& gland, std::string& key) {
  add(key, gland.*Member);
}

struct Column {
  void (*append)(const Gland&, std::string&);
  Reads reads;
};

using enum CheckName;
constexpr std::array k_columns{
    Column{append<&Gland::outer>, {outer_seal}},
    Column{append<&Gland::inner>, {inner_seal}},
    Column{append<&Gland::bore_mm>, {bore}},
    Column{append<&Gland::armour>, {armour, earth}},
    Column{append<&Gland::armour_clamp>, {armour}},
    Column{append<&Gland::sealing>, {inner_seal, sealing}},
    Column{append<&Gland::entry_thread>, {entry, thread}},
    Column{append<&Gland::entry_length_mm>, {thread}},
    Column{append<&Gland::washer_mm>, {thread}},
    Column{append<&Gland::locknut_mm>, {thread}},
    Column{append<&Gland::chamber_bore_mm>, {sealing}},
    Column{append<&Gland::max_cores>, {sealing}},
    Column{append<&Gland::max_bundle_mm>, {sealing}},
    Column{append<&Gland::protection>, {protection}},
    Column{append<&Gland::level>, {level}},
    Column{append<&Gland::gas_group>, {group}},
    Column{append<&Gland::dust_group>, {group}},
    Column{append<&Gland::ip>, {ingress}},
    Column{append<&Gland::temp_min_degc>, {temperature}},
    Column{append<&Gland::temp_max_degc>, {temperature}},
    Column{append<&Gland::material>, {material}},
    Column{append<&Gland::fault_ka>, {earth}},
};

}  // namespace

std::string kind_of(const Gland& gland, CheckName check) {
  std::string key;
  for (const Column& column : k_columns) {
    if (column.reads.has(check)) column.append(gland, key);
  }
  return key;
}

}  // namespace cutback::fit::detail
