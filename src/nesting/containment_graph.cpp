// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/containment_graph.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "nesting/kit_scene.hpp"

namespace tuckwright::nesting {

using namespace packing;

void ContainmentGraph::add(std::size_t body, std::size_t cell_vertex, unsigned forms)
{
    boost::add_edge(body, cell_vertex, Fit{forms}, graph_);
}

FitTable ContainmentGraph::fit_table() const
{
    const std::size_t bodies = bundle();
    FitTable table(bodies, std::vector<unsigned>(bodies + 1, 0));
    for (auto [edge, end] = boost::edges(graph_); edge != end; ++edge) {
        const std::size_t body = boost::source(*edge, graph_), cell = boost::target(*edge, graph_);
        table[body][cell == bundle() ? 0 : cell + 1] = graph_[*edge].forms;
    }
    return table;
}

namespace {

constexpr double exact_enough = 1e-9; // mm: a fit without any play still fits

/// Excess of a body that stands in the middle of a room, square to it, on its floor.
double centred_excess(const Body& body, Form form, const Room& room, bool quarter)
{
    Place place{outermost, form, 0, 0, vertical_reach(body, form).below, quarter ? 0.0 : 1.0, quarter ? 1.0 : 0.0};
    if (form != Form::standing && body.pieces.size() > 1) { // lids shift the middle
        double low = 1e300, high = -1e300;
        for (std::size_t k = 0; k < body.pieces.size(); ++k) {
            const double half = height_of(body.pieces[k].shape) / 2;
            low = std::min(low, body.pieces[k].offset - half);
            high = std::max(high, body.pieces[k].offset + half);
        }
        const double shift = -(low + high) / 2;
        const bool end = form == Form::on_end;
        place.x = shift * (end ? place.c : place.s);
        place.y = shift * (end ? place.s : -place.c);
    }
    double sum = 0;
    for (std::size_t k = 0; k < body.pieces.size(); ++k) {
        sum += excess(piece_at(body, k, place, 0), room);
    }
    return sum;
}

unsigned forms_that_fit(const Body& body, const Room& room)
{
    unsigned forms = 0;
    for (const Form form : body.forms) {
        if (centred_excess(body, form, room, false) <= exact_enough ||
            centred_excess(body, form, room, true) <= exact_enough) {
            forms |= bit(form);
        }
    }
    return forms;
}

} // namespace

ContainmentGraph containment_graph(const Scene& scene, const Kit& kit)
{
    const std::size_t n = scene.bodies.size();
    ContainmentGraph graph(n);
    const EnvelopeLimits limits = envelope_limits(kit);
    const Room outer{kit.bundle.shape == BundleShape::cylinder, limits.radius, limits.half_length, limits.half_width,
                     limits.height, true, true};
    for (std::size_t body = 0; body < n; ++body) {
        for (std::size_t cell = 0; cell < n; ++cell) {
            if (body == cell || !scene.bodies[cell].hollow) {
                continue;
            }
            const Hollow& hollow = *scene.bodies[cell].hollow;
            unsigned forms = forms_that_fit(scene.bodies[body], room_of(hollow, true));
            if (hollow.neck) { // it goes in standing as it lies there
                forms &= forms_that_fit(scene.bodies[body], room_of_neck(hollow));
            }
            if (forms != 0) {
                graph.add(body, cell, forms);
            }
        }
        const unsigned forms = forms_that_fit(scene.bodies[body], outer);
        if (forms != 0) {
            graph.add(body, graph.bundle(), forms);
        }
    }
    return graph;
}

} // namespace tuckwright::nesting
