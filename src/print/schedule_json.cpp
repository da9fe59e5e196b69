#include "cutback/hidden.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/schedule/layout.hpp"
#include "print/json_number.hpp"

namespace cutback::print {

using nlohmann::ordered_json;

namespace {

ordered_json part_json(const gland::Gland* gland) {
  return gland != nullptr ? ordered_json(gland->part) : ordered_json(nullptr);
}

ordered_json figure_json(const std::optional<schedule::UsedFigure>& figure) {
  if (!figure) return nullptr;
  return {{"value", json_number(figure->mm)},
          {"expanded", json_number(figure->expanded_mm)},
          {"evidence", std::string(to_string(figure->evidence))}};
}

void put_decision(ordered_json& item, const schedule::Decision& decision) {
  item["part"] = part_json(decision.gland);
  item["fits"] = decision.fits;
  item["price"] = decision.gland != nullptr ? json_number(decision.gland->price) : nullptr;
  item["outer_margin_mm"] = json_number(decision.outer_margin_mm);
  item["inner_margin_mm"] = json_number(decision.inner_margin_mm);
  item["armour_margin_mm"] = json_number(decision.armour_margin_mm);
  item["barrier"] = decision.barrier ? ordered_json(*decision.barrier) : ordered_json(nullptr);
  item["armour_cut_mm"] = json_number(decision.armour_cut_mm);
  item["sheath_cut_mm"] = json_number(decision.sheath_cut_mm);
  item["bedding_cut_mm"] = json_number(decision.bedding_cut_mm);
  item["reason"] = decision.reason;
  item["state"] = std::string(to_string(decision.state));
  item["not_asked"] = decision.not_asked;
  item["wavers_between"] = ordered_json::array();
  if (decision.wavering) {
    item["wavers_between"] = {decision.wavering.one->part, decision.wavering.other->part};
  }
  item["nearest"] = part_json(decision.nearest);
  item["change"] = decision.change;
  item["remarks"] = decision.remarks;
  item["sheath_od_mm"] = figure_json(decision.sheath_od);
  item["bedding_mm"] = figure_json(decision.bedding);
  item["armour_mm"] = figure_json(decision.armour);
}

}  // namespace

std::string columns_json() {
  std::string out;
  for (const job::Field* const each : schedule::column_fields()) {
    const job::Field& field = *each;
    ordered_json item = json_head();
    item["column"] = field.key;
    item["section"] = field.section;
    item["of_each_end"] = schedule::is_of_end(field);
    item["help"] = field.help;
    item["allowed"] = job::allowed_text(field);
    out += item.dump() + "\n";
  }
  return out;
}

std::string notes_json(std::span<const std::string> notes) {
  ordered_json item = json_head();
  item["notes"] = ordered_json::array();
  for (const std::string& note : notes) {
    // Without the line breaks and spaces of a screen.
    std::string line;
    for (const char c : note) {
      const bool space = c == '\n' || c == ' ';
      if (!space) line += c;
      if (space && !line.empty() && line.back() != ' ') line += ' ';
    }
    item["notes"].push_back(line);
  }
  return harmless_json(item.dump(-1, ' ', false, ordered_json::error_handler_t::replace)) + "\n";
}

void append_schedule_json(std::string& out, const schedule::EndName& name,
                          const schedule::Decision& decision,
                          std::span<const schedule::OwnValue> defaults, std::string_view supplier) {
  ordered_json item = json_head();
  item["line"] = name.line;
  item["source"] = std::string(name.source);
  item["quantity"] = name.quantity;
  item["tag"] = std::string(name.tag);
  item["end"] = std::string(name.end);
  item["verdict"] = std::string(schedule::verdict_word(decision));
  if (decision.usable()) {
    put_decision(item, decision);
  } else {
    ordered_json errors = ordered_json::array();
    for (const Fault& fault : decision.faults) errors.push_back(to_line(fault));
    item["errors"] = std::move(errors);
  }
  item["supplier"] = std::string(supplier);
  item["defaults"] = ordered_json::array();
  for (std::size_t i = 0; i < defaults.size(); ++i) {
    if ((decision.defaults >> i & 1U) == 0) continue;
    item["defaults"].push_back(defaults[i].column + "=" + defaults[i].text);
  }
  out += harmless_json(item.dump(-1, ' ', false, ordered_json::error_handler_t::replace));
  out += '\n';
}

}  // namespace cutback::print
