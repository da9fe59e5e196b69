#include "cutback/area/inspection.hpp"

#include "core/area/source.hpp"

namespace cutback::area {
namespace {

using tables::Table;

/// Where an item of an inspection belongs; `d` is a flameproof enclosure.
enum class Where { any, gas, dust, d };
constexpr auto all_values(Where) {
  using enum Where;
  return std::array{any, gas, dust, d};
}
constexpr std::string_view to_string(Where where) {
  constexpr std::array<std::string_view, 4> k_words_of_where{"any", "gas", "dust", "d"};
  return k_words_of_where[static_cast<std::size_t>(where)];
}

bool is_for(Where where, const Area& area) {
  switch (where) {
    case Where::any:
      return true;
    case Where::gas:
      return hazard_of(area) == Hazard::gas;
    case Where::dust:
      return hazard_of(area) == Hazard::dust;
    case Where::d:
      break;
  }
  return area.protection && type_of(*area.protection) == Type::d;
}

/// What work a caution is for.
enum class When { always, armoured, hazardous, barrier };
constexpr auto all_values(When) {
  using enum When;
  return std::array{always, armoured, hazardous, barrier};
}
constexpr std::string_view to_string(When when) {
  constexpr std::array<std::string_view, 4> k_words_of_when{"always", "armoured", "hazardous",
                                                            "barrier"};
  return k_words_of_when[static_cast<std::size_t>(when)];
}

bool applies(When when, const Area& area, const gland::Gland& gland, bool barrier) {
  switch (when) {
    case When::always:
      return true;
    case When::armoured:
      return gland.armour != cable::ArmourKind::none;
    case When::hazardous:
      return hazard_of(area) != Hazard::none;
    case When::barrier:
      break;
  }
  return barrier;
}

}  // namespace

std::vector<InspectionItem> initial_inspection(const Area& area,
                                               const tables::Standards& standards) {
  std::vector<InspectionItem> items;
  if (hazard_of(area) == Hazard::none) return items;
  const Table& table = standards.table("inspection_items");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    // The first inspection is a detailed one.
    if (!is_for(detail::value_in<Where>(table, i, "place"), area)) continue;
    if (table.text(i, "detailed").empty()) continue;
    items.push_back({.key = table.text(i, "key"),
                     .text = table.text(i, "text"),
                     .detailed = true,
                     .close = !table.text(i, "close").empty(),
                     .visual = !table.text(i, "visual").empty(),
                     .source = detail::source_of(table, i)});
  }
  return items;
}

std::vector<Caution> cautions(const Area& area, const gland::Gland& gland, bool barrier,
                              const tables::Standards& standards) {
  const Table& table = standards.table("cautions");
  std::vector<Caution> list;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (!applies(detail::value_in<When>(table, i, "when"), area, gland, barrier)) continue;
    std::string source = table.text(i, "basis");
    if (detail::from_memory(table, i)) source += " [from-memory]";
    list.push_back({table.text(i, "key"), table.text(i, "text"), table.text(i, "brief"),
                    std::move(source)});
  }
  return list;
}

}  // namespace cutback::area
