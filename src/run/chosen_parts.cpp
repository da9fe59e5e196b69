#include "run/chosen_parts.hpp"

#include <algorithm>

#include "cutback/error.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::run {
namespace {

std::optional<std::size_t> find_column(const io::CsvRecord& headings, std::string_view name) {
  const auto at = std::find(headings.fields.begin(), headings.fields.end(), name);
  if (at == headings.fields.end()) return std::nullopt;
  return static_cast<std::size_t>(at - headings.fields.begin());
}

std::size_t column_of(const io::CsvRecord& headings, std::string_view name, const std::string& path,
                      const std::string& how_made) {
  if (const auto column = find_column(headings, name)) return *column;
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "these are not the results of a schedule",
                         .where = path + ", line " + std::to_string(headings.line),
                         .given = {},
                         .allowed = "a column " + std::string(name),
                         .hint = how_made});
}

}  // namespace

ChosenParts::ChosenParts(const std::string& path, const gland::GlandList& list,
                         const std::string& how_made)
    : path_(path), list_name_(list.name), rows_(path) {
  for (const gland::Gland& gland : list.glands) parts_.emplace(gland.part, &gland);
  const io::CsvRecord* const headings = next_row();
  if (headings == nullptr) {
    throw InputError(Fault{.code = ErrorCode::missing,
                           .what = "the results are empty",
                           .where = path,
                           .given = {},
                           .allowed = {},
                           .hint = how_made});
  }
  tag_ = column_of(*headings, "tag", path, how_made);
  end_ = column_of(*headings, "end", path, how_made);
  part_ = column_of(*headings, "part", path, how_made);
  cuts_ = {find_column(*headings, "armour_cut_mm"), find_column(*headings, "sheath_cut_mm"),
           find_column(*headings, "bedding_cut_mm")};
}

const io::CsvRecord* ChosenParts::next_row() {
  while (next_ == block_.rows) {
    next_ = 0;
    if (!rows_.read(block_)) return nullptr;
    rows_.finish(block_);
  }
  return &block_.records[next_++];
}

std::string ChosenParts::place_of(const io::CsvRecord& row) const {
  return path_ + ", line " + std::to_string(row.line);
}

ChosenEnd ChosenParts::next(std::string_view tag, std::string_view end) {
  const io::CsvRecord* const row = next_row();
  const std::string wanted = std::string(tag) + " " + std::string(end);
  if (row == nullptr) {
    throw InputError(Fault{.code = ErrorCode::contradiction,
                           .what = "the results have fewer ends than the schedule",
                           .where = path_,
                           .given = "no row for " + wanted,
                           .allowed = {},
                           .hint = "make them again from this schedule"});
  }
  const std::string_view given_tag = io::text_of_csv(schedule::cell(row->fields, tag_));
  const std::string_view given_end = io::text_of_csv(schedule::cell(row->fields, end_));
  if (given_tag != tag || given_end != end) {
    throw InputError(Fault{.code = ErrorCode::contradiction,
                           .what = "the results are in another order than the schedule",
                           .where = place_of(*row),
                           .given = std::string(given_tag) + " " + std::string(given_end),
                           .allowed = wanted,
                           .hint = "make them again from this schedule, and do not sort them"});
  }
  ChosenEnd chosen{.gland = gland_of(*row), .cuts_mm = {}};
  for (std::size_t i = 0; i < cuts_.size(); ++i) {
    if (cuts_[i]) chosen.cuts_mm[i] = parse_number(schedule::cell(row->fields, *cuts_[i]));
  }
  return chosen;
}

const gland::Gland* ChosenParts::gland_of(const io::CsvRecord& row) const {
  const std::string_view part = io::text_of_csv(schedule::cell(row.fields, part_));
  if (part.empty()) return nullptr;
  const auto found = parts_.find(part);
  if (found != parts_.end()) return found->second;
  std::vector<std::string_view> names;
  for (const auto& [name, gland] : parts_) names.push_back(name);
  std::sort(names.begin(), names.end());
  throw InputError(Fault{.code = ErrorCode::unknown_name,
                         .what = "this gland is not in the list " + list_name_,
                         .where = place_of(row),
                         .given = std::string(part),
                         .allowed = {},
                         .hint = did_you_mean(part, names)});
}

void ChosenParts::finish() {
  const io::CsvRecord* const row = next_row();
  if (row == nullptr) return;
  throw InputError(Fault{.code = ErrorCode::contradiction,
                         .what = "the results have more ends than the schedule",
                         .where = place_of(*row),
                         .given = std::string(schedule::cell(row->fields, tag_)),
                         .allowed = {},
                         .hint = "make them again from this schedule"});
}

}  // namespace cutback::run
