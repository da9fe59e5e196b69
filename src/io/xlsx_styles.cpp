// The number formats of a workbook's cell styles.

#include <charconv>
#include <cstdint>
#include <map>

#include "io/xlsx_format.hpp"
#include "io/xlsx_xml.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{64} << 20U;

unsigned as_number(std::string_view text) {
  unsigned value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

class Styles final : public XmlHandler {
 public:
  void start(std::string_view element, const XmlAttributes& attributes) override {
    if (element == "cellXfs") {
      of_cells_ = true;
    } else if (element == "fonts") {
      in_fonts_ = true;
    } else if (element == "font" && in_fonts_) {
      struck_fonts_.push_back(false);
    } else if (element == "strike" && in_fonts_ && !struck_fonts_.empty()) {
      struck_fonts_.back() = !attributes.is_false("val");
    } else if (element == "numFmt" && !of_cells_) {
      const std::string_view code = attributes.text("formatCode");
      own_.insert_or_assign(as_number(attributes.text("numFmtId")),
                            XlsxStyle{.format = xlsx_format(code),
                                      .struck = false,
                                      .whole_format = xlsx_whole_format(code)});
    } else if (element == "xf" && of_cells_) {
      const unsigned number = as_number(attributes.text("numFmtId"));
      const auto own = own_.find(number);
      styles.push_back(
          own != own_.end()
              ? own->second
              : XlsxStyle{.format = xlsx_format(number), .struck = false, .whole_format = {}});
      const unsigned font = as_number(attributes.text("fontId"));
      styles.back().struck = font < struck_fonts_.size() && struck_fonts_[font];
    }
  }
  void end(std::string_view element) override {
    if (element == "cellXfs") of_cells_ = false;
    if (element == "fonts") in_fonts_ = false;
  }
  void text(std::string_view) override {}

  std::vector<XlsxStyle> styles;

 private:
  std::map<unsigned, XlsxStyle> own_;
  std::vector<bool> struck_fonts_;
  bool of_cells_ = false;
  bool in_fonts_ = false;
};

}  // namespace

std::vector<XlsxStyle> read_xlsx_styles(XlsxPackage& package, const std::string& part) {
  Styles styles;
  read_xml_part(package, part, k_most_bytes, "styleSheet", styles);
  return std::move(styles.styles);
}

}  // namespace cutback::io
