// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of the linear program, what it minimises, and its solution. Its rows are in polish_rows.cpp.
#include "packing/polish_step.hpp"

#include <algorithm>
#include <cmath>

namespace tuckwright::packing {

namespace {

void turn(Place& place, double angle)
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

} // namespace

int group_size(const Layout& layout, int body)
{
    int size = 1;
    for (const int child : layout.inside(body)) {
        size += group_size(layout, child);
    }
    return size;
}

PolishStep::PolishStep(const Layout& layout, const PolishOptions& options, double trust)
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

PolishStep::PolishStep(const Layout& layout, const PolishOptions& options, double trust, const CellView& view)
    : layout_(layout), options_(options), trust_(trust), program_(trust), first_(layout.size(), -1),
      turn_(layout.size(), -1)
{
    for (const int body : layout.inside(view.cell)) {
        first_[at(body)] = program_.add_columns(3, -trust, trust);
    }
    slack_ = program_.add_columns(1, 0, 1e6 * trust);
    program_.set_cost(slack_, 1e3);
    add_view(view);
}

void PolishStep::minimise_volume()
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

void PolishStep::minimise_heights()
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

bool PolishStep::solve(Layout& moved)
{
    moved.count_work(12 * program_.rows());
    if (!program_.solve()) {
        return false;
    }
    if (height_ >= 0) {
        Envelope e = moved.envelope();
        (e.round ? e.radius : e.half_length) += program_.value(across_[0]);
        if (!e.round) {
            e.half_width += program_.value(across_[1]);
        }
        e.height += program_.value(height_);
        moved.set_envelope(e);
    }
    for (int body = 0; body < static_cast<int>(moved.size()); ++body) {
        if (first_[at(body)] < 0) {
            continue;
        }
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

double PolishStep::reach(int body) const
{
    return std::max(1.0, plan_reach(layout_.stowed(body), layout_.place(body)));
}

bool PolishStep::turns(int body) const
{
    const Place& place = layout_.place(body);
    const Body& source = layout_.stowed(body);
    if (place.form == Form::leaning) {
        return false;
    }
    const bool vessel = source.hollow.has_value() || source.pieces.size() > 1;
    const bool round = place.form == Form::standing && source.plan_is_round;
    return options_.turning && !vessel && !round && layout_.room(place.cell).round;
}

} // namespace tuckwright::packing
