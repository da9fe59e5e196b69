#pragma once
// Numbers as JSON carries them.

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <utility>

namespace cutback::print {

/// `value` to 12 significant digits: unrounded for every use, without the noise of the last bits.
/// Infinite is null.
nlohmann::ordered_json json_number(double value);
nlohmann::ordered_json json_number(const std::optional<double>& value);

/// An object of figures by name, in this order.
nlohmann::ordered_json json_figures(
    std::initializer_list<std::pair<const char*, std::optional<double>>> figures);

/// The head of every result: `cutback` and `format`.
nlohmann::ordered_json json_head();

/// The text of a result, two spaces a level, a line end at the end.
std::string json_text(const nlohmann::ordered_json& value);

}  // namespace cutback::print
