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

/// How much of a text is struck through by its own runs.
enum class XlsxStruck : std::uint8_t { none, all, part };

/// A text with its runs put together; phonetic guides (rPh) are left out. Elements are handed on
/// from within `si` or `is`.
class XlsxText {
 public:
  void start(std::string_view element, const XmlAttributes& attributes);
  void end(std::string_view element);
  /// What wants() said yes to.
  void take(std::string_view piece);
  [[nodiscard]] XlsxStruck struck() const {
    if (struck_ == 0) return XlsxStruck::none;
    return plain_ == 0 ? XlsxStruck::all : XlsxStruck::part;
  }
  /// Whether text belongs to it now.
  [[nodiscard]] bool wants() const { return in_text_ && phonetic_ == 0; }

 private:
  std::size_t phonetic_ = 0;
  bool in_text_ = false;
  bool run_struck_ = false;
  std::size_t struck_ = 0;  ///< characters that are, blanks left out
  std::size_t plain_ = 0;
};

/// All of them in one piece of memory.
class XlsxStrings {
 public:
  /// None.
  XlsxStrings() = default;
  /// @throws InputError when the part is damaged
  XlsxStrings(XlsxPackage& package, const std::string& part);

  [[nodiscard]] std::optional<std::string_view> find(std::string_view number) const;
  [[nodiscard]] XlsxStruck struck(std::string_view number) const;

 private:
  class Handler;
  std::string text_;
  std::vector<std::uint32_t> ends_;
  std::map<std::size_t, XlsxStruck> struck_;  ///< of those that are
};

}  // namespace cutback::io
