// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/section.hpp"

#include <algorithm>
#include <array>

#include "drawing/polygons.hpp"

namespace tuckwright::drawing {

namespace {

constexpr int sides = 96;      ///< of the prism that stands for something round
constexpr double touch = 5e-3; ///< mm by which a plane has to go into a solid
constexpr double mouth_air =
    0.5; ///< mm by which an open cavity goes on beyond its rim, so that no skin is left over it

/// The convex solid's edges, as pairs of points.
std::vector<std::array<Vec3, 2>> edges_of(const Solid& solid, const Camera& camera)
{
    std::vector<std::array<Vec3, 2>> edges;
    const Vec3 axis = own_axis(solid.pose, 2), c = solid.pose.center;
    if (const auto* b = std::get_if<Box>(&solid.shape)) {
        const std::array<Vec3, 3> half{(b->length / 2) * own_axis(solid.pose, 0),
                                       (b->width / 2) * own_axis(solid.pose, 1), (b->height / 2) * axis};
        for (std::size_t k = 0; k < 3; ++k) {
            for (const double u : {-1.0, 1.0}) {
                for (const double v : {-1.0, 1.0}) {
                    const Vec3 at = c + u * half[(k + 1) % 3] + v * half[(k + 2) % 3];
                    edges.push_back({at - half[k], at + half[k]});
                }
            }
        }
        return edges;
    }
    const auto& round = std::get<Cylinder>(solid.shape);
    const Vec3 level = cross(camera.toward, axis); // so that the outline's own points are among those taken
    const Vec3 first = norm(level) > 1e-6 ? unit(level) : own_axis(solid.pose, 0), second = cross(axis, first);
    const auto ring = [&](int k, bool top) {
        const double t = 2 * std::numbers::pi * k / sides, r = (top ? round.diameter : foot_of(round)) / 2;
        return c + ((top ? 0.5 : -0.5) * round.height) * axis + (r * std::cos(t)) * first + (r * std::sin(t)) * second;
    };
    for (int k = 0; k < sides; ++k) {
        edges.push_back({ring(k, false), ring(k, true)});
        edges.push_back({ring(k, false), ring((k + 1) % sides, false)});
        edges.push_back({ring(k, true), ring((k + 1) % sides, true)});
    }
    return edges;
}

/// Longer at the ends at which it is open.
Solid with_mouth(Solid solid, bool top, bool bottom)
{
    const double by = (top ? mouth_air : 0) + (bottom ? mouth_air : 0);
    solid.pose.center =
        solid.pose.center + (((top ? mouth_air : 0) - (bottom ? mouth_air : 0)) / 2) * own_axis(solid.pose, 2);
    std::visit([&](auto& shape) { shape.height += by; }, solid.shape);
    return solid;
}

/// How much of an item's bodies a plane shows, mm^2.
double shown_area(const Bundle& bundle, std::size_t item, const Cut& cut)
{
    double area = 0;
    for (const Solid& solid : own_solids(bundle, item)) {
        area += area_of(section_of(solid, cut));
    }
    return area;
}

/// Where the axis of what is filled goes through.
Vec3 middle_of(const Bundle& bundle, const Shown& shown)
{
    if (shown.root) {
        const PlacedItem& vessel = bundle.items[*shown.root];
        return vessel.cavities.empty() ? vessel.solids.front().pose.center : vessel.cavities.front().pose.center;
    }
    if (const auto* box = std::get_if<Box>(&bundle.envelope)) {
        return {box->length / 2, box->width / 2, box->height / 2};
    }
    return {0, 0, height_of(bundle.envelope) / 2};
}

Cut cut_through(Vec3 point, double angle)
{
    const Camera camera = from_the_side(angle, 0);
    return {camera, camera.depth(point), angle};
}

/// An angle within a quarter turn of the front.
double from_the_front(double angle) { return angle - 180 * std::floor((angle + 90 - 1e-9) / 180); }

/// The angles from which the cut may be looked at; the front first, then the least turned.
std::vector<double> angles_for(const Bundle& bundle, const Shown& shown, Vec3 middle)
{
    std::vector<double> angles{0};
    const Solid* root = shown.root ? &bundle.items[*shown.root].solids.front() : nullptr;
    const Shape& shape = root ? root->shape : bundle.envelope;
    if (std::holds_alternative<Box>(shape) || (root && std::abs(own_axis(root->pose, 2).z) < 0.9)) {
        double own = 0;
        if (root) {
            for (std::size_t k = 0; k < 3; ++k) {
                const Vec3 axis = own_axis(root->pose, k);
                own = std::abs(axis.z) < 0.1 ? std::atan2(axis.y, axis.x) * 180 / std::numbers::pi : own;
            }
        }
        angles = {from_the_front(own), from_the_front(own + 90)};
    } else {
        for (int k = 1; k <= 6; ++k) {
            angles.push_back(15 * k);
            angles.push_back(k < 6 ? -15 * k : 0);
        }
        if (shown.item) {
            const Vec3 to = bundle.items[*shown.item].solids.front().pose.center - middle;
            if (std::hypot(to.x, to.y) > 1) {
                angles.push_back(from_the_front(std::atan2(to.y, to.x) * 180 / std::numbers::pi));
            }
        }
    }
    std::stable_sort(angles.begin(), angles.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
    return angles;
}

/// How well a cut shows what there is to see, against the best of all cuts: the item of the step, or the number of things.
std::vector<double> merits(const Bundle& bundle, const Shown& shown, const std::vector<Cut>& cuts)
{
    std::vector<double> total(cuts.size(), 0);
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (shown.item ? i != *shown.item : !shown.there[i]) {
            continue;
        }
        std::vector<double> areas;
        for (const Cut& cut : cuts) {
            areas.push_back(shown_area(bundle, i, cut));
        }
        const double most = *std::max_element(areas.begin(), areas.end());
        for (std::size_t k = 0; k < cuts.size() && most > 0; ++k) {
            total[k] += std::min(1.0, 1.25 * areas[k] / most);
        }
    }
    return total;
}

} // namespace

std::vector<Spot> outline_behind(const Solid& solid, const Camera& camera, std::optional<double> level)
{
    std::vector<Spot> points;
    bool any = false;
    for (const auto& [from, to] : edges_of(solid, camera)) {
        const double a = level ? camera.depth(from) - *level : -1, b = level ? camera.depth(to) - *level : -1;
        any = any || a < -touch || b < -touch;
        if (a <= 0) {
            points.push_back(camera.project(from));
        }
        if (b <= 0) {
            points.push_back(camera.project(to));
        }
        if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
            points.push_back(camera.project(from + (a / (a - b)) * (to - from)));
        }
    }
    return any ? convex_outline(points) : std::vector<Spot>();
}

bool is_cut(const Solid& solid, const Cut& cut)
{
    const Hull hull = hull_of(solid);
    return support(hull, cut.camera.toward) > cut.level + touch &&
           -support(hull, -1.0 * cut.camera.toward) < cut.level - touch;
}

std::vector<Spot> section_of(const Solid& solid, const Cut& cut)
{
    if (!is_cut(solid, cut)) {
        return {};
    }
    std::vector<Spot> points;
    for (const auto& [from, to] : edges_of(solid, cut.camera)) {
        const double a = cut.camera.depth(from) - cut.level, b = cut.camera.depth(to) - cut.level;
        if (a == 0 || b == 0 || (a < 0) != (b < 0)) {
            points.push_back(cut.camera.project(a == b ? from : from + (a / (a - b)) * (to - from)));
        }
    }
    const auto outline = points.size() < 3 ? std::vector<Spot>() : convex_outline(points);
    return area_of(outline) > 0 ? outline : std::vector<Spot>();
}

double area_of(const std::vector<Spot>& outline)
{
    double twice = 0;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const Spot &a = outline[k], &b = outline[(k + 1) % outline.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return std::abs(twice) / 2;
}

Path material_of(const Bundle& bundle, const Shown& shown, std::size_t item, const Cut& cut)
{
    Area area;
    const auto add = [&](const Solid& solid) {
        if (const auto outline = section_of(solid, cut); !outline.empty()) {
            area.add(outline);
        }
    };
    const auto take_away = [&](const Solid& room) {
        if (const auto outline = section_of(room, cut); !outline.empty()) {
            area.remove(outline);
        }
    };
    const auto solids = own_solids(bundle, item);
    std::for_each(solids.begin(), solids.end(), add);
    if (const auto vessel = bundle.items[item].closes) {
        take_away(bundle.items[*vessel].solids.front());
        for (const Hollow& hollow : shown.hollows[*vessel]) {
            if (hollow.plug) {
                add(*hollow.plug);
            }
        }
    }
    for (const Hollow& hollow : shown.hollows[item]) {
        take_away(with_mouth(hollow.room, hollow.open_top && !hollow.neck, hollow.open_bottom));
        if (hollow.neck && height_of(hollow.neck->shape) > 0.1) {
            take_away(with_mouth(*hollow.neck, true, true));
        }
        if (hollow.plug) {
            take_away(with_mouth(*hollow.plug, true, true));
        }
    }
    return area.path();
}

Cut cut_for(const Bundle& bundle, const Shown& shown)
{
    const Vec3 middle = middle_of(bundle, shown);
    std::vector<Cut> cuts;
    for (const double angle : angles_for(bundle, shown, middle)) {
        cuts.push_back(cut_through(middle, angle));
    }
    const auto merit = merits(bundle, shown, cuts);
    const double most = *std::max_element(merit.begin(), merit.end());
    if (shown.item && most == 0) {
        return cut_through(bundle.items[*shown.item].solids.front().pose.center, cuts.front().angle);
    }
    std::size_t k = 0;
    while (merit[k] < most - 1e-9) {
        ++k;
    }
    return cuts[k];
}

} // namespace tuckwright::drawing
