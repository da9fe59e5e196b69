#pragma once
// What can be wrong with a question or its data. A negative engineering answer is not an error.

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace cutback {

enum class ErrorCode {
  bad_number,     ///< not a plain decimal number
  bad_value,      ///< not one of the words or forms that are allowed
  out_of_range,   ///< a number outside the limits that are allowed
  missing,        ///< something that is needed was not given
  unknown_name,   ///< an option, column, key or part that does not exist
  duplicate,      ///< given twice
  contradiction,  ///< two values that cannot both be true
  bad_syntax,     ///< the file or the command line cannot be read as what it should be
  cannot_read,    ///< a file or folder that cannot be read
  cannot_write,   ///< a file that cannot be written
  internal,       ///< a bug in this program
};

[[nodiscard]] const char* to_string(ErrorCode code);

/// One thing that is wrong. Message order: what, where, given against allowed, what to do.
struct Fault {
  ErrorCode code = ErrorCode::bad_value;
  std::string what;     ///< what is wrong, in a few words
  std::string where;    ///< option, file with row and column, or JSON path
  std::string given;    ///< the value as it was written; empty when there was none
  std::string allowed;  ///< what would be accepted, with its unit; may be empty
  std::string hint;     ///< what to do next; may be empty
};

/// A fault from its parts in the order of the message.
[[nodiscard]] Fault make_fault(ErrorCode code, std::string what, std::string_view where,
                               std::string_view given, std::string allowed, std::string hint = {});

/// Length of a UTF-8 sequence at the start of `text` that a terminal would obey rather than show:
/// C1 controls (U+0080 to U+009F), the marks that turn the direction of writing, what has no width,
/// the separators of lines and paragraphs, and the tags of U+E0000 to U+E0FFF. 0 when there is none.
[[nodiscard]] std::size_t hidden_length(std::string_view text);

/// The fault as one line without a line end; control characters in it are shown as `?`.
[[nodiscard]] std::string to_line(const Fault& fault);

/// Base of the three errors. Carries every independent fault that was found.
class Error : public std::runtime_error {
 public:
  explicit Error(std::vector<Fault> faults);
  [[nodiscard]] const std::vector<Fault>& faults() const noexcept { return faults_; }

 private:
  std::vector<Fault> faults_;
};

/// A user's value or a file's content is wrong (exit status 2).
class InputError : public Error {
 public:
  explicit InputError(Fault fault) : Error({std::move(fault)}) {}
  explicit InputError(std::vector<Fault> faults) : Error(std::move(faults)) {}
};

/// A file cannot be read or written (exit status 3).
class FileError : public Error {
 public:
  explicit FileError(Fault fault) : Error({std::move(fault)}) {}
};

/// A broken promise inside the program (exit status 4).
class InternalError : public Error {
 public:
  explicit InternalError(const std::string& what)
      : Error({Fault{.code = ErrorCode::internal,
                     .what = what,
                     .where = {},
                     .given = {},
                     .allowed = {},
                     .hint = "please report it with the command that you typed"}}) {}
};

}  // namespace cutback
