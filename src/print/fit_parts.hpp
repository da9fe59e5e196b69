#pragma once
// Pieces that the fit and the sheet both print.

#include <nlohmann/json.hpp>
#include <string>

#include "cutback/fit/questions.hpp"
#include "cutback/print/earth.hpp"
#include "cutback/print/print.hpp"

namespace cutback::print {

nlohmann::ordered_json cable_json(const cable::Cable& cable);
nlohmann::ordered_json demand_json(const area::Demand& demand);
/// What `cutback earth --json` says, without its head.
nlohmann::ordered_json earth_object(const earth::EarthResult& result, const EarthAsked& asked);
nlohmann::ordered_json check_json(const fit::Check& check);
nlohmann::ordered_json lacks_json(const std::vector<fit::Lack>& lacks);
nlohmann::ordered_json assumptions_json(const std::vector<Assumption>& assumptions);
nlohmann::ordered_json topics_json(const std::vector<fit::Topic>& topics);
nlohmann::ordered_json gland_fit_json(const fit::GlandFit& fit);

/// "Cable", "Entry" and "Area" as lines with a first column of nine.
std::string cable_lines(const cable::Cable& cable);
std::string entry_line(const entry::Entry& entry);
/// The word of a check's verdict; of those that are never a verdict by themselves, CAUTION.
std::string check_word(const fit::Check& check, const Style& style, std::size_t width);
/// What the area asks of the gland, and the path to the sealing; empty in an ordinary place.
std::string area_lines(const job::Job& job, const area::Demand& demand);

}  // namespace cutback::print
