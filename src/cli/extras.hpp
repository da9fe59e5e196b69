#pragma once
// What needs libraries that take longer to load than a whole `fit` may last.

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "cutback/io/schedule_workbook.hpp"
#include "cutback/io/workbook.hpp"
#include "cutback/io/xlsx_append.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/schedule/program.hpp"
#include "cutback/schedule/share.hpp"

namespace cutback::cli {

/// Functions of the second program, `cutback-full`: it is the same program, linked with libraries
/// for pages, spreadsheets and optimisation. `cutback` has none of them and becomes `cutback-full`
/// where a command needs one (Command::needs_extras).
struct Extras {
  /// An .xlsx workbook (io::open_xlsx). @param path  of an ordinary file
  std::unique_ptr<io::Workbook> (*open_workbook)(const std::string& path, char decimal) = nullptr;
  /// The results of a schedule as a workbook (io::new_schedule_workbook).
  std::unique_ptr<io::ScheduleWorkbook> (*new_workbook)(io::FileWriter& file,
                                                        std::int64_t created_unix_s, int decimals);
  /// A workbook copied with columns added (io::append_to_workbook).
  void (*append_to_workbook)(const std::string& from, io::FileWriter& to,
                             std::span<const io::AddedColumns> sheets) = nullptr;
  schedule::TransportPlan (*cheapest_plan)(const schedule::Transport&) = nullptr;
  schedule::ProgramResult (*solve_program)(const schedule::Program&, double seconds) = nullptr;
  std::unique_ptr<print::CardPrinter> (*new_card_printer)(
      const print::Paper&, print::PageNote, std::function<void(std::string_view)> write,
      unsigned threads) = nullptr;
  std::string (*sheet_pdf)(const print::Card&, const print::PageNote&) = nullptr;
  std::string (*sheet_svg)(const sheet::Sheet&) = nullptr;
  /// A line typed at the terminal, edited, with those before it at hand (libedit). Nothing at the
  /// end of input, and where Ctrl-C was typed.
  std::optional<std::string> (*read_line)(const std::string& prompt) = nullptr;
};

/// All of them; only the full program has it.
[[nodiscard]] const Extras& all_extras();

}  // namespace cutback::cli
