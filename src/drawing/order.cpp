// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/order.hpp"

#include <algorithm>
#include <array>
#include <boost/graph/adjacency_list.hpp>
#include <optional>

#include "drawing/shown.hpp"

namespace tuckwright::drawing {

namespace {

constexpr double same_level = 1e-7; ///< cosine below which a plane is seen from its edge
constexpr double overlap = 1e-2;    ///< mm from which two hulls count as one within the other
constexpr double beside = 1e-6;     ///< mm: images that overlap by less than this don't

/// A layer's solid, and how far its image reaches in a number of directions.
struct Body {
    Hull hull;
    std::array<double, 16> reach{};
    double depth = 0;
};

Body body_of(const Solid& solid, const Camera& camera)
{
    Body body{hull_of(solid), {}, camera.depth(solid.pose.center)};
    for (std::size_t k = 0; k < body.reach.size(); ++k) {
        const double a = 2 * std::numbers::pi * static_cast<double>(k) / static_cast<double>(body.reach.size());
        body.reach[k] = support(body.hull, std::cos(a) * camera.right + std::sin(a) * camera.up);
    }
    return body;
}

/// Whether the images may overlap: no more than that, in case of doubt.
bool images_meet(const Body& a, const Body& b)
{
    const std::size_t half = a.reach.size() / 2;
    for (std::size_t k = 0; k < a.reach.size(); ++k) {
        if (a.reach[k] + b.reach[(k + half) % (2 * half)] < beside) {
            return false;
        }
    }
    return true;
}

bool lies_within(const Bundle& bundle, std::size_t item, std::size_t vessel)
{
    for (auto at = bundle.items[item].in; at; at = bundle.items[at->item].in) {
        if (at->item == vessel) {
            return true;
        }
    }
    return false;
}

class Painter {
public:
    Painter(const Bundle& bundle, const Camera& camera) : bundle_(bundle), camera_(camera)
    {
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            for (std::size_t s = 0; s < bundle.items[i].solids.size(); ++s) {
                const bool vessel = s == 0 && is_vessel(bundle, i);
                const Body body = body_of(bundle.items[i].solids[s], camera);
                for (const auto part : vessel ? std::vector{Layer::Part::far, Layer::Part::near}
                                              : std::vector{Layer::Part::whole}) {
                    layers_.push_back({i, s, part});
                    bodies_.push_back(body);
                }
            }
        }
    }

    std::vector<Layer> order() const
    {
        Graph graph(layers_.size());
        for (std::size_t a = 0; a < layers_.size(); ++a) {
            for (std::size_t b = a + 1; b < layers_.size(); ++b) {
                if (const int first = comes_first(a, b); first != 0) {
                    boost::add_edge(first < 0 ? a : b, first < 0 ? b : a, graph);
                }
            }
        }
        return sorted(graph);
    }

private:
    /// An edge from what is hidden to what hides it.
    using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS>;

    /// -1: the first is behind; 1: the second is; 0: neither hides the other.
    int comes_first(std::size_t a, std::size_t b) const
    {
        const Layer &one = layers_[a], &other = layers_[b];
        if (one.item == other.item && one.solid == other.solid) {
            return -1; // far before near
        }
        if (is_round(a, b) || is_round(b, a)) {
            return is_round(a, b) ? 1 : -1;
        }
        if (!images_meet(bodies_[a], bodies_[b])) {
            return 0;
        }
        const Separation apart = separation(bodies_[a].hull, bodies_[b].hull);
        if (apart.distance < -overlap) {
            if (lies_within(bundle_, one.item, other.item) && other.part != Layer::Part::whole) {
                return other.part == Layer::Part::far ? 1 : -1;
            }
            if (lies_within(bundle_, other.item, one.item) && one.part != Layer::Part::whole) {
                return one.part == Layer::Part::far ? -1 : 1;
            }
        }
        const double nearer = dot(apart.normal, camera_.toward);
        return nearer > same_level ? -1 : nearer < -same_level ? 1 : 0;
    }

    /// Whether the first is the edge of a lid that goes round the second: its vessel, or what lies in that.
    bool is_round(std::size_t a, std::size_t b) const
    {
        const Layer &one = layers_[a], &other = layers_[b];
        return skirt_of(bundle_, one.item) == one.solid &&
               (one.item == other.item || lies_within(bundle_, other.item, one.item));
    }

    /// Each after all that it may hide. Of what is left in circles, the farthest goes first.
    std::vector<Layer> sorted(const Graph& graph) const
    {
        std::vector<std::size_t> waiting(layers_.size());
        for (std::size_t k = 0; k < waiting.size(); ++k) {
            waiting[k] = boost::in_degree(k, graph);
        }
        std::vector<bool> done(layers_.size(), false);
        std::vector<Layer> order;
        while (order.size() < layers_.size()) {
            std::optional<std::size_t> next;
            const auto goes_before = [&](std::size_t k, std::size_t other) {
                const bool free = waiting[k] == 0, other_free = waiting[other] == 0;
                return free != other_free ? free : bodies_[k].depth < bodies_[other].depth;
            };
            for (std::size_t k = 0; k < layers_.size(); ++k) {
                if (!done[k] && (!next || goes_before(k, *next))) {
                    next = k;
                }
            }
            done[*next] = true;
            order.push_back(layers_[*next]);
            for (auto [edge, end] = boost::out_edges(*next, graph); edge != end; ++edge) {
                --waiting[boost::target(*edge, graph)];
            }
        }
        return order;
    }

    const Bundle& bundle_;
    const Camera& camera_;
    std::vector<Layer> layers_;
    std::vector<Body> bodies_;
};

} // namespace

std::vector<Layer> painting_order(const Bundle& bundle, const Camera& camera)
{
    return Painter(bundle, camera).order();
}

} // namespace tuckwright::drawing
