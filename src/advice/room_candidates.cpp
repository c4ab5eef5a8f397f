// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Cylinders of air between every floor and ceiling, on a grid; in each a small thing, turned several ways, that is
// grown some way; the largest of them are grown on.
#include "advice/room_candidates.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "advice/room_growth.hpp"
#include "advice/room_seeds.hpp"

namespace tuckwright::advice {

namespace {

/// The largest of them, no two alike.
std::vector<Draft> largest(std::vector<Draft> drafts, std::size_t most)
{
    std::stable_sort(drafts.begin(), drafts.end(),
                     [](const Draft& a, const Draft& b) { return a.volume() > b.volume(); });
    std::vector<Draft> kept;
    for (const Draft& draft : drafts) {
        if (kept.size() < most &&
            std::none_of(kept.begin(), kept.end(), [&](const Draft& other) { return alike(draft, other, 0.02); })) {
            kept.push_back(draft);
        }
    }
    return kept;
}

/// Grown to the last, let down, and grown again where that has made room.
void finish(Draft& draft, const Space& space, const Growth& growth)
{
    constexpr int most_rounds = 4;
    constexpr double worth_while = 1e-7;
    for (int round = 0; round < most_rounds; ++round) {
        const double before = draft.log_volume();
        draft = let_down(grown(draft, space, growth), space);
        if (round > 0 && draft.log_volume() < before + worth_while) {
            break;
        }
    }
}

std::vector<Draft> begun(const Space& space, const std::vector<Seed>& seeds, Posing posing, const Amounts& counts)
{
    const double whole = posing == Posing::lying ? std::numbers::pi : std::numbers::pi / 2;
    const int turns = posing == Posing::standing ? 1 : posing == Posing::lying ? counts.turns : counts.turns / 2;
    std::vector<Draft> drafts;
    for (const Seed& seed : seeds) {
        for (int turn = 0; turn < turns; ++turn) {
            Draft draft = draft_in(seed, space, posing, whole * turn / turns);
            if (made_to_fit(draft, space)) {
                drafts.push_back(grown(draft, space, {0.5 * draft.largest_half(), 0.1, 6, false}));
            }
        }
    }
    return drafts;
}

} // namespace

Amounts counts_of(Effort effort)
{
    switch (effort) {
    case Effort::quick: return {120, 10, 4, 6, 3};
    case Effort::normal: return {600, 80, 12, 24, 16};
    case Effort::thorough: return {1600, 200, 16, 60, 40};
    }
    return {};
}

bool alike(const Draft& a, const Draft& b, double share)
{
    const double most = share * std::max(a.largest_half(), b.largest_half());
    bool same = norm(a.center - b.center) < most;
    for (std::size_t k = 0; k < a.sizes(); ++k) {
        same = same && std::abs(a.half[k] - b.half[k]) < most;
    }
    return same;
}

std::vector<Draft> candidates(const Space& space, Posing posing, const Amounts& counts)
{
    std::vector<Draft> drafts = begun(space, seeds_of(space, counts.points, counts.seeds), posing, counts);
    const std::size_t most = std::max(counts.grown, drafts.size() / 4);
    drafts = largest(std::move(drafts), most);
    for (Draft& draft : drafts) {
        draft = grown(draft, space, {0.2 * draft.largest_half(), 0.02, 24, true});
    }
    return largest(std::move(drafts), most);
}

bool complete(Draft& draft, const Space& space)
{
    finish(draft, space, {1, 1e-5, 60, true});
    draft.angle = rounded_angle(draft.angle);
    if (!made_to_fit(draft, space)) {
        return false;
    }
    finish(draft, space, {0.1, 1e-7, 60, false});
    return draft.smallest() >= thinnest_told;
}

} // namespace tuckwright::advice
