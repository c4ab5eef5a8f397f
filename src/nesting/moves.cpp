// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/moves.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

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

void rehouse(Layout& layout, int body, Random& random)
{
    constexpr int samples = 40;
    if (const auto place = least_overlapping(layout, body, doors(layout, body), samples, random)) {
        layout.put(body, *place);
    }
}

namespace {

/// A body about as large as another: one of the next few in size.
int one_like(const Scene& scene, int body, Random& random)
{
    std::vector<std::pair<double, int>> others;
    for (int other = 0; other < static_cast<int>(scene.bodies.size()); ++other) {
        if (other != body && scene.bodies[at(other)].volume != scene.bodies[at(body)].volume) {
            const double quotient = scene.bodies[at(other)].volume / scene.bodies[at(body)].volume;
            others.emplace_back(std::abs(std::log(quotient)), other);
        }
    }
    if (others.empty()) {
        return body;
    }
    const std::size_t few = std::min<std::size_t>(others.size(), 4);
    std::partial_sort(others.begin(), others.begin() + static_cast<std::ptrdiff_t>(few), others.end());
    return others[random.below(few)].second;
}

} // namespace

void swap(Layout& layout, Random& random)
{
    for (int trial = 0; trial < 20; ++trial) {
        const int i = static_cast<int>(random.below(layout.size()));
        const int j =
            random.chance(0.6) ? one_like(layout.scene(), i, random) : static_cast<int>(random.below(layout.size()));
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

namespace {

bool is_sleeve(const Body& body) { return body.hollow && body.hollow->open_bottom; }

/// Ways to stow a body as a sleeve that takes another as it lies, in the cell where that one is.
std::vector<int> ways_round(const Layout& layout, int sleeve, int body)
{
    const Scene& scene = layout.scene();
    const Place& inner = layout.place(body);
    const auto& row = scene.fits[at(scene.row(body, inner.way))];
    std::vector<int> found;
    for (int way = 0; way < scene.ways(sleeve); ++way) {
        const bool takes = (row[at(scene.row(sleeve, way) + 1)] & bit(inner.form)) != 0;
        if (takes && is_sleeve(scene.stowed(sleeve, way)) &&
            layout.may_enter(sleeve, inner.cell, Form::standing, way)) {
            found.push_back(way);
        }
    }
    return found;
}

/// Whether some way makes a sleeve of a body that takes another as it lies.
bool could_go_round(const Layout& layout, int sleeve, int body)
{
    const Scene& scene = layout.scene();
    const Place& inner = layout.place(body);
    const auto& row = scene.fits[at(scene.row(body, inner.way))];
    for (int way = 0; way < scene.ways(sleeve); ++way) {
        if ((row[at(scene.row(sleeve, way) + 1)] & bit(inner.form)) != 0 && is_sleeve(scene.stowed(sleeve, way))) {
            return true;
        }
    }
    return false;
}

/// Lets a body into a sleeve beside it, where it is seen from there.
void let_in(Layout& layout, int body, int sleeve)
{
    const Place outer = layout.place(sleeve);
    Place place = layout.place(body);
    place.cell = sleeve;
    place.x -= outer.x;
    place.y -= outer.y;
    place.z -= outer.z + layout.stowed(sleeve).hollow->floor;
    layout.put(body, place); // the sleeve stands unturned
}

} // namespace

bool has_sleeves(const Scene& scene)
{
    return std::any_of(scene.bodies.begin(), scene.bodies.end(), is_sleeve) ||
           std::any_of(scene.others.begin(), scene.others.end(), is_sleeve);
}

void wrap(Layout& layout, Random& random)
{
    for (int trial = 0; trial < 40; ++trial) {
        const int body = static_cast<int>(random.below(layout.size()));
        const int sleeve = static_cast<int>(random.below(layout.size()));
        if (body == sleeve || layout.place(body).cell == sleeve || !could_go_round(layout, sleeve, body)) {
            continue;
        }
        const std::vector<int> held = layout.inside(sleeve);
        for (const int child : held) {
            evict(layout, child, random);
        }
        const std::vector<int> ways = ways_round(layout, sleeve, body);
        if (ways.empty() || !layout.inside(sleeve).empty()) {
            continue;
        }
        const Place inner = layout.place(body);
        const int way = ways[random.below(ways.size())];
        const double rise = vertical_reach(layout.scene().stowed(sleeve, way), Form::standing).below -
                            vertical_reach(layout.stowed(body), inner.form).below;
        layout.put(sleeve, {inner.cell, Form::standing, inner.x, inner.y, inner.z + rise, 1, 0, way});
        const std::vector<int> beside = layout.inside(inner.cell);
        for (const int other : beside) {
            const bool meant = other == body || layout.overlap_of(other, sleeve) > 0;
            if (other != sleeve && meant && layout.may_enter(other, sleeve, layout.place(other).form)) {
                let_in(layout, other, sleeve);
            }
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
