#pragma once
// What is taken along for one end beside the gland itself.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/area/bundle.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit {

/// One part, or what fills the chamber.
struct Need {
  std::string name;  ///< `locknut`, `reducer M25 to M20`; behind an adaptor `locknut M25`
  std::string note;  ///< `4 mm`, `12.3 cm3: 2 packs of 10 cm3`; may be empty
};

/// `reducer` where the hole is the larger of the two, else `adaptor`, with both threads.
[[nodiscard]] std::string adaptor_name(const entry::Thread& hole, const entry::Thread& gland);

/// The compound that the gland's chamber takes, where cores and chamber are known.
[[nodiscard]] std::optional<area::Compound> compound_of(const Question& question,
                                                        const GlandFit& fit);

/// Packs that hold a volume, both > 0 [cm3].
[[nodiscard]] int packs_of(double volume_cm3, double pack_cm3);

/// `12.3 cm3 round the cores, 2 packs of 10 cm3`; empty where the volume is not known.
[[nodiscard]] std::string compound_words(const std::optional<area::Compound>& compound,
                                         const std::optional<double>& pack_cm3);

/// Adaptor, the parts at the entry that are ordered, the shroud of an armoured cable where one is
/// used, the compound: in the order in which they go on.
[[nodiscard]] std::vector<Need> needs_of(const Question& question, const GlandFit& fit);

/// A gland that fits the end through an adaptor which is not at hand.
struct Through {
  GlandFit fit;            ///< through that adaptor
  std::string adaptor;     ///< its name
  std::vector<Need> with;  ///< what else goes along
  /// What of the adaptor is not known and decides: its length, its bore, its marking.
  std::vector<Lack> lacks;
};

/// Where none of `ranked` fits and the entry's thread is known: the first of them that fits through
/// one adaptor from the entry's thread to its own, and lacks nothing but figures of the adaptor.
[[nodiscard]] std::optional<Through> nearest_through(const Question& question,
                                                     std::span<const GlandFit> ranked);

}  // namespace cutback::fit
