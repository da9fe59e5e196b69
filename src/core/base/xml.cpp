#include "cutback/xml.hpp"

namespace cutback {

void append_xml_text(std::string& out, std::string_view text) {
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      default:
        out += c;
    }
  }
}

std::string xml_text(std::string_view text) {
  std::string out;
  append_xml_text(out, text);
  return out;
}

}  // namespace cutback
