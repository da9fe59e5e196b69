#include "run/cards_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/groups.hpp"
#include "cutback/sheet/sheet.hpp"
#include "run/natural_order.hpp"
#include "run/require_sheath.hpp"

namespace cutback::run {

using schedule::Decision;
using schedule::Layout;
using schedule::Side;

struct CardsRun::OpenSchedule {
  OpenSchedule(std::string path, std::unique_ptr<io::RowSource> source,
               std::unique_ptr<io::ScheduleFile> schedule, const schedule::Settings& settings)
      : name(std::move(path)),
        rows(std::move(source)),
        file(std::move(schedule)),
        decider(file->layout(), settings) {}

  /// `cables.csv, line 7: `
  [[nodiscard]] std::string place_of(std::size_t line) const {
    return name + ", " + file->row_name(line) + ": ";
  }

  std::string name;
  std::unique_ptr<io::RowSource> rows;
  std::unique_ptr<io::ScheduleFile> file;
  schedule::Decider decider;
};

namespace {

using Cells = std::vector<std::string>;

std::vector<std::string_view> views_of(const Cells& cells) { return {cells.begin(), cells.end()}; }

/// `from: Switchroom`, the name of the end with that of its place.
std::string end_words(const Layout& layout, schedule::Cells cells, Side side) {
  std::string words(schedule::end_name(layout, cells, side));
  const std::size_t place = side == Side::from ? layout.from
                            : side == Side::to ? layout.to
                                               : Layout::k_none;
  if (place == Layout::k_none) return words;
  const std::string_view name = schedule::cell(cells, place);
  return name.empty() ? words : words + ": " + std::string(name);
}

}  // namespace

CardsRun::CardsRun(CardsSettings settings) : settings_(std::move(settings)) {
  for (const std::string& tag : settings_.only) missing_.emplace(tag, Nearest(tag));
}
CardsRun::~CardsRun() = default;

bool CardsRun::wanted(const std::string& tag) {
  if (settings_.only.empty()) return true;
  if (settings_.only.count(tag) > 0) {
    missing_.erase(tag);
    return true;
  }
  // Every tag of a long schedule comes here: with a long list of tags nothing is guessed.
  constexpr std::size_t k_guessed = 16;
  if (settings_.only.size() > k_guessed) return false;
  for (auto& [wanted, nearest] : missing_) nearest.offer(tag);
  return false;
}

std::vector<MissingTag> CardsRun::not_found() const {
  std::vector<MissingTag> tags;
  for (const auto& [tag, nearest] : missing_) tags.push_back({tag, nearest.best()});
  return tags;
}

void CardsRun::put(const std::string& tag, const std::string& end,
                   const std::function<std::string()>& part, std::function<void()> print) {
  switch (settings_.order) {
    case CardOrder::given:
      print();
      return;
    case CardOrder::tag:
      waiting_.push_back({tag, std::move(print)});
      return;
    case CardOrder::end:
      waiting_.push_back({end, std::move(print)});
      return;
    case CardOrder::gland:
      waiting_.push_back({part(), std::move(print)});
      return;
  }
}

void CardsRun::finish() {
  std::stable_sort(waiting_.begin(), waiting_.end(),
                   [](const End& a, const End& b) { return natural_less(a.key, b.key); });
  for (std::size_t i = 0; i < waiting_.size(); ++i) {
    settings_.progress(static_cast<double>(i) / static_cast<double>(waiting_.size()));
    waiting_[i].print();
  }
  waiting_.clear();
}

std::string CardsRun::other_cuts() const {
  if (other_cuts_ == 0) return {};
  return (other_cuts_ == 1 ? std::string("1 end is") : std::to_string(other_cuts_) + " ends are") +
         " cut elsewhere in the results than on the card, which goes by the schedule and the gland "
         "list as they are now; the first is " +
         first_other_cut_;
}

void CardsRun::hand_on(const print::Card& card) {
  constexpr std::size_t k_most = 10;
  const std::size_t hash = std::hash<std::string>{}(card.tag + '\n' + card.end);
  if (!card.tag.empty() && seen_.put(hash, 1) && ++twice_count_ <= k_most) {
    settings_.warn("the end " + card.tag + (card.end.empty() ? "" : ", " + card.end) +
                   " has more than one card; look which of them holds");
  }
  settings_.print(card);
}

void CardsRun::print_none(const std::string& tag, const std::string& end, std::string why) {
  print::Card card;
  card.tag = tag;
  card.end = end;
  card.why_none = std::move(why);
  hand_on(card);
}

void CardsRun::print_sheet(const job::JobInput& input, const fit::Question& question,
                           sheet::Choice choice, const std::string& tag, const std::string& end,
                           const Cuts& stated) {
  const sheet::Sheet sheet = sheet::make_sheet(question, std::move(choice), settings_.list->name);
  compare_cuts(sheet, stated, tag + (end.empty() ? "" : ", " + end));
  if (sheet.is_proven()) ++fitting_;
  print::Card card;
  card.tag = tag;
  card.end = end;
  card.sheet = &sheet;
  card.qr_text = io::write_job(sheet::with_gland(input, sheet), -1);
  card.list_name = settings_.list->name;
  hand_on(card);
}

/// Figures may be out by now: the schedule or the gland list has changed, or another part was put
/// into the results.
void CardsRun::compare_cuts(const sheet::Sheet& sheet, const Cuts& stated,
                            const std::string& name) {
  constexpr double k_half_step_mm = 0.05;  // results have one decimal
  if (!sheet.plan) return;
  const strip::Marks& marks = sheet.plan->marks;
  const Cuts cuts{marks.armour_cut_mm, marks.sheath_cut_mm, marks.bedding_cut_mm};
  constexpr std::array<const char*, 3> k_layers{"armour", "sheath", "bedding"};
  std::string other;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    if (!cuts[i] || !stated[i] || at_most(std::abs(*cuts[i] - *stated[i]), k_half_step_mm))
      continue;
    other += (other.empty() ? "" : "; ") + std::string(k_layers[i]) + " " + plain(*stated[i], 1) +
             " mm, now " + plain(*cuts[i], 1) + " mm";
  }
  if (!other.empty() && ++other_cuts_ == 1) first_other_cut_ = name + ": " + other;
}

void CardsRun::add_job(const std::string& path, const job::JobInput& input) {
  const std::string tag = input.tag.value_or("");
  if (!wanted(tag)) return;
  // Errors in any file come before the first page.
  const job::Job job = job::resolve(input, *settings_.standards, job::Unstated::by_notation);
  require_sheath(job, path + ": cable.sheath_od_mm");
  const auto part = [&] {
    if (input.gland) return *input.gland;
    const fit::Question question = fit::ask(job, *settings_.standards);
    return fit::fit_all(question, settings_.list->glands, settings_.glands->prefer())
        .front()
        .gland->part;
  };
  put(tag, input.end.value_or(""), part, [this, input, job, path] { print_job(input, job, path); });
}

void CardsRun::print_job(const job::JobInput& input, const job::Job& job, const std::string& path) {
  const fit::Question question = fit::ask(job, *settings_.standards);
  const auto ranked = fit::fit_all(question, settings_.list->glands, settings_.glands->prefer());
  try {
    print_sheet(input, question, sheet::choose(job, ranked, input.gland.value_or("")), job.tag,
                job.end);
  } catch (const InputError& error) {
    std::vector<Fault> faults = error.faults();
    for (Fault& fault : faults) fault.where = path + ": " + fault.where;
    throw InputError(std::move(faults));
  }
}

void CardsRun::add_schedule(const std::string& path, std::unique_ptr<io::RowSource> rows,
                            std::unique_ptr<io::ScheduleFile> file, ChosenParts* chosen) {
  OpenSchedule& open = *schedules_.emplace_back(std::make_unique<OpenSchedule>(
      path, std::move(rows), std::move(file),
      schedule::Settings{.standards = settings_.standards, .glands = settings_.glands}));
  const Layout& layout = open.file->layout();
  io::RowBlock block;
  double begun = 0.0;  // part of the file before this block
  while (open.file->read(block)) {
    open.file->finish(block);
    const auto taken = open.rows->taken();
    for (std::size_t i = 0; i < block.rows; ++i) {
      if (taken && settings_.order == CardOrder::given) {
        const double done = static_cast<double>(i) / static_cast<double>(block.rows);
        settings_.progress(begun + (*taken - begun) * done);
      }
      const io::CsvRecord& record = block.records[i];
      const std::string tag(schedule::cell(record.fields, layout.tag));
      const bool is_wanted = wanted(tag);
      for (const Side side : layout.ends()) {
        const std::string_view name = schedule::end_name(layout, record.fields, side);
        const ChosenEnd given = chosen != nullptr ? chosen->next(tag, name) : ChosenEnd{};
        if (!is_wanted) continue;
        const Cells cells(record.fields.begin(), record.fields.end());
        const auto part = [&] {
          if (given.gland != nullptr) return given.gland->part;
          const auto views = views_of(cells);
          const Decision& decision = open.decider.decide({views}, side).decision;
          return decision.gland != nullptr ? decision.gland->part : std::string();
        };
        put(tag, end_words(layout, record.fields, side), part,
            [this, &open, cells, side, given, line = record.line] {
              print_row(open, cells, side, given, line);
            });
      }
    }
    begun = taken.value_or(0.0);
  }
  if (chosen != nullptr) chosen->finish();
}

void CardsRun::print_row(OpenSchedule& open, const Cells& cells, Side side, const ChosenEnd& chosen,
                         std::size_t line) {
  const Layout& layout = open.file->layout();
  const auto views = views_of(cells);
  const std::string tag(schedule::cell(views, layout.tag));
  const std::string end = end_words(layout, views, side);
  if (const auto fault = schedule::fault_of_row(layout, views)) {
    print_none(tag, end, open.place_of(line) + to_line(*fault));
    return;
  }
  const Decision& decision = open.decider.decide({views}, side).decision;
  if (!decision.usable()) {
    print_none(tag, end, open.place_of(line) + schedule::unusable_text(decision));
    return;
  }
  std::vector<Fault> faults;
  job::JobInput input = schedule::input_of(layout, views, side, faults);
  input.tag = tag;
  if (!end.empty()) input.end = end;
  const job::Job job = job::resolve(input, *settings_.standards, job::Unstated::by_notation);
  const fit::Question question = fit::ask(job, *settings_.standards);
  sheet::Choice choice;
  const gland::Gland* const gland = chosen.gland != nullptr     ? chosen.gland
                                    : decision.gland != nullptr ? decision.gland
                                                                : decision.nearest;
  choice.fit = fit::check_gland(question, *gland);
  choice.because = chosen.gland != nullptr ? "as the results of the schedule say" : decision.reason;
  if (choice.fit.verdict != Verdict::fits) {
    if (decision.proven) choice.fits_instead = decision.gland->part;
    choice.advice = fit::advise(job, choice.fit);
    choice.advice.nearest = nullptr;
  }
  try {
    print_sheet(input, question, std::move(choice), tag, end, chosen.cuts_mm);
  } catch (const InputError& error) {
    print_none(tag, end, open.place_of(line) + to_line(error.faults().front()));
  }
}

}  // namespace cutback::run
