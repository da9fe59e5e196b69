#pragma once
// The ends of jobs and schedules, one card each.

#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "cutback/fit/select.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/nearest.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/defaults.hpp"
#include "cutback/tables/standards.hpp"
#include "run/card_end.hpp"
#include "run/chosen_parts.hpp"
#include "run/open_schedule.hpp"
#include "run/tag_register.hpp"

namespace cutback::run {

/// In which order cards are printed.
enum class CardOrder {
  given,  ///< as the files have them
  tag,
  end,
  gland
};

/// What every card is made with. Borrowed.
struct CardsSettings {
  const tables::Standards* standards = nullptr;
  const gland::GlandList* list = nullptr;
  const fit::Selector* glands = nullptr;
  std::set<std::string> only;  ///< tags; empty: all
  CardOrder order = CardOrder::given;
  std::function<void(const print::Card&)> print;
  std::function<void(const std::string&)> warn;
  std::function<void(double part)> progress;  ///< of the file at hand that is done, 0 to 1

  /// @param place  the schedule of the end speaks of places
  [[nodiscard]] schedule::Settings deciding(bool place) const {
    return {.standards = standards,
            .glands = glands,
            .asking = {.purpose = fit::Purpose::sheet, .place = place}};
  }
};

/// A tag that was asked for and that no end has.
struct MissingTag {
  std::string tag;
  std::string nearest;  ///< that an end has; empty where none is near
};

/// Decides every end once, makes its sheet and hands its card on. Where an order is asked for, all
/// ends wait in memory: by gland as they are decided, by tag and end as their cells. Otherwise
/// nothing waits.
class CardsRun {
 public:
  explicit CardsRun(CardsSettings settings);
  ~CardsRun();

  /// @throws InputError, FileError: a job is a whole file, and one that is wrong is not printed
  /// @param path  of it, for messages
  void add_job(const std::string& path, const job::JobInput& input);
  /// @param schedule  kept until finish()
  /// @param chosen    may be null
  /// @param place  it speaks of places (speaks_of_place)
  void add_schedule(Schedule schedule, bool place, ChosenParts* chosen);
  /// Prints what waits.
  void finish();

  /// Ends whose gland fits, with an armour that is enough where that is asked.
  [[nodiscard]] std::size_t fitting() const { return fitting_; }
  /// What each default filled in the rows that have cards.
  [[nodiscard]] schedule::DefaultCounts defaults() const;
  /// Of `only`, what no end has, in order.
  [[nodiscard]] std::vector<MissingTag> not_found() const;
  /// How many ends the results cut elsewhere than the card, and the first of them; empty where
  /// none.
  [[nodiscard]] std::string other_cuts() const;

 private:
  struct Waiting {
    std::string key;
    std::function<CardEnd()> decide;
  };
  void put(const std::string& tag, const std::string& end, std::function<CardEnd()> decide);
  bool wanted(const std::string& tag);
  void add_table(const ScheduleTable& table, bool asks_place, ChosenParts* chosen);
  void add_row(const ScheduleTable& table, const io::CsvRecord& record, bool asks_place,
               ChosenParts* chosen);
  void print(CardEnd end);
  void print_sheet(CardEnd& end);
  void print_none(const CardEnd& end);
  void hand_on(const print::Card& card);
  void compare_cuts(const sheet::Sheet& sheet, const Cuts& stated, const std::string& name);

  CardsSettings settings_;
  std::deque<Schedule> schedules_;  ///< what the ends that wait borrow
  std::vector<Waiting> waiting_;
  /// Of `only`, what no end has so far, with the nearest that one has.
  std::map<std::string, Nearest> missing_;
  TagRegister seen_;
  std::size_t twice_count_ = 0;
  std::size_t other_cuts_ = 0;  ///< ends whose cuts are not as stated
  std::string first_other_cut_;
  std::size_t fitting_ = 0;
  /// Of the rows that defaults were taken for, those: a cell may serve two ends.
  std::map<std::pair<const ScheduleTable*, std::size_t>, std::uint64_t> defaults_;
};

}  // namespace cutback::run
