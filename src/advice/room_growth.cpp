// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. With the planes that part the thing from its neighbours held still, how far it reaches along their normals is
// linear in its place and sizes: whatever the linear program finds between them is free of overlap, however far it moved.
// Then the planes are looked for anew. Round walls and turns hold to first order only; by what they are missed the thing
// is made smaller again, and where nothing is won, the steps become shorter.
#include "advice/room_growth.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "advice/room_rows.hpp"
#include "packing/linear_program.hpp"

namespace tuckwright::advice {

namespace {

constexpr double kept_size = 1e-6;     ///< mm: what counts as kept
constexpr double thinnest_half = 0.01; ///< mm: half of what a size may shrink to

/// The best small change of a draft, or the draft itself where none is found.
Draft best_step(const Draft& draft, const std::vector<Row>& rows, double most, double turn)
{
    const int sizes = static_cast<int>(draft.sizes());
    packing::LinearProgram program(most);
    program.add_columns(3, -most, most);
    for (int k = 0; k < sizes; ++k) {
        const double half = draft.half[static_cast<std::size_t>(k)];
        const int column = program.add_columns(1, -std::min(most, std::max(0.0, (half - thinnest_half) / 2)), most);
        const double power = draft.posing != Posing::box && k == 0 ? 2 : 1;
        program.set_cost(column, -power * most / half);
    }
    // The turn is counted in mm at the thing's end, so that all columns are alike.
    const double arm = draft.largest_half();
    const int angle = turn > 0 ? program.add_columns(1, -turn * arm, turn * arm) : -1;
    for (const Row& row : rows) {
        program.add(0, -row.place.x);
        program.add(1, -row.place.y);
        program.add(2, -row.place.z);
        for (int k = 0; k < sizes; ++k) {
            program.add(3 + k, -row.size[static_cast<std::size_t>(k)]);
        }
        if (angle >= 0) {
            program.add(angle, -row.angle / arm);
        }
        program.at_least(-std::max(0.0, row.slack));
    }
    if (!program.solve()) {
        return draft;
    }
    Draft next = draft;
    next.center = next.center + Vec3{program.value(0), program.value(1), program.value(2)};
    for (int k = 0; k < sizes; ++k) {
        next.half[static_cast<std::size_t>(k)] += program.value(3 + k);
    }
    next.angle += angle >= 0 ? program.value(angle) / arm : 0;
    return next;
}

/// Smaller on all sides. Nothing of it may be left.
bool shrink(Draft& draft, double by)
{
    for (std::size_t k = 0; k < draft.sizes(); ++k) {
        draft.half[k] -= by;
        if (draft.half[k] < thinnest_half) {
            return false;
        }
    }
    return true;
}

} // namespace

bool keeps_within(const Draft& draft, const Space& space)
{
    return beyond_walls(draft, space) <= kept_size &&
           beyond_contacts(draft, space.frame, contacts_of(draft, space, 0)) <= kept_size;
}

bool made_to_fit(Draft& draft, const Space& space)
{
    constexpr int most_tries = 12;
    for (int k = 0; k < most_tries; ++k) {
        const double over =
            std::max(beyond_walls(draft, space), beyond_contacts(draft, space.frame, contacts_of(draft, space, 0)));
        if (over <= 0) {
            return true;
        }
        if (!shrink(draft, over + kept_size / 10)) {
            return false;
        }
    }
    return keeps_within(draft, space);
}

namespace {

/// One step of at most so many mm, turning or not; nothing where it wins nothing.
std::optional<Draft> step_of(const Draft& draft, const Space& space, const std::vector<Contact>& contacts, double most,
                             bool turns)
{
    constexpr double worth_while = 1e-10;
    const double turn = turns ? most / draft.largest_half() : 0;
    Draft next = best_step(draft, rows_of(draft, space, contacts, turn), most, turn);
    // A thing that has turned has other planes; one that has not keeps to those that it had.
    double over = beyond_walls(next, space);
    if (next.angle != draft.angle) {
        over = std::max(over, beyond_contacts(next, space.frame, contacts_of(next, space, 0)));
    }
    const bool sound = over <= 0 || shrink(next, over);
    const bool won = sound && next.log_volume() > draft.log_volume() + worth_while && keeps_within(next, space);
    return won ? std::optional(next) : std::nullopt;
}

} // namespace

Draft grown(Draft draft, const Space& space, const Growth& growth)
{
    constexpr double longer = 1.8, shorter = 0.35, far = 6, little = 0.1;
    double step = growth.begin;
    for (int round = 0; round < growth.rounds && step > growth.end; ++round) {
        const std::vector<Contact> contacts = contacts_of(draft, space, far * step);
        auto next = step_of(draft, space, contacts, step, false);
        const double won = next ? next->log_volume() - draft.log_volume() : 0;
        // Turns are right to first order only, and a program turns where that wins nothing: it has to win more.
        if (growth.turns && draft.posing != Posing::standing && won < little * step / draft.largest_half()) {
            auto turned = step_of(draft, space, contacts, step, true);
            if (turned && turned->log_volume() - draft.log_volume() > won) {
                next = std::move(turned);
            }
        }
        step = next ? std::min(step * longer, growth.begin) : step * shorter;
        draft = next.value_or(draft);
    }
    return draft;
}

Draft let_down(Draft draft, const Space& space)
{
    constexpr double little = 1e-7;
    constexpr int most_steps = 40;
    for (int k = 0; k < most_steps; ++k) {
        double way = 1e4;
        for (const Row& row : rows_of(draft, space, contacts_of(draft, space, 1e9), 0)) {
            if (const double speed = -row.place.z; speed > 1e-9) {
                way = std::min(way, std::max(0.0, row.slack) / speed);
            }
        }
        Draft next = draft;
        for (next.center.z -= way; way > little && !keeps_within(next, space); way /= 2) {
            next.center.z = draft.center.z - way / 2; // a round wall that lies bends away from its planes
        }
        if (way <= little) {
            break;
        }
        draft = next;
    }
    return draft;
}

} // namespace tuckwright::advice
