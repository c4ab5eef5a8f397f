// SPDX-License-Identifier: GPL-3.0-or-later
/// All that the turning picture says about a bundle, in words. The page has none of its own for that, so that it rounds and
/// names as the other answers do.
#pragma once
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "tuckwright/turning_picture.hpp"

namespace tuckwright::card {

/// The text on one line: what was wrapped, unwrapped.
std::string on_one_line(std::string_view text);

/// "30.3 mm sideways, none up and down": how far it can move, rounded down. Requires: its play is there.
std::string play_in_words(const Bundle& bundle, std::size_t item);

/// The bundle in a line: size, volume, weight, what is proved.
std::string headline(const Bundle& bundle);

/// The part "words" of the picture's data.
nlohmann::ordered_json picture_words(const Bundle& bundle, const PictureExtras& extras);

} // namespace tuckwright::card
