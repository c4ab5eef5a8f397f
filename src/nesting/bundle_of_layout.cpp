// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/bundle_of_layout.hpp"

#include <algorithm>
#include <cmath>

#include "packing/leaning.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// Denominator of half-angle tangents: turns are rounded to about 1e-5 rad, and three in one another stay below 2^53.
constexpr double turn_steps = 131072;

/// What to do to a thing that is pressed into a vessel.
constexpr const char* press_together = "press it together";

/// mm: rounding may move the corner of what leans by so much.
constexpr double off_grid = 2e-6;

Quaternion turn_of(const Place& place)
{
    // tan(angle / 2) = s / (1 + c), written so that neither side vanishes.
    if (place.c >= 0) {
        return {static_cast<std::int64_t>(turn_steps), 0, 0, std::llround(turn_steps * place.s / (1 + place.c))};
    }
    const double inverse = place.s == 0 ? 0 : (1 + place.c) / place.s;
    return {std::llround(turn_steps * inverse), 0, 0, static_cast<std::int64_t>(turn_steps)};
}

Quaternion tip_of(Form form)
{
    switch (form) {
    case Form::standing: return {1, 0, 0, 0};
    case Form::on_end: return {1, 0, 1, 0};
    case Form::on_side: return {1, 1, 0, 0};
    case Form::upside_down: return {0, 1, 0, 0};
    case Form::on_other_end: return {1, 0, -1, 0};
    case Form::on_other_side: return {1, -1, 0, 0};
    case Form::leaning: break; // see own_turn()
    }
    return {};
}

/// Whole numbers for half of an angle: tan(angle / 2) = s / (1 + c) = part / turn_steps. Requires: c not negative.
std::int64_t half_angle_part(double c, double s) { return std::llround(turn_steps * s / (1 + c)); }

/// How a body is turned in the frame of its cell.
Quaternion own_turn(const Body& body, const Place& place)
{
    if (place.form != Form::leaning) {
        return compose(turn_of(place), tip_of(place.form));
    }
    const Rod rod = rod_of(body).value();
    Quaternion base = tip_of(rod.base);
    if (rod.quarter) {
        base = compose({1, 0, 0, 1}, base);
    }
    const Quaternion tilt{static_cast<std::int64_t>(turn_steps), 0, half_angle_part(place.tilt_c, place.tilt_s), 0};
    return compose(turn_of(place), compose(tilt, base));
}

Vec3 turned(const Matrix3& m, Vec3 v)
{
    return {m[0][0] * v.x + m[0][1] * v.y + m[0][2] * v.z, m[1][0] * v.x + m[1][1] * v.y + m[1][2] * v.z,
            m[2][0] * v.x + m[2][1] * v.y + m[2][2] * v.z};
}

Vec3 snapped(Vec3 v) { return {snap(v.x), snap(v.y), snap(v.z)}; }

/// Where bodies lie in the world before the shift to the bundle's corner.
struct World {
    Vec3 center;
    Quaternion turn;
};

World world_of(const Layout& layout, int body)
{
    const Place& place = layout.place(body);
    const Quaternion own = own_turn(layout.stowed(body), place);
    const Vec3 local{place.x, place.y, place.z};
    if (place.cell == outermost) {
        return {local, compose(own, {})};
    }
    const World vessel = world_of(layout, place.cell);
    const double floor = layout.stowed(place.cell).hollow->floor;
    return {vessel.center + turned(rotation_matrix(vessel.turn), local + Vec3{0, 0, floor}),
            compose(vessel.turn, own)};
}

class Builder {
public:
    Builder(const Kit& kit, const KitScene& scene, const Layout& layout) : kit_(kit), scene_(scene), layout_(layout)
    {
        for (std::size_t body = 0; body < scene.origins.size(); ++body) {
            worlds_.push_back(world_of(layout, static_cast<int>(body)));
        }
    }

    Bundle build()
    {
        bundle_.kit = kit_.name;
        bundle_.clearance = kit_.clearance;
        bundle_.rule = kit_.bundle;
        bundle_.rules = kit_.rules;
        bundle_.waived = kit_.waived;
        bundle_.bag = kit_.bag;
        bundle_.bands = kit_.bands;
        index_items();
        find_corners();
        if (!layout_.envelope().round && is_better_turned()) {
            turn_a_quarter();
            find_corners();
        }
        shift_ = layout_.envelope().round ? Vec3{0, 0, -low_.z} : -1.0 * low_;
        for (std::size_t body = 0; body < worlds_.size(); ++body) {
            add_body(body);
        }
        name_postures();
        find_envelope();
        return std::move(bundle_);
    }

private:
    /// Every copy has its place in the kit's order, whatever the order of the bodies.
    void index_items()
    {
        first_.assign(kit_.items.size(), 0);
        std::size_t next = 0;
        for (std::size_t item = 0; item < kit_.items.size(); ++item) {
            first_[item] = next;
            next += static_cast<std::size_t>(kit_.items[item].count);
        }
        bundle_.items.resize(next);
    }

    std::size_t index(Copy copy) const { return first_[copy.item] + static_cast<std::size_t>(copy.copy - 1); }

    void find_corners()
    {
        low_ = {1e300, 1e300, 1e300};
        high_ = -1.0 * low_;
        for (std::size_t body = 0; body < worlds_.size(); ++body) {
            for (const BodyPiece& piece : layout_.stowed(static_cast<int>(body)).pieces) {
                Extent e = extent(hull_of(solid(body, piece, {})));
                if (layout_.place(static_cast<int>(body)).form == Form::leaning) { // its corners are not on the grid
                    e = {e.low - Vec3{off_grid, off_grid, off_grid}, e.high + Vec3{off_grid, off_grid, off_grid}};
                }
                low_ = {std::min(low_.x, e.low.x), std::min(low_.y, e.low.y), std::min(low_.z, e.low.z)};
                high_ = {std::max(high_.x, e.high.x), std::max(high_.y, e.high.y), std::max(high_.z, e.high.z)};
            }
        }
    }

    /// A box is longer than wide, unless the kit's limits ask for the contrary.
    bool is_better_turned() const
    {
        const double length = snap_up(high_.y - low_.y), width = snap_up(high_.x - low_.x); // once turned
        const double walls = kit_.bag ? 2 * kit_.bag->thickness : 0;
        const auto within = [&](double size, const std::optional<double>& limit) {
            return !limit || size + walls <= *limit;
        };
        return length > width && within(length, kit_.bundle.length) && within(width, kit_.bundle.width);
    }

    /// Exact: x, y become y, -x, and turns stay whole numbers.
    void turn_a_quarter()
    {
        for (World& world : worlds_) {
            world = {{world.center.y, -world.center.x, world.center.z}, compose({1, 0, 0, -1}, world.turn)};
        }
    }

    Solid solid(std::size_t body, const BodyPiece& piece, Vec3 shift) const
    {
        const World& world = worlds_[body];
        const Vec3 along = turned(rotation_matrix(world.turn), {piece.x, piece.y, piece.offset});
        const Quaternion turn =
            piece.turned == Form::standing ? world.turn : compose(world.turn, tip_of(piece.turned));
        return {piece.shape, {snapped(world.center + along + shift), turn}};
    }

    PlacedItem plain(Copy copy) const
    {
        const Item& item = kit_.items[copy.item];
        PlacedItem placed;
        placed.id = item.id;
        placed.copy = copy.copy;
        placed.name = item.name;
        placed.weight_g = item.weight_g;
        placed.contents = item.contents ? item.contents->what : "";
        placed.contents_g = item.contents ? item.contents->weight_g : 0;
        placed.full = item.is_full();
        placed.upright = item.upright;
        placed.kinds = item.kinds;
        placed.nothing_on_top = item.nothing_on_top;
        placed.bears_g = item.bears_g;
        placed.reach = item.reach;
        return placed;
    }

    /// In which form it is carried, or what it is pressed into.
    void tell_stowage(const Item& item, int way, PlacedItem& placed) const
    {
        if (way > 0 || item.pouch) { // a pouch is by itself as in its first form
            const Stowage& stowage = item.forms[at(std::max(way, 1) - 1)];
            placed.stowed = stowage.name;
            placed.how = stowage.how;
        }
        if (item.press) {
            placed.pressed = item.press->relaxed;
            placed.stowed = "pressed into the " + kit_.items[item.press->item].id;
            placed.how = press_together;
        }
    }

    void add_body(std::size_t body)
    {
        const Origin& origin = scene_.origins[body];
        const Body& source = layout_.stowed(static_cast<int>(body));
        const Place& place = layout_.place(static_cast<int>(body));
        PlacedItem placed = plain(origin.self);
        const Item item = in_form(kit_.items[origin.self.item], at(place.way));
        tell_stowage(kit_.items[origin.self.item], place.way, placed);
        if (place.cell != outermost) {
            placed.in = Lodging{index(scene_.origins[static_cast<std::size_t>(place.cell)].self), 0};
        }
        const std::size_t plate = 1 + item.parts.size(); // then comes the skirt
        for (std::size_t k = 0; k < source.pieces.size(); ++k) {
            if (k != plate) {
                placed.solids.push_back(solid(body, source.pieces[k], shift_));
            }
        }
        if (item.press) { // the search had it narrower, so that it fits a cavity that has lost its clearance
            placed.solids.front().shape = item.outside;
        }
        add_cavity(body, item, placed);
        if (origin.lid) {
            PlacedItem lid = plain(*origin.lid);
            lid.in = placed.in;
            lid.closes = index(origin.self);
            lid.solids.push_back(solid(body, source.pieces[plate], shift_));
            bundle_.items[index(*origin.lid)] = lid;
        }
        bundle_.items[index(origin.self)] = placed;
    }

    void name_postures()
    {
        for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
            bundle_.items[item].form = bundle_.items[item].closes ? "shut" : posture(bundle_, item);
        }
    }

    void add_cavity(std::size_t body, const Item& item, PlacedItem& placed) const
    {
        const Origin& origin = scene_.origins[body];
        if (!item.inside) {
            return;
        }
        PlacedCavity cavity{item.inside->shape, {}, item.inside->opens, item.inside->neck};
        if (origin.lid) {
            cavity.opens = Opening::closed;
            const double less = lid_takes(kit_.items[origin.lid->item], item);
            cavity.shape = lower_part(cavity.shape, snap_down(height_of(cavity.shape) - less));
        }
        const double offset = item.inside->floor + height_of(cavity.shape) / 2 - height_of(item.outside) / 2;
        const Solid where = solid(body, {item.outside, offset}, shift_);
        cavity.pose = where.pose;
        placed.cavities.push_back(cavity);
    }

    void find_envelope()
    {
        Vec3 high{0, 0, 0};
        double radius = 0;
        for (const PlacedItem& item : bundle_.items) {
            for (const Solid& part : item.solids) {
                const Hull hull = hull_of(part);
                const Extent e = extent(hull);
                high = {std::max(high.x, e.high.x), std::max(high.y, e.high.y), std::max(high.z, e.high.z)};
                radius = std::max(radius, plan_radius(part));
            }
        }
        if (layout_.envelope().round) {
            bundle_.envelope = Cylinder{snap_up(2 * radius), snap_up(high.z)};
        } else {
            bundle_.envelope = Box{snap_up(high.x), snap_up(high.y), snap_up(high.z)};
        }
    }

    /// Largest distance of a solid from the bundle's axis.
    static double plan_radius(const Solid& part)
    {
        const Matrix3 m = rotation_matrix(part.pose.turn);
        const Vec3 c = part.pose.center;
        std::array<double, 3> half{};
        bool upright_disc = false;
        if (const auto* cylinder = std::get_if<Cylinder>(&part.shape)) {
            half = {cylinder->diameter / 2, cylinder->diameter / 2, cylinder->height / 2};
            upright_disc = std::abs(m[2][2]) > 1 - 1e-12;
        } else {
            const auto& box = std::get<Box>(part.shape);
            half = {box.length / 2, box.width / 2, box.height / 2};
        }
        if (upright_disc) {
            return std::hypot(c.x, c.y) + half[0];
        }
        double most = 0;
        for (int corner = 0; corner < 8; ++corner) {
            double x = c.x, y = c.y;
            for (std::size_t k = 0; k < 3; ++k) {
                const double sign = (corner >> k & 1) != 0 ? 1 : -1;
                x += sign * half[k] * m[0][k];
                y += sign * half[k] * m[1][k];
            }
            most = std::max(most, std::hypot(x, y));
        }
        return most;
    }

    const Kit& kit_;
    const KitScene& scene_;
    const Layout& layout_;
    std::vector<World> worlds_;
    std::vector<std::size_t> first_;
    Vec3 low_, high_, shift_;
    Bundle bundle_;
};

} // namespace

std::vector<std::size_t> items_of_bodies(const Kit& kit, const KitScene& scene)
{
    std::vector<std::size_t> found;
    for (const Origin& origin : scene.origins) {
        std::size_t index = static_cast<std::size_t>(origin.self.copy - 1);
        for (std::size_t item = 0; item < origin.self.item; ++item) {
            index += static_cast<std::size_t>(kit.items[item].count);
        }
        found.push_back(index);
    }
    return found;
}

void round_turns(Layout& layout)
{
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        Place place = layout.place(body);
        const Quaternion q = turn_of(place);
        const double w = static_cast<double>(q.w), z = static_cast<double>(q.z), n = w * w + z * z;
        place.c = (w * w - z * z) / n;
        place.s = 2 * w * z / n;
        if (place.form == Form::leaning) {
            const auto part = static_cast<double>(half_angle_part(place.tilt_c, place.tilt_s));
            const double square = turn_steps * turn_steps + part * part;
            place.tilt_c = (turn_steps * turn_steps - part * part) / square;
            place.tilt_s = 2 * turn_steps * part / square;
        }
        layout.put(body, place);
    }
}

Bundle bundle_of_layout(const Kit& kit, const KitScene& scene, const Layout& layout)
{
    return Builder(kit, scene, layout).build();
}

} // namespace tuckwright::nesting
