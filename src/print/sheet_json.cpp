#include "cutback/print/print.hpp"
#include "print/fit_parts.hpp"
#include "print/json_number.hpp"

namespace cutback::print {

using nlohmann::ordered_json;

namespace {

ordered_json marks_json(const strip::Marks& marks) {
  return json_figures({{"shoulder_mm", marks.shoulder_mm},
                       {"bedding_cut_mm", marks.bedding_cut_mm},
                       {"armour_cut_mm", marks.armour_cut_mm},
                       {"sheath_cut_mm", marks.sheath_cut_mm},
                       {"exposed_min_mm", marks.exposed_min_mm},
                       {"exposed_max_mm", marks.exposed_max_mm}});
}

ordered_json depths_json(const strip::Depths& depths, const std::optional<double>& from_mm) {
  return json_figures({{"sheath_mm", depths.sheath_mm},
                       {"saw_mm", depths.saw_mm},
                       {"saw_limit_mm", depths.saw_limit_mm},
                       {"bedding_mm", depths.bedding_mm},
                       {"spread_mm", depths.spread_mm},
                       {"sheath_less_bedding_from_mm", from_mm}});
}

ordered_json tails_json(const std::vector<strip::Tail>& tails) {
  ordered_json list = ordered_json::array();
  for (const strip::Tail& tail : tails) {
    ordered_json item;
    item["core"] = tail.core;
    item["length_mm"] = json_number(tail.length_mm);
    item["less_strip_mm"] = json_number(tail.less_strip_mm);
    item["cut_back_mm"] = json_number(tail.cut_back_mm);
    item["strip_mm"] = json_number(tail.strip_mm);
    item["route"] = tail.route;
    list.push_back(std::move(item));
  }
  return list;
}

ordered_json earth_or_null(const sheet::Sheet& sheet) {
  if (!sheet.earth) return nullptr;
  const job::Job& job = *sheet.job;
  return earth_object(*sheet.earth, {.fault = true,
                                     .line = job.cable.csa_mm2.has_value(),
                                     .gland = true,
                                     .resistance = job.cable.length_m.has_value()});
}

ordered_json gate_json(const fit::Gate& gate) {
  return json_figures({{"low_mm", gate.low_mm}, {"high_mm", gate.high_mm}});
}

ordered_json gates_json(const fit::Gates& gates) {
  ordered_json item;
  item["sheath"] = gate_json(gates.sheath);
  item["sheath"]["apart_mm"] = json_number(gates.sheath_apart_mm);
  item["bedding"] = gate_json(gates.bedding);
  item["bedding"]["apart_mm"] = json_number(gates.bedding_apart_mm);
  ordered_json wires = ordered_json::array();
  for (const fit::WireGate& wire : gates.wire) {
    ordered_json one = gate_json(wire.gate);
    one["nominal_mm"] = json_number(wire.nominal_mm);
    one["sheath_less_bedding_min_mm"] = json_number(wire.least_between_mm);
    one["sheath_less_bedding_max_mm"] = json_number(wire.most_between_mm);
    wires.push_back(std::move(one));
  }
  item["wire"] = std::move(wires);
  return item;
}

ordered_json axis_json(const strip::Axis& axis) {
  return json_figures({{"inside_face_mm", axis.inside_face_mm},
                       {"armour_stop_mm", axis.armour_stop_mm},
                       {"bedding_end_mm", axis.bedding_end_mm},
                       {"tip_mm", axis.tip_mm}});
}

}  // namespace

std::string sheet_json(const sheet::Sheet& sheet) {
  const job::Job& job = *sheet.job;
  ordered_json root = json_head();
  root["job"] = job.name;
  root["tag"] = job.tag;
  root["end"] = job.end;
  root["state"] = std::string(to_string(sheet.state));
  root["ready"] = sheet.state == sheet::State::cut;
  root["not_ready"] = sheet.not_ready;
  root["lacks"] = lacks_json(sheet.lacks);
  root["not_asked"] = topics_json(sheet.not_asked);
  root["assumptions"] = assumptions_json(sheet.assumptions);
  root["gates"] = gates_json(sheet.gates);
  root["cable"] = cable_json(job.cable);
  root["demand"] = demand_json(*sheet.demand);
  if (sheet.fit) {
    ordered_json gland = gland_fit_json(*sheet.fit);
    root["checks"] = gland["checks"];
    gland.erase("checks");
    gland["because"] = sheet.chosen_because;
    root["gland"] = std::move(gland);
  }
  if (!sheet.fits_instead.empty()) {
    root["instead"] = sheet.fits_instead;
  } else if (!sheet.fit || sheet.fit->verdict != Verdict::fits) {
    root["advice"]["measure"] = sheet.advice.measure_says;
    root["advice"]["order"] = sheet.advice.order_says;
  }
  const strip::CutPlan none;
  const strip::CutPlan& plan = sheet.plan ? *sheet.plan : none;
  root["marks"] = marks_json(plan.marks);
  root["depths"] = depths_json(plan.depths, sheet.depths_from_mm);
  root["tails"] = tails_json(plan.tails);
  root["axis"] = axis_json(plan.axis);
  ordered_json parts = ordered_json::array();
  for (const sheet::Part& part : sheet.parts) {
    ordered_json item;
    item["part"] = part.name;
    item["note"] = part.note;
    parts.push_back(std::move(item));
  }
  root["parts"] = std::move(parts);
  ordered_json steps = ordered_json::array();
  for (const sheet::Step& step : sheet.steps) {
    ordered_json item;
    item["text"] = step.text;
    item["hold"] = step.hold;
    steps.push_back(std::move(item));
  }
  root["steps"] = std::move(steps);
  ordered_json tests = ordered_json::array();
  for (const sheet::Test& test : sheet.tests) {
    ordered_json item;
    item["test"] = test.name;
    item["says"] = test.says;
    item["unit"] = test.unit;
    item["least"] = json_number(test.least);
    item["most"] = json_number(test.most);
    tests.push_back(std::move(item));
  }
  root["tests"] = std::move(tests);
  root["earth"] = earth_or_null(sheet);
  ordered_json inspection = ordered_json::array();
  for (const area::InspectionItem& item : sheet.inspection) {
    ordered_json entry;
    entry["key"] = item.key;
    entry["text"] = item.text;
    entry["source"] = item.source;
    inspection.push_back(std::move(entry));
  }
  root["inspection"] = std::move(inspection);
  root["remarks"] = sheet.remarks;
  root["cautions"] = sheet.cautions;
  root["sources"] = sheet.sources;
  return json_text(root);
}

}  // namespace cutback::print
