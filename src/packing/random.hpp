// SPDX-License-Identifier: GPL-3.0-or-later
/// A small random generator whose numbers are the same everywhere.
#pragma once
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace tuckwright::packing {

/// Source: xoshiro256** and splitmix64, D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
/// ACM Trans. Math. Software 47 (2021).
class Random {
public:
    explicit Random(std::uint64_t seed)
    {
        for (auto& word : state_) {
            seed += 0x9e3779b97f4a7c15ULL;
            std::uint64_t z = seed;
            z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
            z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
            word = z ^ (z >> 31);
        }
    }

    std::uint64_t next()
    {
        const std::uint64_t result = turn(state_[1] * 5, 7) * 9;
        const std::uint64_t shifted = state_[1] << 17;
        state_[2] ^= state_[0];
        state_[3] ^= state_[1];
        state_[1] ^= state_[2];
        state_[0] ^= state_[3];
        state_[2] ^= shifted;
        state_[3] = turn(state_[3], 45);
        return result;
    }

    /// Evenly in [0, 1).
    double unit() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }
    /// Evenly in [low, high); low where the range is empty.
    double between(double low, double high) { return high > low ? low + (high - low) * unit() : low; }
    /// A whole number in [0, n). Requires: n > 0.
    std::size_t below(std::size_t n) { return static_cast<std::size_t>(unit() * static_cast<double>(n)); }
    /// A direction in the plane, evenly round the circle, as cosine and sine.
    std::array<double, 2> direction()
    {
        for (;;) {
            const double x = between(-1, 1), y = between(-1, 1), square = x * x + y * y;
            if (square > 0.01 && square < 1) {
                const double length = std::sqrt(square);
                return {x / length, y / length};
            }
        }
    }
    bool chance(double probability) { return unit() < probability; }

private:
    static std::uint64_t turn(std::uint64_t x, int k) { return (x << k) | (x >> (64 - k)); }
    std::uint64_t state_[4];
};

} // namespace tuckwright::packing
