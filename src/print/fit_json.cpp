#include "cutback/print/print.hpp"
#include "print/fit_parts.hpp"
#include "print/json_number.hpp"

namespace cutback::print {

using nlohmann::ordered_json;

namespace {

ordered_json estimate_json(const std::optional<measure::Estimate>& estimate) {
  if (!estimate) return nullptr;
  ordered_json item;
  item["value"] = json_number(estimate->value_mm);
  item["expanded"] = json_number(estimate->expanded_mm);
  item["standard"] = json_number(estimate->standard_mm);
  item["k"] = json_number(estimate->k);
  item["degrees_of_freedom"] = json_number(estimate->degrees_of_freedom);
  item["evidence"] = std::string(to_string(estimate->evidence));
  item["source"] = estimate->source;
  return item;
}

}  // namespace

ordered_json cable_json(const cable::Cable& cable) {
  ordered_json item;
  item["sheath_od_mm"] = estimate_json(cable.sheath_od);
  item["bedding_mm"] = estimate_json(cable.bedding);
  item["armour_mm"] = estimate_json(cable.wire);
  if (cable.wire_nominal)
    item["armour_mm"]["nominal"] = json_number(cable.wire_nominal->nominal_mm);
  item["armour"] = std::string(to_string(cable.armour));
  item["warnings"] = cable.warnings;
  return item;
}

ordered_json demand_json(const area::Demand& demand) {
  ordered_json item;
  item["sealing"] = std::string(to_string(demand.sealing));
  item["says"] = demand.says;
  item["source"] = demand.source;
  ordered_json path = ordered_json::array();
  for (const area::Answer& answer : demand.path) {
    ordered_json step;
    step["question"] = answer.question;
    step["yes"] = answer.yes;
    step["from"] = answer.from;
    step["source"] = answer.source;
    path.push_back(std::move(step));
  }
  item["path"] = std::move(path);
  item["would_change"] = demand.would_change;
  return item;
}

ordered_json check_json(const fit::Check& check) {
  ordered_json item;
  item["check"] = std::string(to_string(check.name));
  item["verdict"] = std::string(to_string(check.verdict));
  item["value"] = json_number(check.value);
  item["low"] = json_number(check.low);
  item["high"] = json_number(check.high);
  item["margin_mm"] = json_number(check.margin_mm);
  item["probability"] = json_number(check.probability);
  item["says"] = check.says;
  item["source"] = check.source;
  return item;
}

ordered_json lacks_json(const std::vector<fit::Lack>& lacks) {
  ordered_json list = ordered_json::array();
  for (const fit::Lack& lack : lacks) {
    ordered_json item;
    item["fact"] = lack.fact;
    item["key"] = std::string(lack.key);
    item["at_the_end"] = lack.where == fit::Lack::Where::at_the_end;
    list.push_back(std::move(item));
  }
  return list;
}

ordered_json assumptions_json(const std::vector<Assumption>& assumptions) {
  ordered_json list = ordered_json::array();
  for (const Assumption& assumption : assumptions) {
    ordered_json item;
    item["fact"] = assumption.fact;
    item["taken"] = assumption.taken;
    item["why"] = assumption.why;
    list.push_back(std::move(item));
  }
  return list;
}

ordered_json topics_json(const std::vector<fit::Topic>& topics) {
  ordered_json list = ordered_json::array();
  for (const fit::Topic topic : topics) list.push_back(std::string(to_string(topic)));
  return list;
}

ordered_json gland_fit_json(const fit::GlandFit& fit) {
  ordered_json item;
  item["part"] = fit.gland->part;
  item["description"] = fit.gland->description;
  item["verdict"] = std::string(to_string(fit.verdict));
  item["margin_mm"] = json_number(fit.margin_mm);
  item["price"] = json_number(fit.gland->price);
  item["stock"] = fit.gland->stock ? ordered_json(*fit.gland->stock) : ordered_json(nullptr);
  item["pack"] = fit.gland->pack ? ordered_json(*fit.gland->pack) : ordered_json(nullptr);
  ordered_json checks = ordered_json::array();
  for (const fit::Check& check : fit.checks) checks.push_back(check_json(check));
  item["checks"] = std::move(checks);
  return item;
}

std::string fit_json(const fit::Question& question, std::span<const fit::GlandFit> ranked) {
  const job::Job& job = *question.job;
  const bool fits = !ranked.empty() && ranked.front().verdict == Verdict::fits;
  ordered_json root = json_head();
  root["best"] = fits ? ordered_json(ranked.front().gland->part) : ordered_json(nullptr);
  root["state"] = std::string(to_string(
      fit::state_of(ranked.empty() ? Verdict::no_fit : ranked.front().verdict, job.cable)));
  root["not_asked"] = topics_json(fit::not_asked(question));
  root["assumptions"] =
      assumptions_json(fit::assumptions(question, ranked.empty() ? nullptr : ranked.front().gland));
  root["lacks"] =
      lacks_json(ranked.empty() ? std::vector<fit::Lack>{} : fit::lacks_of(ranked.front()));
  root["cable"] = cable_json(job.cable);
  root["demand"] = demand_json(*question.demand);
  if (!fits) {
    const fit::Advice advice = fit::advise(job, ranked);
    root["advice"]["nearest"] = advice.nearest_says;
    root["advice"]["measure"] = advice.measure_says;
    root["advice"]["order"] = advice.order_says;
  }
  ordered_json glands = ordered_json::array();
  for (const fit::GlandFit& fit : ranked) glands.push_back(gland_fit_json(fit));
  root["glands"] = std::move(glands);
  return json_text(root);
}

}  // namespace cutback::print
