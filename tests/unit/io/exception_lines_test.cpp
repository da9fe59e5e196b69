#include "cutback/io/exception_lines.hpp"

#include <catch2/catch.hpp>

using cutback::io::ExceptionLines;

namespace {

std::string text_of(const ExceptionLines& lines) {
  std::string text;
  lines.each([&](std::string_view piece) {
    CHECK(piece.ends_with('\n'));
    text += piece;
  });
  return text;
}

}  // namespace

TEST_CASE("ExceptionLines: the largest group first, in the order added, whatever memory it has",
          "[unit][io]") {
  for (const std::size_t most : {0U, 7U, 30U, 1000000U}) {
    ExceptionLines lines(most);
    CHECK(text_of(lines).empty());
    std::string a;
    std::string b;
    std::string c;
    for (int i = 0; i < 100; ++i) {
      const std::string line = std::to_string(i) + "\n";
      const char* const group = i % 4 == 0 ? "c" : i % 4 == 1 ? "a" : "b";
      (*group == 'a' ? a : *group == 'b' ? b : c) += line;
      lines.add(group, line);
    }
    CHECK(text_of(lines) == b + a + c);
    lines.add("c", "more\n");
    CHECK(text_of(lines) == b + c + "more\n" + a);
  }
}
