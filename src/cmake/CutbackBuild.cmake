# Build helpers: one standard, one set of warnings, one way to build a data file in.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "Build type" FORCE)
endif()

# -Wno-restrict: g++ 12 sees an overlap in "literal" + std::string where there is none (GCC bug
# 105651). -Wno-missing-field-initializers: a designated initialiser leaves out what stays at its
# default on purpose. -Wno-subobject-linkage: of sources that are compiled together each is taken for a
# header, and a type that is its own for one that others see.
add_library(cutback_warnings INTERFACE)  # what every target of the project is compiled with
target_compile_options(cutback_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
  -Wnon-virtual-dtor -Wcast-align -Wunused -Woverloaded-virtual -Wnull-dereference
  -Wdouble-promotion -Wformat=2 -Wno-missing-field-initializers
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>
  $<$<AND:$<CXX_COMPILER_ID:GNU>,$<BOOL:${CUTBACK_TOGETHER}>>:-Wno-subobject-linkage>
  $<$<BOOL:${CUTBACK_WERROR}>:-Werror>)

# What is given to others: addresses that cannot be guessed, tables of functions that cannot be
# written to, guards of the stack and of copies; and no path of this machine, so that the same
# sources give the same bytes.
if(CMAKE_BUILD_TYPE STREQUAL "Release" AND NOT CUTBACK_SANITIZE AND NOT CUTBACK_FUZZ)
  include(CheckPIESupported)
  check_pie_supported()
  set(CMAKE_POSITION_INDEPENDENT_CODE ON)
  target_compile_options(cutback_warnings INTERFACE
    -fstack-protector-strong -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2
    "-ffile-prefix-map=${PROJECT_BINARY_DIR}=build" "-ffile-prefix-map=${PROJECT_SOURCE_DIR}=.")
  target_link_options(cutback_warnings INTERFACE -Wl,-z,relro -Wl,-z,now)
endif()

add_library(cutback_sanitizers INTERFACE)
if(CUTBACK_SANITIZE)
  string(REPLACE ";" "," _sanitize "${CUTBACK_SANITIZE}")
  target_compile_options(cutback_sanitizers INTERFACE
    -fsanitize=${_sanitize} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(cutback_sanitizers INTERFACE -fsanitize=${_sanitize})
endif()

if(CUTBACK_FUZZ)  # coverage for libFuzzer in the library too
  target_compile_options(cutback_sanitizers INTERFACE -fsanitize=fuzzer-no-link)
  target_link_options(cutback_sanitizers INTERFACE -fsanitize=fuzzer-no-link)
endif()

if(CUTBACK_COVERAGE)  # read by tests/coverage/coverage.py; the path holds for a cleared environment too
  target_compile_options(cutback_sanitizers INTERFACE
    "-fprofile-instr-generate=${PROJECT_BINARY_DIR}/profiles/%8m.profraw" -fcoverage-mapping)
  target_link_options(cutback_sanitizers INTERFACE -fprofile-instr-generate)
endif()

# Headers that nearly every file includes, read once for a target: without optimisation compiling
# takes less than half as long. Off by default: when it optimises, g++ 12 takes what stands in such
# headers for code of the project, and warns of it.
if(NOT CUTBACK_PRECOMPILE)
  set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON)
endif()
set(cutback_common_headers <fmt/format.h> <algorithm> <array> <cmath> <functional> <map> <memory>
  <optional> <span> <string> <string_view> <unordered_map> <variant> <vector>)

# cutback_embed(TARGET SYMBOL FILE...): builds the files into TARGET as
# cutback::embedded::SYMBOL, a list of {name, content, sha256}.
function(cutback_embed target symbol)
  set(out "${CMAKE_CURRENT_BINARY_DIR}/embedded_${symbol}.cpp")
  list(JOIN ARGN "|" files)
  add_custom_command(OUTPUT "${out}"
    COMMAND "${CMAKE_COMMAND}" "-DOUT=${out}" "-DSYMBOL=${symbol}" "-DFILES=${files}"
            -P "${PROJECT_SOURCE_DIR}/src/cmake/embed.cmake"
    DEPENDS ${ARGN} "${PROJECT_SOURCE_DIR}/src/cmake/embed.cmake"
    COMMENT "Building in data: ${symbol}" VERBATIM)
  target_sources(${target} PRIVATE "${out}")
endfunction()
