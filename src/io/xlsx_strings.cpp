#include "io/xlsx_strings.hpp"

#include <charconv>

#include "cutback/bounds.hpp"
#include "io/xlsx_format.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{512} << 20U;  // ends_ counts to 4 GiB

}  // namespace

void XlsxText::start(std::string_view element, const XmlAttributes& attributes) {
  if (is_element(element, "t")) in_text_ = true;
  if (is_element(element, "rPh")) ++phonetic_;
  if (is_element(element, "r")) own_font_ = run_struck_ = false;
  if (is_element(element, "rPr")) own_font_ = true;
  if (is_element(element, "strike")) run_struck_ = !attributes.is_false("val");
}

void XlsxText::take(std::string_view piece) {
  const bool blank = piece.find_first_not_of(" \t\r\n") == std::string_view::npos;
  if (blank) return;
  (!own_font_ ? fonts_.of_cell : run_struck_ ? fonts_.struck : fonts_.plain) = true;
}

void XlsxText::end(std::string_view element) {
  if (is_element(element, "t")) in_text_ = false;
  if (is_element(element, "rPh")) --phonetic_;
}

class XlsxStrings::Handler final : public XmlHandler {
 public:
  Handler(XlsxStrings& strings, const std::string& file) : strings_(strings), file_(file) {}
  void start(std::string_view element, const XmlAttributes& attributes) override {
    if (is_element(element, "si")) {
      in_item_ = true;
      text_ = {};
    } else if (in_item_) {
      text_.start(element, attributes);
    }
  }
  void end(std::string_view element) override {
    if (is_element(element, "si")) {
      in_item_ = false;
      finish();
    } else if (in_item_) {
      text_.end(element);
    }
  }
  void text(std::string_view piece) override {
    if (!in_item_ || !text_.wants()) return;
    strings_.text_ += piece;
    text_.take(piece);
    const std::size_t begin = strings_.ends_.empty() ? 0 : strings_.ends_.back();
    if (strings_.text_.size() - begin > bounds::k_cell_bytes.most) {
      throw InputError(beyond(bounds::k_cell_bytes, file_ + ", shared text " +
                                                        std::to_string(strings_.ends_.size() + 1)));
    }
  }

 private:
  void finish() {
    const std::size_t begin = strings_.ends_.empty() ? 0 : strings_.ends_.back();
    if (strings_.text_.find("_x", begin) != std::string::npos) {
      const std::string plain = unescaped_xlsx(std::string_view(strings_.text_).substr(begin));
      strings_.text_.resize(begin);
      strings_.text_ += plain;
    }
    const XlsxFonts& fonts = text_.fonts();
    if (fonts.struck || fonts.plain) strings_.fonts_.emplace(strings_.ends_.size(), fonts);
    strings_.ends_.push_back(static_cast<std::uint32_t>(strings_.text_.size()));
  }

  XlsxStrings& strings_;
  const std::string& file_;
  XlsxText text_;
  bool in_item_ = false;
};

XlsxStrings::XlsxStrings(XlsxPackage& package, const std::string& part) {
  Handler handler(*this, package.name());
  read_xml_part(package, part, k_most_bytes, "sst", handler);
}

XlsxFonts XlsxStrings::fonts(std::string_view number) const {
  constexpr XlsxFonts k_cell{.struck = false, .plain = false, .of_cell = true};
  if (fonts_.empty()) return k_cell;
  std::size_t index = 0;
  std::from_chars(number.data(), number.data() + number.size(), index);
  const auto found = fonts_.find(index);
  return found == fonts_.end() ? k_cell : found->second;
}

std::optional<std::string_view> XlsxStrings::find(std::string_view number) const {
  std::size_t index = 0;
  const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), index);
  if (error != std::errc{} || end != number.data() + number.size() || index >= ends_.size()) {
    return std::nullopt;
  }
  const std::size_t begin = index == 0 ? 0 : ends_[index - 1];
  return std::string_view(text_).substr(begin, ends_[index] - begin);
}

}  // namespace cutback::io
