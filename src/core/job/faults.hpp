#pragma once
// What is wrong with a job, gathered part by part.

#include <string>
#include <utility>
#include <vector>

#include "cutback/error.hpp"

namespace cutback::job::detail {

/// Collects faults; `where` of each is the job's own key.
class Faults {
 public:
  void add(ErrorCode code, std::string what, std::string where, std::string given,
           std::string allowed, std::string hint) {
    list_.push_back({.code = code,
                     .what = std::move(what),
                     .where = std::move(where),
                     .given = std::move(given),
                     .allowed = std::move(allowed),
                     .hint = std::move(hint)});
  }
  void add(const std::vector<Fault>& faults) {
    list_.insert(list_.end(), faults.begin(), faults.end());
  }
  [[nodiscard]] std::vector<Fault> take() { return std::move(list_); }

 private:
  std::vector<Fault> list_;
};

}  // namespace cutback::job::detail
