#include "cutback/schedule/decider.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <functional>
#include <map>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/schedule/cell_text.hpp"
#include "core/schedule/decide_detail.hpp"
#include "cutback/job/job.hpp"
#include "cutback/measure/reading.hpp"

namespace cutback::schedule {
namespace {

// What is remembered at most, for each thread.
constexpr std::size_t k_ends = 8192;
constexpr std::size_t k_figures = 16384;
constexpr std::size_t k_families = 2048;

std::size_t hash_of(std::string_view text) { return std::hash<std::string_view>{}(text); }

/// What of an end a column belongs to.
enum class Role {
  name,      ///< decides nothing
  diameter,  ///< sheath, bedding or wire
  route,     ///< the tails: they move marks
  rest       ///< all that a family of ends has in common
};

Role role_of(const job::Field& field) {
  if (!decides(field)) return Role::name;
  if (field.section == "tails") return Role::route;
  const bool diameter =
      field.key == "sheath_od_mm" || field.key == "bedding_mm" || field.key == "armour_mm";
  return diameter ? Role::diameter : Role::rest;
}

job::Layer layer_of(const job::Field& field) {
  if (field.key == "sheath_od_mm") return job::Layer::sheath;
  return field.key == "bedding_mm" ? job::Layer::bedding : job::Layer::wire;
}

std::optional<measure::Estimate>& estimate_in(cable::Cable& cable, job::Layer layer) {
  if (layer == job::Layer::sheath) return cable.sheath_od;
  return layer == job::Layer::bedding ? cable.bedding : cable.wire;
}

/// All of an input that job::estimate reads beside the figure itself.
std::string figures_key(const job::JobInput& in) {
  std::string key = in.evidence.value_or("") + ";";
  for (const auto& number : {in.step_mm, in.mpe_mm, in.zero_mm, in.ovality_mm, in.od_allow_mm,
                             in.bedding_allow_mm, in.armour_allow_mm}) {
    key += number ? std::to_string(std::bit_cast<std::uint64_t>(*number)) + ";" : "-;";
  }
  return key;
}

struct DiameterSource {
  Source source;
  job::Layer layer;
};

/// Where the cells of one end stand that decide anything.
struct Sources {
  std::vector<Source> rest;
  std::vector<DiameterSource> diameters;
  std::vector<Source> routes;
};

struct GivenDiameter {
  Given cell;
  job::Layer layer;
};

/// Adds a cell, with the field that it belongs to: the two ends of a row need not have the same
/// fields.
void add_to_key(const Given& cell, std::string& key) {
  if (cell.column == nullptr) return;
  key += static_cast<char>(cell.column->field - job::fields().data() + 1);
  key += cell.text;
  key += '\0';
}

/// Ends that differ in diameters and routes only. Not movable: search borrows question, and that
/// the job.
struct Family {
  std::string figures;  ///< its evidence, caliper and allowances: what one figure is read with
  job::Frame frame;
  job::Job job;
  fit::Question question;
  std::optional<fit::Search> search;
  std::unordered_map<const gland::Gland*, detail::Fittings> fittings;
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
  std::string text;
  std::optional<measure::Estimate> estimate;  ///< absent: it cannot be read
};

}  // namespace

class Decider::State {
 public:
  State(const Layout& layout, const Settings& settings)
      : layout_(layout), settings_(settings), ends_(k_ends), figures_(k_figures) {
    for (const Side side : {Side::both, Side::from, Side::to}) {
      Sources& sources = sources_[static_cast<std::size_t>(side)];
      for (const Source& source : layout.sources(side)) {
        const Role role = role_of(*source.field);
        if (role == Role::rest) sources.rest.push_back(source);
        if (role == Role::diameter) sources.diameters.push_back({source, layer_of(*source.field)});
        if (role == Role::route) sources.routes.push_back(source);
      }
    }
  }

  Decided& decide(Cells cells, Side side, const Supply* supply) {
    read(cells, side);
    if (!remembers()) {
      ++misses_;
      decide_anew(supply, alone_);
      return alone_;
    }
    complete_key(supply);
    Remembered& slot = ends_[hash_of(key_) % k_ends];
    if (slot.key == key_) {
      ++hits_;
      return slot.decided;
    }
    ++misses_;
    slot.key.clear();  // an error below must not leave the old answer under the new key
    decide_anew(supply, slot.decided);
    slot.key = key_;
    return slot.decided;
  }

  std::vector<std::uint32_t> fitting(Cells cells, Side side) {
    read(cells, side);
    Family* const family = prepared();
    if (family == nullptr) return {};
    return family->search->fitting();
  }

 private:
  struct Remembered {
    std::string key;
    Decided decided;
  };

  /// In a schedule whose ends are nearly all different, whole ends are remembered now and then
  /// only, to see whether that goes on.
  [[nodiscard]] bool remembers() const {
    constexpr std::size_t k_trial = 4096;
    constexpr std::size_t k_seldom = 32;
    return misses_ < k_trial || hits_ * k_seldom > misses_ || misses_ % (16 * k_trial) < k_trial;
  }

  void read(Cells cells, Side side) {
    const Sources& sources = sources_[static_cast<std::size_t>(side)];
    key_.clear();
    for (const Source& source : sources.rest) add_to_key(given(layout_, source, cells), key_);
    family_length_ = key_.size();
    diameters_.clear();
    for (const auto& [source, layer] : sources.diameters) {
      diameters_.push_back({given(layout_, source, cells), layer});
    }
    routes_.clear();
    for (const Source& source : sources.routes) {
      routes_.push_back(given(layout_, source, cells));
    }
    side_ = side;
    cells_ = cells;
  }

  /// Makes the family's key that of the end. Ends that are alike but get different glands are
  /// remembered apart.
  void complete_key(const Supply* supply) {
    for (const GivenDiameter& one : diameters_) add_to_key(one.cell, key_);
    for (const Given& cell : routes_) add_to_key(cell, key_);
    if (supply == nullptr) return;
    std::array<char, sizeof supply> bytes{};
    std::memcpy(bytes.data(), &supply, sizeof supply);
    key_.append(bytes.data(), bytes.size());
  }

  void decide_anew(const Supply* supply, Decided& decided) {
    decided.text.clear();
    if (decide_quickly(supply, decided.decision)) return;
    decided.decision = decide_alone(cells_, side_, supply);
  }

  /// The end by itself, with everything that is wrong with it.
  Decision decide_alone(Cells cells, Side side, const Supply* supply) {
    std::vector<Fault> faults;
    const job::JobInput input = input_of(layout_, cells, side, faults);
    if (faults.empty()) return schedule::decide(input, settings_, supply);
    Decision decision;
    decision.faults = std::move(faults);
    return decision;
  }

  /// @return false where the end is not usable
  bool decide_quickly(const Supply* supply, Decision& decision) {
    Family* const family = prepared();
    if (family == nullptr) return false;
    current_ = family;
    detail::decide(family->question, *family->search, settings_.glands->prefer(), supply,
                   fittings_of_, decision);
    return true;
  }

  /// The family of the end at hand, with its diameters and routes; null where it is not usable.
  Family* prepared() {
    Family& family = family_of();
    if (!family.usable) return nullptr;
    if (!put_diameters(family) || !put_routes(family)) return nullptr;
    if (!job::complete(family.frame, *settings_.standards, family.job).empty()) return nullptr;
    return family.job.cable.sheath_od ? &family : nullptr;
  }

  /// Each figure is copied before the next is looked up: two of one end may have the same place in
  /// memory.
  bool put_diameters(Family& family) {
    std::array<bool, 3> given{};
    for (const auto& [cell, layer] : diameters_) {
      if (cell.column == nullptr) continue;
      const auto place = static_cast<std::size_t>(layer);
      given[place] = true;
      std::optional<measure::Estimate>& estimate = estimate_in(family.job.cable, layer);
      const auto plain = layout_.decimal == '.' ? measure::plain_reading(cell.text) : std::nullopt;
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
      if (given[place]) continue;
      estimate_in(family.job.cable, layer).reset();
      family.single[place] = false;
    }
    return true;
  }

  bool put_routes(Family& family) {
    const bool given = std::any_of(routes_.begin(), routes_.end(),
                                   [](const Given& cell) { return cell.column != nullptr; });
    if (!given && !family.routed) return true;
    family.routed = given;
    job::JobInput input = family.frame.in;
    for (const Given& cell : routes_) {
      if (cell.column != nullptr && !set_cell(layout_, cell, input).empty()) return false;
    }
    return job::put_tails(input, family.job).empty();
  }

  const Figure& figure_of(const Family& family, const Given& cell, job::Layer layer) {
    Figure& slot = figures_[(hash_of(cell.text) * 3 + static_cast<std::size_t>(layer)) % k_figures];
    if (slot.layer == layer && slot.text == cell.text && slot.figures == family.figures) {
      return slot;
    }
    slot.figures = family.figures;
    slot.layer = layer;
    slot.text = cell.text;
    slot.estimate.reset();
    std::string plain;
    if (to_plain_text(*cell.column->field, cell.text, layout_.decimal, plain)) return slot;
    try {
      slot.estimate = job::estimate(family.frame, layer, plain, *settings_.standards);
    } catch (const InputError&) {
      // The end is not usable: decide_alone says why.
    }
    return slot;
  }

  Family& family_of() {
    const std::string_view key = std::string_view(key_).substr(0, family_length_);
    const auto known = families_.find(key);
    if (known != families_.end()) return known->second;
    if (families_.size() >= k_families) families_.clear();
    Family& family = families_[std::string(key)];
    make_family(family);
    return family;
  }

  void make_family(Family& family) {
    job::JobInput input;
    for (const Source& source : sources_[static_cast<std::size_t>(side_)].rest) {
      const Given cell = given(layout_, source, cells_);
      if (cell.column != nullptr && !set_cell(layout_, cell, input).empty()) return;
    }
    if (!input.evidence && !layout_.evidence.empty()) input.evidence = layout_.evidence;
    family.figures = figures_key(input);
    try {
      family.frame =
          job::make_frame(std::move(input), *settings_.standards, job::Unstated::by_notation);
      if (!family.frame.faults.empty()) return;
      family.job = family.frame.job;
      family.question = fit::ask(family.job, *settings_.standards);
    } catch (const InputError&) {
      return;
    }
    family.search.emplace(*settings_.glands, family.question);
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
  std::vector<Figure> figures_;   ///< the same
  std::unordered_map<std::string, Family, KeyHash, std::equal_to<>> families_;
  std::map<Accessories, std::shared_ptr<const Accessories>> accessories_;
  Family* current_ = nullptr;
  detail::FittingsOf fittings_of_ = [this](const fit::Question& question,
                                           const gland::Gland& gland) -> const detail::Fittings& {
    return fittings(question, gland);
  };
  // The end at hand.
  std::string key_;
  std::size_t family_length_ = 0;  ///< of the start of the key that the whole family has
  std::vector<GivenDiameter> diameters_;
  std::vector<Given> routes_;
  Side side_ = Side::both;
  Cells cells_;
};

Decider::Decider(const Layout& layout, const Settings& settings)
    : state_(std::make_unique<State>(layout, settings)) {}
Decider::~Decider() = default;
Decided& Decider::decide(Cells cells, Side side, const Supply* supply) {
  return state_->decide(cells, side, supply);
}
std::vector<std::uint32_t> Decider::fitting(Cells cells, Side side) {
  return state_->fitting(cells, side);
}

}  // namespace cutback::schedule
