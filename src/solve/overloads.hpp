// SPDX-License-Identifier: GPL-3.0-or-later
/// What of a bundle bears more than it may.
#pragma once
#include <cstddef>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// An item that bears more than it may, and all that lies on it, through others too.
struct Overload {
    std::size_t item = 0;
    std::vector<std::size_t> load;
};

/// The overloads of a bundle, in the order of its items.
std::vector<Overload> overloads(const Bundle& bundle);

} // namespace tuckwright
