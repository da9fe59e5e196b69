// Writes which mutants each test reaches, a line per test: seconds, numbers, name. mutate.py puts
// it into a test program.
#pragma once
#include <catch2/catch.hpp>
#include <chrono>
#include <fstream>

#include "mutation/mutants.hpp"

namespace cutback_mutants {

class Listener final : public Catch::TestEventListenerBase {
 public:
  using TestEventListenerBase::TestEventListenerBase;

  void testCaseStarting(const Catch::TestCaseInfo& info) override {
    TestEventListenerBase::testCaseStarting(info);
    name_ = info.name;
    begin_ = std::chrono::steady_clock::now();
  }

  void testCaseEnded(const Catch::TestCaseStats& stats) override {
    const char* path = std::getenv("CUTBACK_REACHED");
    if (path) {
      const std::chrono::duration<double> lasted = std::chrono::steady_clock::now() - begin_;
      std::ofstream file(path, std::ios::app);
      file << lasted.count() << '\t';
      for (int i = 1; i < k_most; ++i) {
        if (reached[i]) file << i << ' ';
      }
      file << '\t' << name_ << '\n';
      std::fill_n(reached, k_most, static_cast<unsigned char>(0));
    }
    TestEventListenerBase::testCaseEnded(stats);
  }

 private:
  std::string name_;
  std::chrono::steady_clock::time_point begin_;
};
CATCH_REGISTER_LISTENER(Listener)

}  // namespace cutback_mutants
