#pragma once
// What a register of finished ends comes to, as text and as JSON.

#include <string>
#include <utility>
#include <vector>

#include "cutback/io/made_file.hpp"
#include "run/made_ends.hpp"

namespace cutback::cli {

using End = std::pair<std::string, std::string>;  ///< tag and end
[[nodiscard]] std::string name_of(const End& end);

/// An end of a schedule, or of its results.
struct Planned {
  End end;
  std::string part;                  ///< empty: none is chosen
  std::string place;                 ///< where it lies; may be empty
  std::string made;                  ///< the gland that it was finished with; empty: it is not
  std::vector<std::string> outside;  ///< readings that are not what they must be
};

/// A finished end whose test figures are not what they must be.
struct Tested {
  End end;
  std::vector<std::string> says;
};

/// What the register comes to beside what is planned.
struct Account {
  std::vector<io::MadeRow> finished;
  std::vector<io::MadeRow> measured;  ///< and not finished
  bool planned = false;               ///< the rest is known
  std::vector<Planned> outstanding;   ///< by place
  std::vector<Planned> other_gland;
  std::vector<Planned> outside;
  std::vector<run::NotFound> not_found;
  std::vector<Tested> tests;  ///< to look at again, planned or not
};

/// Lines of 80 columns; what a file holds is shortened and harmless.
[[nodiscard]] std::string made_text(const Account& account);
/// @param file  that the rows of `not_found` stand in
[[nodiscard]] std::string made_json(const Account& account, const io::MadeFile& file);

}  // namespace cutback::cli
