#pragma once
// What a dialogue is led by in tests: the built-in tables and the demonstration list.

#include "cutback/ask/ask.hpp"
#include "cutback/io/gland_list.hpp"
#include "support/build_job.hpp"

namespace cutback::test {

inline const gland::GlandList& demo_list() {
  static const gland::GlandList k_list = io::demo_gland_list();
  return k_list;
}

inline ask::Facts ask_facts() { return {standards(), demo_list().glands}; }

}  // namespace cutback::test
