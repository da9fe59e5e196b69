#pragma once
// The checks that compare a diameter of the cable with a range of the gland, and the layers of the
// cable with each other.

#include <optional>
#include <vector>

#include "core/fit/rules.hpp"
#include "cutback/fit/absurd.hpp"

namespace cutback::fit::detail {

std::optional<Against> against_outer_seal(const Case& at);
std::optional<Check> check_outer_seal(const Case& at, GlandFit& fit);

/// Not asked where the gland has no inner seal, or is made off as a barrier round the cores.
std::optional<Against> against_inner_seal(const Case& at);
std::optional<Check> check_inner_seal(const Case& at, GlandFit& fit);

/// Not asked where the gland states no bore, or the cable has nothing under an armour.
std::optional<Against> against_bore(const Case& at);
std::optional<Check> check_bore(const Case& at, GlandFit& fit);

std::optional<Against> against_armour(const Case& at);
std::optional<Check> check_armour(const Case& at, GlandFit& fit);

/// What would settle a passage of the bedding, or of an unarmoured cable's sheath, that is near its
/// limit: the same reading as for the seal round it.
std::vector<Lack> settled_by(const Check& passage, const cable::Cable& cable);

/// A check against a figure of the list that cannot be: it decides nothing.
Check check_absurd(CheckName name, Figure figure, const Case& at);

/// Not asked where one of the three readings is missing, or there is no armour.
std::optional<Verdict> build_up_alone(const Question& question);
std::optional<Check> check_build_up(const Case& at, GlandFit& fit);

}  // namespace cutback::fit::detail
