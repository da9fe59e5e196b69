#include "core/sheet/steps.hpp"

#include <fmt/format.h>

#include "cutback/earth/path.hpp"
#include "cutback/entry/hardware.hpp"
#include "cutback/entry/parts.hpp"
#include "cutback/fit/needs.hpp"
#include "cutback/number.hpp"

namespace cutback::sheet::detail {
namespace {

using cable::ArmourKind;

std::string mm(double value, int decimals = 1) { return plain(value, decimals) + " mm"; }

std::string entry_name(const job::Job& job) {
  if (!job.entry.thread) return "the entry";
  return "the " + entry::to_text(*job.entry.thread) + " entry";
}

/// `reducer M25 to M20`.
std::string adaptor_words(const fit::GlandFit& fit) {
  return fit::adaptor_name(entry::wall_side(*fit.adaptor, *fit.gland), fit.gland->entry_thread);
}

void add(std::vector<Step>& steps, std::string text, bool hold = false) {
  steps.push_back({.text = std::move(text), .hold = hold});
}

void measure_steps(std::vector<Step>& steps, const job::Job& job) {
  add(steps,
      "Identify the circuit, isolate it, lock it off and prove it dead. Have the permit in hand.",
      true);
  std::string bared;
  if (job.cable.armour == ArmourKind::wire) {
    bared = ", bedding and one wire bared at its end";
  } else if (job.cable.armour != ArmourKind::none) {
    bared = ", the bedding bared at its end";
  }
  add(steps,
      "Measure this cable: the sheath where the gland will sit" + bared + ", " +
          (bared.empty() ? "twice" : "sheath and bedding twice") +
          " at right angles. Write the readings in the blanks. Cut only when every one lies in its "
          "limits.",
      true);
  add(steps,
      "Square the cable's end. Lay out the parts and check the gland's part code against the "
      "sheet.");
}

void armoured_cuts(std::vector<Step>& steps, const job::Job& job, const strip::CutPlan& plan) {
  const strip::Marks& marks = plan.marks;
  const bool wire = job.cable.armour == ArmourKind::wire;
  if (wire) {
    add(steps,
        "Saw round at mark 1, to the depth of the table and no deeper: the sheath may be thin at a "
        "point. Go round again by eye until half of each wire is through.");
    add(steps,
        "Strip the sheath from mark 1 to the end. Bend the wires a few at a time at the saw cut "
        "until they snap, and hold them so that none springs. Take them off.");
  } else {
    add(steps, "Strip the sheath from mark 1 to the end and cut the " +
                   std::string(to_string(job.cable.armour)) + " there with shears. Do not saw.");
  }
  add(steps,
      std::string("Mark 2 behind the armour tips, not from the end") +
          (marks.exposed_min_mm ? "" : ", by the gland's leaflet") +
          ". Score the sheath round at mark 2, no deeper than the table, then lengthwise to the "
          "tips, and peel it off.",
      true);
}

void bedding_cut(std::vector<Step>& steps, bool barrier) {
  std::string text =
      "Score the bedding round at mark 3, no deeper than the table, bend it open and peel it "
      "towards the end with its fillers. Do not nick the insulation.";
  if (barrier)
    text +=
        " The bedding must end where the gland's instructions say, so that compound flows round "
        "every core.";
  add(steps, text);
}

void assemble_steps(std::vector<Step>& steps, const job::Job& job, const fit::GlandFit& fit) {
  const bool armoured = job.cable.armour != ArmourKind::none;
  add(steps,
      armoured ? "Clean bedding, armour and seal faces with a dry cloth. Look for nicks: a nicked "
                 "bedding or insulation is cut back and begun again."
               : "Clean the sheath and the seal faces with a dry cloth. Look for nicks: a nicked "
                 "insulation is cut back and begun again.",
      true);
  if (fit.adaptor) {
    add(steps, "Fit the " + adaptor_words(fit) + " to the entry first.");
  }
  const bool tapped = entry::hole_of(job.entry) == entry::Hole::threaded;
  add(steps,
      "Fit the gland's entry part to " + entry_name(job) +
          (tapped
               ? ", screwed home by hand and then tightened."
               : ", the sealing washer outside between shoulder and wall; inside, the parts in the "
                 "order of the list, then the locknut."));
  if (armoured) {
    add(steps,
        "Pass the cores through. Spread the " +
            std::string(job.cable.armour == ArmourKind::wire ? "wires"
                                                             : to_string(job.cable.armour)) +
            " evenly over the cone, push the cable home and tighten the clamp by hand, then loosen "
            "it "
            "and look that all of the armour is gripped.",
        true);
  } else {
    add(steps, "Pass the cores through and push the cable home until the sheath shows inside.");
  }
  if (fit.barrier) {
    add(steps,
        "Mix and fill the compound as its instructions say: spread the cores, leave no voids, let "
        "it set "
        "undisturbed, and write down batch and time.",
        true);
  }
  // The list's torque is the body's alone: a locknut on a plastic wall would crack it.
  std::string tighten = "Tighten each part in turn as the gland's instructions say";
  if (fit.gland->torque_nm) tighten += ", the body to " + plain(*fit.gland->torque_nm, 1) + " Nm";
  add(steps, tighten + ". The seal must close on the sheath; do not force it.");
}

/// How the armour comes to earth, where somebody must see to it.
void earth_step(std::vector<Step>& steps, const job::Job& job) {
  if (job.cable.armour == ArmourKind::none) return;
  const earth::Way way = earth::way_of(job.entry);
  if (way == earth::Way::bare_metal || way == earth::Way::serrated) {
    add(steps,
        "See that the wall is bare metal where the " +
            std::string(way == earth::Way::serrated ? "serrated washer" : "locknut") +
            " sits: it earths the armour. Paint does not conduct.",
        true);
  } else if (way == earth::Way::tag) {
    add(steps, "Wire the earth tag to the earth terminal: it earths the armour.", true);
  }
}

void finish_steps(std::vector<Step>& steps, const job::Job& job) {
  add(steps,
      "Dress the cores to their terminals, cut each back by its figure, strip it, and connect it.");
  if (area::hazard_of(job.area) != area::Hazard::none) {
    add(steps, "Before any test: gas-free conditions, and the permit for it in hand.", true);
  }
  add(steps,
      std::string("Prove continuity") +
          (job.cable.armour != ArmourKind::none ? " from the armour to the earth terminal"
                                                : " of every core") +
          " and measure the insulation resistance. Write both down.",
      true);
  add(steps,
      "Inspect: parts complete and tight, no strain on the gland, unused entries closed, the first "
      "support close behind the gland.",
      true);
}

}  // namespace

std::vector<Part> parts_of(const job::Job& job, const fit::GlandFit& fit,
                           const std::optional<area::Compound>& compound) {
  const gland::Gland& gland = *fit.gland;
  std::vector<Part> parts;
  if (job.cable.armour != ArmourKind::none) {
    parts.push_back({"gland " + gland.part + ", rear parts",
                     "on the cable first: shroud if any, back nut, outer seal, clamp ring"});
    parts.push_back({"gland " + gland.part + ", front part",
                     "cone and entry thread " + entry::to_text(gland.entry_thread)});
  } else {
    parts.push_back({"gland " + gland.part, "on the cable first: back nut and seal; entry thread " +
                                                entry::to_text(gland.entry_thread)});
  }
  if (fit.adaptor) {
    parts.push_back({adaptor_words(fit), std::string(entry::adaptor_rule().says)});
  }
  for (const entry::EntryPart& part :
       entry::parts_in_order(gland, job.entry, fit.adaptor.has_value())) {
    std::string name(part.name);
    if (!part.place.empty()) (name += ", ") += part.place;
    parts.push_back({std::move(name), part.thickness_mm ? mm(*part.thickness_mm) : ""});
  }
  if (fit.barrier) {
    const std::string volume = fit::compound_words(compound, job.compound_pack_cm3);
    parts.push_back({"compound", "in date, for this gland, with its instructions" +
                                     (volume.empty() ? std::string()
                                                     : "; the chamber takes " + volume +
                                                           ", without domes or waste")});
  }
  return parts;
}

std::vector<Step> steps_of(const job::Job& job, const fit::GlandFit& fit,
                           const strip::CutPlan& plan) {
  std::vector<Step> steps;
  measure_steps(steps, job);
  const bool armoured = job.cable.armour != ArmourKind::none;
  // The whole gland is held to S: nothing of it may be on the cable by then.
  if (armoured && !plan.axis.armour_stop_mm) {
    add(steps,
        "Mark S. Hold the gland, whole, beside the cable with its shoulder at S and mark where the "
        "armour clamp ends: that is mark 1. Or measure the gland's armour stop and print again.",
        true);
  }
  add(steps,
      "Slide the rear parts of the gland on to the cable now, in the order of the list, the way "
      "round that they will sit. They cannot go on later.",
      true);
  if (armoured) {
    if (plan.axis.armour_stop_mm) {
      add(steps, "Mark 1 from the cable's end. Offer the gland up: its shoulder sits at S.");
    }
    armoured_cuts(steps, job, plan);
    bedding_cut(steps, fit.barrier);
  } else {
    add(steps,
        "Score the sheath round at mark 1, no deeper than the table, bend it open and peel it "
        "towards the end. Do not nick the insulation.");
  }
  earth_step(steps, job);
  assemble_steps(steps, job, fit);
  finish_steps(steps, job);
  return steps;
}

std::vector<std::string> cautions_of(const job::Job& job, const fit::GlandFit& fit,
                                     const tables::Standards& standards) {
  std::vector<std::string> cautions;
  for (const area::Caution& caution :
       area::cautions(job.area, *fit.gland, fit.barrier, standards)) {
    cautions.push_back(caution.text);
  }
  return cautions;
}

std::vector<std::string> own_cautions_of(const job::Job& job, const fit::GlandFit& fit,
                                         const tables::Standards& standards) {
  std::vector<std::string> own;
  for (const area::Caution& caution :
       area::cautions(job.area, *fit.gland, fit.barrier, standards)) {
    if (!caution.brief.empty()) own.push_back(caution.brief);
  }
  return own;
}

}  // namespace cutback::sheet::detail
