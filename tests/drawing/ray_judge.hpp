// SPDX-License-Identifier: GPL-3.0-or-later
/// Judges an order of painting by rays: at each dot of a grid, what a ray from the eye meets first must be painted last.
/// Shares nothing with the drawing but the plain shapes and the names of layers.
#pragma once
#include <string>
#include <vector>

#include "drawing/camera.hpp"
#include "drawing/order.hpp"
#include "tuckwright/bundle.hpp"

namespace drawing_test {

struct Judgement {
    int rays_that_met = 0;           ///< at least two layers
    std::vector<std::string> faults; ///< one for each pair of layers that is painted the wrong way round
    int excused = 0; ///< such pairs in a circle of layers that hide one another, for which no order is right
};

Judgement judge(const tuckwright::Bundle& bundle, const tuckwright::drawing::Camera& camera,
                const std::vector<tuckwright::drawing::Layer>& order, int dots);

} // namespace drawing_test
