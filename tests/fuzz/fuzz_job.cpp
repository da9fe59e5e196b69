// Any bytes: a job that is written and read back as itself, or faults that each say what is wrong.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/io/job_file.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  std::string written;
  try {
    written = cutback::io::write_job(cutback::io::read_job(text, "fuzz"), 2);
  } catch (const cutback::InputError& error) {
    if (error.faults().empty()) std::abort();
    return 0;
  }
  const auto again = cutback::io::read_job(written, "written");
  if (cutback::io::write_job(again, 2) != written) std::abort();
  return 0;
}
