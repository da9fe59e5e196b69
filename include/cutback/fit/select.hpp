#pragma once
// The choice for one end out of a long gland list, without a look at every gland.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "cutback/fit/fit.hpp"

namespace cutback::fit {

namespace detail {
class PreparedList;
}  // namespace detail

/// What a question says to each check, as text, in the order of the table of checks: questions with
/// the same text get the same answers from it, whatever their diameters. Empty: not known.
using AskKeys = std::vector<std::string>;

/// A gland list prepared for many searches, by threads that each have a Search of their own. What
/// was asked of the list is remembered.
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
  [[nodiscard]] detail::PreparedList& list() const { return *list_; }

 private:
  std::unique_ptr<detail::PreparedList> list_;
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

/// One question put to a gland list for many ends that differ in nothing but their diameters. The
/// answers are those of check_gland, which goes through the same table of checks.
class Search {
 public:
  /// @param question  borrowed, as all that it borrows. Between two calls of find() the diameters
  /// of its job may change, and nothing else.
  /// @param asks      what is the same for other questions need not be worked out again
  Search(const Selector& selector, const Question& question, const AskKeys& asks = {});
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

  /// As check_gland, but what fits has no words: of a gland of the list.
  [[nodiscard]] GlandFit why_not(const gland::Gland& gland);

  /// Every gland whose verdict is `fits`, by their places in the list, ascending.
  [[nodiscard]] std::vector<std::uint32_t> fitting();

 private:
  class State;
  std::unique_ptr<State> state_;
};

}  // namespace cutback::fit
