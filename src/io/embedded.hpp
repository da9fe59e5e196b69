#pragma once
// Files of data/ that are built into the library (src/cmake/embed.cmake).

#include <span>
#include <string_view>

namespace cutback::embedded {

struct File {
  std::string_view name;
  std::string_view content;
  std::string_view sha256;
};

std::span<const File> standards();
std::span<const File> demo();

}  // namespace cutback::embedded
