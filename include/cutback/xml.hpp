#pragma once
// Text as it stands between the tags of XML.

#include <string>
#include <string_view>

namespace cutback {

/// Appends a text in which no character is read as markup.
/// @source W3C Extensible Markup Language (XML) 1.0, clause 2.4
void append_xml_text(std::string& out, std::string_view text);
[[nodiscard]] std::string xml_text(std::string_view text);

}  // namespace cutback
