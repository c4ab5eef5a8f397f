// SPDX-License-Identifier: GPL-3.0-or-later
// How far it is round the convex outline of everything, seen from above, without a root of pi: a polygon with edges
// along known directions that encloses the outline. Of two convex outlines the outer one has the longer way round.
//
// Directions come from tangents t of half their angles: u = ((1 - t^2) / (1 + t^2), 2 t / (1 + t^2)) has the length 1
// exactly. With h the outline's reach along u, and a and b the angles to the directions before and after it, the edge
// across u is cut off by its neighbours, and all edges add up to the sum of h (tan(a / 2) + tan(b / 2)). Reaches are
// rounded up, and every factor is positive, so that the sum is never below the way round the outline. A disc, the worst
// case, is overstated by a share of about a^2 / 12: some 2e-5 here.
#include <fmt/format.h>

#include <vector>

#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

constexpr int steps_of_a_quarter = 128; // of t, from 0 to 1

struct Direction {
    Vector unit;
    Rational share; ///< tan(a / 2) + tan(b / 2)
};

/// Tangent of the half of the angle between the k-th direction of a quarter and the next.
Rational half_tangent(int k)
{
    const Rational t(k, steps_of_a_quarter), next(k + 1, steps_of_a_quarter);
    return (next - t) / (1 + t * next);
}

/// The directions from 0 up to half a turn: a quarter from x towards y, then the same from y towards -x.
std::vector<Direction> half_a_turn()
{
    std::vector<Direction> found;
    for (const bool second : {false, true}) {
        for (int k = 0; k < steps_of_a_quarter; ++k) {
            const Rational t(k, steps_of_a_quarter), n = 1 + t * t;
            const Rational c = (1 - t * t) / n, s = 2 * t / n;
            const Rational before = half_tangent(k == 0 ? steps_of_a_quarter - 1 : k - 1);
            found.push_back({second ? Vector{Rational(0) - s, c, 0} : Vector{c, s, 0}, before + half_tangent(k)});
        }
    }
    return found;
}

} // namespace

Rational girth_above(const std::vector<Piece>& pieces)
{
    Rational sum = 0;
    for (const Direction& direction : half_a_turn()) {
        bool first = true;
        Rational ahead = 0, back = 0; // pieces reach equally far both ways from their centres
        for (const Piece& piece : pieces) {
            const Rational at = dot(piece.center, direction.unit), far = reach(piece, direction.unit).above;
            ahead = first || at + far > ahead ? at + far : ahead;
            back = first || far - at > back ? far - at : back;
            first = false;
        }
        sum += direction.share * (ahead + back);
    }
    return sum;
}

void check_girth(const Scene& scene, Findings& findings)
{
    const Bundle& bundle = scene.bundle();
    bool goes_round_all = bundle.bag.has_value();
    for (const Band& band : bundle.bands) {
        if (band.over.empty()) {
            goes_round_all = true;
        } else {
            check_hold(scene, band, findings);
        }
    }
    if (!goes_round_all) {
        return;
    }
    std::vector<Piece> pieces;
    for (std::size_t item = 0; item < scene.size(); ++item) {
        pieces.insert(pieces.end(), scene.solids(item).begin(), scene.solids(item).end());
    }
    const Rational girth = girth_above(pieces);
    const auto keep = [&](const std::string& id, double inside) {
        if (girth > nanometres(inside)) {
            findings.add("girth", fmt::format("\"{}\" is {} round, and what it goes round may be up to {}", id,
                                              in_mm(inside * 1e6), in_mm(approximate(girth))));
        }
    };
    for (const Band& band : bundle.bands) {
        if (band.over.empty()) {
            keep(band.id, band.girth);
        }
    }
    if (!bundle.bag) {
        return;
    }
    keep(bundle.bag->id, bundle.bag->girth);
    const double height = std::visit([](const auto& shape) { return shape.height; }, bundle.envelope);
    if (nanometres(height) > nanometres(bundle.bag->length)) {
        findings.add("girth", fmt::format("\"{}\" closes over a bundle up to {} mm high, and this one is {} mm",
                                          bundle.bag->id, bundle.bag->length, height));
    }
}

} // namespace tuckwright::proof
