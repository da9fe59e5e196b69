// Headings that the trade knows: which of them are taken, by what stands under them, and why not.

#include <algorithm>

#include "core/schedule/cell_text.hpp"
#include "core/schedule/layout_builder.hpp"
#include "core/schedule/row_words.hpp"
#include "core/schedule/usual_values.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {

/// Whether a heading may be of zones, where more than bare figures stand below it.
bool LayoutBuilder::means_zone_by_words(std::size_t place) const {
  const Heading& heading = headings_[place];
  if (heading.forms.empty()) return false;
  const UsualHeading* const usual = format_.usual->find(heading.forms.back().plain);
  return usual != nullptr && usual->by_words && usual->column == "zone";
}

/// A column that nobody reads and that may say that a place is hazardous: without it the place
/// would be taken for a plain one.
bool LayoutBuilder::may_tell_hazard(std::size_t place) const {
  if (format_.usual == nullptr) return false;
  const UsualHeadings& usual = *format_.usual;
  const Heading& heading = headings_[place];
  const std::string plain = heading.forms.empty() ? "" : heading.forms.back().full;
  // "Zone 1 IIB T3" over a column tells it of every row; "Hazardous?" only asks.
  if (!heads_hazard(usual, plain) && hazard_in(usual, heading.shown(), false) == Hazard::told) {
    return true;
  }
  bool any = false;
  bool only_zones = means_zone_by_words(place);
  for (const auto& row : sample_) {
    if (place >= row.size()) continue;
    const std::string text = heading_form(row[place]).full;
    if (text.empty() || text == plain || is_plain_place(usual, text)) continue;
    if (value_tells_hazard(usual, plain, text)) return true;
    only_zones = only_zones && is_zone_figure(text);
    any = true;
  }
  return any && only_zones;
}

void LayoutBuilder::note_hazard(std::size_t place) {
  if (!may_tell_hazard(place)) return;
  const std::string letter = column_letter(place);
  const std::string& shown = headings_[place].shown();
  layout_.hazard_unread = true;
  layout_.warnings.push_back(where_ + ": column " + letter + (shown.empty() ? "" : ", ") + shown +
                             ", may tell a hazardous place and is not read, so that every end is "
                             "asked about its place; say --column zone=" +
                             letter + " or what it is, or --ignore " + letter);
}

void LayoutBuilder::take_usual(std::size_t place, const std::vector<Place>& places) {
  const Heading& heading = headings_[place];
  if (heading.forms.empty() || !places[place].meaning) note_hazard(place);
  if (heading.forms.empty()) return;
  if (!places[place].meaning) {
    std::string warning = where_ + ": the heading \"" + heading.shown() +
                          "\" is no column of a schedule and is ignored";
    const std::string hint = did_you_mean(heading.shown(), column_names());
    layout_.warnings.push_back(warning + (hint.empty() ? "" : "; " + hint));
    return;
  }
  if (places[place].one_end) {
    const std::string name = places[place].meaning->name();
    note_hazard(place);
    layout_.warnings.push_back(where_ + ": the heading \"" + heading.shown() +
                               "\" is not read: it is of one end, and nothing says which; say "
                               "--column from_" +
                               name + "=" + column_letter(place) + " or --column to_" + name + "=" +
                               column_letter(place) + ", or --ignore it");
    return;
  }
  if (const std::string why = why_not(place, places); !why.empty()) {
    // With one of them left out a hazardous place would be taken for a plain one.
    const job::Field* const field = places[place].meaning->field;
    if (field != nullptr && field->section == "area" && double_of(place, places) < places.size()) {
      const std::string name = places[place].meaning->name();
      const bool sided = name.starts_with("from_") || name.starts_with("to_");
      add(ErrorCode::duplicate, "two headings may be one column: " + why, heading.shown(), "",
          (sided ? "say --column " + name + "=" + column_letter(place)
                 : "say --column from_" + name + "=... and --column to_" + name +
                       "=... with their letters where each is of one end, else --column " + name +
                       "=" + column_letter(place)) +
              ", or --ignore it");
      return;
    }
    note_hazard(place);
    return leave(place, *places[place].meaning, why);
  }
  layout_.matches.emplace_back(heading.shown(), places[place].meaning->name());
  take(place, *places[place].meaning, *places[place].form);
}

/// Headings whose cells do not suit what they usually mean, and that then mean another column.
void LayoutBuilder::take_otherwise(std::vector<Place>& places) const {
  for (std::size_t i = 0; i < places.size(); ++i) {
    Place& place = places[i];
    if (place.named || place.ignored || !place.meaning || place.meaning->usual == nullptr) continue;
    const UsualHeading& usual = *place.meaning->usual;
    if (usual.otherwise.empty() || place.meaning->field == nullptr) continue;
    const std::string& unit = place.form->unit;
    const bool suited = unit.empty() || suits(*place.meaning->field, unit);
    if (suited && holds(*place.meaning->field, i)) continue;
    auto other = own_meaning(plain_heading(usual.otherwise));
    if (!other) continue;
    // 415V 3PH under Supply is no place.
    const std::string value = first_value(i);
    if (other->field == nullptr && !value.empty() && is_digit(value.front())) continue;
    if (other->field != nullptr) {
      if (!unit.empty() && !suits(*other->field, unit)) continue;
      other->side = place.meaning->side;
    }
    place.meaning = other;
  }
}

/// Another heading that means the same column; the number of places where there is none.
std::size_t LayoutBuilder::double_of(std::size_t place, const std::vector<Place>& places) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i == place || !places[i].meaning || places[i].ignored) continue;
    // One that is taken only alone gives way.
    const UsualHeading* const usual = places[i].meaning->usual;
    if (usual != nullptr && usual->lone) continue;
    if (*places[i].meaning == *places[place].meaning) return i;
  }
  return places.size();
}

/// Why a heading is not taken for what the trade usually means; empty where it is.
std::string LayoutBuilder::why_not(std::size_t place, const std::vector<Place>& places) const {
  const Meaning& meaning = *places[place].meaning;
  // Without a row of its own it is a column's own name with a word for the end.
  const UsualHeading* const usual = meaning.usual;
  if (usual != nullptr && usual->column.empty()) return usual->instead;
  const std::string name = meaning.name();
  if (meaning.field == nullptr) {
    // Several columns may say where an end is: what is named so, else the first of them is read.
    for (std::size_t i = 0; i < places.size(); ++i) {
      const bool same = i != place && places[i].meaning == meaning && !places[i].ignored;
      if (same && (places[i].named || i < place)) return "another column is " + name;
    }
    return {};
  }
  if (usual != nullptr && usual->lone && any_diameter(place, places)) return usual->instead;
  if (const std::size_t i = double_of(place, places); i < places.size()) {
    return "it may be " + name + ", and so may \"" + headings_[i].shown() + "\" (column " +
           column_letter(i) + ")";
  }
  const std::string& unit = places[place].form->unit;
  if (!unit.empty() && !suits(*meaning.field, unit)) {
    return "it may be " + name + ", but its unit is " + unit;
  }
  if (usual == nullptr || !usual->by_values || holds(*meaning.field, place)) return {};
  return "it may be " + name + ", but \"" + first_value(place) + "\" stands in it" +
         (usual->instead.empty() ? "" : "; it may be " + usual->instead);
}

/// Whether another heading tells a diameter of the cable.
bool LayoutBuilder::any_diameter(std::size_t place, const std::vector<Place>& places) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i == place || !places[i].meaning || places[i].ignored) continue;
    const job::Field* const field = places[i].meaning->field;
    if (field != nullptr && field->feeds.into == job::Feeds::Into::figure) return true;
  }
  return false;
}

std::string LayoutBuilder::first_value(std::size_t place) const {
  for (const auto& row : sample_) {
    if (place < row.size() && !trimmed(row[place]).empty()) return std::string(trimmed(row[place]));
  }
  return {};
}

/// Whether a value of the column stands in one of the cells at least, or in none of them anything;
/// of tags in all of them.
/// A place that may be hazardous is never left out for a cell that is written oddly.
bool LayoutBuilder::holds(const job::Field& field, std::size_t place) const {
  // One size among names is no name.
  const bool all = field.key == "tag";
  // Areas of a plant have numbers, as zones have.
  const bool by_words =
      field.key == "zone" && format_.usual != nullptr && means_zone_by_words(place);
  bool any = false;
  for (const auto& row : sample_) {
    if (place >= row.size()) continue;
    const std::string_view text = trimmed(row[place]);
    // Sheets of several pages have their headings again.
    if (layout_.is_not_given(text) || is_sheet_error(text)) continue;
    if (heading_form(text).full == headings_[place].forms.back().full) continue;
    const bool plain =
        field.section == "area" && format_.usual != nullptr && is_plain_place(*format_.usual, text);
    if (plain && field.key != "zone" && field.key != "protection") continue;
    const auto own = std::find_if(
        format_.words.begin(), format_.words.end(),
        [&](const OwnWord& w) { return plain_heading(w.word) == plain_heading(text); });
    const std::string_view says = own != format_.words.end() ? std::string_view(own->value) : text;
    if (by_words && parse_number(says)) {
      any = true;
      continue;
    }
    if (may_be(field, says) != all) return !all;
    any = true;
  }
  return all || !any;
}

void LayoutBuilder::leave(std::size_t place, const Meaning& meaning, const std::string& why) {
  const std::string& shown = headings_[place].shown();
  const std::string name = meaning.field != nullptr ? meaning.name() : "COLUMN";
  // In another unit it cannot be read whatever is said of it.
  const std::string& unit = headings_[place].forms.front().unit;
  const bool other_unit = meaning.field != nullptr && !unit.empty() && !suits(*meaning.field, unit);
  const std::string hint =
      (other_unit ? "convert its figures" : "say --column " + name + "=" + column_letter(place)) +
      ", or --ignore \"" + shown + "\"";
  layout_.warnings.push_back(where_ + ": the heading \"" + shown + "\" is not read: " + why + "; " +
                             hint);
}

}  // namespace cutback::schedule
