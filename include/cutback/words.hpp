#pragma once
// Words that a user writes for the values of an enumeration.
//
// An enumeration with words has two functions beside it: to_string(Enum), and all_values(Enum),
// which lists its values in the order in which a user is told of them. `yes` and `no` stand for a
// bool.

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

/// The word of each of k_values.
template <class Value>
inline constexpr auto k_words = [] {
  std::array<std::string_view, k_values<Value>.size()> words{};
  for (std::size_t i = 0; i < words.size(); ++i) {
    if constexpr (std::is_same_v<Value, bool>) {
      words[i] = k_values<Value>[i] ? "yes" : "no";
    } else {
      words[i] = to_string(k_values<Value>[i]);
    }
  }
  return words;
}();

/// A member of Record that holds a value with a word, without its type: one function can then set
/// the members of every enumeration.
template <class Record>
struct WordMember {
  std::span<const std::string_view> words;
  /// Which of the words the member holds; nothing where it is absent.
  std::optional<std::size_t> (*place)(const Record&);
  /// Puts the value of one of the words there, or takes it away.
  void (*put)(Record&, std::optional<std::size_t>);
};

namespace detail {

template <auto Member>
struct WordMemberOf;

template <class Record, class Value, std::optional<Value> Record::*Member>
struct WordMemberOf<Member> {
  static std::optional<std::size_t> place(const Record& record) {
    const std::optional<Value>& value = record.*Member;
    if (!value) return std::nullopt;
    const auto& all = k_values<Value>;
    return static_cast<std::size_t>(std::find(all.begin(), all.end(), *value) - all.begin());
  }
  static void put(Record& record, std::optional<std::size_t> place) {
    (record.*Member).reset();
    if (place) record.*Member = k_values<Value>[*place];
  }
  static constexpr WordMember<Record> k_member{k_words<Value>, place, put};
};

/// A member that always has a value: taken away, it is that of an empty record.
template <class Record, class Value, Value Record::*Member>
requires std::is_enum_v<Value>
struct WordMemberOf<Member> {
  static std::optional<std::size_t> place(const Record& record) {
    const auto& all = k_values<Value>;
    return static_cast<std::size_t>(std::find(all.begin(), all.end(), record.*Member) -
                                    all.begin());
  }
  static void put(Record& record, std::optional<std::size_t> place) {
    record.*Member = place ? k_values<Value>[*place] : Record{}.*Member;
  }
  static constexpr WordMember<Record> k_member{k_words<Value>, place, put};
};

}  // namespace detail

/// The member, of an enumeration or an optional of one or of bool, by its words.
template <auto Member>
[[nodiscard]] constexpr auto word() {
  return detail::WordMemberOf<Member>::k_member;
}

}  // namespace cutback
