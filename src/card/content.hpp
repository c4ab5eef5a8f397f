// SPDX-License-Identifier: GPL-3.0-or-later
/// What stands on a card, in words, whatever it is printed on.
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::card {

/// A thing to lay ready, with a box to tick. Many copies that are alike share one.
struct Part {
    std::string numbers; ///< by which the drawings name it: "6", "7 … 23"; empty for what is not drawn
    std::string name;    ///< "Steel pot, 1.1 l"
    std::string details; ///< "128 mm across, 96 mm high; holds 150 g of rolled oats"
    std::string weight;  ///< of one, with what it holds
    std::size_t copies = 1;
};

/// A step, and what is drawn beside it: the step of the bundle, or everything with so many of its covers round it.
struct Step {
    std::string text;
    std::size_t step;
    std::size_t covers = 0;
};

struct Content {
    std::string title;
    std::string size;                     ///< "a round bundle 131 mm across and 112 mm high"
    std::string volume, weight;
    std::vector<Part> parts;
    std::vector<std::string> before;      ///< what to know before the first step
    std::vector<Step> steps;
    std::vector<std::string> unpacking;   ///< what comes out, in that order
    std::vector<std::string> notes;       ///< what topples, rattles, fits tightly
    std::vector<std::string> cautions;
    std::string code;
    std::string date;                     ///< empty: none is told
};

/// Requires: a bundle that is there and proved.
Content content_of(const Bundle& bundle, const std::string& date);

/// "Checked by computation; code 7K3F-Q2W" and how to confirm it, for the foot of the card.
std::string proof_line(const Content& content);

} // namespace tuckwright::card
