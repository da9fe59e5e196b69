#include "print/pages/qr_code.hpp"

#include <fmt/format.h>
#include <iterator>
#include <qrcodegen/qrcodegen.hpp>

#include "print/pages/typesetter.hpp"

namespace cutback::print {

// 85 modules a side, 644 bytes: a larger one has modules that are not read on a card's 22 mm.
constexpr int k_largest_version = 17;

std::optional<QrCode> make_qr_code(const std::string& text) {
  try {
    // One mask for all: to try all eight takes as long as all the rest of a card, and a clean print
    // is read with any of them.
    constexpr int k_mask = 0;
    const qrcodegen::QrCode code = qrcodegen::QrCode::encodeSegments(
        qrcodegen::QrSegment::makeSegments(text.c_str()), qrcodegen::QrCode::Ecc::LOW, 1,
        k_largest_version, k_mask, false);
    QrCode result;
    result.side = code.getSize();
    for (int row = 0; row < result.side; ++row) {
      for (int column = 0; column < result.side; ++column) {
        result.dark.push_back(code.getModule(column, row));
      }
    }
    return result;
  } catch (const qrcodegen::data_too_long&) {
    return std::nullopt;
  }
}

std::string qr_content(const QrCode& code, double x, double y, double side_mm,
                       double page_height_mm) {
  const double module = side_mm / code.whole() * k_points_per_mm;
  // From here on a unit is a module, and the rows go down.
  std::string out = fmt::format("q 0 g {:.6f} 0 0 {:.6f} {:.4f} {:.4f} cm\n", module, -module,
                                x * k_points_per_mm + 4.0 * module,
                                (page_height_mm - y) * k_points_per_mm - 4.0 * module);
  for (int row = 0; row < code.side; ++row) {
    int from = 0;
    while (from < code.side) {
      const auto at = [&](int column) {
        return code.dark[static_cast<std::size_t>(row * code.side + column)];
      };
      int to = from;
      while (to < code.side && at(to) == at(from)) ++to;
      if (at(from))
        fmt::format_to(std::back_inserter(out), "{} {} {} 1 re\n", from, row, to - from);
      from = to;
    }
  }
  return out + "f Q\n";
}

}  // namespace cutback::print
