// SPDX-License-Identifier: GPL-3.0-or-later
// A band over a shut lid and under its vessel. Seen from the side, vessel and lid lie in a rectangle, and of two convex
// outlines the outer one has the longer way round: so the band is long enough if that rectangle is. It may go round the
// vessel's x or its y, whichever is less. Lengths along the vessel's own axes are exact but for the grid.
#include <fmt/format.h>

#include <optional>

#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

/// How far some pieces reach along a unit vector, from end to end.
Rational span(const std::vector<Piece>& pieces, const Vector& unit)
{
    Rational ahead = 0, back = 0;
    for (std::size_t k = 0; k < pieces.size(); ++k) {
        const Rational at = dot(pieces[k].center, unit), far = reach(pieces[k], unit).above;
        ahead = k == 0 || at + far > ahead ? at + far : ahead;
        back = k == 0 || far - at > back ? far - at : back;
    }
    return ahead + back;
}

/// The step that puts an item into its place; none where there is no such step.
std::optional<std::size_t> step_of(const Bundle& bundle, std::size_t item)
{
    for (std::size_t k = 0; k < bundle.steps.size(); ++k) {
        if (bundle.steps[k].item == item) {
            return k;
        }
    }
    return std::nullopt;
}

class Hold {
public:
    Hold(const Scene& scene, const Band& band, Findings& findings)
        : scene_(scene), bundle_(scene.bundle()), band_(band), findings_(findings)
    {
    }

    void check() const
    {
        bool is_there = false;
        for (std::size_t lid = 0; lid < scene_.size(); ++lid) {
            if (bundle_.items[lid].id != band_.over) {
                continue;
            }
            if (is_there) {
                object(fmt::format("holds \"{}\" shut, of which there are several", band_.over));
                return;
            }
            is_there = true;
            check(lid);
        }
        if (!is_there) {
            object(fmt::format("holds \"{}\" shut, which is not there", band_.over));
        }
    }

private:
    void object(const std::string& what) const { findings_.add("girth", fmt::format("\"{}\" {}", band_.id, what)); }

    void check(std::size_t lid) const
    {
        if (!bundle_.items[lid].closes) {
            object(fmt::format("holds {} shut, but that is carried loose", named(bundle_, lid)));
            return;
        }
        const std::size_t vessel = *bundle_.items[lid].closes;
        const auto shut = step_of(bundle_, lid), put = step_of(bundle_, vessel);
        if (shut && put && *shut > *put) {
            object(fmt::format("cannot go under {}, which is in its place before {} is shut", named(bundle_, vessel),
                               named(bundle_, lid)));
        }
        std::vector<Piece> pieces = scene_.solids(vessel);
        pieces.insert(pieces.end(), scene_.solids(lid).begin(), scene_.solids(lid).end());
        const auto& axis = pieces.front().axis;
        const Rational x = span(pieces, axis[0]), y = span(pieces, axis[1]);
        const Rational round = 2 * ((x < y ? x : y) + span(pieces, axis[2]));
        if (round > nanometres(band_.girth)) {
            object(fmt::format("is {} round, and over {} and under {} it is {}", in_mm(band_.girth * 1e6),
                               named(bundle_, lid), named(bundle_, vessel), in_mm(approximate(round))));
        }
    }

    const Scene& scene_;
    const Bundle& bundle_;
    const Band& band_;
    Findings& findings_;
};

} // namespace

void check_hold(const Scene& scene, const Band& band, Findings& findings) { Hold(scene, band, findings).check(); }

} // namespace tuckwright::proof
