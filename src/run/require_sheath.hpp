#pragma once
// What an end must tell before it can be decided.

#include <string>

#include "cutback/job/job.hpp"

namespace cutback::run {

/// @param where  the user gives the sheath diameter, for the message
/// @throws InputError when neither readings nor a construction gave one
void require_sheath(const job::Job& job, const std::string& where);

}  // namespace cutback::run
