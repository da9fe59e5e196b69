#include "io/xlsx_pieces.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

namespace cutback::io {
namespace {

constexpr std::size_t k_piece = std::size_t{64} << 10U;
constexpr std::size_t k_most_piece = std::size_t{1} << 20U;
constexpr std::size_t k_most_head = std::size_t{16} << 10U;  // read again with each piece
constexpr std::string_view k_rows = "sheetData";

/// Looks for the beginning of the rows.
class HeadFinder final : public XmlHandler {
 public:
  HeadFinder(const std::string& file, const std::string& part, std::string_view text)
      : bytes_(text, {}), parser_(bytes_, file, part, "worksheet", *this, XmlEnd::cut) {}

  /// Where the tag begins and ends; both 0 where there is none.
  std::pair<std::size_t, std::size_t> find() {
    parser_.run();
    return found_;
  }

  void start(std::string_view element, const XmlAttributes&) override {
    if (element != k_rows) return;
    found_ = parser_.place();
    parser_.stop();
  }
  void end(std::string_view) override {}
  void text(std::string_view) override {}

 private:
  ByteViews bytes_;
  std::pair<std::size_t, std::size_t> found_;
  XmlParser parser_;
};

/// Whether a comment, CDATA or an instruction begins in it.
bool has_marks(std::string_view text) {
  for (const char mark : {'!', '?'}) {  // rarer than <, and so found sooner
    for (std::size_t at = text.find(mark, 1); at != std::string_view::npos;
         at = text.find(mark, at + 1)) {
      if (text[at - 1] == '<') return true;
    }
  }
  return false;
}

}  // namespace

void XlsxPieces::begin(const std::string& part) {
  unpack(k_most_head);
  const auto [begin, end] = HeadFinder(package_.name(), part, held_).find();
  const std::string_view tag = std::string_view(held_).substr(begin, end - begin);
  // In UTF-16 it looks otherwise; without rows it ends with />.
  const std::size_t name = tag.find(k_rows);
  if (!tag.starts_with('<') || name == std::string_view::npos || tag.ends_with("/>")) return;
  const std::string prefix(tag.substr(1, name - 1));
  if (!prefix.empty() && !prefix.ends_with(':')) return;
  between_ = "</" + prefix + "row>";
  end_tag_ = between_.size();
  between_ += "<" + prefix + "row r=\"";
  head_ = held_.substr(0, end);
  held_.erase(0, end);
  can_cut_ = true;
}

std::optional<XlsxPiece> XlsxPieces::cut() {
  for (std::size_t size = k_piece; can_cut_ && size <= k_most_piece; size *= 2) {
    can_cut_ = held_.size() >= size || unpack(size - held_.size());
    if (!can_cut_) break;
    auto [end, next_row] = find_cut();
    if (end == 0) continue;
    can_cut_ = !has_marks(std::string_view(held_).substr(0, end));
    if (!can_cut_) break;
    std::string rest = held_.substr(end);
    held_.resize(end);
    return XlsxPiece{std::exchange(held_, std::move(rest)), next_row};
  }
  can_cut_ = false;
  return std::nullopt;
}

/// Where what is held can be cut last, and the number of the row behind; 0 where it cannot be.
std::pair<std::size_t, std::size_t> XlsxPieces::find_cut() const {
  const char* const behind = held_.data() + held_.size();
  for (std::size_t at = held_.rfind(between_); at != std::string::npos && at > 0;
       at = held_.rfind(between_, at - 1)) {
    std::size_t row = 0;
    const auto [end, error] = std::from_chars(held_.data() + at + between_.size(), behind, row);
    if (error == std::errc{} && end != behind && *end == '"') return {at + end_tag_, row};
  }
  return {0, 0};
}

/// @return false at the end of the sheet
bool XlsxPieces::unpack(std::size_t size) {
  const std::size_t wanted = held_.size() + size;
  while (held_.size() < wanted) {
    const std::size_t before = held_.size();
    held_.resize(wanted);
    const std::size_t got = package_.read(held_.data() + before, wanted - before);
    held_.resize(before + got);
    if (got == 0) return false;
  }
  return true;
}

std::size_t XlsxPieces::read(char* to, std::size_t size) {
  if (!rest_) rest_.emplace(head_, held_);
  const std::size_t count = rest_->read(to, size);
  return count > 0 ? count : package_.read(to, size);
}

}  // namespace cutback::io
