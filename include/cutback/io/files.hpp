#pragma once
// Reading whole files, and writing them so that nothing half-written is ever left.

#include <cstddef>
#include <string>
#include <string_view>

namespace cutback::io {

/// Where to read a file that the user names: `-` is standard input.
[[nodiscard]] inline std::string input_place(const std::string& path) {
  return path == "-" ? "/dev/stdin" : path;
}

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

/// A file or pipe that is read piece by piece. Not movable.
class PieceReader {
 public:
  /// @throws FileError when it does not exist, is a folder, or cannot be read
  explicit PieceReader(std::string path);
  PieceReader(const PieceReader&) = delete;
  PieceReader& operator=(const PieceReader&) = delete;
  ~PieceReader();

  /// An ordinary file: it can be mapped, or read from any place.
  [[nodiscard]] bool is_file() const noexcept { return is_file_; }
  /// Of an ordinary file, in bytes.
  [[nodiscard]] std::size_t size() const noexcept { return size_; }
  [[nodiscard]] int descriptor() const noexcept { return descriptor_; }
  /// Appends the next piece to `into`: at least `least` bytes, where there are as many.
  /// @return false at the end
  /// @throws FileError
  bool read(std::string& into, std::size_t least);

 private:
  std::string path_;
  int descriptor_;
  bool is_file_ = false;
  std::size_t size_ = 0;
};

/// Writes `content` to `path` through a file that has no name till then, so that `path` holds
/// either what it held before or all of `content`.
/// @throws FileError; nothing is left behind then
void write_file(const std::string& path, std::string_view content);

/// The same, piece by piece: `path` is written over by commit() alone. A pipe or a device is
/// written to at once. Not movable.
class FileWriter {
 public:
  /// @throws FileError when it cannot be written there
  explicit FileWriter(std::string path);
  FileWriter(const FileWriter&) = delete;
  FileWriter& operator=(const FileWriter&) = delete;
  /// Without commit() nothing is left behind.
  ~FileWriter();

  /// @throws FileError
  void append(std::string_view content);
  /// @throws FileError; to be called once, at the end
  void commit();

 private:
  void begin_saving();

  std::string path_;
  std::string target_;     ///< the file behind links; empty for a pipe or a device
  std::string temporary_;  ///< its name until then, where it needs one
  int descriptor_ = -1;
  std::size_t written_ = 0;
  std::size_t saving_ = 0;  ///< of them, on their way to the disk
};

}  // namespace cutback::io
