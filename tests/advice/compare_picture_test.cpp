// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "support/svg.hpp"
#include "support/workload.hpp"
#include "tuckwright/compare_picture.hpp"

using namespace tuckwright;

namespace {

/// Kits as if they had been packed: so many, here and there, some without a bundle.
Comparison by_chance(std::mt19937& random, int kits)
{
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random() % 10'001) / 10'000;
    };
    Comparison all;
    for (int k = 0; k < kits; ++k) {
        Compared kit;
        kit.contender.file = "kit-" + std::to_string(k) + ".yaml";
        kit.contender.chosen.kit.name = "Soup by chance, number " + std::to_string(k);
        kit.trial = k % 7 == 3 ? Trial::left_out : Trial::packed;
        kit.bundle.status = k % 5 == 4 ? Status::does_not_fit : Status::found;
        kit.bundle.envelope = Box{100, 100, between(100, 300)};
        kit.empty_g = k % 3 == 0 && k > 0 ? all.kits.back().empty_g : between(200, 900);
        kit.lower_bound_ml = volume_ml(kit.bundle.envelope) * between(0.7, 1);
        all.kits.push_back(kit);
    }
    return all;
}

bool has_dot(const Compared& kit) { return kit.trial == Trial::packed && has_bundle(kit.bundle.status); }

/// The middles of all circles that are 2.6 mm wide.
std::vector<svg::Point> dots(const svg::Picture& picture)
{
    std::vector<svg::Point> found;
    for (const svg::Drawn& path : picture.paths) {
        const svg::Bounds b = path.bounds();
        if (!path.letter && !path.clip && std::abs(b.right - b.left - 2.6) < 0.02 && std::abs(b.bottom - b.top - 2.6) < 0.02) {
            const svg::Point middle{(b.left + b.right) / 2, (b.top + b.bottom) / 2};
            const bool again = !found.empty() && std::hypot(found.back().x - middle.x, found.back().y - middle.y) < 1e-3;
            if (!again) { // filled, then drawn round
                found.push_back(middle);
            }
        }
    }
    return found;
}

/// What is wrong with where the dots are: each must lie where a straight scale puts its figures.
std::string misplaced(const Comparison& all, const std::vector<svg::Point>& found)
{
    std::vector<double> grams, volumes;
    for (const Compared& kit : all.kits) {
        if (has_dot(kit)) {
            grams.push_back(kit.empty_g);
            volumes.push_back(volume_ml(kit.bundle.envelope));
        }
    }
    if (grams.size() != found.size()) {
        return std::to_string(found.size()) + " dots for " + std::to_string(grams.size()) + " kits";
    }
    const auto spread = [](const std::vector<double>& v) {
        const auto [low, high] = std::minmax_element(v.begin(), v.end());
        return std::pair(static_cast<std::size_t>(low - v.begin()), static_cast<std::size_t>(high - v.begin()));
    };
    const auto [left, right] = spread(grams);
    const auto [low, high] = spread(volumes);
    for (std::size_t k = 0; k < found.size(); ++k) {
        const double x = found[left].x + (grams[k] - grams[left]) / std::max(1e-9, grams[right] - grams[left]) *
                                             (found[right].x - found[left].x);
        const double y = found[low].y + (volumes[k] - volumes[low]) / std::max(1e-9, volumes[high] - volumes[low]) *
                                            (found[high].y - found[low].y);
        if (std::hypot(x - found[k].x, y - found[k].y) > 0.1) {
            return "dot " + std::to_string(k) + " is off";
        }
    }
    return found[right].x >= found[left].x && found[high].y <= found[low].y ? "" : "a scale is the wrong way round";
}

/// The frames of all texts, one for each run of letters.
std::vector<svg::Bounds> texts(const svg::Picture& picture)
{
    std::map<int, svg::Bounds> by_group;
    for (const svg::Drawn& path : picture.paths) {
        if (path.letter && !path.lines.empty()) { // a blank has no lines
            const svg::Bounds b = path.bounds();
            by_group[path.group].take({b.left, b.top});
            by_group[path.group].take({b.right, b.bottom});
        }
    }
    std::vector<svg::Bounds> all;
    for (const auto& [group, bounds] : by_group) {
        all.push_back(bounds);
    }
    return all;
}

bool overlap(const svg::Bounds& a, const svg::Bounds& b)
{
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

} // namespace

TEST_CASE("dots lie where their figures say, and no number on a dot or another")
{
    std::mt19937 random(5);
    for (int round = 0; round < test::count(40, 4); ++round) {
        const Comparison all = by_chance(random, 2 + round);
        const svg::Picture picture = svg::read(compare_picture(all).svg());
        const auto found = dots(picture);
        CAPTURE(round);
        CHECK(misplaced(all, found).empty());
        const auto words = texts(picture);
        CHECK(words.size() > found.size());
        for (std::size_t i = 0; i < words.size(); ++i) {
            CHECK(words[i].left > 0);
            CHECK(words[i].right < picture.width);
            CHECK(words[i].bottom < picture.height);
            for (const svg::Point& dot : found) {
                CHECK_FALSE(overlap(words[i], {dot.x - 1.2, dot.y - 1.2, dot.x + 1.2, dot.y + 1.2}));
            }
            for (std::size_t j = 0; j < i; ++j) {
                CHECK_FALSE(overlap(words[i], words[j]));
            }
        }
    }
}

TEST_CASE("a dot that is moved, left out or changed over is seen")
{
    std::mt19937 random(5);
    const Comparison all = by_chance(random, 12);
    const auto found = dots(svg::read(compare_picture(all).svg()));
    REQUIRE(misplaced(all, found).empty());
    auto moved = found;
    moved[3].x += 0.5;
    CHECK_FALSE(misplaced(all, moved).empty());
    auto swapped = found;
    std::swap(swapped[0], swapped[1]);
    CHECK_FALSE(misplaced(all, swapped).empty());
    auto fewer = found;
    fewer.pop_back();
    CHECK_FALSE(misplaced(all, fewer).empty());
    auto upside_down = found;
    for (auto& dot : upside_down) {
        dot.y = 130 - dot.y;
    }
    CHECK_FALSE(misplaced(all, upside_down).empty());
}

TEST_CASE("one kit, and kits without any bundle, are drawn too, and the same bytes each time")
{
    std::mt19937 random(2);
    Comparison one = by_chance(random, 1);
    CHECK(dots(svg::read(compare_picture(one).svg())).size() == 1);
    CHECK(compare_picture(one).svg() == compare_picture(one).svg());
    one.kits[0].bundle.status = Status::not_found;
    CHECK(dots(svg::read(compare_picture(one).svg())).empty());
}
