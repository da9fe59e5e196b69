#include "core/fit/gland_reads.hpp"

#include <array>
#include <cstring>

#include "cutback/gland/columns.hpp"

namespace cutback::fit::detail {
namespace {

void append(std::string& key, const gland::Gland& gland, const gland::Column& column) {
  if (const auto number = gland::number_of(gland, column)) {
    std::array<char, sizeof(double)> bytes{};
    std::memcpy(bytes.data(), &*number, bytes.size());
    (key += '1').append(bytes.data(), bytes.size());
  } else if (const auto text = gland::text_of(gland, column)) {
    (key += '1') += *text;
  }
  key += '\0';
}

}  // namespace

std::string kind_of(const gland::Gland& gland, CheckName check) {
  std::string key;
  for (const gland::Column& column : gland::columns()) {
    if (column.checks && column.checks->has(check)) append(key, gland, column);
  }
  return key;
}

}  // namespace cutback::fit::detail
