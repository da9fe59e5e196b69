#include "cutback/io/table_kind.hpp"

#include <algorithm>

#include "cutback/error.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

/// A container that holds an encrypted package ([MS-OFFCRYPTO] 2.3.4.1), whose name stands in its
/// directory in UTF-16.
bool is_locked(std::string_view first) {
  std::string name;
  for (const char c : std::string_view("EncryptedPackage")) {
    name += c;
    name += '\0';
  }
  return first.find(name) != std::string_view::npos;
}

}  // namespace

TableKind table_kind(std::string_view first) {
  if (first.empty()) return TableKind::empty;
  // PKWARE APPNOTE 6.3: a local file header, or the end of an archive without files.
  if (first.starts_with("PK\x03\x04") || first.starts_with("PK\x05\x06")) return TableKind::xlsx;
  // [MS-CFB] 2.2: the signature of a compound file.
  if (first.starts_with("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1")) {
    return is_locked(first) ? TableKind::locked : TableKind::old_workbook;
  }
  std::string_view text = first;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  text = trimmed(text);
  if (text.empty()) return TableKind::empty;
  if (!text.starts_with('<')) return TableKind::text;
  const std::string tags = small_letters(text);
  if (tags.find("urn:schemas-microsoft-com:office:spreadsheet") != std::string::npos) {
    return TableKind::xml_workbook;
  }
  for (const std::string_view tag :
       {"<!doctype html", "<html", "<table", "<head", "<meta", "<body"}) {
    if (tags.find(tag) != std::string::npos) return TableKind::web_page;
  }
  return TableKind::text;
}

void refuse_table(TableKind kind, const std::string& name) {
  const char* what = "this is no table";
  const char* hint = "save it as .xlsx, or as CSV in UTF-8";
  switch (kind) {
    case TableKind::old_workbook:
      what = "an old workbook (.xls)";
      break;
    case TableKind::locked:
      what = "a workbook that is locked with a password";
      hint = "save it without a password, as .xlsx or CSV";
      break;
    case TableKind::web_page:
      what = "a web page (HTML), whatever its name says";
      hint = "open it in a spreadsheet program and save it as .xlsx, or as CSV in UTF-8";
      break;
    case TableKind::xml_workbook:
      what = "a workbook in the XML of 2003";
      hint = "open it in a spreadsheet program and save it as .xlsx, or as CSV in UTF-8";
      break;
    case TableKind::empty:
      what = "the file is empty";
      hint = "";
      break;
    case TableKind::xlsx:
    case TableKind::text:
      break;
  }
  throw InputError(make_fault(ErrorCode::bad_syntax, what, name, "", "", hint));
}

}  // namespace cutback::io
