#pragma once
// Which build a program is of.

namespace cutback::cli {

/// Made from the libraries that both programs are linked with; generated, see
/// src/cmake/build.cmake.
[[nodiscard]] const char* build_identifier();

}  // namespace cutback::cli
