#pragma once
// How much is taken of what anybody may send, and what is said of more.

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/error.hpp"

namespace cutback {

/// A limit that no honest file comes near.
struct Bound {
  std::size_t most;
  std::string_view unit;  ///< what is counted, in the plural
  std::string_view what;  ///< is wrong where there is more
  std::string_view hint;
};

namespace bounds {

inline constexpr Bound k_file_bytes{std::size_t{256} << 20U, "bytes", "the file is too long",
                                    "look whether it is the right file"};
inline constexpr Bound k_job_bytes{std::size_t{16} << 20U, "bytes",
                                   "the file is too long for a job",
                                   "look whether it is the right file"};
inline constexpr Bound k_readings_bytes{std::size_t{64} << 20U, "bytes",
                                        "the file is too long for a list of readings",
                                        "look whether it is the right file"};
inline constexpr Bound k_columns_bytes{std::size_t{1} << 20U, "bytes",
                                       "the file is too long for a list of columns",
                                       "look whether it is the right file"};
inline constexpr Bound k_table_bytes{std::size_t{1} << 20U, "bytes",
                                     "the file is too long for a table of published values",
                                     "look whether it is the right folder"};
inline constexpr Bound k_glands_bytes{std::size_t{512} << 20U, "bytes",
                                      "the file is too long for a gland list",
                                      "leave out what is not sold, or give it in two lists"};
inline constexpr Bound k_schedule_bytes{std::size_t{8} << 30U, "bytes",
                                        "the file is too long for a schedule",
                                        "give it in several files"};
inline constexpr Bound k_row_bytes{std::size_t{16} << 20U, "bytes",
                                   "a row holds more text than any cable needs",
                                   "look for a quote that is opened and never closed, or for line "
                                   "ends that are none"};
inline constexpr Bound k_cell_bytes{std::size_t{128} << 10U, "bytes",
                                    "a cell holds more text than a cell can",
                                    "a spreadsheet takes 32,767 characters in one"};
inline constexpr Bound k_xml_levels{64, "levels", "its elements are nested too deep", ""};
inline constexpr Bound k_cores{61, "cores", "more cores are listed than a cable has",
                               "list those of this cable"};
inline constexpr Bound k_faults{50, "faults", "more faults of this file",
                                "mend these first, then look again"};

}  // namespace bounds

/// The fault where there is more than a bound allows.
/// @param given  how much there is, where that is known
[[nodiscard]] Fault beyond(const Bound& bound, std::string_view where, std::string_view given = {});

/// What is wrong with one file: the first faults, and how many more there are.
class FaultList {
 public:
  void add(Fault fault) {
    if (faults_.size() < bounds::k_faults.most) {
      faults_.push_back(std::move(fault));
    } else {
      ++more_;
    }
  }
  void add(const std::vector<Fault>& faults) {
    for (const Fault& fault : faults) add(fault);
  }
  [[nodiscard]] bool is_empty() const noexcept { return faults_.empty(); }
  /// @param name  of the file
  /// @throws InputError where there is a fault
  void raise(const std::string& name);

 private:
  std::vector<Fault> faults_;
  std::size_t more_ = 0;
};

}  // namespace cutback
