#pragma once
// A check with all that it holds as one text, so that a test keeps its words, figures and lacks at
// once.

#include <fmt/format.h>

#include <string>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/number.hpp"

namespace cutback::test {

inline std::string whole(const std::vector<fit::Lack>& lacks) {
  std::string text;
  for (const fit::Lack& lack : lacks) {
    const bool here = lack.where == fit::Lack::Where::at_the_end;
    text += fmt::format("{}{} <{}{}>", text.empty() ? "" : ", ", lack.fact,
                        here ? "at the end " : "", lack.key);
  }
  return text;
}

/// "fits: what it says | value 3 low 2 margin* 1 | lacks: wall <at the end wall_mm> | source"; the
/// star where the margin counts for that of the gland.
inline std::string whole(const fit::Check& check) {
  std::string text = fmt::format("{}: {} |", to_string(check.verdict), check.says);
  const auto put = [&](const char* name, const std::optional<double>& figure) {
    if (figure) text += fmt::format(" {} {}", name, plain(*figure, 3));
  };
  put("value", check.value);
  put("low", check.low);
  put("high", check.high);
  put(check.counts_for_margin ? "margin*" : "margin", check.margin_mm);
  put("p", check.probability);
  if (!check.lacks.empty()) text += " | lacks: " + whole(check.lacks);
  return text + " | " + check.source;
}

inline std::string whole(const Fault& fault) {
  std::string text = fmt::format("{} [{}]", fault.what, fault.where);
  const auto put = [&](const char* name, const std::string& part) {
    if (!part.empty()) text += fmt::format(" {}: {};", name, part);
  };
  put("given", fault.given);
  put("allowed", fault.allowed);
  put("hint", fault.hint);
  return text;
}

inline std::string whole(const std::vector<Fault>& faults) {
  std::string text;
  for (const Fault& fault : faults) text += (text.empty() ? "" : " | ") + whole(fault);
  return text;
}

/// The faults that this ends with; "no fault" where it ends without.
template <class Function>
std::string refusal_of(Function function) {
  try {
    function();
  } catch (const InputError& error) {
    return whole(error.faults());
  }
  return "no fault";
}

inline std::string lines(const std::vector<std::string>& list) {
  std::string text;
  for (const std::string& line : list) text += (text.empty() ? "" : " | ") + line;
  return text;
}

}  // namespace cutback::test
