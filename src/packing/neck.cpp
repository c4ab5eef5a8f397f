// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/neck.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace tuckwright::packing {

namespace {

using Plan = std::array<double, 2>;

constexpr double far_up = 1e4;   ///< mm: higher than anything
constexpr double to_spare = 0.3; ///< mm of air on the way down, so that compaction does not undo what was found
constexpr double still = 0.5;    ///< mm: a way aside shorter than this counts as none

/// The middle of what is seen of the pieces from above, and where that may be under the opening.
struct Seen {
    Plan middle{}, least{}, most{};
};

Seen seen_from_above(const std::vector<Piece>& pieces)
{
    Seen seen{{}, {1e300, 1e300}, {-1e300, -1e300}};
    for (const Piece& piece : pieces) {
        for (std::size_t k = 0; k < 2; ++k) {
            const double x = k == 0 ? 1 : 0, y = 1 - x;
            seen.least[k] = std::min(seen.least[k], -piece_support(piece, -x, -y, 0));
            seen.most[k] = std::max(seen.most[k], piece_support(piece, x, y, 0));
        }
    }
    seen.middle = {(seen.least[0] + seen.most[0]) / 2, (seen.least[1] + seen.most[1]) / 2};
    return seen;
}

/// The nearest place to one that the middle may take under the opening.
class Under {
public:
    Under(const Room& neck, const std::vector<Piece>& pieces, const Seen& seen) : round_(neck.round)
    {
        double reach = 0;
        for (const Piece& p : pieces) {
            const double dx = p.x - seen.middle[0], dy = p.y - seen.middle[1];
            reach = std::max(reach, std::sqrt(dx * dx + dy * dy) + p.reach);
        }
        play_ = round_ ? Plan{std::max(0.0, neck.radius - reach), 0}
                       : Plan{std::max(0.0, neck.half_length - (seen.most[0] - seen.least[0]) / 2),
                              std::max(0.0, neck.half_width - (seen.most[1] - seen.least[1]) / 2)};
    }

    Plan nearest(Plan to) const
    {
        if (round_) {
            const double out = std::hypot(to[0], to[1]), share = out > play_[0] ? play_[0] / out : 1;
            return {share * to[0], share * to[1]};
        }
        return {std::clamp(to[0], -play_[0], play_[0]), std::clamp(to[1], -play_[1], play_[1])};
    }

private:
    bool round_;
    Plan play_{};
};

double overlaps(const std::vector<Piece>& pieces, Plan by, const std::vector<Piece>& others, bool down)
{
    const double more = by[0] * by[0] + by[1] * by[1] > still * still ? to_spare : 0;
    double sum = 0;
    for (Piece p : pieces) {
        p.x += by[0];
        p.y += by[1];
        if (down) {
            p.z += far_up / 2;
            p.half_height += far_up / 2;
            p.radius += more;
            p.a += more;
            p.b += more;
            p.reach += 2 * more;
        }
        for (const Piece& q : others) {
            sum += overlap(p, q);
        }
    }
    return sum;
}

/// How far the first cannot come to its place while the second is there.
double barred(const Room& neck, const std::vector<Piece>& pieces, const std::vector<Piece>& others)
{
    const Seen seen = seen_from_above(pieces), theirs = seen_from_above(others);
    const Under under(neck, pieces, seen);
    const Plan away{seen.middle[0] - theirs.middle[0], seen.middle[1] - theirs.middle[1]};
    const double far = neck.radius + neck.half_length + neck.half_width;
    const double length = std::max(std::hypot(away[0], away[1]), 1e-9);
    double least = 1e300;
    for (const Plan& to : {seen.middle, Plan{far * away[0] / length, far * away[1] / length},
                           Plan{-far * theirs.middle[0], -far * theirs.middle[1]}}) {
        const Plan place = under.nearest(to), by{place[0] - seen.middle[0], place[1] - seen.middle[1]};
        const double down = overlaps(pieces, by, others, true);
        if (down < least) {
            least = std::min(least, down + overlaps(pieces, {by[0] / 2, by[1] / 2}, others, false));
        }
        if (least <= 0) {
            return 0;
        }
    }
    return least;
}

} // namespace

double jam(const Hollow& hollow, const std::vector<Piece>& first, const std::vector<Piece>& second)
{
    const Room neck = room_of_neck(hollow);
    const double one = barred(neck, first, second);
    return one > 0 ? std::min(one, barred(neck, second, first)) : 0;
}

} // namespace tuckwright::packing
