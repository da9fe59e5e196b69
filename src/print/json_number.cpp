#include "print/json_number.hpp"

#include <fmt/format.h>
#include <cmath>
#include <string>

#include "cutback/hidden.hpp"
#include "cutback/number.hpp"

namespace cutback::print {

using nlohmann::ordered_json;

ordered_json json_number(double value) {
  if (!std::isfinite(value)) return nullptr;
  const double rounded = parse_number(fmt::format("{:.12g}", value)).value_or(value);
  return rounded == 0.0 ? 0.0 : rounded;
}

ordered_json json_number(const std::optional<double>& value) {
  if (!value) return nullptr;
  return json_number(*value);
}

ordered_json json_figures(
    std::initializer_list<std::pair<const char*, std::optional<double>>> figures) {
  ordered_json item = ordered_json::object();
  for (const auto& [name, value] : figures) item[name] = json_number(value);
  return item;
}

ordered_json json_head() {
  ordered_json head;
  head["cutback"] = CUTBACK_VERSION;
  head["format"] = 1;
  return head;
}

std::string json_text(const ordered_json& value) {
  return harmless_json(value.dump(2, ' ', false, ordered_json::error_handler_t::replace)) + "\n";
}

}  // namespace cutback::print
