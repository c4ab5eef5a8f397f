// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit as it goes out and as it comes back.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

/// The two states of one kit. The same id is the same thing in both; the name of the second says which it is.
struct BothWays {
    Kit out, back;
};

/// Reads a kit and what its file says of the way back, with what is taken of the file's choices; `name` stands for the
/// file in problems. Ensures: both are as sound as a kit that read_kit_text() gives, and out is that kit; a trip of
/// the second is over. Errors: those of read_kit_text(), and a file that says nothing of a way back.
Result<BothWays> read_both_ways_text(std::string_view text, const std::string& name,
                                     const std::vector<Taken>& chosen = {});

} // namespace tuckwright
