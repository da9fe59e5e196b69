#include "print/pages/pdf_file.hpp"

#include <catch2/catch.hpp>
#include <string>

#include "cutback/error.hpp"

using cutback::print::PdfFile;

TEST_CASE("What is no document as Cairo writes it is refused") {
  for (const char* text : {"", "startxref\n", "startxref\n99\n", "startxref\n0\n",
                           "xref\n0 9\nstartxref\n0\n", "xref\n0 x\nstartxref\n0\n"}) {
    INFO(text);
    std::string file;
    PdfFile pdf([&](std::string_view bytes) { file += bytes; });
    CHECK_THROWS_AS(pdf.add(text, PdfFile::Place::next), cutback::InternalError);
  }
}

TEST_CASE("A file without pages is a file") {
  std::string file;
  PdfFile pdf([&](std::string_view bytes) { file += bytes; });
  pdf.finish({.title = "(a) \\ \xC3\xA9", .program = "test", .dated = {}});
  CHECK(file.starts_with("%PDF-1.7\n"));
  CHECK(file.ends_with("%%EOF\n"));
  CHECK(file.find("/Count 0") != std::string::npos);
  CHECK(file.find("\\050a\\051 \\134 \\303\\251") != std::string::npos);
  CHECK(file.find("Date") == std::string::npos);
}
