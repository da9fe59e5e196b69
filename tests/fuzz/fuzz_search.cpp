// An end and a gland list from any text: the search finds what a look at every gland finds. The
// text is lines of key=value, as in a job file, a blank line, and the list.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <span>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/fit/select.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/io/standards.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"

using namespace cutback;

namespace {

job::JobInput read_end(std::string_view text) {
  job::JobInput input;
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(text.size(), line.size() + 1));
    const std::size_t equals = line.find('=');
    if (equals == std::string_view::npos) continue;
    const std::string_view key = line.substr(0, equals);
    for (const job::Field& field : job::fields()) {
      if (field.key != key) continue;
      // A value that is refused leaves the field as it was.
      static_cast<void>(job::set_from_text(input, field, line.substr(equals + 1), "fuzz"));
    }
  }
  return input;
}

void compare(const job::JobInput& input, std::span<const gland::Gland> glands,
             const tables::Standards& standards, fit::Prefer prefer) {
  const auto job = job::resolve(input, standards, job::Unstated::by_notation);
  const auto question = fit::ask(job, standards, {.purpose = fit::Purpose::schedule});
  const fit::Selector selector(glands, prefer);
  fit::Search search(selector, question);
  const fit::Found found = search.find();
  const auto ranked = fit::fit_all(question, glands, prefer);
  const auto fits = std::count_if(ranked.begin(), ranked.end(), [](const fit::GlandFit& fit) {
    return fit.verdict == Verdict::fits;
  });
  const bool none = ranked.front().verdict == Verdict::no_fit;
  if (found.verdict != ranked.front().verdict) std::abort();
  if (found.first != (none ? nullptr : ranked.front().gland)) std::abort();
  if (found.fits != static_cast<std::size_t>(fits)) std::abort();
  if (fits == 0 && found.nearest != fit::nearest_of(ranked).gland) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const tables::Standards k_standards = io::builtin_standards();
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const std::size_t blank = text.find("\n\n");
  if (blank == std::string_view::npos) return 0;
  try {
    const auto list = io::read_gland_list(text.substr(blank + 2), "fuzz");
    if (list.glands.empty()) return 0;
    const auto input = read_end(text.substr(0, blank));
    for (const auto prefer : {fit::Prefer::price, fit::Prefer::margin, fit::Prefer::stock}) {
      compare(input, list.glands, k_standards, prefer);
    }
  } catch (const InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  return 0;
}
