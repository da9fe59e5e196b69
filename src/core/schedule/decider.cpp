#include "cutback/schedule/decider.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "core/schedule/cell_text.hpp"
#include "core/schedule/decide_detail.hpp"
#include "core/schedule/end_family.hpp"
#include "core/schedule/row_keys.hpp"
#include "cutback/job/job.hpp"
#include "cutback/measure/reading.hpp"

namespace cutback::schedule {
namespace {

using detail::End;
using detail::EndSources;
using detail::Families;
using detail::Family;

std::size_t hash_of(std::string_view text) { return std::hash<std::string_view>{}(text); }

std::optional<measure::Estimate>& estimate_in(cable::Cable& cable, job::Layer layer) {
  if (layer == job::Layer::sheath) return cable.sheath_od;
  return layer == job::Layer::bedding ? cable.bedding : cable.wire;
}

/// Whole ends that were decided before. Ends that are alike but get different glands are remembered
/// apart.
class EndMemory {
 public:
  EndMemory() : ends_(k_ends) {}

  /// In a schedule whose ends are nearly all different, whole ends are remembered now and then
  /// only, to see whether that goes on.
  [[nodiscard]] bool remembers() const {
    constexpr std::size_t k_trial = 4096;
    constexpr std::size_t k_seldom = 32;
    return misses_ < k_trial || hits_ * k_seldom > misses_ || misses_ % (16 * k_trial) < k_trial;
  }

  /// @param decide  is called with what is to be decided anew
  template <class Decide>
  Decided& get(std::string_view key, Side side, const Supply* supply, Decide decide) {
    Slot& slot = ends_[(hash_of(key) + static_cast<std::size_t>(side)) % k_ends];
    if (slot.side == side && slot.supply == supply && slot.key == key) {
      ++hits_;
      return slot.decided;
    }
    ++misses_;
    slot.side.reset();  // an error below must not leave the old answer under the new key
    slot.key = key;
    slot.supply = supply;
    decide(slot.decided);
    slot.side = side;
    return slot.decided;
  }
  /// The one end at hand, where it is not remembered.
  template <class Decide>
  Decided& get_alone(Decide decide) {
    ++misses_;
    decide(alone_);
    return alone_;
  }

 private:
  static constexpr std::size_t k_ends = 8192;
  struct Slot {
    std::string key;
    std::optional<Side> side;  ///< absent: there is nothing
    const Supply* supply = nullptr;
    Decided decided;
  };
  std::size_t hits_ = 0;
  std::size_t misses_ = 0;
  std::vector<Slot> ends_;  ///< by hash; a newer end takes the place of an older one
  Decided alone_;
};

/// Figures as they were read once, for families that read them alike.
class FigureMemory {
 public:
  /// @return absent where it cannot be read; valid until the next call
  const std::optional<measure::Estimate>& get(const Layout& layout, const Settings& settings,
                                              const Family& family, const Given& cell,
                                              job::Layer layer) {
    if (slots_.empty()) slots_.resize(k_figures);
    Slot& slot = slots_[(hash_of(cell.text) * 3 + static_cast<std::size_t>(layer)) % k_figures];
    const bool inches = cell.column != nullptr && cell.column->inches;
    const bool typed = cell.typed != nullptr;
    if (slot.layer == layer && slot.inches == inches && slot.typed == typed &&
        slot.text == cell.text && slot.figures == family.figures) {
      return slot.estimate;
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
    } else if (to_plain_text(*cell.column, cell.text, layout.decimal, plain)) {
      return slot.estimate;
    }
    try {
      slot.estimate =
          job::estimate(family.frame, layer, measure::Readings(plain, ""), *settings.standards);
    } catch (const InputError&) {
      // The end is not usable: who decides it alone says why.
    }
    return slot.estimate;
  }

 private:
  static constexpr std::size_t k_figures = 16384;
  struct Slot {
    std::string figures;
    job::Layer layer = job::Layer::sheath;
    bool inches = false;
    bool typed = false;  ///< it is a type's, and written as the field table has it
    std::string text;
    std::optional<measure::Estimate> estimate;
  };
  std::vector<Slot> slots_;  ///< by hash; empty until there is one
};

/// The family of an end, with the end's diameters and routes.
struct Prepared {
  Family* family = nullptr;    ///< null where the end is not usable
  std::uint64_t defaults = 0;  ///< that were taken
};

}  // namespace

class Decider::State {
 public:
  State(const Layout& layout, const Settings& settings)
      : layout_(layout),
        settings_(settings),
        sources_{EndSources(layout, Side::both), EndSources(layout, Side::from),
                 EndSources(layout, Side::to)},
        families_{Families(layout_, settings_, sources_[0].family, taken_),
                  Families(layout_, settings_, sources_[1].family, taken_),
                  Families(layout_, settings_, sources_[2].family, taken_)} {}

  Decided& decide(const Row& row, Side side, const Supply* supply) {
    const End end{row, side, row_type(layout_, row.cells)};
    if (const MadeEnd* const made = made_end(end)) {
      return ends_.get_alone([&](Decided& decided) {
        decided = {};
        decided.decision = decide_alone(end, supply, made);
      });
    }
    const auto anew = [&](Decided& decided) { decide_anew(end, supply, decided); };
    if (!ends_.remembers()) return ends_.get_alone(anew);
    return ends_.get(sources(end).all.key(layout_, row, key_), side, supply, anew);
  }

  [[nodiscard]] const std::set<std::string>& taken() const { return taken_; }

  std::vector<std::uint32_t> fitting(const Row& row, Side side, std::uint64_t* defaults) {
    const End end{row, side, row_type(layout_, row.cells)};
    if (const MadeEnd* const made = made_end(end)) return fitting_made(end, *made, defaults);
    const Prepared prepared = prepare(end);
    if (prepared.family == nullptr) return {};
    if (defaults != nullptr) *defaults = prepared.defaults;
    return prepared.family->search->fitting();
  }

 private:
  [[nodiscard]] const EndSources& sources(const End& end) const {
    return sources_[static_cast<std::size_t>(end.side)];
  }

  void decide_anew(const End& end, const Supply* supply, Decided& decided) {
    decided.text.clear();
    decided.more.clear();
    const Prepared prepared = prepare(end);
    if (prepared.family == nullptr) {
      decided.decision = decide_alone(end, supply, nullptr);
      return;
    }
    Family& family = *prepared.family;
    detail::decide(family.question, *family.search, settings_.glands->prefer(), supply, fittings_,
                   decided.decision);
    decided.decision.defaults = prepared.defaults;
  }

  [[nodiscard]] const MadeEnd* made_end(const End& end) const {
    if (settings_.made == nullptr) return nullptr;
    return settings_.made->find(tag_of(layout_, end.row.cells),
                                end_name(layout_, end.row.cells, end.side));
  }

  /// An end that was measured is like no other; one that is finished wants no gland.
  std::vector<std::uint32_t> fitting_made(const End& end, const MadeEnd& made,
                                          std::uint64_t* defaults) {
    std::vector<Fault> faults;
    RowNotes notes;
    const job::JobInput input = input_of(layout_, end.row.cells, end.side, faults, &notes);
    taken_.insert(notes.taken.begin(), notes.taken.end());
    if (!faults.empty() || made.is_finished()) return {};
    try {
      const job::Job job = job_of(input, settings_, notes, &made);
      if (!job.cable.sheath_od) return {};
      const fit::Question question = fit::ask(job, *settings_.standards, settings_.asking);
      if (defaults != nullptr) *defaults = notes.defaults;
      return fit::Search(*settings_.glands, question).fitting();
    } catch (const InputError&) {
      return {};  // decide_alone says why
    }
  }

  /// The end by itself, with everything that is wrong with it.
  Decision decide_alone(const End& end, const Supply* supply, const MadeEnd* made) {
    std::vector<Fault> faults;
    RowNotes notes;
    const job::JobInput input = input_of(layout_, end.row.cells, end.side, faults, &notes);
    taken_.insert(notes.taken.begin(), notes.taken.end());
    Decision decision;
    if (faults.empty()) {
      decision = schedule::decide(input, settings_, supply, notes, made);
      name_columns(layout_, end.row.cells, end.side, decision.faults);
    } else {
      decision.faults = std::move(faults);
    }
    decision.defaults = notes.defaults;
    return decision;
  }

  Prepared prepare(const End& end) {
    Family& family = families_[static_cast<std::size_t>(end.side)].of(end);
    if (!family.usable) return {};
    std::uint64_t defaults = family.notes.defaults;
    detail::GivenFigures given;
    if (!put_diameters(end, family, given, defaults) || !put_routes(end, family, defaults)) {
      return {};
    }
    if (!job::complete(family.frame, *settings_.standards, family.job).empty()) return {};
    if (end.type.type != nullptr) note_own_diameters(end, family.job.cable);
    detail::apply(family.notes, given, family.job.cable);
    if (!family.job.cable.sheath_od) return {};
    return {&family, defaults};
  }

  /// @return false where one of them cannot be read
  bool put_diameters(const End& end, Family& family, detail::GivenFigures& put,
                     std::uint64_t& defaults) {
    std::array<bool, 3> there{};
    for (const auto& [source, layer] : sources(end).diameters) {
      const Given cell = given(layout_, source, end.row.cells, end.type);
      if (cell.is_blank()) continue;
      const auto place = static_cast<std::size_t>(layer);
      there[place] = true;
      if (cell.by_default != Layout::k_none) {
        defaults |= std::uint64_t{1} << layout_.defaults[cell.by_default].number;
      }
      std::optional<measure::Estimate>& estimate = estimate_in(family.job.cable, layer);
      const bool as_it_stands =
          cell.typed != nullptr || (layout_.decimal == '.' && !cell.column->inches);
      const auto plain = as_it_stands ? measure::plain_reading(cell.text) : std::nullopt;
      if (plain && family.single[place]) {
        estimate->value_mm = *plain;
        continue;
      }
      family.single[place] =
          false;  // also where it cannot be read: the next row has a figure again
      estimate = figures_.get(layout_, settings_, family, cell, layer);
      if (!estimate) return false;
      family.single[place] = plain && estimate->evidence != measure::Evidence::measured;
    }
    for (const job::Layer layer : {job::Layer::sheath, job::Layer::bedding, job::Layer::wire}) {
      const auto place = static_cast<std::size_t>(layer);
      if (there[place]) continue;
      estimate_in(family.job.cable, layer).reset();
      family.single[place] = false;
    }
    put = {there[static_cast<std::size_t>(job::Layer::sheath)],
           there[static_cast<std::size_t>(job::Layer::bedding)]};
    return true;
  }

  void note_own_diameters(const End& end, cable::Cable& cable) const {
    for (const auto& [source, layer] : sources(end).diameters) {
      std::string remark = own_diameter_remark(layout_, source, end.row.cells, *end.type.type);
      if (!remark.empty()) cable.warnings.push_back(std::move(remark));
    }
  }

  bool put_routes(const End& end, Family& family, std::uint64_t& defaults) const {
    const auto& routes = sources(end).routes;
    const bool any = std::any_of(routes.begin(), routes.end(), [&](const Source& source) {
      return !given(layout_, source, end.row.cells).is_blank();
    });
    if (!any && !family.routed) return true;
    family.routed = any;
    job::JobInput input = family.frame.in;
    RowNotes notes;
    if (!put_cells(layout_, routes, end.row.cells, {}, input, notes).empty()) return false;
    defaults |= notes.defaults;
    return job::put_tails(input, family.job).empty();
  }

  const Layout& layout_;
  const Settings settings_;
  std::set<std::string> taken_;              ///< what words of cells were taken for
  const std::array<EndSources, 3> sources_;  ///< by side
  std::array<Families, 3> families_;         ///< by side
  EndMemory ends_;
  FigureMemory figures_;
  detail::FittingsMemory fittings_;
  std::string key_;
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
