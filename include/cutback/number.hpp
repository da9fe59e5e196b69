#pragma once
// Numbers as people type and read them. No locale: the decimal mark is a point.

#include <optional>
#include <string>
#include <string_view>

namespace cutback {

/// Plain decimal number: digits, one optional point, optional sign and exponent.
/// Not accepted: hexadecimal, nan, inf, a value that overflows, spaces, a decimal comma, nothing.
[[nodiscard]] std::optional<double> parse_number(std::string_view text);

/// The commonest form alone: at most 15 digits, at most 12 of them behind one point, no sign.
/// Digits and power of ten are then doubles without an error, so that their quotient is the nearest
/// double (IEEE 754-2019 4.3, 5.4.1: a correctly rounded division).
[[nodiscard]] std::optional<double> parse_figure(std::string_view text);

/// `value` with `decimals` places, half away from zero, never "-0".
[[nodiscard]] std::string fixed(double value, int decimals);
/// The same, put behind `out`.
void append_fixed(std::string& out, double value, int decimals);

/// `value` with at most `decimals` places and no trailing zeros: 15, 1.6, 0.05.
[[nodiscard]] std::string plain(double value, int decimals = 3);
/// The same, put behind `out`.
void append_plain(std::string& out, double value, int decimals);

/// Rounds half away from zero to a multiple of `step` (IEC 60227-2:2003 1.9.2: 1.75 -> 1.8).
/// The decimal that was meant counts: 1.15 is rounded as 1.15, not as 1.1499999999999999.
[[nodiscard]] double round_half_up(double value, double step);

/// Rounds down to a multiple of `step`; a value within 1e-6 of a multiple counts as that multiple.
[[nodiscard]] double round_down(double value, double step);

/// Rounds up to a multiple of `step`; a value within 1e-6 of a multiple counts as that multiple.
[[nodiscard]] double round_up(double value, double step);

/// An expanded uncertainty rounded up to two significant figures (JCGM 100:2008 7.2.6), with the
/// number of decimals to which the value beside it is then rounded.
struct RoundedUncertainty {
  double value;
  int decimals;
};
[[nodiscard]] RoundedUncertainty round_uncertainty(double expanded);

}  // namespace cutback
