#pragma once
// Sums of money, exact: whole units of the last decimal that any of the prices has.

#include <cstdint>
#include <optional>
#include <string>

namespace cutback {

/// Prices are shown with two decimals at least; there are currencies with three, and parts that
/// cost less than a unit of them.
inline constexpr int k_least_price_decimals = 2;
inline constexpr int k_most_price_decimals = 6;

/// The decimals that write a price exactly, two at least; nothing where six are not enough.
/// @param price  at least 0
[[nodiscard]] std::optional<int> price_decimals(double price);

/// Whole units of 10^-decimals: exact for a price that has no more decimals.
[[nodiscard]] std::int64_t price_units(double price, int decimals);

/// `5897.30` for 589730 units of two decimals.
[[nodiscard]] std::string money_text(std::int64_t units, int decimals);

/// The same as a number: the nearest double.
[[nodiscard]] double money_value(std::int64_t units, int decimals);

/// `units` times `count`. @throws InputError where the product leaves 64 bits
[[nodiscard]] std::int64_t money_times(std::int64_t units, std::uint64_t count);
/// The sum. @throws InputError where it leaves 64 bits
[[nodiscard]] std::int64_t money_sum(std::int64_t a, std::int64_t b);

}  // namespace cutback
