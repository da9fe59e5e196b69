#pragma once
// A file that is read must not be written over, nor one be written twice.

#include <string>
#include <vector>

#include "cutback/error.hpp"

namespace cutback::cli {

/// A file on the command line or in the environment, and what named it.
struct NamedFile {
  std::string by;
  std::string path;
  bool written = false;
  bool is_folder = false;  ///< one whose tables (.json) are read
  std::string goes_on{};   ///< written: what names the file that it may take the place of
};

/// A fault for every file to be written that is also read, or written for another result: under
/// this name, by a link, or as standard input (`-`). Devices and pipes are no such files.
[[nodiscard]] std::vector<Fault> file_clashes(const std::vector<NamedFile>& files);

/// By links as well. Files that are not there yet are compared by their paths.
[[nodiscard]] bool same_file(const std::string& a, const std::string& b);

}  // namespace cutback::cli
