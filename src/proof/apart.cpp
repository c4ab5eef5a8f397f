// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/apart.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace tuckwright::proof {

namespace {

using Triple = std::array<double, 3>;

double rough_dot(const Triple& a, const Triple& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

double rough_reach(const Piece::Rough& piece, bool round, const Triple& n)
{
    const double up = piece.half[2] * std::abs(rough_dot(n, piece.axis[2]));
    const double x = rough_dot(n, piece.axis[0]), y = rough_dot(n, piece.axis[1]);
    return up + (round ? piece.half[0] * std::hypot(x, y) : piece.half[0] * std::abs(x) + piece.half[1] * std::abs(y));
}

/// Tries candidates one after the other and remembers the nearest miss.
class Trial {
public:
    /// `from` is where the first is dragged from, told from its centre: the two count as one piece, which reaches half
    /// that far both ways from half-way.
    Trial(const Piece& first, const Piece& second, std::optional<Vector> direction, const Vector& from = {0, 0, 0})
        : first_(first), second_(second), direction_(std::move(direction)), half_way_(times(Rational(1) / 2, from)),
          between_(minus(minus(second.center, first.center), half_way_))
    {
        for (std::size_t k = 0; k < 3; ++k) {
            rough_half_way_[k] = approximate(half_way_[k]);
            rough_between_[k] = approximate(between_[k]);
        }
    }

    /// A world's axis, with the side on which the second piece lies.
    bool world(std::size_t k)
    {
        Vector n{0, 0, 0};
        n[k] = between_[k] < 0 ? -1 : 1;
        return permitted(n) && settle(between_[k] * n[k] - dragged(n) - first_.extent[k] - second_.extent[k]);
    }

    /// An axis whose sense is free.
    bool either(const Vector& axis) { return oriented(proof::dot(between_, axis) < 0 ? times(-1, axis) : axis); }

    bool oriented(const Vector& n)
    {
        if (!permitted(n) || hopeless(n)) {
            return false;
        }
        return settle(proof::dot(between_, n) - dragged(n) - reach(first_, n).above - reach(second_, n).above,
                      length(n));
    }

    Parting result() const { return {proved_, tried_ ? -best_ : 0, tried_}; }

private:
    static double length(const Vector& n)
    {
        return std::hypot(approximate(n[0]), approximate(n[1]), approximate(n[2]));
    }

    Rational dragged(const Vector& n) const
    {
        const Rational along = proof::dot(half_way_, n);
        return along < 0 ? -along : along;
    }

    bool permitted(const Vector& n) const { return !direction_ || proof::dot(n, *direction_) >= 0; }

    /// Far too deep to be proved: floating point errs by less than a thousandth of a nanometre in these lengths.
    bool hopeless(const Vector& n)
    {
        const double norm = length(n);
        const Triple unit{approximate(n[0]) / norm, approximate(n[1]) / norm, approximate(n[2]) / norm};
        const double gap = rough_dot(rough_between_, unit) - std::abs(rough_dot(rough_half_way_, unit)) -
                           rough_reach(first_.rough, first_.round, unit) -
                           rough_reach(second_.rough, second_.round, unit);
        if (gap < -0.5) {
            tried_ = true;
            best_ = std::max(best_, gap);
            return true;
        }
        return false;
    }

    bool settle(const Rational& gap, double norm = 1)
    {
        tried_ = true;
        best_ = std::max(best_, approximate(gap) / norm);
        proved_ = proved_ || gap >= 0;
        return gap >= 0;
    }

    const Piece& first_;
    const Piece& second_;
    std::optional<Vector> direction_;
    Vector half_way_, between_;
    Triple rough_half_way_{}, rough_between_{};
    bool proved_ = false, tried_ = false;
    double best_ = -std::numeric_limits<double>::infinity();
};

} // namespace

namespace {

Parting tried(Trial trial, const Piece& first, const Piece& second, const std::vector<Vector>& normals)
{
    const auto one_of = [&](const auto& candidates, auto&& attempt) {
        return std::any_of(candidates.begin(), candidates.end(), attempt);
    };
    const auto either = [&](const Vector& axis) { return trial.either(axis); };
    const std::array<std::size_t, 3> world{2, 0, 1}; // most things are stacked
    static_cast<void>(one_of(world, [&](std::size_t k) { return trial.world(k); }) ||
                      one_of(normals, [&](const Vector& n) { return trial.oriented(n); }) ||
                      one_of(first.axis, either) || one_of(second.axis, either));
    return trial.result();
}

} // namespace

Parting part(const Piece& first, const Piece& second, const std::vector<Vector>& normals,
             const std::optional<Vector>& direction)
{
    return tried(Trial(first, second, direction), first, second, normals);
}

Parting part_moving(const Piece& first, const Vector& from, const Piece& second, const std::vector<Vector>& normals)
{
    return tried(Trial(first, second, std::nullopt, from), first, second, normals);
}

} // namespace tuckwright::proof
