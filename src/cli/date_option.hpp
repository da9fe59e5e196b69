#pragma once
// The dates that results carry: pages with --dated, and workbooks, whose format asks for one.

#include <cstdint>
#include <optional>
#include <string>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// The environment's SOURCE_DATE_EPOCH (reproducible-builds.org), in seconds since 1970-01-01;
/// nothing where it is not set.
/// @throws InputError where it is no number of seconds
[[nodiscard]] std::optional<std::int64_t> source_date_unix_s(const Runtime& runtime);

/// Now in UTC as `YYYYMMDDHHmmSSZ`, or the environment's SOURCE_DATE_EPOCH, so that a page with a
/// date can be made again.
/// @throws InputError where SOURCE_DATE_EPOCH is no number of seconds
[[nodiscard]] std::string utc_date(const Runtime& runtime);

/// The day of it, as 2026-03-31.
[[nodiscard]] std::string today(const Runtime& runtime);

/// The day after it: east of Greenwich it may have begun.
[[nodiscard]] std::string tomorrow(const Runtime& runtime);

}  // namespace cutback::cli
