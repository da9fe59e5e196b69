// Any lines as values of every field of a job (decimals, readings, words, threads): what is taken
// is written and taken again as the same; what is not leaves the job as it was.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "cutback/entry/thread.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"

using namespace cutback;

namespace {

template <class Record>
void try_field(const job::FieldOf<Record>& field, std::string_view text) {
  Record record;
  if (!job::set_from_text(record, field, text, "fuzz").empty()) {
    if (job::text_of(record, field)) std::abort();
    return;
  }
  const auto written = job::text_of(record, field);
  if (!written) return;
  Record again;
  if (!job::set_from_text(again, field, *written, "again").empty()) std::abort();
  if (job::text_of(again, field) != written) std::abort();
}

void try_line(std::string_view line) {
  for (const job::Field& field : job::fields()) try_field(field, line);
  for (const job::CoreField& field : job::core_fields()) try_field(field, line);
  if (const auto number = parse_number(line); number && !std::isfinite(*number)) std::abort();
  if (const auto thread = entry::parse_thread(line)) {
    if (entry::parse_thread(entry::to_text(*thread)) != thread) std::abort();
  } else {
    static_cast<void>(entry::thread_advice(line));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view text(reinterpret_cast<const char*>(data), size);
  constexpr int k_most_lines = 16;
  for (int i = 0; i < k_most_lines; ++i) {
    const std::size_t end = text.find('\n');
    try_line(text.substr(0, end));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return 0;
}
