#include "cutback/schedule/decider.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/schedule/cell_text.hpp"
#include "core/schedule/cell_words.hpp"
#include "core/schedule/decide_detail.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "cutback/measure/reading.hpp"
#include "cutback/number.hpp"

namespace cutback::schedule {
namespace {

// What is remembered at most, for each thread.
constexpr std::size_t k_ends = 8192;
constexpr std::size_t k_figures = 16384;
constexpr std::size_t k_families = 8192;

std::size_t hash_of(std::string_view text) { return std::hash<std::string_view>{}(text); }

using Into = job::Feeds::Into;

job::Layer layer_of(const job::Field& field) {
  if (field.key == "sheath_od_mm") return job::Layer::sheath;
  return field.key == "bedding_mm" ? job::Layer::bedding : job::Layer::wire;
}

std::optional<measure::Estimate>& estimate_in(cable::Cable& cable, job::Layer layer) {
  if (layer == job::Layer::sheath) return cable.sheath_od;
  return layer == job::Layer::bedding ? cable.bedding : cable.wire;
}

struct DiameterSource {
  Source source;
  job::Layer layer;
};

/// Cells beside each other, from the first to the last.
struct Run {
  std::size_t first;
  std::size_t last;
};

/// Some cells of a row that are one key to what is remembered: rows with the same key have the same
/// cells there.
class KeyCells {
 public:
  KeyCells() = default;
  KeyCells(const Layout& layout, std::vector<Source> sources) : sources_(std::move(sources)) {
    std::vector<std::size_t> places;
    for (const Source& source : sources_) {
      for (const std::size_t column : {source.prefixed, source.plain}) {
        if (column != Layout::k_none) places.push_back(layout.columns[column].cell);
      }
    }
    std::sort(places.begin(), places.end());
    for (const std::size_t place : places) {
      if (runs_.empty() || place > runs_.back().last + 1) {
        runs_.push_back({place, place});
      } else {
        runs_.back().last = place;
      }
    }
  }

  [[nodiscard]] const std::vector<Source>& sources() const { return sources_; }

  /// @param store  holds the key where it does not stand in the row as it is
  [[nodiscard]] std::string_view key(const Layout& layout, const Row& row,
                                     std::string& store) const {
    if (row.bare && runs_.size() == 1) return text_of(runs_.front(), row.cells);
    store.clear();
    if (row.bare) {
      // No cell of a bare row has a line break, whatever stands between its cells.
      for (const Run& run : runs_) store.append(text_of(run, row.cells)) += '\n';
    } else {
      for (const Source& source : sources_) {
        const Given cell = given(layout, source, row.cells);
        store += cell.text;
        store += '\0';
        // What is wrong with a cell is said of its column, and a default is counted.
        store += cell.by_default != Layout::k_none                           ? '3'
                 : cell.column != nullptr && cell.column->side == Side::both ? '1'
                                                                             : '2';
      }
    }
    return store;
  }

 private:
  /// Of a bare row, as it stands there.
  static std::string_view text_of(const Run& run, Cells cells) {
    if (run.first >= cells.size()) return {};
    const char* const start = cells[run.first].data();
    const std::string_view last = cells[std::min(run.last, cells.size() - 1)];
    return {start, static_cast<std::size_t>(last.data() + last.size() - start)};
  }

  std::vector<Source> sources_;
  std::vector<Run> runs_;
};

/// Whether a cell may fill more fields than its own: 4C x 16mm2 in a column of cores or sizes, SWA
/// in one of armour, Zone 1 IIB in one of zones.
bool may_say_more(const job::Field& field, std::string_view cell) {
  if (field.key == "cores" || field.key == "csa_mm2") return !parse_number(cell);
  if (field.key == "entry") return cell.find(' ') != std::string_view::npos;
  if (field.kind != job::FieldKind::words) return false;
  const auto words = job::words_of(field);
  return std::find(words.begin(), words.end(), cell) == words.end();
}

/// Where the cells of one end stand that decide anything.
struct Sources {
  KeyCells all;
  KeyCells family;  ///< all but diameters and routes
  std::vector<DiameterSource> diameters;
  std::vector<Source> routes;
};

/// Ends that differ in diameters and routes only. Not movable: search borrows question, and that
/// the job.
struct Family {
  std::string figures;  ///< its evidence, caliper and allowances: what one figure is read with
  job::Frame frame;
  job::Job job;
  fit::Question question;
  std::optional<fit::Search> search;
  std::unordered_map<const gland::Gland*, detail::Fittings> fittings;
  RowNotes notes;
  bool usable = false;
  /// By layer: the job's estimate is that of a single figure that is not measured, so that the next
  /// such figure changes its value alone.
  std::array<bool, 3> single{};
  bool routed = false;  ///< the job's tails are those of an end, not of the frame
};

struct KeyHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view key) const { return hash_of(key); }
};

/// A figure as it was read once, by families with the same `figures`.
struct Figure {
  std::string figures;
  job::Layer layer = job::Layer::sheath;
  bool inches = false;
  bool typed = false;  ///< it is a type's, and written as the field table has it
  std::string text;
  std::optional<measure::Estimate> estimate;  ///< absent: it cannot be read
};

}  // namespace

class Decider::State {
 public:
  State(const Layout& layout, const Settings& settings)
      : layout_(layout), settings_(settings), ends_(k_ends) {
    for (const Side side : {Side::both, Side::from, Side::to}) {
      Sources& sources = sources_[static_cast<std::size_t>(side)];
      std::vector<Source> all;
      std::vector<Source> family;
      for (const Source& source : layout.sources(side)) {
        const Into into = source.field->feeds.into;
        if (into == Into::nothing) continue;
        all.push_back(source);
        if (into == Into::figure) {
          sources.diameters.push_back({source, layer_of(*source.field)});
        } else if (into == Into::route) {
          sources.routes.push_back(source);
        } else {
          family.push_back(source);
        }
      }
      sources.all = KeyCells(layout, std::move(all));
      sources.family = KeyCells(layout, std::move(family));
    }
  }

  Decided& decide(const Row& row, Side side, const Supply* supply) {
    row_ = row;
    side_ = side;
    type_ = row_type(layout_, row.cells);
    if (!remembers()) {
      ++misses_;
      decide_anew(supply, alone_);
      return alone_;
    }
    const std::string_view key = sources().all.key(layout_, row, key_);
    Remembered& slot = ends_[(hash_of(key) + static_cast<std::size_t>(side)) % k_ends];
    if (slot.side == side && slot.supply == supply && slot.key == key) {
      ++hits_;
      return slot.decided;
    }
    ++misses_;
    slot.side.reset();  // an error below must not leave the old answer under the new key
    slot.key = key;
    slot.supply = supply;
    decide_anew(supply, slot.decided);
    slot.side = side;
    return slot.decided;
  }

  [[nodiscard]] const std::set<std::string>& taken() const { return taken_; }

  std::vector<std::uint32_t> fitting(const Row& row, Side side, std::uint64_t* defaults) {
    row_ = row;
    side_ = side;
    type_ = row_type(layout_, row.cells);
    Family* const family = prepared();
    if (family == nullptr) return {};
    if (defaults != nullptr) *defaults = defaults_;
    return family->search->fitting();
  }

 private:
  /// Ends that are alike but get different glands are remembered apart.
  struct Remembered {
    std::string key;
    std::optional<Side> side;  ///< absent: there is nothing
    const Supply* supply = nullptr;
    Decided decided;
  };

  /// In a schedule whose ends are nearly all different, whole ends are remembered now and then
  /// only, to see whether that goes on.
  [[nodiscard]] bool remembers() const {
    constexpr std::size_t k_trial = 4096;
    constexpr std::size_t k_seldom = 32;
    return misses_ < k_trial || hits_ * k_seldom > misses_ || misses_ % (16 * k_trial) < k_trial;
  }

  [[nodiscard]] const Sources& sources() const { return sources_[static_cast<std::size_t>(side_)]; }

  void decide_anew(const Supply* supply, Decided& decided) {
    decided.text.clear();
    decided.more.clear();
    if (decide_quickly(supply, decided.decision)) return;
    decided.decision = decide_alone(supply);
  }

  /// The end by itself, with everything that is wrong with it.
  Decision decide_alone(const Supply* supply) {
    std::vector<Fault> faults;
    RowNotes notes;
    const job::JobInput input = input_of(layout_, row_.cells, side_, faults, &notes);
    taken_.insert(notes.taken.begin(), notes.taken.end());
    Decision decision;
    if (faults.empty()) {
      decision = schedule::decide(input, settings_, supply, notes);
      for (Fault& fault : decision.faults) name_column(fault);
    } else {
      decision.faults = std::move(faults);
    }
    decision.defaults = notes.defaults;
    return decision;
  }

  /// What a job file calls cable.sheath_od_mm is a column here, by its own heading.
  void name_column(Fault& fault) const {
    for (const Source& source : layout_.sources(side_)) {
      const std::string key =
          std::string(source.field->section) + "." + std::string(source.field->key);
      if (fault.where != key) continue;
      const Given cell = given(layout_, source, row_.cells, type_);
      fault.where = cell.column != nullptr ? "column " + cell.column->heading
                                           : "column " + std::string(source.field->key);
      return;
    }
  }

  /// @return false where the end is not usable
  bool decide_quickly(const Supply* supply, Decision& decision) {
    Family* const family = prepared();
    if (family == nullptr) return false;
    current_ = family;
    detail::decide(family->question, *family->search, settings_.glands->prefer(), supply,
                   fittings_of_, decision);
    decision.defaults = defaults_;
    return true;
  }

  /// The family of the end at hand, with its diameters and routes; null where it is not usable.
  Family* prepared() {
    Family& family = family_of();
    if (!family.usable) return nullptr;
    defaults_ = family.notes.defaults;
    if (!put_diameters(family) || !put_routes(family)) return nullptr;
    if (!job::complete(family.frame, *settings_.standards, family.job).empty()) return nullptr;
    if (type_.type != nullptr) note_own_diameters(family);
    detail::apply(family.notes, given_, family.job.cable);
    return family.job.cable.sheath_od ? &family : nullptr;
  }

  /// Each figure is copied before the next is looked up: two of one end may have the same place in
  /// memory.
  bool put_diameters(Family& family) {
    std::array<bool, 3> there{};
    for (const auto& [source, layer] : sources().diameters) {
      const Given cell = given(layout_, source, row_.cells, type_);
      if (cell.is_blank()) continue;
      const auto place = static_cast<std::size_t>(layer);
      there[place] = true;
      note_default(cell);
      std::optional<measure::Estimate>& estimate = estimate_in(family.job.cable, layer);
      const bool as_it_stands =
          cell.typed != nullptr || (layout_.decimal == '.' && !cell.column->inches);
      const auto plain = as_it_stands ? measure::plain_reading(cell.text) : std::nullopt;
      if (plain && family.single[place]) {
        estimate->value_mm = *plain;
        continue;
      }
      const Figure& figure = figure_of(family, cell, layer);
      if (!figure.estimate) return false;
      estimate = figure.estimate;
      family.single[place] = plain && estimate->evidence != measure::Evidence::measured;
    }
    for (const job::Layer layer : {job::Layer::sheath, job::Layer::bedding, job::Layer::wire}) {
      const auto place = static_cast<std::size_t>(layer);
      if (there[place]) continue;
      estimate_in(family.job.cable, layer).reset();
      family.single[place] = false;
    }
    given_ = {there[static_cast<std::size_t>(job::Layer::sheath)],
              there[static_cast<std::size_t>(job::Layer::bedding)]};
    return true;
  }

  void note_own_diameters(Family& family) {
    for (const auto& [source, layer] : sources().diameters) {
      std::string remark = own_diameter_remark(layout_, source, row_.cells, *type_.type);
      if (!remark.empty()) family.job.cable.warnings.push_back(std::move(remark));
    }
  }

  void note_default(const Given& cell) {
    if (cell.by_default == Layout::k_none) return;
    defaults_ |= std::uint64_t{1} << layout_.defaults[cell.by_default].number;
  }

  bool put_routes(Family& family) {
    const auto& routes = sources().routes;
    const bool any = std::any_of(routes.begin(), routes.end(), [&](const Source& source) {
      return !given(layout_, source, row_.cells).is_blank();
    });
    if (!any && !family.routed) return true;
    family.routed = any;
    job::JobInput input = family.frame.in;
    RowNotes notes;
    if (!put_cells(layout_, sources().routes, row_.cells, {}, input, notes).empty()) return false;
    defaults_ |= notes.defaults;
    return job::put_tails(input, family.job).empty();
  }

  const Figure& figure_of(const Family& family, const Given& cell, job::Layer layer) {
    if (figures_.empty()) figures_.resize(k_figures);
    Figure& slot = figures_[(hash_of(cell.text) * 3 + static_cast<std::size_t>(layer)) % k_figures];
    const bool inches = cell.column != nullptr && cell.column->inches;
    const bool typed = cell.typed != nullptr;
    if (slot.layer == layer && slot.inches == inches && slot.typed == typed &&
        slot.text == cell.text && slot.figures == family.figures) {
      return slot;
    }
    slot.inches = inches;
    slot.typed = typed;
    slot.figures = family.figures;
    slot.layer = layer;
    slot.text = cell.text;
    slot.estimate.reset();
    std::string plain;
    if (typed) {
      plain = cell.text;
    } else if (to_plain_text(*cell.column, cell.text, layout_.decimal, plain)) {
      return slot;
    }
    try {
      slot.estimate =
          job::estimate(family.frame, layer, measure::Readings(plain, ""), *settings_.standards);
    } catch (const InputError&) {
      // The end is not usable: decide_alone says why.
    }
    return slot;
  }

  Family& family_of() {
    std::string_view key = sources().family.key(layout_, row_, family_key_);
    if (type_.type != nullptr) {
      // The evidence depends on which diameters the row has.
      typed_key_.assign(key) += static_cast<char>('0' + type_.own);
      key = typed_key_;
    }
    auto& families = families_[static_cast<std::size_t>(side_)];
    const auto known = families.find(key);
    if (known != families.end()) return known->second;
    if (families.size() >= k_families) families.clear();
    Family& family = families[std::string(key)];
    make_family(family);
    return family;
  }

  /// The cells of the end's family whose fields are of some kind, as one text.
  template <class Wanted>
  std::string text_of(Wanted wanted) const {
    std::string text;
    for (const Source& source : sources().family.sources()) {
      const std::string_view cell = given(layout_, source, row_.cells, type_).text;
      if (cell.empty()) continue;
      if (!wanted(*source.field) && !may_say_more(*source.field, cell)) continue;
      ((text += source.field->key) += '=') += cell;
      text += '\0';
    }
    return text;
  }

  void make_family(Family& family) {
    job::JobInput input;
    RowNotes& notes = family.notes;
    if (!put_cells(layout_, sources().family.sources(), row_.cells, type_, input, notes).empty()) {
      return;
    }
    taken_.insert(notes.taken.begin(), notes.taken.end());
    finish_input(layout_, type_, notes, input);
    family.figures =
        text_of([](const job::Field& field) { return field.feeds.into == Into::figures; });
    if (input.evidence) family.figures += to_string(*input.evidence);
    try {
      family.frame =
          job::make_frame(std::move(input), *settings_.standards, job::Unstated::by_notation);
      if (!family.frame.faults.empty()) return;
      family.job = family.frame.job;
      family.question = fit::ask(family.job, *settings_.standards, settings_.asking);
    } catch (const InputError&) {
      return;
    }
    fit::AskKeys asks;
    for (const fit::CheckName check : fit::check_names()) {
      asks.push_back(
          text_of([&](const job::Field& field) { return field.feeds.checks.has(check); }));
      // One list of glands may serve askings of several kinds.
      asks.back() += static_cast<char>('0' + static_cast<int>(settings_.asking.purpose) * 2 +
                                       static_cast<int>(settings_.asking.place));
    }
    family.search.emplace(*settings_.glands, family.question, asks);
    family.usable = true;
  }

  const detail::Fittings& fittings(const fit::Question& question, const gland::Gland& gland) {
    const auto [at, fresh] = current_->fittings.try_emplace(&gland);
    if (fresh) {
      at->second = detail::fittings_of(question, gland);
      // Equal lists become one, so that whoever counts them need not compare.
      at->second.accessories =
          accessories_.try_emplace(*at->second.accessories, at->second.accessories).first->second;
    }
    return at->second;
  }

  const Layout& layout_;
  const Settings settings_;
  std::array<Sources, 3> sources_;
  Decided alone_;  ///< the end at hand, where it is not remembered
  std::size_t hits_ = 0;
  std::size_t misses_ = 0;
  std::vector<Remembered> ends_;  ///< by hash; a newer end takes the place of an older one
  std::vector<Figure> figures_;   ///< the same; empty until there is one
  std::array<std::unordered_map<std::string, Family, KeyHash, std::equal_to<>>, 3> families_;
  std::map<Accessories, std::shared_ptr<const Accessories>> accessories_;
  Family* current_ = nullptr;
  detail::FittingsOf fittings_of_ = [this](const fit::Question& question,
                                           const gland::Gland& gland) -> const detail::Fittings& {
    return fittings(question, gland);
  };
  std::set<std::string> taken_;
  // The end at hand.
  Row row_;
  Side side_ = Side::both;
  std::uint64_t defaults_ = 0;  ///< that were taken
  std::string key_;
  std::string family_key_;
  std::string typed_key_;
  RowType type_;
  detail::GivenFigures given_;
};

Decider::Decider(const Layout& layout, const Settings& settings)
    : state_(std::make_unique<State>(layout, settings)) {}
Decider::~Decider() = default;
Decided& Decider::decide(const Row& row, Side side, const Supply* supply) {
  return state_->decide(row, side, supply);
}
std::vector<std::uint32_t> Decider::fitting(const Row& row, Side side, std::uint64_t* defaults) {
  return state_->fitting(row, side, defaults);
}

const std::set<std::string>& Decider::taken() const { return state_->taken(); }

}  // namespace cutback::schedule
