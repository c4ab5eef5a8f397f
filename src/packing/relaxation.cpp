// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The pieces that each cell sees are gathered once, with the chain of bodies that carries each. The energy is
// the weighted sum of squared overlaps and excesses; each pushes along the normal of its contact, and down the chain.
// At walls, and for turns, slopes are taken by differences. A limited-memory quasi-Newton method with
// backtracking follows them. What has no slope (company, jams in a narrow opening) is left to the separation.
#include "packing/relaxation.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

#include "packing/cell_view.hpp"
#include "packing/descent.hpp"
#include "packing/near_pairs.hpp"
#include "packing/pile.hpp"

namespace tuckwright::packing {

namespace {

/// Whether a body may be turned freely about its cell's axis, so that turning makes a difference.
bool turns_freely(const Layout& layout, int body)
{
    const Place& place = layout.place(body);
    const Body& source = layout.stowed(body);
    if (place.form == Form::leaning || source.hollow || source.pieces.size() > 1) {
        return false;
    }
    return !(place.form == Form::standing && source.plan_is_round) && layout.room(place.cell).round;
}

using Vector = std::vector<double>;

/// The energy of a layout as a function of the movements of its bodies: three for each body, in its cell's frame, and
/// for some the turn, times the body's reach.
class Energy {
public:
    Energy(const Layout& layout, const Weights& weights, const RelaxOptions& options)
        : weights_(weights), air_(options.air), views_(views(layout, 0.1 * layout.scene().size)),
          turn_(layout.size(), -1)
    {
        walls_.wall_gap = 2 * air_.wall; // of which kept() takes half
        std::size_t columns = 3 * layout.size();
        for (std::size_t body = 0; body < layout.size(); ++body) {
            if (options.turning && turns_freely(layout, static_cast<int>(body))) {
                turn_[body] = static_cast<int>(columns++);
                const int own = static_cast<int>(body);
                reach_.push_back(std::max(1.0, plan_reach(layout.stowed(own), layout.place(own))));
            }
        }
        columns_ = columns;
        first_turn_ = 3 * layout.size();
        for (const CellView& view : views_) {
            for (const Seen& seen : view.seen) {
                now_.push_back(seen.piece);
            }
            near_.emplace_back(std::max(air_.curved, air_.flat), 0.1 * layout.scene().size);
        }
        is_large_ = is_large(layout.scene());
    }

    std::size_t columns() const { return columns_; }
    std::uint64_t measured() const { return measured_; }
    double reach(int column) const { return reach_[static_cast<std::size_t>(column) - first_turn_]; }
    int turn(int body) const { return turn_[at(body)]; }

    /// Energy and gradient once the bodies have moved.
    double operator()(const Vector& moved, Vector& gradient)
    {
        place(moved);
        std::fill(gradient.begin(), gradient.end(), 0.0);
        double sum = 0;
        std::size_t first = 0;
        for (std::size_t cell = 0; cell < views_.size(); ++cell) {
            const CellView& view = views_[cell];
            const std::size_t count = view.seen.size();
            const std::span<const Piece> pieces(now_.data() + first, count);
            near_[cell].follow(pieces);
            for (std::size_t i = 0; i < count; ++i) {
                sum += walls(view, i, pieces[i], gradient);
                for (const int behind : near_[cell].of(i)) {
                    const std::size_t j = at(behind);
                    if (near_[cell].may_touch(pieces[i], pieces[j]) && view.seen[i].vessel != view.seen[j].vessel) {
                        sum += pair(view.seen[i], pieces[i], view.seen[j], pieces[j], gradient);
                    }
                }
            }
            measured_ += is_large_ ? count + near_[cell].pairs() / 16 : count * count / 16;
            first += count;
        }
        return sum;
    }

private:
    void place(const Vector& moved)
    {
        std::size_t k = 0;
        for (const CellView& view : views_) {
            for (const Seen& seen : view.seen) {
                Piece& piece = now_[k++];
                double x = 0, y = 0, z = 0;
                for (const Link& link : seen.chain) {
                    const double* m = &moved[3 * at(link.body)];
                    x += link.c * m[0] - link.s * m[1];
                    y += link.s * m[0] + link.c * m[1];
                    z += m[2];
                }
                piece.x = seen.piece.x + x;
                piece.y = seen.piece.y + y;
                piece.z = seen.piece.z + z;
                const int turning = turn_[at(seen.chain.front().body)];
                if (turning >= 0) {
                    const double angle = moved[static_cast<std::size_t>(turning)] / reach(turning);
                    const double c = std::cos(angle), s = std::sin(angle);
                    piece.c = seen.piece.c * c - seen.piece.s * s;
                    piece.s = seen.piece.s * c + seen.piece.c * s;
                }
            }
        }
    }

    /// Adds the derivative of the energy by a force on a piece.
    void push(const Seen& seen, double fx, double fy, double fz, Vector& gradient) const
    {
        for (const Link& link : seen.chain) {
            double* g = &gradient[3 * at(link.body)];
            g[0] += link.c * fx + link.s * fy;
            g[1] += link.c * fy - link.s * fx;
            g[2] += fz;
        }
    }

    static constexpr double small_turn = 1e-5;

    static Piece turned(const Piece& piece)
    {
        Piece other = piece;
        other.c = piece.c - small_turn * piece.s;
        other.s = piece.s + small_turn * piece.c;
        return other;
    }

    double pair(const Seen& seen_p, const Piece& p, const Seen& seen_q, const Piece& q, Vector& gradient)
    {
        const bool slants = p.kind == PieceKind::leaning || q.kind == PieceKind::leaning;
        measured_ += slants ? 24 : 2;
        const Contact k = contact(p, q);
        const double distance = k.distance - (k.curved ? air_.curved : air_.flat);
        if (distance >= 0) {
            return 0;
        }
        const double weight = weights_.of(p.owner, q.owner), force = -2 * weight * distance;
        push(seen_p, force * k.nx, force * k.ny, force * k.nz, gradient);
        push(seen_q, -force * k.nx, -force * k.ny, -force * k.nz, gradient);
        const int turn_p = turn_[at(seen_p.chain.front().body)], turn_q = turn_[at(seen_q.chain.front().body)];
        if (turn_p >= 0) {
            const double other = contact(turned(p), q).distance;
            gradient[static_cast<std::size_t>(turn_p)] += force * (k.distance - other) / (small_turn * reach(turn_p));
            measured_ += 2;
        }
        if (turn_q >= 0) {
            const double other = contact(p, turned(q)).distance;
            gradient[static_cast<std::size_t>(turn_q)] += force * (k.distance - other) / (small_turn * reach(turn_q));
            measured_ += 2;
        }
        return weight * distance * distance;
    }

    /// What stands out of the walls, all in one sum, with slopes by differences. At a wall that is just touched the
    /// slope is that of going through it, so that whatever one wall pushes in comes off the others: kits in boxes come
    /// out 1 % smaller than with each wall for itself.
    double walls(const CellView& view, std::size_t index, const Piece& p, Vector& gradient)
    {
        const Seen& seen = view.seen[index];
        const Room room = air_.wall > 0 ? kept(view, p, walls_) : view.room;
        const auto depth = [&](const Piece& piece) {
            return excess(piece, room) + (seen.main ? shallow(piece, room) : 0.0);
        };
        ++measured_;
        const double out = depth(p);
        if (out <= 0) {
            return 0;
        }
        const double weight = weights_.wall(p.owner), force = 2 * weight * out;
        constexpr double small = 1e-5;
        std::array<double, 3> slope{};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            Piece other = p;
            (axis == 0 ? other.x : axis == 1 ? other.y : other.z) += small;
            slope[axis] = (depth(other) - out) / small;
        }
        push(seen, force * slope[0], force * slope[1], force * slope[2], gradient);
        const int turning = turn_[at(seen.chain.front().body)];
        if (turning >= 0) {
            gradient[static_cast<std::size_t>(turning)] +=
                force * (depth(turned(p)) - out) / (small_turn * reach(turning));
        }
        return weight * out * out;
    }

    const Weights& weights_;
    Air air_;
    PolishOptions walls_;
    std::vector<CellView> views_;
    std::vector<int> turn_;
    std::vector<double> reach_;
    std::vector<Piece> now_;
    std::vector<NearPairs> near_; // by cell + 1
    bool is_large_ = false;
    std::size_t columns_ = 0, first_turn_ = 0;
    std::uint64_t measured_ = 0;
};

void apply(Layout& layout, const Energy& energy, const Vector& moved)
{
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        Place place = layout.place(body);
        const double* m = &moved[3 * at(body)];
        const int turning = energy.turn(body);
        if (m[0] == 0 && m[1] == 0 && m[2] == 0 && (turning < 0 || moved[static_cast<std::size_t>(turning)] == 0)) {
            continue;
        }
        place.x += m[0];
        place.y += m[1];
        place.z += m[2];
        if (turning >= 0) {
            const double angle = moved[static_cast<std::size_t>(turning)] / energy.reach(turning);
            const double c = std::cos(angle), s = std::sin(angle), x = place.c, y = place.s;
            place.c = x * c - y * s;
            place.s = y * c + x * s;
            const double length = std::hypot(place.c, place.s);
            place.c /= length;
            place.s /= length;
        }
        layout.put(body, place);
    }
}

} // namespace

void relax(Layout& layout, const Weights& weights, int iterations)
{
    RelaxOptions options;
    options.iterations = iterations;
    relax(layout, weights, options);
}

void relax(Layout& layout, const Weights& weights, const RelaxOptions& options)
{
    Energy energy(layout, weights, options);
    const double size = layout.scene().size;
    DescentOptions descent;
    descent.iterations = options.iterations;
    descent.enough = options.enough * size * size;
    descent.longest = 0.2 * size;
    descent.patience = options.patience;
    Vector moved(energy.columns(), 0.0);
    Descent(energy, energy.columns()).run(moved, descent);
    apply(layout, energy, moved);
    layout.count_work(energy.measured());
}

} // namespace tuckwright::packing
