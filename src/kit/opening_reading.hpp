// SPDX-License-Identifier: GPL-3.0-or-later
/// The `opening` of a cavity: narrower than that, on its axis.
#pragma once
#include <optional>

#include "kit/sized_shape.hpp"

namespace tuckwright::reading {

struct OpeningDraft {
    SizedShape shape; ///< its height is the depth of the neck, from the cavity's top to the rim
};

/// A round opening (diameter) or a rectangular one (length, width), with its depth, 0 where that is left out.
std::optional<OpeningDraft> read_narrow_opening(Reading& reading, const Node& node);

/// Reports an opening that is not narrower than the cavity, or does not lie within it.
bool check_narrower(Reading& reading, const OpeningDraft& opening, const SizedShape& cavity);

} // namespace tuckwright::reading
