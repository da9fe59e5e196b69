#pragma once
// Sizes of the type on a card: by what it is for, never by how much room is left.

namespace cutback::print {

/// A point of type in mm.
inline constexpr double k_point_mm = 25.4 / 72.0;

/// Sizes in mm. What is read with gloves on is at least `hand`.
struct CardType {
  double tag;
  double end;
  double state;
  double gland;
  double mark;  ///< figures of the marks
  double bar;   ///< rear parts, layers, depths
  double gate;  ///< gates and tails
  double hand;  ///< everything else that the hands need
  double caution;
  double small;              ///< what only the office reads
  double code;               ///< side of the code at most
  bool code_on_back;         ///< where it does not take room from the marks
  bool brief_tails = false;  ///< of many cores the lengths alone, which are all that is cut by
};

/// For cards of a half page or more.
inline constexpr CardType k_large_type{.tag = 28 * k_point_mm,
                                       .end = 16 * k_point_mm,
                                       .state = 20 * k_point_mm,
                                       .gland = 24 * k_point_mm,
                                       .mark = 24 * k_point_mm,
                                       .bar = 14 * k_point_mm,
                                       .gate = 13 * k_point_mm,
                                       .hand = 12 * k_point_mm,
                                       .caution = 9 * k_point_mm,
                                       .small = 7 * k_point_mm,
                                       .code = 22.0,
                                       .code_on_back = false};

/// For a quarter of a page.
inline constexpr CardType k_small_type{.tag = 20 * k_point_mm,
                                       .end = 13 * k_point_mm,
                                       .state = 14 * k_point_mm,
                                       .gland = 16 * k_point_mm,
                                       .mark = 18 * k_point_mm,
                                       .bar = 10 * k_point_mm,
                                       .gate = 10 * k_point_mm,
                                       .hand = 10 * k_point_mm,
                                       .caution = 8 * k_point_mm,
                                       .small = 7 * k_point_mm,
                                       .code = 22.0,
                                       .code_on_back = true};

}  // namespace cutback::print
