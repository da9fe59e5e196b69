#include "cutback/text.hpp"

#include <catch2/catch.hpp>

#include <vector>
#include "cutback/hidden.hpp"

using namespace cutback;

TEST_CASE("without_controls: what is obeyed is written out", "[unit][text]") {
  CHECK(without_controls("a\x1b[1mb\x7f\n\t") == "a\\x1b[1mb\\x7f\n\t");
  CHECK(without_controls("a\xC2\x9B"
                         "b") == "a\\x9bb");
  CHECK(without_controls("a\xE2\x80\xAE"
                         "b") == "a\\u202eb");
  CHECK(without_controls("a\xF3\xA0\x81\x81"
                         "b") == "a\\U000e0041b");
  CHECK(without_controls("\xC3\xA4\xE2\x82\xAC") == "\xC3\xA4\xE2\x82\xAC");
}

TEST_CASE("harmless_json: the same text, nothing in it that a terminal obeys", "[unit][text]") {
  CHECK(harmless_json("\"a\x7f\"") == "\"a\\u007f\"");
  CHECK(harmless_json("\"a\xC2\x9B\"") == "\"a\\u009b\"");
  CHECK(harmless_json("\"\xE2\x80\xAE\"") == "\"\\u202e\"");
  CHECK(harmless_json("\"\xF3\xA0\x81\x81\"") == "\"\\udb40\\udc41\"");
  CHECK(harmless_json("{\"\xC3\xA4\": \"\\u001b\"}\n") == "{\"\xC3\xA4\": \"\\u001b\"}\n");
}

TEST_CASE("trimmed: what stands inside stays", "[unit][text]") {
  CHECK(trimmed(" a b\t\r\n") == "a b");
  CHECK(trimmed("ab") == "ab");
  CHECK(trimmed(" \t\r\n").empty());
  CHECK(trimmed("").empty());
  CHECK(trimmed(" ab\n", " \t") == "ab\n");
}

TEST_CASE("trim_end: spaces at the end alone", "[unit][text]") {
  std::string text = "  a b  ";
  trim_end(text);
  CHECK(text == "  a b");
  text = "   ";
  trim_end(text);
  CHECK(text.empty());
}

TEST_CASE("joined: something between every two words", "[unit][text]") {
  CHECK(joined(std::vector<std::string>{}, ", ").empty());
  CHECK(joined(std::vector<std::string>{"a"}, ", ") == "a");
  CHECK(joined(std::vector<std::string>{"", "b", "c"}, ", ") == ", b, c");
}

TEST_CASE("is_digit: the ten ASCII digits", "[unit][text]") {
  CHECK(is_digit('0'));
  CHECK(is_digit('9'));
  for (const char c : {'/', ':', 'a', '-', '\xB2'}) CHECK_FALSE(is_digit(c));
}

TEST_CASE("without_controls: no character moves a cursor or changes a colour", "[unit][base]") {
  CHECK(without_controls("a\x1b[31mb") == "a\\x1b[31mb");
  CHECK(without_controls("a\tb\n") == "a\tb\n");
  CHECK(without_controls("\r\x7f\x07") == "\\x0d\\x7f\\x07");
  CHECK(without_controls("\xC2\x9B"
                         "31m") == "\\x9b31m");
  CHECK(without_controls("K\xC3\xBChler \xC2\xBD") == "K\xC3\xBChler \xC2\xBD");
}
