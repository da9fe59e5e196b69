#include "cutback/schedule/layout.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/schedule/meaning.hpp"
#include "core/schedule/own_fields.hpp"
#include "core/schedule/row_count.hpp"
#include "core/schedule/row_words.hpp"
#include "core/schedule/usual_values.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

constexpr std::array k_two{Side::from, Side::to};
constexpr std::array k_one{Side::both};

/// In small letters, without spaces round it.
std::string plain_words(std::string_view text) { return small_letters(trimmed(text)); }

/// The column of a letter such as H or AB, from 0.
std::optional<std::size_t> letter_place(std::string_view text) {
  if (text.empty() || text.size() > 3) return std::nullopt;
  std::size_t place = 0;
  for (const char c : text) {
    if (c < 'A' || c > 'Z') return std::nullopt;
    place = place * 26 + static_cast<std::size_t>(c - 'A' + 1);
  }
  return place - 1;
}

/// The places of the headings that a user's name means: that are the same text, else the column of
/// this letter, else the same text but for case, spaces and points, else but for a unit.
std::vector<std::size_t> places_of(std::span<const Heading> headings, std::string_view name) {
  const HeadingForm wanted = heading_form(name);
  const auto all_with = [&](auto matches) {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < headings.size(); ++i) {
      const auto& forms = headings[i].forms;
      if (std::any_of(forms.begin(), forms.end(), matches)) places.push_back(i);
    }
    return places;
  };
  if (wanted.full.empty()) return {};
  auto places = all_with([&](const HeadingForm& form) { return form.shown == wanted.shown; });
  if (!places.empty()) return places;
  const auto letter = letter_place(trimmed(name));
  if (letter && *letter < headings.size()) return {*letter};
  places = all_with([&](const HeadingForm& form) { return form.full == wanted.full; });
  if (places.empty()) {
    places = all_with([&](const HeadingForm& form) {
      return form.plain == wanted.plain && (wanted.unit.empty() || form.unit.empty());
    });
  }
  return places;
}

/// Whether the figures of a heading's unit can stand in the column.
bool suits(const job::Field& field, std::string_view unit) {
  switch (field.kind) {
    case job::FieldKind::readings:
      return unit == "mm" || unit == "in";
    case job::FieldKind::number:
      return unit == field.allowed;
    case job::FieldKind::whole:
      return unit == "count";
    case job::FieldKind::words:
    case job::FieldKind::yes_no:
    case job::FieldKind::text:
      return true;
  }
  return true;
}

/// "cutback from_verdict": what --append wrote over a column of results.
bool is_own_result(const Heading& heading) {
  constexpr std::string_view k_begin = "cutback ";
  if (heading.forms.empty() || !heading.shown().starts_with(k_begin)) return false;
  const std::string_view rest = std::string_view(heading.shown()).substr(k_begin.size());
  return !rest.empty() && std::all_of(rest.begin(), rest.end(),
                                      [](char c) { return c == '_' || (c >= 'a' && c <= 'z'); });
}

/// Which heading is which column.
class Assignment {
 public:
  struct Place {
    std::optional<Meaning> meaning;
    const HeadingForm* form = nullptr;  ///< the one that has the meaning
    bool named = false;                 ///< by the user, or by the column's own name
    bool by_user = false;
    bool ignored = false;
    bool one_end = false;  ///< the rows above say that it is of one end, and not of which
  };

  Assignment(std::span<const Heading> headings, const Format& format)
      : headings_(headings), format_(format), places_(headings.size()) {
    for (const auto& [own, theirs] : format.headings) name(own, theirs);
    for (const std::string& text : format.ignored) {
      for (const std::size_t at : places_of(headings, text)) {
        if (!places_[at].named) places_[at].ignored = true;
      }
    }
    for (std::size_t i = 0; i < headings.size(); ++i) {
      if (!places_[i].named && is_own_result(headings[i])) places_[i].ignored = true;
      if (!places_[i].named && !places_[i].ignored) find(i);
    }
    if (format.usual != nullptr) find_ends(*format.usual);
  }

  [[nodiscard]] const std::vector<Place>& places() const { return places_; }

 private:
  void name(const std::string& own, const std::string& theirs) {
    const auto meaning = own_meaning(plain_heading(own));
    if (!meaning) return;
    named_.push_back(*meaning);
    const auto at = places_of(headings_, theirs);
    if (at.size() != 1) return;
    places_[at.front()].meaning = meaning;
    places_[at.front()].form = form_named(headings_[at.front()], theirs);
    places_[at.front()].named = true;
    places_[at.front()].by_user = true;
  }

  /// Of the forms of a heading the one that the user named; the first where it was a letter.
  static const HeadingForm* form_named(const Heading& heading, std::string_view theirs) {
    const HeadingForm wanted = heading_form(theirs);
    for (const HeadingForm& form : heading.forms) {
      if (form.full == wanted.full || form.plain == wanted.plain) return &form;
    }
    return heading.forms.empty() ? nullptr : &heading.forms.front();
  }

  /// A column that has an own heading is not found by another any more.
  [[nodiscard]] bool is_named(const Meaning& meaning) const {
    return std::find(named_.begin(), named_.end(), meaning) != named_.end();
  }

  void find(std::size_t at) {
    for (const HeadingForm& form : headings_[at].forms) {
      auto meaning = own_meaning(form.full);
      bool own = meaning.has_value();
      if (format_.usual != nullptr && !(own && meaning->name() == form.shown)) {
        // "Voltage" may be that of the system; `voltage` is this program's word.
        const auto usual = usual_meaning(*format_.usual, form.plain);
        if (usual && (!own || (usual->usual != nullptr && usual->usual->by_values))) {
          meaning = usual;
          own = false;
        }
        // "Entry (mm)": a column's own name, and a unit that its name does not have.
        if (!meaning && !form.unit.empty()) meaning = own_meaning(form.plain);
      }
      if (!meaning) continue;
      const auto dropped = static_cast<std::size_t>(&form - headings_[at].forms.data());
      const auto end = end_above(headings_[at], dropped);
      if (end && meaning->side == Side::both && !(end->known && meaning->field == nullptr)) {
        // "Gland at To End / Entry": what is left out says which end it is of.
        if (meaning->field == nullptr || !is_of_end(*meaning->field)) {
          own = false;
          meaning = end->known ? meaning_of_end(*end, form) : std::nullopt;
          if (!meaning) continue;
        }
        meaning->side = end->known ? end->side : Side::both;
        if (end->known) own = false;
      }
      // "Entry data / Size" is no size of the cable.
      const bool of_cable =
          meaning->field != nullptr && !is_of_end(*meaning->field) && meaning->side == Side::both;
      if (!end && of_cable && heads_entries(headings_[at], dropped)) continue;
      if (is_named(*meaning)) continue;
      places_[at] = {.meaning = meaning,
                     .form = &form,
                     .named = own && !(end && !end->known),
                     .by_user = false,
                     .ignored = false,
                     .one_end = end && !end->known && meaning->field != nullptr};
      return;
    }
  }

  /// Whether a row that is left out speaks of entries or glands.
  static bool heads_entries(const Heading& heading, std::size_t rows) {
    for (std::size_t i = 0; i < std::min(rows, heading.rows.size()); ++i) {
      const std::string plain = " " + plain_heading(heading.rows[i]);
      for (const std::string_view word : {" entry", " entries", " gland"}) {
        if (plain.find(word) != std::string::npos) return true;
      }
    }
    return false;
  }

  struct EndAbove {
    bool known = false;  ///< false: it is one end, and nothing says which
    Side side = Side::both;
    std::string rest;  ///< what the row says besides
  };
  /// What the first rows of a heading, which are left out, say of the end that it is of.
  [[nodiscard]] std::optional<EndAbove> end_above(const Heading& heading, std::size_t rows) const {
    if (format_.usual == nullptr) return std::nullopt;
    std::optional<EndAbove> found;
    for (std::size_t i = 0; i < std::min(rows, heading.rows.size()); ++i) {
      const std::string plain = heading_form(heading.rows[i]).plain;
      if (const auto end = end_in(*format_.usual, plain)) {
        return EndAbove{true, end->from ? Side::from : Side::to, std::string(end->rest)};
      }
      if (speaks_of_one_end(*format_.usual, plain)) found = EndAbove{};
    }
    return found;
  }

  /// "Gland Entry - To / Size" means a size of the cable only without its first row.
  [[nodiscard]] std::optional<Meaning> meaning_of_end(const EndAbove& end,
                                                      const HeadingForm& form) const {
    auto meaning = usual_meaning(*format_.usual, end.rest + " " + form.plain);
    if (!meaning || meaning->field == nullptr || !is_of_end(*meaning->field)) return std::nullopt;
    return meaning;
  }

  /// Two headings that nothing is known of but that each is of one end: "From / Cell", "To / Cell".
  void find_ends(const UsualHeadings& usual) {
    struct Sided {
      std::size_t place;
      const HeadingForm* form;
      SidedHeading heading;
    };
    std::vector<Sided> open;
    for (std::size_t i = 0; i < headings_.size(); ++i) {
      if (places_[i].meaning || places_[i].ignored || headings_[i].forms.empty()) continue;
      const HeadingForm& form = headings_[i].forms.front();
      if (const auto heading = sided(usual, form.plain)) open.push_back({i, &form, *heading});
    }
    for (const Side side : k_two) {
      const Meaning meaning{side};
      if (is_named(meaning) || any_means(meaning)) continue;
      const auto first = std::find_if(open.begin(), open.end(), [&](const Sided& one) {
        return one.heading.from == (side == Side::from) &&
               std::any_of(open.begin(), open.end(), [&](const Sided& other) {
                 return other.heading.from != one.heading.from &&
                        other.heading.rest == one.heading.rest;
               });
      });
      if (first == open.end()) continue;
      places_[first->place].meaning = meaning;
      places_[first->place].form = first->form;
    }
  }
  [[nodiscard]] bool any_means(const Meaning& meaning) const {
    return std::any_of(places_.begin(), places_.end(),
                       [&](const Place& place) { return place.meaning == meaning; });
  }

  std::span<const Heading> headings_;
  const Format& format_;
  std::vector<Meaning> named_;  ///< columns that have an own heading
  std::vector<Place> places_;
};

/// Builds a layout and gathers everything that is wrong with the headings.
class Builder {
 public:
  Builder(std::span<const Heading> headings, const Format& format, const std::string& where,
          Sample sample)
      : headings_(headings), format_(format), where_(where), sample_(sample) {}

  Layout build() {
    layout_.where = where_;
    layout_.width = headings_.size();
    layout_.decimal = format_.decimal;
    layout_.evidence = format_.evidence;
    layout_.types = format_.types;
    layout_.usual = format_.usual;
    for (const OwnWord& each : format_.words) {
      layout_.words.push_back({plain_heading(each.word), each.value});
    }
    put_blanks();
    put_defaults();
    layout_.tag = Layout::k_none;
    for (const Heading& heading : headings_) {
      auto& parts = layout_.headings.emplace_back();
      for (const HeadingForm& form : heading.forms) parts.push_back(form.full);
      for (const std::string& row : heading.rows) parts.push_back(plain_heading(row));
    }
    const Assignment assignment(headings_, format_);
    std::vector<Place> places = assignment.places();
    take_otherwise(places);
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (!places[i].named) continue;
      const std::string name = places[i].meaning->name();
      const std::string& shown = headings_[i].shown();
      // A merged cell over several columns is there several times; the first of them is the name.
      if (places[i].meaning->field == nullptr && !places[i].by_user &&
          is_taken(*places[i].meaning)) {
        leave(i, *places[i].meaning, "another column is " + name);
        continue;
      }
      if (!places[i].by_user && shown != name) layout_.matches.emplace_back(shown, name);
      take(i, *places[i].meaning, *places[i].form);
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (!places[i].named && !places[i].ignored) take_usual(i, places);
    }
    note_types();
    note_unread(places);
    for (std::size_t i = 0; i < places.size(); ++i) {
      if (!is_own_result(headings_[i]) || !places[i].ignored) continue;
      layout_.own_results.emplace_back(headings_[i].shown(), i);
    }
    const auto any_of_side = [&](Side side) {
      return std::any_of(places.begin(), places.end(), [&](const Place& place) {
        return place.meaning && place.meaning->side == side && !place.ignored;
      });
    };
    sided_both_ = any_of_side(Side::from) && any_of_side(Side::to);
    std::sort(layout_.columns.begin(), layout_.columns.end(),
              [](const Column& a, const Column& b) { return a.cell < b.cell; });
    check_own();
    check_needed();
    if (!faults_.empty()) throw InputError(std::move(faults_));
    note_counts(layout_, sample_);
    return std::move(layout_);
  }

 private:
  using Place = Assignment::Place;
  void take(std::size_t place, const Meaning& meaning, const HeadingForm& form);
  void take_usual(std::size_t place, const std::vector<Place>& places);
  [[nodiscard]] std::string why_not(std::size_t place, const std::vector<Place>& places) const;
  [[nodiscard]] static std::size_t double_of(std::size_t place, const std::vector<Place>& places);
  [[nodiscard]] static bool any_diameter(std::size_t place, const std::vector<Place>& places);
  void take_otherwise(std::vector<Place>& places) const;
  [[nodiscard]] bool holds(const job::Field& field, std::size_t place) const;
  [[nodiscard]] std::string first_value(std::size_t place) const;
  void leave(std::size_t place, const Meaning& meaning, const std::string& why);
  [[nodiscard]] bool means_zone_by_words(std::size_t place) const;
  [[nodiscard]] bool may_tell_hazard(std::size_t place) const;
  void note_hazard(std::size_t place);
  /// Where the cell of a column stands that says nothing of a cable or an end; else null.
  [[nodiscard]] std::size_t* name_place(const job::Field& field) {
    if (field.key == "quantity") return &layout_.quantity;
    if (field.key == "area_name") return &layout_.area_name;
    return field.key == "drawing" ? &layout_.drawing : nullptr;
  }
  void put_blanks();
  void put_defaults();
  void note_types();
  void note_unread(const std::vector<Place>& places);
  void check_own();
  void check_needed();
  [[nodiscard]] std::optional<std::string> may_be_tag() const;
  [[nodiscard]] bool is_taken(const Meaning& meaning);
  [[nodiscard]] bool has(std::string_view key) const {
    const auto is = [&](const Column& column) { return column.field->key == key; };
    return std::any_of(layout_.columns.begin(), layout_.columns.end(), is) ||
           std::any_of(layout_.defaults.begin(), layout_.defaults.end(),
                       [&](const Default& each) { return is(each.column); });
  }
  void add(ErrorCode code, std::string what, std::string_view given, std::string allowed,
           std::string hint) {
    faults_.push_back({.code = code,
                       .what = std::move(what),
                       .where = where_,
                       .given = std::string(given),
                       .allowed = std::move(allowed),
                       .hint = std::move(hint)});
  }

  std::span<const Heading> headings_;
  const Format& format_;
  const std::string& where_;
  Sample sample_;
  Layout layout_;
  std::vector<Fault> faults_;
  bool sided_both_ = false;  ///< some headings are of the one end, some of the other
};

bool Builder::is_taken(const Meaning& meaning) {
  if (meaning.field == nullptr) {
    return (meaning.side == Side::from ? layout_.from : layout_.to) != Layout::k_none;
  }
  if (meaning.field->key == "tag") return layout_.tag != Layout::k_none;
  if (std::size_t* const place = name_place(*meaning.field)) return *place != Layout::k_none;
  return std::any_of(layout_.columns.begin(), layout_.columns.end(), [&](const Column& column) {
    return column.field == meaning.field && column.side == meaning.side;
  });
}

void Builder::take(std::size_t place, const Meaning& meaning, const HeadingForm& form) {
  const std::string& shown = headings_[place].shown();
  if (is_taken(meaning)) {
    add(ErrorCode::duplicate, "a column is given twice", shown, "", "leave one out");
    return;
  }
  layout_.mapping.push_back({shown, meaning.name(), place});
  if (meaning.field == nullptr) {
    (meaning.side == Side::from ? layout_.from : layout_.to) = place;
    return;
  }
  const bool of_cable = meaning.field->section == "cable";
  if (format_.of_types && !of_cable) {
    layout_.warnings.push_back(where_ + ": the column " + meaning.name() +
                               " is none of a cable's type and is ignored");
    return;
  }
  if (meaning.field->key == (format_.of_types ? "type" : "tag")) {
    layout_.tag = place;
    layout_.tag_heading = shown;
    return;
  }
  if (std::size_t* const at = name_place(*meaning.field)) {
    *at = place;
    return;
  }
  if (!form.unit.empty() && !suits(*meaning.field, form.unit)) {
    add(ErrorCode::bad_value, "the heading's unit is not that of the column " + meaning.name(),
        shown, job::allowed_text(*meaning.field), "convert the figures, or --ignore the heading");
    return;
  }
  const bool metric =
      form.unit == "mm" || (" " + form.full + " ").find(" metric ") != std::string::npos;
  layout_.columns.push_back({.cell = place,
                             .heading = shown,
                             .side = meaning.side,
                             .field = meaning.field,
                             .inches = form.unit == "in",
                             .metric = metric});
}

/// Whether a heading may be of zones, where more than bare figures stand below it.
bool Builder::means_zone_by_words(std::size_t place) const {
  const Heading& heading = headings_[place];
  if (heading.forms.empty()) return false;
  const UsualHeading* const usual = format_.usual->find(heading.forms.back().plain);
  return usual != nullptr && usual->by_words && usual->column == "zone";
}

/// A column that nobody reads and that may say that a place is hazardous: without it the place
/// would be taken for a plain one.
bool Builder::may_tell_hazard(std::size_t place) const {
  if (format_.usual == nullptr) return false;
  const UsualHeadings& usual = *format_.usual;
  const Heading& heading = headings_[place];
  const std::string plain = heading.forms.empty() ? "" : heading.forms.back().full;
  const bool under_zone = (" " + plain).find(" zone") != std::string::npos;
  const bool may_head = !heads_no_hazard(usual, plain);
  const bool may_be_zones = means_zone_by_words(place);
  bool any = false;
  bool only_zones = may_be_zones;
  for (const auto& row : sample_) {
    if (place >= row.size()) continue;
    const std::string text = heading_form(row[place]).full;
    if (text.empty() || text == plain || is_plain_place(usual, text)) continue;
    if (tells_hazard(usual, (under_zone ? "zone " : "") + text, false)) return true;
    // "Y", "A", "II" under Zone; "2G" under Category.
    constexpr std::size_t k_code = 3;
    if (under_zone && may_head && text.size() <= k_code) return true;
    const bool category =
        text.size() == 2 && is_digit(text[0]) && (text[1] == 'g' || text[1] == 'd');
    if (category && plain.find("cat") != std::string::npos) return true;
    only_zones = only_zones && is_zone_figure(text);
    any = true;
  }
  return any && (only_zones || heads_hazard(usual, plain));
}

void Builder::note_hazard(std::size_t place) {
  if (!may_tell_hazard(place)) return;
  const std::string letter = column_letter(place);
  const std::string& shown = headings_[place].shown();
  layout_.hazard_unread = true;
  layout_.warnings.push_back(where_ + ": column " + letter + (shown.empty() ? "" : ", ") + shown +
                             ", may tell a hazardous place and is not read, so that every end is "
                             "asked about its place; say --column zone=" +
                             letter + " or what it is, or --ignore " + letter);
}

void Builder::take_usual(std::size_t place, const std::vector<Place>& places) {
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
void Builder::take_otherwise(std::vector<Place>& places) const {
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
std::size_t Builder::double_of(std::size_t place, const std::vector<Place>& places) {
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
std::string Builder::why_not(std::size_t place, const std::vector<Place>& places) const {
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
bool Builder::any_diameter(std::size_t place, const std::vector<Place>& places) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i == place || !places[i].meaning || places[i].ignored) continue;
    const job::Field* const field = places[i].meaning->field;
    if (field != nullptr && field->feeds.into == job::Feeds::Into::figure) return true;
  }
  return false;
}

std::string Builder::first_value(std::size_t place) const {
  for (const auto& row : sample_) {
    if (place < row.size() && !trimmed(row[place]).empty()) return std::string(trimmed(row[place]));
  }
  return {};
}

/// Whether a value of the column stands in one of the cells at least, or in none of them anything;
/// of tags in all of them.
/// A place that may be hazardous is never left out for a cell that is written oddly.
bool Builder::holds(const job::Field& field, std::size_t place) const {
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
    if (layout_.is_not_given(text)) continue;
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

void Builder::leave(std::size_t place, const Meaning& meaning, const std::string& why) {
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

void Builder::put_blanks() {
  // Common practice, no source. Not `na`: it is a type of protection.
  for (const std::string_view word :
       {"tbc", "tba", "tbd", "t.b.c.", "t.b.a.", "n/a", "-", "--", "---", "\xE2\x80\x93",
        "\xE2\x80\x94", "?", "??", "not known", "unknown", "to be confirmed", "to be advised"}) {
    layout_.blanks.emplace_back(word);
  }
  // Words of 32 letters and more are none that anybody writes.
  for (const std::string& word : format_.blanks) layout_.blanks.push_back(plain_words(word));
  for (const std::string& word : layout_.blanks) {
    if (word.size() < 32) layout_.blank_lengths |= std::uint32_t{1} << word.size();
  }
}

void Builder::put_defaults() {
  for (std::size_t i = 0; i < format_.defaults.size(); ++i) {
    const auto& [name, text] = format_.defaults[i];
    const auto meaning = own_meaning(plain_heading(name));
    if (!meaning || meaning->field == nullptr) {
      throw InternalError("a default was not looked at: " + name);
    }
    Default each;
    each.column.cell = Layout::k_none;
    each.column.heading = meaning->name();
    each.column.heading += " by default";
    each.column.side = meaning->side;
    each.column.field = meaning->field;
    each.text = text;
    each.number = i;
    if (meaning->field->key == "quantity") {
      layout_.quantity_default = std::move(each);
    } else {
      layout_.defaults.push_back(std::move(each));
    }
  }
}

/// Where the cells stand that a row's type has to do with.
void Builder::note_types() {
  constexpr std::array<std::string_view, 3> k_diameters{"sheath_od_mm", "bedding_mm", "armour_mm"};
  for (const Column& column : layout_.columns) {
    if (column.field->key == "type") layout_.type = column.cell;
    for (std::size_t i = 0; i < k_diameters.size(); ++i) {
      if (column.field->key == k_diameters[i]) layout_.diameters[i] = column.cell;
    }
  }
  if (layout_.types == nullptr && layout_.type != Layout::k_none) {
    layout_.warnings.push_back(where_ + ": the column type says nothing without --types FILE");
  }
}

void Builder::note_unread(const std::vector<Place>& places) {
  std::vector<std::size_t> used{layout_.tag,      layout_.from,      layout_.to,
                                layout_.quantity, layout_.area_name, layout_.drawing};
  for (const Column& column : layout_.columns) used.push_back(column.cell);
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i].ignored || std::find(used.begin(), used.end(), i) != used.end()) continue;
    const std::string& shown = headings_[i].shown();
    const bool status = small_letters(shown).find("status") != std::string::npos;
    layout_.unread.push_back({.cell = i, .heading = shown, .is_status = status});
  }
}

void Builder::check_own() {
  const std::vector<Fault> unknown = unknown_columns(format_);
  faults_.insert(faults_.end(), unknown.begin(), unknown.end());
  std::vector<std::string_view> shown;
  for (const Heading& heading : headings_) shown.push_back(heading.shown());
  const auto check = [&](const std::string& theirs, bool several) {
    const auto at = places_of(headings_, theirs);
    if (at.empty()) {
      add(ErrorCode::missing, "there is no such heading", theirs, "", did_you_mean(theirs, shown));
    } else if (at.size() > 1 && !several) {
      std::string letters;
      for (const std::size_t place : at)
        letters += (letters.empty() ? "" : ", ") + column_letter(place);
      add(ErrorCode::duplicate, "several headings are this one", theirs, "columns " + letters,
          "give the letter of the column that is meant");
    }
  };
  for (const auto& [own, theirs] : format_.headings) {
    if (own_meaning(plain_heading(own))) check(theirs, false);
  }
  for (const std::string& theirs : format_.ignored) check(theirs, true);
}

/// A heading that may be that of the tags; nothing where none may.
std::optional<std::string> Builder::may_be_tag() const {
  for (const Heading& heading : headings_) {
    if (format_.usual == nullptr || heading.forms.empty()) continue;
    const UsualHeading* const usual = format_.usual->find(heading.forms.back().plain);
    if (usual != nullptr && usual->instead.find("(tag)") != std::string::npos) {
      return heading.shown();
    }
  }
  return std::nullopt;
}

void Builder::check_needed() {
  if (format_.of_types) {
    if (layout_.tag != Layout::k_none) return;
    return add(ErrorCode::missing, "there is no column type", "", "",
               "head the column of the types' names with type or Cable type");
  }
  const std::string hint = "name your own heading with --column, for example --column ";
  if (layout_.tag == Layout::k_none) {
    add(ErrorCode::missing, "there is no column tag", "", "",
        hint + "tag=\"" + may_be_tag().value_or("Cable No") + "\"");
  }
  const bool construction = has("cores") && has("csa_mm2");
  const bool typed = layout_.types != nullptr && has("type");
  if (!typed && !has("sheath_od_mm") && !has("bedding_mm") && !construction && !has("cable_size")) {
    add(ErrorCode::missing, "nothing tells the sheath diameter", "",
        "sheath_od_mm, or cores and csa_mm2 for an estimate", hint + "sheath_od_mm=\"O/D (mm)\"");
  }
  const bool prefixed =
      std::any_of(layout_.columns.begin(), layout_.columns.end(),
                  [](const Column& column) { return column.side != Side::both; }) ||
      std::any_of(layout_.defaults.begin(), layout_.defaults.end(),
                  [](const Default& each) { return each.column.side != Side::both; });
  const bool places = layout_.from != Layout::k_none || layout_.to != Layout::k_none;
  if (prefixed && has("end")) {
    add(ErrorCode::contradiction, "a row is one end or two, not both", "end", "",
        "leave out the column end, or the columns with from_ and to_");
  }
  layout_.two_ends = prefixed || ((places || sided_both_) && !has("end"));
  const bool told = layout_.two_ends || has("end");
  layout_.two_ends = layout_.two_ends || (!told && format_.ends == 2);
  layout_.ends_not_told = !told && !format_.ends && layout_.usual != nullptr;
}

}  // namespace

std::string column_letter(std::size_t place) {
  std::string text;
  for (std::size_t left = place + 1; left > 0; left = (left - 1) / 26) {
    text.insert(text.begin(), static_cast<char>('A' + (left - 1) % 26));
  }
  return text;
}

std::span<const Side> Layout::ends() const {
  if (two_ends) return k_two;
  return k_one;
}

bool Layout::is_blank_word(std::string_view text) const {
  const std::string small = plain_words(text);
  return std::find(blanks.begin(), blanks.end(), small) != blanks.end();
}

const OwnWord* Layout::word_of(std::string_view text) const {
  if (words.empty()) return nullptr;
  const std::string plain = plain_heading(text);
  const auto found = std::find_if(words.begin(), words.end(),
                                  [&](const OwnWord& each) { return each.word == plain; });
  return found != words.end() ? &*found : nullptr;
}

std::string_view group_of_row(const Layout& layout, Cells cells, GroupBy by) {
  if (by == GroupBy::nothing) return {};
  const std::string_view text =
      cell(cells, by == GroupBy::drawing ? layout.drawing : layout.area_name);
  return layout.is_not_given(text) ? std::string_view() : text;
}

std::vector<Source> Layout::sources(Side side) const {
  std::vector<Source> list;
  const auto source_of = [&](const job::Field* field) -> Source& {
    auto known = std::find_if(list.begin(), list.end(),
                              [&](const Source& source) { return source.field == field; });
    if (known == list.end()) known = list.insert(known, {k_none, k_none, k_none, field});
    return *known;
  };
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = columns[i];
    if (column.side != Side::both && column.side != side) continue;
    Source& source = source_of(column.field);
    (column.side == Side::both ? source.plain : source.prefixed) = i;
  }
  if (types != nullptr) {
    for (const job::Field* const field : types->fields()) source_of(field);
  }
  for (const bool plain : {true, false}) {  // that of the end comes before that of both
    for (std::size_t i = 0; i < defaults.size(); ++i) {
      const Column& column = defaults[i].column;
      if (plain ? column.side != Side::both : column.side != side || side == Side::both) continue;
      source_of(column.field).by_default = i;
    }
  }
  return list;
}

KnownHeadings known_headings(std::span<const Heading> headings, const Format& format) {
  KnownHeadings known;
  std::vector<Meaning> seen;
  const Assignment assignment(headings, format);
  for (std::size_t i = 0; i < headings.size(); ++i) {
    const auto& place = assignment.places()[i];
    if (!place.meaning ||
        (place.meaning->usual != nullptr && place.meaning->usual->column.empty())) {
      continue;
    }
    // A merged cell is there several times.
    if (std::find(seen.begin(), seen.end(), *place.meaning) != seen.end()) continue;
    seen.push_back(*place.meaning);
    ++known.count;
    const bool joined = headings[i].forms.size() > 1 && place.form == &headings[i].forms.front();
    if (joined && !place.by_user) ++known.joined;
  }
  return known;
}

Layout make_layout(std::span<const Heading> headings, const Format& format,
                   const std::string& where, Sample sample) {
  return Builder(headings, format, where, sample).build();
}

Layout make_layout(Cells headings, const Format& format, const std::string& where) {
  const std::vector<std::string> row(headings.begin(), headings.end());
  return make_layout(join_headings({&row, 1}), format, where);
}

std::vector<const job::Field*> column_fields() {
  std::vector<const job::Field*> fields;
  for (const job::Field& field : job::fields()) {
    if (is_column(field)) fields.push_back(&field);
  }
  for (const job::Field& field : own_fields()) fields.push_back(&field);
  return fields;
}

std::vector<Fault> unknown_columns(const Format& format) {
  std::vector<Fault> faults;
  for (const auto& heading : format.headings) {
    const std::string& own = heading.first;
    if (own_meaning(plain_heading(own))) continue;
    const std::string hint = did_you_mean(own, column_names());
    faults.push_back({.code = ErrorCode::unknown_name,
                      .what = "a schedule has no such column",
                      .where = "--column",
                      .given = own,
                      .allowed = {},
                      .hint = hint.empty() ? "cutback schedule --list-columns names them" : hint});
  }
  return faults;
}

bool is_of_end(const job::Field& field) {
  return field.section == "entry" || field.section == "area" || field.section == "tails" ||
         field.section == "fault";
}

bool is_column(const job::Field& field) { return field.key != "gland"; }

std::string_view end_name(const Layout& layout, Cells cells, Side side) {
  if (side == Side::from) return "from";
  if (side == Side::to) return "to";
  for (const Column& column : layout.columns) {
    if (column.field->key == "end") return cell(cells, column.cell);
  }
  return {};
}

}  // namespace cutback::schedule
