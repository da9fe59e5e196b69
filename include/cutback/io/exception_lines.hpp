#pragma once
// The exceptions of a schedule, however many there are.

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace cutback::io {

/// Lines of CSV put into groups. Memory: what was added last, up to a limit; the rest lies in a
/// temporary file.
class ExceptionLines {
 public:
  ExceptionLines() = default;
  /// @param most  bytes of lines in memory
  explicit ExceptionLines(std::size_t most) : most_(most) {}

  /// @param line  of append_exception_csv
  /// @throws FileError when there is no room in the folder for temporary files
  void add(const std::string& group, std::string_view line);
  /// Hands out all of them in pieces of whole lines: the largest group first, then by name; within
  /// a group as they were added.
  /// @throws FileError
  void each(const std::function<void(std::string_view lines)>& take) const;

 private:
  struct Piece {
    std::size_t offset;  ///< in the file
    std::size_t size;
  };
  struct Group {
    std::uint64_t count = 0;
    std::vector<Piece> pieces;
    std::string last;  ///< not in the file
  };
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  void set_aside();

  std::size_t most_ = std::size_t{8} << 20U;
  std::size_t held_ = 0;  ///< bytes in memory
  std::map<std::string, Group> groups_;
  std::unique_ptr<std::FILE, Close> file_;
  std::size_t size_ = 0;  ///< of the file
};

}  // namespace cutback::io
