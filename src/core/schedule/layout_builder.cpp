#include "core/schedule/layout_builder.hpp"

#include <array>

#include "core/schedule/row_count.hpp"
#include "core/schedule/row_words.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {

Layout LayoutBuilder::build() {
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
  std::vector<Place> places = assign_headings(headings_, format_);
  refuse_side_by_side(places);
  give_to_ends(places);
  take_otherwise(places);
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i].named) continue;
    const std::string name = places[i].meaning->name();
    const std::string& shown = headings_[i].shown();
    // A merged cell over several columns is there several times; the first of them is the name.
    if (places[i].meaning->field == nullptr && !places[i].by_user && is_taken(*places[i].meaning)) {
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
  put_missing();
  note_counts(layout_, sample_);
  note_asked(layout_, sample_);
  join_ignored();
  return std::move(layout_);
}

bool LayoutBuilder::is_taken(const Meaning& meaning) {
  if (meaning.field == nullptr) {
    return (meaning.side == Side::from ? layout_.from : layout_.to) != Layout::k_none;
  }
  if (meaning.field->key == "tag") return layout_.tag != Layout::k_none;
  if (std::size_t* const place = name_place(*meaning.field)) return *place != Layout::k_none;
  return std::any_of(layout_.columns.begin(), layout_.columns.end(), [&](const Column& column) {
    return column.field == meaning.field && column.side == meaning.side;
  });
}

void LayoutBuilder::take(std::size_t place, const Meaning& meaning, const HeadingForm& form) {
  // A blank heading is named by the letter that the user gave.
  const bool blank = headings_[place].shown().empty();
  const std::string shown =
      blank ? "column " + column_letter(place) : std::string(headings_[place].shown());
  if (is_taken(meaning)) {
    add(ErrorCode::duplicate, "a column is given twice", shown, "", "leave one out");
    return;
  }
  layout_.mapping.push_back({blank ? column_letter(place) : shown, meaning.name(), place});
  if (meaning.field == nullptr) {
    (meaning.side == Side::from ? layout_.from : layout_.to) = place;
    return;
  }
  const bool of_cable = meaning.field->section == "cable";
  if (format_.of_types && !of_cable) {
    // Whoever wrote a zone beside a type had a place in mind.
    if (meaning.field->section == "area") layout_.hazard_unread = true;
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
/// Many headings that nobody reads are said in one line.
void LayoutBuilder::join_ignored() {
  constexpr std::size_t k_most = 12;
  constexpr std::size_t k_named = 8;
  constexpr std::string_view k_end = "\" is no column of a schedule and is ignored";
  const std::string begin = where_ + ": the heading \"";
  auto& warnings = layout_.warnings;
  const auto is_ignored = [&](const std::string& warning) {
    return warning.starts_with(begin) && warning.ends_with(k_end);
  };
  const auto first = std::find_if(warnings.begin(), warnings.end(), is_ignored);
  const auto count =
      static_cast<std::size_t>(std::count_if(warnings.begin(), warnings.end(), is_ignored));
  if (count <= k_most) return;
  std::string names;
  std::size_t named = 0;
  for (const std::string& warning : warnings) {
    if (!is_ignored(warning) || ++named > k_named) continue;
    names += (names.empty() ? "\"" : ", \"") +
             warning.substr(begin.size(), warning.size() - begin.size() - k_end.size()) + "\"";
  }
  *first = where_ + ": " + std::to_string(count) +
           " headings are no columns of a schedule and are ignored: " + names + " and " +
           std::to_string(count - k_named) + " more";
  warnings.erase(std::remove_if(first + 1, warnings.end(), is_ignored), warnings.end());
}

void LayoutBuilder::put_blanks() {
  // Common practice, no source. Not `na`: it is a type of protection.
  for (const std::string_view word :
       {"tbc", "tba", "tbd", "t.b.c.", "t.b.a.", "n/a", "-", "--", "---", "\xE2\x80\x93",
        "\xE2\x80\x94", "?", "??", "not known", "unknown", "to be confirmed", "to be advised"}) {
    layout_.blanks.emplace_back(word);
  }
  // Words of 32 letters and more are none that anybody writes.
  for (const std::string& word : format_.blanks)
    layout_.blanks.push_back(small_letters(trimmed(word)));
  for (const std::string& word : layout_.blanks) {
    if (word.size() < 32) layout_.blank_lengths |= std::uint32_t{1} << word.size();
  }
}

/// Data tools write None and nan for what is missing. Where a column has one of them that can only
/// mean so, None under Zone is no plain place.
void LayoutBuilder::put_missing() {
  constexpr std::array<std::string_view, 7> k_words{"None", "nan",  "NaN", "NULL",
                                                    "null", "<NA>", "NaT"};
  const auto tells = [&](const Column& column) {
    const job::FieldKind kind = column.field->kind;
    const bool figures = kind == job::FieldKind::readings || kind == job::FieldKind::number ||
                         kind == job::FieldKind::whole;
    return std::any_of(sample_.begin(), sample_.end(), [&](const auto& row) {
      if (column.cell >= row.size()) return false;
      const std::string_view text = trimmed(row[column.cell]);
      const auto found = std::find(k_words.begin(), k_words.end(), text);
      return found != k_words.end() && (figures || *found != k_words.front());
    });
  };
  if (!std::any_of(layout_.columns.begin(), layout_.columns.end(), tells)) return;
  for (const std::string_view word : k_words) {
    layout_.blanks.emplace_back(word);
    layout_.blank_lengths |= std::uint32_t{1} << word.size();
  }
  layout_.warnings.push_back(where_ +
                             ": None, nan and NULL stand for values that are missing, and are "
                             "taken for blank cells in all columns");
}

void LayoutBuilder::put_defaults() {
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
void LayoutBuilder::note_types() {
  constexpr std::array<std::string_view, 3> k_diameters{"sheath_od_mm", "bedding_mm", "armour_mm"};
  for (const Column& column : layout_.columns) {
    if (column.field->key == "type") layout_.type = column.cell;
    for (std::size_t i = 0; i < k_diameters.size(); ++i) {
      if (column.field->key == k_diameters[i]) layout_.diameters[i] = column.cell;
    }
  }
  if (layout_.types == nullptr && layout_.type != Layout::k_none) {
    layout_.warnings.push_back(
        where_ +
        ": of the column type only layers such as XLPE/SWA/PVC are read without --types FILE");
  }
}

void LayoutBuilder::note_unread(const std::vector<Place>& places) {
  std::vector<std::size_t> used{layout_.tag,      layout_.from,      layout_.to,
                                layout_.quantity, layout_.area_name, layout_.drawing};
  for (const Column& column : layout_.columns) used.push_back(column.cell);
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i].ignored || std::find(used.begin(), used.end(), i) != used.end()) continue;
    const std::string& shown = headings_[i].shown();
    const bool status = small_letters(shown).find("status") != std::string::npos;
    const bool of_row = layout_.usual == nullptr || heads_remark(*layout_.usual, shown);
    layout_.unread.push_back({.cell = i,
                              .heading = shown,
                              .is_status = status && of_row,
                              .is_of_row = of_row,
                              .may_ask = false});
    const bool allowance = places[i].meaning && places[i].meaning->field != nullptr &&
                           places[i].meaning->field->key.ends_with("_allow_mm");
    if (layout_.usual != nullptr && (allowance || heads_more(*layout_.usual, shown))) {
      layout_.unread.back().may_ask = true;
      layout_.warnings.push_back(
          where_ + ": column " + column_letter(i) + ", " + shown +
          ", may ask more of a gland and is not read: a row with a figure in "
          "it needs a person; say what it is with --column, or --ignore " +
          column_letter(i));
    }
  }
}

/// From, Entry, Hole, To, Entry, Hole: what stands behind each end is of that end.
void LayoutBuilder::give_to_ends(std::vector<Place>& places) {
  const auto cell_of = [&](Side side) {
    std::size_t found = places.size();
    for (std::size_t i = places.size(); i-- > 0;) {
      const auto& meaning = places[i].meaning;
      if (meaning && meaning->field == nullptr && meaning->side == side && !places[i].ignored) {
        found = i;
      }
    }
    return found;
  };
  const std::size_t from = cell_of(Side::from);
  const std::size_t to = cell_of(Side::to);
  if (from == places.size() || to == places.size()) return;
  const std::size_t second = std::max(from, to);
  for (std::size_t i = std::min(from, to) + 1; i < second; ++i) {
    const auto& meaning = places[i].meaning;
    const auto is_free = [&](std::size_t k) {
      return places[k].meaning && *places[k].meaning == *meaning && !places[k].ignored &&
             !places[k].by_user;
    };
    if (!meaning || meaning->field == nullptr || meaning->side != Side::both ||
        !is_of_end(*meaning->field) || !is_free(i)) {
      continue;
    }
    std::size_t other = places.size();
    std::size_t count = 0;
    for (std::size_t k = 0; k < places.size(); ++k) {
      if (!is_free(k)) continue;
      ++count;
      other = k;
    }
    if (count != 2 || other <= second) continue;
    places[i].meaning->side = from < to ? Side::from : Side::to;
    places[other].meaning->side = from < to ? Side::to : Side::from;
  }
}

/// The same headings twice in a row of them are two tables: one of them would be lost.
void LayoutBuilder::refuse_side_by_side(const std::vector<Place>& places) const {
  constexpr std::size_t k_headings = 3;
  const auto is_tag = [&](std::size_t i) {
    const auto& meaning = places[i].meaning;
    return meaning && meaning->field != nullptr && meaning->field->key == "tag" &&
           !places[i].ignored && !places[i].by_user;
  };
  const auto text = [&](std::size_t i) {
    return headings_[i].forms.empty() ? std::string_view() : headings_[i].forms.back().plain;
  };
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!is_tag(i)) continue;
    for (std::size_t k = i + 1; k < places.size(); ++k) {
      if (!is_tag(k)) continue;
      std::size_t same = 0;
      std::size_t last = i;
      for (std::size_t at = 0; i + at < k && k + at < places.size(); ++at) {
        if (text(i + at).empty() || text(i + at) != text(k + at)) continue;
        ++same;
        last = at;
      }
      if (same < k_headings) continue;
      const std::string columns = column_letter(i) + " to " + column_letter(i + last) + ", and " +
                                  column_letter(k) + " to " + column_letter(k + last);
      throw InputError(make_fault(ErrorCode::contradiction, "two tables stand side by side", where_,
                                  "columns " + columns, "one table per sheet or file",
                                  "put them below each other under one row of headings, or each on "
                                  "a sheet or into a file of its own"));
    }
  }
}

void LayoutBuilder::check_own() {
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
  std::vector<std::pair<std::size_t, Meaning>> given;
  for (const auto& [own, theirs] : format_.headings) {
    const auto meaning = own_meaning(plain_heading(own));
    if (!meaning) continue;
    check(theirs, false);
    const auto at = places_of(headings_, theirs);
    if (at.size() != 1) continue;
    for (const auto& [place, other] : given) {
      if (place != at.front() || other == *meaning) continue;
      add(ErrorCode::duplicate, "one heading is given to two columns", theirs,
          other.name() + ", " + meaning->name(), "give it to one of them");
    }
    given.emplace_back(at.front(), *meaning);
  }
  for (const std::string& theirs : format_.ignored) check(theirs, true);
}

/// A heading that may be that of the tags; nothing where none may.
std::optional<std::string> LayoutBuilder::may_be_tag() const {
  for (const Heading& heading : headings_) {
    if (format_.usual == nullptr || heading.forms.empty()) continue;
    const UsualHeading* const usual = format_.usual->find(heading.forms.back().plain);
    if (usual != nullptr && usual->instead.find("(tag)") != std::string::npos) {
      return heading.shown();
    }
  }
  return std::nullopt;
}

void LayoutBuilder::check_needed() {
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

Layout make_layout(std::span<const Heading> headings, const Format& format,
                   const std::string& where, Sample sample) {
  return LayoutBuilder(headings, format, where, sample).build();
}

Layout make_layout(Cells headings, const Format& format, const std::string& where) {
  const std::vector<std::string> row(headings.begin(), headings.end());
  return make_layout(join_headings({&row, 1}), format, where);
}

}  // namespace cutback::schedule
