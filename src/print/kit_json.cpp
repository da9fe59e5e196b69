#include "cutback/money.hpp"
#include "cutback/print/kit.hpp"
#include "print/json_number.hpp"
#include "print/kit_words.hpp"

namespace cutback::print {
namespace {

using nlohmann::ordered_json;

ordered_json parts_json(const KitReport& report) {
  ordered_json list = ordered_json::array();
  for (const schedule::KitPart& part : report.kit->parts) {
    const gland::Gland& gland = report.list->glands[part.part];
    ordered_json item;
    item["part"] = gland.part;
    item["description"] = gland.description;
    item["fits"] = part.fits;
    item["alone"] = part.alone;
    item["price"] = json_number(gland.price);
    item["stock"] = gland.stock ? ordered_json(*gland.stock) : ordered_json(nullptr);
    list.push_back(std::move(item));
  }
  return list;
}

ordered_json curve_json(const KitReport& report) {
  ordered_json list = ordered_json::array();
  std::size_t count = 0;
  for (const schedule::KitStep& step : report.kit->curve) {
    ordered_json item;
    item["count"] = ++count;
    item["ends"] = step.ends;
    item["percent"] = json_number(share_percent(step.ends, report.kit->served));
    item["exact"] = step.exact;
    item["parts"] = ordered_json::array();
    for (const std::size_t part : step.parts) {
      item["parts"].push_back(report.list->glands[part].part);
    }
    list.push_back(std::move(item));
  }
  return list;
}

ordered_json not_served_json(const KitReport& report) {
  ordered_json list = ordered_json::array();
  for (const NotServed& group : not_served_groups(report)) {
    ordered_json item;
    item["group"] = group.group;
    item["ends"] = ordered_json::array();
    for (const schedule::Exception* exception : group.ends) {
      ordered_json end;
      end["line"] = exception->line;
      end["tag"] = exception->tag;
      end["end"] = exception->end;
      end["verdict"] = exception->verdict;
      end["nearest"] = exception->nearest;
      end["reason"] = exception->reason;
      end["change"] = exception->change;
      item["ends"].push_back(std::move(end));
    }
    list.push_back(std::move(item));
  }
  return list;
}

ordered_json proof_json(const KitReport& report) {
  const schedule::Kit& kit = *report.kit;
  const bool by_parts = report.by == schedule::KitBy::parts;
  const auto bound = static_cast<double>(kit.bound);
  ordered_json item;
  item["proven"] = kit.proven;
  item["bound"] = json_number(by_parts ? bound : bound / 100.0);
  item["gap"] = json_number(gap_of(report));
  item["ties_broken"] = kit.ties_broken;
  item["searched_groups"] = kit.rows;
  item["searched_parts"] = kit.columns;
  item["time_limit_s"] = json_number(report.time_limit_s);
  item["says"] = proof_text(report);
  return item;
}

}  // namespace

std::string kit_json(const KitReport& report) {
  const schedule::Kit& kit = *report.kit;
  ordered_json result = json_head();
  result["schedule"] = report.file;
  result["list"] = report.list->name;
  result["glands"] = report.list->glands.size();
  result["rows"] = report.rows;
  result["ends"] = kit.served + kit.not_served;
  result["can_be_served"] = kit.served;
  result["by"] = report.by == schedule::KitBy::parts ? "parts" : "price";
  result["parts"] = parts_json(report);
  result["price"] = money_value(kit.cost_units, report.wanted->decimals);
  result["without_price"] = unpriced_in(report);
  result["curve"] = curve_json(report);
  result["buys"] = kit.curve.empty() ? "" : buys_text(kit);
  result["not_served"] = not_served_json(report);
  result["proof"] = proof_json(report);
  return json_text(result);
}

}  // namespace cutback::print
