#include "cutback/bounds.hpp"

namespace cutback {

Fault beyond(const Bound& bound, std::string_view where, std::string_view given) {
  return make_fault(ErrorCode::out_of_range, std::string(bound.what), where, given,
                    "at most " + std::to_string(bound.most) + " " + std::string(bound.unit),
                    std::string(bound.hint));
}

void FaultList::raise(const std::string& name) {
  if (faults_.empty()) return;
  if (more_ > 0) {
    faults_.push_back(
        make_fault(faults_.back().code,
                   "and " + std::to_string(more_) + " " + std::string(bounds::k_faults.what), name,
                   "", "", std::string(bounds::k_faults.hint)));
  }
  throw InputError(std::move(faults_));
}

}  // namespace cutback
