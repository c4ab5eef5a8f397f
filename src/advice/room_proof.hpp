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
    bool too_tight = false; ///< something a hair smaller might yet be proved, or find its way in
};

/// What can be told before a thing has grown up: it would rest on nothing, as over an empty mouth; there is no order in
/// which all could go in; or neither.
enum class Prospect { hovers, barred, good };
Prospect prospect(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid);

Attempt attempt(const Bundle& bundle, const std::optional<Lodging>& in, const Solid& solid);

} // namespace tuckwright::advice
