#include "cutback/fit/select.hpp"

#include <algorithm>

#include "core/fit/prepared_list.hpp"
#include "core/fit/search.hpp"

namespace cutback::fit {

using detail::DiameterSearch;
using detail::Look;
using detail::SparseSet;
using gland::Gland;

class Search::State {
 public:
  State(const Selector& selector, const Question& question, const AskKeys& asks)
      : index_(selector.list().index()),
        question_(question),
        open_(selector.list().open(question, asks)) {}

  Found find();
  Wavering wavering(const Found& found);
  const Gland* through_adaptor();
  GlandFit why_not(const Gland& gland);
  std::vector<std::uint32_t> fitting();

 private:
  [[nodiscard]] DiameterSearch search() const { return {index_, *open_, question_}; }
  void find_nearest(DiameterSearch& search, Found& found);

  const detail::GlandIndex& index_;
  const Question& question_;
  std::shared_ptr<const detail::OpenGlands> open_;
  SparseSet found_;  // kept for its storage
};

Found Search::State::find() {
  DiameterSearch search = this->search();
  Found found;
  search.glands(Verdict::fits, found_);
  if (found_.empty()) {
    find_nearest(search, found);
  } else {
    found.fits = found_.count();
    found.verdict = Verdict::fits;
    found.first = index_.places[search.first_of(found_)];
  }
  return found;
}

/// None fits: looks for the best verdict that any gland has, and in those of that verdict for the
/// nearest.
void Search::State::find_nearest(DiameterSearch& search, Found& found) {
  found.verdict = Verdict::no_fit;
  for (const Verdict verdict :
       {Verdict::marginal_inside, Verdict::not_known, Verdict::marginal_outside}) {
    search.glands(verdict, found_);
    if (found_.empty()) continue;
    found.verdict = verdict;
    if (verdict != Verdict::not_known) found.first = index_.places[search.first_of(found_)];
    break;
  }
  // Nothing that fails in more than its diameters is nearer than what does not.
  std::optional<Look> nearest;
  const std::vector<SparseSet>& by_failures = open_->by_failures();
  for (const SparseSet& tier : by_failures) {
    SparseSet alike;
    if (found.verdict == Verdict::no_fit) {
      alike = tier;
    } else {
      detail::intersect(found_, tier, alike);
    }
    if (alike.empty()) continue;
    const Look next = search.nearest_of(alike, found.verdict);
    const bool nearer =
        !nearest || (next.miss != nearest->miss ? next.miss < nearest->miss
                                                : comes_before(next.standing, nearest->standing));
    if (nearer) nearest = next;
    const auto failures = static_cast<int>(&tier - by_failures.data());
    if (nearest->miss.other_failures <= failures) break;
  }
  found.nearest = nearest->gland;
  if (found.verdict == Verdict::not_known) found.first = found.nearest;
}

/// A gland whose ranges touch the intervals of all diameters would fit for some true diameters, and
/// be chosen there when it is preferred to the one that was found.
Wavering Search::State::wavering(const Found& found) {
  const cable::Cable& cable = question_.job->cable;
  const auto spread = [](const std::optional<measure::Estimate>& estimate) {
    return estimate && estimate->evidence != measure::Evidence::measured &&
           estimate->expanded_mm > 0.0;
  };
  if (!spread(cable.sheath_od) && !spread(cable.bedding)) return {};
  const Gland* const chosen = found.fits > 0 ? found.first : nullptr;
  const double worst_preference = chosen != nullptr ? detail::preference(*chosen, index_.prefer)
                                                    : std::numeric_limits<double>::infinity();
  DiameterSearch search = this->search();
  search.touching(worst_preference, found_);
  const auto before = [&](std::size_t a, std::size_t b) {
    if (index_.preference[a] != index_.preference[b]) {
      return index_.preference[a] < index_.preference[b];
    }
    return index_.places[a]->part < index_.places[b]->part;
  };
  constexpr std::size_t k_none = static_cast<std::size_t>(-1);
  std::size_t first = k_none;
  std::size_t second = k_none;
  for (std::size_t i = 0; i < found_.words(); ++i) {
    found_.for_each_in(i, [&](std::size_t place) {
      if (!(index_.preference[place] < worst_preference)) return false;
      if (first == k_none || before(place, first)) {
        second = first;
        first = place;
      } else if (second == k_none || before(place, second)) {
        second = place;
      } else {
        return false;
      }
      return true;
    });
  }
  if (first == k_none || (chosen == nullptr && second == k_none)) return {};
  return {index_.places[first], chosen != nullptr ? chosen : index_.places[second]};
}

const Gland* Search::State::through_adaptor() {
  const entry::Entry& entry = question_.job->entry;
  if (!entry.thread || !entry.adaptors.empty()) return nullptr;
  DiameterSearch search = this->search();
  search.glands_through_adaptor(found_);
  return found_.empty() ? nullptr : index_.places[search.first_of(found_)];
}

GlandFit Search::State::why_not(const Gland& gland) {
  const std::size_t place = index_.place(gland);
  const detail::Case at(question_, gland);
  GlandFit fit;
  fit.gland = &gland;
  fit.barrier = at.barrier;
  fit.verdict = Verdict::fits;
  auto sets = open_->rules().begin();
  for (const detail::Rule& rule : detail::rules()) {
    std::optional<Verdict> found = detail::alone(rule, question_);
    if (detail::is_of_gland(rule)) {
      if (const auto of_gland = (*sets++)->find(place, at.cable())) {
        found = found ? worst(*found, of_gland->verdict) : of_gland->verdict;
      }
    }
    if (!found) continue;
    fit.verdict = worst(fit.verdict, *found);
    if (*found == Verdict::fits) {
      fit.checks.push_back({.name = rule.name, .verdict = *found});
    } else if (auto check = detail::say(rule, at, fit)) {
      fit.checks.push_back(std::move(*check));
    }
  }
  return fit;
}

std::vector<std::uint32_t> Search::State::fitting() {
  std::vector<std::uint32_t> list;
  search().glands(Verdict::fits, found_);
  found_.for_each([&](std::size_t place) {
    list.push_back(static_cast<std::uint32_t>(index_.places[place] - index_.glands.data()));
  });
  std::sort(list.begin(), list.end());
  return list;
}

Search::Search(const Selector& selector, const Question& question, const AskKeys& asks)
    : state_(std::make_unique<State>(selector, question, asks)) {}
Search::~Search() = default;
Found Search::find() { return state_->find(); }
Wavering Search::wavering(const Found& found) { return state_->wavering(found); }
const Gland* Search::through_adaptor() { return state_->through_adaptor(); }
GlandFit Search::why_not(const Gland& gland) { return state_->why_not(gland); }
std::vector<std::uint32_t> Search::fitting() { return state_->fitting(); }

Selector::Selector(std::span<const Gland> glands, Prefer prefer)
    : list_(std::make_unique<detail::PreparedList>(glands, prefer)) {}
Selector::~Selector() = default;
std::span<const Gland> Selector::glands() const { return list_->index().glands; }
Prefer Selector::prefer() const { return list_->index().prefer; }
std::vector<std::uint32_t> Selector::fitting(const Question& question) const {
  return Search(*this, question).fitting();
}

}  // namespace cutback::fit
