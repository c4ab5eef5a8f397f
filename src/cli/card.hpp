// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `card`: the card to print.
#pragma once
#include <string>

#include "cli/packed.hpp"
#include "tuckwright/card.hpp"

namespace tuckwright::cli
{

struct CardCommand : WhatToPack {
    std::string html, pdf;        ///< where they go; - for standard output; one of them at least
    std::string json;             ///< where the bundle is saved besides, so that verify can confirm the card
    Paper paper = Paper::a4;
    std::string date;             ///< empty: today, or that of SOURCE_DATE_EPOCH
    bool without_picture = false; ///< leaves the picture to turn out of the page
};

/// Runs the command. Returns the exit status.
int card(const CardCommand& options);

} // namespace tuckwright::cli
