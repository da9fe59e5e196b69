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

constexpr std::string_view k_on_strip = R"(   ]=[  one piece, cut off and flat:
        across its thickness, no burr)";

constexpr std::string_view k_round_the_cores = "only a gland that seals round the cores passes";

constexpr std::array k_rows{
    Row{"armour",
        "Armour",
        "What armour has the cable?",
        "wire (SWA, AWA), braid, tape, strip or none",
        "wire",
        "it is taken for round wire, and the answer says so",
        {},
        true},
    Row{"sheath_od_mm", "Sheath", "Sheath: across the outer sheath, where the gland will sit",
        "15.10 mm, or 0.595in", "10 to 60 mm", "no gland passes: without it nothing is proven",
        k_on_sheath, true},
    Row{"bedding_mm", "Bedding", "Bedding: across it, under the lifted wires",
        "10.05 mm, or 0.395in", "a wire and a sheath less on each side",
        "it is worked out from sheath and wire, and an estimate passes no gland", k_on_bedding},
    Row{"armour_mm", "One wire", "Armour: across one single wire", "0.90 mm, or 0.035in",
        "0.9, 1.25, 1.6, 2.0 or 2.5 mm", "no armour clamp is proven to grip", k_on_wire},
    Row{"cores", "Cores", "How many cores are there?", "3, or 3C", "2 to 5",
        "what asks for their number stays open"},
    Row{"csa_mm2", "Size of a core", "What size are its cores?", "4 mm2, or 12 AWG",
        "1.5 to 400 mm2", "readings are not compared with what the cable should be"},
    Row{"supply", "Current", "A single core: what current does it carry?", "ac or dc", "ac",
        "steel round a single core stays open"},
    Row{"armour_material", "Armour metal", "What is the armour made of?",
        "steel, aluminium or copper", "steel", "what depends on it stays open"},
    Row{"entry", "Entry", "What thread is the entry?",
        "M20, NPT 1/2, PG 13.5; to-suit where the hole is still to be made", "M20 to M63",
        "no gland is proven to go in"},
    Row{"hole", "Hole", "Is the hole tapped, or clear with a locknut behind it?",
        "threaded or clearance", "clearance in sheet metal", "thread and joint stay open"},
    Row{"wall_mm", "Wall", "How thick is the wall, or how deep the tapped hole?",
        "2.5 mm, or 1/8in", "1.5 to 3 mm for sheet", "thread and joint stay open"},
    Row{"material", "Enclosure material", "What is the enclosure made of?",
        "steel, galvanised-steel, stainless-steel, aluminium, brass, cast-iron or polymer (GRP)",
        "steel", "the path from armour to earth stays open"},
    Row{"washer_mm", "Sealing washer", "Sealing washer: how thick?",
        "1.5 mm; 0 where there is none", "1.5 to 3 mm", "the joint stays open"},
    Row{"locknut_mm", "Locknut", "Locknut: how thick?", "4 mm", "3 to 8 mm",
        "the thread stays open"},
    Row{"chamfer_mm", "Chamfer", "How deep is the chamfer of the tapped hole?",
        "1 mm; 0 where there is none", "2 mm at most", "the thread stays open"},
    Row{"tag_mm", "Earth tag", "Earth tag: how thick?", "1.5 mm; 0 where there is none",
        "1.5 to 2 mm", "the path from armour to earth stays open"},
    Row{"zone", "Zone", "What zone is the place?", "0, 1, 2, 20, 21 or 22; none for a plain room",
        "", "no gland passes until it is known: ask for the area drawing"},
    Row{"protection", "Enclosure protection", "What type of protection has the enclosure?",
        "d, e, nR, t ..., or the whole marking off its plate", "",
        "no gland passes: its marking cannot be compared"},
    Row{"gas_group", "Gas group", "What gas group does the place ask for?",
        "IIA, IIB, IIB+H2 or IIC; it stands on the area drawing", "",
        "no gland passes until it is known"},
    Row{"dust_group", "Dust group", "What dust group does the place ask for?",
        "IIIA, IIIB or IIIC; it stands on the area drawing", "",
        "no gland passes until it is known"},
    Row{"volume_cm3", "Free volume", "What is the free volume of the enclosure?", "2000 cm3", "",
        "it is taken for large"},
    Row{"ignition_source", "Sparks or runs hot inside",
        "Does anything inside spark or run hot in normal service?", "yes or no", "",
        "it is taken for one that does"},
    Row{"ip",
        "Ingress protection",
        "What ingress protection is asked for?",
        "IP66, or 54; none where nobody asks for one",
        "54 indoors, 66 outdoors",
        "no gland passes until it is known",
        {},
        true},
    Row{"bedding_made", "Bedding is", "Is the bedding one solid layer, or wound tape?",
        "extruded (solid) or lapped (tape)", "", k_round_the_cores},
    Row{"circular", "Cable is circular", "Is the cable round?", "yes or no", "", k_round_the_cores},
    Row{"compact", "Cable is compact",
        "Cut square across, is it solid, with no gap between the cores?", "yes or no", "",
        k_round_the_cores},
    Row{"fillers", "Fillers", "What fills the space between the cores?",
        "none, non-hygroscopic (plastic, rubber) or hygroscopic (paper, textile: it draws water)",
        "", k_round_the_cores},
    Row{"length_m", "Length", "How long is the cable from end to end?", "42 m", "",
        k_round_the_cores},
    Row{"current_ka",
        "Earth-fault current",
        "What earth-fault current does the designer state?",
        "1.8 kA; an empty line: nobody asks",
        "",
        "no gland passes until it is known",
        {},
        true,
        true},
    Row{"time_s", "Clearing time", "How long until the protection clears it?", "0.2 s",
        "0.1 to 0.4 s, 5 s at most", "the fault stays open"},
};

}  // namespace

std::span<const Row> rows() { return k_rows; }

const Row& piece_row(cable::ArmourKind armour) {
  constexpr std::string_view k_cost = "no armour clamp is proven to grip";
  static constexpr Row k_braid{"armour_mm",
                               "One wire",
                               "Braid: across one single wire of it",
                               "0.30 mm, or 0.012in",
                               "0.2 to 0.4 mm",
                               k_cost,
                               k_on_wire};
  static constexpr Row k_tape{"armour_mm",
                              "One tape",
                              "Armour: how thick is one tape?",
                              "0.50 mm, or 0.020in",
                              "0.2 to 0.8 mm",
                              k_cost,
                              k_on_strip};
  static constexpr Row k_strip{"armour_mm",
                               "One strip",
                               "Armour: how thick is one strip?",
                               "1.00 mm, or 0.039in",
                               "0.8 to 1.4 mm",
                               k_cost,
                               k_on_strip};
  switch (armour) {
    case cable::ArmourKind::braid:
      return k_braid;
    case cable::ArmourKind::tape:
      return k_tape;
    case cable::ArmourKind::strip:
      return k_strip;
    case cable::ArmourKind::wire:
    case cable::ArmourKind::none:
      break;
  }
  return *row_of("armour_mm");
}

const Row* row_of(std::string_view key) {
  for (const Row& row : k_rows) {
    if (row.key == key) return &row;
  }
  return nullptr;
}

}  // namespace cutback::ask::detail
