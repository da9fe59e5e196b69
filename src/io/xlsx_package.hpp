#pragma once
// The parts of a workbook: a ZIP archive in memory.

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>

#include "cutback/error.hpp"

namespace cutback::io {

/// A part's name as parts are looked for: strokes forward, small letters.
[[nodiscard]] std::string plain_part_name(std::string name);

/// The error for something in a workbook. @param where  file, with sheet and row where known
[[nodiscard]] InputError xlsx_fault(ErrorCode code, std::string what, std::string where,
                                    std::string given, std::string hint);
/// A workbook that does not hold what its format promises.
[[nodiscard]] InputError xlsx_damaged(std::string what, std::string where);

/// Bytes that come piece by piece.
class ByteSource {
 public:
  virtual ~ByteSource() = default;
  /// Puts what comes next at `to`. @return the number of bytes, 0 at the end
  virtual std::size_t read(char* to, std::size_t size) = 0;
  /// Reads to the end, for a check sum.
  virtual void finish() = 0;
};

/// Texts in memory, one after the other.
class ByteViews final : public ByteSource {
 public:
  ByteViews(std::string_view first, std::string_view second) : first_(first), second_(second) {}
  std::size_t read(char* to, std::size_t size) override;
  void finish() override {}

 private:
  std::string_view first_;
  std::string_view second_;
};

/// Reads one part after the other. Guards against an archive that unpacks to far more than it
/// holds.
class XlsxPackage final : public ByteSource {
 public:
  /// @throws InputError when the bytes are no whole ZIP archive
  XlsxPackage(std::string_view bytes, std::string name);
  XlsxPackage(const XlsxPackage&) = delete;
  XlsxPackage& operator=(const XlsxPackage&) = delete;
  ~XlsxPackage() override;

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] bool has(const std::string& part) const;
  /// Begins to read a part, such as xl/workbook.xml; names are compared without regard to
  /// case, and a backslash in one is a slash: some writers use them.
  /// @param most  bytes that it may unpack to
  /// @throws InputError when it is missing, locked or unpacks to more
  void open(const std::string& part, std::uint64_t most);
  /// @throws InputError when the archive is damaged (its check sum among that)
  std::size_t read(char* to, std::size_t size) override;
  /// Of the part that is open, unpacked.
  [[nodiscard]] std::uint64_t size() const { return size_; }
  /// How much of the part has been read, 0 to 1; to be called on any thread.
  [[nodiscard]] double taken() const;
  void finish() override;

 private:
  struct Memory;
  std::string name_;
  std::string part_;
  std::unique_ptr<Memory> memory_;
  void* zip_ = nullptr;
  struct Entry {
    std::uint64_t directory;  ///< where minizip finds it again
    std::uint64_t number;
  };
  std::map<std::string, Entry> entries_;  ///< by their names, in small letters with slashes
  bool open_ = false;
  std::uint64_t size_ = 0;  ///< of the part, unpacked
  std::atomic<std::uint64_t> read_ = 0;
};

}  // namespace cutback::io
