// SPDX-License-Identifier: GPL-3.0-or-later
/// One random fault in a sound bundle: where the judge of this folder sees that it is clearly wrong, the check refuses.
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <map>
#include <random>

#include "judge.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;

namespace {

constexpr judge::Real margin = 0.02L; // mm

std::size_t below(Engine& engine, std::size_t count)
{
    return std::uniform_int_distribution<std::size_t>(0, count - 1)(engine);
}

/// A length between -most and most, small ones as likely as large ones, on the grid.
double some_length(Engine& engine, double most)
{
    const double size = most * std::pow(10, -3 * std::uniform_real_distribution<>(0, 1)(engine));
    return snap(below(engine, 2) == 0 ? size : -size);
}

void shift(Vec3& point, Engine& engine)
{
    (below(engine, 3) == 0 ? point.x : below(engine, 2) == 0 ? point.y : point.z) += some_length(engine, 40);
    point = {snap(point.x), snap(point.y), snap(point.z)};
}

PlacedItem& some_item(Bundle& bundle, Engine& engine) { return bundle.items[below(engine, bundle.items.size())]; }

/// Moves or turns all of an item by the same motion, its cavities too.
void move_item(Bundle& bundle, Engine& engine)
{
    auto& item = some_item(bundle, engine);
    Vec3 by;
    shift(by, engine);
    const auto add = [&](Vec3& point) { point = {snap(point.x + by.x), snap(point.y + by.y), snap(point.z + by.z)}; };
    for (auto& solid : item.solids) {
        add(solid.pose.center);
    }
    for (auto& cavity : item.cavities) {
        add(cavity.pose.center);
    }
}

Quaternion some_turn(Engine& engine)
{
    std::uniform_int_distribution<std::int64_t> part(-9, 9);
    return {part(engine), part(engine), part(engine), 10};
}

void turn_item(Bundle& bundle, Engine& engine) { some_item(bundle, engine).solids[0].pose.turn = some_turn(engine); }

void resize(Shape& shape, Engine& engine)
{
    const double factor = std::uniform_real_distribution<>(0.7, 1.3)(engine);
    if (auto* cylinder = std::get_if<Cylinder>(&shape)) {
        double& side = below(engine, 2) == 0 ? cylinder->diameter : cylinder->height;
        side = snap(side * factor);
        return;
    }
    auto& box = std::get<Box>(shape);
    double& side = below(engine, 3) == 0 ? box.length : below(engine, 2) == 0 ? box.width : box.height;
    side = snap(side * factor);
}

void resize_solid(Bundle& bundle, Engine& engine)
{
    auto& solids = some_item(bundle, engine).solids;
    resize(solids[below(engine, solids.size())].shape, engine);
}

void change_cavity(Bundle& bundle, Engine& engine)
{
    auto& cavities = some_item(bundle, engine).cavities;
    if (cavities.empty()) {
        return;
    }
    auto& cavity = cavities[0];
    switch (below(engine, cavity.neck ? 5 : 4)) {
    case 0: resize(cavity.shape, engine); break;
    case 4: resize(*cavity.neck, engine); break;
    case 1: shift(cavity.pose.center, engine); break;
    case 2: cavity.pose.turn = some_turn(engine); break;
    default: cavity.opens = static_cast<Opening>(below(engine, 3));
    }
}

void change_container(Bundle& bundle, Engine& engine)
{
    auto& item = some_item(bundle, engine);
    const std::size_t other = below(engine, bundle.items.size());
    if (item.in && below(engine, 2) == 0) {
        item.in.reset();
    } else if (!bundle.items[other].cavities.empty() && bundle.items[other].in != item.in &&
               &bundle.items[other] != &item) {
        item.in = Lodging{other, 0};
    }
}

void change_envelope(Bundle& bundle, Engine& engine)
{
    resize(bundle.envelope, engine);
    bundle.lower_bound_ml = 0;
}

void change_lid(Bundle& bundle, Engine& engine)
{
    auto& item = some_item(bundle, engine);
    if (item.closes) {
        item.closes.reset(); // then it has no rest
    } else if (const std::size_t vessel = below(engine, bundle.items.size()); &bundle.items[vessel] != &item) {
        item.closes = vessel;
    }
}

void change_clearance(Bundle& bundle, Engine& engine)
{
    bundle.clearance = snap(bundle.clearance + std::uniform_real_distribution<>(0, 3)(engine));
}

void change_rest(Bundle& bundle, Engine& engine)
{
    auto& rests = bundle.certificate.rests;
    auto& rest = rests[below(engine, rests.size())];
    switch (below(engine, 3)) {
    case 0: rests.erase(rests.begin() + (&rest - rests.data())); break;
    case 1: rest.on = rest.on ? std::nullopt : std::optional(below(engine, bundle.items.size())); break;
    default: shift(rest.point, engine);
    }
}

void demand_upright(Bundle& bundle, Engine& engine) { some_item(bundle, engine).upright = true; }

/// Faults that need no judge: they are always wrong.
void break_for_certain(Bundle& bundle, Engine& engine)
{
    auto& item = some_item(bundle, engine);
    auto& step = bundle.steps[below(engine, bundle.steps.size())];
    auto& pose = item.solids[0].pose;
    switch (below(engine, 15)) {
    case 0: bundle.steps.erase(bundle.steps.begin() + (&step - bundle.steps.data())); break;
    case 1: bundle.steps.push_back(Step(step)); break;
    case 2: step.direction = {0, 0, 0}; break;
    case 3: step.item = bundle.items.size(); break;
    case 4: pose.center.x = std::numeric_limits<double>::infinity(); break;
    case 5: pose.turn = {0, 0, 0, 0}; break;
    case 6: item.weight_g = -item.weight_g; break;
    case 7: item.copy = 0; break;
    case 8: item.in = Lodging{bundle.items.size(), 0}; break;
    case 9: bundle.certificate.planes.push_back({0, 0, 1, 0, {0, 0, 0}}); break;
    case 10: bundle.certificate.planes.push_back({0, 0, 1, 9, {0, 0, 1}}); break;
    case 11: bundle.lower_bound_ml = volume_ml(outer_envelope(bundle)) * 1.000001; break;
    case 12: pose.center.z += 2.3e-7; break; // off the grid
    case 13: step.via = Vec3{1000, 0, 0}; break;
    default: bundle.rule.height = height_of(bundle.envelope) - 1e-6;
    }
}

struct Corruption {
    const char* name;
    void (*apply)(Bundle&, Engine&);
    bool certain;
};

const std::vector<Corruption> corruptions{{"move an item", move_item, false},
                                          {"turn an item", turn_item, false},
                                          {"resize a solid", resize_solid, false},
                                          {"change a cavity", change_cavity, false},
                                          {"change the container", change_container, false},
                                          {"change the envelope", change_envelope, false},
                                          {"change a lid", change_lid, false},
                                          {"more clearance", change_clearance, false},
                                          {"change a rest", change_rest, false},
                                          {"demand upright", demand_upright, false},
                                          {"break for certain", break_for_certain, true}};

/// Whether the bundle's indices are sound enough for the judge to walk through it.
bool forest_is_sound(const Bundle& bundle)
{
    for (const auto& item : bundle.items) {
        std::size_t depth = 0;
        for (auto in = item.in; in; in = bundle.items[in->item].in) {
            if (++depth > bundle.items.size()) {
                return false;
            }
        }
    }
    return true;
}

} // namespace

TEST_CASE("the judge has nothing against sound bundles")
{
    for (const auto& sample : handmade::all()) {
        const auto fault = judge::clear_fault(sample.make(), margin);
        INFO(sample.name << ": " << fault.value_or(""));
        CHECK_FALSE(fault.has_value());
    }
}

TEST_CASE("thousands of bundles with one clear fault are refused")
{
    Engine engine(20240611);
    const auto samples = handmade::all();
    std::map<std::string, int> refused;
    int wrong = 0;
    for (int trial = 0; trial < 6000; ++trial) {
        const auto& sample = samples[below(engine, samples.size())];
        const auto& corruption = corruptions[below(engine, corruptions.size())];
        Bundle bundle = sample.make();
        corruption.apply(bundle, engine);
        const bool rings = !corruption.certain && !forest_is_sound(bundle);
        const auto fault =
            corruption.certain || rings ? std::optional<std::string>("certain") : judge::clear_fault(bundle, margin);
        if (!fault) {
            continue;
        }
        ++wrong;
        if (check(bundle).empty()) {
            FAIL_CHECK(sample.name << ", " << corruption.name << " (trial " << trial << "): " << *fault);
        } else {
            ++refused[corruption.name];
        }
    }
    CHECK(wrong >= 2000);
    for (const auto& corruption : corruptions) {
        INFO(corruption.name);
        CHECK(refused[corruption.name] >= 25);
    }
}
