// Any bytes as the results of an earlier run: the parts it names are of the list, or one fault.
#include <sys/mman.h>
#include <unistd.h>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "cutback/error.hpp"
#include "cutback/io/gland_list.hpp"
#include "run/chosen_parts.hpp"

using namespace cutback;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const gland::GlandList k_list = io::demo_gland_list();
  const int file = ::memfd_create("fuzz", 0);
  if (file < 0 || ::write(file, data, size) != static_cast<ssize_t>(size)) std::abort();
  try {
    run::ChosenParts parts("/proc/self/fd/" + std::to_string(file), k_list, "fuzz");
    for (int i = 0; i < 8; ++i) {
      const run::ChosenEnd end = parts.next("A", i % 2 == 0 ? "from" : "to");
      if (end.gland != nullptr && (end.gland < k_list.glands.data() ||
                                   end.gland >= k_list.glands.data() + k_list.glands.size())) {
        std::abort();
      }
    }
    parts.finish();
  } catch (const InputError& error) {
    if (error.faults().empty()) std::abort();
  }
  ::close(file);
  return 0;
}
