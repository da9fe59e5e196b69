#include "io/xlsx_names.hpp"

#include <algorithm>
#include <array>

namespace cutback::io {
namespace {

constexpr std::string_view k_declares = "xmlns";
constexpr std::size_t k_most = 1000;  // at once; workbooks declare a few dozen

// ECMA-376 part 1 and ISO/IEC 29500-1 (strict), sheets and the drawings on them; ISO/IEC 29500-2,
// relationships of parts; comments that are answered, which the standard does not have.
constexpr std::array<std::string_view, 8> k_own{
    "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "http://purl.oclc.org/ooxml/spreadsheetml/main",
    "http://schemas.openxmlformats.org/package/2006/relationships",
    "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing",
    "http://schemas.openxmlformats.org/drawingml/2006/main",
    "http://purl.oclc.org/ooxml/drawingml/spreadsheetDrawing",
    "http://purl.oclc.org/ooxml/drawingml/main",
    "http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"};
constexpr std::array<std::string_view, 2> k_relationships{
    "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
    "http://purl.oclc.org/ooxml/officeDocument/relationships"};

XmlSpace space_of(std::string_view uri) {
  const auto is_in = [&](const auto& list) {
    return std::find(list.begin(), list.end(), uri) != list.end();
  };
  if (is_in(k_own)) return XmlSpace::own;
  return is_in(k_relationships) ? XmlSpace::relationships : XmlSpace::other;
}

}  // namespace

bool XmlNames::enter(const char** attributes) {
  ++depth_;
  for (const char** at = attributes; *at != nullptr; at += 2) {
    if (at[0][0] == k_declares[0] && !declare(at[0], at[1])) return false;
  }
  return true;
}

bool XmlNames::declare(std::string_view attribute, std::string_view space) {
  if (!attribute.starts_with(k_declares)) return true;
  attribute.remove_prefix(k_declares.size());
  if (attribute.starts_with(':')) {
    attribute.remove_prefix(1);
  } else if (!attribute.empty()) {
    return true;  // another attribute, whose name begins like this
  }
  declared_.push_back({std::string(attribute), space_of(space), depth_});
  if (attribute.empty()) plain_ = declared_.back().space;
  return declared_.size() <= k_most;
}

void XmlNames::leave() {
  while (!declared_.empty() && declared_.back().depth == depth_) {
    const bool plain = declared_.back().prefix.empty();
    declared_.pop_back();
    if (plain) plain_ = look_up({}).value_or(XmlSpace::other);
  }
  --depth_;
}

std::optional<XmlSpace> XmlNames::look_up(std::string_view prefix) const {
  const auto found = std::find_if(declared_.rbegin(), declared_.rend(),
                                  [&](const Declared& each) { return each.prefix == prefix; });
  if (found != declared_.rend()) return found->space;
  return prefix == "xml" ? std::optional(XmlSpace::other) : std::nullopt;
}

}  // namespace cutback::io
