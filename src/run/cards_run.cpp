#include "run/cards_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/in_parallel.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/number.hpp"
#include "cutback/sheet/sheet.hpp"
#include "run/card_types.hpp"
#include "run/natural_order.hpp"

namespace cutback::run {

namespace {

/// Ends that are in memory at a time, and can be shared out among threads.
constexpr std::size_t k_at_once = 128;

std::string name_of(const std::string& tag, const std::string& end) { return tag + '\n' + end; }

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

/// Two cards of one end are a danger that both must name.
void CardsRun::find_twice() {
  constexpr std::size_t k_most = 10;
  std::size_t told = 0;
  for (const Waiting& end : waiting_) {
    if (end.tag.empty()) continue;
    // The ends of one row follow each other.
    RowsOf& rows = rows_of_[end.tag];
    if (rows.rows == 0 || rows.table != end.table || rows.line != end.line) ++rows.rows;
    rows.table = end.table;
    rows.line = end.line;
    if (end.one_end) rows.most = 2;
    if (++seen_[name_of(end.tag, end.end)] != 2 || ++told > k_most) continue;
    settings_.warn("the end " + end.tag + (end.end.empty() ? "" : ", " + end.end) +
                   " has more than one card; look which of them is right");
  }
}

void CardsRun::sort() {
  if (settings_.order == CardOrder::given) return;
  if (settings_.order == CardOrder::gland) {
    std::vector<CardEnd> ends = decide(waiting_);
    for (std::size_t i = 0; i < ends.size(); ++i) {
      const auto decided = std::make_shared<CardEnd>(std::move(ends[i]));
      waiting_[i].key = decided->part;
      waiting_[i].decide = [decided] { return std::move(*decided); };
    }
  } else {
    for (Waiting& end : waiting_) {
      const bool by_tag = settings_.order == CardOrder::tag;
      end.key = by_tag ? end.tag : end.place.empty() ? end.end : end.place;
    }
  }
  std::stable_sort(waiting_.begin(), waiting_.end(),
                   [](const Waiting& a, const Waiting& b) { return natural_less(a.key, b.key); });
}

void CardsRun::finish() {
  find_twice();
  sort();
  if (settings_.by == CardBy::type) {
    print_types();
  } else if (settings_.order == CardOrder::end) {
    print_places();
  } else {
    print_ends();
  }
  waiting_.clear();
}

schedule::DefaultCounts CardsRun::defaults() const {
  schedule::DefaultCounts counts;
  for (const auto& [row, used] : defaults_) counts.add(used);
  return counts;
}

std::vector<CardEnd> CardsRun::decide(std::span<Waiting> some) const {
  std::vector<CardEnd> ends(some.size());
  in_parallel(some.size(), settings_.threads, [&](std::size_t i, std::size_t) {
    ends[i] = std::exchange(some[i].decide, nullptr)();
  });
  return ends;
}

std::vector<std::shared_ptr<CardsRun::Made>> CardsRun::make(std::span<Waiting> some) const {
  std::vector<std::shared_ptr<Made>> made(some.size());
  in_parallel(some.size(), settings_.threads, [&](std::size_t i, std::size_t) {
    made[i] = std::make_shared<Made>();
    made[i]->end = std::exchange(some[i].decide, nullptr)();
    make_sheet(*made[i], some[i]);
  });
  return made;
}

void CardsRun::print_ends() {
  cards_ = waiting_.size();
  for (std::size_t i = 0; i < waiting_.size(); i += k_at_once) {
    settings_.progress(static_cast<double>(i) / static_cast<double>(waiting_.size()));
    const auto some = std::span(waiting_).subspan(i, std::min(k_at_once, waiting_.size() - i));
    auto made = make(some);
    for (std::size_t k = 0; k < made.size(); ++k) {
      count_defaults(made[k]->end, some[k]);
      hand_on(std::move(made[k]));
    }
  }
}

/// Before the cards of a place a page with what is to be taken there.
void CardsRun::print_places() {
  cards_ = waiting_.size();
  for (std::size_t first = 0; first < waiting_.size();) {
    settings_.progress(static_cast<double>(first) / static_cast<double>(waiting_.size()));
    std::size_t last = first;
    while (last < waiting_.size() && waiting_[last].key == waiting_[first].key) ++last;
    const auto some = std::span(waiting_).subspan(first, last - first);
    auto made = make(some);
    Takeoff takeoff;
    for (std::size_t k = 0; k < made.size(); ++k) {
      count_defaults(made[k]->end, some[k]);
      takeoff.add(made[k]->end, made[k]->sheet ? &*made[k]->sheet->fit : nullptr);
    }
    print::PlacePage page = takeoff.page(waiting_[first].key);
    page.schedule = waiting_[first].source;
    settings_.print_place(page);
    for (auto& one : made) hand_on(std::move(one));
    first = last;
  }
}

void CardsRun::print_types() {
  CardTypes types(settings_.list->name);
  for (std::size_t i = 0; i < waiting_.size(); i += k_at_once) {
    settings_.progress(static_cast<double>(i) / static_cast<double>(waiting_.size()));
    const auto some = std::span(waiting_).subspan(i, std::min(k_at_once, waiting_.size() - i));
    std::vector<CardEnd> ends = decide(some);
    for (std::size_t k = 0; k < ends.size(); ++k) {
      count_defaults(ends[k], some[k]);
      if (!ends[k].made.empty()) {
        ++made_;  // a card of a type is for ends that are still to be made
      } else if (types.add(std::move(ends[k]), some[k].source, i + k, twice_words(some[k]))) {
        ++proven_;
      }
    }
  }
  cards_ = types.size();
  types.print(
      [&](print::Card card) {
        if (card.sheet != nullptr) {
          card.decided = settings_.decided;
          if (card.sheet->state == sheet::State::cut) fitting_ += card.serves.size();
        }
        print(std::move(card));
      },
      [&](CardEnd end, std::size_t which) {
        auto made = std::make_shared<Made>();
        made->end = std::move(end);
        make_sheet(*made, waiting_[which]);
        if (made->sheet && made->sheet->state == sheet::State::cut) ++fitting_;
        print::Card card = std::move(made->card);
        card.keeps = std::move(made);
        print(std::move(card));
      });
}

/// Once for a row: a cell may serve two ends.
void CardsRun::count_defaults(const CardEnd& end, const Waiting& from) {
  if (end.defaults != 0) defaults_[{from.table, from.line}] |= end.defaults;
}

std::string CardsRun::other_cuts() const {
  if (other_cuts_ == 0) return {};
  return (other_cuts_ == 1 ? std::string("1 end is") : std::to_string(other_cuts_) + " ends are") +
         " cut elsewhere in the results than on the card, which goes by the schedule and the gland "
         "list as they are now; the first is " +
         first_other_cut_;
}

void CardsRun::hand_on(std::shared_ptr<Made> made) {
  if (!made->end.made.empty()) {
    if (made->end.made_verdict == Verdict::fits) ++proven_;
    if (made->end.made_measured) ++fitting_;
  }
  if (made->sheet) {
    if (made->sheet->state == sheet::State::cut) ++fitting_;
    if (made->sheet->fit->verdict == Verdict::fits) ++proven_;
  }
  if (!made->other_cuts.empty() && ++other_cuts_ == 1) {
    const CardEnd& end = made->end;
    first_other_cut_ = end.tag + (end.end.empty() ? "" : ", " + end.end) + ": " + made->other_cuts;
  }
  print::Card card = std::move(made->card);
  card.keeps = std::move(made);
  print(std::move(card));
}

void CardsRun::print(print::Card card) {
  card.number = ++printed_;
  card.of = cards_;
  settings_.print(std::move(card));
}

/// What whoever holds the card of an end must find out, where there is more than one of it.
std::string CardsRun::twice_words(const Waiting& from) const {
  if (const auto seen = seen_.find(name_of(from.tag, from.end));
      seen != seen_.end() && seen->second > 1) {
    return "This end has " + std::to_string(seen->second) +
           " cards: find out which of them is right";
  }
  if (const auto rows = rows_of_.find(from.tag);
      rows != rows_of_.end() && rows->second.rows > rows->second.most) {
    return "The tag stands on " + std::to_string(rows->second.rows) +
           " rows: find out which cable this one is";
  }
  return {};
}

/// The card of an end that is decided; the sheet where it can be used.
void CardsRun::make_sheet(Made& made, const Waiting& from) const {
  CardEnd& end = made.end;
  print::Card& card = made.card;
  card.tag = end.tag;
  card.end = end.end;
  card.schedule = from.source;
  if (from.table != nullptr) card.decided = settings_.decided;
  if (const std::string twice = twice_words(from); !twice.empty()) {
    card.notes.push_back(twice + " before you cut.");
  }
  if (!end.made.empty()) {
    card.made = end.made;
    card.why = end.made_says;
    card.not_yet = end.made_verdict != Verdict::fits;
    return;
  }
  if (end.why_none.empty()) {
    try {
      made.sheet = sheet::make_sheet(end.question, std::move(end.choice), settings_.list->name);
    } catch (const InputError& error) {
      if (end.is_file) throw at_place(error, end.place);
      end.why_none = end.place + to_line(error.faults().front());
    }
  }
  if (!made.sheet) {
    card.why = on_paper(end);
    return;
  }
  made.other_cuts = compare_cuts(*made.sheet, end.stated_mm);
  if (!made.other_cuts.empty()) {
    card.notes.push_back("The results say otherwise: " + made.other_cuts +
                         ". Ask which is right before you cut.");
  }
  card.sheet = &*made.sheet;
  card.why = std::move(end.why);
  card.remedy = std::move(end.remedy);
  card.qr_text = io::write_job(sheet::with_gland(std::move(end.input), *made.sheet), -1);
}

/// Figures may be out by now: the schedule or the gland list has changed, or another part was put
/// into the results.
std::string CardsRun::compare_cuts(const sheet::Sheet& sheet, const Cuts& stated) const {
  constexpr double k_half_step_mm = 0.05;  // results have one decimal
  if (!sheet.plan) return {};
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
  return other;
}

void CardsRun::add_job(const std::string& path, const job::JobInput& input,
                       const std::string& source, const schedule::MadeEnd* made) {
  const std::string tag = input.tag.value_or("");
  if (!wanted(tag)) return;
  // Errors in any file come before the first page.
  const auto decided =
      std::make_shared<CardEnd>(decide_job(path, input, settings_.deciding(false), made));
  waiting_.push_back(
      {tag, input.end.value_or(""), {}, source, [decided] { return std::move(*decided); }});
}

void CardsRun::add_schedule(Schedule schedule, const ScheduleAsking& asking, ChosenParts* chosen,
                            const std::string& source) {
  const Schedule& kept = schedules_.emplace_back(std::move(schedule));
  above_ = {};
  for (const ScheduleTable& table : kept.tables) add_table(table, asking, chosen, source);
  if (chosen != nullptr) chosen->finish();
}

void CardsRun::add_table(const ScheduleTable& table, const ScheduleAsking& asking,
                         ChosenParts* chosen, const std::string& source) {
  io::RowBlock block;
  schedule::SkippedRows skipped;
  above_.titles.begin(*table.file);
  while (table.file->read(block)) {
    table.file->finish(block);
    above_.titles.begin(block);
    for (const schedule::SkippedRow& row : block.skipped) skipped.add(row);
    for (std::size_t i = 0; i < block.rows; ++i) {
      add_row(table, block.records[i], asking, chosen, source);
    }
    above_.titles.end();
  }
  const std::string text = skipped.text(table.rows->row_word());
  if (!text.empty()) settings_.warn(table.name + ": skipped " + text);
  const std::string answered = skipped.answered_text(table.rows->row_word());
  if (!answered.empty()) {
    settings_.warn(table.name + ": answered, and to be looked at: " + answered);
  }
}

void CardsRun::add_row(const ScheduleTable& table, const io::CsvRecord& record,
                       const ScheduleAsking& asking, ChosenParts* chosen,
                       const std::string& source) {
  const schedule::Layout& layout = table.file->layout();
  const std::string tag(schedule::tag_of(layout, record.fields));
  const bool is_wanted = wanted(tag);
  const std::size_t hash = name_hash(layout, record.fields, above_.room);
  const bool again =
      row_above(above_.tags, layout, record.fields, hash, table.file->row_id(record.line))
          .has_value();
  const OutsideRow outside{.above = again ? "a row above" : "",
                           .title = above_.titles.over(record.line)};
  const auto row =
      std::make_shared<const std::vector<std::string>>(record.fields.begin(), record.fields.end());
  for (const schedule::Side side : layout.ends()) {
    const std::string_view name = schedule::end_name(layout, record.fields, side);
    const ChosenEnd given = chosen != nullptr ? chosen->next(tag, name) : ChosenEnd{};
    if (!is_wanted) continue;
    waiting_.push_back(
        {tag, end_words(layout, record.fields, side), place_of(layout, record.fields, side), source,
         [this, &table, asking, row, side, given, outside, line = record.line] {
           const std::vector<std::string_view> views(row->begin(), row->end());
           const std::string place = table.name + ", " + std::string(table.rows->row_word()) + " " +
                                     std::to_string(line) + ": ";
           return decide_row(table.file->layout(), views, side, given, place, outside,
                             settings_.deciding(asking.place, asking.made));
         },
         &table, static_cast<std::size_t>(record.line), layout.ends().size() == 1});
  }
}

}  // namespace cutback::run
