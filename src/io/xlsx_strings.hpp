#pragma once
// The texts that the cells of a workbook share.

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/xlsx_xml.hpp"

namespace cutback::io {

/// How much of a text is struck through.
enum class XlsxStruck : std::uint8_t { none, all, part };

/// The fonts of a text: its runs have their own, and where one has none it has that of the cell.
struct XlsxFonts {
  bool struck = false;   ///< some of it by its own font
  bool plain = false;    ///< some of it is not, by its own font
  bool of_cell = false;  ///< some of it has the cell's

  [[nodiscard]] XlsxStruck in(bool struck_cell) const {
    if (!struck && !(of_cell && struck_cell)) return XlsxStruck::none;
    return plain || (of_cell && !struck_cell) ? XlsxStruck::part : XlsxStruck::all;
  }
};

/// A text with its runs put together; phonetic guides (rPh) are left out. Elements are handed on
/// from within `si` or `is`.
class XlsxText {
 public:
  void start(std::string_view element, const XmlAttributes& attributes);
  void end(std::string_view element);
  /// What wants() said yes to.
  void take(std::string_view piece);
  [[nodiscard]] const XlsxFonts& fonts() const { return fonts_; }
  /// Whether text belongs to it now.
  [[nodiscard]] bool wants() const { return in_text_ && phonetic_ == 0; }

 private:
  std::size_t phonetic_ = 0;
  bool in_text_ = false;
  bool own_font_ = false;  ///< of the run at hand
  bool run_struck_ = false;
  XlsxFonts fonts_;  ///< of all but blanks
};

/// All of them in one piece of memory.
class XlsxStrings {
 public:
  /// None.
  XlsxStrings() = default;
  /// @throws InputError when the part is damaged
  XlsxStrings(XlsxPackage& package, const std::string& part);

  [[nodiscard]] std::optional<std::string_view> find(std::string_view number) const;
  [[nodiscard]] XlsxFonts fonts(std::string_view number) const;

 private:
  class Handler;
  std::string text_;
  std::vector<std::uint32_t> ends_;
  std::map<std::size_t, XlsxFonts> fonts_;  ///< of those that have their own
};

}  // namespace cutback::io
