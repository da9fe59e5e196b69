#pragma once
// Ends that differ in diameters and routes only, and what is worked out once for all of them.

#include <array>
#include <cstddef>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/schedule/decide_detail.hpp"
#include "core/schedule/row_keys.hpp"

namespace cutback::schedule::detail {

/// One end of one row.
struct End {
  const Row& row;
  Side side = Side::both;
  RowType type = {};
};

/// Not movable: search borrows question, and that the job. The diameters and routes of the job are
/// those of the end at hand.
struct Family {
  std::string figures;  ///< its evidence, caliper and allowances: what one figure is read with
  job::Frame frame;
  job::Job job;
  fit::Question question;
  std::optional<fit::Search> search;
  RowNotes notes;
  bool usable = false;
  /// By layer: the job's estimate is that of a single figure that is not measured, so that the next
  /// such figure changes its value alone.
  std::array<bool, 3> single{};
  bool routed = false;  ///< the job's tails are those of an end, not of the frame
};

/// The families of the ends of one side, in a memory that does not grow with the schedule.
class Families {
 public:
  /// @param layout, settings, sources  borrowed
  /// @param taken  gets what words of cells were taken for; borrowed
  Families(const Layout& layout, const Settings& settings, const KeyCells& sources,
           std::set<std::string>& taken);

  /// @return valid until the next call
  [[nodiscard]] Family& of(const End& end);

 private:
  /// Of the cells of a family those that something depends on, as one text.
  struct Text {
    std::vector<bool> cells;  ///< by source
    std::string text;
  };
  template <class Wanted>
  std::size_t add_text(Wanted wanted);
  void read_texts(const End& end);
  void make(const End& end, Family& family);
  std::shared_ptr<const area::Demand> demand_of(const job::Job& job);

  struct KeyHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view key) const {
      return std::hash<std::string_view>{}(key);
    }
  };

  const Layout& layout_;
  const Settings& settings_;
  const KeyCells& sources_;
  std::set<std::string>& taken_;
  std::vector<Text> texts_;
  std::vector<std::size_t> of_check_;  ///< its text, in the order of the table of checks
  std::size_t of_figures_ = 0;
  std::size_t of_demand_ = 0;
  /// Each behind a pointer: who looks one up walks over keys alone.
  std::unordered_map<std::string, std::unique_ptr<Family>, KeyHash, std::equal_to<>> families_;
  std::unordered_map<std::string, std::shared_ptr<const area::Demand>> demands_;
  std::string key_;
  std::string typed_key_;
};

}  // namespace cutback::schedule::detail
