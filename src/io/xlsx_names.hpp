#pragma once
// The namespaces that are in force while the XML of a workbook is read.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cutback::io {

/// What a namespace is to a workbook: the format's own, that of relationships, none of both.
enum class XmlSpace { own, relationships, other };

/// A name as it stands in the XML, `x:row` or `row`.
struct XmlName {
  std::string_view prefix;
  std::string_view local;
};

[[nodiscard]] inline XmlName split_xml_name(const char* name) {
  const char* local = name;
  const char* at = name;
  for (; *at != '\0'; ++at) {
    if (*at == ':') local = at + 1;
  }
  const auto length = static_cast<std::size_t>(local - name);
  return {{name, length == 0 ? 0 : length - 1}, {local, static_cast<std::size_t>(at - local)}};
}

/// Follows the declarations of an XML text (W3C, Namespaces in XML 1.0). expat would do it too, at
/// a third more time: it puts every name together with its namespace.
class XmlNames {
 public:
  /// Takes in what an element declares, before its own name is looked at.
  /// @param attributes  as expat hands them out
  /// @return false when there are more than any workbook declares
  [[nodiscard]] bool enter(const char** attributes);
  /// Forgets what the element declared that ends now.
  void leave();
  /// @return nothing when no element around declares the prefix
  [[nodiscard]] std::optional<XmlSpace> find(std::string_view prefix) const {
    return prefix.empty() ? plain_ : look_up(prefix);
  }

 private:
  struct Declared {
    std::string prefix;
    XmlSpace space;
    std::size_t depth;
  };
  [[nodiscard]] std::optional<XmlSpace> look_up(std::string_view prefix) const;
  [[nodiscard]] bool declare(std::string_view attribute, std::string_view space);

  std::vector<Declared> declared_;
  std::size_t depth_ = 0;
  XmlSpace plain_ = XmlSpace::other;  ///< of names without a prefix
};

}  // namespace cutback::io
