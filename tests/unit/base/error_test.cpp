#include "cutback/error.hpp"

#include <catch2/catch.hpp>

using namespace cutback;

TEST_CASE("to_line: what then where then given against allowed then what to do", "[unit][error]") {
  const Fault fault{.code = ErrorCode::out_of_range,
                    .what = "sheath OD is out of range",
                    .where = "--od",
                    .given = "400",
                    .allowed = "up to 300 mm",
                    .hint = "measure again"};
  CHECK(to_line(fault) ==
        "sheath OD is out of range: --od: given \"400\", allowed up to 300 mm; measure again");
}

TEST_CASE("to_line: control characters cannot reach the terminal", "[unit][error]") {
  const Fault fault{.code = ErrorCode::bad_value,
                    .what = "bad",
                    .where = "x",
                    .given = std::string("\x1b[2J\n", 5),
                    .allowed = {},
                    .hint = {}};
  CHECK(to_line(fault) == "bad: x: given \"?[2J?\"");
}

TEST_CASE("Error: carries every fault and one line for each", "[unit][error]") {
  const InputError error(std::vector<Fault>{{.what = "a"}, {.what = "b"}});
  CHECK(error.faults().size() == 2);
  CHECK(std::string(error.what()) == "a\nb");
}

TEST_CASE("to_line: C1 controls and marks that turn the writing are not obeyed", "[unit][error]") {
  const Fault fault{.what = "bad",
                    .given =
                        "A\xC2\x9B"
                        "31mX\xE2\x80\xAE"
                        "Y\xE2\x81\xA6"};
  CHECK(to_line(fault) == "bad: given \"A?31mX?Y?\"");
  for (const char* hidden :
       {"\xC2\xAD", "\xD8\x9C", "\xE1\xA0\x8E", "\xE2\x80\x8B", "\xE2\x80\xA8", "\xE2\x80\xA9",
        "\xE2\x81\xA0", "\xEF\xBB\xBF", "\xEF\xBF\xB9", "\xF3\xA0\x80\x81", "\xF3\xA0\x81\x81"}) {
    CHECK(hidden_length(hidden) == std::string_view(hidden).size());
  }
  for (const char* shown : {"\xE2\x80\x94", "\xE3\x81\x82", "\xEF\xBF\xBD", "\xF0\x9F\x94\xA7",
                            "\xE2", "\xF3\xA0", "\xE1\xA0\x80", "\xC2\xB5"}) {
    CHECK(hidden_length(shown) == 0);
  }
  CHECK(hidden_length("\xC3\xA9") == 0);
  CHECK(hidden_length("\xE2\x82\xAC") == 0);
}

TEST_CASE("make_fault: the parts in the order of the message", "[unit][error]") {
  const Fault fault = make_fault(ErrorCode::bad_value, "what", "where", "given", "allowed", "hint");
  CHECK(to_line(fault) == "what: where: given \"given\", allowed allowed; hint");
  CHECK(fault.code == ErrorCode::bad_value);
}
