#pragma once
// Does this gland fit this end? One check per rule, a verdict, and an order of preference.

#include <compare>
#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/area/demand.hpp"
#include "cutback/entry/thread_check.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/job.hpp"
#include "cutback/verdict.hpp"

namespace cutback::fit {

/// Who asks. A schedule always asks about the entry, a sheet about joint and earth as well; a quick
/// fit asks what its facts speak of.
enum class Purpose { fit, schedule, sheet };

/// What is asked beside what the facts of the end ask by themselves.
struct Asking {
  Purpose purpose = Purpose::fit;
  bool place = false;  ///< another end of the same schedule speaks of its place
};

/// One end, with all that is worked out once for every gland. It borrows the job and the tables.
struct Question {
  const job::Job* job = nullptr;
  const tables::Standards* standards = nullptr;
  std::shared_ptr<const area::Demand> demand;  ///< shared by ends of places that ask alike
  Asking asking;
};

/// @throws InputError when the area's data contradict each other
[[nodiscard]] Question ask(const job::Job& job, const tables::Standards& standards,
                           const Asking& asking = {});

/// One gland against one end. `gland` points into the list that was given and must outlive this.
struct GlandFit {
  const gland::Gland* gland = nullptr;
  Verdict verdict = Verdict::not_known;  ///< the worst of its checks
  std::optional<double> margin_mm;       ///< the smallest margin of the checks that count for it
  std::vector<Check> checks;
  std::optional<entry::Adaptor> adaptor;  ///< needed between gland and entry
  bool barrier = false;                   ///< it is made off with compound round the cores
  /// The armour does not carry the fault: no other gland helps, the end needs a decision.
  bool armour_too_thin = false;
  /// The thread in the hole, where hole and wall are known or the entry is flameproof.
  std::optional<entry::ThreadFit> thread;

  [[nodiscard]] const Check* find(CheckName name) const;
  /// The check that decides: the worst, and among those the one with the smallest margin.
  [[nodiscard]] const Check& deciding() const;
};

/// Every check that there is, in the order in which they are printed.
[[nodiscard]] std::vector<CheckName> check_names();

/// Every check that applies to this gland and end.
[[nodiscard]] GlandFit check_gland(const Question& question, const gland::Gland& gland);

/// How a gland is made off at an end, as check_gland finds it.
struct MadeOff {
  bool barrier = false;                   ///< with compound round the cores
  std::optional<entry::Adaptor> adaptor;  ///< that stands between gland and entry
};
[[nodiscard]] MadeOff made_off(const Question& question, const gland::Gland& gland);

/// The margins [mm] that the results of a schedule give; absent where a check does not apply.
struct Margins {
  std::optional<double> outer_mm;
  std::optional<double> inner_mm;
  std::optional<double> armour_mm;
};
/// As check_gland finds them.
[[nodiscard]] Margins margins_of(const Question& question, const gland::Gland& gland);

/// What decides between glands of the same verdict, after which the larger smallest margin and
/// then the part code by bytes decide.
enum class Prefer { price, margin, stock };

/// Every gland of the list, best first.
[[nodiscard]] std::vector<GlandFit> fit_all(const Question& question,
                                            std::span<const gland::Gland> glands, Prefer prefer);

/// Puts fits into that order.
void rank(std::vector<GlandFit>& fits, Prefer prefer);

/// What would help where nothing fits. Lines of plain words.
struct Advice {
  const GlandFit* nearest = nullptr;  ///< the gland that misses by the least
  std::string nearest_says;           ///< which gland, and by how much it misses
  std::string measure_says;           ///< the next measurement worth taking; may be empty
  std::string order_says;  ///< the size to order; empty where the readings contradict each other
};

/// Where none fits: of the glands with the best verdict the one that misses by the least, the first
/// of them in order. A verdict that a better measurement could turn is nearer than any that is
/// wholly outside.
/// @param ranked  as fit_all returns it; not empty
[[nodiscard]] const GlandFit& nearest_of(std::span<const GlandFit> ranked);

/// @param nearest  of a list without a gland that fits; it must outlive the advice
[[nodiscard]] Advice advise(const job::Job& job, const GlandFit& nearest);
/// The same for nearest_of(ranked); without a gland only the size to order is said.
[[nodiscard]] Advice advise(const job::Job& job, std::span<const GlandFit> ranked);

/// How far a gland is from fitting, for an order: what fails besides a diameter, how many checks
/// fail, and the largest miss [mm].
struct Miss {
  int other_failures = 0;
  int failures = 0;
  double largest_mm = 0.0;
  /// @param margin_mm  of a check of a diameter; absent where what fails is no diameter
  void add(Verdict verdict, std::optional<double> margin_mm);
  friend auto operator<=>(const Miss&, const Miss&) = default;
};
[[nodiscard]] Miss miss_of(const GlandFit& fit);

/// By how much and in which direction a failing check misses: "outer seal 0.4 mm too small".
[[nodiscard]] std::string miss_text(const Check& check);
/// The same of several, each sentence once: two checks may want the same figure.
[[nodiscard]] std::string miss_text(std::span<const Check* const> failing);

}  // namespace cutback::fit
