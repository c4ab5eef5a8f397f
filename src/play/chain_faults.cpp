// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The chain is walked from wall to wall by its own figures. Where a thing is said to lie between two levels, it has
// to lie there, by its solids alone; and from each thing to the next there has to be a contact, however it was found.
#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "play/group.hpp"
#include "tuckwright/chains.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

using namespace play;

constexpr double exact = 1e-6; ///< mm: a sum
constexpr double near = 5e-3;  ///< mm: levels, with the air that things keep

class Walker {
public:
    Walker(const Bundle& bundle, const Chain& chain) : bundle_(bundle), chain_(chain), holders_(holders(bundle)) {}

    std::vector<std::string> faults()
    {
        check_sum();
        if (faults_.empty()) {
            check_levels();
            check_neighbours();
        }
        return std::move(faults_);
    }

private:
    double wall() const { return bundle_.bag ? bundle_.bag->thickness : 0; }

    double dimension() const
    {
        const Shape outer = outer_envelope(bundle_);
        if (chain_.dimension == Dimension::height) {
            return height_of(outer);
        }
        if (const auto* round = std::get_if<Cylinder>(&outer)) {
            return round->diameter;
        }
        const auto& box = std::get<Box>(outer);
        return chain_.dimension == Dimension::length ? box.length : box.width;
    }

    /// The level of the first wall, outside the bag.
    double start() const
    {
        const bool across = chain_.dimension == Dimension::diameter;
        return across ? -dimension() / 2 : -wall();
    }

    void check_sum()
    {
        double sum = 0;
        for (const Stretch& stretch : chain_.stretches) {
            sum += stretch.mm;
            if (stretch.item && *stretch.item >= bundle_.items.size()) {
                faults_.push_back("a stretch of no item of the bundle");
            }
        }
        if (!(std::abs(sum - dimension()) <= exact) || !(std::abs(chain_.mm - dimension()) <= exact)) {
            faults_.push_back(
                fmt::format("the stretches add up to {:.6f} mm and it is told as {:.6f} mm, but the {} is "
                            "{:.6f} mm",
                            sum, chain_.mm, to_string(chain_.dimension), dimension()));
        }
        if (!(std::abs(norm(chain_.along) - 1) <= 1e-9)) {
            faults_.push_back("it goes along no unit vector");
        }
    }

    std::array<double, 2> levels_of(std::size_t item) const
    {
        std::array<double, 2> levels{1e300, -1e300};
        for (const Solid& solid : bundle_.items[item].solids) {
            const Hull hull = hull_of(solid);
            levels[0] = std::min(levels[0], -support(hull, -1.0 * chain_.along));
            levels[1] = std::max(levels[1], support(hull, chain_.along));
        }
        return levels;
    }

    /// The levels between which a thing may be told to lie: its own, for a vessel's lid with what hangs into it.
    std::array<double, 2> room_of(const Stretch& stretch) const
    {
        std::array<double, 2> levels = levels_of(*stretch.item);
        const auto widen = [&](std::size_t other) {
            const auto more = levels_of(other);
            levels = {std::min(levels[0], more[0]), std::max(levels[1], more[1])};
        };
        const auto& closes = bundle_.items[*stretch.item].closes;
        if (closes && stretch.part == StretchPart::lid) {
            widen(*closes);
        }
        for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
            if (bundle_.items[other].closes == *stretch.item) {
                widen(other);
            }
        }
        return levels;
    }

    void check_levels()
    {
        double level = start();
        for (const Stretch& stretch : chain_.stretches) {
            const double next = level + stretch.mm;
            if (stretch.item) {
                const auto room = room_of(stretch);
                if (std::min(level, next) < room[0] - near || std::max(level, next) > room[1] + near) {
                    faults_.push_back(
                        fmt::format("{} is said to count from {:.4f} to {:.4f} mm, but lies from {:.4f} to "
                                    "{:.4f} mm",
                                    label(bundle_, *stretch.item), level, next, room[0], room[1]));
                }
            }
            level = next;
        }
    }

    /// Whether one of the two lies in the other, however deep, or shuts it: then they touch by a floor, a top or a wall.
    bool hang_together(std::size_t a, std::size_t b) const
    {
        const auto& lid_of_a = bundle_.items[a].closes;
        const auto& lid_of_b = bundle_.items[b].closes;
        return hangs_on(holders_, a, lid_of_b.value_or(b)) || hangs_on(holders_, b, lid_of_a.value_or(a)) ||
               lid_of_a == b || lid_of_b == a;
    }

    double distance(std::size_t a, std::size_t b) const
    {
        double least = 1e300;
        for (const std::size_t one : with_lid(a)) {
            for (const std::size_t other : with_lid(b)) {
                for (const Solid& p : bundle_.items[one].solids) {
                    for (const Solid& q : bundle_.items[other].solids) {
                        least = std::min(least, separation(hull_of(p), hull_of(q)).distance);
                    }
                }
            }
        }
        return least;
    }

    std::vector<std::size_t> with_lid(std::size_t item) const
    {
        std::vector<std::size_t> both{item};
        for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
            if (bundle_.items[other].closes == item) {
                both.push_back(other);
            }
        }
        return both;
    }

    void check_neighbours()
    {
        double level = start(), air = 0;
        std::optional<std::size_t> last;
        bool any = false;
        for (const Stretch& stretch : chain_.stretches) {
            if (!stretch.item) {
                air += stretch.part == StretchPart::air ? std::abs(stretch.mm) : 0;
                level += stretch.mm;
                continue;
            }
            if (!any && air > near && chain_.straight) {
                faults_.push_back(
                    fmt::format("{} is {:.4f} mm from the first wall", label(bundle_, *stretch.item), air));
            }
            if (last && *last != *stretch.item && !hang_together(*last, *stretch.item)) {
                const double apart = distance(*last, *stretch.item);
                if (apart > air * (chain_.straight ? 1 : 20) + near) {
                    faults_.push_back(fmt::format("{} and {} are {:.4f} mm apart, but {:.4f} mm are told between them",
                                                  label(bundle_, *last), label(bundle_, *stretch.item), apart, air));
                }
            }
            any = true;
            last = stretch.item;
            air = 0;
            level += stretch.mm;
        }
        if (!any) {
            faults_.push_back("nothing lies between the walls");
        }
    }

    const Bundle& bundle_;
    const Chain& chain_;
    std::vector<std::optional<std::size_t>> holders_;
    std::vector<std::string> faults_;
};

} // namespace

std::vector<std::string> chain_faults(const Bundle& bundle, const Chain& chain)
{
    return Walker(bundle, chain).faults();
}

} // namespace tuckwright
