#include "core/schedule/row_keys.hpp"

#include <algorithm>
#include <utility>

namespace cutback::schedule::detail {
namespace {

job::Layer layer_of(const job::Field& field) {
  if (field.key == "sheath_od_mm") return job::Layer::sheath;
  return field.key == "bedding_mm" ? job::Layer::bedding : job::Layer::wire;
}

}  // namespace

KeyCells::KeyCells(const Layout& layout, std::vector<Source> sources)
    : sources_(std::move(sources)) {
  std::vector<std::size_t> places;
  for (const Source& source : sources_) {
    for (const std::size_t column : {source.prefixed, source.plain}) {
      if (column != Layout::k_none) places.push_back(layout.columns[column].cell);
    }
  }
  std::sort(places.begin(), places.end());
  for (const std::size_t place : places) {
    if (runs_.empty() || place > runs_.back().last + 1) {
      runs_.push_back({place, place});
    } else {
      runs_.back().last = place;
    }
  }
}

std::string_view KeyCells::key(const Layout& layout, const Row& row, std::string& store) const {
  if (row.bare && runs_.size() == 1) return text_of(runs_.front(), row.cells);
  store.clear();
  if (row.bare) {
    // No cell of a bare row has a line break, whatever stands between its cells.
    for (const Run& run : runs_) store.append(text_of(run, row.cells)) += '\n';
    return store;
  }
  for (const Source& source : sources_) {
    const Given cell = given(layout, source, row.cells);
    store += cell.text;
    store += '\0';
    // What is wrong with a cell is said of its column, and a default is counted.
    store += cell.by_default != Layout::k_none                           ? '3'
             : cell.column != nullptr && cell.column->side == Side::both ? '1'
                                                                         : '2';
  }
  return store;
}

/// Of a bare row, as it stands there.
std::string_view KeyCells::text_of(const Run& run, Cells cells) {
  if (run.first >= cells.size()) return {};
  const char* const start = cells[run.first].data();
  const std::string_view last = cells[std::min(run.last, cells.size() - 1)];
  return {start, static_cast<std::size_t>(last.data() + last.size() - start)};
}

EndSources::EndSources(const Layout& layout, Side side) {
  using Into = job::Feeds::Into;
  std::vector<Source> deciding;
  std::vector<Source> shared;
  for (const Source& source : layout.sources(side)) {
    const Into into = source.field->feeds.into;
    if (into == Into::nothing) continue;
    deciding.push_back(source);
    if (into == Into::figure) {
      diameters.push_back({source, layer_of(*source.field)});
    } else if (into == Into::route) {
      routes.push_back(source);
    } else {
      shared.push_back(source);
    }
  }
  all = KeyCells(layout, std::move(deciding));
  family = KeyCells(layout, std::move(shared));
}

}  // namespace cutback::schedule::detail
