#include "cli/file_clash.hpp"

#include <filesystem>
#include <system_error>

#include "cutback/io/files.hpp"

namespace cutback::cli {
namespace {

namespace fs = std::filesystem;

/// Whether a file would be one of the tables in a folder.
bool lies_among(const std::string& path, const std::string& folder) {
  std::error_code error;
  const fs::path place = fs::absolute(path, error);
  return place.extension() == ".json" && fs::equivalent(place.parent_path(), folder, error);
}

bool clash_with(const NamedFile& written, const NamedFile& other) {
  if (!written.goes_on.empty() && other.by == written.goes_on) return false;
  return other.is_folder ? lies_among(written.path, other.path)
                         : same_file(written.path, io::input_place(other.path));
}

Fault clash(const NamedFile& written, const NamedFile& other) {
  return {.code = ErrorCode::contradiction,
          .what = other.written     ? "two results would go to one file"
                  : other.is_folder ? "the result would lie among the tables that are read"
                                    : "the result would replace a file that is read",
          .where = written.by + " and " + other.by,
          .given = written.path,
          .allowed = {},
          .hint = "give " + written.by + " another name"};
}

}  // namespace

bool same_file(const std::string& a, const std::string& b) {
  std::error_code error;
  if (fs::exists(a, error) || fs::exists(b, error)) {
    return fs::equivalent(a, b, error) && fs::is_regular_file(a, error);
  }
  const auto place = [&](const std::string& path) {
    return fs::weakly_canonical(fs::absolute(io::behind_links(path), error), error);
  };
  return place(a) == place(b) && !error;
}

std::vector<Fault> file_clashes(const std::vector<NamedFile>& files) {
  std::vector<Fault> faults;
  const auto is_file = [](const NamedFile& file) {
    return !file.path.empty() && !(file.written && file.path == "-");
  };
  for (std::size_t i = 0; i < files.size(); ++i) {
    if (!files[i].written || !is_file(files[i])) continue;
    for (std::size_t k = 0; k < files.size(); ++k) {
      const bool seen = files[k].written && k <= i;  // of two results one is named
      if (seen || !is_file(files[k]) || !clash_with(files[i], files[k])) continue;
      faults.push_back(clash(files[i], files[k]));
    }
  }
  return faults;
}

}  // namespace cutback::cli
