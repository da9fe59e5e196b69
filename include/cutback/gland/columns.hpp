#pragma once
// The one table of a gland list's columns. Reader, messages, documentation and tests go through it.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "cutback/fit/reads.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/words.hpp"

namespace cutback::gland {

enum class ColumnKind {
  number,  ///< within [min, max]
  whole,   ///< a whole number within [min, max]
  word,    ///< one of its words
  words,   ///< any number of them, separated by spaces
  ip,      ///< two characters each, separated by spaces
  thread,
  text,
};

/// One limit of a range that every gland has.
struct RangeLimit {
  measure::Range Gland::*range;
  std::optional<double> measure::Range::*limit;
};

/// One limit of the inner seal, which a gland has where either limit is stated.
struct InnerLimit {
  std::optional<double> measure::Range::*limit;
};

/// One column. A blank cell leaves the gland's member as it is, at its default.
struct Column {
  using Member =
      std::variant<std::optional<double> Gland::*, double Gland::*, std::optional<int> Gland::*,
                   std::string Gland::*, std::optional<std::string> Gland::*,
                   std::vector<area::IpCode> Gland::*, entry::Thread Gland::*, WordMember<Gland>,
                   WordListMember<Gland>, RangeLimit, InnerLimit>;

  std::string_view name;
  ColumnKind kind;
  Member member;
  /// Checks that read it: glands alike in all that a check reads are one kind to it. Absent: nobody
  /// has said, which a test finds.
  std::optional<fit::Reads> checks;
  double min = 0.0;  ///< number and whole: closed limits
  double max = 0.0;
  std::string_view unit;  ///< of a number; may be empty
  /// word in a member of text: all of them, separated by spaces.
  std::string_view words;
  bool required = false;  ///< in every row
};

/// The columns in the order in which data/README.md lists them.
[[nodiscard]] std::span<const Column> columns();

/// Position of a column in columns(). @throws InternalError for a name that is not there
[[nodiscard]] std::size_t column_place(std::string_view name);

/// What may stand in the column, for messages: "a number from 0.1 to 300 mm".
[[nodiscard]] std::string allowed_text(const Column& column);

/// The words of a column of words; none of another.
[[nodiscard]] std::vector<std::string_view> words_of(const Column& column);

/// Whether one of its words claims more than another, so that none is offered for one that is not
/// known.
[[nodiscard]] bool is_graded(const Column& column);

/// Puts a value that is within the column's limits. @param value  of a number or whole
void put(Gland& gland, const Column& column, double value);

/// The same of any other column, as it stands in a cell. @param text  one that is allowed
void put(Gland& gland, const Column& column, std::string_view text);

/// The value as it would stand in a cell; nothing where it is not stated.
[[nodiscard]] std::optional<std::string> text_of(const Gland& gland, const Column& column);

/// The figure of a number or whole; nothing where it is not stated, or of another column.
[[nodiscard]] std::optional<double> number_of(const Gland& gland, const Column& column);

/// Makes the column a blank one: its member is that of a gland of which nothing is stated.
void take_away(Gland& gland, const Column& column);

}  // namespace cutback::gland
