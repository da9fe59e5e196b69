#pragma once
// One end as a JSON file.

#include <string>
#include <string_view>

#include "cutback/job/input.hpp"

namespace cutback::io {

/// Reads a job (keys by job::fields(), nested in their sections).
/// @param text  the file's content; @param name  for messages
/// @throws InputError with every fault: syntax, unknown key (with the nearest), duplicate key,
/// wrong type, value out of range
[[nodiscard]] job::JobInput read_job(std::string_view text, const std::string& name);

/// Reads it from a file; `-` is standard input. @throws FileError, InputError
[[nodiscard]] job::JobInput load_job(const std::string& path);

/// The job as JSON that read_job reads back to the same record.
/// @param indent  spaces a level; -1 for one line without spaces
[[nodiscard]] std::string write_job(const job::JobInput& job, int indent);

}  // namespace cutback::io
