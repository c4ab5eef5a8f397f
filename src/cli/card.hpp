// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `card`: the card to print.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/card.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

struct CardCommand {
    std::string file;          ///< a kit, which is packed first, or a saved bundle; - for standard input
    std::string html, pdf;     ///< where they go; - for standard output; one of them at least
    std::string json;          ///< where the bundle is saved besides, so that verify can confirm the card
    Paper paper = Paper::a4;
    std::string date;          ///< empty: today, or that of SOURCE_DATE_EPOCH
    bool without_picture = false;
    bool worst_case = false;
    bool way_back = false;    ///< the kit as it is on the way back
    std::vector<Taken> chosen;
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int card(const CardCommand& options);

} // namespace tuckwright::cli
