#include "io/xlsx_asides.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "cutback/text.hpp"
#include "io/xlsx_strings.hpp"
#include "io/xlsx_workbook.hpp"
#include "io/xlsx_xml.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{64} << 20U;

/// With one space for each run of line breaks and spaces.
std::string one_line(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const bool space = c == '\n' || c == '\r' || c == '\t' || c == ' ';
    if (!space) line += c;
    if (space && !line.empty() && line.back() != ' ') line += ' ';
  }
  trim_end(line);
  return line;
}

/// Gathers the text of each element of one name: a comment, a shape.
class Texts final : public XmlHandler {
 public:
  /// @param text  the element that holds text: `t`, or that of a comment with answers
  Texts(std::string_view element, std::string_view text, std::string_view where,
        std::vector<Aside>& asides)
      : element_(element), text_element_(text), where_(where), asides_(asides) {}

  void start(std::string_view element, const XmlAttributes& attributes) override {
    if (element == element_) {
      inside_ = true;
      cell_ = attributes.text("ref");
      text_.clear();
    }
    if (element == text_element_) reads_ = inside_;
    if (element == "rPh") ++phonetic_;
  }
  void end(std::string_view element) override {
    if (element == text_element_) reads_ = false;
    if (element == "rPh") --phonetic_;
    if (element == "p") text_ += ' ';  // a paragraph of a shape
    if (element != element_) return;
    inside_ = false;
    std::string text = one_line(text_);
    if (text.empty()) return;
    std::string where(where_);
    if (!cell_.empty()) where += " on " + cell_;
    asides_.push_back({std::move(where), std::move(text)});
  }
  void text(std::string_view piece) override {
    if (reads_ && phonetic_ == 0) text_ += piece;
  }

 private:
  std::string_view element_;
  std::string_view text_element_;
  std::string_view where_;
  std::vector<Aside>& asides_;
  bool inside_ = false;
  bool reads_ = false;
  std::size_t phonetic_ = 0;
  std::string cell_;
  std::string text_;
};

}  // namespace

std::vector<Aside> read_xlsx_asides(XlsxPackage& package, const std::string& part) {
  std::vector<Aside> asides;
  const auto relationships = read_xlsx_relationships(package, part);
  const bool answered =
      std::any_of(relationships.begin(), relationships.end(),
                  [](const XlsxRelationship& to) { return to.type == "threadedComment"; });
  for (const XlsxRelationship& to : relationships) {
    // Comments that can be answered stand in the other part again, for older programs.
    if (to.type == "comments" && !answered) {
      Texts texts("comment", "t", "comment", asides);
      read_xml_part(package, to.part, k_most_bytes, "comments", texts);
    } else if (to.type == "threadedComment") {
      Texts texts("threadedComment", "text", "comment", asides);
      read_xml_part(package, to.part, k_most_bytes, "ThreadedComments", texts);
    } else if (to.type == "drawing") {
      Texts texts("sp", "t", "text box", asides);
      read_xml_part(package, to.part, k_most_bytes, "wsDr", texts);
    }
  }
  return asides;
}

std::string page_text(std::string_view codes) {
  std::string text;
  for (std::size_t i = 0; i < codes.size(); ++i) {
    if (codes[i] != '&' || i + 1 == codes.size()) {
      text += codes[i];
      continue;
    }
    const char code = codes[++i];
    if (code == '&') {
      text += '&';
      continue;
    }
    text += ' ';
    if (code == '"') {
      i = std::min(codes.find('"', i + 1), codes.size() - 1);
    } else if (code == 'K') {
      i = std::min(i + 6, codes.size() - 1);  // a colour
    } else if (is_digit(code)) {
      while (i + 1 < codes.size() && is_digit(codes[i + 1])) ++i;
    }
  }
  return one_line(text);
}

}  // namespace cutback::io
