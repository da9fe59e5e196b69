#pragma once
// One end of a schedule, decided: by exactly the code of `fit` and `sheet`.

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/fit/select.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/input.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/schedule/made.hpp"
#include "cutback/tables/standards.hpp"
#include "cutback/verdict.hpp"

namespace cutback::schedule {

/// A part that goes on beside the gland, counted by name and thread.
struct Accessory {
  std::string name;    ///< `locknut`, `sealing washer`, `adaptor` ...
  std::string thread;  ///< of the entry; of an adaptor both
  friend auto operator<=>(const Accessory&, const Accessory&) = default;
};
using Accessories = std::vector<Accessory>;

/// A diameter as an end was decided with it.
struct UsedFigure {
  double mm = 0.0;
  double expanded_mm = 0.0;  ///< the true diameter lies within mm +- this
  measure::Evidence evidence = measure::Evidence::estimated;
  friend bool operator==(const UsedFigure&, const UsedFigure&) = default;
};

/// What is decided for one end. Lengths in mm; absent where there is no figure.
struct Decision {
  std::vector<Fault> faults;          ///< why the end cannot be used; the rest is empty then
  Verdict verdict = Verdict::no_fit;  ///< of the best gland
  /// The gland: only where its verdict is `fits`, or `marginal-inside` (the figures lie inside its
  /// ranges, but that is not proven). Borrowed from the gland list.
  const gland::Gland* gland = nullptr;
  std::size_t fits = 0;  ///< glands whose verdict is `fits`
  std::optional<double> outer_margin_mm;
  std::optional<double> inner_margin_mm;
  std::optional<double> armour_margin_mm;
  std::optional<bool> barrier;  ///< made off with compound; where no gland is chosen: demanded
  std::optional<double> armour_cut_mm;
  std::optional<double> sheath_cut_mm;
  std::optional<double> bedding_cut_mm;
  std::string reason;  ///< why this one, or why none; one line
  std::string group;   ///< of the exceptions: the same for ends that lack the same
  const gland::Gland* nearest = nullptr;  ///< where no gland is chosen
  std::string change;                     ///< the least change that would help; empty where it fits
  std::vector<std::string> remarks;       ///< about the figures; they change no verdict
  /// Shared by the ends that need the same; null where no gland is chosen.
  std::shared_ptr<const Accessories> accessories;
  /// Of figures that are not measured: the choice wavers between these two parts within the spread
  /// of the figures. Both null where it does not.
  fit::Wavering wavering;
  bool out_of_stock = false;            ///< glands fit, but none of them was left for this end
  fit::State state = fit::State::none;  ///< what the answer is good for
  std::string not_asked;                ///< questions that nobody asked, separated by spaces
  std::optional<UsedFigure> sheath_od;
  std::optional<UsedFigure> bedding;
  std::optional<UsedFigure> armour;
  std::uint64_t defaults = 0;  ///< bit n: the default of this number was taken (Format::defaults)
  bool proven = false;  ///< the end is done: it fits and, where marks are asked for, can be cut
  bool made = false;    ///< finished by the register: nothing is to be ordered for it

  [[nodiscard]] bool usable() const { return faults.empty(); }
};

/// The weakest evidence of the diameters that the end was decided with; nothing where it has none.
[[nodiscard]] std::optional<measure::Evidence> weakest_evidence(const Decision& decision);

/// What limited stock, shared out, comes to for an end that something fits.
struct Supply {
  const gland::Gland* gland = nullptr;  ///< what the end gets, one that fits it; null: none is left
  std::size_t place = 0;                ///< of the gland by price among those that fit, from 1
  // Where none is left:
  const gland::Gland* cheapest = nullptr;  ///< that fits
  std::string reason;                      ///< which have run out, and who gets them
  std::string change;
};

/// Which end of which cable, and where it stands.
struct EndName {
  std::string_view tag;
  std::string_view end;
  std::size_t line = 0;
  std::string_view row_word = "line";  ///< what the file's rows are called
  std::string_view source = {};        ///< the file or sheet, where there are several
  std::uint64_t quantity = 1;          ///< of cables that the row stands for
};

/// Why an end cannot be used, in one line.
[[nodiscard]] std::string unusable_text(const schedule::Decision& decision);

/// Why it is not known how often an end is wanted.
struct CountDoubt {
  std::string says;  ///< RowCount::unclear, for example
  const char* group = "number of cables not known";
  const char* change =
      "say in the column quantity how many cables the row stands for, and leave out what says "
      "another number";
};
/// Of an end that may be wanted more or less often: it is not done, whatever fits it.
void say_count_unclear(const CountDoubt& doubt, Decision& decision);
/// An end that is told plain, and a text of the row that speaks of a hazardous place.
void say_place_in_doubt(const std::string& text, Decision& decision);

/// The verdict as results show it: `unusable`, `no-stock`, or that of the best gland.
[[nodiscard]] std::string_view verdict_word(const Decision& decision);

/// What every end of a schedule is decided with. Borrowed.
struct Settings {
  const tables::Standards* standards = nullptr;
  const fit::Selector* glands = nullptr;
  fit::Asking asking{.purpose = fit::Purpose::schedule};
  const MadeEnds* made = nullptr;  ///< what a register says of the ends; null where there is none
};

/// Decides one end: a figure without a stated evidence is a datasheet's, several readings are
/// measured. An input that contradicts itself is a decision with faults, not an error.
/// Without any figure for the sheath the verdict is `not-known`.
/// @param supply  what the end gets of limited stock; null where there is no limit, or nothing fits
/// @param notes   of the row, where it is one
/// @param made    what was measured of it, and the gland that it was finished with, which is then
/// the only one that is looked at; null where the register says nothing
[[nodiscard]] Decision decide(const job::JobInput& input, const Settings& settings,
                              const Supply* supply = nullptr, const RowNotes& notes = {},
                              const MadeEnd* made = nullptr);

/// A decision with what it was made from, for whoever goes on to the sheet of the end.
struct AskedEnd {
  Decision decision;
  std::unique_ptr<const job::Job>
      job;  ///< null where the end cannot be used or has no sheath diameter; the rest is empty then
  fit::Question question;  ///< of this job
  /// Of the gland, or of the nearest where none is chosen; absent where none is left in stock.
  std::optional<fit::GlandFit> fit;
};

/// As decide().
[[nodiscard]] AskedEnd decide_asked(const job::JobInput& input, const Settings& settings,
                                    const Supply* supply = nullptr, const RowNotes& notes = {},
                                    const MadeEnd* made = nullptr);

/// The job of an end that is decided so. @throws InputError
[[nodiscard]] job::Job job_of(const job::JobInput& input, const Settings& settings,
                              const RowNotes& notes, const MadeEnd* made);

}  // namespace cutback::schedule
