#pragma once
// One PDF file put together from documents of some pages each, so that no more than one of them is
// ever in memory.

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace cutback::print {

/// What the file says about itself.
struct PdfInfo {
  std::string title;
  std::string program;
  std::string dated;  ///< `YYYYMMDDHHmmSSZ`; empty: no date
};

/// A line of the outline that viewers show beside the pages.
struct Bookmark {
  std::string title;     ///< UTF-8
  std::size_t page = 0;  ///< among those that are `next`, from 0
  bool inner = false;    ///< below the last one that is not
};

/// Takes documents as Cairo writes them (a cross-reference table, no object streams), gives their
/// objects new numbers, and hangs their pages into one tree. Viewers are told not to scale.
/// @source ISO 32000-1:2008, 7.5 (file structure), 7.7.3 (page tree), 12.2 (PrintScaling), 12.3.3
/// (outline), 12.4.2 (labels)
class PdfFile {
 public:
  explicit PdfFile(std::function<void(std::string_view)> write);

  enum class Place { next, front };  ///< front: before all that are `next`, in their own order
  /// Adds the pages of a whole document.
  /// @param under  content for each of its pages, painted before the page's own; may be shorter
  void add(std::string_view document, Place place, std::span<const std::string> under = {});
  /// Writes the page tree, the outline and the end. The pages that are `next` are labelled from 1,
  /// those before them in roman numerals.
  void finish(const PdfInfo& info, std::span<const Bookmark> bookmarks = {});

 private:
  struct Node {
    std::size_t object;
    std::size_t pages;
  };
  void put(std::string_view text);
  std::size_t put_content(const std::string& content);
  void begin_object(std::size_t number);
  /// @return the object of the outline
  std::size_t put_outline(std::span<const Bookmark> bookmarks);

  std::function<void(std::string_view)> write_;
  std::size_t written_ = 0;
  std::vector<std::size_t> offsets_;  ///< of the objects, by their numbers; 0: not yet written
  std::vector<Node> front_;
  std::vector<Node> next_;
  std::vector<std::size_t> next_pages_;  ///< the objects of the pages that are `next`
};

}  // namespace cutback::print
