#pragma once
// What a place and its enclosure ask of a gland, worked out once for every gland.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/area/area.hpp"
#include "cutback/area/ip.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/tables/standards.hpp"
#include "cutback/verdict.hpp"

namespace cutback::area {

/// How the gland must seal: not asked (no flameproof entry), on the sheath or bedding, or round
/// the cores. Later is stricter.
enum class SealingDemand { none, compression, barrier };

[[nodiscard]] constexpr std::string_view to_string(SealingDemand sealing) {
  switch (sealing) {
    case SealingDemand::none:
      return "none";
    case SealingDemand::compression:
      return "compression";
    case SealingDemand::barrier:
      return "barrier";
  }
  return "";
}

/// One question of the rules for a flameproof entry, as it was answered.
struct Answer {
  std::string question;
  bool yes = false;
  std::string from;    ///< `given`, `not known: the stricter side`, or what it was taken from
  std::string source;  ///< document, edition and clause
};

/// A fact of the place that nobody gave.
struct NotGiven {
  std::string says;      ///< a sentence
  std::string fact;      ///< in a few words
  std::string_view key;  ///< of the field
  [[nodiscard]] bool any() const { return !says.empty(); }
};

/// A marking that serves, and how surely.
template <class Mark>
struct Serves {
  Mark mark;
  Verdict verdict = Verdict::fits;  ///< fits, or not_known with the reason in `note`
  std::string note;
  std::string source;
};

/// What one property of the gland must be: any marking of `serves`; another one does not serve.
template <class Mark>
struct MarkDemand {
  std::string needed;  ///< in words: `level Gb`, `gas group IIB`, `an entry of type d`
  std::string source;
  std::string otherwise;  ///< why no other marking serves; may be empty
  /// The fact of the place without which no marking can be judged; empty where it is given.
  NotGiven not_given;
  std::vector<Serves<Mark>> serves;
};

/// Whether the enclosure itself serves the place.
struct EnclosureFinding {
  Verdict verdict = Verdict::fits;
  std::string says;
  std::string source;
};

/// One demand on the ingress protection: the first of `rungs` that the gland meets counts, none
/// is no_fit.
struct IngressDemand {
  struct Rung {
    IpCode code;  ///< XX is always met
    Verdict verdict = Verdict::fits;
    std::string note;
  };
  std::string needed;  ///< in words
  std::string source;
  NotGiven not_given;  ///< as of a MarkDemand
  std::vector<Rung> rungs;
};

/// The temperatures that the gland must stand, and whether the cable stands them [degC].
struct TemperatureDemand {
  std::optional<double> min_degc;
  std::optional<double> max_degc;
  /// What the entry may come to where its temperature is not given: a gland for less is not known.
  std::optional<double> entry_up_to_degc;
  Verdict cable = Verdict::fits;
  std::string cable_says;        ///< empty when nothing is to be said of the cable
  std::vector<fit::Lack> lacks;  ///< without which the cable is not proven
  std::string source;
};

/// Everything that is asked of the gland. Empty lists and absent members ask for nothing.
struct Demand {
  SealingDemand sealing = SealingDemand::none;
  /// Zone 0: no sealing makes an ordinary flameproof entry fit.
  bool refused = false;
  /// The enclosure's type is not given: what is demanded of a flameproof entry may not be.
  bool type_not_given = false;
  /// Compression is allowed by rules that are known from memory only: check against the standard.
  bool allowed_from_memory = false;
  std::vector<Answer> path;               ///< the questions in the order in which they were asked
  std::vector<std::string> would_change;  ///< facts not known that could allow compression
  std::string says;                       ///< one sentence about the sealing
  std::string source;

  Hazard hazard = Hazard::none;
  std::optional<MarkDemand<Protection>> protection;
  std::optional<EnclosureFinding> enclosure;
  std::optional<MarkDemand<Level>> level;
  std::optional<MarkDemand<GasMark>> gas_group;
  std::optional<MarkDemand<DustGroup>> dust_group;
  std::vector<IngressDemand> ingress;
  std::vector<WaterRule> water_rules;
  std::optional<TemperatureDemand> temperature;
};

/// What the area asks of a gland for this cable. A fact that is not known falls to the stricter
/// side; a rule known only from memory makes a demand stricter, and where it would allow something
/// the verdict is not_known. `strict` demands a barrier where either edition does.
/// @param asked  the place is asked about though nothing may be said of it, as in a schedule of
///               which another end speaks of its place
/// @throws InputError with every contradiction of the area's data
/// @source IEC 60079-14:2007 10.4.2; IEC 60079-14:2013 10.6.2, Table 1, Table 10; and the tables
///         named in data/standards/
[[nodiscard]] Demand make_demand(const Area& area, const cable::Cable& cable,
                                 const tables::Standards& standards, bool asked = false);

}  // namespace cutback::area
