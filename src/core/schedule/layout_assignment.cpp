#include "core/schedule/layout_assignment.hpp"

#include <algorithm>
#include <array>

#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

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

}  // namespace

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
      return true;
    case job::FieldKind::text:
      return field.key != "ambient_c" || unit == "C";
  }
  return true;
}

bool is_own_result(const Heading& heading) {
  constexpr std::string_view k_begin = "cutback ";
  if (heading.forms.empty() || !heading.shown().starts_with(k_begin)) return false;
  const std::string_view rest = std::string_view(heading.shown()).substr(k_begin.size());
  return !rest.empty() && std::all_of(rest.begin(), rest.end(),
                                      [](char c) { return c == '_' || (c >= 'a' && c <= 'z'); });
}

namespace {

/// Which heading is which column.
class Assignment {
 public:
  using Place = HeadingPlace;

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

  /// Of the forms of a heading the one that the user named; the first where it was a letter. A
  /// blank heading has none, and one without a word stands for it.
  static const HeadingForm* form_named(const Heading& heading, std::string_view theirs) {
    static const HeadingForm k_blank;
    const HeadingForm wanted = heading_form(theirs);
    for (const HeadingForm& form : heading.forms) {
      if (form.full == wanted.full || form.plain == wanted.plain) return &form;
    }
    return heading.forms.empty() ? &k_blank : &heading.forms.front();
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
    for (const Side side : {Side::from, Side::to}) {
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
}  // namespace

std::vector<HeadingPlace> assign_headings(std::span<const Heading> headings, const Format& format) {
  return Assignment(headings, format).places();
}

}  // namespace cutback::schedule
