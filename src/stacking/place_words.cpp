// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/place_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stacking/direction.hpp"

namespace tuckwright::stacking {

namespace {

constexpr double at_side = 2.0;      ///< mm from the side of the bundle that still count as against it
constexpr double at_wall = 0.6;      ///< mm beyond the clearance that still count as against the wall
constexpr double plain_wall = 1.1;   ///< mm: more air than this at the wall is told
constexpr double snug_play = 2.5;    ///< mm: with less play than this all round, there is only one place
constexpr double same_air = 2.0;     ///< mm by which two gaps may differ in the middle
constexpr double neighbourly = 15.0; ///< mm of air up to which one speaks of a neighbour
constexpr double close_by = 5.0;     ///< mm: more air than this to the one neighbour is told, for it is not beside it
constexpr double narrow = 3.0;       ///< mm: more air than this to a neighbour needs no word
constexpr double square_within = 3;  ///< degrees

/// Whole tenths of a millimetre, rounded down; a figure that is a tenth up to rounding stays.
double tenths(double mm)
{
    constexpr double rounding = 1e-4;
    return std::floor(mm * 10 + rounding);
}

/// Half hours of a clock seen from above, from 0 to 23, 12 o'clock at the back, for a direction in degrees from x (right).
int half_hours(double degrees)
{
    const long halves = std::lround((90 - degrees) / 15) % 24;
    return static_cast<int>((halves + 24) % 24);
}

/// "4", "half past 4", for 8 and 9 half hours.
std::string hour(int halves)
{
    return (halves % 2 == 0 ? "" : "half past ") + std::to_string((halves / 2 + 11) % 12 + 1);
}

std::string hour_words(double degrees)
{
    const int halves = half_hours(degrees);
    return hour(halves) + (halves % 2 == 0 ? " o'clock" : "");
}

std::string at_hour(double degrees) { return "at " + hour_words(degrees); }

/// Where a thing lies between two sides that face each other.
struct Between {
    enum class Kind { whole, low, high, middle, free } kind = Kind::free;
    std::string words; ///< standing alone
};

struct Pair {
    std::string low, high, way; ///< "left", "right", "length"
};

Between between(double low, double high, double near, const Pair& names, const char* side)
{
    using Kind = Between::Kind;
    if (low <= near && high <= near) {
        return {Kind::whole, "over the whole " + names.way};
    }
    if (low <= near || high <= near) {
        return {low <= near ? Kind::low : Kind::high,
                fmt::format("against the {}{}", low <= near ? names.low : names.high, side)};
    }
    if (std::abs(low - high) < same_air) {
        return {Kind::middle, "in the middle of the " + names.way};
    }
    return {Kind::free, low < high ? fmt::format("{:.0f} mm from the {}", low, names.low)
                                   : fmt::format("{:.0f} mm from the {}", high, names.high)};
}

std::string along_the_sides(const Sides& sides, double near, bool walls)
{
    using Kind = Between::Kind;
    const Between x = between(sides.left, sides.right, near, {"left", "right", "length"}, walls ? " wall" : " side");
    const Between y = between(sides.front, sides.back, near, {"front", "back", "width"}, walls ? " wall" : "");
    const auto at_one = [](const Between& b) { return b.kind == Kind::low || b.kind == Kind::high; };
    if (x.kind == Kind::whole && y.kind == Kind::whole) {
        return "";
    }
    if (at_one(x) && at_one(y)) {
        return fmt::format("in the {} {} corner", x.kind == Kind::low ? "left" : "right",
                           y.kind == Kind::low ? "front" : "back");
    }
    if (x.kind == Kind::middle && y.kind == Kind::middle) {
        return "in the middle";
    }
    const bool y_first = x.kind != Kind::whole && (y.kind == Kind::whole || (at_one(y) && !at_one(x)) ||
                                                   (y.kind == Kind::middle && x.kind == Kind::free));
    return y_first ? y.words + ", " + x.words : x.words + ", " + y.words;
}

/// What has a direction: of a short cylinder that lies its axis, of everything else its long side.
std::string directed(const Surroundings& seen) { return seen.is_axis ? "axis" : "long side"; }

std::string long_side_words(const Surroundings& seen)
{
    const double degrees = *seen.long_side;
    if (degrees <= square_within || degrees >= 180 - square_within) {
        return directed(seen) + " from left to right";
    }
    if (std::abs(degrees - 90) <= square_within) {
        return directed(seen) + " from front to back";
    }
    return directed(seen) +
           (degrees < 90 ? " aslant from left front to right back" : " aslant from left back to right front");
}

std::string side_words(double degrees)
{
    const char* const ways[] = {"right", "back", "left", "front"};
    return std::string("the ") + ways[(std::lround(degrees / 90) + 4) % 4];
}

std::string joined(const std::string& first, const std::string& second, const char* with)
{
    return first + (first.empty() || second.empty() ? "" : with) + second;
}

std::string beside(const Bundle& bundle, const Surroundings& seen, bool tell_air)
{
    if (seen.beside.empty()) {
        return "";
    }
    const Neighbour& first = seen.beside.front();
    const std::string name = spoken_name(bundle, first.item);
    if (seen.beside.size() > 1) {
        return "beside " + name + " and " + spoken_name(bundle, seen.beside[1].item);
    }
    if (first.air >= close_by) {
        return fmt::format("{:.0f} mm from {}", first.air, name);
    }
    if (!tell_air || first.air >= narrow) {
        return "beside " + name;
    }
    return tenths(first.air) < 1 ? "touching " + name : "beside " + name + " with " + air(first.air);
}

std::string in_round_bundle(const Replay& before, const Surroundings& seen)
{
    if (seen.in_middle) {
        const auto& items = before.bundle().items;
        const auto direct =
            std::count_if(items.begin(), items.end(), [](const PlacedItem& it) { return !it.in && !it.closes; });
        return direct < 2 ? "" : "in the middle";
    }
    const Bundle& bundle = before.bundle();
    std::string relation = beside(bundle, seen, false);
    if (!seen.beside.empty() && seen.beside.front().air >= neighbourly) {
        relation = seen.opposite ? "opposite " + spoken_name(bundle, *seen.opposite)
                                 : fmt::format("{:.0f} mm from {}", seen.beside.front().air,
                                               spoken_name(bundle, seen.beside.front().item));
    }
    return joined(fmt::format("{}, {:.0f} mm off the middle", at_hour(seen.bearing), seen.off_axis), relation, ", ");
}

/// Whether its long side is a chord, clearly off the wall in its middle: then its ends are what is at the wall.
bool is_chord(const Bundle& bundle, const Surroundings& seen)
{
    const double near = bundle.clearance + at_wall;
    return seen.span && seen.span->first.air <= near && seen.span->middle_air > near + narrow;
}

bool is_from_wall_to_wall(const Bundle& bundle, const Surroundings& seen)
{
    return is_chord(bundle, seen) && seen.span->second.air <= bundle.clearance + at_wall + same_air;
}

/// "from wall to wall, one end at 1 o'clock, the other at 5 o'clock"; of what does not reach so far only the one end.
std::string chord_words(const Bundle& bundle, const Surroundings& seen)
{
    const std::string first = at_hour(seen.span->first.bearing);
    return is_from_wall_to_wall(bundle, seen)
               ? fmt::format("from wall to wall, one end {}, the other {}", first, at_hour(seen.span->second.bearing))
               : fmt::format("one end against the wall {}", first);
}

std::string in_vessel(const Bundle& bundle, const Surroundings& seen)
{
    const std::string relation = beside(bundle, seen, true);
    const double wall = *seen.wall_air;
    if (is_chord(bundle, seen)) {
        return joined(chord_words(bundle, seen), relation, ", ");
    }
    if (seen.in_middle) {
        const bool around = seen.alone && seen.all_round;
        return "in the middle" + (around          ? "; " + air(wall) + " all round"
                                  : wall < narrow ? "; " + air(wall) + " to the wall"
                                                  : "");
    }
    if (seen.all_round && wall + seen.off_axis < snug_play) {
        return joined("snugly", relation, ", ");
    }
    if (wall <= bundle.clearance + at_wall) {
        const bool plain = wall <= plain_wall;
        const std::string at = joined(plain ? "against the wall" : "", seen.clock ? at_hour(seen.bearing) : "", " ");
        return joined(
            at + (plain ? "" : fmt::format("{}{:.1f} mm from the wall", at.empty() ? "" : ", ", tenths(wall) / 10)),
            relation, seen.clock || !plain ? ", " : " ");
    }
    const std::string at = seen.clock ? at_hour(seen.bearing) : "";
    const std::string from_wall = seen.clock && wall >= narrow ? fmt::format(", {:.0f} mm from the wall", wall) : "";
    return joined(at + from_wall, relation, ", ") + (wall < narrow ? "; " + air(wall) + " to the wall" : "");
}

/// "long side from 2 to 8 o'clock".
std::string long_side_by_clock(const Surroundings& seen)
{
    const int halves = half_hours(*seen.long_side) % 12;
    const bool starts_at_12 = halves < 2;
    const int from = starts_at_12 ? halves + 12 : halves, to = starts_at_12 ? halves : halves + 12;
    return directed(seen) + " from " + hour(from) + " to " + hour(to) + (to % 2 == 0 ? " o'clock" : "");
}

/// Where an open end or a part at the side points.
std::string turn_words(const Surroundings& seen)
{
    const auto way = [&](double degrees) { return seen.clock ? hour_words(degrees) : side_words(degrees); };
    return joined(seen.mouth ? "open end to " + way(*seen.mouth) : "",
                  seen.part ? "the part at its side to " + way(*seen.part) : "", ", ");
}

/// Where one end of what leans is, seen from above.
std::string end_words(const Surroundings& seen, Vec3 end)
{
    constexpr double in_middle = 3; // mm
    const double degrees = std::atan2(end.y, end.x) * 180 / std::numbers::pi;
    if (std::hypot(end.x, end.y) < in_middle) {
        return "in the middle";
    }
    if (seen.clock) {
        return at_hour(degrees);
    }
    const std::string depth = end.y < -in_middle ? "front" : end.y > in_middle ? "back" : "";
    const std::string side = end.x < -in_middle ? "left" : end.x > in_middle ? "right" : "";
    return "at the " + joined(side, depth, " ");
}

/// "foot at 5 o'clock, head at 11 o'clock, 83 mm above the floor, 58 degrees from upright".
std::string leaning_words(const Bundle& bundle, const Surroundings& seen)
{
    const Lean& lean = *seen.lean;
    const std::string words =
        fmt::format("foot {}, head {}, {:.0f} mm above the floor, {:.0f} degrees from upright",
                    end_words(seen, lean.foot), end_words(seen, lean.head), lean.top, lean.degrees);
    return joined(words, beside(bundle, seen, false), ", ");
}

} // namespace

std::string air(double mm) { return tenths(mm) < 1 ? "no air" : fmt::format("{:.1f} mm of air", tenths(mm) / 10); }

std::string spot(const Replay& before, std::size_t item, const Surroundings& seen)
{
    const Bundle& bundle = before.bundle();
    if (seen.lean && posture(bundle, item) == "leaning") {
        return leaning_words(bundle, seen);
    }
    if (seen.sides) {
        const double near = seen.wall_air ? std::max(at_side, bundle.clearance + at_wall) : at_side;
        std::string words = along_the_sides(*seen.sides, near, seen.wall_air.has_value());
        if (seen.long_side && !words.empty() && words.find("the whole") == std::string::npos) {
            words += ", " + long_side_words(seen);
        }
        return joined(words, turn_words(seen), ", ");
    }
    std::string words = seen.wall_air ? in_vessel(bundle, seen) : in_round_bundle(before, seen);
    if (seen.clock && seen.long_side && !seen.mouth && !is_from_wall_to_wall(bundle, seen)) {
        const std::string turn = long_side_by_clock(seen);
        const auto figure = words.find(';'); // the air left comes last
        words = figure == std::string::npos ? joined(words, turn, ", ")
                                            : joined(words.substr(0, figure), turn, ", ") + words.substr(figure);
    }
    return joined(words, turn_words(seen), ", ");
}

std::string hanging_words(const Replay& before, std::size_t item, const Surroundings& seen)
{
    constexpr double all_round = 1, touching = 0.2; // mm off the axis; mm of air
    const Bundle& bundle = before.bundle();
    const PlacedItem& placed = bundle.items[item];
    const PlacedCavity& cavity = bundle.items[placed.in->item].cavities[placed.in->cavity];
    const Vec3 up = upright_of_container(bundle, item);
    const Solid& body = placed.solids.front();
    const Vec3 from = body.pose.center - cavity.pose.center;
    const double along = dot(from, up), off = std::sqrt(std::max(0.0, dot(from, from) - along * along));
    if (off < all_round) {
        return ", as far down as it goes";
    }
    const double lowest = -support(hull_of(body), -1.0 * up) - dot(cavity.pose.center, up);
    const double above = std::max(0.0, lowest + std::get<Cylinder>(cavity.shape).height / 2);
    const std::string wall = "the wall" + (seen.clock ? " " + at_hour(seen.bearing) : "");
    const bool is_jammed = !seen.beside.empty() && seen.beside.front().air < touching;
    const std::string holder = is_jammed ? "between " + wall + " and " + spoken_name(bundle, seen.beside.front().item)
                                         : "by one side of " + wall;
    return fmt::format(", held {}, {:.0f} mm above the bottom", holder, above);
}

std::string way_in_words(const Bundle& bundle, const Step& step)
{
    const auto& [x, y, z] = step.direction;
    if (z != 0) {
        return "in from above at a slant";
    }
    if (std::holds_alternative<Cylinder>(bundle.envelope) || (x != 0 && y != 0)) {
        return "in from the side";
    }
    return y == 0 ? (x > 0 ? "in from the left" : "in from the right")
                  : (y > 0 ? "in from the front" : "in from the back");
}

} // namespace tuckwright::stacking
