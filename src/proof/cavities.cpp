// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/apart.hpp"
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

class CavityCheck {
public:
    CavityCheck(const Scene& scene, Findings& findings) : scene_(scene), findings_(findings) {}

    void run(std::size_t item, std::size_t index)
    {
        const Piece& body = scene_.solids(item).front();
        const Piece& cavity = scene_.cavities(item)[index];
        const Opening opens = scene_.bundle().items[item].cavities[index].opens;
        const std::optional<Piece>& neck = scene_.neck({item, index});
        const std::string whose = "a cavity of " + named(scene_.bundle(), item);
        const Room within = room_of(body, 0, false, false);
        const Fit walls = against_walls(cavity, within);
        const Fit bottom = against_bottom(cavity, within), top = against_top(cavity, within);
        if (!walls.inside) {
            object(whose + " stands out " + in_mm(walls.excess_nm) + " through its side wall");
        } else if (!bottom.inside) {
            object(whose + " stands out " + in_mm(bottom.excess_nm) + " through its bottom");
        } else if (!top.inside) {
            object(whose + " stands out " + in_mm(top.excess_nm) + " through its top");
        } else if (opens == Opening::both && cavity.foot != cavity.half[0]) {
            object(whose + " tapers, though it is open at both ends");
        } else if (opens != Opening::closed && cavity.axis[2] != body.axis[2]) {
            object(whose + " is open at the top but not the same way up as its first solid");
        } else if (neck && !narrow_opening(*neck, body, opens, whose)) {
            return;
        } else if (const Rational below = body.half[2] - top_of(neck ? *neck : cavity, body);
                   opens != Opening::closed && below != 0) {
            object(whose + " is open at the top but does not reach the top face of its first solid; it ends " +
                   in_mm(approximate(below)) + " below");
        } else if (opens == Opening::both && height(body, cavity) - cavity.half[2] != -body.half[2]) {
            object(whose + " is open at both ends but does not reach the bottom face of its first solid");
        } else if (opens != Opening::closed) {
            mouth(item, neck ? *neck : cavity, 1, whose);
            if (opens == Opening::both) {
                mouth(item, cavity, -1, whose);
            }
        }
    }

private:
    void object(const std::string& what) { findings_.add("cavity", what); }

    static Rational height(const Piece& body, const Piece& other)
    {
        return dot(minus(other.center, body.center), body.axis[2]);
    }

    static Rational top_of(const Piece& piece, const Piece& body) { return height(body, piece) + piece.half[2]; }

    /// Whether a narrow opening lies in the body, in a cavity that may have one.
    bool narrow_opening(const Piece& neck, const Piece& body, Opening opens, const std::string& whose)
    {
        const Room within = room_of(body, 0, false, false);
        const Fit walls = against_walls(neck, within), top = against_top(neck, within);
        if (opens == Opening::both) {
            object(whose + " is open at both ends, so it has no narrow opening");
        } else if (!walls.inside) {
            object("the narrow opening of " + whose + " stands out " + in_mm(walls.excess_nm) +
                   " through the side wall");
        } else if (!top.inside) {
            object("the narrow opening of " + whose + " stands out " + in_mm(top.excess_nm) + " through the top");
        } else {
            return true;
        }
        return false;
    }

    /// What stands out of a mouth keeps to the cavity's prism, so nothing of the item itself may be there. `side` is 1
    /// for the mouth at the top, -1 for the one at the bottom.
    void mouth(std::size_t item, const Piece& cavity, int side, const std::string& whose)
    {
        const auto& solids = scene_.solids(item);
        const Piece& body = solids.front();
        for (std::size_t k = 1; k < solids.size(); ++k) {
            const Rational beyond =
                side * height(body, solids[k]) + reach(solids[k], body.axis[2]).above - body.half[2];
            if (beyond <= 0) {
                continue;
            }
            const Rational middle = side * (body.half[2] + beyond / 2);
            const Vector on_axis = plus(cavity.center, times(middle - height(body, cavity), body.axis[2]));
            const Piece air =
                piece_from(cavity.round, {cavity.half[0], cavity.half[1], beyond / 2}, on_axis, cavity.axis);
            if (!part(air, solids[k], {}).proved) {
                object(whose + " opens where solid " + std::to_string(k + 1) + " of the same item stands before it");
            }
        }
    }

    const Scene& scene_;
    Findings& findings_;
};

} // namespace

void check_cavities(const Scene& scene, Findings& findings)
{
    CavityCheck check(scene, findings);
    for (std::size_t item = 0; item < scene.size() && !findings.full(); ++item) {
        for (std::size_t index = 0; index < scene.cavities(item).size(); ++index) {
            check.run(item, index);
        }
    }
}

} // namespace tuckwright::proof
