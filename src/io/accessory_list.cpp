#include "cutback/io/accessory_list.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "cutback/entry/thread.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/money.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

using schedule::AccessoryPrice;

constexpr std::array<std::string_view, 7> k_columns{"name",  "thread", "part",     "price",
                                                    "stock", "pack",   "min_order"};
constexpr double k_most = 1e7;  // as in a gland list

/// The name that the take-off has for it; of a gland its part code as it stands.
std::string own_name(std::string_view cell) {
  constexpr std::array<std::array<std::string_view, 2>, 9> k_names{
      {{"washer", "sealing washer"},
       {"sealing washer", "sealing washer"},
       {"tag", "earth tag"},
       {"earth tag", "earth tag"},
       {"locknut", "locknut"},
       {"serrated washer", "serrated washer"},
       {"adaptor", "adaptor"},
       {"shroud", "shroud"},
       {"compound", "compound"}}};
  const std::string small = small_letters(cell);
  for (const auto& [written, own] : k_names) {
    if (small == written) return std::string(own);
  }
  return std::string(cell);
}

class Reading {
 public:
  explicit Reading(const std::string& name) : name_(name) {}

  std::vector<AccessoryPrice> read(std::string_view text) {
    CsvReader reader(text, name_);
    CsvRecord record;
    if (reader.next(record)) heading(record);
    // Faults of the headings make the rows unreadable; those of the rows are told together.
    while (!columns_.empty() && reader.next(record)) row(record);
    if (columns_.empty() && faults_.empty()) {
      add(ErrorCode::bad_syntax, "the list is empty", "", "", "a row of headings");
    }
    if (!faults_.empty()) throw InputError(std::move(faults_));
    return std::move(list_);
  }

 private:
  void add(ErrorCode code, std::string what, std::string_view column, std::string_view given,
           std::string allowed, std::string hint = {}) {
    std::string where = name_;
    if (line_ > 0) where += ", line " + std::to_string(line_);
    if (!column.empty()) where += ", column " + std::string(column);
    faults_.push_back(
        make_fault(code, std::move(what), where, given, std::move(allowed), std::move(hint)));
  }

  void heading(const CsvRecord& record) {
    line_ = record.line;
    for (const std::string_view field : record.fields) {
      const std::string_view name = trimmed(field);
      const auto known = std::find(k_columns.begin(), k_columns.end(), name);
      if (known == k_columns.end()) {
        add(ErrorCode::unknown_name, "no column of such a list", "", name,
            "name, thread, part, price, stock, pack or min_order", did_you_mean(name, k_columns));
      } else if (std::find(columns_.begin(), columns_.end(), name) != columns_.end()) {
        add(ErrorCode::duplicate, "a column is given twice", name, "", "");
      }
      columns_.emplace_back(name);
    }
    if (std::find(columns_.begin(), columns_.end(), "name") == columns_.end()) {
      add(ErrorCode::missing, "the column name is missing", "", "", "");
    }
    if (!faults_.empty()) columns_.clear();
  }

  void row(const CsvRecord& record) {
    line_ = record.line;
    if (record.fields.size() > columns_.size()) {
      add(ErrorCode::bad_syntax, "more cells than headings", "",
          std::to_string(record.fields.size()), std::to_string(columns_.size()),
          "a decimal comma makes two cells of one price: write a point");
      return;
    }
    AccessoryPrice price;
    bool any = false;
    for (std::size_t i = 0; i < record.fields.size(); ++i) {
      const std::string_view cell = trimmed(record.fields[i]);
      if (cell.empty()) continue;
      any = true;
      put(price, columns_[i], cell);
    }
    if (!any) return;
    if (price.name.empty()) add(ErrorCode::missing, "the row has no name", "name", "", "");
    const bool twice = std::any_of(list_.begin(), list_.end(), [&](const AccessoryPrice& each) {
      return each.name == price.name && each.thread == price.thread;
    });
    if (twice) {
      add(ErrorCode::duplicate, "two rows are for one thing", "name",
          price.name + (price.thread.empty() ? "" : ", " + price.thread), "");
    }
    list_.push_back(std::move(price));
  }

  void put(AccessoryPrice& price, std::string_view column, std::string_view cell) {
    if (column == "name") {
      price.name = own_name(cell);
    } else if (column == "part") {
      price.part = cell;
    } else if (column == "thread") {
      price.thread = thread(cell);
    } else if (column == "price") {
      price.price = figure(column, cell, false);
      if (price.price && !price_decimals(*price.price)) {
        add(ErrorCode::out_of_range, "a price with more than six decimals", column, cell,
            "six decimals at most");
      }
    } else if (const auto count = figure(column, cell, true)) {
      const auto whole = static_cast<std::uint64_t>(*count);
      (column == "stock" ? price.stock : column == "pack" ? price.pack : price.min_order) = whole;
      if (column != "stock" && whole == 0) {
        add(ErrorCode::out_of_range, "nothing is sold in none", column, cell, "1 to 10000000");
      }
    }
  }

  /// As the take-off writes it, where it is one thread; a pair of an adaptor's as it stands.
  static std::string thread(std::string_view cell) {
    const auto thread = entry::parse_thread(cell);
    return thread ? entry::to_text(*thread) : std::string(cell);
  }

  std::optional<double> figure(std::string_view column, std::string_view cell, bool whole) {
    const auto value = parse_number(cell);
    if (!value || *value < 0.0 || *value > k_most || (whole && *value != std::floor(*value))) {
      add(ErrorCode::bad_number, whole ? "not a whole number" : "not a price", column, cell,
          "0 to 10000000, a decimal point");
      return std::nullopt;
    }
    if (!whole && *value == 0.0) return std::nullopt;  // a price of 0 is no price
    return value;
  }

  const std::string& name_;
  std::size_t line_ = 0;
  std::vector<std::string> columns_;
  std::vector<AccessoryPrice> list_;
  std::vector<Fault> faults_;
};

}  // namespace

std::vector<AccessoryPrice> read_accessory_list(std::string_view text, const std::string& name) {
  return Reading(name).read(text);
}

std::vector<AccessoryPrice> load_accessory_list(const std::string& path) {
  const WholeFile file(path);
  return read_accessory_list(file.text(), path);
}

}  // namespace cutback::io
