#include "io/xlsx_pieces.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

#include "io/xlsx_asides.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{4} << 30U;
constexpr std::uint64_t k_most_held = std::uint64_t{256} << 20U;
constexpr std::size_t k_piece = std::size_t{64} << 10U;
constexpr std::size_t k_most_piece = std::size_t{1} << 20U;
constexpr std::size_t k_most_head = std::size_t{16} << 10U;  // read again with each piece
constexpr std::size_t k_most_tail = std::size_t{64} << 20U;
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

/// Gathers the merged cells, the hidden columns, and what is printed round the pages.
class LookFinder final : public XmlHandler {
 public:
  LookFinder(const std::string& file, const std::string& part, ByteSource& bytes)
      : file_(file), part_(part), parser_(bytes, file, part, "worksheet", *this) {}

  XlsxLook find() {
    parser_.run();
    look_.merges.sort();
    return std::move(look_);
  }

  void start(std::string_view element, const XmlAttributes& attributes) override {
    if (is_element(element, "col")) hide(attributes);
    if (is_element(element, "headerFooter")) in_pages_ = true;
    if (is_element(element, "mergeCells")) in_merges_ = true;
    if (!in_merges_ || !is_element(element, "mergeCell")) return;
    const std::string_view reference = attributes.text("ref");
    if (look_.merges.add(reference)) return;
    throw xlsx_damaged("part " + part_ + " merges no such cells: " + std::string(reference), file_);
  }
  void end(std::string_view element) override {
    if (is_element(element, "mergeCells")) in_merges_ = false;
    if (!in_pages_) return;
    if (is_element(element, "headerFooter")) in_pages_ = false;
    std::string text = page_text(codes_);
    codes_.clear();
    if (!text.empty()) look_.page_texts.push_back(std::move(text));
  }
  void text(std::string_view piece) override {
    if (in_pages_) codes_ += piece;
  }

 private:
  /// Columns of no width are not seen either.
  void hide(const XmlAttributes& attributes) {
    if (!attributes.is_true("hidden") && attributes.text("width") != "0") return;
    constexpr std::size_t k_most = 16384;  // columns of a sheet
    const auto number = [&](std::string_view name) {
      const std::string_view text = attributes.text(name);
      std::size_t value = 0;
      std::from_chars(text.data(), text.data() + text.size(), value);
      return std::min(value, k_most);
    };
    for (std::size_t i = number("min"); i > 0 && i <= number("max"); ++i) {
      look_.hidden_columns.push_back(i - 1);
    }
  }

  const std::string& file_;
  const std::string& part_;
  XlsxLook look_;
  bool in_merges_ = false;
  bool in_pages_ = false;
  std::string codes_;  ///< of a page header or footer
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

XlsxPieces::XlsxPieces(XlsxPackage& package, std::string part)
    : package_(package), part_(std::move(part)) {}

XlsxLook XlsxPieces::look() {
  package_.open(part_, k_most_bytes);
  whole_ = package_.size() <= k_most_held;
  at_ = 0;
  held_.clear();
  if (whole_) held_.reserve(package_.size() + 1);
  unpack(k_most_head);
  find_head();
  if (whole_) {
    unpack(k_most_held + 1);
    const std::string_view rows = std::string_view(held_).substr(head_.size());
    if (!cuts_ || has_marks(rows)) return look_at_all();
    const std::size_t end = rows.rfind(rows_end_);
    return end == std::string_view::npos ? look_at_all() : look_at(rows.substr(end));
  }
  if (!cuts_) return look_at_all();
  // What lies before the end of the rows is let go.
  std::string tail = held_.substr(head_.size());
  held_.clear();
  for (bool more = true; more;) {
    if (has_marks(tail)) return look_at_all();
    const std::size_t end = tail.rfind(rows_end_);
    const std::size_t kept =
        end != std::string::npos ? end : tail.size() - std::min(tail.size(), rows_end_.size());
    tail.erase(0, kept);
    if (tail.size() > k_most_tail) return look_at_all();
    more = unpack(k_most_piece);
    tail += held_;
    held_.clear();
  }
  return tail.starts_with(rows_end_) ? look_at(tail) : look_at_all();
}

/// @param tail  what stands behind the last row
XlsxLook XlsxPieces::look_at(std::string_view tail) const {
  ByteViews bytes(head_, tail);
  return LookFinder(package_.name(), part_, bytes).find();
}

/// The same of a sheet that cannot be cut: its XML is read from one end to the other.
XlsxLook XlsxPieces::look_at_all() {
  if (whole_) {
    ByteViews bytes(held_, {});
    return LookFinder(package_.name(), part_, bytes).find();
  }
  package_.open(part_, k_most_bytes);
  return LookFinder(package_.name(), part_, package_).find();
}

void XlsxPieces::find_head() {
  const auto [begin, end] = HeadFinder(package_.name(), part_, held_).find();
  const std::string_view tag = std::string_view(held_).substr(begin, end - begin);
  // In UTF-16 it looks otherwise; without rows it ends with />.
  const std::size_t name = tag.find(k_rows);
  if (!tag.starts_with('<') || name == std::string_view::npos || tag.ends_with("/>")) return;
  const std::string prefix(tag.substr(1, name - 1));
  if (!prefix.empty() && !prefix.ends_with(':')) return;
  between_ = "</" + prefix + "row>";
  end_tag_ = between_.size();
  between_ += "<" + prefix + "row r=\"";
  rows_end_ = "</" + prefix + std::string(k_rows) + ">";
  head_ = held_.substr(0, end);
  cuts_ = true;
}

void XlsxPieces::begin() {
  rest_.reset();
  next_row_ = 1;
  can_cut_ = cuts_;
  if (whole_) {
    at_ = head_.size();
  } else {
    package_.open(part_, k_most_bytes);
    held_.clear();
    at_ = 0;
    unpack(k_most_head);
    at_ = head_.size();
  }
  done_ = at_;
}

std::optional<XlsxPiece> XlsxPieces::cut() {
  for (std::size_t size = k_piece; can_cut_ && size <= k_most_piece; size *= 2) {
    can_cut_ = held().size() >= size || unpack(size - held().size());
    if (!can_cut_) break;
    auto [end, next_row] = find_cut(held().substr(0, size));
    if (end == 0) continue;
    const std::string_view rows = held().substr(0, end);
    can_cut_ = !has_marks(rows);
    if (!can_cut_) break;
    XlsxPiece piece{.rows = rows,
                    .own = {},
                    .first_row = std::exchange(next_row_, next_row),
                    .next_row = next_row};
    if (whole_) {
      at_ += end;
    } else {
      std::string rest(held().substr(end));
      held_.resize(at_ + end);
      held_.erase(0, std::exchange(at_, 0));
      piece.own = std::exchange(held_, std::move(rest));
      piece.rows = {};
    }
    done_ = at_;
    return piece;
  }
  can_cut_ = false;
  return std::nullopt;
}

/// Where it can be cut last, and the number of the row behind; 0 where it cannot be.
std::pair<std::size_t, std::size_t> XlsxPieces::find_cut(std::string_view text) const {
  const char* const behind = text.data() + text.size();
  for (std::size_t at = text.rfind(between_); at != std::string_view::npos && at > 0;
       at = text.rfind(between_, at - 1)) {
    std::size_t row = 0;
    const auto [end, error] = std::from_chars(text.data() + at + between_.size(), behind, row);
    if (error == std::errc{} && end != behind && *end == '"') return {at + end_tag_, row};
  }
  return {0, 0};
}

/// @return false at the end of the sheet
bool XlsxPieces::unpack(std::size_t size) {
  const std::size_t wanted = held_.size() + size;
  while (held_.size() < wanted) {
    const std::size_t before = held_.size();
    const std::size_t step = std::min(wanted - before, k_most_piece);
    held_.resize(before + step);
    const std::size_t got = package_.read(held_.data() + before, step);
    held_.resize(before + got);
    if (got == 0) return false;
  }
  return true;
}

double XlsxPieces::taken() const {
  if (!whole_) return package_.taken();
  const double size = static_cast<double>(held_.size());
  return held_.empty() ? 1.0 : static_cast<double>(done_.load()) / size;
}

std::size_t XlsxPieces::read(char* to, std::size_t size) {
  if (!rest_) rest_.emplace(head_, held());
  const std::size_t count = rest_->read(to, size);
  if (count > 0 || whole_) {
    if (whole_) done_ = std::min(held_.size(), done_ + count);
    return count;
  }
  return package_.read(to, size);
}

void XlsxPieces::finish() {
  if (!whole_) package_.finish();
}

}  // namespace cutback::io
