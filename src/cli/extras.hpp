#pragma once
// What needs libraries that take longer to load than a whole `fit` may last.

namespace cutback::cli {

/// Functions of the second program, `cutback-full`: it is the same program, linked with libraries
/// for pages, spreadsheets and optimisation. `cutback` has none of them and becomes `cutback-full`
/// when a command asks for one (Runtime::extras).
struct Extras {};

/// All of them; only the full program has it.
[[nodiscard]] const Extras& all_extras();

/// Thrown by Runtime::extras() in `cutback`: the same arguments are to be run by `cutback-full`.
/// No error, and nothing may have been read or written before.
struct NeedsFullProgram {};

}  // namespace cutback::cli
