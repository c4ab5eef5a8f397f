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

Scene mixed()
{
    Scene scene = scene_of({cup(80, 60), cup(60, 50), body(Cylinder{10, 100}, {Form::standing, Form::on_end}),
                            body(Box{60, 40, 20}, {Form::standing, Form::on_end, Form::on_side}),
                            body(Box{50, 30, 10}, {Form::standing, Form::on_end, Form::on_side}),
                            body(Cylinder{30, 30}, {Form::standing, Form::on_end})});
    for (std::size_t k = 1; k < scene.bodies.size(); ++k) {
        let_in(scene, k, 0);
    }
    let_in(scene, 5, 1);
    return scene;
}

} // namespace tuckwright::packing
