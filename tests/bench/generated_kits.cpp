// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/generated_kits.hpp"

#include <algorithm>
#include <cmath>

#include "support/kit_writer.hpp"
#include "support/random_solids.hpp"

namespace tuckwright::bench {

namespace {

using test::box;
using test::cylinder;
using test::Dice;

double whole(Dice& dice, double low, double high) { return std::round(dice.between(low, high)); }

std::string round_one(Dice& dice, double least_wide, double most_wide, double least_high, double most_high)
{
    const double diameter = whole(dice, least_wide, most_wide);
    return cylinder(diameter, whole(dice, least_high, most_high));
}

std::string pot(Dice& dice) { return round_one(dice, 95, 150, 70, 130) + ", inside: {wall: 1, base: 1, opens: top}"; }

std::string vessel(Dice& dice)
{
    switch (dice.below(4)) {
    case 0: return pot(dice);
    case 1: return round_one(dice, 50, 105, 40, 110) + ", inside: {wall: 1, base: 1, lid: own}";
    case 2: {
        const double length = whole(dice, 80, 160), width = whole(dice, 50, 110);
        return box(length, width, whole(dice, 25, 75)) + ", inside: {wall: 1.5, base: 1.5, lid: own}";
    }
    default: return round_one(dice, 60, 130, 40, 100) + ", inside: {wall: 0.5, opens: both}";
    }
}

std::string solid(Dice& dice)
{
    switch (dice.below(3)) {
    case 0: return round_one(dice, 20, 75, 15, 90);
    case 1: {
        const double length = whole(dice, 25, 110), width = whole(dice, 15, 70);
        return box(length, width, whole(dice, 6, 45));
    }
    default: return round_one(dice, 5, 14, 70, 190);
    }
}

/// Of so many items about this share, rounded to within 18 and 30 %, and at least one.
int vessels_among(int items, double share)
{
    const int least = (18 * items + 99) / 100, most = std::max(least, 30 * items / 100);
    return std::clamp(static_cast<int>(std::lround(items * share)), least, most);
}

} // namespace

std::string generated_kit(int items, std::uint64_t seed)
{
    Dice dice(seed * 1000 + static_cast<std::uint64_t>(items));
    const int vessels = vessels_among(items, dice.between(0.18, 0.30));
    test::KitText kit(seed % 2 == 0 ? test::round_bundle() : test::box_bundle(), 0.5);
    for (int k = 0; k < items; ++k) {
        kit.item("thing-" + std::to_string(k + 1), k == 0 ? pot(dice) : k < vessels ? vessel(dice) : solid(dice));
    }
    return kit.text();
}

} // namespace tuckwright::bench
