#include "cutback/job/field_text.hpp"

#include <cmath>

#include "cutback/measure/reading.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::job {
namespace {

std::string number_hint(std::string_view text) {
  if (text.find(',') != std::string_view::npos) return "write the decimal mark as a point";
  if (text.find_first_of("abcdefghijklmnopqrstuvwxyz%") != std::string_view::npos) {
    return "give a figure such as 2.5";
  }
  return {};
}

bool same_word(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (small_letter(a[i]) != small_letter(b[i])) return false;
  }
  return true;
}

/// The place of the word that was meant: exactly, else the only one that differs in case alone.
std::optional<std::size_t> find_word(std::span<const std::string_view> list,
                                     std::string_view text) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i] == text) return i;
    if (same_word(list[i], text)) found = i;
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

template <class Record>
std::vector<Fault> put_word(Record& record, const FieldOf<Record>& field, std::string_view text,
                            std::string_view where) {
  const auto* const typed = std::get_if<WordMember<Record>>(&field.member);
  const std::vector<std::string_view> split =
      typed == nullptr ? split_words(field.allowed) : std::vector<std::string_view>{};
  const std::span<const std::string_view> list = typed == nullptr ? split : typed->words;
  const auto place = find_word(list, text);
  if (!place) {
    return {make_fault(ErrorCode::bad_value, std::string(field.key) + " is not one of its words",
                       where, text, either_of(list),
                       did_you_mean(text, list, typed != nullptr && typed->graded))};
  }
  if (typed == nullptr) {
    put(record, field, std::string(list[*place]));
  } else {
    typed->put(record, place);
  }
  return {};
}

}  // namespace

template <class Record>
std::vector<std::string_view> words_of(const FieldOf<Record>& field) {
  if (field.kind != FieldKind::words && field.kind != FieldKind::yes_no) return {};
  const auto* const typed = std::get_if<WordMember<Record>>(&field.member);
  if (typed == nullptr) return split_words(field.allowed);
  return {typed->words.begin(), typed->words.end()};
}

std::string either_of(std::span<const std::string_view> list) {
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
    case FieldKind::yes_no:
      return either_of(words_of(field));
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
  const std::string_view text = trimmed(raw, " \t");
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
    case FieldKind::yes_no:
      return put_word(record, field, text, where);
    case FieldKind::readings:
      try {
        record.*std::get<std::optional<measure::Readings> Record::*>(field.member) =
            measure::Readings(text, where);
      } catch (const InputError& error) {
        return error.faults();
      }
      return {};
    case FieldKind::text:
      put(record, field, std::string(text));
      return {};
  }
  return {};
}

template <class Record>
std::optional<std::string> text_of(const Record& record, const FieldOf<Record>& field) {
  if (const auto* typed = std::get_if<WordMember<Record>>(&field.member)) {
    const auto place = typed->place(record);
    if (!place) return std::nullopt;
    return std::string(typed->words[*place]);
  }
  if (const auto* number = std::get_if<std::optional<double> Record::*>(&field.member)) {
    const std::optional<double>& value = record.**number;
    if (!value) return std::nullopt;
    return plain(*value, 9);
  }
  if (const auto* readings =
          std::get_if<std::optional<measure::Readings> Record::*>(&field.member)) {
    const std::optional<measure::Readings>& value = record.**readings;
    if (!value) return std::nullopt;
    return value->text;
  }
  return record.*std::get<std::optional<std::string> Record::*>(field.member);
}

template <class Record>
void take_away(Record& record, const FieldOf<Record>& field) {
  if (const auto* typed = std::get_if<WordMember<Record>>(&field.member)) {
    typed->put(record, std::nullopt);
  } else if (const auto* number = std::get_if<std::optional<double> Record::*>(&field.member)) {
    (record.**number).reset();
  } else if (const auto* readings =
                 std::get_if<std::optional<measure::Readings> Record::*>(&field.member)) {
    (record.**readings).reset();
  } else {
    (record.*std::get<std::optional<std::string> Record::*>(field.member)).reset();
  }
}

template std::vector<std::string_view> words_of(const Field&);
template std::vector<std::string_view> words_of(const CoreField&);
template std::optional<std::string> text_of(const JobInput&, const Field&);
template std::optional<std::string> text_of(const CoreInput&, const CoreField&);
template void take_away(JobInput&, const Field&);
template void take_away(CoreInput&, const CoreField&);
template std::string allowed_text(const Field&);
template std::string allowed_text(const CoreField&);
template std::vector<Fault> set_from_text(JobInput&, const Field&, std::string_view,
                                          std::string_view);
template std::vector<Fault> set_from_text(CoreInput&, const CoreField&, std::string_view,
                                          std::string_view);
template std::vector<Fault> set_from_number(JobInput&, const Field&, double, std::string_view);
template std::vector<Fault> set_from_number(CoreInput&, const CoreField&, double, std::string_view);

}  // namespace cutback::job
