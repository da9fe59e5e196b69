#include "cutback/fit/select.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>

#include "core/fit/gland_index.hpp"
#include "core/fit/parts.hpp"

namespace cutback::fit {
namespace {

using detail::GlandSet;
using detail::k_word;
using detail::Passing;
using detail::Section;
using gland::Gland;
using Sections = std::vector<const Section*>;

/// The sets of the limits that an end meets in one section of a list: five at most.
class Limits {
 public:
  void add(const detail::LimitSets& sets, double diameter_mm) {
    if (sets.limits_any()) add(sets.at(diameter_mm));
  }
  void add(const Passing& passing) {
    list_[size_++] = passing;
    sure_ = sure_ && passing.all == passing.sure;
  }
  [[nodiscard]] std::span<const Passing> list() const { return {list_.data(), size_}; }
  /// Whether every gland that passes passes for sure.
  [[nodiscard]] bool sure() const { return sure_; }
  /// A limit that is in no set, that of the clamp. Where it is met by a hair, nothing is sure.
  void add_clamp(bool sure) {
    doubted_ = !sure;
    sure_ = sure_ && sure;
  }
  [[nodiscard]] bool doubted() const { return doubted_; }

 private:
  std::array<Passing, 5> list_;
  std::size_t size_ = 0;
  bool sure_ = true;
  bool doubted_ = false;
};

/// What of one word of `set` passes every limit. @param word  of the section
std::uint64_t passing(std::uint64_t set, const Limits& limits, std::size_t word) {
  for (const Passing& limit : limits.list()) set &= limit.all[word];
  return set;
}

/// The same for sure.
std::uint64_t surely_passing(std::uint64_t set, const Limits& limits, std::size_t word) {
  if (limits.sure()) return set;
  if (limits.doubted()) return 0;
  for (const Passing& limit : limits.list()) set &= limit.sure[word];
  return set;
}

/// What must lie within a gland's range.
enum class Width {
  whole,   ///< the whole interval and every reading: the gland fits
  middle,  ///< the value: it is not outside
  touch,   ///< anything of the interval: it is not wholly outside
};

struct Interval {
  double low_mm = 0.0;
  double high_mm = 0.0;
  friend bool operator==(const Interval&, const Interval&) = default;
};

/// The two figures that the lower and the upper limit are compared with.
Interval asked_of(const measure::Estimate& estimate, Width width) {
  if (width == Width::middle) return {estimate.value_mm, estimate.value_mm};
  if (width == Width::touch) return {estimate.high_mm(), estimate.low_mm()};
  Interval whole{estimate.low_mm(), estimate.high_mm()};
  for (const double reading : estimate.readings_mm) {
    whole.low_mm = std::min(whole.low_mm, reading);
    whole.high_mm = std::max(whole.high_mm, reading);
  }
  return whole;
}

/// What an end asks of the ranges of glands.
struct Asked {
  bool none_can = false;  ///< no gland can have the verdict that is asked for
  // Whether a diameter is compared:
  bool by_outer = false;
  bool by_inner = false;
  bool by_wire = false;
  bool inner_unknown = false;  ///< only a gland that does not ask about the bedding can fit
  Interval outer;
  Interval inner;
  Interval wire;
};

/// A section whose clamp takes the wire.
struct OpenSection {
  const Section* section = nullptr;
  bool sure = true;
};

/// The sections that an end's wire opens: many ends one after the other ask for the same wire.
class OpenSections {
 public:
  explicit OpenSections(const Sections& sections) : sections_(&sections) {}
  [[nodiscard]] std::span<const OpenSection> of(const Asked& asked) {
    if (known_ && by_wire_ == asked.by_wire && wire_ == asked.wire) return open_;
    known_ = true;
    by_wire_ = asked.by_wire;
    wire_ = asked.wire;
    open_.clear();
    for (const Section* section : *sections_) {
      const detail::Passes clamp =
          by_wire_ ? detail::passes(section->clamp, wire_.low_mm, wire_.high_mm) : detail::Passes{};
      if (clamp.all) open_.push_back({section, clamp.sure});
    }
    return open_;
  }

 private:
  const Sections* sections_;
  bool known_ = false;
  bool by_wire_ = false;
  Interval wire_;
  std::vector<OpenSection> open_;
};

/// One gland looked at without words: what an order and a nearest gland are decided by.
struct Look {
  const Gland* gland = nullptr;
  double preference = 0.0;
  Verdict verdict = Verdict::fits;
  double margin_mm = -std::numeric_limits<double>::infinity();
  Miss miss;
};

/// As fit_all orders.
bool better(const Look& a, const Look& b) {
  if (a.verdict != b.verdict) return a.verdict > b.verdict;
  if (a.preference != b.preference) return a.preference < b.preference;
  if (a.margin_mm != b.margin_mm) return a.margin_mm > b.margin_mm;
  return a.gland->part < b.gland->part;
}

bool nearer(const Look& a, const Look& b) {
  return a.miss != b.miss ? a.miss < b.miss : better(a, b);
}

/// What of a gland's checks does not depend on diameters: the same for every gland of its kind.
struct KindAnswer {
  bool known = false;
  Verdict verdict = Verdict::fits;
  int failures = 0;                     ///< checks under marginal-inside
  bool entry_alone = false;             ///< nothing but entry or thread keeps it from fitting
  std::optional<bool> through_adaptor;  ///< they would fit, too, through an adaptor
};

KindAnswer answer_of(const Question& question, const Gland& gland) {
  GlandFit others;
  detail::add_other_checks(question, gland, others);
  KindAnswer answer{.known = true, .entry_alone = true};
  for (const Check& check : others.checks) {
    answer.verdict = worst(answer.verdict, check.verdict);
    if (check.verdict < Verdict::marginal_inside) ++answer.failures;
    const bool entry = check.name == CheckName::entry || check.name == CheckName::thread;
    if (check.verdict != Verdict::fits && !entry) answer.entry_alone = false;
  }
  return answer;
}

}  // namespace

class Search::State {
 public:
  State(const Selector& selector, const Question& question)
      : index_(selector.index()), question_(question), answers_(index_.kinds) {}

  Found find();
  Wavering wavering(const Found& found);
  const Gland* through_adaptor();
  std::vector<std::uint32_t> fitting();

 private:
  void begin();
  [[nodiscard]] const cable::Cable& cable() const { return question_.job->cable; }
  [[nodiscard]] bool barrier(gland::Sealing sealing) const {
    return detail::made_off_as_barrier(sealing, question_.demand);
  }
  [[nodiscard]] bool barrier(const Gland& gland) const { return barrier(gland.sealing); }

  void prepare();
  void learn_kinds();
  [[nodiscard]] bool suits(const entry::Thread& thread) const;
  const KindAnswer& answer_of_kind(std::size_t place);
  KindAnswer kind_answer(std::size_t place);
  [[nodiscard]] Asked asked(Width width) const;
  [[nodiscard]] Limits limits(const OpenSection& open, const Asked& asked) const;
  [[nodiscard]] Verdict verdict_of_diameters(const Gland& gland) const;
  [[nodiscard]] bool fits(std::size_t place) {
    return verdict_of_diameters(*index_.places[place]) == Verdict::fits &&
           kind_answer(place).verdict == Verdict::fits;
  }
  Look look(std::size_t place);

  /// The set of glands of one section that fit, into fitting_. @return how many
  std::size_t mark_fitting(const Section& section, const Limits& limits);
  void drop_unfit(std::size_t word, std::uint64_t open);
  template <class Use>
  void for_each_section(OpenSections& sections, Width width, Use use);
  template <class Use>
  void for_each_passing(OpenSections& sections, Width width, Use use);
  void take_first(const Section& section, std::vector<std::size_t>& tied);
  void find_fitting(Found& found);
  void first_touching(const Section& section, const Limits& limits, double preference,
                      std::size_t wanted, std::vector<std::size_t>& touching);
  bool touches(std::size_t place);
  void find_nearest(Found& found);

  const detail::GlandIndex& index_;
  const Question& question_;
  std::vector<KindAnswer> answers_;
  bool prepared_ = false;
  bool kinds_learnt_ = false;
  int finds_ = 0;
  Sections alike_;    ///< for the cable's kind of armour
  Sections suiting_;  ///< and a thread that the entry takes
  OpenSections open_by_any_thread_{alike_};
  OpenSections open_{suiting_};
  Sections fitting_in_;  ///< those in which something fits
  GlandSet possible_;    ///< no gland that can fit is missing, whatever its ranges
  GlandSet sure_;        ///< glands that all checks but those of the diameters pass
  GlandSet fitting_;
  std::vector<std::size_t> scratch_;
  Verdict of_cable_ = Verdict::fits;  ///< of the check of the cable by itself
};

// ---- what is the same for every end ---------------------------------------------------------

bool Search::State::suits(const entry::Thread& thread) const {
  const entry::Entry& entry = question_.job->entry;
  if (!entry.thread || thread == *entry.thread) return true;
  return std::any_of(
      entry.adaptors.begin(), entry.adaptors.end(),
      [&](const entry::Adaptor& adaptor) { return adaptor.a == thread || adaptor.b == thread; });
}

void Search::State::prepare() {
  prepared_ = true;
  possible_.assign(index_.words(), 0);
  for (const Section& section : index_.sections) {
    if (section.armour != cable().armour) continue;
    alike_.push_back(&section);
    if (!suits(section.thread)) continue;
    suiting_.push_back(&section);
    for (std::size_t word = section.first_word; word < section.end_word; ++word) {
      possible_[word] = index_.taken[word];
    }
  }
  sure_.assign(index_.words(), 0);
  fitting_.assign(index_.words(), 0);
}

/// Asks the other checks of every kind at once, so that their answers become sets. Worth it only
/// when many ends ask the same question.
void Search::State::learn_kinds() {
  kinds_learnt_ = true;
  for (std::size_t place = 0; place < index_.places.size(); ++place) {
    const std::uint64_t bit = std::uint64_t{1} << (place % k_word);
    const std::size_t word = place / k_word;
    if ((possible_[word] & bit) == 0 || barrier(*index_.places[place])) continue;
    if (kind_answer(place).verdict != Verdict::fits) {
      possible_[word] &= ~bit;
    } else if ((index_.without_range[word] & bit) == 0) {
      sure_[word] |= bit;
    }
  }
}

/// Of a gland that is not made off as a barrier.
const KindAnswer& Search::State::answer_of_kind(std::size_t place) {
  KindAnswer& answer = answers_[index_.kind[place]];
  if (!answer.known) answer = answer_of(question_, *index_.places[place]);
  return answer;
}

/// A gland that is made off as a barrier holds the bedding, or the cores: it is asked every time.
KindAnswer Search::State::kind_answer(std::size_t place) {
  const Gland& gland = *index_.places[place];
  return barrier(gland) ? answer_of(question_, gland) : answer_of_kind(place);
}

// ---- sets -----------------------------------------------------------------------------------

Asked Search::State::asked(Width width) const {
  const bool whole = width == Width::whole;
  // A gland fits where a diameter is known and nothing caps it.
  const auto cannot = [&](const std::optional<measure::Estimate>& estimate) {
    return whole && (!estimate || !estimate->caps.empty());
  };
  const cable::Cable& cable = this->cable();
  Asked asked;
  asked.none_can = cannot(cable.sheath_od);
  asked.by_outer = cable.sheath_od.has_value();
  if (asked.by_outer) asked.outer = asked_of(*cable.sheath_od, width);
  if (cable.armour == cable::ArmourKind::none) return asked;
  asked.by_inner = cable.bedding.has_value();
  asked.inner_unknown = whole && !asked.by_inner;
  if (asked.by_inner) asked.inner = asked_of(*cable.bedding, width);
  asked.by_wire = cable.wire.has_value();
  if (asked.by_wire && cable.wire_nominal) {
    asked.wire = {cable.wire_nominal->nominal_mm, cable.wire_nominal->nominal_mm};
  } else {
    asked.none_can = asked.none_can || cannot(cable.wire);
    if (asked.by_wire) asked.wire = asked_of(*cable.wire, width);
  }
  return asked;
}

Limits Search::State::limits(const OpenSection& open, const Asked& asked) const {
  const Section& section = *open.section;
  Limits limits;
  limits.add_clamp(open.sure);
  if (asked.by_outer) {
    limits.add(section.outer.low, asked.outer.low_mm);
    limits.add(section.outer.high, asked.outer.high_mm);
  }
  // Where a gland is filled with compound, its inner seal is not asked about.
  const bool sealed = !barrier(section.sealing);
  if (asked.by_inner) {
    if (sealed) {
      limits.add(section.inner.low, asked.inner.low_mm);
      limits.add(section.inner.high, asked.inner.high_mm);
    }
    limits.add(section.bore, asked.inner.high_mm);
  } else if (asked.inner_unknown) {
    if (sealed) {
      limits.add(section.inner.low.unlimited());
      limits.add(section.inner.high.unlimited());
    }
    limits.add(section.bore.unlimited());
  }
  return limits;
}

std::size_t Search::State::mark_fitting(const Section& section, const Limits& limits) {
  const std::size_t words = section.end_word - section.first_word;
  std::uint64_t* const fitting = fitting_.data() + section.first_word;
  const std::uint64_t* const sure = sure_.data() + section.first_word;
  std::copy_n(possible_.data() + section.first_word, words, fitting);
  const detail::Kept kept = detail::keep_passing(fitting, words, limits.list(), sure);
  // A capped bedding never fits, but a gland that does not look at it may.
  const bool capped = cable().bedding && !cable().bedding->caps.empty();
  if (kept.count == 0 || (kept.all_sure && limits.sure() && !capped)) return kept.count;
  std::size_t fits = 0;
  for (std::size_t word = 0; word < words; ++word) {
    const std::uint64_t proven = capped ? 0 : surely_passing(sure[word], limits, word);
    drop_unfit(section.first_word + word, fitting[word] & ~proven);
    fits += static_cast<std::size_t>(std::popcount(fitting[word]));
  }
  return fits;
}

/// Looks at the places of a word of fitting_ that are still open.
void Search::State::drop_unfit(std::size_t word, std::uint64_t open) {
  for (; open != 0; open &= open - 1) {
    const auto bit = static_cast<std::size_t>(std::countr_zero(open));
    if (!fits(word * k_word + bit)) fitting_[word] &= ~(std::uint64_t{1} << bit);
  }
}

/// Every section in which a gland can have the verdict that is asked for, with its limits.
template <class Use>
void Search::State::for_each_section(OpenSections& sections, Width width, Use use) {
  const Asked asked = this->asked(width);
  if (asked.none_can) return;
  for (const OpenSection& open : sections.of(asked)) use(*open.section, limits(open, asked));
}

/// Every place that no limit leaves out.
template <class Use>
void Search::State::for_each_passing(OpenSections& sections, Width width, Use use) {
  for_each_section(sections, width, [&](const Section& section, const Limits& limits) {
    for (std::size_t at = section.first_word; at < section.end_word; ++at) {
      std::uint64_t set = passing(index_.taken[at], limits, at - section.first_word);
      for (; set != 0; set &= set - 1) {
        use(at * k_word + static_cast<std::size_t>(std::countr_zero(set)));
      }
    }
  });
}

// ---- one gland ------------------------------------------------------------------------------

Verdict Search::State::verdict_of_diameters(const Gland& gland) const {
  Verdict verdict = of_cable_;
  for (const detail::Finding& finding : detail::DiameterFindings(cable(), gland, barrier(gland))) {
    verdict = worst(verdict, finding.verdict);
  }
  return verdict;
}

Look Search::State::look(std::size_t place) {
  const Gland& gland = *index_.places[place];
  const KindAnswer others = kind_answer(place);
  Look look{.gland = &gland,
            .preference = index_.preference[place],
            .verdict = worst(of_cable_, others.verdict)};
  look.miss.failures = others.failures + (of_cable_ < Verdict::marginal_inside ? 1 : 0);
  look.miss.other_failures = look.miss.failures;
  std::optional<double> margin;
  for (const detail::Finding& finding : detail::DiameterFindings(cable(), gland, barrier(gland))) {
    look.verdict = worst(look.verdict, finding.verdict);
    detail::add_to(look.miss, finding);
    if (finding.counts_for_margin && finding.margin_mm) {
      margin = std::min(margin.value_or(*finding.margin_mm), *finding.margin_mm);
    }
  }
  if (margin) look.margin_mm = *margin;
  return look;
}

// ---- the search -----------------------------------------------------------------------------

/// The first gland of one section that fits, where nothing found before is preferred to it, and
/// those that nothing but the margin tells from it.
void Search::State::take_first(const Section& section, std::vector<std::size_t>& tied) {
  for (std::size_t word = section.first_word; word < section.end_word; ++word) {
    for (std::uint64_t bits = fitting_[word]; bits != 0; bits &= bits - 1) {
      const std::size_t place = word * k_word + static_cast<std::size_t>(std::countr_zero(bits));
      const double preference = index_.preference[place];
      const double best = tied.empty() ? preference : index_.preference[tied.front()];
      if (preference > best) return;
      if (preference < best) tied.clear();
      tied.push_back(place);
    }
  }
}

void Search::State::find_fitting(Found& found) {
  fitting_in_.clear();
  if (of_cable_ != Verdict::fits) return;
  std::vector<std::size_t>& tied = scratch_;
  tied.clear();
  for_each_section(open_, Width::whole, [&](const Section& section, const Limits& limits) {
    const std::size_t fits = mark_fitting(section, limits);
    if (fits == 0) return;
    found.fits += fits;
    fitting_in_.push_back(&section);
    take_first(section, tied);
  });
  if (tied.empty()) return;
  found.verdict = Verdict::fits;
  found.first = index_.places[tied.front()];
  if (tied.size() == 1) return;
  Look best = look(tied.front());
  for (const std::size_t place : tied) {
    const Look next = look(place);
    if (better(next, best)) best = next;
  }
  found.first = best.gland;
}

/// None fits: looks for the best verdict among the glands that can have it, and in those of that
/// verdict for the nearest.
void Search::State::find_nearest(Found& found) {
  std::optional<Look> first;
  std::optional<Look> nearest;
  const auto take = [&](std::size_t place) {
    const Look next = look(place);
    if (!first || better(next, *first)) {
      if (!first || next.verdict > first->verdict) nearest = next;
      first = next;
    }
    if (next.verdict == first->verdict && nearer(next, *nearest)) nearest = next;
  };
  const auto settled = [&](Verdict least) { return first && first->verdict >= least; };
  for_each_passing(open_, Width::middle, take);
  if (!settled(Verdict::not_known)) for_each_passing(open_, Width::touch, take);
  if (!settled(Verdict::marginal_outside)) {
    first.reset();
    // Nothing that fails in more than its diameters is nearer than what does not.
    const auto take_section = [&](const Section& section) {
      const std::size_t start = section.first_word * k_word;
      const bool asked_every_time = barrier(section.sealing);
      for (std::size_t place = start; place < section.end_word * k_word; ++place) {
        if (index_.places[place] == nullptr) return;
        const bool further = !asked_every_time && first &&
                             answer_of_kind(place).failures > nearest->miss.other_failures;
        if (!further) take(place);
      }
    };
    for (const Section* section : suiting_) take_section(*section);
    for (const Section& section : index_.sections) {
      const bool taken = std::find(suiting_.begin(), suiting_.end(), &section) != suiting_.end();
      if (!taken) take_section(section);
    }
  }
  found.verdict = first->verdict;
  if (found.verdict > Verdict::no_fit) found.first = first->gland;
  found.nearest = nearest->gland;
}

/// What every search begins with, for the diameters of now.
void Search::State::begin() {
  constexpr int k_often = 4;
  if (!prepared_) prepare();
  if (!kinds_learnt_ && ++finds_ == k_often) learn_kinds();
  const auto of_cable = detail::find_build_up(cable(), question_.job->construction);
  of_cable_ = of_cable ? of_cable->verdict : Verdict::fits;
}

Found Search::State::find() {
  begin();
  Found found;
  find_fitting(found);
  if (found.fits == 0) find_nearest(found);
  return found;
}

/// A gland whose ranges touch the intervals of all diameters would fit for some true diameters, and
/// be chosen there when it is preferred to the one that was found.
Wavering Search::State::wavering(const Found& found) {
  const auto spread = [](const std::optional<measure::Estimate>& estimate) {
    return estimate && estimate->evidence != measure::Evidence::measured &&
           estimate->expanded_mm > 0.0;
  };
  if (of_cable_ != Verdict::fits || !(spread(cable().sheath_od) || spread(cable().bedding)))
    return {};
  const Gland* const chosen = found.fits > 0 ? found.first : nullptr;
  const double worst_preference = chosen != nullptr ? detail::preference(*chosen, index_.prefer)
                                                    : std::numeric_limits<double>::infinity();
  const auto before = [&](std::size_t a, std::size_t b) {
    if (index_.preference[a] != index_.preference[b])
      return index_.preference[a] < index_.preference[b];
    return index_.places[a]->part < index_.places[b]->part;
  };
  const std::size_t wanted = chosen != nullptr ? 1 : 2;
  std::vector<std::size_t>& touching = scratch_;  // the first of each section
  touching.clear();
  const Asked asked = this->asked(Width::touch);
  for (const OpenSection& open : open_.of(asked)) {
    const double most_preferred = index_.preference[open.section->first_word * k_word];
    if (!(most_preferred < worst_preference)) continue;
    first_touching(*open.section, limits(open, asked), worst_preference, wanted, touching);
  }
  std::sort(touching.begin(), touching.end(), before);
  if (touching.size() < wanted) return {};
  const Gland* const one = index_.places[touching.front()];
  return {one, chosen != nullptr ? chosen : index_.places[touching[1]]};
}

/// Adds the first places of a section, at most `wanted`, that touch and are preferred to
/// `preference`.
void Search::State::first_touching(const Section& section, const Limits& limits, double preference,
                                   std::size_t wanted, std::vector<std::size_t>& touching) {
  // A figure that is not known limits nothing here: whether a gland needs it has to be asked.
  const bool known = cable().sheath_od && (cable().armour == cable::ArmourKind::none ||
                                           (cable().bedding && cable().wire));
  std::size_t added = 0;
  for (std::size_t at = section.first_word; at < section.end_word && added < wanted; ++at) {
    if (!(index_.preference[at * k_word] < preference)) return;
    const std::size_t word = at - section.first_word;
    std::uint64_t set = passing(possible_[at], limits, word);
    const std::uint64_t sure = known ? surely_passing(sure_[at], limits, word) : 0;
    for (; set != 0 && added < wanted; set &= set - 1) {
      const auto bit = static_cast<std::size_t>(std::countr_zero(set));
      const std::size_t place = at * k_word + bit;
      if (!(index_.preference[place] < preference)) return;
      if ((sure >> bit & 1) == 0 && !touches(place)) continue;
      touching.push_back(place);
      ++added;
    }
  }
}

bool Search::State::touches(std::size_t place) {
  if (kind_answer(place).verdict != Verdict::fits) return false;
  const Gland& gland = *index_.places[place];
  const detail::DiameterFindings findings(cable(), gland, barrier(gland));
  return std::none_of(findings.begin(), findings.end(), [](const detail::Finding& finding) {
    return finding.verdict == Verdict::no_fit || finding.verdict == Verdict::not_known;
  });
}

const Gland* Search::State::through_adaptor() {
  const entry::Entry& entry = question_.job->entry;
  if (!entry.thread || !entry.adaptors.empty() || of_cable_ != Verdict::fits) return nullptr;
  std::optional<Look> best;
  for_each_passing(open_by_any_thread_, Width::whole, [&](std::size_t place) {
    const Gland& gland = *index_.places[place];
    if (best && index_.preference[place] > best->preference) return;
    if (gland.entry_thread == *entry.thread || !kind_answer(place).entry_alone) return;
    if (verdict_of_diameters(gland) != Verdict::fits) return;
    const auto helps = [&] {
      job::Job job = *question_.job;
      job.entry.adaptors.push_back({*entry.thread, gland.entry_thread, {}});
      Question with = question_;
      with.job = &job;
      return answer_of(with, gland).verdict == Verdict::fits;
    };
    std::optional<bool>& known = answers_[index_.kind[place]].through_adaptor;
    if (barrier(gland)) {
      if (!helps()) return;
    } else {
      if (!known) known = helps();
      if (!*known) return;
    }
    const Look next = look(place);
    if (!best || better(next, *best)) best = next;
  });
  return best ? best->gland : nullptr;
}

std::vector<std::uint32_t> Search::State::fitting() {
  std::vector<std::uint32_t> list;
  begin();
  Found found;
  find_fitting(found);
  for (const Section* section : fitting_in_) {
    for (std::size_t word = section->first_word; word < section->end_word; ++word) {
      for (std::uint64_t bits = fitting_[word]; bits != 0; bits &= bits - 1) {
        const std::size_t place = word * k_word + static_cast<std::size_t>(std::countr_zero(bits));
        list.push_back(static_cast<std::uint32_t>(index_.places[place] - index_.glands.data()));
      }
    }
  }
  std::sort(list.begin(), list.end());
  return list;
}

// ---- the public face ------------------------------------------------------------------------

Search::Search(const Selector& selector, const Question& question)
    : state_(std::make_unique<State>(selector, question)) {}
Search::~Search() = default;
Found Search::find() { return state_->find(); }
Wavering Search::wavering(const Found& found) { return state_->wavering(found); }
const Gland* Search::through_adaptor() { return state_->through_adaptor(); }
std::vector<std::uint32_t> Search::fitting() { return state_->fitting(); }

Selector::Selector(std::span<const Gland> glands, Prefer prefer)
    : index_(std::make_unique<const detail::GlandIndex>(glands, prefer)) {}
Selector::~Selector() = default;
std::span<const Gland> Selector::glands() const { return index_->glands; }
Prefer Selector::prefer() const { return index_->prefer; }
std::vector<std::uint32_t> Selector::fitting(const Question& question) const {
  return Search(*this, question).fitting();
}

}  // namespace cutback::fit
