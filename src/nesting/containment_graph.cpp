// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/containment_graph.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "nesting/kit_scene.hpp"
#include "packing/leaning.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::nesting {

using namespace packing;

void ContainmentGraph::add(std::size_t body, std::size_t cell_vertex, unsigned forms)
{
    boost::add_edge(body, cell_vertex, Fit{forms}, graph_);
}

FitTable ContainmentGraph::fit_table() const
{
    const std::size_t rows = bundle();
    FitTable table(rows, std::vector<unsigned>(rows + 1, 0));
    for (auto [edge, end] = boost::edges(graph_); edge != end; ++edge) {
        const std::size_t body = boost::source(*edge, graph_), cell = boost::target(*edge, graph_);
        table[body][cell == bundle() ? 0 : cell + 1] = graph_[*edge].forms;
    }
    return table;
}

namespace {

constexpr double exact_enough = 1e-9; // mm: a fit without any play still fits

/// The middle of a body's outline in plan: of its enclosing circle, or between its sides.
std::array<double, 2> middle_in_plan(const Body& body, const Place& place, bool round)
{
    std::vector<std::array<double, 3>> circles;
    std::array<double, 2> low{1e300, 1e300}, high{-1e300, -1e300};
    for (std::size_t k = 0; k < body.pieces.size(); ++k) {
        const Piece p = piece_at(body, k, place, 0);
        const double ex = piece_support(p, 1, 0, 0) - p.x, ey = piece_support(p, 0, 1, 0) - p.y;
        low = {std::min(low[0], p.x - ex), std::min(low[1], p.y - ey)};
        high = {std::max(high[0], p.x + ex), std::max(high[1], p.y + ey)};
        if (p.kind == PieceKind::disc) {
            circles.push_back({p.x, p.y, p.radius});
            continue;
        }
        for (const double u : {-p.a, p.a}) {
            for (const double v : {-p.b, p.b}) {
                circles.push_back({p.x + u * p.c - v * p.s, p.y + u * p.s + v * p.c, 0});
            }
        }
    }
    if (round) {
        const auto circle = enclosing_circle(circles);
        return {circle[0], circle[1]};
    }
    return {(low[0] + high[0]) / 2, (low[1] + high[1]) / 2};
}

/// Heights at which a body in the middle of a room may come to rest: on the floor, on a tapering wall, or with one of its
/// further pieces on the rim.
std::vector<double> seats(const Body& body, Place place, const Room& room)
{
    std::vector<double> found{place.z};
    double rise = 0;
    for (std::size_t k = 0; k < body.pieces.size(); ++k) {
        const Piece piece = piece_at(body, k, place, 0);
        rise = std::max(rise, rise_to_fit(piece, room));
        if (piece.further && !room.ceiling) {
            found.push_back(place.z + room.height - piece.z + piece.half_height);
        }
    }
    if (rise > 0) {
        found.push_back(place.z + rise);
    }
    return found;
}

/// Excess of a body whose own middle, or that of its outline, is in the middle of a room, square to it, wherever it may
/// come to rest.
double centred_excess(const Body& body, Form form, const Room& room, bool quarter, bool by_outline)
{
    Place place{outermost, form, 0, 0, vertical_reach(body, form).below, quarter ? 0.0 : 1.0, quarter ? 1.0 : 0.0};
    if (by_outline) { // lids and handles shift the middle
        const std::array<double, 2> middle = middle_in_plan(body, place, room.round);
        place.x = -middle[0];
        place.y = -middle[1];
    }
    double least = 1e300;
    for (const double z : seats(body, place, room)) {
        place.z = z;
        double sum = shallow(piece_at(body, 0, place, 0), room);
        for (std::size_t k = 0; k < body.pieces.size(); ++k) {
            sum += excess(piece_at(body, k, place, 0), room);
        }
        least = std::min(least, sum);
    }
    return least;
}

unsigned forms_that_fit(const Body& body, const Room& room)
{
    unsigned forms = 0;
    bool fits_wholly = false; // without leaning, and with nothing that stands out
    for (const Form form : body.forms) {
        if (form == Form::leaning) { // the last: only where that is what makes it fit
            forms |= !fits_wholly && may_lean_in(body, room) ? bit(form) : 0;
            continue;
        }
        Room shut = room;
        shut.ceiling = shut.floor = true;
        fits_wholly = fits_wholly || centred_excess(body, form, shut, false, false) <= exact_enough ||
                      centred_excess(body, form, shut, true, false) <= exact_enough;
        for (const bool quarter : {false, true}) {
            const bool fits = centred_excess(body, form, room, quarter, false) <= exact_enough ||
                              (body.pieces.size() > 1 &&
                               centred_excess(body, form, room, quarter, true) <= exact_enough);
            forms |= fits ? bit(form) : 0;
        }
    }
    return forms;
}

/// The walls of a narrow opening, so high that all of a body lies between them: all of it must pass.
Room passage_of(const Hollow& hollow)
{
    constexpr double endless = 1e9;
    Room room = room_of_neck(hollow);
    room.height = endless;
    room.floor = room.ceiling = true;
    return room;
}

} // namespace

ContainmentGraph containment_graph(const Scene& scene, const Kit& kit)
{
    const std::size_t n = scene.bodies.size() + scene.others.size();
    const auto row = [&](std::size_t k) -> const Body& {
        return k < scene.bodies.size() ? scene.bodies[k] : scene.others[k - scene.bodies.size()];
    };
    std::vector<int> owner(n);
    for (std::size_t k = 0; k < scene.bodies.size(); ++k) {
        for (int way = 0; way < scene.ways(static_cast<int>(k)); ++way) {
            owner[static_cast<std::size_t>(scene.row(static_cast<int>(k), way))] = static_cast<int>(k);
        }
    }
    ContainmentGraph graph(n);
    const EnvelopeLimits limits = envelope_limits(kit);
    const Room outer{kit.bundle.shape == BundleShape::cylinder, limits.radius, limits.half_length, limits.half_width,
                     limits.height, true, true};
    for (std::size_t body = 0; body < n; ++body) {
        for (std::size_t cell = 0; cell < n; ++cell) {
            if (owner[body] == owner[cell] || !row(cell).hollow) {
                continue;
            }
            const Hollow& hollow = *row(cell).hollow;
            unsigned forms = forms_that_fit(row(body), room_of(hollow, true));
            if (hollow.neck) { // it goes in standing as it lies there
                forms &= forms_that_fit(row(body), passage_of(hollow));
            }
            if (forms != 0) {
                graph.add(body, cell, forms);
            }
        }
        const unsigned forms = row(body).held ? 0 : forms_that_fit(row(body), outer);
        if (forms != 0) {
            graph.add(body, graph.bundle(), forms);
        }
    }
    return graph;
}

} // namespace tuckwright::nesting
