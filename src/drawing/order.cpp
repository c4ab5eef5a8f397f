// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/order.hpp"

#include <algorithm>
#include <array>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/strong_components.hpp>
#include <map>
#include <optional>

#include "drawing/faces.hpp"
#include "drawing/polygons.hpp"
#include "drawing/section.hpp"
#include "drawing/seen_cells.hpp"
#include "drawing/shown.hpp"

namespace tuckwright::drawing {

namespace {

constexpr double same_level = 1e-7; ///< cosine below which a plane is seen from its edge
constexpr double overlap = 1e-2;    ///< mm from which two hulls count as one within the other
constexpr double beside = 1e-6;     ///< mm: images that overlap by less than this don't
constexpr double covered = 1e-2;    ///< mm^2 of an image from which it counts as hidden

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
    Painter(const Bundle& bundle, const Camera& camera, const std::vector<bool>& there)
        : bundle_(bundle), camera_(camera)
    {
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            for (std::size_t s = 0; s < bundle.items[i].solids.size(); ++s) {
                if (!there[owner_of(bundle, i, s)]) {
                    continue;
                }
                const bool vessel = s == 0 && is_vessel(bundle, i);
                const Body body = body_of(bundle.items[i].solids[s], camera);
                for (const auto part :
                     vessel ? std::vector{Layer::Part::far, Layer::Part::near} : std::vector{Layer::Part::whole}) {
                    layers_.push_back({i, s, part});
                    is_skirt_.push_back(owner_of(bundle, i, s) != i);
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
        const auto circle = circles(graph);
        boost::remove_edge_if(
            [&](const Graph::edge_descriptor& edge) {
                const std::size_t a = boost::source(edge, graph), b = boost::target(edge, graph);
                return circle[a] == circle[b] && !holds(a, b) && common_image(a, b) < covered;
            },
            graph);
        return sorted(graph, circles(graph));
    }

private:
    /// An edge from what is hidden to what hides it.
    using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS>;

    /// For each layer the number of its circle; of one that is in none, a number of its own.
    static std::vector<std::size_t> circles(const Graph& graph)
    {
        std::vector<std::size_t> number(boost::num_vertices(graph));
        boost::strong_components(
            graph, boost::make_iterator_property_map(number.begin(), boost::get(boost::vertex_index, graph)));
        return number;
    }

    using Image = std::vector<std::vector<Spot>>;

    /// Outlines of what a layer paints: more than it may be for the far side of a vessel.
    Image new_image(std::size_t k) const
    {
        const Solid& solid = bundle_.items[layers_[k].item].solids[layers_[k].solid];
        if (layers_[k].part != Layer::Part::near) {
            return {outline_behind(solid, camera_, std::nullopt)};
        }
        Image image;
        for (const Face& face : front_faces(solid, camera_, false, false)) {
            const auto outlines = flattened(face.area);
            image.insert(image.end(), outlines.begin(), outlines.end());
        }
        return image;
    }

    /// The same, worked out once.
    const Image& image_of(std::size_t k) const
    {
        const auto found = images_.find(k);
        return found != images_.end() ? found->second : images_.emplace(k, new_image(k)).first->second;
    }

    /// Whether one is a side of a vessel and the other its other side, or lies within.
    bool holds(std::size_t a, std::size_t b) const
    {
        const Layer &one = layers_[a], &other = layers_[b];
        return (one.item == other.item && one.solid == other.solid) ||
               (one.part != Layer::Part::whole && lies_within(bundle_, other.item, one.item)) ||
               (other.part != Layer::Part::whole && lies_within(bundle_, one.item, other.item));
    }

    /// mm^2 that the images have in common.
    double common_image(std::size_t a, std::size_t b) const
    {
        double area = 0;
        for (const auto& x : image_of(a)) {
            for (const auto& y : image_of(b)) {
                area += common_area(x, y);
            }
        }
        return area;
    }

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
        } else if (is_beyond_mouth(a, b) || is_beyond_mouth(b, a)) {
            return 0;
        }
        const double nearer = dot(apart.normal, camera_.toward);
        return nearer > same_level ? -1 : nearer < -same_level ? 1 : 0;
    }

    /// Whether the first is the near side of a vessel, and the second, which the vessel holds by way of another that stands
    /// out, lies past its mouth where that side hides nothing of it and nor does it hide that side. The vessel between them
    /// asks for the other order.
    bool is_beyond_mouth(std::size_t a, std::size_t b) const
    {
        return layers_[a].part == Layer::Part::near && lies_within(bundle_, layers_[b].item, layers_[a].item) &&
               common_image(a, b) < covered;
    }

    /// Whether the first is the edge of a lid that goes round the second: its vessel, or what lies in that.
    bool is_round(std::size_t a, std::size_t b) const
    {
        const Layer &one = layers_[a], &other = layers_[b];
        return is_skirt_[a] &&
               (one.item == other.item || lies_within(bundle_, other.item, one.item));
    }

    /// Each after all that it may hide, the farthest first; where only circles are left, the one that has least of it
    /// painted over it.
    std::vector<Layer> sorted(const Graph& graph, const std::vector<std::size_t>& circle) const
    {
        std::vector<bool> done(layers_.size(), false);
        const auto held_up = [&](std::size_t k, bool by_all) {
            const auto [edge, end] = boost::in_edges(k, graph);
            return std::any_of(edge, end, [&](const Graph::edge_descriptor& e) {
                const std::size_t before = boost::source(e, graph);
                return !done[before] && (by_all || circle[before] != circle[k]);
            });
        };
        const auto circle_is_held_up = [&](std::size_t k) {
            for (std::size_t other = 0; other < layers_.size(); ++other) {
                if (!done[other] && circle[other] == circle[k] && held_up(other, false)) {
                    return true;
                }
            }
            return false;
        };
        // Far side, contents, near side: that order is kept even in a circle.
        const auto is_held_by_vessel = [&](std::size_t k) {
            const auto [edge, end] = boost::in_edges(k, graph);
            return std::any_of(edge, end, [&](const Graph::edge_descriptor& e) {
                const std::size_t before = boost::source(e, graph);
                return !done[before] && holds(before, k);
            });
        };
        std::vector<Layer> order;
        while (order.size() < layers_.size()) {
            auto next = least([&](std::size_t k) { return !done[k] && !held_up(k, true); },
                              [&](std::size_t k) { return bodies_[k].depth; });
            if (!next) {
                next = least([&](std::size_t k) { return !done[k] && !circle_is_held_up(k) && !is_held_by_vessel(k); },
                             [&](std::size_t k) { return lost_by(k, graph, done); });
            }
            done[*next] = true;
            order.push_back(layers_[*next]);
        }
        return order;
    }

    /// mm^2 of a layer that would be painted over by what it hides, if it came now.
    double lost_by(std::size_t k, const Graph& graph, const std::vector<bool>& done) const
    {
        double area = 0;
        for (auto [edge, end] = boost::in_edges(k, graph); edge != end; ++edge) {
            const std::size_t before = boost::source(*edge, graph);
            area += done[before] ? 0 : common_image(k, before);
        }
        return area;
    }

    /// Of the layers that may, the first with the least measure.
    template <class May, class Measure> std::optional<std::size_t> least(const May& may, const Measure& measure) const
    {
        std::optional<std::size_t> found;
        double best = 0;
        for (std::size_t k = 0; k < layers_.size(); ++k) {
            if (!may(k)) {
                continue;
            }
            if (const double value = measure(k); !found || value < best) {
                found = k;
                best = value;
            }
        }
        return found;
    }

    const Bundle& bundle_;
    const Camera& camera_;
    std::vector<Layer> layers_;
    mutable std::map<std::size_t, Image> images_; ///< of layers in circles, as far as they were asked for
    std::vector<bool> is_skirt_; ///< the edge of a shut lid
    std::vector<Body> bodies_;
};

} // namespace

std::vector<Layer> painting_order(const Bundle& bundle, const Camera& camera, const std::vector<bool>& there)
{
    return Painter(bundle, camera, there).order();
}

std::vector<Layer> painting_order(const Bundle& bundle, const Camera& camera)
{
    return painting_order(bundle, camera, std::vector<bool>(bundle.items.size(), true));
}

} // namespace tuckwright::drawing
