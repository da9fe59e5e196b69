#include "cutback/job/job.hpp"

#include "core/job/resolve.hpp"
#include "cutback/error.hpp"
#include "cutback/job/construction.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::job {
namespace {

using cable::ArmourKind;
using detail::Faults;
using measure::Estimate;

/// What is taken for the caliper, the allowances and the kind of armour where they are not given.
std::vector<Assumption> assumed_in(const JobInput& in) {
  std::vector<Assumption> list;
  const auto take = [&](bool given, const char* fact, std::string taken, const char* why) {
    if (!given) list.push_back({fact, std::move(taken), why});
  };
  constexpr const char* k_practice = "common practice, no source";
  if (!in.armour) {
    list.push_back({"armour", "wire", "round wire where nothing else is said of the armour"});
  }
  take(in.step_mm.has_value(), "step_mm", plain(k_caliper_step_mm) + " mm",
       "the step of a common vernier caliper");
  take(in.mpe_mm.has_value(), "mpe_mm", "what its step has", "DIN 862, as tabulated");
  take(in.evidence.has_value(), "evidence", "by what was typed",
       "a figure alone in a file is a datasheet's, on the command line a caliper's");
  take(in.zero_mm.has_value(), "zero_mm", "0 mm", "jaws that close show 0");
  constexpr const char* k_compare = "there is no construction to compare the readings with";
  take(in.cores.has_value(), "cores", "no construction", k_compare);
  take(in.csa_mm2.has_value(), "csa_mm2", "no construction", k_compare);
  if (in.cores && in.csa_mm2) {
    constexpr const char* k_usual = "the construction that readings are compared with";
    take(in.insulation.has_value(), "insulation", "as usual for the voltage", k_usual);
    take(in.conductor.has_value(), "conductor", "as usual for the size", k_usual);
    take(in.voltage.has_value(), "voltage", "0.6/1 kV", k_usual);
    take(in.pattern.has_value(), "pattern", "british", k_usual);
    take(in.earth_csa_mm2.has_value(), "earth_csa_mm2", "none", k_usual);
  }
  const bool measured = in.evidence == measure::Evidence::measured;
  take(measured || detail::stated_allowance(in.od_allow_mm), "od_allow_mm",
       plain(k_od_allow_mm) + " mm", k_practice);
  take(measured || detail::stated_allowance(in.bedding_allow_mm), "bedding_allow_mm",
       plain(k_bedding_allow_mm) + " mm", k_practice);
  take(measured || detail::stated_allowance(in.armour_allow_mm), "armour_allow_mm",
       plain(k_wire_allow_mm) + " mm", k_practice);
  return list;
}

std::optional<cable::Construction> construction_of(const JobInput& in,
                                                   const tables::Standards& standards,
                                                   std::vector<std::string>& warnings) {
  const auto input = construction_input(in);
  if (!input) return std::nullopt;
  try {
    return cable::construct(*input, standards);
  } catch (const InputError& error) {
    // A cable that no published rule covers can still be measured and made off.
    warnings.push_back("no construction to compare with: " + error.faults().front().what);
    return std::nullopt;
  }
}

/// The part of the cable in which its diameters play no part.
cable::Cable cable_without_diameters(const JobInput& in) {
  cable::Cable cable;
  cable.armour = in.armour.value_or(ArmourKind::wire);
  cable.cores = detail::whole(in.cores);
  cable.csa_mm2 = in.csa_mm2;
  cable.earth_csa_mm2 = in.earth_csa_mm2;
  cable.length_m = in.length_m;
  cable.circular = in.circular;
  cable.compact = in.compact;
  cable.bedding_made = in.bedding_made;
  cable.fillers = in.fillers;
  cable.armour_material = in.armour_material;
  cable.supply = in.supply;
  return cable;
}

earth::Material armour_material_of(const Job& job) {
  using cable::ArmourMaterial;
  if (job.cable.armour_material) {
    switch (*job.cable.armour_material) {
      case ArmourMaterial::steel:
        return earth::Material::steel;
      case ArmourMaterial::aluminium:
        return earth::Material::aluminium;
      case ArmourMaterial::copper:
        return earth::Material::copper;
    }
  }
  const bool aluminium = job.construction && job.construction->armour_material == "aluminium";
  return aluminium ? earth::Material::aluminium : earth::Material::steel;
}

/// Solid conductors over this size are of aluminium (HD 604 S1/A1).
constexpr double k_largest_solid_copper_mm2 = 16.0;

void check_fault(const earth::EarthFault& fault, Faults& faults) {
  if (!fault.current_ka || !fault.loop_ohm) return;
  faults.add(ErrorCode::contradiction, "the fault current is given twice", "fault.current_ka", "",
             "a current, or loop_ohm with u0_v", "leave one of them out");
}

}  // namespace

void name_places(std::vector<Fault>& faults, Unstated unstated) {
  for (Fault& fault : faults) {
    for (const Field& field : fields()) {
      const std::string path = std::string(field.section) + "." + std::string(field.key);
      const std::string place = fault.where.substr(0, fault.where.find(','));
      if (place != path && place != field.key) continue;
      const std::string name = unstated == Unstated::measured ? std::string(field.option) : path;
      fault.where = name + fault.where.substr(place.size());
      break;
    }
  }
}

earth::EarthInput armour_earth_input(const Job& job, const tables::Standards& standards) {
  earth::EarthInput in;
  in.armour = earth::armour_area(job.cable, job.construction, standards);
  in.armour_material = armour_material_of(job);
  in.insulation_is_taken = !job.insulation;
  in.insulation =
      job.insulation == cable::Insulation::pvc ? earth::Insulation::pvc : earth::Insulation::xlpe;
  in.line_mm2 = job.cable.csa_mm2;
  if (job.construction && job.construction->in.conductor == cable::Conductor::solid &&
      job.construction->in.csa_mm2 > k_largest_solid_copper_mm2) {
    in.line_material = earth::Material::aluminium;
  }
  in.fault = job.fault;
  in.length_m = job.cable.length_m;
  return in;
}

namespace {

Asked asked_of(const std::optional<std::string>& text, Faults& faults) {
  Asked asked;
  std::string_view rest = text ? std::string_view(*text) : std::string_view();
  while (!(rest = trimmed(rest)).empty()) {
    const std::size_t end = std::min(rest.find_first_of(" ,"), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest = rest.substr(std::min(end + 1, rest.size()));
    if (word == "joint") {
      asked.joint = true;
    } else if (word == "place") {
      asked.place = true;
    } else if (word == "earth") {
      asked.earth = true;
    } else if (word == "fault") {
      asked.fault = true;
    } else if (!word.empty()) {
      faults.add(ErrorCode::bad_value, "this is nothing that is asked of an end", "asked",
                 std::string(word), "joint, place, earth, fault", "");
    }
  }
  return asked;
}

}  // namespace

Frame make_frame(JobInput in, const tables::Standards& standards, Unstated unstated, Job& job) {
  Faults faults;
  Frame frame;
  frame.unstated = unstated;
  job.name = in.job.value_or("");
  job.tag = in.tag.value_or("");
  job.end = in.end.value_or("");
  job.cable = cable_without_diameters(in);
  job.construction = construction_of(in, standards, frame.notes);
  job.caliper = detail::caliper_of(in);
  job.assumed = assumed_in(in);
  if (const std::string note = measure::coarse_step_note(job.caliper, standards.caliper_limits);
      !note.empty()) {
    frame.notes.push_back(note);
    for (Assumption& each : job.assumed) {
      if (each.fact == "mpe_mm") each = {"mpe_mm", plain(job.caliper.step_mm) + " mm", note};
    }
  }
  job.asked = asked_of(in.asked, faults);
  job.entry = detail::resolve_entry(in, faults);
  job.area = detail::resolve_area(in, faults);
  faults.add(put_tails(in, job));
  job.fault = {.current_ka = in.current_ka,
               .time_s = in.time_s,
               .let_through_a2s = std::nullopt,
               .loop_ohm = in.loop_ohm,
               .u0_v = in.u0_v,
               .device = in.device ? earth::parse_device(*in.device) : std::nullopt};
  check_fault(job.fault, faults);
  if (in.device && !job.fault.device) {
    faults.add(ErrorCode::bad_value, "this is not a circuit breaker whose curve is published",
               "fault.device", *in.device, std::string(earth::k_device_form), "");
  }
  job.compound_pack_cm3 = in.compound_pack_cm3;
  if (job.cable.armour == ArmourKind::none && earth::is_asked(job.fault)) {
    frame.notes.emplace_back(
        "a fault is given, but no armour carries it: it is not checked; the protective conductor "
        "lies in the cable or beside it");
  }
  if (std::string said = area::said_beside_plain(job.area); !said.empty()) {
    frame.notes.push_back("the place is stated plain (zone none): " + said + " is not looked at");
  }
  job.insulation = in.insulation;
  frame.in = std::move(in);
  frame.faults = faults.take();
  return frame;
}

Job resolve(const JobInput& in, const tables::Standards& standards, Unstated unstated,
            const std::optional<Estimate>& sheath_od) {
  Job job;
  const Frame frame = make_frame(in, standards, unstated, job);
  Faults faults;
  const auto take = [&](Layer layer, const std::optional<measure::Readings>& readings,
                        std::optional<Estimate>& into) {
    if (!readings) return;
    try {
      into = estimate(frame, layer, *readings, standards);
    } catch (const InputError& error) {
      faults.add(error.faults());
    }
  };
  take(Layer::sheath, in.sheath_od_mm, job.cable.sheath_od);
  if (sheath_od && in.sheath_od_mm) {
    faults.add(ErrorCode::contradiction, "the sheath diameter is given twice", "cable.sheath_od_mm",
               in.sheath_od_mm->text, "", "give readings of the sheath, or a file of them");
  }
  if (sheath_od) job.cable.sheath_od = sheath_od;
  take(Layer::bedding, in.bedding_mm, job.cable.bedding);
  take(Layer::wire, in.armour_mm, job.cable.wire);
  faults.add(complete(frame, standards, job));
  faults.add(frame.faults);
  std::vector<Fault> all = faults.take();
  name_places(all, unstated);
  if (!all.empty()) throw InputError(std::move(all));
  return job;
}

}  // namespace cutback::job
