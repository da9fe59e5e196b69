#pragma once
// The ends of jobs and schedules, one card each.

#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <unordered_map>
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
#include "run/row_doubts.hpp"
#include "run/tag_register.hpp"

namespace cutback::run {

/// In which order cards are printed.
enum class CardOrder {
  given,  ///< as the files have them
  tag,
  end,  ///< by place: the ends of all cables that lie there, whichever end of their cable they are
  gland
};

/// What a card is for.
enum class CardBy {
  end,
  type  ///< one gland, hole, wall and cable type, with the list of its ends
};

/// What every card is made with. Borrowed.
struct CardsSettings {
  const tables::Standards* standards = nullptr;
  const gland::GlandList* list = nullptr;
  const fit::Selector* glands = nullptr;
  std::set<std::string> only;  ///< tags; empty: all
  CardOrder order = CardOrder::given;
  CardBy by = CardBy::end;
  /// What a profile decided for blanks of a schedule, as its cards say it.
  std::string decided;
  /// Takes cards in their order; each keeps what it borrows.
  std::function<void(print::Card)> print;
  std::function<void(const print::PlacePage&)> print_place;
  std::function<void(const std::string&)> warn;
  std::function<void(double part)> progress;  ///< of the ends that is done, 0 to 1
  std::size_t threads = 1;

  /// @param place  the schedule of the end speaks of places
  [[nodiscard]] schedule::Settings deciding(bool place,
                                            const schedule::MadeEnds* made = nullptr) const {
    return {.standards = standards,
            .glands = glands,
            .asking = {.purpose = fit::Purpose::sheet, .place = place},
            .made = made};
  }
};

/// What is asked of the ends of one schedule.
struct ScheduleAsking {
  bool place = false;                        ///< it speaks of places (ask_place)
  const schedule::MadeEnds* made = nullptr;  ///< what a register says; null where there is none
};

/// A tag that was asked for and that no end has.
struct MissingTag {
  std::string tag;
  std::string nearest;  ///< that an end has; empty where none is near
};

/// Takes the ends of all files, as their cells, then decides each once, makes its sheet and hands
/// its card on: a card says which of how many it is, and whether another end has its tag. The ends
/// are decided on several threads; what comes out does not depend on how many.
class CardsRun {
 public:
  explicit CardsRun(CardsSettings settings);
  ~CardsRun();

  /// @throws InputError, FileError: a job is a whole file, and one that is wrong is not printed
  /// @param path    of it, for messages
  /// @param source  its name and a hash of its content, for the cards
  /// @param made    what a register says of it; null where there is none
  void add_job(const std::string& path, const job::JobInput& input, const std::string& source,
               const schedule::MadeEnd* made);
  /// @param schedule  kept until finish()
  /// @param chosen    may be null
  void add_schedule(Schedule schedule, const ScheduleAsking& asking, ChosenParts* chosen,
                    const std::string& source);
  /// Prints all.
  void finish();

  /// Ends whose gland fits, measured or by datasheets.
  [[nodiscard]] std::size_t proven() const { return proven_; }
  /// Finished ends, which cards of types leave out.
  [[nodiscard]] std::size_t made() const { return made_; }
  /// Ends that may be cut.
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
    std::string tag;
    std::string end;
    std::string place;
    std::string source;
    std::function<CardEnd()> decide;  ///< to be called once, on any thread
    const ScheduleTable* table = nullptr;
    std::size_t line = 0;
    bool one_end = false;  ///< its row is of one end, and the cable's other one has a row too
    std::string key = {};  ///< of the order
  };
  /// An end with all that its card borrows; it stays where it is.
  struct Made {
    CardEnd end;
    std::optional<sheet::Sheet> sheet;
    print::Card card;
    std::string other_cuts;
  };
  bool wanted(const std::string& tag);
  void add_table(const ScheduleTable& table, const ScheduleAsking& asking, ChosenParts* chosen,
                 const std::string& source);
  void add_row(const ScheduleTable& table, const io::CsvRecord& record,
               const ScheduleAsking& asking, ChosenParts* chosen, const std::string& source);
  void find_twice();
  void sort();
  void print_ends();
  void print_places();
  void print_types();
  /// The ends of these that wait, decided on several threads.
  [[nodiscard]] std::vector<CardEnd> decide(std::span<Waiting> some) const;
  /// And made into cards.
  [[nodiscard]] std::vector<std::shared_ptr<Made>> make(std::span<Waiting> some) const;
  void make_sheet(Made& made, const Waiting& from) const;
  [[nodiscard]] std::string twice_words(const Waiting& from) const;
  void count_defaults(const CardEnd& end, const Waiting& from);
  void hand_on(std::shared_ptr<Made> made);
  /// With its number.
  void print(print::Card card);
  [[nodiscard]] std::string compare_cuts(const sheet::Sheet& sheet, const Cuts& stated) const;

  CardsSettings settings_;
  std::deque<Schedule> schedules_;  ///< what the ends that wait borrow
  std::vector<Waiting> waiting_;
  /// Of `only`, what no end has so far, with the nearest that one has.
  std::map<std::string, Nearest> missing_;
  std::unordered_map<std::string, std::size_t> seen_;  ///< how often a tag and end are there
  /// On how many rows of schedules a tag stands, and the last of them.
  struct RowsOf {
    std::size_t rows = 0;
    std::size_t most = 1;  ///< that one cable has
    const ScheduleTable* table = nullptr;
    std::size_t line = 0;
  };
  std::unordered_map<std::string, RowsOf> rows_of_;
  /// What stands above the row at hand in its schedule.
  struct Above {
    TagRegister tags;
    TitleOver titles;
    std::string room;  ///< of name_hash()
  };
  Above above_;
  std::size_t cards_ = 0;  ///< of which each says the number
  std::size_t printed_ = 0;
  std::size_t other_cuts_ = 0;  ///< ends whose cuts are not as stated
  std::string first_other_cut_;
  std::size_t made_ = 0;
  std::size_t fitting_ = 0;
  std::size_t proven_ = 0;
  /// Of the rows that defaults were taken for, those: a cell may serve two ends.
  std::map<std::pair<const ScheduleTable*, std::size_t>, std::uint64_t> defaults_;
};

}  // namespace cutback::run
