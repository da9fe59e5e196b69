#pragma once
// The XML of a sheet cut into pieces of whole rows, so that several threads can read them.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "io/xlsx_package.hpp"
#include "io/xlsx_xml.hpp"

namespace cutback::io {

/// Rows that can be read behind the head of their sheet, without what stands before them.
struct XlsxPiece {
  std::string rows;
  std::size_t next_row = 0;  ///< the number of the row with which the next piece begins
};

/// A sheet, unpacked as it is taken. Cuts are made only where it cannot matter: between two rows
/// that stand side by side as programs write them, `</row><row r="7"`, the second with its number,
/// and never behind a comment or CDATA, in which the same characters could be text. What cannot be
/// cut is read in one go, as a source of bytes.
class XlsxPieces final : public ByteSource {
 public:
  /// @param package  with the sheet's part open; borrowed
  /// @throws InputError when the part cannot be unpacked
  explicit XlsxPieces(XlsxPackage& package) : package_(package) {}

  /// Looks for the head. @throws InputError when it is no well-formed XML
  void begin(const std::string& part);
  /// The sheet up to its rows; empty where it cannot be cut.
  [[nodiscard]] const std::string& head() const { return head_; }
  /// @return the next rows; nothing where they cannot be cut off, and never again then
  [[nodiscard]] std::optional<XlsxPiece> cut();

  /// Head and all that was not cut off.
  std::size_t read(char* to, std::size_t size) override;
  void finish() override { package_.finish(); }

 private:
  bool unpack(std::size_t size);
  [[nodiscard]] std::pair<std::size_t, std::size_t> find_cut() const;

  XlsxPackage& package_;
  std::string head_;
  std::string between_;            ///< what stands where a cut can be
  std::size_t end_tag_ = 0;        ///< length of its part that belongs to the piece before
  std::string held_;               ///< unpacked, not yet taken
  std::optional<ByteViews> rest_;  ///< head and what is held, once it is read in one go
  bool can_cut_ = false;
};

}  // namespace cutback::io
