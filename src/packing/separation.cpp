// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Every pair of bodies, and every body against the walls, has a weight. A pass visits the bodies that overlap
// something, in random order. Each is offered places sampled over all cells that it may enter, and places near its
// present one; the best is improved by coordinate steps, and taken if it is better than the present one. Then all
// bodies are pushed apart at once (relax), each staying in its cell; the first pass does nothing else. After a pass the
// weights of what still overlaps are raised, most for the worst, and the others sink slowly back, so that a
// standstill in one corner moves on. Guarantee: none but that the returned layout is the least overlapping met.
// Source: guided local search, C. Voudouris and E. Tsang, European J. Operational Research 113 (1999); applied to
// packing by overlap, O. Faroe, D. Pisinger and M. Zachariasen, INFORMS J. Computing 15 (2003), and J. Egeblad,
// B. Nielsen and A. Odgaard, European J. Operational Research 183 (2007).
#include "packing/separation.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "packing/leaning.hpp"
#include "packing/relaxation.hpp"

namespace tuckwright::packing {

namespace {
constexpr double infinite = std::numeric_limits<double>::infinity();

/// Free turning, quarter turns only, or none needed.
enum class Turning { none, quarters, free };

Turning turning(const Layout& layout, const Place& place, int body)
{
    const Body& source = layout.scene().stowed(body, place.way);
    if (place.form == Form::leaning) {
        return Turning::free;
    }
    if (place.form == Form::standing && source.plan_is_round) {
        return Turning::none;
    }
    // A vessel that lies is kept square, so that its mouth and lid stay on the grid.
    const bool vessel_lies = place.form != Form::standing && (source.hollow || source.pieces.size() > 1);
    return vessel_lies || !layout.room(place.cell).round ? Turning::quarters : Turning::free;
}

void turn_quarter(Place& place, Random& random)
{
    static constexpr std::array<std::array<double, 2>, 4> quarters{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};
    const auto& q = quarters[random.below(4)];
    place.c = q[0];
    place.s = q[1];
}

void turn_randomly(const Layout& layout, int body, Place& place, Random& random)
{
    place.c = 1;
    place.s = 0;
    const Turning how = turning(layout, place, body);
    if (how == Turning::none) {
        return;
    }
    if (how == Turning::quarters || random.chance(0.5)) {
        turn_quarter(place, random);
        return;
    }
    const auto direction = random.direction();
    place.c = direction[0];
    place.s = direction[1];
}

/// The heights on which something can stand: the floor, tops of what is there, and hanging under the ceiling.
double sample_height(const Layout& layout, int body, const Place& place, const Room& room, Random& random)
{
    const Reach reach = vertical_reach(layout.scene().stowed(body, place.way), place);
    const auto& neighbours = layout.inside(place.cell);
    const double draw = random.unit();
    if (draw < 0.35 || (neighbours.size() < 2 && draw < 0.7)) {
        return reach.below;
    }
    if (draw < 0.75 && !neighbours.empty()) {
        const int other = neighbours[random.below(neighbours.size())];
        if (other != body) {
            const auto& pieces = layout.visible(other);
            const Piece& piece = pieces[random.below(pieces.size())];
            return random.chance(0.8) ? piece.z + piece.half_height + reach.below
                                      : piece.z - piece.half_height - reach.above;
        }
    }
    const double top = room.height - reach.above;
    return draw > 0.93 ? top : random.between(reach.below, std::max(reach.below, top));
}

/// A slant at which it reaches from wall to wall, from floor to ceiling, or something between; in a box often along the
/// diagonal.
void tilt_randomly(const Layout& layout, int body, Place& place, const Room& room, Random& random)
{
    const auto rod = rod_of(layout.scene().stowed(body, place.way));
    if (place.form != Form::leaning || !rod) {
        return;
    }
    if (!room.round && random.chance(0.4)) {
        const double whole = std::hypot(room.half_length, room.half_width), side = random.chance(0.5) ? 1 : -1;
        place.c = room.half_length / whole;
        place.s = side * room.half_width / whole;
    }
    constexpr double least = 0.02, most = 1.55, rounded_angle = 1e-5;
    const double spare = 1e-4 + rounded_angle * rod->along; // mm: slants are rounded to whole numbers in the end
    Room within = room;
    within.radius -= spare, within.half_length -= spare, within.half_width -= spare;
    const double wide = tilt_by_width(*rod, within, place.c, place.s), high = tilt_by_height(*rod, room.height - spare);
    const double draw = random.unit();
    const double tilt = draw < 0.45  ? wide
                        : draw < 0.7 ? high
                                     : random.between(std::min(wide, high), std::max(wide, high));
    place.tilt_c = std::cos(std::clamp(tilt, least, most));
    place.tilt_s = std::sin(std::clamp(tilt, least, most));
}

void sample_plan(const Layout& layout, int body, Place& place, const Room& room, Random& random)
{
    const Body& source = layout.scene().stowed(body, place.way);
    const double reach = plan_reach(source, place);
    const auto& neighbours = layout.inside(place.cell);
    if (place.form == Form::leaning && random.chance(0.6)) {
        return; // in the middle, where it has most room
    }
    if (!neighbours.empty() && random.chance(0.25)) {
        const auto& pieces = layout.visible(neighbours[random.below(neighbours.size())]);
        const Piece& piece = pieces[random.below(pieces.size())];
        const auto direction = random.direction();
        place.x = piece.x + (piece.reach + reach) * direction[0];
        place.y = piece.y + (piece.reach + reach) * direction[1];
        return;
    }
    if (room.round) {
        const double least = place.form == Form::standing && source.plan_is_round ? reach : reach * 0.7;
        const double radius = std::max(0.0, room.radius - least) * (random.chance(0.3) ? 1 : std::sqrt(random.unit()));
        const auto direction = random.direction();
        place.x = radius * direction[0];
        place.y = radius * direction[1];
        return;
    }
    double ex = 0, ey = 0;
    const Place unmoved{place.cell, place.form, 0, 0, 0, place.c, place.s, place.way, place.tilt_c, place.tilt_s};
    for (std::size_t k = 0; k < source.pieces.size(); ++k) {
        const Piece p = piece_at(source, k, unmoved, body);
        const bool disc = p.kind == PieceKind::disc;
        ex = std::max(ex, std::abs(p.x) + (disc ? p.radius : p.a * std::abs(p.c) + p.b * std::abs(p.s)));
        ey = std::max(ey, std::abs(p.y) + (disc ? p.radius : p.a * std::abs(p.s) + p.b * std::abs(p.c)));
    }
    const auto along = [&](double room_half, double half) {
        const double slack = std::max(0.0, room_half - half);
        const double draw = random.unit();
        return draw < 0.25 ? -slack : draw < 0.5 ? slack : random.between(-slack, slack);
    };
    place.x = along(room.half_length, ex);
    place.y = along(room.half_width, ey);
}

} // namespace

double negligible_overlap(const Scene& scene) { return 2e-3 * scene.size; }

std::vector<Door> doors(const Layout& layout, int body)
{
    std::vector<Door> found;
    for (int cell = outermost; cell < static_cast<int>(layout.size()); ++cell) {
        for (int way = 0; way < layout.scene().ways(body); ++way) {
            for (const Form form : layout.scene().stowed(body, way).forms) {
                if (layout.may_enter(body, cell, form, way)) {
                    found.push_back({cell, form, way});
                }
            }
        }
    }
    return found;
}

Place sample_place(const Layout& layout, int body, const Door& door, Random& random)
{
    Place place;
    place.cell = door.cell;
    place.form = door.form;
    place.way = door.way;
    turn_randomly(layout, body, place, random);
    const Room room = layout.room(door.cell);
    tilt_randomly(layout, body, place, room, random);
    sample_plan(layout, body, place, room, random);
    place.z = sample_height(layout, body, place, room, random);
    if (room.tapers()) {
        place.z += rise_to_fit(layout.own_pieces(body, place).front(), room);
    }
    return place;
}

std::optional<Place> least_overlapping(const Layout& layout, int body, const std::vector<Door>& open, int samples,
                                       Random& random)
{
    const Weights even(layout.size());
    double least = infinite;
    std::optional<Place> best;
    for (int k = 0; k < samples && !open.empty() && least > 0; ++k) {
        const Place place = sample_place(layout, body, open[random.below(open.size())], random);
        if (const double cost = layout.cost_at(body, place, even, least); cost < least) {
            least = cost;
            best = place;
        }
    }
    return best;
}

namespace {

Place tilted(const Place& place, double angle)
{
    Place other = place;
    const double tilt = std::clamp(std::atan2(place.tilt_s, place.tilt_c) + angle, 0.0, 1.57);
    other.tilt_c = std::cos(tilt);
    other.tilt_s = std::sin(tilt);
    return other;
}

Place turned(const Place& place, double angle)
{
    Place other = place;
    const double c = std::cos(angle), s = std::sin(angle);
    other.c = place.c * c - place.s * s;
    other.s = place.s * c + place.c * s;
    const double length = std::sqrt(other.c * other.c + other.s * other.s);
    other.c /= length;
    other.s /= length;
    return other;
}

/// Tries one step both ways; keeps the better. Returns whether the place improved.
template <class Move>
bool try_step(const Layout& layout, int body, Place& place, double& cost, const Weights& weights, Move move)
{
    for (const double sign : {1.0, -1.0}) {
        const Place next = move(place, sign);
        const double next_cost = layout.cost_at(body, next, weights, cost);
        if (next_cost < cost) {
            cost = next_cost;
            place = next;
            return true;
        }
    }
    return false;
}

} // namespace

double descend(const Layout& layout, int body, Place& place, const Weights& weights, double step, double finest,
               Random& random)
{
    double cost = layout.cost_at(body, place, weights, infinite);
    const bool turns = turning(layout, place, body) == Turning::free;
    const double size = layout.scene().size;
    int quiet = 0;
    while (cost > 0 && step > finest) {
        const std::size_t axis = random.below(place.form == Form::leaning ? 6 : turns ? 5 : 4);
        bool better = false;
        if (axis == 3) { // a slanting step in plan gets along curved neighbours
            const auto direction = random.direction();
            const double dx = step * direction[0], dy = step * direction[1];
            better = try_step(layout, body, place, cost, weights, [&](Place p, double sign) {
                p.x += sign * dx;
                p.y += sign * dy;
                return p;
            });
        } else if (axis == 5) {
            better = try_step(layout, body, place, cost, weights,
                              [&](const Place& p, double sign) { return tilted(p, sign * step / size); });
        } else if (axis == 4) {
            better = try_step(layout, body, place, cost, weights,
                              [&](const Place& p, double sign) { return turned(p, sign * step / size); });
        } else {
            better = try_step(layout, body, place, cost, weights, [&](Place p, double sign) {
                (axis == 0 ? p.x : axis == 1 ? p.y : p.z) += sign * step;
                return p;
            });
        }
        quiet = better ? 0 : quiet + 1;
        if (better) {
            step *= 1.1;
        } else if (quiet >= 3) {
            step *= 0.5;
            quiet = 0;
        }
    }
    return cost;
}

namespace {

struct Candidate {
    double cost = infinite;
    Place place;
};

/// The best place met.
class Leader {
public:
    void offer(double cost, const Place& place)
    {
        if (cost < kept_.cost) {
            kept_ = {cost, place};
        }
    }
    double enough() const { return kept_.cost; }
    const Candidate& kept() const { return kept_; }

private:
    Candidate kept_;
};

void offer_nearby(const Layout& layout, int body, const Weights& weights, int count, Random& random, Leader& best)
{
    const Place here = layout.place(body);
    for (int k = 0; k < count; ++k) {
        Place place = here;
        const double spread = layout.scene().size * (k % 2 == 0 ? 0.3 : 0.05);
        place.x += random.between(-spread, spread);
        place.y += random.between(-spread, spread);
        if (random.chance(0.5)) {
            place.z += random.between(-spread, spread);
        }
        if (turning(layout, place, body) == Turning::free && random.chance(0.5)) {
            place = turned(place, random.between(-0.3, 0.3));
        }
        best.offer(layout.cost_at(body, place, weights, best.enough()), place);
    }
}

void move_body(Layout& layout, int body, const Weights& weights, int samples, Random& random)
{
    const double present = layout.cost_at(body, layout.place(body), weights, infinite);
    if (present <= 0) {
        return;
    }
    Leader best;
    const std::vector<Door> open = doors(layout, body);
    for (int k = 0; k < samples && !open.empty(); ++k) {
        const Door& door = open[random.below(open.size())];
        const Place place = sample_place(layout, body, door, random);
        best.offer(layout.cost_at(body, place, weights, best.enough()), place);
    }
    offer_nearby(layout, body, weights, samples / 3, random, best);
    Candidate winner{present, layout.place(body)};
    const double size = layout.scene().size;
    const auto improve = [&](Place place, double step, double finest) {
        const double cost = descend(layout, body, place, weights, step, finest, random);
        winner = cost < winner.cost ? Candidate{cost, place} : winner;
    };
    if (best.kept().cost < infinite) {
        improve(best.kept().place, 0.1 * size, 3e-3 * size);
    }
    for (const Place& slanted : {layout.place(body), winner.place}) { // what is pushed apart keeps its slant
        if (slanted.form == Form::leaning && winner.cost > 0) {
            improve(slanted, 0.02 * size, 1e-4 * size);
        }
    }
    if (winner.cost < present) {
        layout.put(body, winner.place);
    }
}

/// Two bodies that overlap, the first before the second, or one body twice: what stands out of its walls.
struct Conflict {
    int first = 0, second = 0;
    double depth = 0;
};

bool is_before(const Conflict& a, const Conflict& b)
{
    return std::pair(a.first, a.second) < std::pair(b.first, b.second);
}

/// What overlaps in a layout, in order.
struct Conflicts {
    explicit Conflicts(const Layout& layout) : of_body(layout.size(), 0.0)
    {
        std::vector<double> depth(layout.size(), 0.0); // of the body at hand with those behind it
        for (int i = 0; i < static_cast<int>(layout.size()); ++i) {
            depth[at(i)] = layout.excess_of(i);
            add(layout, i, depth);
            for (int j = i; j < static_cast<int>(layout.size()); ++j) {
                if (depth[at(j)] > 0) {
                    all.push_back({i, j, depth[at(j)]});
                    depth[at(j)] = 0;
                }
            }
        }
        for (const Conflict& conflict : all) {
            of_body[at(conflict.first)] += conflict.depth;
            if (conflict.second != conflict.first) {
                of_body[at(conflict.second)] += conflict.depth;
            }
            total += conflict.depth;
            worst = std::max(worst, conflict.depth);
        }
    }

    static void add(const Layout& layout, int i, std::vector<double>& depth)
    {
        layout.each_level(i, [&](int cell, int vessel, const std::vector<Piece>& mine) {
            const Bound own = Bound::of(mine);
            for (const int other : layout.inside(cell)) {
                if (other == vessel) {
                    continue;
                }
                if (vessel == i && other > i) {
                    depth[at(other)] += layout.jam_of(layout.visible(i), cell, other);
                }
                const Bound& theirs_all = layout.bound(other);
                if (!own.slants && !theirs_all.slants && own.is_clear_of(theirs_all)) {
                    continue;
                }
                for (const Piece& theirs : layout.visible(other)) {
                    for (const Piece& piece : mine) {
                        if (theirs.owner > i) {
                            depth[at(theirs.owner)] += overlap(piece, theirs);
                        }
                    }
                }
            }
        });
    }

    std::vector<Conflict> all;
    std::vector<double> of_body;
    double total = 0, worst = 0;
};

/// Raises the weights of what overlaps, most for the worst; lets the others that were raised sink towards 1.
void reweigh(Weights& weights, std::vector<Conflict>& raised, const Conflicts& conflicts)
{
    const auto set = [&](const Conflict& pair, double weight) {
        weights.of(pair.first, pair.second) = weights.of(pair.second, pair.first) = weight;
    };
    std::vector<Conflict> next = conflicts.all;
    for (const Conflict& pair : conflicts.all) {
        set(pair, weights.of(pair.first, pair.second) * (1.2 + 0.8 * pair.depth / conflicts.worst));
    }
    for (const Conflict& pair : raised) {
        if (!std::binary_search(conflicts.all.begin(), conflicts.all.end(), pair, is_before)) {
            const double weight = std::max(1.0, weights.of(pair.first, pair.second) * 0.95);
            set(pair, weight);
            if (weight > 1) {
                next.push_back(pair);
            }
        }
    }
    raised = std::move(next);
}

void shuffle(std::vector<int>& order, Random& random)
{
    for (std::size_t k = order.size(); k > 1; --k) {
        std::swap(order[k - 1], order[random.below(k)]);
    }
}

} // namespace

bool separate(Layout& layout, Random& random, const SeparationEffort& effort)
{
    const double none = negligible_overlap(layout.scene());
    const int n = static_cast<int>(layout.size());
    Layout best = layout;
    double least = Conflicts(layout).total;
    int left = effort.passes * 6; // a slow gain is not followed for ever
    for (int strike = 0; strike < effort.strikes && least > none; ++strike) {
        Weights weights(layout.size());
        std::vector<Conflict> raised;
        Conflicts conflicts(layout);
        bool improved = false;
        for (int quiet = 0; quiet < effort.passes && left > 0; ++quiet, --left) {
            std::vector<int> order;
            for (int i = 0; i < n; ++i) {
                if (conflicts.of_body[static_cast<std::size_t>(i)] > 0) {
                    order.push_back(i);
                }
            }
            shuffle(order, random);
            const bool is_first = strike == 0 && left == effort.passes * 6; // often pushing apart is all it takes
            for (std::size_t k = 0; k < order.size() && !is_first; ++k) {
                if (effort.stop && effort.stop()) {
                    layout = best;
                    return false;
                }
                move_body(layout, order[k], weights, effort.samples, random);
            }
            relax(layout, weights, effort.relaxing);
            conflicts = Conflicts(layout);
            if (conflicts.total < least) {
                if (conflicts.total < 0.98 * least) {
                    quiet = -1;
                    improved = true;
                }
                least = conflicts.total;
                best = layout;
            }
            if (least <= none) {
                layout = best;
                return true;
            }
            reweigh(weights, raised, conflicts);
        }
        if (improved && left > 0) {
            strike = -1;
        }
        layout = best;
    }
    return least <= none;
}

} // namespace tuckwright::packing
