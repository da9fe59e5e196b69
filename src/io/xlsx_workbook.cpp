#include "io/xlsx_workbook.hpp"

#include <algorithm>
#include <cstdint>
#include <string_view>

#include "io/xlsx_xml.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{64} << 20U;
constexpr std::string_view k_root_relationships = "_rels/.rels";

std::string_view after_last_slash(std::string_view text) {
  return text.substr(text.rfind('/') + 1);  // npos + 1 is 0
}

/// The part that a relationship of a part in `folder` names (ISO/IEC 29500-2, 6.5.3).
std::string resolve(std::string_view folder, std::string target_text) {
  std::replace(target_text.begin(), target_text.end(), '\\', '/');
  std::string_view target = target_text;
  std::string path = target.starts_with('/') ? "" : std::string(folder);
  while (!target.empty()) {
    const std::size_t end = std::min(target.find('/'), target.size());
    const std::string_view step = target.substr(0, end);
    target.remove_prefix(std::min(end + 1, target.size()));
    if (step.empty() || step == ".") continue;
    if (step == "..") {
      path.erase(path.find('/') == std::string::npos ? 0 : path.rfind('/'));
    } else {
      if (!path.empty()) path += '/';
      path += step;
    }
  }
  return path;
}

class Relationships final : public XmlHandler {
 public:
  explicit Relationships(std::string_view folder) : folder_(folder) {}
  void start(std::string_view element, const XmlAttributes& attributes) override {
    if (element != "Relationship" || attributes.text("TargetMode") == "External") return;
    list.push_back({std::string(attributes.text("Id")),
                    std::string(after_last_slash(attributes.text("Type"))),
                    resolve(folder_, std::string(attributes.text("Target")))});
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

  std::vector<XlsxRelationship> list;

 private:
  std::string_view folder_;
};

std::vector<XlsxRelationship> read_relationships(XlsxPackage& package, const std::string& part,
                                                 std::string_view folder) {
  Relationships relationships(folder);
  read_xml_part(package, part, k_most_bytes, "Relationships", relationships);
  return std::move(relationships.list);
}

/// The sheets by name; `part` is still the id of a relationship.
class Sheets final : public XmlHandler {
 public:
  explicit Sheets(XlsxWorkbook& workbook) : workbook_(workbook) {}
  void start(std::string_view element, const XmlAttributes& attributes) override {
    if (element == "workbookPr") {
      workbook_.from_1904 = attributes.is_true("date1904");
    } else if (element == "sheet") {
      const std::string_view state = attributes.text("state");
      workbook_.sheets.push_back({std::string(attributes.text("name")),
                                  std::string(attributes.relationship()),
                                  state == "hidden" || state == "veryHidden"});
    }
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

 private:
  XlsxWorkbook& workbook_;
};

InputError other_format(const std::string& file, std::string what) {
  return xlsx_fault(ErrorCode::bad_syntax, std::move(what), file, "",
                    "save the sheet as .xlsx, or as CSV in UTF-8");
}

std::string workbook_part(XlsxPackage& package) {
  if (!package.has(std::string(k_root_relationships))) {
    if (package.has("content.xml")) {
      throw other_format(package.name(), "an OpenDocument file, not a workbook (.xlsx)");
    }
    throw other_format(package.name(), "a ZIP archive that is no workbook (.xlsx)");
  }
  for (const XlsxRelationship& to :
       read_relationships(package, std::string(k_root_relationships), "")) {
    if (to.type != "officeDocument") continue;
    if (to.part.ends_with(".bin")) {
      throw other_format(package.name(), "a binary workbook (.xlsb)");
    }
    if (package.has("word/document.xml")) {
      throw other_format(package.name(), "a text document, not a workbook (.xlsx)");
    }
    return to.part;
  }
  throw other_format(package.name(), "a ZIP archive that is no workbook (.xlsx)");
}

}  // namespace

std::vector<XlsxRelationship> read_xlsx_relationships(XlsxPackage& package,
                                                      const std::string& part) {
  const std::string file(after_last_slash(part));
  const std::string folder = part.substr(0, part.size() - std::min(part.size(), file.size() + 1));
  const std::string relationships = resolve(folder, "_rels/" + file + ".rels");
  if (!package.has(relationships)) return {};
  return read_relationships(package, relationships, folder);
}

XlsxWorkbook read_xlsx_workbook(XlsxPackage& package) {
  XlsxWorkbook workbook;
  const std::string part = workbook_part(package);
  Sheets sheets(workbook);
  read_xml_part(package, part, k_most_bytes, "workbook", sheets);
  const auto parts = read_xlsx_relationships(package, part);
  for (XlsxSheet& sheet : workbook.sheets) {
    const auto to = std::find_if(parts.begin(), parts.end(), [&](const XlsxRelationship& each) {
      return each.id == sheet.part && each.type == "worksheet";
    });
    sheet.part = to != parts.end() ? to->part : "";
  }
  for (const XlsxRelationship& to : parts) {
    if (to.type == "sharedStrings") workbook.strings = to.part;
    if (to.type == "styles") workbook.styles = to.part;
  }
  return workbook;
}

}  // namespace cutback::io
