#pragma once
// Words that a user writes for the values of an enumeration.
//
// An enumeration with words has two functions beside it: to_string(Enum), and all_values(Enum),
// which lists its values in the order in which a user is told of them. `yes` and `no` stand for a
// bool. Where one word asks for more than another there is a third, is_graded(Enum): none of its
// words is ever offered for one that is not known.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <type_traits>
#include <vector>

namespace cutback {

/// The parts of `text` between runs of spaces.
[[nodiscard]] std::vector<std::string_view> split_words(std::string_view text);

template <class Value>
inline constexpr auto k_values = [] {
  if constexpr (std::is_same_v<Value, bool>) {
    return std::array{true, false};
  } else {
    return all_values(Value{});
  }
}();

/// The word of each of some values.
template <const auto& Values>
inline constexpr auto k_words_of = [] {
  std::array<std::string_view, Values.size()> words{};
  for (std::size_t i = 0; i < words.size(); ++i) {
    if constexpr (std::is_same_v<std::decay_t<decltype(Values[0])>, bool>) {
      words[i] = Values[i] ? "yes" : "no";
    } else {
      words[i] = to_string(Values[i]);
    }
  }
  return words;
}();

/// The word of each of k_values.
template <class Value>
inline constexpr auto k_words = k_words_of<k_values<Value>>;

/// Whether a word of these is never to be offered for another. Yes and no are as far apart as can
/// be.
template <class Value>
inline constexpr bool k_graded = [] {
  if constexpr (requires { is_graded(Value{}); }) {
    return is_graded(Value{});
  } else {
    return std::is_same_v<Value, bool>;
  }
}();

/// The value of a word; nothing for one that is not known.
template <class Value>
[[nodiscard]] constexpr std::optional<Value> value_of(std::string_view word) {
  for (std::size_t i = 0; i < k_words<Value>.size(); ++i) {
    if (k_words<Value>[i] == word) return k_values<Value>[i];
  }
  return std::nullopt;
}

/// A member of Record that holds a value with a word, without its type: one function can then set
/// the members of every enumeration.
template <class Record>
struct WordMember {
  std::span<const std::string_view> words;
  bool graded;  ///< one of the words asks for more than another
  /// Which of the words the member holds; nothing where it is absent.
  std::optional<std::size_t> (*place)(const Record&);
  /// Puts the value of one of the words there, or takes it away.
  void (*put)(Record&, std::optional<std::size_t>);
};

/// The same of a member that holds any number of values.
template <class Record>
struct WordListMember {
  std::span<const std::string_view> words;
  bool graded;
  /// Which of the words the member holds, in its order.
  std::vector<std::size_t> (*places)(const Record&);
  void (*put)(Record&, std::span<const std::size_t>);
};

namespace detail {

template <class Value, class All>
std::optional<std::size_t> place_in(const All& all, const Value& value) {
  const auto found = std::find(all.begin(), all.end(), value);
  if (found == all.end()) return std::nullopt;
  return static_cast<std::size_t>(found - all.begin());
}

template <auto Member>
struct WordMemberOf;

template <class Record, class Held, std::optional<Held> Record::*Member>
struct WordMemberOf<Member> {
  using Value = Held;
  template <const auto& Values>
  static std::optional<std::size_t> place(const Record& record) {
    const std::optional<Value>& value = record.*Member;
    return value ? place_in(Values, *value) : std::nullopt;
  }
  template <const auto& Values>
  static void put(Record& record, std::optional<std::size_t> place) {
    (record.*Member).reset();
    if (place) record.*Member = Values[*place];
  }
  template <const auto& Values>
  static constexpr WordMember<Record> k_member{k_words_of<Values>, k_graded<Value>, place<Values>,
                                               put<Values>};
};

/// A member that always has a value: taken away, it is that of an empty record.
template <class Record, class Held, Held Record::*Member>
requires std::is_enum_v<Held>
struct WordMemberOf<Member> {
  using Value = Held;
  template <const auto& Values>
  static std::optional<std::size_t> place(const Record& record) {
    return place_in(Values, record.*Member);
  }
  template <const auto& Values>
  static void put(Record& record, std::optional<std::size_t> place) {
    record.*Member = place ? Values[*place] : Record{}.*Member;
  }
  template <const auto& Values>
  static constexpr WordMember<Record> k_member{k_words_of<Values>, k_graded<Value>, place<Values>,
                                               put<Values>};
};

template <class Record, class Held, std::vector<Held> Record::*Member>
struct WordMemberOf<Member> {
  using Value = Held;
  template <const auto& Values>
  static std::vector<std::size_t> places(const Record& record) {
    std::vector<std::size_t> places;
    for (const Value& value : record.*Member) {
      if (const auto place = place_in(Values, value)) places.push_back(*place);
    }
    return places;
  }
  template <const auto& Values>
  static void put(Record& record, std::span<const std::size_t> places) {
    (record.*Member).clear();
    for (const std::size_t place : places) (record.*Member).push_back(Values[place]);
  }
  template <const auto& Values>
  static constexpr WordListMember<Record> k_member{k_words_of<Values>, k_graded<Value>,
                                                   places<Values>, put<Values>};
};

}  // namespace detail

/// The member, of an enumeration, an optional of one or of bool, or a list of one, by its words.
template <auto Member>
[[nodiscard]] constexpr auto word() {
  using Of = detail::WordMemberOf<Member>;
  return Of::template k_member<k_values<typename Of::Value>>;
}

/// The same where only some of the values may be given.
template <auto Member, const auto& Values>
[[nodiscard]] constexpr auto word() {
  return detail::WordMemberOf<Member>::template k_member<Values>;
}

}  // namespace cutback
