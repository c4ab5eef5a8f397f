// SPDX-License-Identifier: GPL-3.0-or-later
/// A bundle as a picture to turn in a browser: one HTML page that needs nothing else.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/chains.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright {

/// Whether this build can draw the picture; it can't where it was made without Node or its packages.
bool has_turning_picture();

/// What is shown besides the bundle.
struct PictureExtras {
    std::optional<RoomAnswer> room; ///< what else would go in
    std::vector<Chain> chains;      ///< what sets the size
};

/// The complete page, UTF-8: the kit's name, size, weight and status, the picture with its controls, and the usual
/// cautions; without scripts, the steps in words. It asks for nothing over a network.
/// Requires: has_turning_picture(); a bundle to which check() has no objection, with its plays; extras of this bundle.
/// Ensures: the same bundle and extras, the same bytes. Complexity: linear in the bundle's JSON.
std::string turning_picture(const Bundle& bundle, const PictureExtras& extras = {});

/// The picture and its controls alone, as one `section` for a larger page, whose styles and its own do not touch each other;
/// it is not printed. Where has_turning_picture() is false, it is a sentence that says so. Requires: the same, otherwise.
std::string turning_picture_block(const Bundle& bundle, const PictureExtras& extras = {});

} // namespace tuckwright
