// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/scenes.hpp"

namespace tuckwright::packing {

Scene scene_of(const std::vector<Body>& bodies)
{
    Scene scene;
    scene.bodies = bodies;
    double total = 0;
    for (const Body& one : bodies) {
        total += one.volume;
    }
    scene.size = std::cbrt(total / static_cast<double>(bodies.size()));
    scene.fits.assign(bodies.size(), std::vector<unsigned>(bodies.size() + 1, 0));
    for (std::size_t k = 0; k < bodies.size(); ++k) {
        for (const Form form : bodies[k].forms) {
            scene.fits[k][0] |= bit(form);
        }
    }
    return scene;
}

} // namespace tuckwright::packing
