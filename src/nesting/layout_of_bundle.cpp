// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/layout_of_bundle.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "packing/leaning.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/stowage.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

Vec3 axis(const Matrix3& m, std::size_t k) { return {m[0][k], m[1][k], m[2][k]}; }

/// A direction or offset of the world in the axes of a turned frame.
Vec3 seen_from(const Matrix3& frame, Vec3 v)
{
    return {dot(axis(frame, 0), v), dot(axis(frame, 1), v), dot(axis(frame, 2), v)};
}

/// Sizes in the order of the shape's own axes; nothing where the kinds differ.
double difference(const Shape& a, const Shape& b)
{
    if (a.index() != b.index()) {
        return std::numeric_limits<double>::infinity();
    }
    if (const auto* c = std::get_if<Cylinder>(&a)) {
        const auto& d = std::get<Cylinder>(b);
        return std::abs(c->diameter - d.diameter) + std::abs(c->height - d.height);
    }
    const auto &c = std::get<Box>(a), &d = std::get<Box>(b);
    return std::abs(c.length - d.length) + std::abs(c.width - d.width) + std::abs(c.height - d.height);
}

/// The way to stow an item that has the name and comes nearest in size.
std::optional<int> way_of(const Item& item, const PlacedItem& placed)
{
    if (item.press) {
        return 0;
    }
    const Shape& shape = placed.solids.front().shape;
    std::optional<int> best;
    double least = std::numeric_limits<double>::infinity();
    const auto look = [&](int way, const Shape& outside) {
        if (const double off = difference(shape, outside); off < least) {
            least = off;
            best = way;
        }
    };
    if (!item.pouch && placed.stowed.empty()) {
        look(0, item.outside);
    }
    for (std::size_t k = 0; k < item.forms.size(); ++k) {
        const bool is_own = item.pouch && k == 0; // a pouch is by itself as in its first form
        if (item.forms[k].name == placed.stowed) {
            look(is_own ? 0 : static_cast<int>(k) + 1, item.forms[k].outside);
        }
    }
    return best;
}

/// Finds form, turn and tilt for a body that is turned like that in its cell; false if no form of it is.
bool find_turn(const Body& body, const Vec3& x, const Vec3& y, const Vec3& z, Place& place)
{
    // x, y and z are the body's own axes in the frame of the cell.
    constexpr double level = 1 - 1e-9;
    for (const Form form : body.forms) {
        if (form == Form::leaning) {
            continue;
        }
        // The axes of the cell, once only tipped, are where the turn about z takes them.
        const auto image = [&](Vec3 of_cell) {
            const Vec3 own{dot(tipped(form, {1, 0, 0}), of_cell), dot(tipped(form, {0, 1, 0}), of_cell),
                           dot(tipped(form, {0, 0, 1}), of_cell)};
            return own.x * x + own.y * y + own.z * z;
        };
        if (image({0, 0, 1}).z > level) {
            const Vec3 turned = image({1, 0, 0});
            place.form = form;
            place.c = turned.x;
            place.s = turned.y;
            return true;
        }
    }
    const auto rod = rod_of(body);
    if (!rod) {
        return false;
    }
    const auto based = [&](Vec3 own) { // see own_turn() of bundle_of_layout
        const Vec3 v = tipped(rod->base, own);
        return rod->quarter ? Vec3{-v.y, v.x, v.z} : v;
    };
    const auto image = [&](Vec3 of_base) {
        const Vec3 own{dot(based({1, 0, 0}), of_base), dot(based({0, 1, 0}), of_base), dot(based({0, 0, 1}), of_base)};
        return own.x * x + own.y * y + own.z * z;
    };
    const Vec3 along = image({0, 0, 1}), aside = image({0, 1, 0}), down = image({1, 0, 0});
    place.form = Form::leaning;
    place.c = aside.y;
    place.s = -aside.x;
    place.tilt_c = along.z;
    place.tilt_s = -down.z;
    return std::abs(aside.z) < 1e-9;
}

class Reader {
public:
    Reader(const Kit& kit, const Bundle& bundle) : kit_(kit), bundle_(bundle)
    {
        for (std::size_t k = 0; k < bundle.items.size(); ++k) {
            index_[{bundle.items[k].id, bundle.items[k].copy}] = k;
        }
    }

    /// Where `missing` is no place to tell them, nothing may be missing.
    std::optional<Proposal> read(std::vector<int>* missing)
    {
        std::vector<bool> shut;
        for (const Copy lid : lids(kit_)) {
            const PlacedItem* placed = find(lid);
            const bool has_vessel = find({kit_.items[lid.item].closes->item, lid.copy}) != nullptr;
            shut.push_back(placed != nullptr ? placed->closes.has_value() : !has_vessel);
        }
        const auto scene = std::make_shared<const KitScene>(kit_scene(kit_, shut));
        for (std::size_t body = 0; body < scene->origins.size(); ++body) {
            if (const PlacedItem* placed = find(scene->origins[body].self)) {
                bodies_[static_cast<std::size_t>(placed - bundle_.items.data())] = static_cast<int>(body);
            }
        }
        Layout layout(scene->scene, envelope());
        std::vector<int> absent;
        for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
            if (find(scene->origins[at(body)].self) == nullptr) {
                absent.push_back(body);
            }
        }
        if ((!absent.empty() && missing == nullptr) || !fill(*scene, layout) || !pile(layout, absent)) {
            return std::nullopt;
        }
        if (missing != nullptr) {
            *missing = absent;
        }
        return Proposal{scene, layout, volume(layout.envelope())};
    }

private:
    const PlacedItem* find(Copy copy) const
    {
        const auto found = index_.find({kit_.items[copy.item].id, copy.copy});
        return found == index_.end() ? nullptr : &bundle_.items[found->second];
    }

    Envelope envelope() const
    {
        if (const auto* round = std::get_if<Cylinder>(&bundle_.envelope)) {
            return {true, round->diameter / 2, 0, 0, round->height};
        }
        const auto& box = std::get<Box>(bundle_.envelope);
        return {false, 0, box.length / 2, box.width / 2, box.height};
    }

    /// Vessels first, for what lies in them asks how they stand.
    bool fill(const KitScene& scene, Layout& layout) const
    {
        std::vector<bool> placed(layout.size(), false);
        for (std::size_t round = 0, done = 0; done < layout.size(); ++round) {
            if (round > layout.size()) {
                return false;
            }
            for (std::size_t body = 0; body < layout.size(); ++body) {
                const PlacedItem* item = find(scene.origins[body].self);
                if (item == nullptr) {
                    done += placed[body] ? 0 : 1;
                    placed[body] = true;
                    continue;
                }
                const auto vessel = item->in ? bodies_.find(item->in->item) : bodies_.end();
                if (placed[body] || (item->in && vessel == bodies_.end()) ||
                    (item->in && !placed[at(vessel->second)])) {
                    continue;
                }
                if (!put(scene, layout, static_cast<int>(body), *item, item->in ? vessel->second : outermost)) {
                    return false;
                }
                placed[body] = true;
                ++done;
            }
        }
        return true;
    }

    /// Puts bodies on top of all, in the first form in which they may lie in the bundle.
    static bool pile(Layout& layout, const std::vector<int>& bodies)
    {
        for (const int body : bodies) {
            Place place;
            const auto& forms = layout.stowed(body).forms;
            const auto form = std::find_if(forms.begin(), forms.end(), [&](Form one) {
                return one != Form::leaning && layout.may_enter(body, outermost, one);
            });
            if (form == forms.end()) {
                return false;
            }
            place.form = *form;
            const Reach reach = vertical_reach(layout.stowed(body), *form);
            Envelope envelope = layout.envelope();
            place.z = envelope.height + reach.below;
            envelope.height += reach.below + reach.above;
            layout.put(body, place);
            layout.set_envelope(envelope);
        }
        return true;
    }

    bool put(const KitScene& scene, Layout& layout, int body, const PlacedItem& item, int cell) const
    {
        Place place;
        place.cell = cell;
        const auto way = way_of(kit_.items[scene.origins[at(body)].self.item], item);
        if (!way) {
            return false;
        }
        place.way = *way;
        Matrix3 frame = rotation_matrix({});
        Vec3 floor;
        if (item.in) {
            const PlacedCavity& cavity = bundle_.items[item.in->item].cavities[item.in->cavity];
            frame = rotation_matrix(cavity.pose.turn);
            floor = cavity.pose.center - height_of(cavity.shape) / 2 * axis(frame, 2);
        } else if (const auto* box = std::get_if<Box>(&bundle_.envelope)) {
            floor = {box->length / 2, box->width / 2, 0};
        }
        const Pose& pose = item.solids.front().pose;
        const Matrix3 turn = rotation_matrix(pose.turn);
        const Vec3 local = seen_from(frame, pose.center - floor);
        place.x = local.x;
        place.y = local.y;
        place.z = local.z;
        if (!find_turn(scene.scene.stowed(body, place.way), seen_from(frame, axis(turn, 0)),
                       seen_from(frame, axis(turn, 1)), seen_from(frame, axis(turn, 2)), place) ||
            !layout.may_enter(body, cell, place.form, place.way)) {
            return false;
        }
        layout.put(body, place);
        return true;
    }

    const Kit& kit_;
    const Bundle& bundle_;
    std::map<std::pair<std::string, int>, std::size_t> index_;
    std::map<std::size_t, int> bodies_; ///< by item of the bundle
};

} // namespace

std::optional<Proposal> layout_of_bundle(const Kit& kit, const Bundle& bundle)
{
    return Reader(kit, bundle).read(nullptr);
}

std::optional<Proposal> layout_of_part(const Kit& kit, const Bundle& bundle, std::vector<int>& missing)
{
    return Reader(kit, bundle).read(&missing);
}

} // namespace tuckwright::nesting
