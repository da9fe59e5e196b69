#pragma once
// The exit statuses: a contract, repeated in --help and README.md.

namespace cutback::cli {

enum ExitCode : int {
  k_exit_fits = 0,       ///< done, and everything fits
  k_exit_no_fit = 1,     ///< done, and something does not fit
  k_exit_bad_input = 2,  ///< the command line or a file's content is wrong
  k_exit_bad_file = 3,   ///< a file cannot be read or written
  k_exit_bug = 4,        ///< a bug in this program
};

}  // namespace cutback::cli
