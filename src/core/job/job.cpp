#include "cutback/job/job.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/job/words.hpp"
#include "cutback/cable/plausibility.hpp"
#include "cutback/error.hpp"
#include "cutback/job/construction.hpp"
#include "cutback/number.hpp"

namespace cutback::job {
namespace {

using cable::ArmourKind;
using measure::Estimate;
using measure::Evidence;
using measure::Place;

/// Collects faults; `where` of each is the job's own key.
class Faults {
 public:
  void add(ErrorCode code, std::string what, std::string where, std::string given,
           std::string allowed, std::string hint) {
    list_.push_back({.code = code,
                     .what = std::move(what),
                     .where = std::move(where),
                     .given = std::move(given),
                     .allowed = std::move(allowed),
                     .hint = std::move(hint)});
  }
  void add(const std::vector<Fault>& faults) {
    list_.insert(list_.end(), faults.begin(), faults.end());
  }
  [[nodiscard]] std::vector<Fault> take() { return std::move(list_); }

 private:
  std::vector<Fault> list_;
};

std::optional<bool> yes_no(const std::optional<std::string>& word) {
  if (!word) return std::nullopt;
  return *word == "yes";
}

std::optional<int> whole(const std::optional<double>& value) {
  if (!value) return std::nullopt;
  return static_cast<int>(*value);
}

/// What one layer's figure needs to become an estimate.
struct Diameter {
  std::string_view key;
  double allowance_mm;
  measure::Section section;
};

Diameter diameter_of(const JobInput& in, Layer layer) {
  switch (layer) {
    case Layer::sheath:
      return {"sheath_od_mm", in.od_allow_mm.value_or(k_od_allow_mm), measure::Section::oval};
    case Layer::bedding:
      return {"bedding_mm", in.bedding_allow_mm.value_or(k_bedding_allow_mm),
              measure::Section::oval};
    case Layer::wire:
      break;
  }
  return {"armour_mm", in.armour_allow_mm.value_or(k_wire_allow_mm), measure::Section::round};
}

Evidence evidence_of(const JobInput& in, const std::vector<Place>& places, Unstated unstated) {
  constexpr std::array k_all{Evidence::measured, Evidence::datasheet, Evidence::estimated};
  if (in.evidence) return detail::value_of(in.evidence, k_all).value_or(Evidence::measured);
  if (unstated == Unstated::measured) return Evidence::measured;
  const bool several = places.size() > 1 || places.front().readings_mm.size() > 1;
  return several ? Evidence::measured : Evidence::datasheet;
}

Estimate estimate_of(const JobInput& in, Layer layer, const std::string& text,
                     const tables::Standards& standards, Unstated unstated) {
  const Diameter diameter = diameter_of(in, layer);
  const std::string where = "cable." + std::string(diameter.key);
  const std::vector<Place> places = measure::parse_places(text, where);
  const Evidence evidence = evidence_of(in, places, unstated);
  if (evidence == Evidence::measured) {
    return measure::measure_here(
        {.places = places,
         .caliper = {.step_mm = in.step_mm.value_or(k_caliper_step_mm),
                     .mpe_mm = in.mpe_mm,
                     .zero_mm = in.zero_mm.value_or(0.0)},
         .section = diameter.section,
         .declared_ovality_mm =
             diameter.section == measure::Section::oval ? in.ovality_mm : std::nullopt},
        standards.caliper_limits);
  }
  if (places.size() > 1 || places.front().readings_mm.size() > 1) {
    throw InputError(Fault{
        .code = ErrorCode::contradiction,
        .what = "several readings are not one " + std::string(to_string(evidence)) + " figure",
        .where = where,
        .given = text,
        .allowed = "one figure",
        .hint = "set evidence to measured"});
  }
  const double value = places.front().readings_mm.front();
  if (evidence == Evidence::datasheet) return measure::from_datasheet(value, diameter.allowance_mm);
  return measure::from_model(value, diameter.allowance_mm, "an estimate given as such");
}

std::string mm(double value) { return plain(value, 3) + " mm"; }

/// What no cable can have: layers that do not fit inside each other.
void check_layers(const cable::Cable& cable, Faults& faults) {
  if (!cable.sheath_od || !cable.bedding) return;
  const double od = cable.sheath_od->value_mm;
  const double bedding = cable.bedding->value_mm;
  const auto given = [&] { return "sheath " + mm(od) + ", bedding " + mm(bedding); };
  if (bedding >= od) {
    faults.add(ErrorCode::contradiction, "the bedding is not smaller than the sheath",
               "cable.bedding_mm", given(), "bedding under " + mm(od),
               "look whether the two were exchanged, and measure again");
    return;
  }
  const auto sheath = cable::sheath_thickness_mm(cable);
  if (cable.armour == ArmourKind::wire && sheath && *sheath <= 0.0) {
    faults.add(ErrorCode::contradiction, "the wire does not fit between bedding and sheath",
               "cable.armour_mm", given() + ", wire " + mm(cable.wire->value_mm),
               "a wire under " + mm((od - bedding) / 2.0) + ", so that some sheath is left over it",
               "measure the three again");
  }
}

void take_warnings(const std::optional<Estimate>& estimate, const char* name,
                   std::vector<std::string>& warnings) {
  if (!estimate) return;
  for (const std::string& warning : estimate->warnings) {
    warnings.push_back(std::string(name) + ": " + warning);
  }
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

/// Diameters that were not given, from the others or else from the construction.
void estimate_missing(cable::Cable& cable, const std::optional<cable::Construction>& construction,
                      const tables::Standards& standards) {
  const cable::Pattern pattern = construction ? construction->in.pattern : cable::Pattern::british;
  if (!cable.wire && construction && construction->layers.armour_mm &&
      cable.armour == ArmourKind::wire) {
    cable.wire = measure::from_model(*construction->layers.armour_mm, 0.0,
                                     "armour wire of the construction");
    cable.wire_nominal = cable::wire_band(standards.wire_bands, cable.wire->value_mm);
  }
  if (!cable.sheath_od) {
    cable.sheath_od = cable::od_from_bedding(cable, pattern, standards);
    if (!cable.sheath_od && construction)
      cable.sheath_od = cable::sheath_od_estimate(*construction);
  }
  if (!cable.bedding && cable.armour != ArmourKind::none) {
    cable.bedding = cable::bedding_from_od(cable, pattern, standards);
    if (!cable.bedding && construction) cable.bedding = cable::bedding_estimate(*construction);
  }
}

/// What the diameters play no part in.
cable::Cable cable_without_diameters(const JobInput& in) {
  constexpr std::array k_armours{ArmourKind::wire, ArmourKind::braid, ArmourKind::tape,
                                 ArmourKind::strip, ArmourKind::none};
  cable::Cable cable;
  cable.armour = detail::value_of(in.armour, k_armours).value_or(ArmourKind::wire);
  cable.cores = whole(in.cores);
  cable.csa_mm2 = in.csa_mm2;
  cable.earth_csa_mm2 = in.earth_csa_mm2;
  cable.insulation = in.insulation;
  cable.length_m = in.length_m;
  cable.circular = yes_no(in.circular);
  cable.compact = yes_no(in.compact);
  if (in.bedding_made) {
    cable.bedding_made =
        *in.bedding_made == "extruded" ? cable::BeddingMade::extruded : cable::BeddingMade::lapped;
  }
  if (in.fillers) {
    cable.fillers = *in.fillers == "none"              ? cable::Fillers::none
                    : *in.fillers == "non-hygroscopic" ? cable::Fillers::non_hygroscopic
                                                       : cable::Fillers::hygroscopic;
  }
  constexpr std::array k_materials{cable::ArmourMaterial::steel, cable::ArmourMaterial::aluminium,
                                   cable::ArmourMaterial::copper};
  constexpr std::array k_supplies{cable::Supply::ac, cable::Supply::dc};
  cable.armour_material = detail::value_of(in.armour_material, k_materials);
  cable.supply = detail::value_of(in.supply, k_supplies);
  return cable;
}

std::optional<entry::Thread> thread_of(const std::string& text, const std::string& where,
                                       Faults& faults) {
  auto thread = entry::parse_thread(text);
  if (!thread) {
    faults.add(ErrorCode::bad_value, "this is no entry thread", where, text,
               std::string(entry::thread_forms()), "");
  }
  return thread;
}

/// `M25:M20`, or `M25:M20:db` with the adaptor's own protection.
void resolve_adaptor(const std::string& text, entry::Entry& entry, Faults& faults) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == ':') {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  const auto a = entry::parse_thread(parts[0]);
  const auto b = parts.size() > 1 ? entry::parse_thread(parts[1]) : std::nullopt;
  if (!a || !b || *a == *b || parts.size() > 3) {
    faults.add(ErrorCode::bad_value, "this is no thread adaptor", "entry.adaptor", text,
               "two different threads such as M25:M20, or M25:M20:db with its protection", "");
    return;
  }
  entry::Adaptor adaptor{*a, *b, {}};
  if (parts.size() == 3) adaptor.protection.push_back(parts[2]);
  entry.adaptors.push_back(std::move(adaptor));
  if (entry.thread && *entry.thread != *a && *entry.thread != *b) {
    faults.add(ErrorCode::contradiction, "neither side of the adaptor suits the entry",
               "entry.adaptor", text, "one side " + entry::to_text(*entry.thread), "");
  }
}

entry::Entry resolve_entry(const JobInput& in, Faults& faults) {
  entry::Entry entry;
  entry.to_suit = in.entry == "to-suit";
  if (in.entry && !entry.to_suit) entry.thread = thread_of(*in.entry, "entry.entry", faults);
  entry.hole_dia_mm = in.hole_dia_mm;
  if (in.hole) entry.hole = *in.hole == "threaded" ? entry::Hole::threaded : entry::Hole::clearance;
  entry.wall_mm = in.wall_mm;
  entry.washer_mm = in.washer_mm;
  entry.tag_mm = in.tag_mm;
  entry.serrated_mm = in.serrated_mm;
  entry.locknut_mm = in.locknut_mm;
  entry.chamfer_mm = in.chamfer_mm;
  entry.undercut_mm = in.undercut_mm;
  entry.adaptor_mm = in.adaptor_mm;
  entry.adaptor_thread_mm = in.adaptor_thread_mm;
  entry.adaptor_bore_mm = in.adaptor_bore_mm;
  entry.adaptor_material = in.adaptor_material;
  entry.material = in.material;
  if (in.adaptor) resolve_adaptor(*in.adaptor, entry, faults);
  return entry;
}

bool is_ip(std::string_view text) {
  if (text.size() != 2) return false;
  const auto figure = [](char c, char last) {
    return (c >= '0' && c <= last) || c == 'X' || c == 'x';
  };
  return figure(text[0], '6') && figure(text[1], '9');
}

std::optional<std::string> ip_of(const JobInput& in, Faults& faults) {
  if (!in.ip) return std::nullopt;
  std::string_view rest = *in.ip;
  if (rest.starts_with("IP") || rest.starts_with("ip")) rest.remove_prefix(2);
  const std::string figures(rest);
  while (!rest.empty()) {
    const std::size_t end = rest.find_first_of("/ ");
    if (!is_ip(rest.substr(0, end))) {
      faults.add(ErrorCode::bad_value, "this is no ingress protection", "area.ip", *in.ip,
                 "two figures such as 54, 66 or 66/68", "");
      return std::nullopt;
    }
    rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
  }
  return figures;
}

area::Area resolve_area(const JobInput& in, Faults& faults) {
  area::Area area;
  area.protection = in.protection;
  area.zone = in.zone;
  area.level = in.level;
  area.gas_group = in.gas_group;
  area.dust_group = in.dust_group;
  area.ip = ip_of(in, faults);
  area.volume_cm3 = in.volume_cm3;
  area.ignition_source = yes_no(in.ignition_source);
  area.bare_live_parts = yes_no(in.bare_live_parts);
  area.ambient_min_degc = in.ambient_min_c;
  area.ambient_max_degc = in.ambient_max_c;
  area.entry_temp_degc = in.entry_temp_c;
  area.branch_temp_degc = in.branch_temp_c;
  area.cable_max_degc = in.cable_max_c;
  if (in.rules) area.rules = area::parse_rule_set(*in.rules).value_or(area::RuleSet::strict);
  faults.add(area::contradictions(area));
  return area;
}

strip::Tails resolve_tails(const JobInput& in, Faults& faults) {
  strip::Tails tails;
  tails.slack_mm = in.slack_mm.value_or(0.0);
  tails.bend_radius_mm = in.bend_radius_mm;
  for (std::size_t i = 0; i < in.core_list.size(); ++i) {
    const CoreInput& given = in.core_list[i];
    const std::string where = "tails.cores[" + std::to_string(i) + "]";
    strip::Core core;
    core.name = given.core.value_or(std::to_string(i + 1));
    core.spare = given.spare && *given.spare == "yes";
    core.x_mm = given.x_mm;
    core.y_mm = given.y_mm;
    core.z_mm = given.z_mm;
    core.strip_mm = given.strip_mm ? given.strip_mm : in.strip_mm;
    const bool placed = given.x_mm || given.y_mm || given.z_mm;
    core.reach_mm = given.reach_mm;
    if (given.reach_mm && placed) {
      faults.add(ErrorCode::contradiction, "a route is a length or coordinates, not both", where,
                 "", "", "leave one of the two out");
    }
    if (!given.reach_mm && !placed && !core.spare) core.reach_mm = in.reach_mm;
    for (const strip::Core& other : tails.cores) {
      if (other.name == core.name) {
        faults.add(ErrorCode::duplicate, "two cores have one name", where + ".core", core.name, "",
                   "give each core its own name");
      }
    }
    tails.cores.push_back(std::move(core));
  }
  if (!in.core_list.empty() && in.cores && static_cast<double>(in.core_list.size()) < *in.cores) {
    faults.add(
        ErrorCode::missing, "some cores have no route", "tails.cores",
        std::to_string(in.core_list.size()) + " cores listed, the cable has " + plain(*in.cores),
        "a row for each core", "list the others, spare ones with \"spare\": \"yes\"");
  }
  const bool all_routed = std::all_of(
      in.core_list.begin(), in.core_list.end(),
      [](const CoreInput& c) { return c.reach_mm || c.x_mm || c.y_mm || c.z_mm || c.spare; });
  if (!in.core_list.empty() && in.reach_mm && all_routed) {
    faults.add(ErrorCode::contradiction, "a reach for all cores beside a route for each",
               "tails.reach_mm", plain(*in.reach_mm), "one of the two",
               "leave reach_mm out, or the routes of the cores");
  }
  if (tails.cores.empty() && in.reach_mm) {
    const int count = whole(in.cores).value_or(1);
    for (int i = 1; i <= count; ++i) {
      tails.cores.push_back({.name = in.cores ? std::to_string(i) : "all",
                             .reach_mm = in.reach_mm,
                             .strip_mm = in.strip_mm});
    }
  }
  return tails;
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

std::optional<earth::EarthInput> armour_earth_input(const Job& job) {
  if (!job.fault.current_ka || job.cable.armour == ArmourKind::none) return std::nullopt;
  earth::EarthInput in;
  if (job.construction) {
    in.armour = earth::constructed_area(*job.construction);
    if (job.construction->armour_material == "aluminium") {
      in.armour_material = earth::Material::aluminium;
    }
    in.insulation = *job.construction->in.insulation == cable::Insulation::pvc
                        ? earth::Insulation::pvc
                        : earth::Insulation::xlpe;
  }
  in.line_mm2 = job.cable.csa_mm2;
  in.fault = job.fault;
  in.length_m = job.cable.length_m;
  in.loop_ohm = job.loop_ohm;
  return in;
}

namespace {

std::string armour_fault_of(const Job& job, const tables::Standards& standards) {
  auto in = armour_earth_input(job);
  if (!in || !in->armour) return {};
  in->length_m.reset();  // how long it is does not say whether it is thick enough
  in->loop_ohm.reset();
  const earth::EarthResult result = earth::check_armour_earth(*in, standards);
  if (result.armour >= Verdict::not_known) return {};
  return "the armour is too thin for the earth fault: " + result.adiabatic.says +
         "; a separate protective conductor is to be decided first";
}

}  // namespace

Frame make_frame(JobInput in, const tables::Standards& standards, Unstated unstated) {
  Faults faults;
  Frame frame;
  frame.unstated = unstated;
  Job& job = frame.job;
  job.name = in.job.value_or("");
  job.tag = in.tag.value_or("");
  job.end = in.end.value_or("");
  job.cable = cable_without_diameters(in);
  job.construction = construction_of(in, standards, frame.notes);
  job.entry = resolve_entry(in, faults);
  job.area = resolve_area(in, faults);
  faults.add(put_tails(in, job));
  job.fault = {.current_ka = in.current_ka, .time_s = in.time_s, .let_through_a2s = std::nullopt};
  job.loop_ohm = in.loop_ohm;
  job.u0_v = in.u0_v;
  job.armour_fault = armour_fault_of(job, standards);
  frame.in = std::move(in);
  frame.faults = faults.take();
  return frame;
}

std::vector<Fault> put_tails(const JobInput& in, Job& job) {
  Faults faults;
  job.tails = resolve_tails(in, faults);
  job.armour_stop_mm = in.armour_stop_mm;
  return faults.take();
}

Estimate estimate(const Frame& frame, Layer layer, const std::string& text,
                  const tables::Standards& standards) {
  return estimate_of(frame.in, layer, text, standards, frame.unstated);
}

std::vector<Fault> complete(const Frame& frame, const tables::Standards& standards, Job& job) {
  Faults faults;
  cable::Cable& cable = job.cable;
  cable.wire_nominal.reset();
  if (cable.armour == ArmourKind::none && cable.wire) {
    faults.add(ErrorCode::contradiction, "an unarmoured cable has no armour wire",
               "cable.armour_mm", frame.in.armour_mm.value_or(mm(cable.wire->value_mm)), "",
               "leave the wire out, or say which armour it is");
  }
  if (cable.armour == ArmourKind::wire && cable.wire) {
    cable.wire_nominal = cable::wire_band(standards.wire_bands, cable.wire->value_mm);
  }
  cable.warnings.clear();
  take_warnings(cable.sheath_od, "sheath", cable.warnings);
  take_warnings(cable.bedding, "bedding", cable.warnings);
  take_warnings(cable.wire, "wire", cable.warnings);
  cable.warnings.insert(cable.warnings.end(), frame.notes.begin(), frame.notes.end());
  check_layers(cable, faults);
  const cable::Construction* construction = job.construction ? &*job.construction : nullptr;
  for (const cable::Remark& remark : cable::implausible_readings(cable, construction, standards)) {
    cable.warnings.push_back(remark.says + ". Repeat: " + remark.repeat + " (" + remark.source +
                             ")");
  }
  estimate_missing(cable, job.construction, standards);
  return faults.take();
}

Job resolve(const JobInput& in, const tables::Standards& standards, Unstated unstated,
            const std::optional<Estimate>& sheath_od) {
  const Frame frame = make_frame(in, standards, unstated);
  Job job = frame.job;
  Faults faults;
  const auto take = [&](Layer layer, const std::optional<std::string>& text,
                        std::optional<Estimate>& into) {
    if (!text) return;
    try {
      into = estimate(frame, layer, *text, standards);
    } catch (const InputError& error) {
      faults.add(error.faults());
    }
  };
  take(Layer::sheath, in.sheath_od_mm, job.cable.sheath_od);
  if (sheath_od && in.sheath_od_mm) {
    faults.add(ErrorCode::contradiction, "the sheath diameter is given twice", "cable.sheath_od_mm",
               *in.sheath_od_mm, "", "give readings of the sheath, or a file of them");
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
