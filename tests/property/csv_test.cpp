#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "cutback/io/csv.hpp"

using namespace cutback;

namespace {

/// Fields of the characters that matter to a reader.
rc::Gen<std::string> field() {
  return rc::gen::container<std::string>(rc::gen::element('a', ',', '"', '\n', '\r', ' ', ';'));
}

}  // namespace

TEST_CASE("csv: what is written is read back", "[property][csv]") {
  CHECK(rc::check([] {
    const auto row = *rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(field()));
    RC_PRE(row.size() > 1 || !row.front().empty());  // an empty line is no record
    std::string text;
    for (const std::string& f : row) text += (&f == &row.front() ? "" : ",") + io::csv_field(f);
    io::CsvReader reader(text, "t");
    io::CsvRecord record;
    RC_ASSERT(reader.next(record));
    RC_ASSERT(std::vector<std::string>(record.fields.begin(), record.fields.end()) == row);
    RC_ASSERT(!reader.next(record));
  }));
}
