// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Around the present layout each pair of pieces that are near one another gets one linear row: along the
// normal of their present contact they stay apart by the gap. With the normal fixed the row is exact for any move
// without turning. Round walls are cut by tangents, turning is linear to first order; both are checked after the step,
// and the trust region shrinks when they err. The linear program minimises the change of the envelope's volume
// (compact) or of the heights (settle), with one elastic variable that pays for what does not hold yet.
#include "packing/polish.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "packing/construct.hpp"
#include "packing/linear_program.hpp"

namespace tuckwright::packing {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// How much more a dimension over its limit weighs than one within.
constexpr double price_over_limit = 20;

/// A body in the chain from a seen piece out to the cell it is seen from, with the turn of its frame.
struct Link {
    int body;
    double c, s;
};

struct Seen {
    int vessel;
    Piece piece;
    bool main; // the first piece of a body in its own cell: the one that must reach into it
    std::vector<Link> chain; // the owner first
};

/// Margin of each_level() that makes every piece seen from every cell further out: without turning, in the last
/// polish, nothing may come to light only when something sinks.
constexpr double everywhere = 1e9;

struct CellView {
    int cell;
    Room room;
    std::vector<Seen> seen;
};

std::vector<CellView> views(const Layout& layout, double margin)
{
    std::vector<CellView> cells(layout.size() + 1);
    for (int cell = outermost; cell < static_cast<int>(layout.size()); ++cell) {
        cells[at(cell + 1)].cell = cell;
        if (cell == outermost || layout.scene().bodies[at(cell)].hollow) {
            cells[at(cell + 1)].room = layout.room(cell);
        }
    }
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        std::vector<Link> chain{{body, 1, 0}};
        layout.each_level(body, [&](int cell, int vessel, const std::vector<Piece>& pieces) {
            if (vessel != body) { // the frame of what is inside the vessel turns with it
                const Place& p = layout.place(vessel);
                for (Link& link : chain) {
                    link = {link.body, p.c * link.c - p.s * link.s, p.s * link.c + p.c * link.s};
                }
                chain.push_back({vessel, 1, 0});
            }
            for (const Piece& piece : pieces) {
                const bool main = vessel == body && &piece == &pieces.front();
                cells[at(cell + 1)].seen.push_back({vessel, piece, main, chain});
            }
        }, margin);
    }
    return cells;
}

double gap_to_round_wall(const CellView& view, const Piece& piece, const PolishOptions& options)
{
    const bool fixed = view.cell != outermost && view.room.round;
    return fixed ? std::clamp(view.room.radius - piece.reach, 0.0, options.wall_gap) : 0;
}

/// The same for box cavities: a vessel that is turned has its walls off the grid.
std::array<double, 2> gaps_to_flat_walls(const CellView& view, const Piece& piece, const PolishOptions& options)
{
    if (view.cell == outermost || view.room.round) {
        return {0, 0};
    }
    const double x = view.room.half_length - (piece_support(piece, 1, 0, 0) - piece.x);
    const double y = view.room.half_width - (piece_support(piece, 0, 1, 0) - piece.y);
    return {std::clamp(x, 0.0, options.wall_gap), std::clamp(y, 0.0, options.wall_gap)};
}

/// The room as the violation sees it: half the gap is given to the program's tolerance.
Room kept(const CellView& view, const Piece& piece, const PolishOptions& options)
{
    Room room = view.room;
    room.radius -= gap_to_round_wall(view, piece, options) / 2;
    const auto [gap_x, gap_y] = gaps_to_flat_walls(view, piece, options);
    room.half_length -= gap_x / 2;
    room.half_width -= gap_y / 2;
    return room;
}

/// A body and all that it holds: so many sink when it sinks.
int group_size(const Layout& layout, int body)
{
    int size = 1;
    for (const int child : layout.inside(body)) {
        size += group_size(layout, child);
    }
    return size;
}

/// The linear program around a layout.
class Step {
public:
    Step(const Layout& layout, const PolishOptions& options, double trust)
        : layout_(layout), options_(options), trust_(trust), program_(trust)
    {
        for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
            first_.push_back(program_.add_columns(3, -trust, trust));
            turn_.push_back(turns(body) ? program_.add_columns(1, -trust / reach(body), trust / reach(body)) : -1);
        }
        const Envelope& e = layout.envelope();
        const EnvelopeLimits& l = options.limits;
        const auto size = [&](double now, double limit) {
            return program_.add_columns(1, -trust, std::clamp(limit - now, 0.0, trust));
        };
        if (e.round) {
            across_[0] = size(e.radius, l.radius);
        } else {
            across_[0] = size(e.half_length, l.half_length);
            across_[1] = size(e.half_width, l.half_width);
        }
        height_ = size(e.height, l.height);
        slack_ = program_.add_columns(1, 0, 1e6 * trust);
        program_.set_cost(slack_, 1e3);
        for (const CellView& view : views(layout, options.turning ? 2 * trust : everywhere)) {
            add_view(view);
        }
    }

    void minimise_volume()
    {
        const Envelope& e = layout_.envelope();
        const EnvelopeLimits& l = options_.limits;
        const auto cost = [&](double now, double limit) {
            return scale() / now * (now > limit ? 1 + price_over_limit : 1);
        };
        if (e.round) {
            program_.set_cost(across_[0], 2 * cost(e.radius, l.radius));
        } else {
            program_.set_cost(across_[0], cost(e.half_length, l.half_length));
            program_.set_cost(across_[1], cost(e.half_width, l.half_width));
        }
        program_.set_cost(height_, cost(e.height, l.height));
    }

    void minimise_heights()
    {
        for (const int column : {across_[0], across_[1], height_}) {
            if (column >= 0) {
                program_.fix(column, 0);
            }
        }
        for (int body = 0; body < static_cast<int>(layout_.size()); ++body) {
            const Vec3 up = up_in_cell(layout_, layout_.place(body).cell);
            const double held = group_size(layout_, body);
            int column = first_[at(body)];
            for (const double part : {up.x, up.y, up.z}) { // straight down only: walls are no curves to that
                program_.set_cost(column, held * part);
                if (std::abs(part) < 1e-9) {
                    program_.fix(column, 0);
                }
                ++column;
            }
        }
    }

    /// Solves and applies the step to a copy.
    bool solve(Layout& moved)
    {
        moved.count_work(12 * program_.rows());
        if (!program_.solve()) {
            return false;
        }
        Envelope e = moved.envelope();
        (e.round ? e.radius : e.half_length) += program_.value(across_[0]);
        if (!e.round) {
            e.half_width += program_.value(across_[1]);
        }
        e.height += program_.value(height_);
        moved.set_envelope(e);
        for (int body = 0; body < static_cast<int>(moved.size()); ++body) {
            Place place = moved.place(body);
            place.x += program_.value(first_[at(body)]);
            place.y += program_.value(first_[at(body)] + 1);
            place.z += program_.value(first_[at(body)] + 2);
            if (turn_[at(body)] >= 0) {
                turn(place, program_.value(turn_[at(body)]));
            }
            moved.put(body, place);
        }
        return true;
    }

private:
    static void turn(Place& place, double angle)
    {
        if (angle == 0) {
            return;
        }
        const double c = std::cos(angle), s = std::sin(angle), x = place.c, y = place.s;
        place.c = x * c - y * s;
        place.s = y * c + x * s;
        const double length = std::hypot(place.c, place.s);
        place.c /= length;
        place.s /= length;
    }

    double scale() const { return layout_.scene().size; }
    double reach(int body) const
    {
        return std::max(1.0, plan_reach(layout_.scene().bodies[at(body)], layout_.place(body).form));
    }

    bool turns(int body) const
    {
        const Place& place = layout_.place(body);
        const Body& source = layout_.scene().bodies[at(body)];
        const bool vessel = source.hollow.has_value() || source.pieces.size() > 1;
        const bool round = place.form == Form::standing && source.plan_is_round;
        return options_.turning && !vessel && !round && layout_.room(place.cell).round;
    }

    /// Adds n . (movement of the seen piece) with a factor, to the row in the making; `arm` is the offset from the
    /// piece's centre to the point that carries the row, for turning.
    void add_motion(const Seen& seen, double factor, double nx, double ny, double nz, double ax, double ay)
    {
        for (const Link& link : seen.chain) {
            const int column = first_[at(link.body)];
            program_.add(column, factor * (nx * link.c + ny * link.s));
            program_.add(column + 1, factor * (ny * link.c - nx * link.s));
            program_.add(column + 2, factor * nz);
        }
        const int turning = turn_[at(seen.chain.front().body)];
        if (turning >= 0) {
            program_.add(turning, factor * (ny * ax - nx * ay));
        }
    }

    /// Corner offsets of a piece that are farthest along a direction in plan, up to the given nearness.
    std::vector<std::array<double, 2>> arms(const Seen& seen, double nx, double ny) const
    {
        const Piece& p = seen.piece;
        if (turn_[at(seen.chain.front().body)] < 0 || p.kind == PieceKind::disc) {
            return {{0, 0}};
        }
        std::vector<std::array<double, 2>> found;
        const double b = p.kind == PieceKind::lying ? 0 : p.b;
        double most = -1e300;
        for (const double u : {-p.a, p.a}) {
            for (const double v : {-b, b}) {
                most = std::max(most, nx * (u * p.c - v * p.s) + ny * (u * p.s + v * p.c));
            }
        }
        for (const double u : {-p.a, p.a}) {
            for (const double v : {-b, b}) {
                const double ax = u * p.c - v * p.s, ay = u * p.s + v * p.c;
                if (nx * ax + ny * ay > most - 2 * trust_) {
                    found.push_back({ax, ay});
                }
                if (b == 0) {
                    break;
                }
            }
        }
        return found;
    }

    void add_view(const CellView& view)
    {
        for (std::size_t i = 0; i < view.seen.size(); ++i) {
            add_walls(view, view.seen[i]);
            for (std::size_t j = i + 1; j < view.seen.size(); ++j) {
                if (view.seen[i].vessel != view.seen[j].vessel) {
                    add_pair(view.seen[i], view.seen[j]);
                }
            }
        }
    }

    void add_pair(const Seen& p, const Seen& q)
    {
        const double far = 4 * trust_;
        const double dx = q.piece.x - p.piece.x, dy = q.piece.y - p.piece.y, near = p.piece.reach + q.piece.reach + far;
        if (std::abs(p.piece.z - q.piece.z) > p.piece.half_height + q.piece.half_height + far ||
            dx * dx + dy * dy > near * near) {
            return;
        }
        const Contact k = contact(p.piece, q.piece);
        if (k.distance > far) {
            return;
        }
        const double gap = k.curved ? options_.curved_gap : options_.flat_gap;
        for (const auto& a : arms(p, k.nx, k.ny)) {
            for (const auto& b : arms(q, -k.nx, -k.ny)) {
                // Arms that are not the farthest reach less far by their own lag.
                const double lag = piece_lag(p, a, k.nx, k.ny) + piece_lag(q, b, -k.nx, -k.ny);
                add_motion(p, -1, k.nx, k.ny, k.nz, a[0], a[1]);
                add_motion(q, 1, k.nx, k.ny, k.nz, b[0], b[1]);
                program_.add(slack_, 1);
                program_.at_least(gap - k.distance - lag);
            }
        }
    }

    double piece_lag(const Seen& seen, const std::array<double, 2>& arm, double nx, double ny) const
    {
        const Piece& p = seen.piece;
        if (turn_[at(seen.chain.front().body)] < 0 || p.kind == PieceKind::disc) {
            return 0;
        }
        const double along = std::abs(nx * p.c + ny * p.s) * p.a;
        const double cross = p.kind == PieceKind::lying ? 0 : std::abs(ny * p.c - nx * p.s) * p.b;
        return along + cross - (nx * arm[0] + ny * arm[1]);
    }

    void add_walls(const CellView& view, const Seen& seen)
    {
        const Room& room = view.room;
        const bool outer = view.cell == outermost;
        const Piece& p = seen.piece;
        const double least = std::min(least_depth, p.half_height);
        if (room.floor) {
            add_wall(seen, 0, 0, -1, 0, 0, p.z - p.half_height, -1);
        } else if (seen.main) {
            add_wall(seen, 0, 0, -1, 0, 0, p.z + p.half_height - least, -1);
        }
        if (room.ceiling) {
            add_wall(seen, 0, 0, 1, 0, 0, room.height - p.z - p.half_height, outer ? height_ : -1);
        } else if (seen.main) {
            add_wall(seen, 0, 0, 1, 0, 0, room.height - p.z + p.half_height - least, -1);
        }
        if (room.round) {
            add_round_wall(seen, room, outer, gap_to_round_wall(view, p, options_));
        } else {
            const auto [gap_x, gap_y] = gaps_to_flat_walls(view, p, options_);
            for (const double sign : {1.0, -1.0}) {
                add_flat_wall(seen, sign, 0, room.half_length - gap_x, outer ? across_[0] : -1);
                add_flat_wall(seen, 0, sign, room.half_width - gap_y, outer ? across_[1] : -1);
            }
        }
    }

    /// Row: movement along n at most `room_left` (plus the wall's own movement).
    void add_wall(const Seen& seen, double nx, double ny, double nz, double ax, double ay, double room_left, int wall)
    {
        if (room_left > 4 * trust_) {
            return;
        }
        add_motion(seen, -1, nx, ny, nz, ax, ay);
        program_.add(slack_, 1);
        if (wall >= 0) {
            program_.add(wall, 1);
        }
        program_.at_least(-room_left);
    }

    void add_flat_wall(const Seen& seen, double nx, double ny, double half, int wall)
    {
        const double left = half - piece_support(seen.piece, nx, ny, 0);
        for (const auto& arm : arms(seen, nx, ny)) {
            add_wall(seen, nx, ny, 0, arm[0], arm[1], left + piece_lag(seen, arm, nx, ny), wall);
        }
    }

    void add_round_wall(const Seen& seen, const Room& room, bool outer, double keep)
    {
        const Piece& p = seen.piece;
        const int wall = outer ? across_[0] : -1;
        if (p.kind == PieceKind::disc) {
            const double off = std::hypot(p.x, p.y);
            const double left = room.radius - keep - p.radius;
            if (off > 0.25 * left && off > 1e-9) {
                for (const double lean : {0.0, 0.3, -0.3}) { // side cuts keep long steps from leaving the circle
                    const double c = std::cos(lean), s = std::sin(lean);
                    const double ux = (p.x * c - p.y * s) / off, uy = (p.y * c + p.x * s) / off;
                    add_wall(seen, ux, uy, 0, 0, 0, left - (ux * p.x + uy * p.y), wall);
                }
            } else {
                for (int k = 0; k < 12; ++k) {
                    const double ux = std::cos(k * 0.5235987755982988), uy = std::sin(k * 0.5235987755982988);
                    add_wall(seen, ux, uy, 0, 0, 0, left - (ux * p.x + uy * p.y), wall);
                }
            }
            return;
        }
        for (const double u : {-p.a, p.a}) {
            for (const double v : {-p.b, p.b}) {
                const double ax = u * p.c - v * p.s, ay = u * p.s + v * p.c;
                const double qx = p.x + ax, qy = p.y + ay, far = std::hypot(qx, qy);
                if (far > 1e-9) {
                    add_wall(seen, qx / far, qy / far, 0, ax, ay, room.radius - keep - far, wall);
                }
            }
        }
    }

    const Layout& layout_;
    const PolishOptions& options_;
    double trust_;
    LinearProgram program_;
    std::vector<int> first_, turn_;
    int across_[2] = {-1, -1};
    int height_ = -1, slack_ = -1;
};

double heights(const Layout& layout)
{
    double sum = 0;
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        const Place& p = layout.place(body);
        const Vec3 up = up_in_cell(layout, p.cell);
        sum += group_size(layout, body) * (up.x * p.x + up.y * p.y + up.z * p.z);
    }
    return sum;
}

/// Where a descent by linear programs stands.
struct Standing {
    Layout layout;
    double violation, value;
};

/// mm: small against the grid, so that rounding to it finds the meant numbers.
constexpr double small_violation = 1e-10;

/// Steps while the aim falls, weighing what is violated against it at a price for each `size` of it.
template <class Aim, class Prepare>
void follow(Standing& now, const PolishOptions& options, int iterations, double trust, double price, bool wrap, Aim aim,
            Prepare prepare)
{
    const double size = now.layout.scene().size;
    for (int k = 0; k < iterations && trust > 1e-7 * size; ++k) {
        Step step(now.layout, options, trust);
        prepare(step);
        Standing next = now;
        if (!step.solve(next.layout)) {
            return;
        }
        if (wrap) {
            tighten(next.layout); // makes up for the curvature that the cuts of the outermost wall do not see
        }
        next.violation = worst_violation(next.layout, options);
        next.value = aim(next.layout);
        const double gain = now.value - next.value + price / size * (std::max(now.violation, small_violation) -
                                                              std::max(next.violation, small_violation));
        if (gain <= 1e-12) {
            trust *= 0.25;
            continue;
        }
        now = next;
        if (gain < 1e-8 && now.violation <= small_violation) {
            return;
        }
        trust = std::min(trust * 1.5, 0.3 * size);
    }
}

/// First with long steps, then without turning and no longer than what is violated asks for: curvature is next to
/// nothing then, and every row as good as exact.
template <class Aim, class Prepare>
bool descend_by_programs(Layout& layout, const PolishOptions& options, double trust, bool wrap, Aim aim, Prepare prepare)
{
    Standing now{layout, worst_violation(layout, options), aim(layout)};
    follow(now, options, options.iterations, trust, options.turning ? 3 : 30, wrap, aim, prepare);
    PolishOptions still = options;
    still.turning = false;
    for (int k = 0; k < 16 && now.violation > small_violation; ++k) {
        follow(now, still, 2, std::max(4 * now.violation, 1e-6 * layout.scene().size), 1e5, wrap, aim,
               prepare);
    }
    if (now.violation > 200 * small_violation) {
        return false;
    }
    layout = now.layout;
    return true;
}

} // namespace

Vec3 up_in_cell(const Layout& layout, int cell)
{
    if (cell == outermost) {
        return {0, 0, 1};
    }
    const Place& p = layout.place(cell);
    const Vec3 outer = up_in_cell(layout, p.cell);
    const double x = outer.x * p.c + outer.y * p.s, y = outer.y * p.c - outer.x * p.s, z = outer.z;
    switch (p.form) {
    case Form::standing: return {x, y, z};
    case Form::on_end: return {-z, y, x};  // own x points down, own z along x
    case Form::on_side: return {x, z, -y}; // own y points up, own z along -y
    }
    return {x, y, z};
}

double worst_violation(const Layout& layout, const PolishOptions& options)
{
    double worst = 0;
    for (const CellView& view : views(layout, options.turning ? 0 : everywhere)) {
        for (std::size_t i = 0; i < view.seen.size(); ++i) {
            const Seen& p = view.seen[i];
            worst = std::max(worst, excess(p.piece, kept(view, p.piece, options)));
            worst = std::max(worst, p.main ? shallow(p.piece, view.room) : 0);
            for (std::size_t j = i + 1; j < view.seen.size(); ++j) {
                const Seen& q = view.seen[j];
                if (p.vessel == q.vessel ||
                    std::abs(p.piece.z - q.piece.z) > p.piece.half_height + q.piece.half_height + options.curved_gap) {
                    continue;
                }
                const double reach = p.piece.reach + q.piece.reach + options.curved_gap;
                const double dx = p.piece.x - q.piece.x, dy = p.piece.y - q.piece.y;
                if (dx * dx + dy * dy < reach * reach) {
                    const Contact k = contact(p.piece, q.piece);
                    worst = std::max(worst, (k.curved ? options.curved_gap : options.flat_gap) - k.distance);
                }
            }
        }
    }
    return worst;
}

double burden(const Envelope& e, const EnvelopeLimits& l)
{
    const auto over = [](double now, double limit) { return price_over_limit * std::max(0.0, std::log(now / limit)); };
    const double across = e.round ? 2 * over(e.radius, l.radius)
                                  : over(e.half_length, l.half_length) + over(e.half_width, l.half_width);
    return std::log(volume(e)) + across + over(e.height, l.height);
}

bool compact(Layout& layout, const PolishOptions& options)
{
    const auto aim = [&](const Layout& l) { return burden(l.envelope(), options.limits); };
    const auto prepare = [](Step& step) { step.minimise_volume(); };
    const double trust = 0.05 * layout.scene().size;
    if (descend_by_programs(layout, options, trust, true, aim, prepare)) {
        return true;
    }
    PolishOptions still = options; // turning may have led it into a jam
    still.turning = false;
    return options.turning && descend_by_programs(layout, still, trust, true, aim, prepare);
}

bool settle(Layout& layout, const PolishOptions& options)
{
    PolishOptions still = options; // level gaps can't be mended by going down, so a hair less is asked of them
    still.turning = false;
    still.wall_gap *= 0.95;
    still.curved_gap *= 1 - 1e-5;
    return descend_by_programs(
        layout, still, 0.3 * layout.scene().size, false,
        [](const Layout& l) { return heights(l) / l.scene().size; }, [](Step& step) { step.minimise_heights(); });
}

} // namespace tuckwright::packing
