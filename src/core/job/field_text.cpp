#include "cutback/job/field_text.hpp"

#include <cmath>

#include "cutback/measure/reading.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"

namespace cutback::job {
namespace {

std::vector<std::string_view> split_words(std::string_view words) {
  std::vector<std::string_view> list;
  while (!words.empty()) {
    const std::size_t end = words.find(' ');
    if (end != 0) list.push_back(words.substr(0, end));
    words = end == std::string_view::npos ? std::string_view{} : words.substr(end + 1);
  }
  return list;
}

Fault make_fault(ErrorCode code, std::string what, std::string_view where, std::string_view given,
                 std::string allowed, std::string hint) {
  return {.code = code,
          .what = std::move(what),
          .where = std::string(where),
          .given = std::string(given),
          .allowed = std::move(allowed),
          .hint = std::move(hint)};
}

std::string number_hint(std::string_view text) {
  if (text.find(',') != std::string_view::npos) return "write the decimal mark as a point";
  if (text.find_first_of("abcdefghijklmnopqrstuvwxyz%") != std::string_view::npos) {
    return "give the figure alone, without its unit";
  }
  return {};
}

bool same_word(std::string_view a, std::string_view b) {
  const auto lower = [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (lower(a[i]) != lower(b[i])) return false;
  }
  return true;
}

/// The word of the list that was meant: exactly, else the only one that differs in case alone.
std::optional<std::string_view> find_word(const std::vector<std::string_view>& list,
                                          std::string_view text) {
  std::optional<std::string_view> found;
  for (const std::string_view word : list) {
    if (word == text) return word;
    if (same_word(word, text)) found = word;
  }
  return found;
}

template <class Record>
std::vector<Fault> check_range(const FieldOf<Record>& field, double value, std::string_view given,
                               std::string_view where) {
  if (field.kind == FieldKind::whole && value != std::floor(value)) {
    return {make_fault(ErrorCode::bad_number, std::string(field.key) + " is not a whole number",
                       where, given, allowed_text(field), "")};
  }
  if (!(value >= field.min && value <= field.max)) {
    return {make_fault(ErrorCode::out_of_range, std::string(field.key) + " is out of range", where,
                       given, allowed_text(field), "")};
  }
  return {};
}

template <class Record>
void put(Record& record, const FieldOf<Record>& field, std::string value) {
  record.*std::get<std::optional<std::string> Record::*>(field.member) = std::move(value);
}

template <class Record>
void put(Record& record, const FieldOf<Record>& field, double value) {
  record.*std::get<std::optional<double> Record::*>(field.member) = value;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

}  // namespace

std::string either_of(std::string_view words) {
  const auto list = split_words(words);
  std::string text;
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (i > 0) text += i + 1 == list.size() ? " or " : ", ";
    text += list[i];
  }
  return text;
}

template <class Record>
std::string allowed_text(const FieldOf<Record>& field) {
  switch (field.kind) {
    case FieldKind::number:
    case FieldKind::whole:
      return plain(field.min) + " to " + plain(field.max, 0) + " " + std::string(field.allowed);
    case FieldKind::words:
      return either_of(field.allowed);
    case FieldKind::yes_no:
    case FieldKind::readings:
    case FieldKind::text:
      return std::string(field.allowed);
  }
  return {};
}

template <class Record>
std::vector<Fault> set_from_number(Record& record, const FieldOf<Record>& field, double value,
                                   std::string_view where) {
  if (field.kind != FieldKind::number && field.kind != FieldKind::whole) {
    return set_from_text(record, field, plain(value, 9), where);
  }
  if (!std::isfinite(value)) {
    return {make_fault(ErrorCode::bad_number, "this is not a number", where, "",
                       allowed_text(field), "")};
  }
  if (auto faults = check_range(field, value, plain(value, 9), where); !faults.empty())
    return faults;
  put(record, field, value);
  return {};
}

template <class Record>
std::vector<Fault> set_from_text(Record& record, const FieldOf<Record>& field, std::string_view raw,
                                 std::string_view where) {
  const std::string_view text = trimmed(raw);
  if (text.empty()) {
    return {make_fault(ErrorCode::bad_value, std::string(field.key) + " is empty", where, "",
                       allowed_text(field), "leave it out when it is not known")};
  }
  switch (field.kind) {
    case FieldKind::number:
    case FieldKind::whole: {
      const auto value = parse_number(text);
      if (!value) {
        return {make_fault(ErrorCode::bad_number, std::string(field.key) + " is not a plain number",
                           where, text, allowed_text(field), number_hint(text))};
      }
      if (auto faults = check_range(field, *value, text, where); !faults.empty()) return faults;
      put(record, field, *value);
      return {};
    }
    case FieldKind::words:
    case FieldKind::yes_no: {
      const auto list = split_words(field.kind == FieldKind::yes_no ? "yes no" : field.allowed);
      const auto word = find_word(list, text);
      if (!word) {
        return {make_fault(ErrorCode::bad_value,
                           std::string(field.key) + " is not one of its words", where, text,
                           allowed_text(field), did_you_mean(text, list))};
      }
      put(record, field, std::string(*word));
      return {};
    }
    case FieldKind::readings:
      try {
        (void)measure::parse_places(text, where);
      } catch (const InputError& error) {
        return error.faults();
      }
      put(record, field, std::string(text));
      return {};
    case FieldKind::text:
      put(record, field, std::string(text));
      return {};
  }
  return {};
}

template std::string allowed_text(const Field&);
template std::string allowed_text(const CoreField&);
template std::vector<Fault> set_from_text(JobInput&, const Field&, std::string_view,
                                          std::string_view);
template std::vector<Fault> set_from_text(CoreInput&, const CoreField&, std::string_view,
                                          std::string_view);
template std::vector<Fault> set_from_number(JobInput&, const Field&, double, std::string_view);
template std::vector<Fault> set_from_number(CoreInput&, const CoreField&, double, std::string_view);

}  // namespace cutback::job
