#include "core/ask/rows.hpp"

#include <array>

namespace cutback::ask::detail {
namespace {

constexpr std::string_view k_on_sheath = R"(    jaws
     ][
##########=======::::::::------
##########=======::::::::------
     ][
  sheath   wires  bedding  cores)";

constexpr std::string_view k_on_bedding = R"(        wires lifted   jaws
            //          ][
##########//::::::::::::::------
##########\\::::::::::::::------
            \\          ][
  sheath         bedding    cores)";

constexpr std::string_view k_on_wire = R"(   ]o[  one wire, cut off and clean:
        no zinc crust, no burr)";

constexpr std::array k_rows{
    Row{"armour",
        "What armour has the cable?",
        "wire (SWA, AWA), braid, tape, strip or none",
        "wire",
        "it is taken for round wire, and the answer says so",
        {},
        true},
    Row{"sheath_od_mm", "Sheath: across the outer sheath, where the gland will sit",
        "15.10 mm, or 0.595in", "10 to 60 mm", "no gland passes: without it nothing is proven",
        k_on_sheath, true},
    Row{"bedding_mm", "Bedding: across it, under the lifted wires", "10.05 mm, or 0.395in",
        "a wire and a sheath less on each side",
        "it is worked out from sheath and wire, and an estimate passes no gland", k_on_bedding},
    Row{"armour_mm", "Armour: across one single wire", "0.90 mm, or 0.035in",
        "0.9, 1.25, 1.6, 2.0 or 2.5 mm", "no armour clamp is proven to grip", k_on_wire},
    Row{"cores", "How many cores has it?", "3, or 3C", "2 to 5",
        "what asks for their number stays open"},
    Row{"csa_mm2", "What size is a core?", "4 mm2, or 12 AWG", "1.5 to 400 mm2",
        "readings are not compared with what the cable should be"},
    Row{"supply", "A single core: what current does it carry?", "ac or dc", "ac",
        "steel round a single core stays open"},
    Row{"armour_material", "What is the armour made of?", "steel, aluminium or copper", "steel",
        "what depends on it stays open"},
    Row{"entry", "What thread is the entry?",
        "M20, NPT 1/2, PG 13.5; to-suit where the hole is still to be made", "M20 to M63",
        "no gland is proven to go in"},
    Row{"hole", "Is the hole tapped, or clear with a locknut behind it?", "threaded or clearance",
        "clearance in sheet metal", "thread and joint stay open"},
    Row{"wall_mm", "How thick is the wall, or how deep the tapped hole?", "2.5 mm, or 1/8in",
        "1.5 to 3 mm for sheet", "thread and joint stay open"},
    Row{"material", "What is the enclosure made of?",
        "steel, galvanised-steel, stainless-steel, aluminium, brass, cast-iron or polymer (GRP)",
        "steel", "the path from armour to earth stays open"},
    Row{"washer_mm", "Sealing washer: how thick?", "1.5 mm; 0 where there is none", "1.5 to 3 mm",
        "the joint stays open"},
    Row{"locknut_mm", "Locknut: how thick?", "4 mm", "3 to 8 mm", "the thread stays open"},
    Row{"tag_mm", "Earth tag: how thick?", "1.5 mm; 0 where there is none", "1.5 to 2 mm",
        "the path from armour to earth stays open"},
    Row{"zone", "What zone is the place?", "none for a plain room, or 0, 1, 2, 20, 21, 22", "none",
        "no gland passes until somebody says that it is a plain room"},
    Row{"protection", "What type of protection has the enclosure?", "d, e, nR, t ... (Ex d, Ex e)",
        "e", "no gland passes: its marking cannot be compared"},
    Row{"gas_group", "What gas group does the place ask for?", "IIA, IIB or IIC", "IIB",
        "only what holds for every gas passes"},
    Row{"dust_group", "What dust group does the place ask for?", "IIIA, IIIB or IIIC", "IIIB",
        "only what holds for every dust passes"},
    Row{"volume_cm3", "What is the free volume of the enclosure?", "2000 cm3", "",
        "it is taken for large"},
    Row{"ignition_source", "Does anything inside spark or run hot in normal service?", "yes or no",
        "", "it is taken for one that does"},
    Row{"ip",
        "What ingress protection is asked for?",
        "IP66, or 54; none where nobody asks for one",
        "54 indoors, 66 outdoors",
        "it is taken for 66/68, the most that glands are marked with",
        {},
        true,
        false,
        "66/68"},
    Row{"current_ka",
        "What earth-fault current does the designer state?",
        "1.8 kA; an empty line: nobody asks",
        "",
        "the answer says nothing of the fault",
        {},
        true,
        true},
    Row{"time_s", "How long until the protection clears it?", "0.2 s", "0.1 to 0.4 s, 5 s at most",
        "the fault stays open"},
};

}  // namespace

std::span<const Row> rows() { return k_rows; }

const Row* row_of(std::string_view key) {
  for (const Row& row : k_rows) {
    if (row.key == key) return &row;
  }
  return nullptr;
}

}  // namespace cutback::ask::detail
