#include "cutback/glyph_width.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace cutback;

TEST_CASE("columns_of: letters of any script by the columns that a terminal gives them",
          "[unit][text]") {
  CHECK(columns_of("") == 0);
  CHECK(columns_of("P-201") == 5);
  CHECK(columns_of("\u0391\u03bd\u03c4\u03bb\u03af\u03b1") == 6);  // Greek
  CHECK(columns_of("\u043d\u0430\u0441\u043e\u0441") == 5);        // Cyrillic
  CHECK(columns_of("\u6cf5\u623f-1") == 6);                        // two wide ones
  CHECK(columns_of("e\u0301") == 1);                               // an accent
  CHECK(columns_of("\u0643\u064e\u0628") == 2);                    // Arabic, a vowel sign
  CHECK(columns_of("\U0001f600") == 2);
  CHECK(columns_of("\xff\xff") == 2);  // no UTF-8
}

TEST_CASE("first_columns: no wide letter is cut in two, no accent from its letter",
          "[unit][text]") {
  CHECK(first_columns("abc", 2) == "ab");
  CHECK(first_columns("\u6cf5\u623f", 3) == "\u6cf5");
  CHECK(first_columns("\u6cf5\u623f", 1).empty());
  CHECK(first_columns("e\u0301x", 1) == "e\u0301");
}
