#include <array>

#include "cutback/earth/device.hpp"
#include "cutback/error.hpp"
#include "cutback/job/input.hpp"

namespace cutback::job {
namespace {

using In = JobInput;
constexpr double k_mm = 100000.0;  // nothing inside an enclosure is 100 m away

constexpr std::string_view k_reading_form =
    "readings in mm such as 15.2, 14.9+15.1 (one place, crossed) or 14.9+15.1,15.0+15.2";

using enum fit::CheckName;
using Into = Feeds::Into;
constexpr Feeds k_name{Into::nothing};
constexpr Feeds k_figure{Into::figure};
constexpr Feeds k_figures{Into::figures};
constexpr Feeds k_route{Into::route};
constexpr Feeds k_armour{Into::rest,
                         {inner_seal, bore, armour, build_up, entry, bend, sealing, earth, fault}};
constexpr Feeds k_layers{Into::rest, {build_up, entry, bend, sealing, fault}};
constexpr Feeds k_cores{Into::rest, {build_up, entry, bend, sealing, earth, fault}};
constexpr Feeds k_armour_metal{Into::rest, {metals, earth, fault}};
constexpr Feeds k_supply{Into::rest, {earth}};
constexpr Feeds k_metal{Into::rest, {metals, earth}};
constexpr Feeds k_entry{Into::rest, {entry, thread, joint, metals, earth}};
// What a place asks decides whether its gland is made off as a barrier, and whether the entry is a
// flameproof joint.
constexpr Feeds k_place{Into::rest,
                        {inner_seal, bore, entry, thread, joint, protection, level, group, ingress,
                         temperature, sealing, metals}};
constexpr Feeds k_shape{Into::rest,
                        {inner_seal, bore, build_up, entry, thread, joint, protection, level, group,
                         ingress, temperature, sealing, metals}};
constexpr Feeds k_asked{Into::rest,
                        {inner_seal, bore, entry, thread, joint, protection, level, group, ingress,
                         temperature, sealing, metals, earth, fault}};
constexpr Feeds k_ingress{Into::rest, {thread, joint, ingress}};
constexpr Feeds k_temperature{Into::rest, {temperature}};
constexpr Feeds k_fault{Into::rest, {fault}};

constexpr std::array k_fields{
    Field{"", "job", "--job-name", FieldKind::text, &In::job, 0, 0, "text", "Name of the job",
          k_name},
    Field{"", "tag", "--cable-tag", FieldKind::text, &In::tag, 0, 0, "text", "Tag of the cable",
          k_name},
    Field{"", "end", "--end-name", FieldKind::text, &In::end, 0, 0, "text",
          "Which end: motor, panel ...", k_name},
    Field{"", "gland", "", FieldKind::text, &In::gland, 0, 0, "text",
          "Gland to make off, by its part code; of jobs alone", k_name},
    Field{"", "asked", "--asked", FieldKind::text, &In::asked, 0, 0, "text",
          "What is asked although nothing is told of it: joint, place, earth, fault", k_asked},
    Field{"", "rules", "--rules", FieldKind::words, word<&In::rules>(), 0, 0, "",
          "Rule set for hazardous areas (default strict); the edition of 2024 is not modelled",
          k_place},

    Field{"cable", "sheath_od_mm", "--od", FieldKind::readings, &In::sheath_od_mm, 0, 0,
          k_reading_form, "Diameter over the outer sheath", k_figure},
    Field{"cable", "bedding_mm", "--bedding", FieldKind::readings, &In::bedding_mm, 0, 0,
          k_reading_form, "Diameter under the armour", k_figure},
    Field{"cable", "armour_mm", "--wire", FieldKind::readings, &In::armour_mm, 0, 0, k_reading_form,
          "Diameter of one armour wire", k_figure},
    Field{"cable", "armour", "--armour", FieldKind::words, word<&In::armour>(), 0, 0, "",
          "Kind of armour (default wire)", k_armour},
    Field{"cable", "evidence", "--evidence", FieldKind::words, word<&In::evidence>(), 0, 0, "",
          "Where the diameters come from", k_figures},
    Field{"cable", "step_mm", "--step", FieldKind::number, &In::step_mm, 0.001, 1, "mm",
          "Step of the caliper (default 0.05)", k_figures},
    Field{"cable", "mpe_mm", "--mpe", FieldKind::number, &In::mpe_mm, 0, 5, "mm",
          "Permissible error of the caliper (default by its step)", k_figures},
    Field{"cable", "zero_mm", "--zero", FieldKind::number, &In::zero_mm, -5, 5, "mm",
          "What the caliper shows with its jaws closed (default 0)", k_figures},
    Field{"cable", "ovality_mm", "--ovality", FieldKind::number, &In::ovality_mm, 0.01, 50, "mm",
          "Largest less smallest diameter, where it is known", k_figures},
    Field{"cable", "od_allow_mm", "--od-allow", FieldKind::number, &In::od_allow_mm, 0, 50, "mm",
          "Allowance on a datasheet sheath diameter (default 2)", k_figures},
    Field{"cable", "bedding_allow_mm", "--bedding-allow", FieldKind::number, &In::bedding_allow_mm,
          0, 50, "mm", "Allowance on a datasheet bedding diameter (default 1)", k_figures},
    Field{"cable", "armour_allow_mm", "--wire-allow", FieldKind::number, &In::armour_allow_mm, 0, 5,
          "mm", "Allowance on a datasheet wire that is not standard (default 0.05)", k_figures},
    Field{"cable", "cores", "--cores", FieldKind::whole, &In::cores, 1, 61, "cores",
          "Number of cores", k_cores},
    Field{"cable", "csa_mm2", "--csa", FieldKind::number, &In::csa_mm2, 0.5, 1200, "mm2",
          "Conductor size of a core", k_layers},
    Field{"cable", "earth_csa_mm2", "--earth-csa", FieldKind::number, &In::earth_csa_mm2, 0.5, 1200,
          "mm2", "Conductor size of an earth core of another size", k_layers},
    Field{"cable", "insulation", "--insulation", FieldKind::words, word<&In::insulation>(), 0, 0,
          "", "Insulation of the cores", k_layers},
    Field{"cable", "conductor", "--conductor", FieldKind::words, word<&In::conductor>(), 0, 0, "",
          "Form of the conductors", k_layers},
    Field{"cable", "voltage", "--voltage", FieldKind::words, word<&In::voltage>(), 0, 0, "",
          "Rated voltage in kV (default 0.6/1)", k_layers},
    Field{"cable", "pattern", "--pattern", FieldKind::words, word<&In::pattern>(), 0, 0, "",
          "Layer rules of the construction (default british)", k_layers},
    Field{"cable", "length_m", "--length", FieldKind::number, &In::length_m, 0, 100000, "m",
          "Length of the cable", k_place},
    Field{"cable", "circular", "--circular", FieldKind::yes_no, word<&In::circular>(), 0, 0, "",
          "Whether the cable is circular", k_shape},
    Field{"cable", "compact", "--compact", FieldKind::yes_no, word<&In::compact>(), 0, 0, "",
          "Whether it is compact, its interstices filled", k_place},
    Field{"cable", "bedding_made", "--bedding-made", FieldKind::words, word<&In::bedding_made>(), 0,
          0, "", "How the bedding is made", k_place},
    Field{"cable", "armour_material", "--armour-material", FieldKind::words,
          word<&In::armour_material>(), 0, 0, "", "What the armour is made of", k_armour_metal},
    Field{"cable", "supply", "--supply", FieldKind::words, word<&In::supply>(), 0, 0, "",
          "Kind of current; a single core asks for it", k_supply},
    Field{"cable", "fillers", "--fillers", FieldKind::words, word<&In::fillers>(), 0, 0, "",
          "Fillers between the cores", k_place},

    Field{"entry", "entry", "--entry", FieldKind::text, &In::entry, 0, 0,
          "a thread such as M20, M20x1.5, NPT 1/2 or PG 13.5, or to-suit",
          "Thread or size of the entry; to-suit: the hole is made for the gland", k_entry},
    Field{"entry", "hole", "--hole", FieldKind::words, word<&In::hole>(), 0, 0, "", "Kind of hole",
          k_entry},
    Field{"entry", "hole_dia_mm", "--hole-dia", FieldKind::number, &In::hole_dia_mm, 1, 300, "mm",
          "Diameter of the clearance hole", k_entry},
    Field{"entry", "wall_mm", "--wall", FieldKind::number, &In::wall_mm, 0.1, 200, "mm",
          "Thickness of the wall, or depth of the tapped hole", k_entry},
    Field{"entry", "washer_mm", "--washer", FieldKind::number, &In::washer_mm, 0, 20, "mm",
          "Sealing washer between shoulder and wall", k_entry},
    Field{"entry", "tag_mm", "--tag", FieldKind::number, &In::tag_mm, 0, 20, "mm", "Earth tag",
          k_entry},
    Field{"entry", "serrated_mm", "--serrated", FieldKind::number, &In::serrated_mm, 0, 20, "mm",
          "Serrated washer under the locknut", k_entry},
    Field{"entry", "locknut_mm", "--locknut", FieldKind::number, &In::locknut_mm, 0, 50, "mm",
          "Locknut", k_entry},
    Field{"entry", "chamfer_mm", "--chamfer", FieldKind::number, &In::chamfer_mm, 0, 20, "mm",
          "Chamfer of the tapped hole", k_entry},
    Field{"entry", "undercut_mm", "--undercut", FieldKind::number, &In::undercut_mm, 0, 20, "mm",
          "Undercut of the gland's thread", k_entry},
    Field{"entry", "material", "--material", FieldKind::words, &In::material, 0, 0,
          "steel galvanised-steel stainless-steel aluminium brass cast-iron polymer",
          "What the enclosure is made of", k_metal},
    Field{"entry", "adaptor", "--adaptor", FieldKind::text, &In::adaptor, 0, 0,
          "two threads such as M25:M20, one of them the entry's; M25:M20:db with its protection; "
          "several with semicolons between them",
          "Thread adaptors at hand, their two threads in either order; at most one is used",
          k_entry},

    Field{"entry", "adaptor_mm", "--adaptor-length", FieldKind::number, &In::adaptor_mm, 0, 200,
          "mm", "Length of the adaptor between its washer and the gland's, without them", k_entry},
    Field{"entry", "adaptor_thread_mm", "--adaptor-thread", FieldKind::number,
          &In::adaptor_thread_mm, 0, 200, "mm", "Length of the adaptor's own male thread", k_entry},
    Field{"entry", "adaptor_bore_mm", "--adaptor-bore", FieldKind::number, &In::adaptor_bore_mm, 0,
          300, "mm", "Smallest bore of the adaptor", k_entry},
    Field{"entry", "adaptor_material", "--adaptor-material", FieldKind::words,
          &In::adaptor_material, 0, 0,
          "brass nickel-plated-brass stainless-steel aluminium polymer steel",
          "What the adaptor is made of", k_metal},
    Field{"entry", "compound_pack_cm3", "--compound-pack", FieldKind::number,
          &In::compound_pack_cm3, 0.1, 100000, "cm3",
          "What one pack of compound fills, to say how many packs", k_name},

    Field{"area", "protection", "--protection", FieldKind::words, word<&In::protection>(), 0, 0, "",
          "Type of protection of the enclosure", k_place},
    Field{"area", "zone", "--zone", FieldKind::words, word<&In::zone>(), 0, 0, "",
          "Zone of the place; none: a plain room", k_place},
    Field{"area", "level", "--level", FieldKind::words, word<&In::level, area::k_place_levels>(), 0,
          0, "", "Equipment protection level that the place asks for", k_place},
    Field{"area", "gas_group", "--gas-group", FieldKind::words, word<&In::gas_group>(), 0, 0, "",
          "Gas group of the place", k_place},
    Field{"area", "dust_group", "--dust-group", FieldKind::words, word<&In::dust_group>(), 0, 0, "",
          "Dust group of the place", k_place},
    Field{"area", "ip", "--ip", FieldKind::text, &In::ip, 0, 0,
          "two figures such as 54, 66 or 66/68", "Ingress protection asked for", k_ingress},
    Field{"area", "volume_cm3", "--volume", FieldKind::number, &In::volume_cm3, 0, 1e9, "cm3",
          "Free volume of the enclosure", k_place},
    Field{"area", "ignition_source", "--ignition-source", FieldKind::yes_no,
          word<&In::ignition_source>(), 0, 0, "",
          "Whether it sparks or runs hot inside in normal operation", k_place},
    Field{"area", "bare_live_parts", "--bare-live-parts", FieldKind::yes_no,
          word<&In::bare_live_parts>(), 0, 0, "", "Whether live parts inside are bare", k_place},
    Field{"area", "ambient_min_c", "--ambient-min", FieldKind::number, &In::ambient_min_c, -100,
          200, "C", "Lowest ambient temperature", k_temperature},
    Field{"area", "ambient_max_c", "--ambient-max", FieldKind::number, &In::ambient_max_c, -100,
          200, "C", "Highest ambient temperature", k_temperature},
    Field{"area", "entry_temp_c", "--entry-temp", FieldKind::number, &In::entry_temp_c, -100, 400,
          "C", "Temperature at the entry point, rated conditions", k_temperature},
    Field{"area", "branch_temp_c", "--branch-temp", FieldKind::number, &In::branch_temp_c, -100,
          400, "C", "Temperature where the cores branch", k_temperature},
    Field{"area", "cable_max_c", "--cable-max", FieldKind::number, &In::cable_max_c, 0, 400, "C",
          "Highest temperature that the cable is rated for", k_temperature},

    Field{"tails", "reach_mm", "--reach", FieldKind::number, &In::reach_mm, 0, k_mm, "mm",
          "Way of every core from the inside face to its terminal", k_route},
    Field{"tails", "slack_mm", "--slack", FieldKind::number, &In::slack_mm, 0, k_mm, "mm",
          "Spare length of every core (default 0)", k_route},
    Field{"tails", "strip_mm", "--strip", FieldKind::number, &In::strip_mm, 0, 500, "mm",
          "Insulation stripped for the terminal", k_route},
    Field{"tails", "bend_radius_mm", "--bend-radius", FieldKind::number, &In::bend_radius_mm, 0,
          5000, "mm", "Radius of the cores' bends, for a way given by coordinates", k_route},
    Field{"tails", "armour_stop_mm", "--armour-stop", FieldKind::number, &In::armour_stop_mm, 0,
          500, "mm", "Shoulder to the tips of the clamped armour, measured on the gland in hand",
          k_route},

    Field{"fault", "current_ka", "--fault-ka", FieldKind::number, &In::current_ka, 0.001, 1000,
          "kA", "Earth-fault current", k_fault},
    Field{"fault", "time_s", "--time", FieldKind::number, &In::time_s, 0.001, 5, "s",
          "Time until the protection clears it", k_fault},
    Field{"fault", "loop_ohm", "--loop", FieldKind::number, &In::loop_ohm, 0.001, 10000, "ohm",
          "Impedance of the whole loop of an earth fault at this end", k_fault},
    Field{"fault", "u0_v", "--u0", FieldKind::number, &In::u0_v, 1, 50000, "V",
          "Voltage to earth, with a loop impedance", k_fault},
    Field{"fault", "device", "--device", FieldKind::text, &In::device, 0, 0, earth::k_device_form,
          "Circuit breaker that clears it, by type and rating: C32; says which time to look up",
          k_fault},
};

using Core = CoreInput;
constexpr std::array k_core_fields{
    CoreField{"tails.cores", "core", "", FieldKind::text, &Core::core, 0, 0, "text",
              "Name of the core"},
    CoreField{"tails.cores", "reach_mm", "", FieldKind::number, &Core::reach_mm, 0, k_mm, "mm",
              "Way from the inside face to the terminal"},
    CoreField{"tails.cores", "x_mm", "", FieldKind::number, &Core::x_mm, -k_mm, k_mm, "mm",
              "Terminal: along the wall"},
    CoreField{"tails.cores", "y_mm", "", FieldKind::number, &Core::y_mm, -k_mm, k_mm, "mm",
              "Terminal: along the wall, across x"},
    CoreField{"tails.cores", "z_mm", "", FieldKind::number, &Core::z_mm, -k_mm, k_mm, "mm",
              "Terminal: into the enclosure"},
    CoreField{"tails.cores", "strip_mm", "", FieldKind::number, &Core::strip_mm, 0, 500, "mm",
              "Insulation stripped for the terminal"},
    CoreField{"tails.cores", "spare", "", FieldKind::yes_no, word<&Core::spare>(), 0, 0, "",
              "A spare core: it reaches the furthest terminal"},
};

}  // namespace

std::span<const Field> fields() { return k_fields; }
std::span<const CoreField> core_fields() { return k_core_fields; }

const Field& field_named(std::string_view key) {
  for (const Field& field : k_fields) {
    if (field.key == key) return field;
  }
  throw InternalError("a job has no key " + std::string(key));
}

}  // namespace cutback::job
