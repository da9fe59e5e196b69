#pragma once
// A QR code (ISO/IEC 18004), drawn as areas.

#include <optional>
#include <string>
#include <vector>

namespace cutback::print {

struct QrCode {
  int side = 0;            ///< modules along one side, without the quiet zone
  std::vector<bool> dark;  ///< row by row

  /// The side with the quiet zone of four modules around it.
  [[nodiscard]] int whole() const { return side + 8; }
};

/// @return nothing where the text is too long for a code that is read on a card (644 bytes)
[[nodiscard]] std::optional<QrCode> make_qr_code(const std::string& text);

/// The code as the content of a PDF page (ISO 32000-1:2008, 8.5.2): through Cairo, which keeps and
/// looks at every area several times, it takes longer than all the rest of a card.
/// @param x, y  of the upper left corner of the quiet zone [mm from the page's upper left corner]
/// @param side_mm  with the quiet zone
[[nodiscard]] std::string qr_content(const QrCode& code, double x, double y, double side_mm,
                                     double page_height_mm);

}  // namespace cutback::print
