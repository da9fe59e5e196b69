#include <catch2/catch.hpp>
#include <sstream>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
#include "cutback/text.hpp"
#include "support/build_sheet.hpp"

using namespace cutback;
using Catch::Contains;

TEST_CASE("inches: every length of a fit, exactly converted", "[unit][print]") {
  const std::vector<gland::Gland> glands{test::small_gland()};
  const job::Job job = test::resolved(test::small_cable());
  const fit::Question question = fit::ask(job, test::standards());
  const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
  print::Style style;
  const std::string plain_text = print::fit_text(question, ranked, "test", style);
  style.inches = true;
  const std::string text = print::fit_text(question, ranked, "test", style);
  CHECK(text.starts_with(plain_text));
  CHECK_THAT(text, Contains("IN INCHES\n  1 in = 25.4 mm"));
  CHECK_THAT(text, Contains("15.00        0.5906"));  // 15 / 25.4 = 0.590551
  CHECK_THAT(text, Contains("16.00        0.6299"));  // the seal's limit
  // Each row says one length twice.
  std::istringstream lines(text.substr(text.find("1 in = 25.4")));
  std::string line;
  int rows = 0;
  while (std::getline(lines, line)) {
    if (line.size() < 45) continue;
    const std::size_t last = line.rfind(' ');
    const std::size_t end = line.find_last_not_of(' ', last);
    const std::size_t first = line.rfind(' ', end);
    const auto mm = parse_number(line.substr(first + 1, end - first));
    const auto in = parse_number(line.substr(last + 1));
    if (!mm) continue;  // the heads of the columns
    REQUIRE(in);
    CHECK(*in * 25.4 == Approx(*mm).margin(0.0026));
    ++rows;
  }
  CHECK(rows > 8);
}
