#pragma once
// A file of one kind where one of another is read: it is named for what it is.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/file_clash.hpp"
#include "cutback/error.hpp"

namespace cutback::cli {

/// A fault for the first file that `command` reads and that is plainly of another kind.
/// To be asked once something was found wrong: it opens the files again, ordinary ones alone.
[[nodiscard]] std::optional<Fault> wrong_file(std::string_view command,
                                              const std::vector<NamedFile>& files);

}  // namespace cutback::cli
