#pragma once
// Ends and glands at random, made from the tables of fields and columns: one that is added there is
// generated here without another edit.

#include <rapidcheck.h>

#include <string>
#include <vector>

#include "cutback/gland/columns.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "support/build_job.hpp"

namespace cutback::test {

inline std::string any_of(std::vector<std::string> words) {
  return *rc::gen::elementOf(std::move(words));
}

/// A number between the limits, mostly of the size of things at a cable end.
inline double any_number(double min, double max, bool whole) {
  const double most = std::min(max, *rc::gen::element(4.0, 30.0, 80.0));
  const double least = std::max(min, -50.0);
  const double share = *rc::gen::inRange(0, 1001) / 1000.0;
  const double value = least + share * std::max(0.0, most - least);
  return whole ? std::round(value) : std::max(min, std::round(value * 10.0) / 10.0);
}

/// Something that may stand in the field.
inline std::string any_text(const job::Field& field) {
  using job::FieldKind;
  if (field.key == "entry") {
    return any_of({"M20", "M25", "M16", "NPT 1/2", "NPT 3/4", "PG 16", "to-suit"});
  }
  if (field.key == "adaptor") return any_of({"M25:M20", "M20:M25", "M25:M20:db", "NPT 1/2:M20"});
  if (field.key == "device") return any_of({"B16", "C32", "D63"});
  if (field.key == "ip") return any_of({"20", "54", "65", "66", "67", "68", "66/68"});
  if (field.key == "sheath_od_mm") {
    return any_of({"14.9+15.1", "15", "15.2", "15.6+15.9", "14.9+15.1,15.0+15.2", "20+20.2"});
  }
  if (field.key == "bedding_mm") return any_of({"9.9+10.1", "10", "10.4+10.5", "11.7+11.9"});
  if (field.key == "armour_mm") return any_of({"0.9", "0.91+0.9", "1.25", "1.4", "0.8"});
  switch (field.kind) {
    case FieldKind::number:
    case FieldKind::whole:
      return plain(any_number(field.min, field.max, field.kind == FieldKind::whole), 3);
    case FieldKind::words:
    case FieldKind::yes_no: {
      std::vector<std::string> words;
      for (const std::string_view word : job::words_of(field)) words.emplace_back(word);
      return any_of(words);
    }
    case FieldKind::readings:
    case FieldKind::text:
      break;
  }
  return "text";
}

inline void set(job::JobInput& in, const job::Field& field, const std::string& text) {
  (void)job::set_from_text(in, field, text, "test");
}

inline bool can_be(const job::JobInput& in) {
  try {
    const job::Job job = resolved(in);
    (void)fit::ask(job, standards());
    return true;
  } catch (const InputError&) {
    return false;
  }
}

/// An end of a small cable of which some fields are given, chance deciding which; they do not
/// contradict each other.
/// @param one_in  how rare a field is
inline job::JobInput any_end(int one_in) {
  job::JobInput in;
  set(in, job::field_named("sheath_od_mm"), "14.9+15.1");
  set(in, job::field_named("bedding_mm"), "9.9+10.1");
  set(in, job::field_named("armour_mm"), "0.9");
  for (const job::Field& field : job::fields()) {
    if (*rc::gen::inRange(0, one_in) != 0) continue;
    const job::JobInput before = in;
    set(in, field, any_text(field));
    if (!can_be(in)) in = before;
  }
  return in;
}

/// Puts something that may stand in the column.
inline void put_any(gland::Gland& gland, const gland::Column& column) {
  using gland::ColumnKind;
  switch (column.kind) {
    case ColumnKind::number:
    case ColumnKind::whole:
      gland::put(gland, column,
                 any_number(column.min, column.max, column.kind == ColumnKind::whole));
      return;
    case ColumnKind::word:
    case ColumnKind::words: {
      std::vector<std::string> words;
      for (const std::string_view word : gland::words_of(column)) words.emplace_back(word);
      gland::put(gland, column, any_of(words));
      return;
    }
    case ColumnKind::ip:
      gland::put(gland, column, any_of({"54", "66", "66 68", "67"}));
      return;
    case ColumnKind::thread:
      gland::put(gland, column, any_of({"M20", "M25", "M20x1", "NPT 1/2", "PG 16"}));
      return;
    case ColumnKind::text:
      gland::put(gland, column, any_of({"A", "B"}));
      return;
  }
}

/// A gland like small_gland() of which some columns are others, or blank.
inline gland::Gland any_gland(int one_in) {
  gland::Gland gland = small_gland();
  for (const gland::Column& column : gland::columns()) {
    if (column.required || *rc::gen::inRange(0, one_in) != 0) continue;
    if (*rc::gen::inRange(0, 4) == 0) {
      gland::take_away(gland, column);
    } else {
      put_any(gland, column);
    }
  }
  return gland;
}

}  // namespace cutback::test
