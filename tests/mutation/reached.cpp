// Tells the mutants of a sample which test is over, so that one run of a program says which test
// reaches which. Without mutants there is nobody to tell.
#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include <catch2/catch.hpp>

extern "C" [[gnu::weak]] void cutback_mutants_test_is_over(const char* test);

namespace {

struct Listener : Catch::TestEventListenerBase {
  using TestEventListenerBase::TestEventListenerBase;
  void testCaseEnded(const Catch::TestCaseStats& stats) override {
    if (cutback_mutants_test_is_over != nullptr) {
      cutback_mutants_test_is_over(stats.testInfo.name.c_str());
    }
  }
};

}  // namespace

CATCH_REGISTER_LISTENER(Listener)
