// SPDX-License-Identifier: GPL-3.0-or-later
// Signs of drawing: the arrow of a way in, dimensions, the ends of a cut, the scale.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/handled.hpp"
#include "drawing/palette.hpp"
#include "drawing/stage.hpp"
#include "report/words.hpp"

namespace tuckwright {

namespace drawing {

namespace {

constexpr double thin_line = 0.18;

Spot operator+(Spot a, Spot b) { return {a.x + b.x, a.y + b.y}; }
Spot operator*(double s, Spot a) { return {s * a.x, s * a.y}; }

/// A filled arrow head with its point there, looking along a unit vector.
Path head(Spot tip, Spot along, double length, double width)
{
    const Spot back = tip + -length * along, aside{-along.y, along.x};
    return Path::polygon({tip, back + (width / 2) * aside, back + (-width / 2) * aside});
}

/// A thing that goes straight away from the eye: the feathers of an arrow seen from behind.
void draw_feathers(Canvas& canvas, Spot at, double r)
{
    const double d = r * 0.7071;
    const Pen pen{palette::ink, r / 4};
    canvas.draw(Path::circle(at, r), pen, Fill{palette::paper});
    canvas.draw(Path::line({at.x - d, at.y - d}, {at.x + d, at.y + d}), pen);
    canvas.draw(Path::line({at.x - d, at.y + d}, {at.x + d, at.y - d}), pen);
}

/// On the body that goes in, and smaller on a small one, which would not be seen otherwise.
void cross_in_circle(Stage& stage, const Solid& body)
{
    constexpr double usual = 2, least = 0.8, share = 0.25; // mm of paper; of the body's narrower side
    const Hull hull = hull_of(body);
    const double wide = support(hull, stage.camera.right) + support(hull, -1.0 * stage.camera.right);
    const double high = support(hull, stage.camera.up) + support(hull, -1.0 * stage.camera.up);
    const double r = std::clamp(share * std::min(wide, high) / stage.options.scale, least, usual);
    const Spot at = stage.on_paper(body.pose.center);
    draw_feathers(stage.canvas, at, r);
    const Frame place{at.x - r - 0.3, at.y - r - 0.3, 2 * r + 0.6, 2 * r + 0.6};
    stage.taken.push_back(place);
    stage.seen.paint(Path::rectangle(place), std::nullopt);
}

/// How far one can go from a spot along a unit vector within a frame.
double room_along(const Frame& frame, Spot from, Spot along)
{
    double room = 1e9;
    const auto limit = [&](double at, double slope, double low, double high) {
        if (std::abs(slope) > 1e-9) {
            room = std::min(room, ((slope > 0 ? high : low) - at) / slope);
        }
    };
    limit(from.x, along.x, frame.x, frame.right());
    limit(from.y, along.y, frame.y, frame.bottom());
    return std::max(0.0, room);
}

constexpr double head_length = 3.4;

/// A heavy line along a way, with a head at its end, on a rim of paper.
Path draw_arrow(Canvas& canvas, std::vector<Spot> way)
{
    const Spot tip = way.back(), before = way[way.size() - 2];
    const double length = std::hypot(tip.x - before.x, tip.y - before.y);
    const Spot along{(tip.x - before.x) / length, (tip.y - before.y) / length};
    way.back() = tip + -0.8 * head_length * along;
    const Path line = Path::polyline(way), point = head(tip, along, head_length, 3);
    canvas.draw(line, Pen{palette::paper, 2.1});
    canvas.draw(point, Pen{palette::paper, 1.0});
    canvas.draw(line, Pen{palette::ink, 1.0});
    canvas.draw(point, std::nullopt, Fill{palette::ink});
    return point;
}

void arrow(Stage& stage, const std::vector<Spot>& way)
{
    const Path point = draw_arrow(stage.canvas, way);
    for (std::size_t k = 0; k + 1 < way.size(); ++k) {
        for (int i = 0; i <= 20; ++i) {
            const Spot at = way[k] + (i / 20.0) * (way[k + 1] + -1 * way[k]);
            const Frame place{at.x - 1.3, at.y - 1.3, 2.6, 2.6};
            stage.taken.push_back(place);
            stage.seen.paint(Path::rectangle(place), std::nullopt);
        }
    }
    const Frame place = point.bounds();
    stage.taken.push_back(place);
    stage.seen.paint(Path::rectangle(place), std::nullopt);
}

/// mm from a solid's middle to its surface along a unit vector; of what tapers, as if it were straight.
double way_out(const Solid& solid, Vec3 along)
{
    const auto share = [&](std::size_t k) { return std::abs(dot(own_axis(solid.pose, k), along)); };
    constexpr double none = 1e-9;
    if (const auto* box = std::get_if<Box>(&solid.shape)) {
        return std::min({box->length / 2 / std::max(share(0), none), box->width / 2 / std::max(share(1), none),
                         box->height / 2 / std::max(share(2), none)});
    }
    const auto& round = std::get<Cylinder>(solid.shape);
    const double radius = (round.diameter + foot_of(round)) / 4;
    return std::min(round.height / 2 / std::max(share(2), none),
                    radius / std::max(std::hypot(share(0), share(1)), none));
}

/// The same through all solids of an item on that line, from the middle of the first.
double way_out_of_all(const PlacedItem& item, Vec3 along)
{
    const Vec3 from = item.solids.front().pose.center;
    double way = way_out(item.solids.front(), along);
    for (const Solid& solid : item.solids) {
        const Vec3 to = solid.pose.center - from;
        const double ahead = dot(to, along);
        const Vec3 aside = to - ahead * along;
        if (norm(aside) < 1 || norm(aside) < way_out(solid, unit(aside))) {
            way = std::max(way, ahead + way_out(solid, along));
        }
    }
    return way;
}

struct Words {
    std::string text;
    TextStyle style;
    TextExtent extent;
};

Words words(const std::string& text, double size, const Color& color)
{
    const TextStyle style{.size = size, .color = color};
    return {text, style, Canvas::extent(text, style)};
}

/// Writes it at the first of these places that is free, if any is.
void put(Stage& stage, const Words& what, const std::vector<Spot>& corners)
{
    for (const Spot& corner : corners) {
        const Frame place{corner.x, corner.y, what.extent.width, what.extent.height};
        if (stage.is_free(place)) {
            stage.canvas.write(what.text, corner, what.style);
            stage.taken.push_back(place);
            return;
        }
    }
}

/// A dimension between two spots on a level or an upright line, beside what it measures.
void dimension(Stage& stage, Spot from, Spot to, const std::string& text)
{
    const bool level = std::abs(to.x - from.x) > std::abs(to.y - from.y);
    const Spot along = level ? Spot{1, 0} : Spot{0, 1}, aside = level ? Spot{0, 1} : Spot{1, 0};
    const Pen pen{palette::faint, thin_line};
    stage.canvas.draw(Path::line(from, to), pen);
    for (const Spot& end : {from, to}) {
        stage.canvas.draw(Path::line(end + -1.2 * aside, end + 0.8 * aside), pen);
    }
    stage.canvas.draw(head(from, -1 * along, 1.6, 0.9), std::nullopt, Fill{palette::faint});
    stage.canvas.draw(head(to, along, 1.6, 0.9), std::nullopt, Fill{palette::faint});
    stage.lines.push_back({std::min(from.x, to.x) - 1.2, std::min(from.y, to.y) - 1.2, std::abs(to.x - from.x) + 2.4,
                           std::abs(to.y - from.y) + 2.4});
    const Words what = words(text, 2.7, palette::ink);
    const Spot middle = 0.5 * (from + to);
    const double last = std::max(stage.frame.x, stage.frame.right() - what.extent.width);
    const double x = std::clamp(middle.x - what.extent.width / 2, stage.frame.x, last), height = what.extent.height;
    if (level) {
        put(stage, what, {{x, middle.y + 0.6}, {stage.frame.x, middle.y + 0.6}, {last, middle.y + 0.6}});
    } else {
        std::vector<Spot> corners;
        for (double at = x; at < last; at += 0.5) { // as near to the line as an arrow beside it lets it
            corners.push_back({at, from.y - height - 0.4});
        }
        corners.insert(corners.end(), {{last, from.y - height - 0.4},
                                       {last, to.y + 3.2},
                                       {middle.x - what.extent.width - 0.8, middle.y - height / 2}});
        put(stage, what, corners);
    }
}

/// Sizes of what is filled as people measure it, along the camera's level and its upright on paper.
struct Sizes {
    std::string level, upright;
};

Sizes sizes_of(const Stage& stage)
{
    const auto of = [&](double mm, bool round) { return (round ? "Ø " : "") + report::length_in_words(mm); };
    const bool cut = stage.is_cut();
    const Frame& c = stage.content;
    if (stage.shown.root) {
        return {of(c.width, false), of(c.height, false)};
    }
    const Shape e = stage.shown.bag ? outer_envelope(stage.bundle) : stage.bundle.envelope;
    if (const auto* round = std::get_if<Cylinder>(&e)) {
        return {of(round->diameter, true), cut ? of(round->height, false) : ""};
    }
    return {of(c.width, false), of(c.height, false)};
}

constexpr double bend = 2.1, sign_height = 2 * bend + 1.4; ///< mm: of the arrow that says that something is tipped

/// Half a turn, or a third of one, as a bent arrow in a square.
void bent_arrow(Stage& stage, const Frame& place, Tip tip)
{
    const Spot middle{place.x + bend + 1, place.y + place.height / 2 + (tip == Tip::over ? 0.5 : 0.9)};
    const double to = tip == Tip::over ? 0.15 : -0.6; // radians, clockwise on paper, from the left over the top
    const double from = tip == Tip::over ? 0.2 - std::numbers::pi : 0.6 - std::numbers::pi;
    const Spot end{middle.x + bend * std::cos(to), middle.y + bend * std::sin(to)};
    const Spot along{-std::sin(to), std::cos(to)};
    Path arc;
    arc.arc(middle, {bend, 0}, {0, bend}, from, to - 0.45);
    stage.canvas.draw(arc, Pen{palette::ink, 0.7});
    stage.canvas.draw(head(end + 0.6 * along, along, 2.0, 2.2), std::nullopt, Fill{palette::ink});
}

/// The spots beside the way in, above the things, and in the corners, where a sign of that width may stand.
std::vector<Spot> sign_spots(const Stage& stage, Spot beside, double width)
{
    const Frame& f = stage.frame;
    const double y = std::clamp(beside.y, f.y + 0.4, std::max(f.y + 0.4, stage.window.y - sign_height - 0.5));
    const double left = f.x + 0.4, right = f.right() - width - 0.4, low = f.bottom() - sign_height - 0.4;
    return {{beside.x + 2.2, y}, {beside.x - 2.2 - width, y}, {left, f.y + 0.4}, {right, f.y + 0.4}, {left, low},
            {right, low}};
}

} // namespace

void paint_way(Stage& stage)
{
    if (!stage.shown.item || stage.bundle.steps.empty()) {
        return;
    }
    const Step& step = stage.bundle.steps[stage.step];
    const Solid& body = stage.bundle.items[step.item].solids.front();
    const Vec3 way{static_cast<double>(step.direction[0]), static_cast<double>(step.direction[1]),
                   static_cast<double>(step.direction[2])};
    const Vec3 back = -1 / norm(way) * way;
    const Vec3 tip = body.pose.center + way_out_of_all(stage.bundle.items[step.item], back) * back;
    const Spot end = stage.on_paper(tip);
    const Spot seen = stage.camera.project(back);
    const double share = std::hypot(seen.x, seen.y);
    if (share < 0.3) {
        cross_in_circle(stage, body);
        stage.way_begins = {stage.window.x + stage.window.width / 2 - 2.2, stage.frame.y};
        return;
    }
    std::vector<Spot> spots{end};
    if (step.via) {
        spots.insert(spots.begin(), stage.on_paper(tip + *step.via));
        if (std::hypot(spots[0].x - end.x, spots[0].y - end.y) < 4.5) {
            spots.erase(spots.begin());
        }
    }
    const Spot along = (1 / share) * seen, first = spots.front();
    const double up = along.y < -0.7 ? first.y - (stage.window.y - 8) : 0;
    const double length = std::min(std::max(11.0, up), room_along({stage.frame.x + 1.2, stage.frame.y + 1.2,
                                                                   stage.frame.width - 2.4, stage.frame.height - 2.4},
                                                                  first, along));
    if (length > 1) {
        spots.insert(spots.begin(), first + length * along);
    }
    if (spots.size() > 1) {
        arrow(stage, spots);
    }
    stage.way_begins = spots.front();
}

void paint_tip(Stage& stage)
{
    const Tip tip = tip_at(stage.bundle, stage.step);
    if (tip == Tip::none) {
        return;
    }
    const Words what = words(tip == Tip::over ? "turned over" : "tipped over", 2.7, palette::ink);
    constexpr double gap = 0.8, bare = 2 * bend + 2;
    const auto hits_things = [&](const Frame& place) {
        const Frame& w = stage.window;
        return place.x < w.right() && w.x < place.right() && place.y < w.bottom() && w.y < place.bottom();
    };
    for (const double width : {bare + gap + what.extent.width, bare}) { // the word is left out where there is no room
        for (const Spot& corner : sign_spots(stage, stage.way_begins, width)) {
            const Frame place{corner.x, corner.y, width, sign_height};
            if (!stage.is_free(place) || hits_things(place)) {
                continue;
            }
            bent_arrow(stage, place, tip);
            if (width > bare) {
                stage.canvas.write(what.text, {place.x + bare + gap, place.y + (sign_height - what.extent.height) / 2},
                                   what.style);
            }
            stage.taken.push_back(place);
            stage.seen.paint(Path::rectangle(place), std::nullopt);
            return;
        }
    }
}

void paint_dimensions(Stage& stage)
{
    if (stage.view == View::slanted) {
        return;
    }
    const Frame& w = stage.window;
    const Sizes sizes = sizes_of(stage);
    const double below = w.bottom() + 2.4 + (stage.view == View::above && stage.options.cut_marks ? cut_mark - 1 : 0);
    if (!sizes.level.empty()) {
        dimension(stage, {w.x, below}, {w.right(), below}, sizes.level);
    }
    const bool sides = stage.is_cut() || std::holds_alternative<Box>(stage.bundle.envelope);
    if (sides && !sizes.upright.empty()) {
        const double right =
            w.right() + 2.4 + (stage.view == View::above && stage.options.cut_marks ? cut_mark - 1 : 0);
        dimension(stage, {right, w.y}, {right, w.bottom()}, sizes.upright);
    }
}

/// Thick ends of the line of the cut, each with an arrow the way that the cutaway is looked at, and an A.
void paint_cut_marks(Stage& stage)
{
    const Spot along = stage.camera.project(stage.cut.camera.right),
               look = stage.camera.project(-1.0 * stage.cut.camera.toward);
    const Spot middle = stage.on_paper(stage.cut.level * stage.cut.camera.toward);
    const Frame& w = stage.window;
    const Spot center{w.x + w.width / 2, w.y + w.height / 2};
    const double shift = (center.x - middle.x) * along.x + (center.y - middle.y) * along.y;
    for (const double sign : {-1.0, 1.0}) {
        const Spot out = sign * along, start = middle + shift * along;
        const Frame round{w.x - 0.8, w.y - 0.8, w.width + 1.6, w.height + 1.6};
        const double edge = room_along(round, start, out);
        const Spot inner = start + edge * out, outer = inner + 2 * out;
        stage.canvas.draw(Path::line(inner, outer), Pen{palette::ink, 0.6});
        const Spot tip = outer + 2.4 * look;
        stage.canvas.draw(Path::line(outer, tip), Pen{palette::ink, 0.25});
        stage.canvas.draw(head(tip, look, 1.5, 1.1), std::nullopt, Fill{palette::ink});
        const Words what = words("A", 2.7, palette::ink);
        const auto beside = [&](double ahead) { // the mark's end, on either side of it
            const Spot at = outer + 1.5 * out + ahead * look;
            return Spot{at.x - what.extent.width / 2, at.y - what.extent.height / 2};
        };
        const Frame lines{std::min({inner.x, outer.x, tip.x}) - 0.6, std::min({inner.y, outer.y, tip.y}) - 0.6,
                          std::abs(tip.x - inner.x) + 1.2, std::abs(tip.y - inner.y) + 1.2};
        put(stage, what, {beside(1.5), beside(-1.5)});
        stage.taken.push_back(lines);
    }
}

} // namespace drawing

void draw_legend(Canvas& canvas, Spot corner)
{
    using namespace drawing;
    const double y = corner.y + 2.4;
    const auto word = [&](const char* text, double x) {
        canvas.write(text, {corner.x + x, corner.y + 0.8}, {.size = 2.7, .color = palette::ink});
    };
    canvas.draw(Path::rectangle({corner.x + 0.4, y - 1.8, 6, 3.6}), Pen{palette::ink, 0.7},
                Fill{palette::placed_now, 1, Hatch{palette::ink, 1.3, 45, 0.15, 1}});
    word("goes in now", 8);
    draw_arrow(canvas, {{corner.x + 29, y}, {corner.x + 38, y}});
    word("its way in", 40);
    draw_feathers(canvas, {corner.x + 60.5, y}, 2);
    word("the same, away from you", 64);
}

void draw_scale_bar(Canvas& canvas, Spot corner, double scale)
{
    using namespace drawing;
    // The longest of the round lengths that takes no more than 30 mm of paper.
    const auto units = report::table_units();
    const double first = units.mm > 1 ? 0.1 : 1; // tenths of inches
    double length = first;
    for (const double decade : {first, 10 * first, 100 * first, 1000 * first}) {
        for (const double step : {1.0, 2.0, 5.0}) {
            length = decade * step * units.mm / scale <= 30 ? decade * step : length;
        }
    }
    const double paper = length * units.mm / scale, y = corner.y + 4.6;
    for (int k = 0; k < 2; ++k) {
        const Frame half{corner.x + 0.2 + k * paper / 2, y, paper / 2, 1.4};
        canvas.draw(Path::rectangle(half), Pen{palette::ink, 0.2}, Fill{k == 0 ? palette::ink : palette::paper});
    }
    const std::string text = fmt::format("{:.10g} {}, 1 : {}", length, units.length, scale);
    canvas.write(text, {corner.x, corner.y}, {.size = 2.7, .color = palette::ink});
}

} // namespace tuckwright
