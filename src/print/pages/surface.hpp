#pragma once
// A document while it is drawn.

#include <cairo.h>
#include <string>

namespace cutback::print {

/// A vector document kept in memory. Not movable: Cairo holds its place.
class Surface {
 public:
  enum class Kind { pdf, svg };
  Surface(Kind kind, double width_mm, double height_mm);
  Surface(const Surface&) = delete;
  Surface& operator=(const Surface&) = delete;
  ~Surface();

  [[nodiscard]] cairo_t* page() const { return page_; }
  /// Ends a page of a PDF.
  void show_page() const;
  /// The whole document; to be called once, at the end.
  /// @throws InternalError when Cairo could not draw it
  [[nodiscard]] std::string finish();

 private:
  std::string document_;
  cairo_surface_t* surface_;
  cairo_t* page_;
};

}  // namespace cutback::print
