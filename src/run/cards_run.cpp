#include "run/cards_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/number.hpp"
#include "cutback/sheet/sheet.hpp"
#include "run/natural_order.hpp"

namespace cutback::run {

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
                   std::function<CardEnd()> decide) {
  switch (settings_.order) {
    case CardOrder::given:
      print(decide());
      return;
    case CardOrder::tag:
      waiting_.push_back({tag, std::move(decide)});
      return;
    case CardOrder::end:
      waiting_.push_back({end, std::move(decide)});
      return;
    case CardOrder::gland: {
      const auto decided = std::make_shared<CardEnd>(decide());
      waiting_.push_back({decided->part, [decided] { return std::move(*decided); }});
      return;
    }
  }
}

void CardsRun::finish() {
  std::stable_sort(waiting_.begin(), waiting_.end(),
                   [](const Waiting& a, const Waiting& b) { return natural_less(a.key, b.key); });
  for (std::size_t i = 0; i < waiting_.size(); ++i) {
    settings_.progress(static_cast<double>(i) / static_cast<double>(waiting_.size()));
    print(std::exchange(waiting_[i].decide, nullptr)());
  }
  waiting_.clear();
}

schedule::DefaultCounts CardsRun::defaults() const {
  schedule::DefaultCounts counts;
  for (const auto& [row, used] : defaults_) counts.add(used);
  return counts;
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

void CardsRun::print(CardEnd end) {
  if (!end.why_none.empty()) {
    print_none(end);
    return;
  }
  try {
    print_sheet(end);
  } catch (const InputError& error) {
    if (end.is_file) throw at_place(error, end.place);
    end.why_none = end.place + to_line(error.faults().front());
    print_none(end);
  }
}

void CardsRun::print_none(const CardEnd& end) {
  print::Card card;
  card.tag = end.tag;
  card.end = end.end;
  card.why_none = end.why_none;
  hand_on(card);
}

void CardsRun::print_sheet(CardEnd& end) {
  const sheet::Sheet sheet =
      sheet::make_sheet(end.question, std::move(end.choice), settings_.list->name);
  compare_cuts(sheet, end.stated_mm, end.tag + (end.end.empty() ? "" : ", " + end.end));
  if (sheet.state == sheet::State::cut) ++fitting_;
  print::Card card;
  card.tag = end.tag;
  card.end = end.end;
  card.sheet = &sheet;
  card.qr_text = io::write_job(sheet::with_gland(std::move(end.input), sheet), -1);
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
  const auto decided =
      std::make_shared<CardEnd>(decide_job(path, input, settings_.deciding(false)));
  put(tag, input.end.value_or(""), [decided] { return std::move(*decided); });
}

void CardsRun::add_schedule(Schedule schedule, bool place, ChosenParts* chosen) {
  const Schedule& kept = schedules_.emplace_back(std::move(schedule));
  for (const ScheduleTable& table : kept.tables) add_table(table, place, chosen);
  if (chosen != nullptr) chosen->finish();
}

void CardsRun::add_table(const ScheduleTable& table, bool asks_place, ChosenParts* chosen) {
  io::RowBlock block;
  schedule::SkippedRows skipped;
  double begun = 0.0;  // part of the file before this block
  while (table.file->read(block)) {
    table.file->finish(block);
    for (const schedule::SkippedRow& row : block.skipped) skipped.add(row);
    const auto taken = table.rows->taken();
    for (std::size_t i = 0; i < block.rows; ++i) {
      if (taken && settings_.order == CardOrder::given) {
        const double done = static_cast<double>(i) / static_cast<double>(block.rows);
        settings_.progress(begun + (*taken - begun) * done);
      }
      add_row(table, block.records[i], asks_place, chosen);
    }
    begun = taken.value_or(0.0);
  }
  const std::string text = skipped.text(table.rows->row_word());
  if (!text.empty()) settings_.warn(table.name + ": skipped " + text);
}

void CardsRun::add_row(const ScheduleTable& table, const io::CsvRecord& record, bool asks_place,
                       ChosenParts* chosen) {
  const schedule::Layout& layout = table.file->layout();
  const std::string tag(schedule::tag_of(layout, record.fields));
  const bool is_wanted = wanted(tag);
  for (const schedule::Side side : layout.ends()) {
    const std::string_view name = schedule::end_name(layout, record.fields, side);
    const ChosenEnd given = chosen != nullptr ? chosen->next(tag, name) : ChosenEnd{};
    if (!is_wanted) continue;
    put(tag, end_words(layout, record.fields, side),
        [this, &table, asks_place,
         cells = std::vector<std::string>(record.fields.begin(), record.fields.end()), side, given,
         line = record.line] {
          const std::vector<std::string_view> views(cells.begin(), cells.end());
          const std::string place = table.name + ", " + std::string(table.rows->row_word()) + " " +
                                    std::to_string(line) + ": ";
          CardEnd end = decide_row(table.file->layout(), views, side, given, place,
                                   settings_.deciding(asks_place));
          if (end.defaults != 0) defaults_[{&table, line}] |= end.defaults;
          return end;
        });
  }
}

}  // namespace cutback::run
