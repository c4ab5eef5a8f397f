// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a bundle holds what a kit asks for. The other rules take sizes as the bundle gives them; this one holds each
// item against the kit: as it is described there, or in one of its forms. What is soft has laws instead of forms: a
// sheet's folds and layers, a cloth's volume, a pouch's girth and length; so has what is pressed into a vessel. The
// search rounds sizes to an even number of nanometres, outsides up and cavities down, so that they may differ by a hair.
#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <optional>

#include "tuckwright/proof.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

constexpr double hair = 4e-6; ///< mm: rounding to the even grid, and of a turned place to the grid

bool is_about(double a, double b) { return std::abs(a - b) <= hair; }

/// An outside may have been rounded up, a cavity down; either is within a hair.
bool same_size(const Shape& a, const Shape& b)
{
    if (a.index() != b.index()) {
        return false;
    }
    if (const auto* c = std::get_if<Cylinder>(&a)) {
        const auto& d = std::get<Cylinder>(b);
        return is_about(c->diameter, d.diameter) && is_about(c->height, d.height) && is_about(foot_of(*c), foot_of(d));
    }
    const auto &p = std::get<Box>(a), &q = std::get<Box>(b);
    return is_about(p.length, q.length) && is_about(p.width, q.width) && is_about(p.height, q.height);
}

Shape with_height(Shape shape, double height)
{
    std::visit([&](auto& s) { s.height = height; }, shape);
    return shape;
}

/// A point of the world in the frame of a body: its own axes, its own centre.
std::array<double, 3> seen_from(const Pose& body, const Vec3& p)
{
    const Matrix3 m = rotation_matrix(body.turn);
    const std::array<double, 3> d{p.x - body.center.x, p.y - body.center.y, p.z - body.center.z};
    std::array<double, 3> own{};
    for (std::size_t k = 0; k < 3; ++k) {
        own[k] = m[0][k] * d[0] + m[1][k] * d[1] + m[2][k] * d[2];
    }
    return own;
}

/// The axis of a pose, in the frame of a body.
std::array<double, 3> axis_from(const Pose& body, const Pose& pose, std::size_t axis)
{
    const Matrix3 m = rotation_matrix(body.turn), n = rotation_matrix(pose.turn);
    std::array<double, 3> own{};
    for (std::size_t k = 0; k < 3; ++k) {
        own[k] = m[0][k] * n[0][axis] + m[1][k] * n[1][axis] + m[2][k] * n[2][axis];
    }
    return own;
}

/// Whether a solid lies to a body as told: its centre by x, y, z from the body's, its axis along the body's `axis`; a
/// box has all its axes as the body.
bool lies_so(const Pose& body, const Solid& solid, const Vec3& centre, std::size_t axis)
{
    constexpr double straight = 1 - 1e-12;
    const auto at = seen_from(body, solid.pose.center);
    bool sound = is_about(at[0], centre.x) && is_about(at[1], centre.y) && is_about(at[2], centre.z);
    sound = sound && std::abs(axis_from(body, solid.pose, 2)[axis]) > straight;
    return sound && (std::holds_alternative<Cylinder>(solid.shape) ||
                     std::abs(axis_from(body, solid.pose, 0)[0]) > straight);
}

/// The lid that is shut on an item, if there is one, and whether it is looked for with a skirt round the outside.
struct ShutLid {
    const Item* item = nullptr;
    bool has_skirt = false;

    /// How far it reaches down from the rim.
    double hangs() const { return height_of(item->outside) - item->closes->adds; }
};

/// How much wider a lid is than its vessel, at most.
double wider_by(const Shape& lid, const Shape& vessel)
{
    constexpr double far = 1e9;
    if (lid.index() != vessel.index()) {
        return far;
    }
    if (const auto* c = std::get_if<Cylinder>(&lid)) {
        return c->diameter - std::get<Cylinder>(vessel).diameter;
    }
    const auto &b = std::get<Box>(lid), &v = std::get<Box>(vessel);
    return std::max(b.length - v.length, b.width - v.width);
}

/// Whether a vessel of that outside has the lid's skirt as its last solid, or none, as it should: a skirt hangs where
/// the lid is wider and reaches further down than into the cavity.
bool skirt_matches(const ShutLid& lid, const Shape& outside, const PlacedItem& placed)
{
    if (lid.item == nullptr) {
        return !lid.has_skirt;
    }
    const double hangs = lid.hangs();
    const double over = std::min(hangs - lid.item->closes->intrudes, wider_by(lid.item->outside, outside));
    if (!lid.has_skirt) {
        return over <= hair;
    }
    const Solid& skirt = placed.solids.back();
    return over > -hair && same_size(with_height(lid.item->outside, hangs), skirt.shape) &&
           lies_so(placed.solids.front().pose, skirt, {0, 0, (height_of(outside) - hangs) / 2}, 2);
}

bool parts_match(const std::vector<Part>& parts, double height, const PlacedItem& placed, std::size_t solids)
{
    if (placed.solids.size() != solids) {
        return false;
    }
    for (std::size_t k = 0; k < parts.size(); ++k) {
        const Part& part = parts[k];
        const Solid& solid = placed.solids[1 + k];
        const Vec3 centre{part.at.x, part.at.y, part.at.z - height / 2};
        const bool is_box = std::holds_alternative<Box>(part.shape);
        if (!same_size(part.shape, solid.shape) ||
            !lies_so(placed.solids.front().pose, solid, centre, is_box ? 2 : static_cast<std::size_t>(part.axis))) {
            return false;
        }
    }
    return true;
}

bool cavity_matches(const std::optional<Cavity>& inside, double height, const PlacedItem& placed, const ShutLid& lid)
{
    if (!inside || placed.cavities.size() != 1) {
        return !inside && placed.cavities.empty();
    }
    const PlacedCavity& cavity = placed.cavities.front();
    // A lid takes from the cavity what hangs further down than a neck is high.
    const double neck = inside->neck ? height_of(*inside->neck) : 0;
    const double taken = lid.item != nullptr ? std::max(0.0, lid.item->closes->intrudes - neck) : 0;
    const double inner = height_of(inside->shape) - taken;
    const bool same_neck = inside->neck.has_value() == cavity.neck.has_value() &&
                           (!inside->neck || same_size(*inside->neck, *cavity.neck));
    const Vec3 centre{0, 0, inside->floor + inner / 2 - height / 2};
    return same_neck && cavity.opens == (lid.item != nullptr ? Opening::closed : inside->opens) &&
           same_size(lower_part(inside->shape, inner), cavity.shape) &&
           lies_so(placed.solids.front().pose, {cavity.shape, cavity.pose}, centre, 2);
}

bool same_spread(const Spread& a, const Spread& b)
{
    return is_about(a.mm[0], b.mm[0]) && is_about(a.mm[1], b.mm[1]) && is_about(a.mm[2], b.mm[2]);
}

/// Whether body, parts and cavity may be off by what the kit says. A lid that hangs into the cavity adds its own part to
/// that of the cavity's height; a skirt follows from the lid's.
bool spreads_match(const Spread& outside_off, const std::vector<Part>& parts, const std::optional<Cavity>& inside,
                   const PlacedItem& placed, const ShutLid& lid)
{
    const auto off = [&](std::size_t solid) {
        return solid < placed.solids_off.size() ? placed.solids_off[solid] : Spread{};
    };
    bool sound = same_spread(off(0), outside_off);
    for (std::size_t k = 0; k < parts.size(); ++k) {
        sound = sound && same_spread(off(1 + k), parts[k].off);
    }
    if (lid.has_skirt) {
        Spread skirt = lid.item->outside_off;
        skirt.mm[height_index(lid.item->outside)] += lid.item->closes->adds_off;
        sound = sound && same_spread(off(1 + parts.size()), skirt);
    }
    if (inside) {
        Spread room = inside->off;
        room.mm[height_index(inside->shape)] += lid.item != nullptr ? lid.item->closes->intrudes_off : 0;
        sound = sound && same_spread(placed.cavities.front().off, room);
    }
    return sound;
}

bool is_in_form(const Shape& outside, const std::vector<Part>& parts, const std::optional<Cavity>& inside,
                const PlacedItem& placed, const ShutLid& lid)
{
    const double height = height_of(outside);
    return same_size(outside, placed.solids.front().shape) &&
           parts_match(parts, height, placed, 1 + parts.size() + (lid.has_skirt ? 1 : 0)) &&
           skirt_matches(lid, outside, placed) && cavity_matches(inside, height, placed, lid);
}

/// Whether a sheet lies folded: its sides in equal shares, as thick as they lie over one another.
bool is_folded(const Sheet& sheet, const Box& box)
{
    for (int along = 1; along <= 4; ++along) {
        for (int across = 1; across <= 4; ++across) {
            const bool flat = along == 1 && across == 1;
            if ((flat || sheet.folds) && is_about(box.length, sheet.length / along) &&
                is_about(box.width, sheet.width / across) && is_about(box.height, sheet.thickness * along * across)) {
                return true;
            }
        }
    }
    return false;
}

/// Whether a sheet lies rolled: not tighter than it may be, with room in the wall for as many layers as its length
/// takes round the bore.
bool is_rolled(const Sheet& sheet, const Cylinder& tube, const PlacedItem& placed)
{
    if (!sheet.roll || placed.cavities.size() != 1 || placed.cavities.front().opens != Opening::both) {
        return false;
    }
    const auto* bore = std::get_if<Cylinder>(&placed.cavities.front().shape);
    if (bore == nullptr || bore->diameter < *sheet.roll - hair || (sheet.springy && !placed.in)) {
        return false;
    }
    for (const bool along : {true, false}) {
        const double length = along ? sheet.length : sheet.width, height = along ? sheet.width : sheet.length;
        const double layers = std::ceil((length - hair) / (std::numbers::pi * bore->diameter));
        if (is_about(tube.height, height) &&
            tube.diameter >= bore->diameter + 2 * layers * sheet.thickness - 2 * hair) {
            return true;
        }
    }
    return false;
}

bool is_pad(const Cloth& cloth, const Box& box)
{
    const double least = std::min({box.length, box.width, box.height});
    return least >= cloth.thickness - hair &&
           box.length * box.width * box.height >= cloth.volume_ml * 1000 * (1 - 1e-9);
}

/// Whether a box or cylinder is a cavity with a wall of that thickness all round.
bool has_walls(const Shape& outside, const Shape& cavity, double thickness)
{
    const double walls = 2 * thickness;
    if (const auto* c = std::get_if<Cylinder>(&cavity)) {
        return c->foot == 0 && same_size(Cylinder{c->diameter + walls, c->height + walls}, outside);
    }
    const auto& b = std::get<Box>(cavity);
    return same_size(Box{b.length + walls, b.width + walls, b.height + walls}, outside);
}

/// Whether the girth goes round a cavity's plan and the pouch is as long as that is high, in whole nanometres. 355/113
/// is more than pi, so that no round plan is taken for smaller than it is.
bool goes_round(const Pouch& pouch, const Shape& cavity)
{
    if (to_nanometres(height_of(cavity)) > to_nanometres(pouch.length)) {
        return false;
    }
    const auto girth = to_nanometres(pouch.girth);
    if (const auto* c = std::get_if<Cylinder>(&cavity)) {
        return 355 * to_nanometres(c->diameter) <= 113 * girth;
    }
    const auto& b = std::get<Box>(cavity);
    return 2 * (to_nanometres(b.length) + to_nanometres(b.width)) <= girth;
}

/// Whether a pouch lies flat or folded and empty, or is filled out round a cavity, with its wall on all sides.
bool is_pouch(const Pouch& pouch, const PlacedItem& placed)
{
    const Solid& body = placed.solids.front();
    if (placed.cavities.empty()) {
        const auto* box = std::get_if<Box>(&body.shape);
        const double half = pouch.girth / 2; // laid flat it is two layers thick, and its longer side comes first
        const Sheet flat{std::max(half, pouch.length), std::min(half, pouch.length), 2 * pouch.thickness, {}, true};
        return box != nullptr && is_folded(flat, *box);
    }
    const PlacedCavity& cavity = placed.cavities.front();
    return placed.cavities.size() == 1 && cavity.opens == Opening::closed && !cavity.neck &&
           goes_round(pouch, cavity.shape) && has_walls(body.shape, cavity.shape, pouch.thickness) &&
           lies_so(body.pose, {cavity.shape, cavity.pose}, {0, 0, 0}, 2);
}

bool is_in_soft_form(const Item& item, const PlacedItem& placed)
{
    if (placed.solids.size() != 1) {
        return false;
    }
    const Shape& shape = placed.solids.front().shape;
    const auto* box = std::get_if<Box>(&shape);
    if (item.pouch) {
        return is_pouch(*item.pouch, placed);
    }
    if (item.cloth) {
        return box != nullptr && placed.cavities.empty() && is_pad(*item.cloth, *box);
    }
    return box != nullptr ? placed.cavities.empty() && is_folded(*item.sheet, *box)
                          : is_rolled(*item.sheet, std::get<Cylinder>(shape), placed);
}

/// A shut lid is its plate alone.
bool is_plate(const Item& lid, const PlacedItem& placed)
{
    constexpr double thinnest_plate = 2e-6;
    return lid.closes && placed.solids.size() == 1 && placed.cavities.empty() &&
           same_size(with_height(lid.outside, std::max(lid.closes->adds, thinnest_plate)), placed.solids.front().shape);
}

/// Whether the plate may be off by what the kit says of the lid.
bool plate_spread_matches(const Item& lid, const PlacedItem& placed)
{
    Spread plate = lid.outside_off;
    plate.mm[height_index(lid.outside)] = lid.closes->adds_off;
    return same_spread(placed.solids_off.empty() ? Spread{} : placed.solids_off.front(), plate);
}

class Match {
public:
    Match(const Bundle& bundle, const Kit& kit) : bundle_(bundle), kit_(kit) {}

    std::vector<Objection> run(std::size_t most)
    {
        compare_frames();
        std::size_t known = 0;
        for (const Item& item : kit_.items) {
            for (int copy = 1; copy <= item.count; ++copy, ++known) {
                compare(item, copy);
            }
        }
        if (bundle_.items.size() > known) {
            object("the bundle holds things that are not in the kit");
        }
        found_.resize(std::min(found_.size(), most));
        return std::move(found_);
    }

private:
    void object(const std::string& what) { found_.push_back({"kit", what}); }

    void compare_frames()
    {
        const BundleRule &a = bundle_.rule, &b = kit_.bundle;
        if (a.shape != b.shape || a.diameter != b.diameter || a.height != b.height || a.length != b.length ||
            a.width != b.width) {
            object("the bundle is not of the shape, or not within the limits, that the kit asks for");
        }
        if (bundle_.clearance < kit_.clearance || !is_about(bundle_.clearance, kit_.clearance)) {
            object(fmt::format("the clearance is {:g} mm, the kit asks for {:g} mm", bundle_.clearance, kit_.clearance));
        }
        if (bundle_.bag != kit_.bag || bundle_.bands != kit_.bands) {
            object("the bag and the bands round the bundle are not those of the kit");
        }
        compare_rules();
    }

    /// Whatever their order, and in whichever words their reasons are told.
    void compare_rules()
    {
        const auto has = [](const std::vector<CarryRule>& rules, const CarryRule& wanted) {
            return std::any_of(rules.begin(), rules.end(), [&](const CarryRule& rule) {
                return rule.keep == wanted.keep && rule.first == wanted.first && rule.second == wanted.second;
            });
        };
        const auto compare = [&](const std::vector<CarryRule>& from, const std::vector<CarryRule>& to, const char* whose) {
            const auto odd = std::find_if(from.begin(), from.end(), [&](const CarryRule& rule) { return !has(to, rule); });
            if (odd != from.end()) {
                object(fmt::format("the rules of carrying are not those of the kit: {} has one more about {} and {} ({})",
                                   whose, odd->first, odd->second, odd->why));
            }
        };
        compare(kit_.rules, bundle_.rules, "the kit");
        compare(bundle_.rules, kit_.rules, "the bundle");
    }

    void compare(const Item& item, int copy)
    {
        const auto placed = std::find_if(bundle_.items.begin(), bundle_.items.end(), [&](const PlacedItem& other) {
            return other.id == item.id && other.copy == copy;
        });
        if (placed == bundle_.items.end()) {
            object(fmt::format("{} of the kit is missing", item.count > 1 ? fmt::format("{} {}", item.id, copy)
                                                                          : item.id));
            return;
        }
        const std::string who = label(bundle_, static_cast<std::size_t>(placed - bundle_.items.begin()));
        const double contents = item.contents ? item.contents->weight_g : 0;
        if (placed->weight_g != item.weight_g || placed->contents_g != contents) {
            object(fmt::format("{} does not weigh what the kit says", who));
        }
        if (placed->name != item.name || placed->contents != (item.contents ? item.contents->what : "")) {
            object(fmt::format("{} is not called as in the kit, or holds something else", who));
        }
        if (placed->upright != item.upright || placed->full != item.is_full()) {
            object(fmt::format("{} is not kept upright, or not filled, as the kit says", who));
        }
        if (placed->kinds != item.kinds || placed->reach != item.reach ||
            placed->nothing_on_top != item.nothing_on_top || placed->bears_g != item.bears_g) {
            object(fmt::format("{} is not of the kinds, not wanted as soon, or may not bear as much, as the kit says", who));
        }
        if (placed->pressed && !item.press) {
            object(fmt::format("{} is told to be pressed into what it lies in, but gives way to nothing", who));
        }
        if (item.sheet && item.sheet->springy && placed->in && !placed->cavities.empty() && !is_half_in(*placed)) {
            object(fmt::format("{} springs open: less than half of it is in what holds it together", who));
        }
        switch (placed->solids.empty() ? Likeness::none : likeness(item, *placed)) {
        case Likeness::none:
            object(fmt::format("{} has not the size and shape of the kit, in none of its forms", who));
            break;
        case Likeness::size: object(fmt::format("{} may not be off by what the kit says", who)); break;
        case Likeness::all: break;
        }
    }

    /// Whether the middle of a roll lies between the ends of the cavity that it is in.
    bool is_half_in(const PlacedItem& roll) const
    {
        const PlacedCavity& holder = bundle_.items[roll.in->item].cavities[roll.in->cavity];
        const Matrix3 m = rotation_matrix(holder.pose.turn);
        const Vec3 &at = roll.solids.front().pose.center, &from = holder.pose.center;
        const double along = (at.x - from.x) * m[0][2] + (at.y - from.y) * m[1][2] + (at.z - from.z) * m[2][2];
        return std::abs(along) <= height_of(holder.shape) / 2 + hair;
    }

    const Item* lid_of(const PlacedItem& vessel) const
    {
        for (const PlacedItem& lid : bundle_.items) {
            if (!lid.closes || &bundle_.items[*lid.closes] != &vessel) {
                continue;
            }
            for (const Item& item : kit_.items) {
                if (item.id == lid.id && item.closes) {
                    return &item;
                }
            }
        }
        return nullptr;
    }

    /// How far an item is one of the kit's: not at all, in a form and size, in its tolerances too.
    enum class Likeness { none, size, all };

    Likeness likeness(const Item& item, const PlacedItem& placed) const
    {
        const auto with = [](bool tolerances) { return tolerances ? Likeness::all : Likeness::size; };
        if (placed.closes) {
            return is_plate(item, placed) ? with(plate_spread_matches(item, placed)) : Likeness::none;
        }
        if (item.press) {
            return is_pressed_in(item, placed) ? Likeness::all : Likeness::none; // as wide as another thing's tolerance
        }
        if (item.sheet || item.cloth || item.pouch) { // their forms are not measured ones
            return is_in_soft_form(item, placed) ? Likeness::all : Likeness::none;
        }
        for (const bool skirt : {false, true}) {
            const ShutLid lid{lid_of(placed), skirt};
            if (is_in_form(item.outside, item.parts, item.inside, placed, lid) && says(placed, "", "")) {
                return with(spreads_match(item.outside_off, item.parts, item.inside, placed, lid));
            }
            for (const Stowage& form : item.forms) {
                if (is_in_form(form.outside, form.parts, form.inside, placed, lid) &&
                    says(placed, form.name, form.how)) {
                    return with(spreads_match(form.outside_off, form.parts, form.inside, placed, lid));
                }
            }
        }
        return Likeness::none;
    }

    /// Whether a springy thing is where it belongs: in the cavity of its vessel and just as wide, pressed together by no
    /// more than it gives; its own cavity is narrower by as much.
    bool is_pressed_in(const Item& item, const PlacedItem& placed) const
    {
        const Item& vessel = kit_.items[item.press->item];
        const auto* outside = std::get_if<Cylinder>(&item.outside);
        const auto* body = std::get_if<Cylinder>(&placed.solids.front().shape);
        if (outside == nullptr || body == nullptr || !placed.pressed || !is_about(*placed.pressed, outside->diameter) ||
            !placed.in || placed.in->cavity != 0 || bundle_.items[placed.in->item].id != vessel.id) {
            return false;
        }
        const auto* bore = std::get_if<Cylinder>(&vessel.inside->shape);
        const double by = outside->diameter - body->diameter;
        if (bore == nullptr || !is_about(body->diameter, bore->diameter) || by <= 0 || by > item.press->gives + hair) {
            return false;
        }
        std::optional<Cavity> inside = item.inside;
        if (auto* inner = inside ? std::get_if<Cylinder>(&inside->shape) : nullptr) {
            inner->diameter -= by;
        }
        // In whichever words, it is told into what it is pressed, and that something is to be done for that.
        return placed.stowed.find(vessel.id) != std::string::npos && !placed.how.empty() &&
               is_in_form(Cylinder{body->diameter, outside->height}, item.parts, inside, placed, {});
    }

    /// Whether it is told to be carried in the form of that name.
    static bool says(const PlacedItem& placed, const std::string& form, const std::string& how)
    {
        return placed.stowed == form && placed.how == how;
    }

    const Bundle& bundle_;
    const Kit& kit_;
    std::vector<Objection> found_;
};

} // namespace

std::vector<Objection> check_against(const Bundle& bundle, const Kit& kit, std::size_t most)
{
    return Match(bundle, kit).run(most);
}

} // namespace tuckwright
