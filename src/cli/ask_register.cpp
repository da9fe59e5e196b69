#include "cli/ask_register.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <optional>
#include <vector>

#include "cli/date_option.hpp"
#include "cli/wrong_file.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/io/made_file.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

struct Question {
  std::string_view column;
  const char* asks;
  bool of_a_gland = false;  ///< not asked of a measurement
};
constexpr std::array<Question, 6> k_questions{{
    {"tag", "Tag of the cable"},
    {"end", "Which end"},
    {"part", "Gland that it was finished with"},
    {"batch", "Batch of the gland", true},
    {"torque_nm", "Torque of the body, in N m", true},
    {"by", "Who made it"},
}};

/// Why a gland does not fit, or is not known to.
std::string why_not(const fit::GlandFit& fit) {
  if (fit.verdict == Verdict::not_known || fit.verdict == Verdict::marginal_inside) {
    return "not proven: " + fit::lacks_text(fit::lacks_of(fit));
  }
  std::vector<const fit::Check*> failing;
  for (const fit::Check& check : fit.checks) {
    if (check.verdict == fit.verdict) failing.push_back(&check);
  }
  return "did not fit: " + fit::miss_text(failing);
}

/// One row while it is asked for.
class Entry {
 public:
  Entry(io::MadeRow row, io::MadeFile file, std::span<const fit::GlandFit> ranked,
        const gland::GlandList& list, Talk& talk)
      : row_(std::move(row)), file_(std::move(file)), ranked_(ranked), list_(list), talk_(talk) {}

  enum class End { whole, left, over };

  /// All questions that are open.
  End ask() {
    talk_.say("? not known, < back");
    std::vector<std::size_t> asked;
    for (std::size_t i = 0; i < k_questions.size();) {
      if (!is_open(k_questions[i])) {
        ++i;
        continue;
      }
      const Heard heard = ask_one(k_questions[i]);
      if (heard == Heard::over) return End::over;
      if (heard == Heard::value) {
        asked.push_back(i++);
        continue;
      }
      if (asked.empty()) return End::left;
      i = asked.back();
      asked.pop_back();
      row_.set(k_questions[i].column, "");
    }
    return End::whole;
  }

  [[nodiscard]] const io::MadeRow& row() const { return row_; }

 private:
  enum class Heard { value, back, over };

  [[nodiscard]] bool is_open(const Question& question) const {
    if (question.of_a_gland && row_.cell("part").empty()) return false;
    return row_.cell(question.column).empty();
  }

  /// The gland of the answer; null where none fits.
  [[nodiscard]] const gland::Gland* best() const {
    const bool fits = !ranked_.empty() && ranked_.front().verdict == Verdict::fits;
    return fits ? ranked_.front().gland : nullptr;
  }

  [[nodiscard]] std::string words_of(const Question& question) const {
    std::string words = question.asks;
    if (question.column == "tag" || question.column == "end") return words;
    if (question.column != "part") return words + "; Enter: not known";
    if (best() != nullptr) words += "; y: " + best()->part;
    return words + "; Enter: measured, not finished";
  }

  Heard ask_one(const Question& question) {
    std::string doubted;
    for (;;) {
      talk_.say(words_of(question));
      const auto line = talk_.hear();
      if (!line) return Heard::over;
      std::string answer(trimmed(*line));
      if (answer == "<") return Heard::back;
      if (answer == "?") answer.clear();
      if (question.column == "part") {
        const std::string small = small_letters(answer);
        if ((small == "y" || small == "yes") && best() != nullptr) answer = best()->part;
        const std::string doubt = doubt_of(answer);
        if (!doubt.empty() && answer != doubted) {
          talk_.say("! " + answer + " " + doubt + ". Once more: it is written all the same");
          doubted = answer;
          continue;
        }
        row_.set("remark", doubt);
      }
      row_.set(question.column, answer);
      const std::string fault = fault_of(question.column);
      if (fault.empty()) return Heard::value;
      talk_.say("! " + fault);
      row_.set(question.column, "");
    }
  }

  /// What speaks against the gland; empty where nothing does.
  [[nodiscard]] std::string doubt_of(const std::string& part) const {
    if (part.empty()) return {};
    std::vector<std::string_view> parts;
    for (const fit::GlandFit& fit : ranked_) {
      if (fit.gland->part == part) {
        return fit.verdict == Verdict::fits ? std::string() : why_not(fit);
      }
      parts.push_back(fit.gland->part);
    }
    const std::string near = did_you_mean(part, parts);
    return "is not in " + list_.name + (near.empty() ? "" : " (" + near + ")");
  }

  /// What is wrong with the cell that was just filled.
  std::string fault_of(std::string_view column) {
    for (const std::string& taken : io::take_units(row_)) talk_.say("  taken: " + taken);
    for (Fault& fault : io::faults_of(row_)) {
      if (fault.where != column) continue;
      fault.where.clear();
      return to_line(fault);
    }
    if (column != "end" && column != "tag") return {};
    const auto same = io::same_end_otherwise(file_, row_);
    return same ? to_line(*same) : std::string();
  }

  io::MadeRow row_;
  io::MadeFile file_;
  std::span<const fit::GlandFit> ranked_;
  const gland::GlandList& list_;
  Talk& talk_;
};

io::MadeRow measured_row(const job::JobInput& input, const Runtime& runtime) {
  io::MadeRow row;
  row.set("tag", input.tag.value_or(""));
  row.set("end", input.end.value_or(""));
  row.set("made_at", today(runtime));
  const auto put = [&](const char* column, const std::optional<measure::Readings>& readings) {
    if (readings) row.set(column, readings->text);
  };
  put("sheath_od_mm", input.sheath_od_mm);
  put("bedding_mm", input.bedding_mm);
  put("armour_mm", input.armour_mm);
  return row;
}

}  // namespace

bool enter_into_register(const std::string& path, job::JobInput& input,
                         std::span<const fit::GlandFit> ranked, const gland::GlandList& list,
                         Talk& talk, const Runtime& runtime) {
  try {
    io::MadeFile file;
    std::error_code error;
    // That it is a register is found before anybody answers.
    if (std::filesystem::exists(path, error)) file = io::load_made(path);
    Entry entry(measured_row(input, runtime), std::move(file), ranked, list, talk);
    switch (entry.ask()) {
      case Entry::End::over:
        talk.say("Nothing was written into " + path + ".");
        return false;
      case Entry::End::left:
        talk.say("Nothing was written into " + path + ".");
        return true;
      case Entry::End::whole:
        break;
    }
    input.tag = entry.row().cell("tag");
    input.end = entry.row().cell("end");
    for (const std::string& remark : io::append_made(path, entry.row())) talk.say("! " + remark);
    talk.say("Written into " + path + ": cutback made " + path + " shows it.");
  } catch (const Error& error) {
    if (const auto fault = wrong_file("made", {{"register", path}})) {
      talk.say("! " + to_line(*fault));
    } else {
      for (const Fault& each : error.faults()) talk.say("! " + to_line(each));
    }
  }
  return true;
}

}  // namespace cutback::cli
