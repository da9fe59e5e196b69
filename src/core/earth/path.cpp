#include "cutback/earth/path.hpp"

#include <string>

#include "cutback/entry/hardware.hpp"
#include "cutback/number.hpp"

namespace cutback::earth {
namespace {

using fit::Check;

constexpr const char* k_path_source = "path to earth: common practice, no source";
constexpr const char* k_single_source = "BS 7671, 521.5.1 [secondary]";

bool conducts(const std::string& material) { return material != "polymer"; }
bool is_magnetic(const std::string& material) {
  return material == "steel" || material == "galvanised-steel" || material == "cast-iron";
}

void add(Check& check, Verdict verdict, const std::string& says, const char* source) {
  check.says += (check.says.empty() ? "" : "; ") + says;
  if (check.source.find(source) == std::string::npos) {
    check.source += (check.source.empty() ? "" : "; ") + std::string(source);
  }
  check.verdict = worst(check.verdict, verdict);
}

constexpr auto k_at_the_end = fit::Lack::Where::at_the_end;
constexpr auto k_elsewhere = fit::Lack::Where::elsewhere;

/// A fact that is missing.
void miss(Check& check, const std::string& says, const char* source, const fit::Lack& lack) {
  add(check, Verdict::not_known, says, source);
  check.lacks.push_back(lack);
}

void miss_cores(Check& check) {
  miss(check, "the number of cores is not given: a single core on a.c. must have no steel round it",
       k_single_source, {"number of cores", "cores", k_at_the_end});
}

/// Gland or adaptor, which must be of metal.
void judge_metal(const char* part, const std::optional<std::string>& material,
                 const char* not_stated, const fit::Lack& lack, Check& check) {
  if (!material) {
    miss(check, not_stated, k_path_source, lack);
  } else if (!conducts(*material)) {
    add(check, Verdict::no_fit,
        "the " + std::string(part) + " is of plastic: the armour has no path to earth",
        k_path_source);
  }
}

void judge_way(const entry::Entry& entry, Check& check) {
  const std::string wall = entry.material.value_or("");
  const auto say = [&](Verdict verdict, const std::string& says) {
    add(check, verdict, says, k_path_source);
  };
  switch (way_of(entry)) {
    case Way::not_known:
      if (!entry.material) {
        miss(check, "what the wall is made of is not given", k_path_source,
             {"wall's material", "material", k_at_the_end});
      }
      if (!entry::hole_of(entry)) {
        miss(check, "the kind of hole (threaded or clearance) is not given", k_path_source,
             {"kind of hole, threaded or clearance", "hole", k_at_the_end});
      }
      return;
    case Way::tapped_wall:
      return say(Verdict::fits, "earthed by the thread in the wall of " + wall);
    case Way::tag:
      return say(Verdict::fits, "earthed by an earth tag of " + plain(*entry.tag_mm) +
                                    " mm, wired to the earth terminal" +
                                    (entry::hole_of(entry) == entry::Hole::threaded
                                         ? "; it sits outside and is sealed to the wall"
                                         : ""));
    case Way::serrated:
      return say(Verdict::fits, "earthed by the serrated washer on the wall of " + wall);
    case Way::bare_metal:
      return say(Verdict::fits, "earthed by the locknut on the wall of " + wall +
                                    ", which must be bare metal there");
    case Way::tag_missing:
      return miss(check,
                  "a wall of " + wall +
                      " does not conduct: an earth tag is needed, and its thickness is not given",
                  k_path_source, {"earth tag", "tag_mm", k_elsewhere});
    case Way::none:
      return say(Verdict::no_fit,
                 "a wall of " + wall + " does not conduct: without an earth tag there is no path");
  }
}

/// Steel round one core of an a.c. circuit, in any form, heats up.
void judge_single_core(const cable::Cable& cable, const entry::Entry& entry,
                       const gland::Gland& gland, bool adaptor, Check& check) {
  const bool armoured = cable.armour != cable::ArmourKind::none;
  const auto say = [&](Verdict verdict, const std::string& says) {
    add(check, verdict, says, k_single_source);
  };
  if (cable.supply == cable::Supply::dc) {
    say(Verdict::fits, "a single core on d.c. may have steel round it");
    return;
  }
  if (!cable.supply) {
    miss(check, "a single core: the kind of supply (ac or dc) is not given", k_single_source,
         {"supply, ac or dc", "supply", k_elsewhere});
  }
  if (armoured && !cable.armour_material) {
    miss(check, "a single core: what the armour is made of is not given", k_single_source,
         {"armour's material", "armour_material", k_at_the_end});
  }
  // Without the supply steel may do or not.
  const Verdict steel = cable.supply ? Verdict::no_fit : Verdict::not_known;
  const std::string rule = " round a single core is not for a.c.";
  if (armoured && cable.armour_material == cable::ArmourMaterial::steel) {
    say(steel, "armour of steel " + std::string(to_string(cable.armour)) + rule);
  }
  if (gland.material && is_magnetic(*gland.material)) {
    say(steel, "a gland of " + *gland.material + rule);
  } else if (!gland.material && !armoured) {
    miss(check, "the gland list does not state material", k_single_source,
         {"gland's material", "material", k_elsewhere});
  }
  if (adaptor && entry.adaptor_material && is_magnetic(*entry.adaptor_material)) {
    say(steel, "an adaptor of " + *entry.adaptor_material + rule);
  } else if (adaptor && !entry.adaptor_material && !armoured) {
    miss(check, "what the adaptor is made of is not given", k_single_source,
         {"adaptor's material", "adaptor_material", k_at_the_end});
  }
  if (!entry.material && !armoured) {
    miss(check, "what the wall is made of is not given", k_single_source,
         {"wall's material", "material", k_at_the_end});
  }
  if (entry.material && is_magnetic(*entry.material)) {
    say(steel, "a wall of " + *entry.material + rule + ": a plate of other metal is needed");
  }
  if (check.says.empty()) say(Verdict::fits, "no steel round the single core");
}

/// An unarmoured cable of which nobody says how many cores it has: only steel makes it matter.
void judge_unknown_cores(const entry::Entry& entry, const gland::Gland& gland, bool adaptor,
                         Check& check) {
  const auto may_be_steel = [](const std::optional<std::string>& material) {
    return !material || is_magnetic(*material);
  };
  if (!may_be_steel(entry.material) && !may_be_steel(gland.material) &&
      !(adaptor && may_be_steel(entry.adaptor_material))) {
    add(check, Verdict::fits, "no steel round the cores", k_single_source);
    return;
  }
  miss_cores(check);
}

}  // namespace

Way way_of(const entry::Entry& entry) {
  const auto hole = entry::hole_of(entry);
  if (!entry.material || !hole) return Way::not_known;
  if (!conducts(*entry.material)) {
    if (!entry.tag_mm) return Way::tag_missing;
    return *entry.tag_mm > 0.0 ? Way::tag : Way::none;
  }
  if (*hole == entry::Hole::threaded) return Way::tapped_wall;
  if (entry.tag_mm && *entry.tag_mm > 0.0) return Way::tag;
  if (entry.serrated_mm && *entry.serrated_mm > 0.0) return Way::serrated;
  return Way::bare_metal;
}

bool may_be_single(const cable::Cable& cable) {
  if (cable.cores) return *cable.cores == 1;
  return cable.supply != cable::Supply::dc;
}

std::optional<Check> check_path(const cable::Cable& cable, const entry::Entry& entry,
                                const gland::Gland& gland, bool adaptor) {
  const bool path = cable.armour != cable::ArmourKind::none;
  const bool single = cable.cores == 1;
  if (!path && !may_be_single(cable)) return std::nullopt;
  Check check;
  check.name = fit::CheckName::earth;
  check.verdict = Verdict::fits;
  if (single) judge_single_core(cable, entry, gland, adaptor, check);
  if (!path && !single) judge_unknown_cores(entry, gland, adaptor, check);
  if (path) {
    judge_metal("gland", gland.material, "the gland list does not state material",
                {"gland's material", "material", k_elsewhere}, check);
    if (adaptor) {
      judge_metal("adaptor", entry.adaptor_material, "what the adaptor is made of is not given",
                  {"adaptor's material", "adaptor_material", k_at_the_end}, check);
    }
    judge_way(entry, check);
    if (!cable.cores && cable.supply != cable::Supply::dc) {
      miss_cores(check);
    }
  }
  return check;
}

}  // namespace cutback::earth
