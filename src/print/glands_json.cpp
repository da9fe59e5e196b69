#include "cutback/gland/columns.hpp"
#include "cutback/print/glands.hpp"
#include "print/json_number.hpp"

namespace cutback::print {
namespace {

using gland::Span;
using nlohmann::ordered_json;

ordered_json spans_json(const std::vector<Span>& spans) {
  ordered_json list = ordered_json::array();
  for (const Span& span : spans) {
    ordered_json item;
    item["low_mm"] = json_number(span.low_mm);
    item["high_mm"] = json_number(span.high_mm);
    list.push_back(item);
  }
  return list;
}

ordered_json group_json(const gland::Group& group) {
  ordered_json item;
  item["armour"] = std::string(to_string(group.armour));
  item["sealing"] = std::string(to_string(group.sealing));
  item["covered"] = spans_json(group.covered);
  item["gaps"] = spans_json(group.gaps);
  item["glands"] = ordered_json::array();
  for (const gland::Gland* gland : group.glands) {
    ordered_json row;
    row["part"] = gland->part;
    row["entry_thread"] = to_text(gland->entry_thread);
    row["outer_min_mm"] = json_number(gland->outer.low_mm);
    row["outer_max_mm"] = json_number(gland->outer.high_mm);
    item["glands"].push_back(row);
  }
  return item;
}

}  // namespace

std::string glands_json(const gland::GlandList& list, const gland::Coverage& coverage) {
  ordered_json result = json_head();
  result["list"] = list.name;
  result["count"] = list.glands.size();
  result["warnings"] = list.warnings;
  result["groups"] = ordered_json::array();
  for (const gland::Group& group : coverage.groups) result["groups"].push_back(group_json(group));
  result["entries"] = ordered_json::array();
  for (const gland::EntryGroup& entry : coverage.entries) {
    ordered_json item;
    item["entry_thread"] = to_text(entry.thread);
    item["count"] = entry.glands;
    item["covered"] = spans_json(entry.covered);
    result["entries"].push_back(item);
  }
  result["not_stated"] = ordered_json::array();
  for (const gland::NotStated& blank : coverage.not_stated) {
    ordered_json item;
    item["column"] = std::string(blank.column);
    item["blank"] = blank.blank;
    item["applies"] = blank.applies;
    result["not_stated"].push_back(item);
  }
  return json_text(result);
}

std::string gland_part_json(const gland::Gland& gland) {
  ordered_json result = json_head();
  ordered_json columns = ordered_json::object();
  for (const gland::Column& column : gland::columns()) {
    const std::string name(column.name);
    if (const auto figure = gland::number_of(gland, column)) {
      columns[name] = json_number(*figure);
    } else if (const auto text = gland::text_of(gland, column)) {
      columns[name] = *text;
    }
  }
  result["gland"] = std::move(columns);
  return json_text(result);
}

}  // namespace cutback::print
