// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Contacts are the nodes of a graph: from one that pushes a thing along the chain's direction to one by which that
// thing pushes the next. What is between two is a difference of their levels, so a path's stretches add up to whatever is
// between its ends. The cheapest path is told: things count one each, contacts that face aslant and gaps more.
#include "tuckwright/chains.hpp"

#include <algorithm>
#include <cmath>
#include <queue>
#include <set>

#include "play/contacts.hpp"
#include "play/wedge.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {

using namespace play;

constexpr double faces_along = 0.05;  ///< cosine from which a contact pushes along the chain
constexpr double straight = 1 - 1e-9; ///< cosine from which it faces along it
constexpr double next_to_none = 1e-9; ///< mm that are no stretch of their own
constexpr double backward = -1e-3;    ///< mm: through such a stretch the chain would go back
constexpr std::size_t none = static_cast<std::size_t>(-1);

/// What is to be spanned: a direction, and the levels of the two walls along it.
struct Span {
    Vec3 along;
    double from = 0, to = 0;
};

/// A contact, turned so that the first pushes the second along.
struct Joint {
    Touching first, second;
    double facing = 0; ///< cosine of its normal and the chain's direction
    double gap = 0;
    double leaves = 0, enters = 0; ///< levels of the two points
};

std::vector<Joint> joints_of(const Contacts& contacts, const Span& span, double within)
{
    std::vector<Joint> joints;
    for (const Contact& c : contacts.along(span.along)) {
        const double facing = dot(c.normal, span.along);
        if (std::abs(facing) < faces_along) {
            continue;
        }
        Joint joint{c.first,
                    c.second,
                    std::abs(facing),
                    c.gap,
                    dot(c.first.point, span.along),
                    dot(c.second.point, span.along)};
        if (facing < 0) {
            std::swap(joint.first, joint.second);
            std::swap(joint.leaves, joint.enters);
        }
        if (joint.first.body == outer_wall) { // it has to be where the wall is farthest
            joint.leaves = span.from;
            if (joint.enters - span.from > within) {
                continue;
            }
        }
        joints.push_back(joint);
    }
    return joints;
}

double price(const Joint& joint, const Span& span)
{
    const double slack = joint.gap > touching_air ? 20 + 10 * joint.gap : 0;
    const double bulge = joint.second.body == outer_wall ? (span.to - joint.enters) / (span.to - span.from) : 0;
    return 6 * (1 - joint.facing) + slack + 10 * bulge;
}

double price_through(double mm) { return mm < backward ? 30 - mm : 1; }

/// The joints that push each body, and those by which it pushes.
struct Graph {
    std::vector<std::vector<std::size_t>> into, out_of; ///< by body
    std::vector<std::size_t> starts;

    Graph(const std::vector<Joint>& joints, std::size_t bodies) : into(bodies), out_of(bodies)
    {
        for (std::size_t k = 0; k < joints.size(); ++k) {
            if (joints[k].first.body == outer_wall) {
                starts.push_back(k);
            } else {
                out_of[joints[k].first.body].push_back(k);
            }
            if (joints[k].second.body != outer_wall) {
                into[joints[k].second.body].push_back(k);
            }
        }
    }
};

struct Path {
    std::vector<Joint> joints;
    double price = 0;
};

/// The cheapest path from wall to wall through all bodies but one; nothing where there is none.
/// Source: Dijkstra 1959, Numerische Mathematik 1.
std::optional<Path> cheapest(const std::vector<Joint>& joints, const Graph& graph, const Span& span,
                             std::size_t but = none)
{
    std::vector<double> least(joints.size(), 1e300);
    std::vector<std::size_t> before(joints.size(), none);
    using Entry = std::pair<double, std::size_t>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
    for (const std::size_t start : graph.starts) {
        least[start] = price(joints[start], span);
        open.emplace(least[start], start);
    }
    while (!open.empty()) {
        const auto [so_far, k] = open.top();
        open.pop();
        if (so_far > least[k]) {
            continue;
        }
        if (joints[k].second.body == outer_wall) {
            Path path{{}, so_far};
            for (std::size_t at = k; at != none; at = before[at]) {
                path.joints.insert(path.joints.begin(), joints[at]);
            }
            return path;
        }
        const std::size_t body = joints[k].second.body;
        for (const std::size_t next : body == but ? std::vector<std::size_t>() : graph.out_of[body]) {
            const double through = joints[next].leaves - joints[k].enters;
            const double sum = so_far + price_through(through) + price(joints[next], span);
            if (sum < least[next] - 1e-12) {
                least[next] = sum;
                before[next] = k;
                open.emplace(sum, next);
            }
        }
    }
    return std::nullopt;
}

class Teller {
public:
    Teller(const Bundle& bundle, const Span& span, Chain& chain) : bundle_(bundle), span_(span), chain_(chain) {}

    void tell(const Path& path)
    {
        const double bag = bundle_.bag ? bundle_.bag->thickness : 0;
        add(StretchPart::bag, std::nullopt, bag);
        for (std::size_t k = 0; k < path.joints.size(); ++k) {
            const Joint& joint = path.joints[k];
            if (k > 0) {
                add_through(path.joints[k - 1], joint);
            }
            add(StretchPart::air, std::nullopt, joint.enters - joint.leaves);
            chain_.straight = chain_.straight && joint.facing >= straight;
        }
        add(StretchPart::bulge, std::nullopt, span_.to - path.joints.back().enters);
        add(StretchPart::bag, std::nullopt, bag);
        make_exact();
    }

private:
    void add(StretchPart part, std::optional<std::size_t> item, double mm)
    {
        if (std::abs(mm) > next_to_none || item) {
            chain_.stretches.push_back({part, item, mm});
        }
    }

    /// Rounding of the levels goes to the largest stretch.
    void make_exact()
    {
        double sum = 0;
        Stretch* largest = &chain_.stretches.front();
        for (Stretch& stretch : chain_.stretches) {
            sum += stretch.mm;
            largest = stretch.mm > largest->mm ? &stretch : largest;
        }
        require(std::abs(chain_.mm - sum) < 1e-6, "a chain's stretches add up to the dimension");
        largest->mm += chain_.mm - sum;
    }

    /// The level of the rim on which a shut lid's plate stands, where that lies square to the chain.
    std::optional<double> rim(std::size_t lid) const
    {
        const Solid& plate = bundle_.items[lid].solids.front();
        const Vec3 up = axis_of(rotation_matrix(plate.pose.turn), 2);
        const double facing = dot(up, span_.along);
        return std::abs(facing) < straight
                   ? std::nullopt
                   : std::optional(dot(plate.pose.center, span_.along) - facing * height_of(plate.shape) / 2);
    }

    void add_through(const Joint& in, const Joint& out)
    {
        const Touching &from = in.second, &to = out.first;
        const double mm = out.leaves - in.enters;
        if (from.face == Face::outside && to.face == Face::outside) {
            const bool from_lid = from.item != from.body, to_lid = to.item != to.body;
            const auto between = from_lid != to_lid ? rim(from_lid ? from.item : to.item) : std::nullopt;
            if (between) {
                add(from_lid ? StretchPart::lid : StretchPart::whole, from.item, *between - in.enters);
                add(to_lid ? StretchPart::lid : StretchPart::whole, to.item, out.leaves - *between);
            } else {
                add(StretchPart::whole, from.item == to.item ? from.item : from.body, mm);
            }
            return;
        }
        const Touching& inner = from.face == Face::outside ? to : from;
        const Touching& outer = from.face == Face::outside ? from : to;
        if (inner.face == Face::ceiling && outer.item != outer.body) {
            add(StretchPart::lid, outer.item, mm);
            return;
        }
        add(inner.face == Face::floor     ? StretchPart::base
            : inner.face == Face::ceiling ? StretchPart::top
                                          : StretchPart::wall,
            inner.item, mm);
    }

    const Bundle& bundle_;
    const Span& span_;
    Chain& chain_;
};

/// Joints on any way from wall to wall, by touching things only.
std::vector<bool> on_some_way(const std::vector<Joint>& joints, const Graph& graph)
{
    const auto touches = [&](std::size_t k) { return joints[k].gap <= touching_air; };
    const auto flood = [&](std::vector<std::size_t> open, auto next_of) {
        std::vector<bool> seen(joints.size(), false);
        while (!open.empty()) {
            const std::size_t k = open.back();
            open.pop_back();
            if (seen[k] || !touches(k)) {
                continue;
            }
            seen[k] = true;
            if (const std::size_t body = next_of(k); body != outer_wall) {
                const auto& further = next_of(k) == joints[k].second.body ? graph.out_of[body] : graph.into[body];
                open.insert(open.end(), further.begin(), further.end());
            }
        }
        return seen;
    };
    std::vector<std::size_t> ends;
    for (std::size_t k = 0; k < joints.size(); ++k) {
        if (joints[k].second.body == outer_wall) {
            ends.push_back(k);
        }
    }
    auto ahead = flood(graph.starts, [&](std::size_t k) { return joints[k].second.body; });
    const auto back = flood(ends, [&](std::size_t k) { return joints[k].first.body; });
    for (std::size_t k = 0; k < ahead.size(); ++k) {
        ahead[k] = ahead[k] && back[k];
    }
    return ahead;
}

class Finder {
public:
    explicit Finder(const Bundle& bundle) : bundle_(bundle) {}

    Chain find(Dimension dimension) const
    {
        for (const double within : {touching_air, 0.05, 0.5, 5.0, 50.0, 1e4}) {
            const Contacts contacts(bundle_, within);
            std::optional<Path> best;
            Span best_span;
            for (const Span& span : spans(dimension, contacts)) {
                const auto joints = joints_of(contacts, span, within);
                auto path = cheapest(joints, Graph(joints, bundle_.items.size()), span);
                if (path && (!best || path->price < best->price - 1e-9)) {
                    best = std::move(path);
                    best_span = span;
                }
            }
            if (best) {
                return told(dimension, *best, best_span);
            }
        }
        require(false, "there is a way from wall to wall");
        return {};
    }

private:
    std::vector<Span> spans(Dimension dimension, const Contacts& contacts) const
    {
        const double height = height_of(bundle_.envelope);
        if (dimension == Dimension::height) {
            return {{{0, 0, 1}, 0, height}};
        }
        if (const auto* box = std::get_if<Box>(&bundle_.envelope)) {
            return dimension == Dimension::length ? std::vector<Span>{{{1, 0, 0}, 0, box->length}}
                                                  : std::vector<Span>{{{0, 1, 0}, 0, box->width}};
        }
        const double radius = std::get<Cylinder>(bundle_.envelope).diameter / 2;
        std::vector<Span> all;
        for (const Vec3& way : contacts.ways_across()) {
            all.push_back({-1.0 * way, -radius, radius});
        }
        return all;
    }

    Chain told(Dimension dimension, const Path& path, const Span& span) const
    {
        Chain chain;
        chain.dimension = dimension;
        chain.along = span.along;
        chain.mm = span.to - span.from + (bundle_.bag ? 2 * bundle_.bag->thickness : 0);
        Teller(bundle_, span, chain).tell(path);
        chain.rivals = rivals_of(path, dimension);
        std::set<std::size_t> own, all = items_on_ways(dimension);
        for (const Stretch& stretch : chain.stretches) {
            if (stretch.item) {
                own.insert(*stretch.item);
            }
        }
        std::set_difference(all.begin(), all.end(), own.begin(), own.end(), std::back_inserter(chain.others));
        return chain;
    }

    /// For each body of a way the cheapest other way without it, where all of that touches and is straight.
    std::vector<Rival> rivals_of(const Path& path, Dimension dimension) const
    {
        const Contacts contacts(bundle_, touching_air);
        std::vector<std::pair<Span, std::vector<Joint>>> all;
        for (const Span& span : spans(dimension, contacts)) {
            all.emplace_back(span, joints_of(contacts, span, touching_air));
            auto& joints = all.back().second; // what is aslant gives way, so that it holds nothing up by itself
            joints.erase(
                std::remove_if(joints.begin(), joints.end(), [](const Joint& j) { return j.facing < straight; }),
                joints.end());
        }
        std::set<std::size_t> own;
        for (const Joint& joint : path.joints) {
            own.insert(joint.second.body);
        }
        std::vector<Rival> rivals;
        for (std::size_t k = 0; k + 1 < path.joints.size(); ++k) {
            const std::size_t body = path.joints[k].second.body;
            std::optional<Path> best;
            for (const auto& [span, joints] : all) {
                auto other = cheapest(joints, Graph(joints, bundle_.items.size()), span, body);
                if (other && (!best || other->price < best->price - 1e-9)) {
                    best = std::move(other);
                }
            }
            Rival rival{body, best ? bodies_but(*best, own) : std::vector<std::size_t>()};
            if (!rival.items.empty()) {
                rivals.push_back(std::move(rival));
            }
        }
        return rivals;
    }

    static std::vector<std::size_t> bodies_but(const Path& path, const std::set<std::size_t>& own)
    {
        std::vector<std::size_t> bodies;
        for (std::size_t k = 0; k + 1 < path.joints.size(); ++k) {
            const std::size_t body = path.joints[k].second.body;
            if (own.count(body) == 0 && std::find(bodies.begin(), bodies.end(), body) == bodies.end()) {
                bodies.push_back(body);
            }
        }
        return bodies;
    }

    /// What is on some way from wall to wall, and, where such a way has a contact aslant, all that things on it touch.
    std::set<std::size_t> items_on_ways(Dimension dimension) const
    {
        const Contacts contacts(bundle_, touching_air);
        std::set<std::size_t> items;
        Wedge wedge(bundle_.items.size());
        for (const Span& span : spans(dimension, contacts)) {
            const auto joints = joints_of(contacts, span, touching_air);
            const auto on = on_some_way(joints, Graph(joints, bundle_.items.size()));
            for (std::size_t k = 0; k < joints.size(); ++k) {
                if (on[k]) {
                    wedge.add(joints[k].first.body, joints[k].second.body, joints[k].facing < straight);
                    items.insert({joints[k].first.item, joints[k].second.item});
                }
            }
        }
        items.erase(outer_wall);
        if (wedge.gives_way()) {
            for (const Contact& c : contacts.along({0, 0, 1})) {
                wedge.touch(c.first.body, c.second.body);
            }
            const auto touched = wedge.touched();
            for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
                if (std::find(touched.begin(), touched.end(), contacts.body_of(item)) != touched.end()) {
                    items.insert(item);
                }
            }
        }
        for (auto item = items.begin(); item != items.end();) {
            item = wedge.bears(contacts.body_of(*item)) ? std::next(item) : items.erase(item);
        }
        return items;
    }

    const Bundle& bundle_;
};

} // namespace

const char* to_string(Dimension dimension)
{
    switch (dimension) {
    case Dimension::diameter: return "diameter";
    case Dimension::height: return "height";
    case Dimension::length: return "length";
    case Dimension::width: return "width";
    }
    require(false, "a dimension is one of the four");
    return "";
}

std::vector<Chain> chains(const Bundle& bundle)
{
    const Finder finder(bundle);
    if (std::holds_alternative<Cylinder>(bundle.envelope)) {
        return {finder.find(Dimension::diameter), finder.find(Dimension::height)};
    }
    return {finder.find(Dimension::length), finder.find(Dimension::width), finder.find(Dimension::height)};
}

std::vector<std::size_t> in_chains(const std::vector<Chain>& chains)
{
    std::set<std::size_t> items;
    for (const Chain& chain : chains) {
        items.insert(chain.others.begin(), chain.others.end());
        for (const Stretch& stretch : chain.stretches) {
            if (stretch.item) {
                items.insert(*stretch.item);
            }
        }
    }
    return {items.begin(), items.end()};
}

} // namespace tuckwright
