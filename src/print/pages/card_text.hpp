#pragma once
// What stands on a card, in words, not yet placed.

#include <optional>
#include <string>
#include <vector>

#include "cutback/print/pages.hpp"
#include "print/inches_text.hpp"
#include "print/mark_words.hpp"
#include "print/pages/qr_code.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {

struct CardText {
  std::string tag;
  std::string end;
  std::string state;     ///< CUT, MEASURE FIRST, NOT YET, NONE
  bool is_stop = false;  ///< nothing may be cut by it
  std::string gland;
  std::vector<std::string> facts;  ///< entry and its parts; spanner and torque
  std::string first;               ///< above all else: that nothing may be cut
  std::vector<std::string> notes;  ///< a duplicate tag, results that differ, letters without a font

  /// What is ticked before anything is measured, and where the end is.
  struct Tick {
    std::string loud;
    std::string words;
    bool box = true;
  };
  std::vector<Tick> ticks;

  struct Gate {
    std::string what;  ///< sheath, bedding, one wire
    std::string how;   ///< how far its readings may be apart, or with what it is measured
    std::string must;
    std::string was;  ///< what it is by the job: "was 15.2", "book 15.2"
    int blanks = 1;
  };
  std::vector<std::string> gates_head;  ///< what the boxes are for, the longest words first
  std::vector<Gate> gates;
  std::string between;  ///< what sheath less bedding must be; it has a blank
  bool between_blank = true;
  std::string gate_notes;  ///< what else must be kept to
  std::string rear;
  std::size_t rear_after = 0;  ///< so many marks come before the rear parts go on
  std::vector<OpenBlank> blanks;
  std::vector<MarkWords> marks;
  std::string spread;  ///< of the depths

  struct Tail {
    std::string core;
    std::string cut_back;
    std::string strip;
    std::string length;
  };
  std::vector<Tail> tails;
  std::string tails_head;    ///< what the tails are measured from, and a strip length of all
  std::string route;         ///< what the marks suppose of it; empty where it is measured
  bool strips = false;       ///< strip lengths are known, and have a column
  bool cut_backs = false;    ///< the tails differ in length
  bool two_sums = false;     ///< the bedding's mark is a sum as well
  bool lists_strip = false;  ///< each end of a type has its strip length written in

  /// The lengths once more, where inches are asked for.
  std::vector<InchRow> inches;

  /// The ends that a card of a type serves.
  std::vector<ServedEnd> serves;

  struct Field {
    enum class Kind { figure, name };
    std::string words;
    std::string unit;
    Kind kind = Kind::figure;
  };
  std::vector<Field> as_made;
  std::string rule;                   ///< the caution of every card, and what a profile decided
  std::vector<std::string> cautions;  ///< of this end
  std::vector<std::string> why;       ///< where nothing may be cut
  std::vector<std::string> remedy;
  bool has_drawing = false;
  std::string running;  ///< card n of N, schedule, sheet
  std::optional<QrCode> code;
};

[[nodiscard]] CardText card_text(const Card& card);

/// Core's sentences without the options that they name, which nobody has on site.
[[nodiscard]] std::string without_options(std::string_view words);

/// What is read off the finished end and its limit, with the unit left to its blank.
[[nodiscard]] std::string test_words(const sheet::Test& test);

/// A sentence of the program, which is ASCII, as paper has it: signs for plus or minus, squares,
/// cubes and degrees.
[[nodiscard]] std::string paper_words(std::string_view words);

/// The marks as paper has them.
[[nodiscard]] std::vector<MarkWords> paper_marks(const sheet::Sheet& sheet);

}  // namespace cutback::print
