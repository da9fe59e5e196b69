#pragma once
// The texts that the cells of a workbook share.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "io/xlsx_xml.hpp"

namespace cutback::io {

/// A text with its runs put together; phonetic guides (rPh) are left out. Elements are handed on
/// from within `si` or `is`.
class XlsxText {
 public:
  void start(std::string_view element);
  void end(std::string_view element);
  /// Whether text belongs to it now.
  [[nodiscard]] bool wants() const { return in_text_ && phonetic_ == 0; }

 private:
  std::size_t phonetic_ = 0;
  bool in_text_ = false;
};

/// All of them in one piece of memory.
class XlsxStrings {
 public:
  /// None.
  XlsxStrings() = default;
  /// @throws InputError when the part is damaged
  XlsxStrings(XlsxPackage& package, const std::string& part);

  [[nodiscard]] std::optional<std::string_view> find(std::string_view number) const;

 private:
  class Handler;
  std::string text_;
  std::vector<std::uint32_t> ends_;
};

}  // namespace cutback::io
