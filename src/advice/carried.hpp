// SPDX-License-Identifier: GPL-3.0-or-later
/// Who lies in whom, without places: enough for the rules of carrying.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::advice {

struct CarriedThing {
    std::string id;
    int copy = 1;
    std::optional<std::size_t> in;     ///< index of what it lies in; nothing: the bundle
    std::optional<std::size_t> closes; ///< index of what it is shut on; then it counts as lying in that
    bool anywhere = false;             ///< nobody knows where it will lie: no rule is broken by it
};

using Carried = std::vector<CarriedThing>;

/// Of a bundle, with its indices.
Carried carried(const Bundle& bundle);

/// The indices of all that a thing lies in, from its own container outwards, up to what may lie anywhere.
std::vector<std::size_t> chain_of(const Carried& things, std::size_t thing);

/// Two things by which a rule is broken, in the order in which it names them; nothing where it is kept, or where one
/// of the two is not there. Requires: nothing within itself.
std::optional<std::pair<std::size_t, std::size_t>> broken(const Carried& things, const CarryRule& rule);

} // namespace tuckwright::advice
