#include "cutback/print/rules.hpp"
#include "print/json_number.hpp"

namespace cutback::print {
namespace {

using nlohmann::ordered_json;
using tables::Table;

ordered_json head_json(const Table& table) {
  ordered_json item;
  item["id"] = table.id;
  item["status"] = std::string(to_string(table.status));
  item["title"] = table.title;
  item["document"] = table.document;
  item["edition"] = table.edition;
  item["clause"] = table.clause;
  item["checksum"] = table.checksum;
  return item;
}

ordered_json cell_json(const tables::Cell& value) {
  if (const double* number = std::get_if<double>(&value)) return json_number(*number);
  if (const std::string* words = std::get_if<std::string>(&value)) return *words;
  return nullptr;
}

}  // namespace

std::string rules_json(const tables::Standards& standards) {
  ordered_json result = json_head();
  result["tables"] = ordered_json::array();
  for (const Table& table : standards.tables) {
    ordered_json item = head_json(table);
    item["rows"] = table.rows.size();
    result["tables"].push_back(item);
  }
  return json_text(result);
}

std::string rule_table_json(const Table& table) {
  ordered_json result = json_head();
  result.update(head_json(table));
  result["interval"] = table.interval;
  result["notes"] = table.notes;
  result["columns"] = table.columns;
  result["rows"] = ordered_json::array();
  for (const auto& row : table.rows) {
    ordered_json cells = ordered_json::array();
    for (const tables::Cell& value : row) cells.push_back(cell_json(value));
    result["rows"].push_back(cells);
  }
  return json_text(result);
}

}  // namespace cutback::print
