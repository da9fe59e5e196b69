#pragma once
// One end as a user gives it, before anything is worked out.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "cutback/area/area.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/cable/construction.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/fit/reads.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/measure/reading.hpp"
#include "cutback/words.hpp"

namespace cutback::job {

/// One core's way to its terminal: a length, or coordinates from the entry on the inside face.
struct CoreInput {
  std::optional<std::string> core;
  std::optional<double> reach_mm;
  std::optional<double> x_mm;
  std::optional<double> y_mm;
  std::optional<double> z_mm;
  std::optional<double> strip_mm;
  std::optional<bool> spare;  ///< it reaches the furthest terminal
};

/// Everything that can be said about one end, each value as given: a word is the value that it
/// stands for, readings are their places. The keys of a job file, the
/// columns of a schedule and the options of the command line all fill this one record, by the
/// table that fields() returns. An absent member was not given.
struct JobInput {
  using Text = std::optional<std::string>;
  using Number = std::optional<double>;

  using YesNo = std::optional<bool>;

  Text job, tag, end, gland, asked;
  std::optional<area::RuleSet> rules;
  // cable
  std::optional<measure::Readings> sheath_od_mm, bedding_mm, armour_mm;
  std::optional<measure::Evidence> evidence;
  std::optional<cable::ArmourKind> armour;
  std::optional<cable::ArmourMaterial> armour_material;
  std::optional<cable::Insulation> insulation;
  std::optional<cable::Conductor> conductor;
  std::optional<cable::Voltage> voltage;
  std::optional<cable::Pattern> pattern;
  std::optional<cable::BeddingMade> bedding_made;
  std::optional<cable::Fillers> fillers;
  std::optional<cable::Supply> supply;
  YesNo circular, compact;
  Number cores, csa_mm2, earth_csa_mm2, step_mm, mpe_mm, zero_mm, ovality_mm, od_allow_mm,
      bedding_allow_mm, armour_allow_mm, length_m;
  // entry
  std::optional<entry::Hole> hole;
  Text entry, material, adaptor, adaptor_material;
  Number hole_dia_mm, wall_mm, washer_mm, tag_mm, serrated_mm, locknut_mm, chamfer_mm, undercut_mm,
      adaptor_mm, adaptor_thread_mm, adaptor_bore_mm, compound_pack_cm3;
  // area
  std::optional<area::Protection> protection;
  std::optional<area::Zone> zone;
  std::optional<area::Level> level;
  std::optional<area::GasGroup> gas_group;
  std::optional<area::DustGroup> dust_group;
  Text ip;
  YesNo ignition_source, bare_live_parts;
  Number volume_cm3, ambient_min_c, ambient_max_c, entry_temp_c, branch_temp_c, cable_max_c;
  // tails
  Number reach_mm, slack_mm, strip_mm, bend_radius_mm, armour_stop_mm;
  std::vector<CoreInput> core_list;
  // fault
  Text device;
  Number current_ka, time_s, loop_ohm, u0_v;
};

enum class FieldKind {
  number,    ///< a number within [min, max]
  whole,     ///< a whole number within [min, max]
  words,     ///< one of its words
  yes_no,    ///< `yes` or `no`
  readings,  ///< readings in the notation of measure::parse_places
  text,      ///< any text
};

/// What a value goes into. Ends are told apart, and the answers that they share remembered, by
/// these marks alone: a field without one decides nothing.
struct Feeds {
  enum class Into {
    unmarked,  ///< nobody has said
    nothing,   ///< a name
    figure,    ///< a diameter of the cable
    figures,   ///< how the figures of the diameters are read
    route,     ///< the tails: they move marks
    rest,      ///< anything else
  };
  Into into = Into::unmarked;
  /// Checks that read it otherwise than through the diameters.
  fit::Reads checks = fit::Reads::none();
};

/// One key: where it stands, how it is written, and where it goes.
template <class Record>
struct FieldOf {
  /// A member of an enumeration, or a bool, is `word<&Record::member>()`.
  using Member = std::variant<std::optional<double> Record::*, std::optional<std::string> Record::*,
                              std::optional<measure::Readings> Record::*, WordMember<Record>>;
  std::string_view section;  ///< of the job file; empty at the top
  std::string_view key;      ///< job file key and schedule column
  std::string_view option;   ///< of the command line; empty when it has none
  FieldKind kind;
  Member member;
  double min = 0.0;  ///< number, whole: closed limits
  double max = 0.0;
  /// number: the unit; text and readings: the form; words in a member of text: the list, separated
  /// by spaces. Blank where the member itself knows its words.
  std::string_view allowed;
  std::string_view help;  ///< one line for --help
  Feeds feeds = {};       ///< what depends on it
};
using Field = FieldOf<JobInput>;
using CoreField = FieldOf<CoreInput>;

[[nodiscard]] std::span<const Field> fields();
[[nodiscard]] std::span<const CoreField> core_fields();

/// The row of a key. @throws InternalError for a key that is not there
[[nodiscard]] const Field& field_named(std::string_view key);

}  // namespace cutback::job
