#include "run/schedule_run.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "cutback/error.hpp"
#include "cutback/io/schedule_results.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/schedule/decider.hpp"
#include "cutback/schedule/groups.hpp"
#include "run/place_asked.hpp"
#include "run/row_doubts.hpp"
#include "run/row_pipeline.hpp"
#include "run/tag_register.hpp"

namespace cutback::run {
namespace {

using schedule::Decided;
using schedule::Decision;
using schedule::Layout;
using schedule::Side;

constexpr std::size_t k_most_twice = 10;
/// More runs of one cable are more often a length that stands in the wrong column. Common practice,
/// no source.
constexpr std::uint64_t k_usual_cables = 12;

/// Some rows of the schedule and what came of them.
struct Chunk : RowChunk {
  std::vector<std::size_t> tag_hashes;  ///< of the rows; 0 where the tag is blank
  std::vector<std::string> many;        ///< rows that stand for more cables than usual
  std::string text;
  std::string csv;  ///< only beside JSON, and where it is asked for
  std::vector<std::pair<std::string, std::string>> exceptions;  ///< group and line
};

/// A row of a chunk, by its place, against which something speaks that stands elsewhere.
struct RowAgainst {
  std::size_t row = 0;
  OutsideRow outside;
};

/// One thread's work on chunks.
class Worker {
 public:
  Worker(const io::ScheduleFile& file, const ScheduleRun& run)
      : file_(file), layout_(file.layout()), run_(run), decider_(layout_, run.settings) {}

  void work(Chunk& chunk) {
    tally_.add(std::move(of_chunk_));
    decide(chunk, {});
  }

  /// Decides the chunk that was worked on last once more.
  /// @param against  in the order of the rows
  void decide(Chunk& chunk, std::span<const RowAgainst> against) {
    of_chunk_ = {};
    chunk.text.clear();
    chunk.csv.clear();
    chunk.tag_hashes.clear();
    chunk.many.clear();
    chunk.exceptions.clear();
    for (std::size_t i = 0; i < chunk.block.rows; ++i) {
      const bool is_against = !against.empty() && against.front().row == i;
      row(chunk, chunk.block.records[i], is_against ? against.front().outside : OutsideRow{});
      if (is_against) against = against.subspan(1);
    }
  }

  [[nodiscard]] schedule::Tally take_tally() {
    tally_.add(std::move(of_chunk_));
    return std::move(tally_);
  }
  [[nodiscard]] const std::set<std::string>& taken() const { return decider_.taken(); }

 private:
  void row(Chunk& chunk, const io::CsvRecord& record, const OutsideRow& outside) {
    ++of_chunk_.rows;
    if (!layout_.two_ends) ++of_chunk_.one_end_rows;
    if (layout_.ends_not_told) ++of_chunk_.ends_not_told;
    if (layout_.may_be_cables) ++of_chunk_.may_be_cables;
    const std::string_view tag = schedule::tag_of(layout_, record.fields);
    chunk.tag_hashes.push_back(name_hash(layout_, record.fields, name_));
    const auto fault = schedule::fault_of_row(layout_, record.fields);
    const schedule::RowCount count =
        schedule::count_of(layout_, record.fields).value_or(schedule::RowCount{});
    if (count.cables > k_usual_cables && !count.by_tag) {
      chunk.many.push_back(file_.row_name(record.line) + ", " + std::string(tag) + ": " +
                           std::to_string(count.cables));
    }
    const std::string_view group = schedule::group_of_row(layout_, record.fields, run_.by);
    std::uint64_t defaults = fault ? 0 : quantity_default_of(layout_, record.fields);
    for (const Side side : layout_.ends()) {
      const schedule::EndName name{tag,
                                   schedule::end_name(layout_, record.fields, side),
                                   record.line,
                                   file_.row_word(),
                                   file_.source_name(),
                                   count.cables};
      if (fault) {
        Decided decided;
        decided.decision.faults.push_back(*fault);
        put(chunk, name, group, decided);
      } else {
        const auto* const supply =
            run_.supplies != nullptr ? run_.supplies->of(file_.row_id(record.line), side) : nullptr;
        Decided& decided = decider_.decide({record.fields, record.bare}, side, supply);
        // As when the file changes between the two readings: stock must not be given out twice.
        if (run_.supplies != nullptr && supply == nullptr && decided.decision.fits > 0 &&
            !decided.decision.made) {
          throw InternalError("an end was left out when the stock was shared out");
        }
        defaults |= decided.decision.defaults;
        const EndDoubt doubt = doubts_.of(record.fields, side, count, outside);
        if (!doubt.any()) {
          put(chunk, name, group, decided);
        } else {
          Decided unclear{decided.decision, {}, {}};
          doubt.say(unclear.decision);
          put(chunk, name, group, unclear);
        }
      }
    }
    of_chunk_.defaults.add(defaults);
  }

  void put(Chunk& chunk, const schedule::EndName& name, std::string_view by, Decided& end) {
    const Decision& decision = end.decision;
    if (run_.json) {
      print::append_schedule_json(chunk.text, name, decision, run_.defaults,
                                  run_.suppliers.of(decision.gland));
    }
    if (!run_.json || run_.write_csv) {
      if (end.text.empty() && decision.usable()) io::append_schedule_csv_tail(end.text, decision);
      if (end.more.empty()) {
        io::append_schedule_csv_more(end.more, decision, run_.defaults,
                                     run_.suppliers.of(decision.gland));
      }
      io::append_schedule_csv(run_.json ? chunk.csv : chunk.text, name, decision, end.text,
                              end.more);
    }
    of_chunk_.add(decision, name.quantity, by);
    if (decision.proven || !run_.write_exception) return;
    const schedule::Exception exception = schedule::exception_of(name, decision);
    auto& [group, line] = chunk.exceptions.emplace_back(exception.group, "");
    io::append_exception_csv(line, exception);
  }

  const io::ScheduleFile& file_;
  const Layout& layout_;
  const ScheduleRun& run_;
  schedule::Decider decider_;
  schedule::Tally tally_;     ///< of the chunks before
  schedule::Tally of_chunk_;  ///< of the one at hand
  const RowDoubts doubts_{layout_};
  std::string name_;
};

/// What comes of all chunks.
class Collected {
 public:
  Collected(std::span<io::ScheduleFile* const> files, const ScheduleRun& run)
      : files_(files), run_(run) {}

  void begin(std::size_t file) {
    at_ = file;
    result_.skipped.emplace_back();
    result_.places.emplace_back();
    const auto& defaults = files_[file]->layout().defaults;
    told_plain_ = std::any_of(defaults.begin(), defaults.end(), [](const schedule::Default& each) {
      return each.column.field->key == "zone" && each.text == "none";
    });
    titles_.begin(*files_[file]);
    doubts_.emplace(files_[file]->layout());
  }

  void put_out(Chunk& chunk, Worker& worker) {
    if (!run_.settings.asking.place && !chunk.block.places.empty()) {
      throw too_late_to_ask(*files_[at_], chunk.block.places.front());
    }
    if (rows_ == 0 && chunk.taken && *chunk.taken > 0.0) {
      tags_.reserve(static_cast<std::size_t>(static_cast<double>(chunk.block.rows) / *chunk.taken));
    }
    if (const auto against = find_against(chunk); !against.empty()) worker.decide(chunk, against);
    run_.write(chunk.text);
    if (run_.write_csv) run_.write_csv(run_.json ? chunk.csv : chunk.text);
    for (const std::string& row : chunk.many) {
      if (++result_.many_count <= k_most_twice) result_.many.push_back(row);
    }
    for (const auto& [group, line] : chunk.exceptions) run_.write_exception(group, line);
    for (const schedule::SkippedRow& row : chunk.block.skipped) result_.skipped.back().add(row);
    if (told_plain_) {
      for (const io::PlaceText& place : chunk.block.places) add_place(place);
    }
    rows_ += chunk.block.rows;
    if (!run_.progress) return;
    auto taken = chunk.taken;
    const auto files = static_cast<double>(files_.size());
    if (taken) taken = (static_cast<double>(at_) + *taken) / files;
    run_.progress(rows_, taken);
  }

  void add(Worker& worker) {
    result_.tally.add(worker.take_tally());
    result_.taken.insert(worker.taken().begin(), worker.taken().end());
  }

  ScheduleResult result() {
    result_.all_compared = !tags_.full();
    return std::move(result_);
  }

 private:
  void add_place(const io::PlaceText& place) {
    ScheduleResult::Places& places = result_.places.back();
    if (++places.count <= k_named_places) places.first.push_back(place_name(*files_[at_], place));
  }

  /// The rows whose tag stands above, and those that are told plain under the title of a hazardous
  /// place.
  std::vector<RowAgainst> find_against(const Chunk& chunk) {
    constexpr std::size_t k_ahead = 16;
    std::vector<RowAgainst> against;
    titles_.begin(chunk.block);
    const io::ScheduleFile& file = *files_[at_];
    const Layout& layout = file.layout();
    for (std::size_t i = 0; i < chunk.block.rows; ++i) {
      if (i + k_ahead < chunk.block.rows) tags_.expect(chunk.tag_hashes[i + k_ahead]);
      const io::CsvRecord& record = chunk.block.records[i];
      // Rows are counted from 1, so that the number is never 0.
      const auto before =
          row_above(tags_, layout, record.fields, chunk.tag_hashes[i], file.row_id(record.line));
      const io::TitleSays& title = titles_.over(record.line);
      const bool place = doubts_->is_place_against(title, record.fields);
      const bool said = !title.away.empty() || !title.beside.empty();
      if (!before && !place && !said) continue;
      against.push_back({i, {.above = before ? row_name(*before) : "", .title = title}});
      if (!before) continue;
      if (++result_.twice_count > k_most_twice) continue;
      std::string name(schedule::tag_of(layout, record.fields));
      const std::string_view end = schedule::end_name(layout, record.fields, Side::both);
      if (!layout.two_ends && !end.empty()) name += " " + std::string(end);
      result_.twice.push_back("the tag " + name + " stands on " + row_name(*before) + " and on " +
                              file.row_name(record.line) +
                              "; both are answered, the second counts as provisional");
    }
    titles_.end();
    return against;
  }

  [[nodiscard]] std::string row_name(std::size_t id) const {
    constexpr std::size_t k_line = (std::size_t{1} << io::ScheduleFile::k_line_bits) - 1;
    return files_[id >> io::ScheduleFile::k_line_bits]->row_name(id & k_line);
  }

  std::span<io::ScheduleFile* const> files_;
  const ScheduleRun& run_;
  std::size_t at_ = 0;  ///< the table at hand
  std::size_t rows_ = 0;
  ScheduleResult result_;
  TagRegister tags_;
  TitleOver titles_;
  bool told_plain_ = false;          ///< by a default, where a cell of the table at hand is blank
  std::optional<RowDoubts> doubts_;  ///< of the table at hand
};

}  // namespace

ScheduleResult run_schedule(std::span<io::ScheduleFile* const> files, const ScheduleRun& run) {
  Collected all(files, run);
  for (std::size_t i = 0; i < files.size(); ++i) {
    io::ScheduleFile& file = *files[i];
    all.begin(i);
    work_through_rows<Chunk>(
        file, run.threads, [&] { return std::make_unique<Worker>(file, run); },
        [&](Chunk& chunk, Worker& worker) { all.put_out(chunk, worker); },
        [&](Worker& worker) { all.add(worker); });
  }
  return all.result();
}

}  // namespace cutback::run
