#pragma once
// The XML of a sheet cut into pieces of whole rows, so that several threads can read them.

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "io/xlsx_merges.hpp"
#include "io/xlsx_package.hpp"
#include "io/xlsx_xml.hpp"

namespace cutback::io {

/// What a sheet says of its cells, and of its pages, outside its rows.
struct XlsxLook {
  XlsxMerges merges;
  std::vector<std::size_t> hidden_columns;  ///< from 0, ascending
  std::vector<std::string> page_texts;      ///< of page headers and footers
};

/// Rows that can be read behind the head of their sheet, without what stands before them.
struct XlsxPiece {
  std::string_view rows;  ///< in `own`, or where the whole sheet is held
  std::string own;
  std::size_t first_row = 0;  ///< no row of it has a smaller number
  std::size_t next_row = 0;   ///< the number of the row with which the next piece begins
};

/// A sheet, unpacked and held, or where it is very long unpacked again as it is taken. Cuts are
/// made only where it cannot matter: between two rows that stand side by side as programs write
/// them, `</row><row r="7"`, the second with its number, and never behind a comment or CDATA, in
/// which the same characters could be text. What cannot be cut is read in one go, as a source of
/// bytes.
class XlsxPieces final : public ByteSource {
 public:
  /// @param package  borrowed. @param part  of the sheet
  XlsxPieces(XlsxPackage& package, std::string part);

  /// Unpacks the sheet once and finds its head and what stands behind its rows.
  /// @throws InputError when it cannot be unpacked or is no well-formed XML
  [[nodiscard]] XlsxLook look();
  /// Begins at the first row, again where that has been done before. After look().
  void begin();
  /// The sheet up to its rows; empty where it cannot be cut.
  [[nodiscard]] const std::string& head() const { return head_; }
  /// @return the next rows; nothing where they cannot be cut off, and never again then
  [[nodiscard]] std::optional<XlsxPiece> cut();
  /// How much of the sheet has been taken, 0 to 1; to be called on any thread.
  [[nodiscard]] double taken() const;

  /// Head and all that was not cut off.
  std::size_t read(char* to, std::size_t size) override;
  void finish() override;

 private:
  bool unpack(std::size_t size);
  void find_head();
  [[nodiscard]] std::pair<std::size_t, std::size_t> find_cut(std::string_view text) const;
  [[nodiscard]] XlsxLook look_at(std::string_view tail) const;
  [[nodiscard]] XlsxLook look_at_all();
  [[nodiscard]] std::string_view held() const { return std::string_view(held_).substr(at_); }

  XlsxPackage& package_;
  std::string part_;
  std::string head_;
  std::string between_;                ///< what stands where a cut can be
  std::size_t end_tag_ = 0;            ///< length of its part that belongs to the piece before
  std::string rows_end_;               ///< the tag behind the last row
  std::string held_;                   ///< unpacked
  std::size_t at_ = 0;                 ///< of it, not yet taken
  bool whole_ = false;                 ///< all of the sheet is held
  bool cuts_ = false;                  ///< it can be cut
  std::atomic<std::size_t> done_ = 0;  ///< of a sheet that is held
  std::size_t next_row_ = 1;
  std::optional<ByteViews> rest_;  ///< head and what is held, once it is read in one go
  bool can_cut_ = false;
};

}  // namespace cutback::io
