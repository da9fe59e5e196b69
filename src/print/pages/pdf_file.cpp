#include "print/pages/pdf_file.hpp"

#include <fmt/format.h>
#include <zlib.h>
#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

#include "cutback/error.hpp"
#include "cutback/text.hpp"

namespace cutback::print {
namespace {

// The first objects have their places before there are any pages.
constexpr std::size_t k_catalog = 1;
constexpr std::size_t k_tree = 2;
constexpr std::size_t k_info = 3;
constexpr std::size_t k_first_free = 4;

[[noreturn]] void not_understood(const char* what) {
  throw InternalError(std::string("a page cannot be put into the file: ") + what);
}

std::size_t number_at(std::string_view text, std::size_t at) {
  while (at < text.size() && (text[at] == ' ' || text[at] == '\n')) ++at;
  std::size_t value = 0;
  const auto [end, error] = std::from_chars(text.data() + at, text.data() + text.size(), value);
  static_cast<void>(end);
  if (error != std::errc()) not_understood("no number where one must be");
  return value;
}

std::size_t number_after(std::string_view text, std::string_view key) {
  const std::size_t at = text.find(key);
  if (at == std::string_view::npos) not_understood("a key is missing");
  return number_at(text, at + key.size());
}

/// Calls `take(number)` for each reference `12 0 R`, and `copy(text)` for what lies between.
template <class Copy, class Take>
void split_references(std::string_view text, Copy copy, Take take) {
  std::size_t copied = 0;
  for (std::size_t at = text.find(" 0 R"); at != std::string_view::npos;
       at = text.find(" 0 R", at + 1)) {
    std::size_t first = at;
    while (first > copied && is_digit(text[first - 1])) --first;
    if (first == at) continue;
    copy(text.substr(copied, first - copied));
    take(number_at(text, first));
    copied = at + 4;
  }
  copy(text.substr(copied));
}

/// A document of some pages, read by its cross-reference table.
class Document {
 public:
  explicit Document(std::string_view text) : text_(text) {
    const std::size_t start = text.rfind("startxref");
    if (start == std::string_view::npos) not_understood("no startxref");
    const std::size_t table = number_at(text, start + 9);
    if (table >= text.size() || text.substr(table, 5) != "xref\n") not_understood("no xref table");
    std::size_t at = text.find('\n', table + 5);
    const std::size_t count = number_at(text, text.find(' ', table + 5));
    constexpr std::size_t k_entry = 20;
    if (at == std::string_view::npos || at + 1 + count * k_entry > text.size()) {
      not_understood("the xref table is too short");
    }
    ++at;
    for (std::size_t i = 0; i < count; ++i) {
      const std::string_view entry = text.substr(at + i * k_entry, k_entry);
      starts_.push_back(entry[17] == 'n' ? number_at(entry, 0) : 0);
    }
    const std::string_view trailer = text.substr(table, start - table);
    root_ = number_after(trailer, "/Root ");
    info_ = number_after(trailer, "/Info ");
    pages_ = number_after(object(root_), "/Pages ");
    ends_ = starts_;
    std::sort(ends_.begin(), ends_.end());
  }

  [[nodiscard]] std::size_t size() const { return starts_.size(); }
  [[nodiscard]] std::size_t tree() const { return pages_; }
  /// Whether the object goes into the new file as it is.
  [[nodiscard]] bool is_kept(std::size_t number) const {
    return starts_[number] != 0 && number != root_ && number != info_ && number != pages_;
  }
  /// The objects of its pages, in order.
  [[nodiscard]] std::vector<std::size_t> pages() const {
    std::vector<std::size_t> list;
    const std::string_view tree = object(pages_);
    const std::size_t first = tree.find("/Kids");
    if (first == std::string_view::npos) not_understood("no pages");
    split_references(
        tree.substr(first, tree.find(']', first) - first), [](std::string_view) {},
        [&](std::size_t number) { list.push_back(number); });
    return list;
  }
  /// What stands between `obj` and `endobj`.
  [[nodiscard]] std::string_view object(std::size_t number) const {
    if (number >= starts_.size() || starts_[number] == 0) not_understood("an object is missing");
    const std::size_t begin = text_.find(" obj", starts_[number]) + 4;
    const auto next = std::upper_bound(ends_.begin(), ends_.end(), starts_[number]);
    const std::size_t limit = next == ends_.end() ? text_.size() : *next;
    const std::size_t end = text_.substr(0, limit).rfind("endobj");
    if (end == std::string_view::npos || end < begin) not_understood("an object has no end");
    return text_.substr(begin, end - begin);
  }

 private:
  std::string_view text_;
  std::vector<std::size_t> starts_;
  std::vector<std::size_t> ends_;
  std::size_t root_ = 0;
  std::size_t info_ = 0;
  std::size_t pages_ = 0;
};

/// A text string of the PDF: all but letters, digits and some signs as their codes.
std::string literal(std::string_view text) {
  std::string out = "(";
  for (const char c : text) {
    const bool plain = c >= ' ' && c <= '~' && c != '(' && c != ')' && c != '\\';
    out += plain ? std::string(1, c) : fmt::format("\\{:03o}", static_cast<unsigned char>(c));
  }
  return out + ")";
}

/// The same in UTF-16, as titles in any script need it (7.9.2.2).
std::string utf16(std::string_view text) {
  std::string out = "<FEFF";
  for (std::size_t i = 0; i < text.size();) {
    const auto first = static_cast<unsigned char>(text[i]);
    const int more = first < 0x80U ? 0 : first < 0xE0U ? 1 : first < 0xF0U ? 2 : 3;
    constexpr std::array<unsigned, 4> k_masks{0x7FU, 0x1FU, 0x0FU, 0x07U};
    unsigned code = first & k_masks[static_cast<std::size_t>(more)];
    for (int k = 1; k <= more && i + static_cast<std::size_t>(k) < text.size(); ++k) {
      code =
          code << 6U | (static_cast<unsigned char>(text[i + static_cast<std::size_t>(k)]) & 0x3FU);
    }
    i += static_cast<std::size_t>(more) + 1;
    if (code > 0xFFFFU) {
      code -= 0x10000U;
      out += fmt::format("{:04X}{:04X}", 0xD800U | code >> 10U, 0xDC00U | (code & 0x3FFU));
    } else {
      out += fmt::format("{:04X}", code);
    }
  }
  return out + ">";
}

}  // namespace

PdfFile::PdfFile(std::function<void(std::string_view)> write)
    : write_(std::move(write)), offsets_(k_first_free, 0) {
  // The second line tells programs that copy files that this one is no text.
  put("%PDF-1.7\n%\xb5\xed\xae\xfb\n");
}

void PdfFile::put(std::string_view text) {
  write_(text);
  written_ += text.size();
}

void PdfFile::begin_object(std::size_t number) {
  offsets_[number] = written_;
  put(fmt::format("{} 0 obj\n", number));
}

std::size_t PdfFile::put_content(const std::string& content) {
  uLongf size = compressBound(content.size());
  std::string packed(size, '\0');
  constexpr int k_quick = 3;
  const auto* const bytes = reinterpret_cast<const Bytef*>(content.data());
  if (compress2(reinterpret_cast<Bytef*>(packed.data()), &size, bytes, content.size(), k_quick) !=
      Z_OK) {
    throw InternalError("a page's content cannot be packed");
  }
  packed.resize(size);
  const std::size_t number = offsets_.size();
  offsets_.push_back(0);
  begin_object(number);
  put(fmt::format("<< /Length {} /Filter /FlateDecode >>\nstream\n", size));
  put(packed);
  put("\nendstream\nendobj\n");
  return number;
}

void PdfFile::add(std::string_view text, Place place, std::span<const std::string> under) {
  const Document document(text);
  const std::size_t node = offsets_.size();
  offsets_.push_back(0);
  std::vector<std::size_t> renamed(document.size(), 0);
  renamed[document.tree()] = node;
  for (std::size_t i = 0; i < document.size(); ++i) {
    if (!document.is_kept(i)) continue;
    renamed[i] = offsets_.size();
    offsets_.push_back(0);
  }
  const auto rename = [&](std::size_t number) {
    if (number >= renamed.size()) not_understood("a reference leads nowhere");
    return renamed[number];
  };
  const std::vector<std::size_t> pages = document.pages();
  std::vector<std::size_t> content_under(document.size(), 0);  // of a page
  for (std::size_t i = 0; i < std::min(under.size(), pages.size()); ++i) {
    if (!under[i].empty()) content_under[pages[i]] = put_content(under[i]);
  }
  std::string out;
  for (std::size_t i = 0; i < document.size(); ++i) {
    if (!document.is_kept(i)) continue;
    const std::string_view object = document.object(i);
    const std::size_t stream = object.find("stream\n");
    out.clear();
    split_references(
        object.substr(0, stream), [&](std::string_view between) { out += between; },
        [&](std::size_t number) {
          const bool adds = content_under[i] != 0 && out.ends_with("/Contents ");
          const std::size_t own = rename(number);
          out += adds ? fmt::format("[ {} 0 R {} 0 R ]", content_under[i], own)
                      : fmt::format("{} 0 R", own);
        });
    if (stream != std::string_view::npos) out += object.substr(stream);
    begin_object(renamed[i]);
    put(out);
    put("endobj\n");
  }
  std::string kids;
  for (const std::size_t page : pages) {
    kids += fmt::format("{} 0 R ", rename(page));
    if (place == Place::next) next_pages_.push_back(rename(page));
  }
  begin_object(node);
  put(fmt::format("<< /Type /Pages /Parent {} 0 R /Count {} /Kids [ {}] >>\nendobj\n", k_tree,
                  pages.size(), kids));
  (place == Place::front ? front_ : next_).push_back({node, pages.size()});
}

std::size_t PdfFile::put_outline(std::span<const Bookmark> bookmarks) {
  const std::size_t root = offsets_.size();
  const std::size_t first = root + 1;  // the others follow in their order
  offsets_.resize(first + bookmarks.size(), 0);
  const auto object = [&](std::size_t i) { return first + i; };
  std::vector<std::size_t> outer;
  for (std::size_t i = 0; i < bookmarks.size(); ++i) {
    if (!bookmarks[i].inner || outer.empty()) outer.push_back(i);
  }
  const auto put_item = [&](std::size_t i, std::size_t parent, bool begins, bool ends,
                            std::size_t before, std::size_t after, std::size_t inside) {
    begin_object(object(i));
    std::string item =
        fmt::format("<< /Title {} /Parent {} 0 R", utf16(bookmarks[i].title), parent);
    if (!begins) item += fmt::format(" /Prev {} 0 R", object(before));
    if (!ends) item += fmt::format(" /Next {} 0 R", object(after));
    if (inside > 0) {
      item += fmt::format(" /First {} 0 R /Last {} 0 R /Count -{}", object(i + 1),
                          object(i + inside), inside);
    }
    if (bookmarks[i].page < next_pages_.size()) {
      item += fmt::format(" /Dest [ {} 0 R /Fit ]", next_pages_[bookmarks[i].page]);
    }
    put(item + " >>\nendobj\n");
  };
  for (std::size_t k = 0; k < outer.size(); ++k) {
    const std::size_t at = outer[k];
    const bool ends = k + 1 == outer.size();
    const std::size_t next = ends ? bookmarks.size() : outer[k + 1];
    put_item(at, root, k == 0, ends, k == 0 ? 0 : outer[k - 1], next, next - at - 1);
    for (std::size_t i = at + 1; i < next; ++i) {
      put_item(i, object(at), i == at + 1, i + 1 == next, i - 1, i + 1, 0);
    }
  }
  begin_object(root);
  put(fmt::format("<< /Type /Outlines /First {} 0 R /Last {} 0 R /Count {} >>\nendobj\n",
                  object(outer.front()), object(outer.back()), outer.size()));
  return root;
}

void PdfFile::finish(const PdfInfo& info, std::span<const Bookmark> bookmarks) {
  std::string more;
  if (!bookmarks.empty()) {
    more += fmt::format("   /Outlines {} 0 R\n", put_outline(bookmarks));
    std::size_t front = 0;
    for (const Node& node : front_) front += node.pages;
    more +=
        front == 0
            ? std::string("   /PageLabels << /Nums [ 0 << /S /D >> ] >>\n")
            : fmt::format("   /PageLabels << /Nums [ 0 << /S /r >> {} << /S /D >> ] >>\n", front);
  }
  begin_object(k_catalog);
  put(
      fmt::format("<< /Type /Catalog /Pages {} 0 R /Lang (en)\n{}"
                  "   /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>\n"
                  "endobj\n",
                  k_tree, more));
  std::size_t pages = 0;
  begin_object(k_tree);
  put("<< /Type /Pages /Kids [ ");
  for (const std::vector<Node>* list : {&front_, &next_}) {
    for (const Node& node : *list) {
      put(fmt::format("{} 0 R ", node.object));
      pages += node.pages;
    }
  }
  put(fmt::format("] /Count {} >>\nendobj\n", pages));
  begin_object(k_info);
  put("<< /Title " + literal(info.title) + " /Producer " + literal(info.program));
  if (!info.dated.empty()) put(" /CreationDate " + literal("D:" + info.dated));
  put(" >>\nendobj\n");
  const std::size_t table = written_;
  put(fmt::format("xref\n0 {}\n0000000000 65535 f \n", offsets_.size()));
  for (std::size_t i = 1; i < offsets_.size(); ++i) {
    put(fmt::format("{:010} 00000 n \n", offsets_[i]));
  }
  put(fmt::format("trailer\n<< /Size {} /Root {} 0 R /Info {} 0 R >>\nstartxref\n{}\n%%EOF\n",
                  offsets_.size(), k_catalog, k_info, table));
}

}  // namespace cutback::print
