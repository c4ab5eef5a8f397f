// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/random_bundles.hpp"

#include <catch2/catch.hpp>

#include <cmath>

#include "solve/certificate.hpp"
#include "solve/rests.hpp"
#include "support/handmade_bundles_parts.hpp"
#include "support/random_solids.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/stacking.hpp"

namespace room_test {

using namespace tuckwright;
using test::Dice;

namespace {

/// A room in plan to throw things into: round, or a square as wide.
struct Place {
    Vec3 floor; ///< its middle
    double half = 0;
    bool round = true;
    std::optional<Lodging> in;
};

double some(Dice& dice, double low, double high) { return std::round(dice.between(low, high)); }

class Thrower {
public:
    explicit Thrower(std::uint64_t seed) : dice_(seed) {}

    Bundle make()
    {
        const bool round = dice_.below(2) == 0;
        const double wide = some(dice_, 90, 130), height = some(dice_, 60, 110);
        const Shape envelope = round ? Shape(Cylinder{2 * wide, height}) : Shape(Box{2 * wide, 2 * wide, height});
        bundle_ = handmade::bundle("Thrown together", envelope, {});
        const Place ground{round ? Vec3{} : Vec3{wide, wide, 0}, wide, round, std::nullopt};
        const double tall = some(dice_, 40, height - 15);
        if (const auto pot = vessel(ground, some(dice_, 35, 60), tall)) {
            for (int k = dice_.below(4); k >= 0; --k) {
                thing(*pot, tall - 8);
            }
            if (const auto cup = vessel(*pot, some(dice_, 15, 25), some(dice_, 15, tall - 8))) {
                thing(*cup, 12);
            }
        }
        for (int k = 1 + dice_.below(4); k > 0; --k) {
            thing(ground, height);
        }
        finish();
        return bundle_;
    }

private:
    /// A vessel that stands there, if there is room for it. Its own lid may be shut.
    std::optional<Place> vessel(const Place& place, double half, double height)
    {
        const bool round = dice_.below(2) == 0;
        const auto outer = [&](double side, double high) {
            return round ? Shape(Cylinder{2 * side, high}) : Shape(Box{2 * side, 2 * side, high});
        };
        const bool shut = dice_.below(3) == 0;
        PlacedItem item = handmade::item(next_id("vessel"), {outer(half, height), {{0, 0, height / 2}, {}}});
        const double inner = height - (shut ? 2 : 1);
        item.cavities.push_back({outer(half - 1, inner), {{0, 0, 1 + inner / 2}, {}},
                                 shut ? Opening::closed : Opening::top});
        if (!thrown(item, place)) {
            return std::nullopt;
        }
        const PlacedCavity& cavity = bundle_.items.back().cavities.front();
        return Place{cavity.pose.center - Vec3{0, 0, inner / 2}, half - 1.5, round,
                     Lodging{bundle_.items.size() - 1, 0}};
    }

    /// A cylinder or a box, no higher than that; on it perhaps another.
    void thing(const Place& place, double most)
    {
        const double height = some(dice_, 6, std::max(7.0, 0.8 * most)), half = some(dice_, 4, 28);
        const bool round = dice_.below(2) == 0;
        const Shape shape = round ? Shape(Cylinder{2 * half, height})
                                  : Shape(Box{2 * half, some(dice_, 6, 40), height});
        PlacedItem item = handmade::item(next_id("thing"), {shape, {{0, 0, height / 2}, {}}});
        if (!round && dice_.below(2) == 0) {
            item.solids.front().pose.turn = {40, 0, 0, 1 + dice_.below(39)};
        }
        const double left = most - height;
        if (thrown(item, place) && left > 12 && dice_.below(2) == 0) {
            const Vec3 below = bundle_.items.back().solids.front().pose.center;
            const double high = some(dice_, 5, left - 5);
            PlacedItem upper =
                handmade::item(next_id("upper"), {Cylinder{half, high}, {{0, 0, height / 2 + high / 2}, {}}});
            upper.in = place.in;
            upper.solids.front().pose.center = below + Vec3{0, 0, height / 2 + high / 2};
            if (is_free(upper, place)) {
                bundle_.items.push_back(upper);
            }
        }
    }

    /// Tries some places on the floor.
    bool thrown(PlacedItem item, const Place& place)
    {
        item.in = place.in;
        for (int k = 0; k < 12; ++k) {
            const Vec3 at = place.floor + Vec3{some(dice_, -place.half, place.half), some(dice_, -place.half, place.half), 0};
            PlacedItem there = item;
            there.solids.front().pose.center = at + item.solids.front().pose.center;
            for (PlacedCavity& cavity : there.cavities) {
                cavity.pose.center = at + cavity.pose.center;
            }
            if (is_free(there, place)) {
                bundle_.items.push_back(there);
                return true;
            }
        }
        return false;
    }

    bool is_free(const PlacedItem& item, const Place& place) const
    {
        constexpr double air = 0.01;
        const Hull hull = hull_of(item.solids.front());
        for (int k = 0; k < 72; ++k) {
            const Vec3 n{std::cos(k * 0.08726646259971647), std::sin(k * 0.08726646259971647), 0};
            const double wall = place.round ? place.half : place.half * std::max(std::abs(n.x), std::abs(n.y));
            if ((place.round || k % 18 == 0) && support(hull, n) - dot(n, place.floor) > wall - 0.1) {
                return false;
            }
        }
        for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
            bool holds = false;
            for (auto at = item.in; at; at = bundle_.items[at->item].in) {
                holds = holds || at->item == other;
            }
            const auto& solid = bundle_.items[other].solids.front();
            const Separation apart = separation(hull, hull_of(solid));
            if (!holds && apart.distance < (std::abs(apart.normal.z) > 0.999 ? -1e-7 : air)) {
                return false;
            }
        }
        return extent(hull).high.z <= height_of(bundle_.envelope);
    }

    void finish()
    {
        for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
            bundle_.items[item].form = posture(bundle_, item);
        }
        bundle_.certificate.rests = rests(bundle_);
        bundle_.steps = stacking_order(bundle_).steps;
        certify(bundle_);
        const auto objections = check(bundle_);
        INFO((objections.empty() ? "" : objections.front().rule + ": " + objections.front().what));
        REQUIRE(objections.empty());
    }

    std::string next_id(const std::string& word) { return word + "-" + std::to_string(++count_); }

    Dice dice_;
    Bundle bundle_;
    int count_ = 0;
};

} // namespace

Bundle random_bundle(std::uint64_t seed) { return Thrower(seed).make(); }

} // namespace room_test
