#pragma once
// A line of the register of finished ends, asked for behind the answer of a dialogue.

#include <span>
#include <string>

#include "cli/runtime.hpp"
#include "cli/talk.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/input.hpp"

namespace cutback::cli {

/// Asks for what the job does not tell and puts the row into the register at `path`. The gland of
/// the answer is offered; one that did not fit, or is in no list, is written only when it is typed
/// twice, and the row says so. Tag and end of a row that was written are the job's from then on.
/// @param ranked  the answer, best first
/// @return false at the end of input
[[nodiscard]] bool enter_into_register(const std::string& path, job::JobInput& input,
                                       std::span<const fit::GlandFit> ranked,
                                       const gland::GlandList& list, Talk& talk,
                                       const Runtime& runtime);

}  // namespace cutback::cli
