// SPDX-License-Identifier: GPL-3.0-or-later
/// The containment graph: which body fits alone in which cell, and how it is turned there.
#pragma once
#include <boost/graph/adjacency_list.hpp>

#include "packing/scene.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// Forms (a bit set) in which the source body fits in the target's cell.
struct Fit {
    unsigned forms = 0;
};

/// Vertices are the bodies as they are stowed first, their other stowages, and one more, the last, for the bundle; an
/// edge leads from a body to each cell it fits.
class ContainmentGraph {
public:
    using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS, boost::no_property, Fit>;

    explicit ContainmentGraph(std::size_t rows) : graph_(rows + 1) {}
    void add(std::size_t body, std::size_t cell_vertex, unsigned forms);
    const Graph& graph() const { return graph_; }
    std::size_t bundle() const { return boost::num_vertices(graph_) - 1; }
    packing::FitTable fit_table() const;

private:
    Graph graph_;
};

/// Works out the graph. A body fits alone where its outline and, under a shut lid, its height leave no excess, in one
/// of its forms; in the bundle where the kit's limits allow. Complexity: quadratic in the bodies and their
/// stowages.
ContainmentGraph containment_graph(const packing::Scene& scene, const Kit& kit);

} // namespace tuckwright::nesting
