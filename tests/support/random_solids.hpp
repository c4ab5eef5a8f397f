// SPDX-License-Identifier: GPL-3.0-or-later
/// Random solids for tests, the same on every machine.
#pragma once
#include <cstdint>

#include "tuckwright/geometry.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::test
{

/// splitmix64 (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators", OOPSLA): spelled out here,
/// since the standard library's distributions differ from one library to the next.
class Dice
{
public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}
    std::uint64_t next()
    {
        std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
        z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
        return z ^ (z >> 31U);
    }
    double between(double low, double high)
    {
        return low + (high - low) * static_cast<double>(next() >> 11U) / 9007199254740992.0;
    }
    int below(int n) { return static_cast<int>(next() % static_cast<std::uint64_t>(n)); }
    Vec3 direction()
    {
        for (;;) {
            const Vec3 d{between(-1, 1), between(-1, 1), between(-1, 1)};
            const double length = norm(d);
            if (length > 0.1 && length <= 1) {
                return (1 / length) * d;
            }
        }
    }

private:
    std::uint64_t state_;
};

inline Quaternion random_turn(Dice& dice)
{
    const auto part = [&] { return static_cast<std::int64_t>(dice.below(2001)) - 1000; };
    Quaternion turn{part(), part(), part(), part()};
    if (turn == Quaternion{0, 0, 0, 0}) {
        turn.w = 1;
    }
    return turn;
}

/// One of the turns that carry axes to axes: as it stands, or lying in several ways.
inline Quaternion axis_turn(Dice& dice)
{
    constexpr Quaternion turns[] = {{1, 0, 0, 0}, {1, 1, 0, 0}, {1, 0, 1, 0}, {1, 1, 1, 1}, {0, 1, 0, 0}};
    return turns[dice.below(5)];
}

/// A cylinder or box up to 120 mm wide and 200 mm high, with its centre within `spread` mm of the origin on each axis.
inline Solid random_solid(Dice& dice, double spread, bool along_axes)
{
    Solid solid;
    const auto size = [&](double most) { return snap(dice.between(5, most)); };
    if (dice.below(2) == 0) {
        const double diameter = size(120);
        solid.shape = Cylinder{diameter, size(200)};
    } else {
        const double length = size(120), width = size(120);
        solid.shape = Box{length, width, size(200)};
    }
    const auto place = [&] { return snap(dice.between(-spread, spread)); };
    const double x = place(), y = place();
    solid.pose.center = {x, y, place()};
    solid.pose.turn = along_axes ? axis_turn(dice) : random_turn(dice);
    return solid;
}

} // namespace tuckwright::test
