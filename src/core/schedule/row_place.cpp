#include "cutback/schedule/row_place.hpp"

#include <algorithm>

#include "core/schedule/row_words.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

bool is_zone(const job::Field& field) { return field.key == "zone"; }

/// The first text of a row that says as much of a hazardous place.
std::string_view hazard_in_row(const Layout& layout, Cells cells, Hazard least) {
  if (layout.usual == nullptr) return {};
  for (const std::size_t place : {layout.from, layout.to, layout.area_name, layout.tag}) {
    const std::string_view text = cell(cells, place);
    if (hazard_in(*layout.usual, text, true) >= least) return text;
  }
  for (const UnreadColumn& unread : layout.unread) {
    const std::string_view text = cell(cells, unread.cell);
    if (hazard_in(*layout.usual, text, false) >= least) return text;
  }
  // A column of texts that is read for something else: the name of an end, a type, a drawing.
  for (const Column& column : layout.columns) {
    if (column.field->kind != job::FieldKind::text) continue;
    const std::string_view text = cell(cells, column.cell);
    if (hazard_in(*layout.usual, text, true) >= least) return text;
  }
  const std::string_view drawing = cell(cells, layout.drawing);
  return hazard_in(*layout.usual, drawing, true) >= least ? drawing : std::string_view();
}

/// A text that may be the label of a place, as in a title block.
bool is_label(const UsualHeadings& usual, std::string_view text) {
  constexpr std::size_t k_longest = 40;
  return text.size() <= k_longest && usual.of_labels.any_in(text);
}

/// What a value says beside or below its label.
PlaceSaid said_by(const UsualHeadings& usual, std::string_view label, std::string_view value) {
  // Two headings beside each other: "Ex", "T class".
  if (is_label(usual, value)) return {};
  if (heads_no_hazard(usual, label) || is_plain_place(usual, value)) return {};
  std::string both = std::string(label) + " " + std::string(value);
  if (hazard_in(usual, both, false) == Hazard::told) return {std::move(both), true};
  constexpr std::array<std::string_view, 3> k_yes{"yes", "y", "x"};
  const std::string small = small_letters(value);
  const bool code = std::any_of(value.begin(), value.end(), is_digit) ||
                    std::find(k_yes.begin(), k_yes.end(), small) != k_yes.end();
  if (!code || !value_tells_hazard(usual, label, value)) return {};
  return {std::move(both), false};
}

/// The stronger of two; the first where they are alike.
void take_stronger(PlaceSaid& said, PlaceSaid other) {
  if (other.text.empty() || said.told || (!said.text.empty() && !other.told)) return;
  said = std::move(other);
}

/// Whether a cell of a zone says that there is none, in the trade's words or the user's.
bool is_plain(const Layout& layout, std::string_view text) {
  const OwnWord* const own = layout.word_of(text);
  return is_plain_place(*layout.usual, own != nullptr ? std::string_view(own->value) : text);
}

}  // namespace

PlaceSaid place_in_note(const Layout& layout, Cells cells) {
  PlaceSaid said;
  if (layout.usual == nullptr) return said;
  const UsualHeadings& usual = *layout.usual;
  std::string_view label;
  for (const std::string_view cell : cells) {
    const std::string_view text = trimmed(cell);
    if (text.empty() || text == label) continue;
    const Hazard hazard = hazard_in(usual, text, false);
    if (hazard != Hazard::none) {
      take_stronger(said, {std::string(text), hazard == Hazard::told});
    } else if (!label.empty()) {
      take_stronger(said, said_by(usual, label, text));
    }
    if (said.told) break;
    label = is_label(usual, text) ? text : std::string_view();
  }
  return said;
}

PlaceSaid NoteRows::next(Cells cells) {
  PlaceSaid said = place_in_note(layout_, cells);
  if (layout_.usual == nullptr) return said;
  const UsualHeadings& usual = *layout_.usual;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string_view text = trimmed(cells[i]);
    if (text.empty()) continue;
    const bool labelled = i < labels_.size() && !labels_[i].empty() && labels_[i] != text;
    if (labelled && !said.told) take_stronger(said, said_by(usual, labels_[i], text));
    if (!is_label(usual, text)) continue;
    if (labels_.size() <= i) labels_.resize(i + 1);
    labels_[i] = text;
  }
  return said;
}

std::string place_in_row(const Layout& layout, Cells cells) {
  return std::string(hazard_in_row(layout, cells, Hazard::by_area));
}

bool all_told_plain(const Layout& layout, Sample rows) {
  if (layout.usual == nullptr) return false;
  bool any = false;
  for (const Column& column : layout.columns) {
    if (!is_zone(*column.field)) continue;
    for (const auto& row : rows) {
      if (column.cell >= row.size()) continue;
      const std::string_view text = trimmed(row[column.cell]);
      if (layout.is_not_given(text)) continue;
      if (!is_plain(layout, text)) return false;
      any = true;
    }
  }
  return any;
}

PlainPlaces::PlainPlaces(const Layout& layout) : layout_(layout) {
  if (layout.usual == nullptr) return;
  for (const Side side : {Side::both, Side::from, Side::to}) {
    for (const Source& source : layout.sources(side)) {
      if (is_zone(*source.field)) zones_[static_cast<std::size_t>(side)] = source;
    }
  }
}

bool PlainPlaces::any() const {
  return std::any_of(zones_.begin(), zones_.end(),
                     [](const auto& zone) { return zone.has_value(); });
}

bool PlainPlaces::is_told(Cells cells, Side side) const {
  const auto& source = zones_[static_cast<std::size_t>(side)];
  if (!source) return false;
  const Given zone = given(layout_, *source, cells);
  return !zone.is_blank() && is_plain(layout_, zone.text);
}

bool PlainPlaces::whole_row(Cells cells) const {
  const auto ends = layout_.ends();
  return std::all_of(ends.begin(), ends.end(), [&](Side side) { return is_told(cells, side); });
}

std::string PlainPlaces::told_otherwise(Cells cells, Side side) const {
  if (!is_told(cells, side)) return {};
  std::string_view text = hazard_in_row(layout_, cells, Hazard::told);
  if (text.empty()) return {};
  // A name at one end says nothing of the other.
  const bool both = side == Side::both || cell(cells, layout_.from) == cell(cells, layout_.to);
  if (!both && text == cell(cells, side == Side::to ? layout_.from : layout_.to)) {
    const std::string_view own = cell(cells, side == Side::to ? layout_.to : layout_.from);
    text = hazard_in(*layout_.usual, own, true) == Hazard::told ? own : std::string_view();
  }
  return std::string(text);
}

}  // namespace cutback::schedule
