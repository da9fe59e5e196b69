#include "cutback/io/schedule_workbook.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "cutback/io/csv.hpp"
#include "cutback/money.hpp"
#include "cutback/number.hpp"
#include "io/xlsx_book.hpp"
#include "io/xlsx_overview.hpp"

namespace cutback::io {
namespace {

constexpr std::array<XlsxColumn, 28> k_results{{{"Tag", 18},
                                                {"End", 18},
                                                {"Verdict", 17},
                                                {"Part", 20},
                                                {"Glands that fit", 7},
                                                {"Price", 10},
                                                {"Sheath margin (mm)", 18},
                                                {"Bedding margin (mm)", 18},
                                                {"Wire margin (mm)", 19},
                                                {"Barrier", 10},
                                                {"Armour cut (mm)", 16},
                                                {"Sheath cut (mm)", 16},
                                                {"Bedding cut (mm)", 17},
                                                {"Reason", 80},
                                                {"State", 10},
                                                {"Not asked", 24},
                                                {"Line", 8},
                                                {"Source", 24},
                                                {"Quantity", 10},
                                                {"Sheath used (mm)", 15},
                                                {"Sheath evidence", 18},
                                                {"Bedding used (mm)", 13},
                                                {"Bedding evidence", 18},
                                                {"Wire used (mm)", 13},
                                                {"Wire evidence", 18},
                                                {"Taken for blanks", 40},
                                                {"Remarks", 60},
                                                {"Gland list", 24}}};
constexpr std::array<XlsxColumn, 19> k_takeoff{{{"Part", 24},
                                                {"Description", 44},
                                                {"Ends", 9},
                                                {"Quantity", 11},
                                                {"Not proven", 13},
                                                {"In stock", 9},
                                                {"To order", 11},
                                                {"Unit price", 13},
                                                {"Total", 14},
                                                {"From stock", 12},
                                                {"Provisional", 13},
                                                {"Provisional total", 18},
                                                {"Pack", 8},
                                                {"Least order", 11},
                                                {"Currency", 10},
                                                {"Gland list", 24},
                                                {"Group", 24},
                                                {"Old quantity", 13},
                                                {"Difference", 11}}};
constexpr std::array<XlsxColumn, 9> k_exceptions{{{"Group", 32},
                                                  {"Line", 8},
                                                  {"Tag", 18},
                                                  {"End", 18},
                                                  {"Verdict", 17},
                                                  {"Nearest part", 20},
                                                  {"Reason", 80},
                                                  {"What would help", 60},
                                                  {"Source", 24}}};
constexpr std::array<XlsxColumn, 12> k_changes{{{"change", 10},
                                                {"Tag", 18},
                                                {"End", 18},
                                                {"Line", 8},
                                                {"Old line", 9},
                                                {"What", 60},
                                                {"Old part", 20},
                                                {"Part", 20},
                                                {"Gland changed", 15},
                                                {"Old verdict", 17},
                                                {"Verdict", 17},
                                                {"Source", 24}}};
constexpr std::array<XlsxColumn, 1> k_notes{{{"notes", 110}}};

lxw_format* verdict_look(const XlsxLooks& looks, std::string_view verdict) {
  if (verdict == "fits") return looks.text;
  return verdict == "no-fit" || verdict == "no-stock" || verdict == "unusable" ? looks.bold
                                                                               : looks.italic;
}

/// How the numbers of a column of the results look; null where it holds texts.
lxw_format* result_look(const XlsxLooks& looks, std::size_t column) {
  constexpr std::size_t k_fits = 4;
  constexpr std::size_t k_price = 5;
  constexpr std::size_t k_line = 16;
  constexpr std::size_t k_quantity = 18;
  if (column == k_fits || column == k_line || column == k_quantity) return looks.count;
  if (column == k_price) return looks.money;
  if (column >= 6 && column <= 8) return looks.length_3;
  if (column >= 10 && column <= 12) return looks.length_1;
  constexpr std::size_t k_sheath = 19;
  constexpr std::size_t k_bedding = 21;
  constexpr std::size_t k_armour = 23;
  if (column == k_sheath || column == k_bedding || column == k_armour) return looks.length_3;
  return nullptr;
}

class Workbook final : public ScheduleWorkbook {
 public:
  Workbook(FileWriter& file, std::int64_t created_unix_s, int decimals, std::size_t rows_per_sheet)
      : book_(file, decimals),
        created_unix_s_(created_unix_s),
        looks_(book_.looks()),
        rows_per_sheet_(rows_per_sheet),
        overview_(book_.add_sheet("Overview")),
        results_(book_, "Results", k_results, rows_per_sheet, 1) {}

  void add_results(std::string_view csv) override {
    CsvReader reader(csv, "results");
    while (reader.next(record_)) {
      results_.start_row();
      for (std::size_t i = 0; i < record_.fields.size(); ++i) add_result(i, record_.fields[i]);
    }
  }

  void finish(const schedule::Tally& tally, const schedule::Takeoff& takeoff,
              const ExceptionLines& exceptions, std::string_view changes,
              std::span<const std::string> notes) override {
    results_.set_filter();
    add_takeoff(takeoff);
    add_exceptions(exceptions);
    if (!changes.empty()) add_changes(changes);
    XlsxTable table(book_, "Notes", k_notes, rows_per_sheet_);
    for (const std::string& note : notes) {
      table.start_row();
      table.put_wrapped(0, note);
    }
    write_overview(book_, overview_, tally, takeoff, notes.size() > 1 ? notes[1] : "");
    book_.describe("Cable glands of a schedule", notes.empty() ? "" : notes.front(),
                   created_unix_s_);
    book_.finish();
  }

 private:
  void add_result(std::size_t column, std::string_view field) {
    constexpr std::size_t k_verdict = 2;
    constexpr std::size_t k_reason = 13;
    if (column == k_reason) return results_.put_wrapped(column, text_of_csv(field));
    lxw_format* look = result_look(looks_, column);
    const auto value = look != nullptr ? parse_number(field) : std::nullopt;
    if (value) {
      results_.put(column, *value, look);
    } else {
      results_.put(column, text_of_csv(field),
                   column == k_verdict ? verdict_look(looks_, field) : looks_.text);
    }
  }

  void add_takeoff(const schedule::Takeoff& takeoff) {
    XlsxTable table(book_, "Take-off", k_takeoff, rows_per_sheet_, 1);
    for (const schedule::TakeoffLine& line : takeoff.lines) {
      table.start_row();
      add_line(table, line, takeoff);
    }
    table.set_filter();
    if (!takeoff.total) return;
    const std::string last = std::to_string(table.row());
    table.start_row();
    table.put(0, "TOTAL", looks_.bold);
    table.put(1, "of the lines with a price", looks_.bold);
    const auto sum = [&](std::size_t column, const std::string& letter, std::int64_t units) {
      // 109: the sum of what a filter leaves.
      table.put_formula(column, "=SUBTOTAL(109," + letter + "2:" + letter + last + ")",
                        money_value(units, takeoff.decimals), looks_.bold_money);
    };
    sum(8, "I", *takeoff.total);
    sum(11, "L", *takeoff.provisional_total);
    table.put(14, takeoff.currency, looks_.bold);
  }

  void add_line(XlsxTable& table, const schedule::TakeoffLine& line,
                const schedule::Takeoff& takeoff) {
    const std::string row = std::to_string(table.row());
    const auto put_count = [&](std::size_t column, std::uint64_t count) {
      table.put(column, static_cast<double>(count), looks_.count);
    };
    table.put(0, line.part, looks_.text);
    table.put(1, line.description, looks_.text);
    put_count(2, line.ends);
    put_count(3, line.quantity);
    put_count(4, line.not_proven);
    if (line.stock) put_count(5, *line.stock);
    const std::string open = "D" + row + "-F" + row;
    const bool plain = !line.pack && !line.min_order;
    table.put_formula(6,
                      plain ? "=MAX(0," + open + ")"
                            : "=IF(" + open + "<=0,0,CEILING(MAX(" + open + ",N" + row +
                                  "),MAX(1,M" + row + ")))",
                      static_cast<double>(line.to_order), looks_.count);
    if (line.unit_price) table.put(7, *line.unit_price, looks_.money);
    if (line.total) {
      table.put_formula(8, "=G" + row + "*H" + row, money_value(*line.total, takeoff.decimals),
                        looks_.money);
    }
    table.put_formula(9, "=MIN(D" + row + ",F" + row + ")", static_cast<double>(line.from_stock),
                      looks_.count);
    put_count(10, line.provisional);
    if (line.provisional_total) {
      table.put_formula(11, "=K" + row + "*H" + row,
                        money_value(*line.provisional_total, takeoff.decimals), looks_.money);
    }
    if (line.pack) put_count(12, *line.pack);
    if (line.min_order) put_count(13, *line.min_order);
    if (line.unit_price) table.put(14, takeoff.currency, looks_.text);
    table.put(15, line.supplier, looks_.text);
    table.put(16, line.group, looks_.text);
    if (line.old_quantity) {
      put_count(17, *line.old_quantity);
      table.put_formula(
          18, "=D" + row + "-R" + row,
          static_cast<double>(line.quantity) - static_cast<double>(*line.old_quantity),
          looks_.count);
    }
  }

  void add_exceptions(const ExceptionLines& exceptions) {
    XlsxTable table(book_, "Exceptions", k_exceptions, rows_per_sheet_);
    exceptions.each([&](std::string_view lines) {
      CsvReader reader(lines, "exceptions");
      while (reader.next(record_)) {
        table.start_row();
        for (std::size_t i = 0; i < record_.fields.size(); ++i) {
          add_exception(table, i, record_.fields[i]);
        }
      }
    });
    table.set_filter();
  }

  void add_changes(std::string_view csv) {
    XlsxTable table(book_, "Changes", k_changes, rows_per_sheet_);
    CsvReader reader(csv, "changes");
    reader.next(record_);  // the headings
    while (reader.next(record_)) {
      table.start_row();
      for (std::size_t i = 0; i < record_.fields.size(); ++i) {
        constexpr std::size_t k_line = 3;
        constexpr std::size_t k_what = 5;
        const auto line =
            i == k_line || i == k_line + 1 ? parse_number(record_.fields[i]) : std::nullopt;
        if (line) {
          table.put(i, *line, looks_.count);
        } else if (i == k_what) {
          table.put_wrapped(i, text_of_csv(record_.fields[i]));
        } else {
          table.put(i, text_of_csv(record_.fields[i]), looks_.text);
        }
      }
    }
    table.set_filter();
  }

  void add_exception(XlsxTable& table, std::size_t column, std::string_view field) {
    constexpr std::size_t k_line = 1;
    constexpr std::size_t k_verdict = 4;
    constexpr std::size_t k_reason = 6;  // and what would change it
    if (column == k_reason || column == k_reason + 1)
      return table.put_wrapped(column, text_of_csv(field));
    const auto line = column == k_line ? parse_number(field) : std::nullopt;
    if (line) {
      table.put(column, *line, looks_.count);
    } else {
      table.put(column, text_of_csv(field),
                column == k_verdict ? verdict_look(looks_, field) : looks_.text);
    }
  }

  XlsxBook book_;
  std::int64_t created_unix_s_;
  const XlsxLooks& looks_;
  std::size_t rows_per_sheet_;
  lxw_worksheet* overview_;  ///< the first sheet, written last
  XlsxTable results_;
  CsvRecord record_;
};

}  // namespace

std::unique_ptr<ScheduleWorkbook> new_schedule_workbook(FileWriter& file,
                                                        std::int64_t created_unix_s, int decimals,
                                                        std::size_t rows_per_sheet) {
  return std::make_unique<Workbook>(file, created_unix_s, decimals, rows_per_sheet);
}

}  // namespace cutback::io
