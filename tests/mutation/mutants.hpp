// What the changed places of a source call: each does what stood there, or what the mutant that was
// chosen does instead. Included by the sources that mutate.py writes, never by the project's own.
#pragma once
#pragma GCC system_header
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

namespace cutback_mutants {

inline constexpr int k_most = 20000;
inline const int chosen = [] {
  const char* text = std::getenv("CUTBACK_MUTANT");
  return text ? std::atoi(text) : 0;
}();
inline unsigned char reached[k_most];

/// Writes a line for a test that is over, where CUTBACK_REACHED names a file: how long it took, the
/// numbers of the mutants that it reached, its name.
extern "C" [[gnu::used]] inline void cutback_mutants_test_is_over(const char* test) {
  using Clock = std::chrono::steady_clock;
  static std::FILE* const file = [] {
    const char* const path = std::getenv("CUTBACK_REACHED");
    return path ? std::fopen(path, "w") : nullptr;
  }();
  static Clock::time_point begin = Clock::now();
  if (!file) return;
  std::fprintf(file, "%.4f", std::chrono::duration<double>(Clock::now() - begin).count());
  for (int i = 1; i < k_most; ++i) {
    if (reached[i]) std::fprintf(file, " %d", i);
    reached[i] = 0;
  }
  std::fprintf(file, "\t%s\n", test);
  std::fflush(file);
  begin = Clock::now();
}

inline bool on(int id) {
  reached[id] = 1;
  return id == chosen;
}

#define CUTBACK_MUTANT_OF(name, was, becomes)  \
  template <class A, class B>                  \
  auto name(int id, const A& a, const B& b) {  \
    return on(id) ? (a becomes b) : (a was b); \
  }
CUTBACK_MUTANT_OF(less, <, <=)
CUTBACK_MUTANT_OF(less_equal, <=, <)
CUTBACK_MUTANT_OF(greater, >, >=)
CUTBACK_MUTANT_OF(greater_equal, >=, >)
CUTBACK_MUTANT_OF(equal, ==, !=)
CUTBACK_MUTANT_OF(not_equal, !=, ==)
CUTBACK_MUTANT_OF(plus, +, -)
CUTBACK_MUTANT_OF(minus, -, +)
CUTBACK_MUTANT_OF(times, *, /)
CUTBACK_MUTANT_OF(over, /, *)
#undef CUTBACK_MUTANT_OF

}  // namespace cutback_mutants
