#pragma once
// The choice for one end out of a long gland list, without a look at every gland.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "cutback/fit/fit.hpp"

namespace cutback::fit {

namespace detail {
struct GlandIndex;
}  // namespace detail

/// A gland list prepared for many searches, by threads that each have a Search of their own.
class Selector {
 public:
  /// @param glands  borrowed: they must outlive this object and all that is found. Not empty.
  Selector(std::span<const gland::Gland> glands, Prefer prefer);
  Selector(const Selector&) = delete;
  Selector& operator=(const Selector&) = delete;
  ~Selector();

  [[nodiscard]] std::span<const gland::Gland> glands() const;
  [[nodiscard]] Prefer prefer() const;
  /// Every gland whose verdict is `fits`, by their places in the list, ascending.
  [[nodiscard]] std::vector<std::uint32_t> fitting(const Question& question) const;
  [[nodiscard]] const detail::GlandIndex& index() const { return *index_; }

 private:
  std::unique_ptr<const detail::GlandIndex> index_;
};

/// What fit_all would put first, and how many fit.
struct Found {
  const gland::Gland* first = nullptr;  ///< borrowed from the list; null where all are `no_fit`
  Verdict verdict = Verdict::no_fit;    ///< of the first
  std::size_t fits = 0;                 ///< glands whose verdict is `fits`
  /// Where none fits: what nearest_of says of the whole list in order.
  const gland::Gland* nearest = nullptr;
};

/// Two glands between which the choice wavers: each would be chosen for some true diameters within
/// the spread of the figures.
struct Wavering {
  const gland::Gland* one = nullptr;
  const gland::Gland* other = nullptr;
  [[nodiscard]] explicit operator bool() const { return one != nullptr; }
};

/// One question put to a gland list for many ends that differ in nothing but their diameters. Sets
/// of glands only leave out what cannot fit by a diameter, the kind of armour or the entry thread;
/// what they leave is decided by the checks of check_gland, as everywhere.
class Search {
 public:
  /// @param question  borrowed, as all that it borrows. Between two calls of find() the diameters
  /// of its job may change, and nothing else.
  Search(const Selector& selector, const Question& question);
  Search(const Search&) = delete;
  Search& operator=(const Search&) = delete;
  ~Search();

  [[nodiscard]] Found find();

  /// For diameters that are not measured: whether another gland than the one found would be chosen
  /// somewhere within their spread. Nothing of it where every diameter is measured.
  [[nodiscard]] Wavering wavering(const Found& found);

  /// Where none fits and the entry's thread is known: the first gland that would fit through an
  /// adaptor from its own thread to the entry's; else null.
  [[nodiscard]] const gland::Gland* through_adaptor();

  /// Every gland whose verdict is `fits`, by their places in the list, ascending.
  [[nodiscard]] std::vector<std::uint32_t> fitting();

 private:
  class State;
  std::unique_ptr<State> state_;
};

/// Puts fits into the order of fit_all.
void rank(std::vector<GlandFit>& fits, Prefer prefer);

}  // namespace cutback::fit
