#include "cutback/io/gland_convert.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

#include "cutback/error.hpp"
#include "cutback/gland/asked.hpp"
#include "cutback/gland/columns.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::io {
namespace {

constexpr double k_mm_per_inch = 25.4;
constexpr int k_decimals = 6;

/// Two columns of ours that stand in one of theirs.
struct RangeColumn {
  std::string_view name;
  std::string_view low;
  std::string_view high;
};
constexpr std::array<RangeColumn, 3> k_ranges{{
    {"outer_mm", "outer_min_mm", "outer_max_mm"},
    {"inner_mm", "inner_min_mm", "inner_max_mm"},
    {"armour_mm", "armour_min_mm", "armour_max_mm"},
}};

const RangeColumn* range_named(std::string_view name) {
  const auto at = std::find_if(k_ranges.begin(), k_ranges.end(),
                               [&](const RangeColumn& each) { return each.name == name; });
  return at == k_ranges.end() ? nullptr : &*at;
}

std::vector<std::string_view> names() {
  std::vector<std::string_view> list;
  for (const gland::Column& column : gland::columns()) list.push_back(column.name);
  for (const RangeColumn& range : k_ranges) list.push_back(range.name);
  return list;
}

bool is_known(std::string_view name) {
  const auto list = names();
  return std::find(list.begin(), list.end(), name) != list.end();
}

/// What a maker writes where there is nothing.
bool is_blank(std::string_view cell) {
  constexpr std::array<std::string_view, 6> k_blank{"", "-", "--", "n/a", "na", "\xE2\x80\x93"};
  return std::find(k_blank.begin(), k_blank.end(), small_letters(cell)) != k_blank.end();
}

bool says_inches(std::string_view heading) {
  const std::string small = small_letters(heading);
  for (const char* word : {"inch", "(in)", "[in]", "(in.)", ", in", "\""}) {
    if (small.find(word) != std::string::npos) return true;
  }
  return small.ends_with(" in");
}

/// The column that a heading names by itself. What decides no fit is known whatever its case;
/// "Material" may hold other words than ours.
std::string own_name(std::string_view heading) {
  constexpr std::array<std::string_view, 6> k_any_case{"part",  "range", "description",
                                                       "price", "stock", "pack"};
  const std::string name = small_letters(heading);
  const bool any_case = std::find(k_any_case.begin(), k_any_case.end(), name) != k_any_case.end();
  if (any_case) return name;
  return is_known(heading) ? std::string(heading) : std::string();
}

/// Without a sign for a diameter.
std::string without_sign(std::string text) {
  for (const std::string_view sign : {"\xC3\x98", "\xC3\xB8", "\xE2\x8C\x80"}) {
    for (std::size_t at = text.find(sign); at != std::string::npos; at = text.find(sign)) {
      text.erase(at, sign.size());
    }
  }
  return std::string(trimmed(text));
}

/// 1,250.00 with a comma between thousands, where nothing else can be meant.
std::string without_thousands(std::string_view text) {
  std::string figure;
  std::size_t begin = 0;
  bool grouped = false;
  const std::size_t point = std::min(text.find('.'), text.size());
  for (std::size_t end = text.find(','); begin <= point; end = text.find(',', begin)) {
    end = std::min(end, point);
    const std::string_view digits = text.substr(begin, end - begin);
    const bool first = begin == 0;
    const bool all = std::all_of(digits.begin(), digits.end(), is_digit);
    if (!all || digits.empty() || digits.size() > 3 || (!first && digits.size() != 3)) {
      return std::string(text);
    }
    grouped = grouped || !first;
    figure += digits;
    begin = end + 1;
  }
  // 1,250 may be a decimal comma; with a point behind it, or a second comma, it is not.
  const bool certain = point < text.size() || std::count(text.begin(), text.end(), ',') > 1;
  return grouped && certain ? figure + std::string(text.substr(point)) : std::string(text);
}

bool is_length(std::string_view column) { return column.ends_with("_mm"); }

bool is_number(std::string_view column) {
  const gland::ColumnKind kind = gland::columns()[gland::column_place(column)].kind;
  return kind == gland::ColumnKind::number || kind == gland::ColumnKind::whole;
}

struct Source {
  std::string column;  ///< of ours, or a range
  std::size_t cell = 0;
  bool inches = false;
};

class Converter {
 public:
  Converter(std::span<const TableRow> rows, const std::string& name, const std::string& row_word,
            const ConvertTerms& terms)
      : rows_(rows), name_(name), row_word_(row_word), terms_(terms) {}

  Converted run() {
    check_terms();
    const std::size_t first = find_headings();
    for (std::size_t i = first + 1; i < rows_.size(); ++i) row(rows_[i]);
    if (out_.glands == 0) {
      std::vector<Fault> faults;
      constexpr std::size_t k_most = 5;
      for (const std::string& why : out_.left_out) {
        if (faults.size() == k_most) break;
        faults.push_back(make_fault(ErrorCode::bad_value, why, name_, "", "", ""));
      }
      if (faults.empty()) {
        faults.push_back(make_fault(ErrorCode::missing, "there is no row below the headings", name_,
                                    "", "", ""));
      }
      throw InputError(std::move(faults));
    }
    put_text();
    return std::move(out_);
  }

 private:
  void check_terms() const {
    std::vector<Fault> faults;
    const auto check = [&](const std::string& column, const char* where) {
      if (is_known(column)) return;
      const auto list = names();
      faults.push_back(make_fault(ErrorCode::unknown_name, "a gland list has no such column", where,
                                  column, "", did_you_mean(column, list)));
    };
    for (const auto& [ours, theirs] : terms_.headings) check(ours, "heading");
    for (const auto& [ours, value] : terms_.values) check(ours, "value");
    if (!faults.empty()) throw InputError(std::move(faults));
  }

  /// The first row with every heading that was named; without any the first with two of our own.
  std::size_t find_headings() {
    constexpr std::size_t k_looked_at = 30;
    std::vector<Fault> faults;
    for (std::size_t i = 0; i < std::min(rows_.size(), k_looked_at); ++i) {
      sources_.clear();
      std::size_t named = 0;
      std::size_t own = 0;
      const TableRow& row = rows_[i];
      for (std::size_t cell = 0; cell < row.cells.size(); ++cell) {
        const std::string heading(trimmed(row.cells[cell]));
        if (heading.empty()) continue;
        for (const auto& [ours, theirs] : terms_.headings) {
          if (theirs != heading) continue;
          sources_.push_back({ours, cell, is_length(ours) && says_inches(heading)});
          ++named;
        }
        const std::string name = own_name(heading);
        const bool given = std::any_of(
            terms_.headings.begin(), terms_.headings.end(),
            [&](const auto& each) { return each.first == name || each.second == heading; });
        const bool twice = std::any_of(sources_.begin(), sources_.end(),
                                       [&](const Source& each) { return each.column == name; });
        if (!name.empty() && !given && !twice) {
          sources_.push_back({name, cell, false});
          ++own;
        }
      }
      const bool all = named == terms_.headings.size() && (named > 0 || own > 1);
      if (!all) continue;
      for (const Source& source : sources_) {
        out_.taken.push_back(source.column + " = " + std::string(trimmed(row.cells[source.cell])) +
                             (source.inches ? " (inches)" : ""));
      }
      for (std::size_t cell = 0; cell < row.cells.size(); ++cell) {
        const std::string_view heading = trimmed(row.cells[cell]);
        const bool taken = std::any_of(sources_.begin(), sources_.end(),
                                       [&](const Source& each) { return each.cell == cell; });
        if (!heading.empty() && !taken) out_.unread.emplace_back(heading);
      }
      return i;
    }
    std::vector<std::string_view> seen;
    for (std::size_t i = 0; i < std::min(rows_.size(), k_looked_at); ++i) {
      for (const std::string& cell : rows_[i].cells) {
        if (!trimmed(cell).empty()) seen.push_back(trimmed(cell));
      }
    }
    for (const auto& [ours, theirs] : terms_.headings) {
      if (std::find(seen.begin(), seen.end(), theirs) != seen.end()) continue;
      faults.push_back(make_fault(ErrorCode::unknown_name, "the table has no such heading", name_,
                                  theirs, "", did_you_mean(theirs, seen)));
    }
    if (faults.empty()) {
      faults.push_back(
          make_fault(ErrorCode::missing,
                     terms_.headings.empty() ? "no heading of the table is a column of a gland list"
                                             : "no one row of the table has all these headings",
                     name_, "", "", "name them: OURS=THEIRS, such as part=\"Order code\""));
    }
    throw InputError(std::move(faults));
  }

  /// A figure with a decimal point; a length in inches that has no unit of its own in mm.
  [[nodiscard]] std::string figure(const Source& source, std::string cell) const {
    const bool inches = source.inches;
    if (source.column == "price" && terms_.decimal == '.') cell = without_thousands(cell);
    if (is_length(source.column)) cell = without_sign(cell);
    if (terms_.decimal == ',') std::replace(cell.begin(), cell.end(), ',', '.');
    if (!inches) return cell;
    const auto value = parse_number(cell);
    return value ? plain(*value * k_mm_per_inch, k_decimals) : cell;
  }

  /// @return why the cell cannot be taken; empty where it was
  std::string take(const Source& source, const std::string& given) {
    const auto put = [&](std::string_view column, std::string text) {
      values_[gland::column_place(column)] = std::move(text);
    };
    const RangeColumn* const range = range_named(source.column);
    if (const auto marking = written::read_marking(given);
        source.column == "protection" && marking && !marking->protection.empty()) {
      put("protection", joined(marking->protection, " "));
      const auto add = [&](std::string_view column, const std::string& text) {
        if (values_[gland::column_place(column)].empty()) put(column, text);
      };
      add("level", joined(marking->level, " "));
      add("gas_group", marking->gas_group);
      add("dust_group", marking->dust_group);
      if (marking->conditions) add("description", "X: special conditions of use");
      return {};
    }
    if (range == nullptr) {
      put(source.column, is_number(source.column) ? figure(source, given) : given);
      return {};
    }
    std::string text = without_sign(given);
    if (terms_.decimal == ',') std::replace(text.begin(), text.end(), ',', '.');
    const bool unit = text.find_first_of("m\"i") != std::string::npos;
    if (const auto ends = gland::read_range(source.inches && !unit ? text + "in" : text)) {
      put(range->low, plain(ends->low, k_decimals));
      put(range->high, plain(ends->high, k_decimals));
      return {};
    }
    // One size of wire is a clamp for that size; a seal for one diameter is a slip.
    if (source.column == "armour_mm" && parse_number(figure(source, text))) {
      put(range->low, figure(source, text));
      put(range->high, figure(source, text));
      return {};
    }
    return source.column + ": \"" + given + "\" is no range such as 11-16";
  }

  void row(const TableRow& row) {
    values_.assign(gland::columns().size(), {});
    const std::string place = row_word_ + " " + std::to_string(row.line);
    std::string why;
    bool any = false;
    for (const Source& source : sources_) {
      if (source.cell >= row.cells.size()) continue;
      const std::string cell(trimmed(row.cells[source.cell]));
      if (is_blank(cell)) continue;
      any = true;
      const std::string fault = take(source, cell);
      if (!fault.empty()) why += (why.empty() ? "" : "; ") + fault;
    }
    if (!any) return;
    for (const auto& [ours, value] : terms_.values) {
      const RangeColumn* const range = range_named(ours);
      const bool blank = values_[gland::column_place(range == nullptr ? ours : range->low)].empty();
      if (!blank) continue;
      const std::string fault = take({ours, 0, false}, value);
      if (!fault.empty()) why += (why.empty() ? "" : "; ") + fault;
    }
    if (why.empty()) why = read_priced(place);
    const std::string& part = values_[gland::column_place("part")];
    if (why.empty()) {
      const auto [known, is_new] = place_of_part_.try_emplace(part, place);
      if (!is_new) why = "the part " + part + " stands on " + known->second + " already";
    }
    if (why.empty()) {
      kept_.push_back(values_);
      ++out_.glands;
      const auto value = [&](std::string_view column) -> const std::string& {
        return values_[gland::column_place(column)];
      };
      const bool rings = value("armour") != "none" && value("sealing") != "barrier";
      if (rings && value("inner_min_mm").empty()) ++out_.without_inner;
    } else {
      out_.left_out.push_back(place + ": " + why);
    }
  }

  /// A gland without a price is one all the same: "POA".
  std::string read_priced(const std::string& place) {
    std::string why = read();
    std::string& price = values_[gland::column_place("price")];
    if (why.empty() || price.empty()) return why;
    const std::string given = std::exchange(price, {});
    if (!read().empty()) return why;
    out_.unpriced.push_back(place + ": the price \"" + given +
                            "\" is no figure; the gland is in the list without one");
    return {};
  }

  /// Reads the values at hand as a list of one gland, and keeps them as it understood them.
  std::string read() {
    std::string heads;
    std::string cells;
    for (std::size_t i = 0; i < values_.size(); ++i) {
      heads += (heads.empty() ? "" : ",") + std::string(gland::columns()[i].name);
      cells += (i == 0 ? "" : ",") + csv_field(values_[i]);
    }
    try {
      const gland::GlandList list = read_gland_list(heads + "\n" + cells + "\n", "");
      for (std::size_t i = 0; i < values_.size(); ++i) {
        const auto text = gland::text_of(list.glands.front(), gland::columns()[i]);
        if (!values_[i].empty()) values_[i] = text.value_or("");
      }
      return {};
    } catch (const InputError& error) {
      std::string why;
      for (const Fault& fault : error.faults()) {
        const std::size_t at = fault.where.find("column ");
        why += (why.empty() ? "" : "; ") +
               (at == std::string::npos ? std::string() : fault.where.substr(at + 7) + ": ") +
               fault.what + (fault.given.empty() ? "" : ", \"" + fault.given + "\"") +
               (fault.hint.empty() ? "" : " (" + fault.hint + ")");
      }
      return why;
    }
  }

  void put_text() {
    std::vector<std::size_t> used;
    for (std::size_t i = 0; i < gland::columns().size(); ++i) {
      const bool any = std::any_of(kept_.begin(), kept_.end(),
                                   [&](const auto& values) { return !values[i].empty(); });
      if (any) used.push_back(i);
    }
    for (const std::size_t i : used) {
      out_.text += (out_.text.empty() ? "" : ",") + std::string(gland::columns()[i].name);
    }
    out_.text += "\n";
    for (const auto& values : kept_) {
      for (const std::size_t i : used) {
        if (i != used.front()) out_.text += ',';
        out_.text += csv_field(values[i]);
      }
      out_.text += "\n";
    }
  }

  std::span<const TableRow> rows_;
  const std::string& name_;
  const std::string& row_word_;
  const ConvertTerms& terms_;
  std::vector<Source> sources_;
  std::vector<std::string> values_;  ///< of the row at hand, by column
  std::vector<std::vector<std::string>> kept_;
  std::map<std::string, std::string> place_of_part_;
  Converted out_;
};

}  // namespace

Converted convert_glands(std::span<const TableRow> rows, const std::string& name,
                         const std::string& row_word, const ConvertTerms& terms) {
  return Converter(rows, name, row_word, terms).run();
}

}  // namespace cutback::io
