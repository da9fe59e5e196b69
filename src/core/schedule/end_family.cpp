#include "core/schedule/end_family.hpp"

#include <algorithm>
#include <utility>

#include "cutback/entry/thread.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"

namespace cutback::schedule::detail {
namespace {

// What is remembered at most, for each thread.
constexpr std::size_t k_families = 16384;
constexpr std::size_t k_demands = 4096;

/// Whether a cell may fill more fields than its own: 4C x 16mm2 in a column of cores or sizes, SWA
/// in one of armour, Zone 1 IIB in one of zones.
bool may_say_more(const job::Field& field, std::string_view cell) {
  if (field.key == "cores" || field.key == "csa_mm2") return !parse_number(cell);
  if (field.key == "entry") {
    return cell.find(' ') != std::string_view::npos && !entry::parse_thread(cell);
  }
  if (field.kind != job::FieldKind::words) return false;
  const auto words = job::words_of(field);
  return std::find(words.begin(), words.end(), cell) == words.end();
}

char asked_key(const job::Asked& asked) {
  return static_cast<char>('0' + static_cast<int>(asked.joint) + 2 * static_cast<int>(asked.place) +
                           4 * static_cast<int>(asked.earth) + 8 * static_cast<int>(asked.fault));
}

}  // namespace

Families::Families(const Layout& layout, const Settings& settings, const KeyCells& sources,
                   std::set<std::string>& taken)
    : layout_(layout), settings_(settings), sources_(sources), taken_(taken) {
  const std::vector<fit::CheckName> names = fit::check_names();
  for (const fit::CheckName check : names) {
    of_check_.push_back(
        add_text([&](const job::Field& field) { return field.feeds.checks.has(check); }));
  }
  of_figures_ = add_text(
      [](const job::Field& field) { return field.feeds.into == job::Feeds::Into::figures; });
  of_demand_ = add_text([&](const job::Field& field) {
    return std::any_of(names.begin(), names.end(), [&](fit::CheckName check) {
      return fit::topic_of(check) == fit::Topic::place && field.feeds.checks.has(check);
    });
  });
}

/// @return its number; texts of the same cells are one
template <class Wanted>
std::size_t Families::add_text(Wanted wanted) {
  Text text;
  for (const Source& source : sources_.sources()) text.cells.push_back(wanted(*source.field));
  const auto known = std::find_if(texts_.begin(), texts_.end(),
                                  [&](const Text& other) { return other.cells == text.cells; });
  if (known != texts_.end()) return static_cast<std::size_t>(known - texts_.begin());
  texts_.push_back(std::move(text));
  return texts_.size() - 1;
}

void Families::read_texts(const End& end) {
  for (Text& text : texts_) text.text.clear();
  for (std::size_t i = 0; i < sources_.sources().size(); ++i) {
    const Source& source = sources_.sources()[i];
    const std::string_view cell = given(layout_, source, end.row.cells, end.type).text;
    if (cell.empty()) continue;
    const bool more = may_say_more(*source.field, cell);
    for (Text& text : texts_) {
      if (!text.cells[i] && !more) continue;
      ((text.text += source.field->key) += '=') += cell;
      text.text += '\0';
    }
  }
}

Family& Families::of(const End& end) {
  std::string_view key = sources_.key(layout_, end.row, key_);
  if (end.type.type != nullptr) {
    // The evidence depends on which diameters the row has.
    typed_key_.assign(key) += static_cast<char>('0' + end.type.own);
    key = typed_key_;
  }
  const auto known = families_.find(key);
  if (known != families_.end()) return *known->second;
  if (families_.size() >= k_families) families_.clear();
  auto& family = families_[std::string(key)];
  family = std::make_unique<Family>();
  make(end, *family);
  return *family;
}

/// What the place asks, which many families share.
/// @throws InputError
std::shared_ptr<const area::Demand> Families::demand_of(const job::Job& job) {
  if (demands_.size() >= k_demands) demands_.clear();
  const std::string& key = texts_[of_demand_].text;
  const auto known = demands_.find(key);
  if (known != demands_.end()) return known->second;
  return demands_.emplace(key, fit::ask(job, *settings_.standards, settings_.asking).demand)
      .first->second;
}

void Families::make(const End& end, Family& family) {
  job::JobInput input;
  RowNotes& notes = family.notes;
  if (!put_cells(layout_, sources_.sources(), end.row.cells, end.type, input, notes).empty()) {
    return;
  }
  taken_.insert(notes.taken.begin(), notes.taken.end());
  finish_input(layout_, end.type, notes, input);
  read_texts(end);
  // A construction that must not be estimated from is taken away: a fact that no cell of its own
  // says.
  for (Text& text : texts_) text.text += notes.no_estimate ? '1' : '0';
  family.figures = texts_[of_figures_].text;
  if (input.evidence) family.figures += to_string(*input.evidence);
  try {
    family.frame = job::make_frame(std::move(input), *settings_.standards,
                                   job::Unstated::by_notation, family.job);
    if (!family.frame.faults.empty()) return;
    family.question = {&family.job, settings_.standards, demand_of(family.job), settings_.asking};
  } catch (const InputError&) {
    return;
  }
  fit::AskKeys asks;
  for (const std::size_t text : of_check_) {
    asks.push_back(texts_[text].text);
    // One list of glands may serve askings of several kinds.
    asks.back() += static_cast<char>('0' + static_cast<int>(settings_.asking.purpose) * 2 +
                                     static_cast<int>(settings_.asking.place));
    asks.back() += asked_key(family.job.asked);
  }
  family.search.emplace(*settings_.glands, family.question, asks);
  family.usable = true;
}

}  // namespace cutback::schedule::detail
