// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/first_envelope.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "packing/leaning.hpp"
#include "packing/pile.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// Half extents in plan of a body that stands square, by form; the radius of its outline for a round envelope.
struct PlanNeed {
    double least_radius = 0, single_layer_radius = 0;
};

/// Calls visit(body as it is stowed, form) for each way and form in which a body may lie directly in the bundle.
template <class Visit> void each_stance(const Scene& scene, std::size_t body, Visit visit)
{
    for (int way = 0; way < scene.ways(static_cast<int>(body)); ++way) {
        const Body& stowed = scene.stowed(static_cast<int>(body), way);
        const unsigned fits = scene.fits[at(scene.row(static_cast<int>(body), way))][0];
        for (const Form form : stowed.forms) {
            if ((fits & bit(form)) != 0) {
                visit(stowed, form);
            }
        }
    }
}

/// Whether a body fits some vessel, in whatever way it is stowed.
bool nests(const Scene& scene, std::size_t body)
{
    for (int way = 0; way < scene.ways(static_cast<int>(body)); ++way) {
        const auto& fits = scene.fits[at(scene.row(static_cast<int>(body), way))];
        if (std::any_of(fits.begin() + 1, fits.end(), [](unsigned forms) { return forms != 0; })) {
            return true;
        }
    }
    return false;
}

/// Reach in plan of a body as it lies; what leans is tilted as far as the height asks for.
double reach_in_plan(const Body& body, Form form, double height)
{
    const auto rod = form == Form::leaning ? rod_of(body) : std::nullopt;
    if (!rod || 2 * rod->along <= height) {
        return plan_reach(body, form);
    }
    const double tilt = tilt_by_height(*rod, height);
    return plan_reach(body, Place{outermost, form, 0, 0, 0, 1, 0, 0, std::cos(tilt), std::sin(tilt)});
}

PlanNeed plan_need(const KitScene& kit, double height)
{
    PlanNeed need;
    double area = 0;
    for (std::size_t body = 0; body < kit.scene.bodies.size(); ++body) {
        double least = 1e300, most = 0;
        each_stance(kit.scene, body, [&](const Body& stowed, Form form) {
            least = std::min(least, reach_in_plan(stowed, form, height));
            most = std::max(most, reach_in_plan(stowed, form, height));
        });
        if (least > 1e299) {
            continue;
        }
        most = kit.scene.ways(static_cast<int>(body)) > 1 ? least : most; // no need to lie at its widest
        need.least_radius = nests(kit.scene, body) ? need.least_radius : std::max(need.least_radius, least);
        area += most * most;
        need.single_layer_radius = std::max(need.single_layer_radius, most);
    }
    need.single_layer_radius = std::max(need.single_layer_radius, 1.15 * std::sqrt(area));
    return need;
}

/// Radius of a cylinder as high as it is wide that holds the volumes of all bodies.
double cubic_radius(const Scene& scene)
{
    double sum = 0;
    for (const Body& body : scene.bodies) {
        sum += body.volume;
    }
    return std::cbrt(sum / (2 * std::numbers::pi));
}

} // namespace

Envelope first_envelope(const KitScene& kit, const Kit& source, double position, Random& random)
{
    const EnvelopeLimits limits = envelope_limits(source);
    const PlanNeed need = plan_need(kit, limits.height);
    double least = std::max(need.least_radius, 1e-3), most = std::max(least, need.single_layer_radius);
    if (is_large(kit.scene)) { // towers and single layers of many are far too high or wide
        constexpr double narrowest = 0.8, widest = 2.2;
        least = std::max(least, narrowest * cubic_radius(kit.scene));
        most = std::max(least, std::min(most, widest * cubic_radius(kit.scene)));
        position += position < 0.5 ? 0.5 : -0.5; // the first in the middle
    }
    const double radius = least * std::pow(most / least, position);
    Envelope envelope;
    envelope.height = limits.height;
    envelope.round = source.bundle.shape == BundleShape::cylinder;
    if (envelope.round) {
        envelope.radius = std::min(radius, limits.radius);
        return envelope;
    }
    const double ratio = std::exp(random.between(-0.7, 0.7));
    envelope.half_length = std::min(radius * 0.886 * std::sqrt(ratio), limits.half_length);
    envelope.half_width = std::min(radius * 0.886 / std::sqrt(ratio), limits.half_width);
    return envelope;
}

void widen(Envelope& envelope, const KitScene& kit)
{
    for (std::size_t body = 0; !envelope.round && body < kit.scene.bodies.size(); ++body) {
        double least = 1e300, best_x = 0, best_y = 0;
        each_stance(kit.scene, body, [&](const Body& stowed, Form form) {
            double ex = 0, ey = 0;
            for (std::size_t k = 0; k < stowed.pieces.size(); ++k) {
                const Piece p = piece_at(stowed, k, {outermost, form, 0, 0, 0, 1, 0}, 0);
                const bool disc = p.kind == PieceKind::disc;
                ex = std::max(ex, std::abs(p.x) + (disc ? p.radius : p.a * std::abs(p.c) + p.b * std::abs(p.s)));
                ey = std::max(ey, std::abs(p.y) + (disc ? p.radius : p.a * std::abs(p.s) + p.b * std::abs(p.c)));
            }
            for (const bool quarter : {false, true}) {
                const double x = std::max(envelope.half_length, quarter ? ey : ex);
                const double y = std::max(envelope.half_width, quarter ? ex : ey);
                if (x * y < least) {
                    least = x * y, best_x = x, best_y = y;
                }
            }
        });
        if (least < 1e299) {
            envelope.half_length = best_x;
            envelope.half_width = best_y;
        }
    }
}

double natural_height(const KitScene& kit, Random& random)
{
    double least = 0;
    for (std::size_t body = 0; body < kit.scene.bodies.size(); ++body) {
        double lowest = 1e300;
        for (int way = 0; way < kit.scene.ways(static_cast<int>(body)); ++way) {
            const Body& stowed = kit.scene.stowed(static_cast<int>(body), way);
            for (const Form form : stowed.forms) {
                const Reach reach = vertical_reach(stowed, form);
                lowest = std::min(lowest, reach.below + reach.above);
            }
        }
        least = nests(kit.scene, body) ? least : std::max(least, lowest);
    }
    const int chosen = static_cast<int>(random.below(kit.scene.bodies.size()));
    const int ways = kit.scene.ways(chosen);
    const Body& body = kit.scene.stowed(chosen, ways == 1 ? 0 : static_cast<int>(random.below(at(ways))));
    const Reach reach = vertical_reach(body, body.forms[random.below(body.forms.size())]);
    return std::max(least, reach.below + reach.above);
}

} // namespace tuckwright::nesting
