// SPDX-License-Identifier: GPL-3.0-or-later
/// Small scenes for the tests of this room.
#pragma once
#include <cmath>
#include <utility>
#include <vector>

#include "packing/layout.hpp"

namespace tuckwright::packing {

inline Body body(const Shape& shape, std::vector<Form> forms = {Form::standing})
{
    Body made;
    made.pieces = {{shape, 0}};
    made.forms = std::move(forms);
    made.plan_is_round = std::holds_alternative<Cylinder>(shape);
    made.volume = volume_ml(shape) * 1000;
    return made;
}

/// A cup, 1 mm thick at wall and floor, open at the top.
inline Body cup(double diameter, double height)
{
    Body made = body(Cylinder{diameter, height});
    made.hollow = Hollow{Cylinder{diameter - 2, height - 1}, 1 - height / 2, true, false, 0};
    return made;
}

/// All bodies may lie in the bundle in all of their forms, and in no vessel.
Scene scene_of(const std::vector<Body>& bodies);

/// Lets a body into a vessel, in the forms that it may take in the bundle.
inline void let_in(Scene& scene, std::size_t body, std::size_t vessel)
{
    scene.fits[body][vessel + 1] = scene.fits[body][0];
}

/// Two cups, rods and blocks: all may lie in the larger cup, the short rod in the smaller one too.
Scene mixed();

inline Envelope round_envelope(double radius, double height) { return {true, radius, 0, 0, height}; }
inline Envelope box_envelope(double length, double width, double height)
{
    return {false, 0, length / 2, width / 2, height};
}

inline bool same(const Layout& a, const Layout& b)
{
    for (int k = 0; k < static_cast<int>(a.size()); ++k) {
        const Place &p = a.place(k), &q = b.place(k);
        if (p.cell != q.cell || p.form != q.form || p.x != q.x || p.y != q.y || p.z != q.z || p.c != q.c ||
            p.s != q.s) {
            return false;
        }
    }
    const Envelope &e = a.envelope(), &f = b.envelope();
    return e.round == f.round && e.radius == f.radius && e.half_length == f.half_length &&
           e.half_width == f.half_width && e.height == f.height;
}

} // namespace tuckwright::packing
