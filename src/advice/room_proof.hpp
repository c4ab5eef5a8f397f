// SPDX-License-Identifier: GPL-3.0-or-later
/// One more thing put to the proof.
#pragma once
#include <optional>

#include "tuckwright/bundle.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright::advice {

/// The bundle with it, as of with_one_more(); or why not.
struct Attempt {
    std::optional<Bundle> bundle;
    bool too_tight = false; ///< something a hair smaller might yet be proved
    bool barred = false;    ///< there is no order in which all could go in
};

Attempt attempt(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid);

} // namespace tuckwright::advice
