#pragma once
// Reading whole files, and writing them so that nothing half-written is ever left.

#include <cstddef>
#include <string>
#include <string_view>

namespace cutback::io {

/// A file's bytes, mapped into memory where that is possible (a pipe is read). Movable only.
class MappedFile {
 public:
  /// @throws FileError when it does not exist, is a folder, or cannot be read
  explicit MappedFile(const std::string& path);
  MappedFile(MappedFile&& other) noexcept;
  MappedFile& operator=(MappedFile&&) = delete;
  MappedFile(const MappedFile&) = delete;
  MappedFile& operator=(const MappedFile&) = delete;
  ~MappedFile();

  /// Valid as long as this object lives.
  [[nodiscard]] std::string_view text() const noexcept { return text_; }

 private:
  void* mapped_ = nullptr;
  std::size_t mapped_size_ = 0;
  std::string owned_;
  std::string_view text_;
};

/// Writes `content` to `path` through a temporary file beside it, so that `path` holds either
/// what it held before or all of `content`.
/// @throws FileError; nothing is left behind then
void write_file(const std::string& path, std::string_view content);

}  // namespace cutback::io
