#pragma once
// XML of a workbook, piece by piece: only the elements of the format's own namespaces.

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <exception>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include "io/xlsx_names.hpp"
#include "io/xlsx_package.hpp"

namespace cutback::io {

/// The attributes of an element, as expat hands them out.
class XmlAttributes {
 public:
  XmlAttributes(const char** list, const XmlNames& names) : list_(list), names_(names) {}
  /// The value of an attribute without a namespace; nullptr when it is not there.
  [[nodiscard]] const char* find(std::string_view name) const;
  /// The same of a name that is one letter.
  [[nodiscard]] const char* find(char letter) const {
    for (const char** at = list_; *at != nullptr; at += 2) {
      if (at[0][0] == letter && at[0][1] == '\0') return at[1];
    }
    return nullptr;
  }
  /// The value, or nothing.
  [[nodiscard]] std::string_view text(std::string_view name) const;
  /// The attribute `id` of the namespace of relationships.
  [[nodiscard]] std::string_view relationship() const;
  /// Whether it is there and says yes.
  [[nodiscard]] bool is_true(std::string_view name) const;
  /// Whether it is there and says no.
  [[nodiscard]] bool is_false(std::string_view name) const;

 private:
  const char** list_;
  const XmlNames& names_;
};

/// Whether an element has this name; quicker than == on the millions of a sheet.
template <std::size_t Size>
[[nodiscard]] bool is_element(std::string_view element, const char (&name)[Size]) {
  return element.size() == Size - 1 && std::memcmp(element.data(), name, Size - 1) == 0;
}

/// What is done with the elements. Names are without namespace; elements of other namespaces, and
/// all that stands in them, are left out.
class XmlHandler {
 public:
  virtual ~XmlHandler() = default;
  virtual void start(std::string_view element, const XmlAttributes& attributes) = 0;
  virtual void end(std::string_view element) = 0;
  virtual void text(std::string_view piece) = 0;
};

/// Whether a text ends where its source does, or is the beginning of one.
enum class XmlEnd { whole, cut };

/// Runs over one part of a workbook.
class XmlParser {
 public:
  /// @param source  borrowed. @param file, part  for messages
  /// @param root  the name that its outermost element must have
  XmlParser(ByteSource& source, std::string file, std::string part, std::string root,
            XmlHandler& handler, XmlEnd end = XmlEnd::whole);
  XmlParser(const XmlParser&) = delete;
  XmlParser& operator=(const XmlParser&) = delete;
  ~XmlParser();

  /// Runs until the handler calls pause() or stop(), or to the end.
  /// @return false at the end, and after stop()
  /// @throws InputError when it is no well-formed XML, and what the handler throws
  bool run();
  /// For the handler: run() returns true soon and goes on from here when it is called again.
  void pause();
  /// For the handler: the rest is only unpacked, for its check sum.
  void stop();
  /// For the handler: first byte of the tag that it was called for, and the byte behind it.
  [[nodiscard]] std::pair<std::size_t, std::size_t> place() const;

 private:
  struct Callbacks;
  struct Free {
    void operator()(void* parser) const;
  };
  bool feed();
  InputError damaged(const std::string& what) const;
  void start(const char* name, const char** attributes);
  void end(const char* name);

  ByteSource& source_;
  std::string file_;
  std::string part_;
  std::string root_;
  XmlHandler& handler_;
  XmlEnd end_;
  std::unique_ptr<void, Free> parser_;
  std::exception_ptr thrown_;
  XmlNames names_;
  std::size_t depth_ = 0;
  std::size_t foreign_ = 0;     ///< depth within an element of another namespace
  std::size_t unanswered_ = 0;  ///< bytes since the parser last reported anything
  bool paused_ = false;
  bool stopped_ = false;
  bool fed_ = false;  ///< to the end
};

/// Runs over a whole part, with a handler that never pauses.
/// @param most  bytes to which it may unpack
/// @throws InputError as XlsxPackage::open and XmlParser
void read_xml_part(XlsxPackage& package, const std::string& part, std::uint64_t most,
                   std::string root, XmlHandler& handler);

}  // namespace cutback::io
