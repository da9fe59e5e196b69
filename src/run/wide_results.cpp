#include "run/wide_results.hpp"

#include <algorithm>
#include <array>

#include "cutback/io/schedule_results.hpp"

namespace cutback::run {
namespace {

// What names a row, in the order in which it stands there.
constexpr std::array<std::string_view, 5> k_names{"tag", "end", "line", "source", "quantity"};

}  // namespace

WideResults::WideResults(bool two_ends) : two_ends_(two_ends), names_(k_names.size()) {
  io::CsvReader reader(io::schedule_csv_head(), "results");
  io::CsvRecord heads;
  reader.next(heads);
  for (const std::string_view name : k_names) {
    const auto at = std::find(heads.fields.begin(), heads.fields.end(), name);
    places_.push_back(static_cast<std::size_t>(at - heads.fields.begin()));
  }
  for (std::size_t i = 0; i < heads.fields.size(); ++i) {
    if (std::find(k_names.begin(), k_names.end(), heads.fields[i]) == k_names.end()) {
      kept_.push_back(i);
    }
  }
  for (const std::string_view prefix : {"from_", "to_"}) {
    if (!two_ends_ && prefix == "to_") break;
    for (const std::size_t column : kept_) {
      columns_.push_back(std::string(two_ends_ ? prefix : "") + std::string(heads.fields[column]));
    }
  }
  for (const std::string_view name : k_names) {
    if (two_ends_ && name == "end") continue;
    head_ += (head_.empty() ? "" : ",") + std::string(name);
  }
  for (const std::string& column : columns_) head_ += "," + column;
  head_ += '\n';
}

std::string WideResults::rows(std::string_view csv) {
  std::string out;
  io::CsvReader reader(csv, "results");
  io::CsvRecord end;
  while (reader.next(end)) {
    const bool second = two_ends_ && ends_ == 1 && end.fields[places_[1]] == "to";
    if (!second) {
      finish(out);
      begin(end);
    }
    for (const std::size_t column : kept_) cells_.emplace_back(end.fields[column]);
    ++ends_;
    if (!two_ends_ || ends_ == 2) finish(out);
  }
  finish(out);
  return out;
}

void WideResults::begin(const io::CsvRecord& end) {
  for (std::size_t i = 0; i < names_.size(); ++i) names_[i] = end.fields[places_[i]];
}

void WideResults::finish(std::string& out) {
  if (ends_ == 0) return;
  bool first = true;
  const auto put = [&](const std::string& cell) {
    if (!first) out += ',';
    first = false;
    io::append_csv_field(out, cell);  // it is safe already
  };
  for (std::size_t i = 0; i < names_.size(); ++i) {
    if (!two_ends_ || k_names[i] != "end") put(names_[i]);
  }
  cells_.resize(columns_.size());
  for (const std::string& cell : cells_) put(cell);
  out += '\n';
  cells_.clear();
  ends_ = 0;
}

}  // namespace cutback::run
