#include "cli/extras.hpp"

#include "cli/read_line.hpp"
#include "cutback/io/xlsx_rows.hpp"
#include "cutback/solve/solvers.hpp"

namespace cutback::cli {
namespace {

std::unique_ptr<io::Workbook> open_workbook(const std::string& path, char decimal) {
  return io::open_xlsx(path, decimal);
}

std::unique_ptr<io::ScheduleWorkbook> new_workbook(io::FileWriter& file,
                                                   std::int64_t created_unix_s, int decimals) {
  return io::new_schedule_workbook(file, created_unix_s, decimals);
}

}  // namespace

const Extras& all_extras() {
  static constexpr Extras k_extras{
      .open_workbook = open_workbook,
      .new_workbook = new_workbook,
      .append_to_workbook = io::append_to_workbook,
      .cheapest_plan = solve::cheapest_plan,
      .solve_program = solve::solve_program,
      .new_card_printer = print::new_card_printer,
      .sheet_pdf = print::sheet_pdf,
      .sheet_svg = print::sheet_svg,
      .read_line = read_line,
  };
  return k_extras;
}

}  // namespace cutback::cli
