#include "cutback/print/cable.hpp"
#include "print/json_number.hpp"

namespace cutback::print {
namespace {

using nlohmann::ordered_json;

ordered_json input_json(const cable::ConstructionInput& in) {
  ordered_json item;
  item["cores"] = in.cores;
  item["csa_mm2"] = json_number(in.csa_mm2);
  item["earth_csa_mm2"] = json_number(in.earth_csa_mm2);
  item["insulation"] = to_string(*in.insulation);
  item["voltage"] = to_string(in.voltage);
  item["conductor"] = to_string(*in.conductor);
  item["armour"] = to_string(in.armour);
  item["pattern"] = to_string(in.pattern);
  return item;
}

ordered_json layers_json(const cable::Construction& cable) {
  const bool wire = cable.in.armour == cable::ArmourKind::wire;
  return json_figures({{"insulation_mm", cable.layers.insulation_mm},
                       {"bedding_mm", cable.layers.bedding_mm},
                       {"armour_wire_mm", wire ? cable.layers.armour_mm : std::nullopt},
                       {"armour_mm", cable.layers.armour_mm},
                       {"oversheath_mm", cable.layers.oversheath_mm}});
}

ordered_json section_json(const std::vector<cable::SectionRow>& section) {
  ordered_json list = ordered_json::array();
  for (const cable::SectionRow& row : section) {
    ordered_json item;
    item["name"] = row.name;
    item["thickness_mm"] = json_number(row.thickness_mm);
    item["diameter_mm"] = json_number(row.diameter_mm);
    list.push_back(std::move(item));
  }
  return list;
}

}  // namespace

std::string cable_json(const cable::Construction& cable) {
  ordered_json root = json_head();
  root["cable"] = input_json(cable.in);
  root["evidence"] = to_string(measure::Evidence::estimated);
  root["layers"] = layers_json(cable);
  root["bedding_diameter_mm"] = json_number(cable.bedding_diameter_mm);
  root["bedding_expanded_mm"] = json_number(cable.bedding_expanded_mm);
  root["sheath_od_mm"] = json_number(cable.sheath_od_mm);
  root["expanded_mm"] = json_number(cable.expanded_mm);
  root["wires"] = cable.wires ? ordered_json(*cable.wires) : ordered_json(nullptr);
  root["armour_area_mm2"] = json_number(cable.armour_area_mm2);
  root["armour_material"] =
      cable.armour_material.empty() ? ordered_json(nullptr) : ordered_json(cable.armour_material);
  root["section"] = section_json(cable.section);
  root["steps"] = cable.steps;
  root["cautions"] = cable.cautions;
  root["sources"] = cable.sources;
  return json_text(root);
}

}  // namespace cutback::print
