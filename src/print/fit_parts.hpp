#pragma once
// Pieces that the fit and the sheet both print.

#include <nlohmann/json.hpp>
#include <string>

#include "cutback/print/print.hpp"

namespace cutback::print {

nlohmann::ordered_json cable_json(const cable::Cable& cable);
nlohmann::ordered_json check_json(const fit::Check& check);
nlohmann::ordered_json gland_fit_json(const fit::GlandFit& fit);

/// "Cable", "Entry" and "Area" as lines with a first column of nine.
std::string cable_lines(const cable::Cable& cable);
std::string entry_line(const entry::Entry& entry);

}  // namespace cutback::print
