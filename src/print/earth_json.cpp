#include "cutback/print/earth.hpp"
#include "print/fit_parts.hpp"
#include "print/json_number.hpp"

namespace cutback::print {
namespace {

using earth::EarthResult;
using earth::Finding;
using nlohmann::ordered_json;

ordered_json k_json(const std::optional<earth::KValue>& k) {
  return k ? json_number(k->k) : ordered_json(nullptr);
}

ordered_json word_json(bool asked, const Finding& finding) {
  return asked ? ordered_json(std::string(to_string(finding.verdict))) : ordered_json(nullptr);
}

/// A sentence and its source; the verdict too, where something was judged.
enum class Kind { figure, judged };
ordered_json finding_json(const char* about, Kind kind, const Finding& finding) {
  ordered_json item;
  item["about"] = about;
  if (kind == Kind::judged) item["verdict"] = std::string(to_string(finding.verdict));
  item["says"] = finding.says;
  item["source"] = finding.source;
  return item;
}

}  // namespace

ordered_json earth_object(const EarthResult& result, const EarthAsked& asked) {
  ordered_json root;
  root["area_mm2"] = json_number(result.area_mm2);
  root["k"] = k_json(result.k);
  root["line_k"] = k_json(result.line_k);
  root["required_mm2"] = json_number(result.required_mm2);
  root["table_required_mm2"] = json_number(result.table_required_mm2);
  root["withstand_ka"] = json_number(result.withstand_ka);
  root["withstand_s"] = json_number(result.withstand_s);
  root["longest_s"] = json_number(result.longest_s);
  root["adiabatic"] = word_json(asked.fault, result.adiabatic);
  root["table"] = word_json(asked.line, result.table);
  root["armour"] = std::string(to_string(result.armour));
  root["gland"] = word_json(asked.gland, result.gland);
  root["resistance_ohm"] = json_number(result.resistance_ohm);
  root["resistance_hot_ohm"] = json_number(result.resistance_hot_ohm);
  root["path_ohm"] = json_number(result.path_ohm);
  root["loop_share"] = json_number(result.loop_share);
  ordered_json findings = ordered_json::array();
  findings.push_back(finding_json("area", Kind::figure, result.area));
  findings.push_back(finding_json("k", Kind::figure, result.factor));
  if (asked.fault) findings.push_back(finding_json("adiabatic", Kind::judged, result.adiabatic));
  if (asked.line) findings.push_back(finding_json("table", Kind::judged, result.table));
  if (asked.gland) findings.push_back(finding_json("gland", Kind::judged, result.gland));
  if (asked.resistance)
    findings.push_back(finding_json("resistance", Kind::figure, result.resistance));
  root["findings"] = std::move(findings);
  return root;
}

std::string earth_json(const EarthResult& result, const EarthAsked& asked) {
  ordered_json root = json_head();
  root.update(earth_object(result, asked));
  return json_text(root);
}

}  // namespace cutback::print
