#pragma once
// The marks of a plan in words, for the screen and for paper: where each is and how deep to cut
// there. ASCII.

#include <optional>
#include <string>
#include <vector>

#include "cutback/sheet/sheet.hpp"

namespace cutback::print {

/// One mark. Where it is reads `before` `figure` `after`, and behind them a blank where the hands
/// have to add something up.
struct MarkWords {
  char number = '1';     ///< or S, the gland's shoulder
  std::string layer;     ///< that is cut; of S what to do there
  std::string before;    ///< what must be measured first: `reach + strip + `
  std::string figure;    ///< mm; empty where there is none
  std::string after;     ///< from where, and how exactly
  std::string from_end;  ///< of a mark that is made from another one: what it comes to [mm]
  bool blank = false;    ///< a sum, or a figure of the gland in hand, is to be written in
  std::string depth;     ///< without its unit, which is mm
  bool is_cut = true;    ///< S is a place to hold the gland at, or a check

  /// Under the mark in the drawing.
  [[nodiscard]] std::string brief() const;
  /// Where S is a check and has its figure: as a sentence.
  [[nodiscard]] std::string check() const;
};

/// In working order. Where a route, a strip length or a wall waits to be measured the first mark is
/// that length and a constant, so that it can be cut by on the day: tip = w + R + s + slack,
/// rounded up to a whole mm as in strip::plan_cuts. The others are made from it, as far as the
/// armour stop is known, so that one sum alone is done on site.
/// @param sheet  with a plan
[[nodiscard]] std::vector<MarkWords> mark_words(const sheet::Sheet& sheet);

/// Cores whose tails are alike, which share a row.
struct TailRow {
  std::string cores;  ///< `L1`, or `1 to 61`
  const strip::Tail* tail;
};
/// @param tails  borrowed
[[nodiscard]] std::vector<TailRow> tail_rows(const std::vector<strip::Tail>& tails);

/// Where the tails wait for a route: what each comes to, `reach + 35`; empty where they are known,
/// or nothing can be said yet.
[[nodiscard]] std::string open_tail(const sheet::Sheet& sheet);

/// What the depths leave open, `+/- 0.2`, as printed beside them; empty where there is none.
[[nodiscard]] std::string depth_spread(const sheet::Sheet& sheet);

}  // namespace cutback::print
