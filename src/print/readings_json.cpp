#include "cutback/print/readings.hpp"
#include "print/json_number.hpp"

namespace cutback::print {
namespace {

using measure::DrumDifference;
using measure::DrumResult;
using measure::DrumsInput;
using measure::DrumsResult;
using measure::Estimate;
using measure::Judgement;
using nlohmann::ordered_json;

/// What is said of a drum and of the whole alike. Without a range nothing is judged: null.
void put_answer(ordered_json& item, const Estimate& estimate, double effective_degrees,
                const Judgement& judgement,
                const std::optional<measure::ToleranceInterval>& tolerance) {
  const bool judged = judgement.verdict != Verdict::not_known;
  const auto probability = [judged](double value) {
    return judged ? json_number(value) : ordered_json(nullptr);
  };
  item["value"] = json_number(estimate.value_mm);
  item["standard"] = json_number(estimate.standard_mm);
  item["expanded"] = json_number(estimate.expanded_mm);
  item["k"] = json_number(estimate.k);
  item["degrees_of_freedom"] = json_number(estimate.degrees_of_freedom);
  item["nu_eff"] = json_number(effective_degrees);
  item["probability"] = probability(judgement.probability);
  item["probability_below"] = probability(judgement.probability_below);
  item["probability_above"] = probability(judgement.probability_above);
  item["verdict"] = std::string(to_string(judgement.verdict));
  item["narrow"] = judgement.narrow;
  item["reasons"] = judgement.reasons;
  item["tolerance_interval"] = nullptr;
  if (tolerance) {
    item["tolerance_interval"] = {json_number(tolerance->low_mm), json_number(tolerance->high_mm)};
  }
}

ordered_json drum_json(const measure::Drum& drum, const DrumResult& result) {
  ordered_json item;
  item["drum"] = result.name;
  put_answer(item, result.estimate, result.effective_degrees, result.judgement, result.tolerance);
  item["further_places"] = nullptr;
  if (result.further.settling == measure::Settling::places) {
    item["further_places"] = result.further.places;
  }
  ordered_json places = ordered_json::array();
  for (std::size_t i = 0; i < drum.places.size(); ++i) {
    ordered_json place;
    place["mean"] = json_number(result.places[i].mean_mm);
    place["ovality"] = json_number(result.places[i].ovality_mm);
    place["readings"] = ordered_json::array();
    for (const double reading : drum.places[i].readings_mm) {
      place["readings"].push_back(json_number(reading));
    }
    places.push_back(std::move(place));
  }
  item["places"] = std::move(places);
  return item;
}

ordered_json difference_json(const std::optional<DrumDifference>& difference) {
  if (!difference) return nullptr;
  ordered_json item;
  item["f"] = json_number(difference->f);
  item["critical"] = json_number(difference->critical);
  item["differ"] = difference->differ;
  return item;
}

}  // namespace

std::string readings_json(const DrumsInput& in, const DrumsResult& result) {
  ordered_json root = json_head();
  put_answer(root, result.estimate, result.effective_degrees, result.judgement, result.tolerance);
  root["s_w"] = json_number(result.pooled_standard_mm);
  root["nu_w"] = json_number(result.pooled_degrees);
  root["f_test"] = difference_json(result.difference);
  root["warnings"] = result.warnings;
  ordered_json drums = ordered_json::array();
  for (std::size_t i = 0; i < result.drums.size(); ++i) {
    drums.push_back(drum_json(in.drums[i], result.drums[i]));
  }
  root["drums"] = std::move(drums);
  return json_text(root);
}

}  // namespace cutback::print
