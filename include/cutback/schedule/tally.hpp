#pragma once
// What a whole schedule comes to: the take-off, the exceptions, the totals.

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/defaults.hpp"

namespace cutback::schedule {

/// One end that needs a person.
struct Exception {
  std::size_t line = 0;  ///< of the schedule's file
  std::string tag;
  std::string end;
  std::string verdict;  ///< of verdict_word()
  std::string group;
  std::string nearest;  ///< part code; may be empty
  std::string reason;
  std::string change;
  std::string source;  ///< the file or sheet of the line, where it has a name of its own
};

/// How often a gland is wanted.
struct Count {
  std::uint64_t proven = 0;      ///< ends that it fits
  std::uint64_t not_proven = 0;  ///< ends that it is the best for, but marginal-inside
};

/// The smaller margin of the two seals, in bins: up to each of these [mm], and above the last.
inline constexpr std::array<double, 5> k_margin_limits_mm{0.25, 0.5, 1.0, 2.0, 4.0};
inline constexpr std::size_t k_margin_bins = k_margin_limits_mm.size() + 1;

/// How often what is wanted.
struct PartCounts {
  std::unordered_map<const gland::Gland*, Count> glands;
  std::unordered_map<std::shared_ptr<const Accessories>, Count> accessories;
};

/// Counts of a part of a schedule; parts add up to the whole in any order, and the exceptions stand
/// in the order in which they were added.
struct Tally {
  std::uint64_t rows = 0;
  std::uint64_t one_end_rows = 0;   ///< that are one end each
  std::uint64_t ends_not_told = 0;  ///< of these, where nothing tells (Layout::ends_not_told)
  std::uint64_t may_be_cables = 0;  ///< of these, that may be whole cables
  std::uint64_t ends = 0;
  std::uint64_t by_verdict[5] = {};  ///< indexed by Verdict; the ends below are in none of them
  std::uint64_t unusable = 0;
  std::uint64_t out_of_stock = 0;
  std::uint64_t exceptions = 0;
  std::uint64_t barrier = 0;   ///< ends made off with compound
  std::uint64_t remarked = 0;  ///< ends with a remark about their figures
  std::uint64_t wavering = 0;  ///< ends to be measured before their gland is ordered
  std::uint64_t made = 0;      ///< ends that are finished, for which nothing is to be ordered
  /// Ends by the weakest evidence among their diameters, indexed by measure::Evidence.
  std::uint64_t by_evidence[3] = {};
  DefaultCounts defaults;
  /// Ends that a gland fits, by k_margin_limits_mm.
  std::array<std::uint64_t, k_margin_bins> margins{};
  /// By what the take-off is grouped by; one without a name where it is not.
  std::map<std::string, PartCounts, std::less<>> parts;
  std::map<std::string, std::uint64_t> groups;  ///< exceptions by what they lack
  std::vector<Exception> list;                  ///< only where it is asked for

  /// @param quantity  of ends that are decided so
  /// @param by        what the take-off puts them under
  void add(const Decision& decision, std::uint64_t quantity = 1, std::string_view by = {});
  void add(Tally&& other);
};

/// One line of the take-off.
struct TakeoffLine {
  std::string part;
  std::string description;
  std::uint64_t ends = 0;        ///< that it fits
  std::uint64_t quantity = 0;    ///< with the spares
  std::uint64_t not_proven = 0;  ///< more, where measuring confirms it
  std::optional<std::uint64_t> stock;
  std::uint64_t to_order = 0;
  std::optional<double> unit_price;
  std::optional<std::int64_t> total;  ///< of what is to be ordered [units of Takeoff::decimals]
  std::uint64_t from_stock = 0;       ///< of the quantity
  /// To be ordered besides, once measuring has confirmed the ends that are not proven.
  std::uint64_t provisional = 0;
  std::optional<std::int64_t> provisional_total;
  std::optional<std::uint64_t> pack;          ///< it is sold in so many
  std::optional<std::uint64_t> min_order;     ///< no less is sold
  std::string supplier;                       ///< the list that it is of, where there are several
  std::optional<std::uint64_t> old_quantity;  ///< of an earlier revision, where there is one
  std::string group;                          ///< what it is for, where the take-off is grouped
};

/// What is to be bought, in words: a gland's part code; of what goes on beside it the thread and
/// the part code as well.
[[nodiscard]] std::string name_of(const TakeoffLine& line);

/// Its sums are those of its lines, to the last decimal.
struct Takeoff {
  std::vector<TakeoffLine> lines;
  int decimals = 2;                   ///< of all prices
  std::string currency;               ///< their label; may be empty
  std::optional<std::int64_t> total;  ///< of the lines with a price; absent without any
  std::optional<std::int64_t> provisional_total;
};

/// What a part that goes on beside the gland costs, and how it is sold.
struct AccessoryPrice {
  std::string name;    ///< `locknut`, `sealing washer` ...; `shroud`: one for each gland; a gland's
                       ///< part code: how the gland is sold, before its list
  std::string thread;  ///< as Accessory has it; empty: of any thread
  std::string part;    ///< what it is ordered as; may be empty
  std::optional<double> price;
  std::optional<std::uint64_t> stock;
  std::optional<std::uint64_t> pack;
  std::optional<std::uint64_t> min_order;
};

/// How a take-off is made.
struct TakeoffTerms {
  /// 0 to 100; spares are rounded up to whole parts, for each part by itself.
  double spare_percent = 0.0;
  std::string currency;
  std::vector<AccessoryPrice> accessories;
  /// Where there are several lists: the name of that of a gland.
  std::function<std::string(const gland::Gland&)> supplier;
};

/// Whether a take-off may have a part of this name beside the glands.
[[nodiscard]] bool is_accessory(std::string_view name);

/// The decimals that write every price exactly. @throws InputError where one needs more than six
[[nodiscard]] int decimals_of(std::span<const gland::Gland> glands, const TakeoffTerms& terms);

/// Group by group, glands by part code, then the parts that go on beside them by name and thread;
/// an accessory that one part code stands for, whatever the thread, is one line.
/// Each group is ordered by itself, with spares and packs of its own. Stock goes to the groups in
/// their order: to what is proven first, and what that leaves to what is provisional. What is to be
/// ordered is what stock leaves open, the least that is sold at least, in whole packs.
/// @throws InputError for a price with more than six decimals, and sums that leave 64 bits
[[nodiscard]] Takeoff takeoff(const Tally& tally, std::span<const gland::Gland> glands,
                              const TakeoffTerms& terms);

/// The exceptions grouped: the largest group first, within a group in the schedule's order.
[[nodiscard]] std::vector<const Exception*> grouped(const Tally& tally);

/// What an exception of an end that cannot be used is grouped by: what is wrong with its first
/// value.
[[nodiscard]] std::string group_of(const Decision& decision);

/// An end that is not proven, as the list of exceptions holds it.
[[nodiscard]] Exception exception_of(const EndName& name, const Decision& decision);

}  // namespace cutback::schedule
