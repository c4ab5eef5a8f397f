// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/moves.hpp"

#include "packing/separation.hpp"

namespace tuckwright::nesting {

using namespace packing;

void evict(Layout& layout, int body, Random& random)
{
    const std::vector<Door> open = doors(layout, body);
    if (!open.empty()) {
        const Door& door = open[random.below(open.size())];
        layout.put(body, sample_place(layout, body, door, random));
    }
}

bool tuck(Layout& layout, int body, Random& random)
{
    constexpr int samples = 80;
    const Weights weights(layout.size());
    const std::vector<Door> open = doors(layout, body);
    for (int k = 0; k < samples && !open.empty(); ++k) {
        const Door& door = open[random.below(open.size())];
        const Place place = sample_place(layout, body, door, random);
        if (layout.cost_at(body, place, weights, 1e-12) <= 0) {
            layout.put(body, place);
            return true;
        }
    }
    return false;
}

void swap(Layout& layout, Random& random)
{
    for (int trial = 0; trial < 20; ++trial) {
        const int i = static_cast<int>(random.below(layout.size())), j = static_cast<int>(random.below(layout.size()));
        const Place a = layout.place(i), b = layout.place(j);
        if (i == j || !layout.may_enter(i, b.cell, a.form) || !layout.may_enter(j, a.cell, b.form)) {
            continue;
        }
        Place to_b = a, to_a = b;
        to_b.cell = b.cell, to_b.x = b.x, to_b.y = b.y, to_b.z = b.z;
        to_a.cell = a.cell, to_a.x = a.x, to_a.y = a.y, to_a.z = a.z;
        layout.put(i, to_b);
        if (layout.may_enter(j, a.cell, b.form)) {
            layout.put(j, to_a);
        }
        return;
    }
}

void stir(Layout& layout, Random& random)
{
    const double share = random.between(0.2, 0.5);
    const int n = static_cast<int>(layout.size());
    for (int body = 0; body < n; ++body) {
        if (random.chance(share)) {
            evict(layout, body, random);
        }
    }
}

void turn_over(Layout& layout)
{
    const std::vector<int> direct = layout.inside(outermost);
    for (const int body : direct) {
        double low = 1e300, high = -1e300;
        for (const Piece& piece : layout.visible(body)) {
            low = std::min(low, piece.z - piece.half_height);
            high = std::max(high, piece.z + piece.half_height);
        }
        Place place = layout.place(body);
        place.z += layout.envelope().height - high - low; // its span is mirrored, not the body
        layout.put(body, place);
    }
}

namespace {

std::size_t body_of(const KitScene& scene, Copy copy)
{
    for (std::size_t body = 0; body < scene.origins.size(); ++body) {
        if (scene.origins[body].self == copy) {
            return body;
        }
    }
    return scene.origins.size();
}

/// The places of one scene's bodies for those of another one that has fewer bodies: outer vessels first.
void carry_over(const Proposal& from, const KitScene& scene, Layout& layout)
{
    std::vector<bool> done(layout.size(), false);
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        layout.hide(body);
    }
    for (std::size_t round = 0; round < layout.size(); ++round) {
        for (std::size_t body = 0; body < layout.size(); ++body) {
            Place place = from.layout.place(static_cast<int>(body_of(*from.scene, scene.origins[body].self)));
            if (place.cell != outermost) {
                const std::size_t vessel = body_of(scene, from.scene->origins[at(place.cell)].self);
                place.cell = vessel < layout.size() ? static_cast<int>(vessel) : outermost; // a shut lid holds nothing
            }
            if (!done[body] && (place.cell == outermost || done[at(place.cell)])) {
                layout.put(static_cast<int>(body), place);
                done[body] = true;
            }
        }
    }
}

} // namespace

std::optional<Proposal> with_a_lid_shut(const Kit& kit, const Proposal& from, Random& random)
{
    const std::vector<Copy> all = lids(kit);
    std::vector<bool> shut;
    std::vector<std::size_t> loose;
    for (std::size_t k = 0; k < all.size(); ++k) {
        shut.push_back(body_of(*from.scene, all[k]) == from.scene->origins.size());
        if (!shut.back()) {
            loose.push_back(k);
        }
    }
    if (loose.empty()) {
        return std::nullopt;
    }
    shut[loose[random.below(loose.size())]] = true;
    auto scene = std::make_shared<const KitScene>(kit_scene(kit, shut));
    Layout layout(scene->scene, from.layout.envelope());
    carry_over(from, *scene, layout);
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        const Place place = layout.place(body);
        if (!layout.may_enter(body, place.cell, place.form)) {
            evict(layout, body, random);
        }
    }
    const double volume = packing::volume(layout.envelope());
    return Proposal{std::move(scene), std::move(layout), volume};
}

} // namespace tuckwright::nesting
