#include "io/xlsx_check.hpp"

#include <expat.h>
#include <minizip/unzip.h>

#include <algorithm>
#include <array>
#include <memory>
#include <new>
#include <string_view>
#include <type_traits>
#include <vector>

namespace cutback::io {
namespace {

constexpr std::string_view k_declaration = "<?xml ";
constexpr std::string_view k_sheets = "xl/worksheets/sheet";
// Besides the sheets; without one of these it is no workbook.
constexpr std::array<std::string_view, 5> k_needed{"[Content_Types].xml", "_rels/.rels",
                                                   "xl/workbook.xml", "xl/_rels/workbook.xml.rels",
                                                   "xl/styles.xml"};

/// Counts the cells and texts of a part.
class Counter {
 public:
  Counter() : parser_(XML_ParserCreate(nullptr)) {
    if (!parser_) throw std::bad_alloc();
    XML_SetUserData(parser_.get(), this);
    XML_SetElementHandler(parser_.get(), start, end);
    XML_SetCharacterDataHandler(parser_.get(), text);
  }

  /// @return false where it is no well-formed XML
  bool take(std::string_view piece, bool last) {
    return XML_Parse(parser_.get(), piece.data(), static_cast<int>(piece.size()),
                     last ? XML_TRUE : XML_FALSE) == XML_STATUS_OK;
  }
  [[nodiscard]] const XlsxContent& found() const { return found_; }

 private:
  static Counter& of(void* data) { return *static_cast<Counter*>(data); }
  static void start(void* data, const char* name, const char** attributes) {
    static_cast<void>(attributes);
    if (std::string_view(name) == "c") ++of(data).found_.cells;
    of(data).in_text_ = std::string_view(name) == "t";
  }
  static void end(void* data, const char* name) {
    static_cast<void>(name);
    of(data).in_text_ = false;
  }
  static void text(void* data, const char* bytes, int size) {
    static_cast<void>(bytes);
    if (of(data).in_text_) of(data).found_.text_bytes += static_cast<std::uint64_t>(size);
  }

  struct Free {
    void operator()(XML_Parser parser) const { XML_ParserFree(parser); }
  };
  std::unique_ptr<std::remove_pointer_t<XML_Parser>, Free> parser_;
  XlsxContent found_;
  bool in_text_ = false;
};

struct Close {
  void operator()(void* archive) const { unzClose(archive); }
};

/// Reads the part that the archive stands at. @return empty, or what is wrong
std::string read_part(unzFile archive, Counter& counter) {
  if (unzOpenCurrentFile(archive) != UNZ_OK) return "cannot be read back";
  std::array<char, 65536> piece;
  int size = 0;
  bool is_xml = false;
  for (bool first = true; (size = unzReadCurrentFile(archive, piece.data(), piece.size())) > 0;
       first = false) {
    const std::string_view bytes(piece.data(), static_cast<std::size_t>(size));
    if (first) is_xml = bytes.starts_with(k_declaration);  // a beginning may be lost as well
    is_xml = is_xml && counter.take(bytes, false);
  }
  const bool closed = unzCloseCurrentFile(archive) == UNZ_OK;  // compares the check sum
  if (size < 0 || !closed) return "cannot be unpacked";
  return is_xml && counter.take({}, true) ? "" : "was cut short";
}

/// @param counts  of the sheets, in their order; appended to
std::string read_parts(unzFile archive, std::vector<XlsxContent>& counts) {
  std::size_t needed = 0;
  for (int more = unzGoToFirstFile(archive); more != UNZ_END_OF_LIST_OF_FILE;
       more = unzGoToNextFile(archive)) {
    std::array<char, 256> name{};
    if (more != UNZ_OK || unzGetCurrentFileInfo64(archive, nullptr, name.data(), name.size() - 1,
                                                  nullptr, 0, nullptr, 0) != UNZ_OK) {
      return "its list of parts is broken";
    }
    const std::string_view part = name.data();
    Counter counter;
    const std::string wrong = read_part(archive, counter);
    if (!wrong.empty()) return "part " + std::string(part) + " " + wrong;
    if (part.starts_with(k_sheets)) counts.push_back(counter.found());
    if (std::find(k_needed.begin(), k_needed.end(), part) != k_needed.end()) ++needed;
  }
  return needed == k_needed.size() ? "" : "a part is missing";
}

}  // namespace

std::string xlsx_mismatch(const std::string& path, std::span<const XlsxContent> sheets) {
  const std::unique_ptr<void, Close> archive(unzOpen64(path.c_str()));
  if (!archive) return "it is not whole";
  std::vector<XlsxContent> found;
  std::string wrong = read_parts(archive.get(), found);
  if (!wrong.empty()) return wrong;
  if (found.size() != sheets.size()) return "a sheet is missing";
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    if (found[i].cells != sheets[i].cells || found[i].text_bytes != sheets[i].text_bytes) {
      return "sheet " + std::to_string(i + 1) + " is not complete";
    }
  }
  return {};
}

}  // namespace cutback::io
