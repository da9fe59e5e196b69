#pragma once
// A layout, made from the headings of a schedule.

#include <algorithm>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/schedule/layout_assignment.hpp"
#include "core/schedule/meaning.hpp"
#include "cutback/error.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// Builds a layout and gathers everything that is wrong with the headings.
class LayoutBuilder {
 public:
  LayoutBuilder(std::span<const Heading> headings, const Format& format, const std::string& where,
                Sample sample)
      : headings_(headings), format_(format), where_(where), sample_(sample) {}

  /// @throws InputError with everything that is wrong
  Layout build();

 private:
  using Place = HeadingPlace;
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
  void join_ignored();
  void put_blanks();
  void put_missing();
  void put_defaults();
  void note_types();
  void note_unread(const std::vector<Place>& places);
  static void give_to_ends(std::vector<Place>& places);
  void refuse_side_by_side(const std::vector<Place>& places) const;
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

}  // namespace cutback::schedule
