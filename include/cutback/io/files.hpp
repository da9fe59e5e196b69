#pragma once
// Reading whole files, and writing them so that nothing half-written is ever left.

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <utility>

#include "cutback/bounds.hpp"

namespace cutback::io {

/// Where a file is written that the user names: where a link leads, also one that leads to no file
/// yet.
[[nodiscard]] std::string behind_links(const std::string& path);

/// Where to read a file that the user names: `-` is standard input.
[[nodiscard]] inline std::string input_place(const std::string& path) {
  return path == "-" ? "/dev/stdin" : path;
}

/// A file's bytes, read whole when it is opened: what another program does to the file afterwards
/// does not reach them. Movable only.
class WholeFile {
 public:
  /// @param most  what is read at most, also of a pipe or a device that has no end
  /// @throws FileError when it does not exist, is a folder, cannot be read, or changed meanwhile
  /// @throws InputError when it is longer
  explicit WholeFile(const std::string& path, const Bound& most = bounds::k_file_bytes);
  WholeFile(WholeFile&& other) noexcept : bytes_(std::move(other.bytes_)) {}
  WholeFile& operator=(WholeFile&&) = delete;
  WholeFile(const WholeFile&) = delete;
  WholeFile& operator=(const WholeFile&) = delete;
  ~WholeFile() = default;

  /// Valid as long as this object lives.
  [[nodiscard]] std::string_view text() const noexcept { return bytes_; }

 private:
  std::string bytes_;
};

/// A file or pipe that is read piece by piece. Not movable.
class PieceReader {
 public:
  /// @throws FileError when it does not exist, is a folder, or cannot be read
  explicit PieceReader(std::string path);
  PieceReader(const PieceReader&) = delete;
  PieceReader& operator=(const PieceReader&) = delete;
  ~PieceReader();

  /// An ordinary file: it has a size, and can be read again.
  [[nodiscard]] bool is_file() const noexcept { return is_file_; }
  /// Of an ordinary file when it was opened, in bytes.
  [[nodiscard]] std::size_t size() const noexcept { return size_; }
  /// Appends the next piece to `into`: at least `least` bytes, where there are as many.
  /// @return false at the end
  /// @throws FileError
  bool read(std::string& into, std::size_t least);
  /// Of an ordinary file: that nobody has written to it, or put another in its place, since it was
  /// opened. @throws FileError
  void check_unchanged() const;

 private:
  std::string path_;
  int descriptor_;
  bool is_file_ = false;
  std::size_t size_ = 0;
  std::int64_t changed_s_ = 0;   ///< when it was last written to: seconds since 1970-01-01
  std::int64_t changed_ns_ = 0;  ///< and nanoseconds
};

/// A file that is written piece by piece: `path` is written over by commit() alone, so that it
/// holds either what it held before or all of the new. Till then the new file has no name, or one
/// beside `path`. A file that is replaced keeps its permissions, and its owner where that is
/// allowed. A pipe or a device is written to at once. Not movable.
class FileWriter {
 public:
  /// @throws FileError when it cannot be written there, or the file there is marked as read-only
  explicit FileWriter(std::string path);
  FileWriter(const FileWriter&) = delete;
  FileWriter& operator=(const FileWriter&) = delete;
  /// Without commit() nothing is left behind.
  ~FileWriter();

  /// @throws FileError
  void append(std::string_view content);
  /// @throws FileError; to be called once, at the end
  void commit();

  [[nodiscard]] const std::string& path() const noexcept { return path_; }
  /// A pipe or a device.
  [[nodiscard]] bool is_special() const noexcept { return target_.empty(); }
  /// Of an ordinary file: where a library that opens files by itself may write it, in place of
  /// append().
  [[nodiscard]] std::string place() const;
  /// The folder that it will lie in; empty for a pipe or a device.
  [[nodiscard]] std::string folder() const;

 private:
  friend class FileSet;
  void begin_saving();
  void finish();
  void keep_old();
  void put_in_place();
  [[nodiscard]] bool put_old_back();
  void forget_old();

  std::string path_;
  std::string target_;     ///< the file behind links; empty for a pipe or a device
  std::string temporary_;  ///< its name until then, where it has one
  std::string old_;        ///< a further name of the file that is replaced, while it may come back
  bool is_placed_ = false;
  int descriptor_ = -1;
  std::size_t written_ = 0;
  std::size_t saving_ = 0;  ///< of them, on their way to the disk
};

/// Files that take their places together: all of them, or none.
class FileSet {
 public:
  /// @return valid until commit()
  /// @throws FileError as FileWriter
  FileWriter& add(std::string path) { return files_.emplace_back(std::move(path)); }
  /// Puts all that were added in their places, and holds none any more.
  /// @throws FileError; every file is then what it was before, or the error says where it is
  void commit();

 private:
  std::deque<FileWriter> files_;
};

/// Writes one file with `content`, by a FileWriter.
/// @throws FileError; nothing is left behind then
void write_file(const std::string& path, std::string_view content);

}  // namespace cutback::io
