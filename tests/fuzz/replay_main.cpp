// Runs a fuzzer's entry over the files, or the folders of files, that are named as arguments.
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <iostream>
#include <vector>

#include "cutback/io/files.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

namespace fs = std::filesystem;

int run(const fs::path& path) {
  if (fs::is_directory(path)) {
    int count = 0;
    for (const auto& entry : fs::directory_iterator(path)) count += run(entry.path());
    return count;
  }
  const cutback::io::WholeFile file(path.string());
  // A copy of the exact size, so that a sanitizer sees a read past the end.
  const std::vector<std::uint8_t> bytes(file.text().begin(), file.text().end());
  LLVMFuzzerTestOneInput(bytes.data(), bytes.size());
  return 1;
}

}  // namespace

int main(int argc, char** argv) {
  int count = 0;
  for (int i = 1; i < argc; ++i) count += run(argv[i]);
  std::cout << count << " inputs\n";
  return count > 0 ? 0 : 1;  // an empty corpus is a mistake in the build
}
