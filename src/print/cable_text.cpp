#include <fmt/format.h>
#include <algorithm>

#include "cutback/number.hpp"
#include "cutback/print/cable.hpp"
#include "cutback/text.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using cable::Construction;

std::string title(const cable::ConstructionInput& in) {
  const std::string earth = in.earth_csa_mm2 ? " + " + plain(*in.earth_csa_mm2) : "";
  return fmt::format("CABLE  {} x {}{} mm2, {}, {} kV, {}, armour {}, pattern {}\n", in.cores,
                     plain(in.csa_mm2), earth, to_string(*in.insulation), to_string(in.voltage),
                     to_string(*in.conductor), to_string(in.armour), to_string(in.pattern));
}

std::string diameter_line(std::string_view name, double value_mm, double expanded_mm) {
  return fmt::format("  {}{} +/- {} mm, estimated\n", cell(name, 18), right(fixed(value_mm, 1), 6),
                     fixed(round_up(expanded_mm, 0.1), 1));
}

std::string figures(const Construction& cable) {
  std::string text = diameter_line("sheath OD", cable.sheath_od_mm, cable.expanded_mm) +
                     diameter_line("bedding", cable.bedding_diameter_mm, cable.bedding_expanded_mm);
  if (cable.wires) {
    text += fmt::format("  {}{} mm, about {} of them, {} mm2 of {}\n", cell("armour wire", 18),
                        right(fixed(*cable.layers.armour_mm, 2), 6), *cable.wires,
                        fixed(*cable.armour_area_mm2, 0), cable.armour_material);
  }
  return text;
}

std::string section_rows(const Construction& cable, const Style& style) {
  std::string text = heading("cross-section, from the conductor outward", style);
  text += "  " + cell("layer", 24) + right("thickness", 12) + right("diameter", 12) + "\n";
  for (const cable::SectionRow& row : cable.section) {
    text += "  " + cell(row.name, 24) +
            right(row.thickness_mm ? fixed(*row.thickness_mm, 2) : "-", 12) +
            right(row.diameter_mm ? fixed(*row.diameter_mm, 1) : "-", 12) + "\n";
  }
  return text +
         "  mm. Thickness: nominal, of one wire or one tape. Diameter: as made, estimated.\n";
}

/// The document and its edition: up to the clause, or to a remark in brackets.
std::string_view document_of(std::string_view source) {
  const std::size_t clause = source.find_first_of(",;");
  source = source.substr(0, clause);
  for (std::size_t at = source.find(" ("); at != std::string_view::npos;
       at = source.find(" (", at + 1)) {
    if (at + 2 < source.size() && !is_digit(source[at + 2])) return source.substr(0, at);
  }
  return source;
}

/// Each document once; the clauses stand in JSON.
std::string sources_line(const std::vector<std::string>& sources) {
  std::vector<std::string> documents;
  for (const std::string& source : sources) {
    std::string document(document_of(source));
    if (std::find(documents.begin(), documents.end(), document) == documents.end()) {
      documents.push_back(std::move(document));
    }
  }
  return "\n" + wrapped("Sources   ", joined(documents, "; ") + ". Clauses: --json");
}

}  // namespace

std::string cable_text(const Construction& cable, const Style& style) {
  return title(cable.in) + figures(cable) + section_rows(cable, style) +
         bullets("steps", cable.steps, style) + bullets("cautions", cable.cautions, style) +
         sources_line(cable.sources);
}

}  // namespace cutback::print
