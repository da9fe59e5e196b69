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
    } else if (element == "numFmt" && !of_cells_) {
      own_.insert_or_assign(as_number(attributes.text("numFmtId")),
                            xlsx_format(attributes.text("formatCode")));
    } else if (element == "xf" && of_cells_) {
      const unsigned number = as_number(attributes.text("numFmtId"));
      const auto own = own_.find(number);
      formats.push_back(own != own_.end() ? own->second : xlsx_format(number));
    }
  }
  void end(std::string_view element) override {
    if (element == "cellXfs") of_cells_ = false;
  }
  void text(std::string_view) override {}

  std::vector<XlsxFormat> formats;

 private:
  std::map<unsigned, XlsxFormat> own_;
  bool of_cells_ = false;
};

}  // namespace

std::vector<XlsxFormat> read_xlsx_styles(XlsxPackage& package, const std::string& part) {
  Styles styles;
  read_xml_part(package, part, k_most_bytes, "styleSheet", styles);
  return std::move(styles.formats);
}

}  // namespace cutback::io
