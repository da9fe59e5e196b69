#include "cutback/schedule/groups.hpp"

#include <algorithm>
#include <cmath>

#include "core/schedule/cell_text.hpp"
#include "cutback/money.hpp"
#include "cutback/number.hpp"

namespace cutback::schedule {

int decimals_of(std::span<const gland::Gland> glands) {
  int decimals = k_least_price_decimals;
  for (const gland::Gland& gland : glands) {
    if (!gland.price) continue;
    const auto own = price_decimals(*gland.price);
    if (!own) {
      throw InputError(make_fault(ErrorCode::out_of_range, "a price with more than six decimals",
                                  "part " + gland.part + ", column price", plain(*gland.price, 12),
                                  "six decimals at most"));
    }
    decimals = std::max(decimals, *own);
  }
  return decimals;
}

std::vector<Part> parts_of(std::span<const gland::Gland> glands, int decimals) {
  std::vector<Part> parts;
  std::int64_t dearest_units = 0;
  for (const gland::Gland& gland : glands) {
    Part part;
    part.code = gland.part;
    part.priced = gland.price.has_value();
    part.cost_units = price_units(gland.price.value_or(0.0), decimals);
    if (gland.stock) part.stock = std::llround(*gland.stock);
    dearest_units = std::max(dearest_units, part.cost_units);
    parts.push_back(std::move(part));
  }
  for (Part& part : parts) {
    if (!part.priced) part.cost_units = dearest_units;
  }
  return parts;
}

namespace {

/// As it stands in the file.
std::string heading_of(const Layout& layout, std::size_t cell, const char* own) {
  const auto found = std::find_if(layout.mapping.begin(), layout.mapping.end(),
                                  [&](const Mapped& each) { return each.cell == cell; });
  return found != layout.mapping.end() ? found->heading : own;
}

}  // namespace

std::optional<Fault> fault_of_row(const Layout& layout, Cells cells) {
  const std::string_view tag = tag_of(layout, cells);
  if (tag.starts_with("#struck-through")) {
    return Fault{.code = ErrorCode::bad_value,
                 .what = "the tag, or part of it, is struck through",
                 .where = {},
                 .given = {},
                 .allowed = {},
                 .hint = "write the tag that holds, and strike the whole row out where none does"};
  }
  if (is_sheet_error(tag)) {
    return Fault{.code = ErrorCode::bad_value,
                 .what = "the tag is a spreadsheet's error",
                 .where = {},
                 .given = std::string(tag),
                 .allowed = {},
                 .hint = "mend the formula and save again"};
  }
  if (tag.empty()) {
    return Fault{.code = ErrorCode::missing,
                 .what = "the tag is blank",
                 .where = {},
                 .given = {},
                 .allowed = {},
                 .hint = "name the cable, or take the row out"};
  }
  if (!quantity_of(layout, cells)) {
    return Fault{.code = ErrorCode::bad_number,
                 .what = "not a number of cables",
                 .where = "column " + heading_of(layout, layout.quantity, "quantity"),
                 .given = std::string(cell(cells, layout.quantity)),
                 .allowed = "a whole number from 1 to 10000, or nothing for 1",
                 .hint = "take a row out that stands for no cable"};
  }
  if (cells.size() <= layout.width) return std::nullopt;
  return Fault{.code = ErrorCode::bad_syntax,
               .what = "more cells than headings",
               .where = {},
               .given = std::to_string(cells.size()),
               .allowed = std::to_string(layout.width),
               .hint = "put cells that hold a comma in quotes"};
}

std::uint32_t Grouper::add(const PartSet& parts, std::int64_t ends) {
  const auto [at, fresh] = numbers_.try_emplace(parts, static_cast<std::uint32_t>(groups_.size()));
  if (fresh) groups_.push_back({.ends = 0, .parts = parts});
  groups_[at->second].ends += ends;
  return at->second;
}

}  // namespace cutback::schedule
