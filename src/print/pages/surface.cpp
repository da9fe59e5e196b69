#include "print/pages/surface.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include "cutback/error.hpp"
#include "print/pages/typesetter.hpp"

namespace cutback::print {
namespace {

cairo_status_t append(void* document, const unsigned char* bytes, unsigned length) {
  static_cast<std::string*>(document)->append(bytes, bytes + length);
  return CAIRO_STATUS_SUCCESS;
}

cairo_surface_t* make(Surface::Kind kind, double width_mm, double height_mm,
                      std::string& document) {
  const double width = width_mm * k_points_per_mm;
  const double height = height_mm * k_points_per_mm;
  if (kind == Surface::Kind::svg) {
    cairo_surface_t* const svg =
        cairo_svg_surface_create_for_stream(append, &document, width, height);
    cairo_svg_surface_restrict_to_version(svg, CAIRO_SVG_VERSION_1_1);
    return svg;
  }
  cairo_surface_t* const pdf =
      cairo_pdf_surface_create_for_stream(append, &document, width, height);
  // Newer Cairo writes later versions with object streams, which PdfFile does not read.
  cairo_pdf_surface_restrict_to_version(pdf, CAIRO_PDF_VERSION_1_4);
  return pdf;
}

}  // namespace

Surface::Surface(Kind kind, double width_mm, double height_mm)
    : surface_(make(kind, width_mm, height_mm, document_)), page_(cairo_create(surface_)) {}

Surface::~Surface() {
  if (page_ != nullptr) cairo_destroy(page_);
  cairo_surface_destroy(surface_);
}

void Surface::show_page() const { cairo_show_page(page_); }

std::string Surface::finish() {
  const cairo_status_t drawn = cairo_status(page_);
  cairo_destroy(page_);
  page_ = nullptr;
  cairo_surface_finish(surface_);
  const cairo_status_t ended = cairo_surface_status(surface_);
  for (const cairo_status_t status : {drawn, ended}) {
    if (status != CAIRO_STATUS_SUCCESS) {
      throw InternalError(std::string("a page cannot be drawn: ") + cairo_status_to_string(status));
    }
  }
  return std::move(document_);
}

}  // namespace cutback::print
