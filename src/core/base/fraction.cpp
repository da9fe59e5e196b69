#include "cutback/fraction.hpp"

#include <cmath>

#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback {

std::optional<WrittenFigure> parse_written(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) {
    const auto value = parse_number(text);
    if (!value) return std::nullopt;
    const std::size_t point = text.find('.');
    const std::size_t decimals = point == std::string_view::npos ? 0 : text.size() - point - 1;
    return WrittenFigure{*value, std::pow(10.0, -static_cast<double>(decimals))};
  }
  const std::size_t space = text.substr(0, slash).rfind(' ');
  const bool mixed = space != std::string_view::npos;
  const auto whole = parse_figure(mixed ? trimmed(text.substr(0, space)) : "0");
  const std::size_t begin = mixed ? space + 1 : 0;
  const auto upper = parse_figure(text.substr(begin, slash - begin));
  const auto lower = parse_figure(text.substr(slash + 1));
  if (!whole || !upper || !lower || *lower == 0.0) return std::nullopt;
  return WrittenFigure{*whole + *upper / *lower, 1.0 / *lower};
}

}  // namespace cutback
