// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/construct.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "packing/pile.hpp"
#include "packing/separation.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::packing {

namespace {

std::vector<int> shuffled_by_volume(const Scene& scene, Random& random)
{
    std::vector<double> key;
    for (const Body& body : scene.bodies) {
        double volume = body.volume;
        if (body.hollow) {
            volume *= 2; // vessels early, so that others find them
        }
        key.push_back(volume * std::exp(random.between(-0.7, 0.7)));
    }
    // What must lie in a vessel comes right after that, before others take its place or bad company does.
    for (std::size_t round = 0; round < key.size() && !scene.company.empty(); ++round) {
        for (std::size_t body = 0; body < key.size(); ++body) {
            for (const auto& vessels : scene.company.within[body]) {
                if (!vessels.empty()) {
                    key[body] = 0.999 * key[at(vessels.front())];
                }
            }
        }
    }
    std::vector<int> order(scene.bodies.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](int i, int j) { return key[static_cast<std::size_t>(i)] > key[static_cast<std::size_t>(j)]; });
    return order;
}

/// How a body is stowed and turned.
struct Standing {
    int way = 0;
    Form form = Form::standing;
};

/// A stance for each body, the same for bodies of the same shape: lots of equal things pack best when they lie alike.
std::vector<Standing> preferred_stances(const Scene& scene, Random& random)
{
    std::vector<Standing> preferred;
    for (std::size_t body = 0; body < scene.bodies.size(); ++body) {
        const int ways = scene.ways(static_cast<int>(body));
        const int way = ways == 1 ? 0 : static_cast<int>(random.below(at(ways)));
        const auto& forms = scene.stowed(static_cast<int>(body), way).forms;
        Standing stance{way, forms[random.below(forms.size())]};
        for (std::size_t twin = 0; twin < body && ways == 1; ++twin) {
            if (scene.bodies[twin].pieces.front().shape == scene.bodies[body].pieces.front().shape) {
                stance.form = preferred[twin].form;
                break;
            }
        }
        preferred.push_back(stance);
    }
    return preferred;
}

/// Keeps the doors of one way to stow the body, and of those the ones of a form, if there are any.
void keep_stance(std::vector<Door>& open, const Standing& stance)
{
    const auto keep = [&](auto matches) {
        if (std::any_of(open.begin(), open.end(), matches)) {
            std::erase_if(open, [&](const Door& door) { return !matches(door); });
        }
    };
    keep([&](const Door& door) { return door.way == stance.way; });
    keep([&](const Door& door) { return door.form == stance.form; });
}

double highest(const Layout& layout)
{
    double top = 0;
    for (const int body : layout.inside(outermost)) {
        for (const Piece& piece : layout.visible(body)) {
            top = std::max(top, piece.z + piece.half_height);
        }
    }
    return top;
}

/// Height of a body's top in the bundle, were it at that place; nothing where a vessel that does not stand holds it in.
double top_in_bundle(const Layout& layout, int body, const Place& place)
{
    double top = place.z + vertical_reach(layout.scene().stowed(body, place.way), place).above;
    for (int cell = place.cell; cell != outermost; cell = layout.place(cell).cell) {
        if (layout.place(cell).form != Form::standing) {
            return 0;
        }
        top += layout.stowed(cell).hollow->floor + layout.place(cell).z;
    }
    return top;
}

/// How good a place is: what raises the bundle least; then the smallest vessel; then the lowest.
double score_of(const Layout& layout, int body, const Place& place, double high)
{
    const double top = top_in_bundle(layout, body, place);
    constexpr double rising = 1e3, beside = 1e3; // mm; far more than any vessel or height
    const double rise = rising * std::max(0.0, top - high);
    return rise + (place.cell == outermost ? beside + top
                                           : std::cbrt(volume_ml(layout.stowed(place.cell).hollow->shape) * 1000));
}

/// The best place without overlap among samples. Starts from the best met so far, and returns the best then; 1e300 if
/// none was met.
double best_place(Layout& layout, int body, const std::vector<Door>& open, const Weights& weights, Random& random,
                  int samples, Place& found, double best)
{
    const double high = highest(layout);
    if (is_large(layout.scene())) {
        constexpr int more = 3; // a fall ends on something more often than a sampled height does
        const Score score = [&](const Place& place) { return score_of(layout, body, place, high); };
        const ScoredPlace fallen = best_fall(layout, body, open, random, more * samples, score, {found, best});
        found = fallen.place;
        return fallen.score;
    }
    for (int k = 0; k < samples && !open.empty(); ++k) {
        const Door& door = open[random.below(open.size())];
        Place place = sample_place(layout, body, door, random);
        if (layout.cost_at(body, place, weights, 1e-12) > 0) {
            continue;
        }
        if (const double score = score_of(layout, body, place, high); score < best) {
            best = score;
            found = place;
        }
    }
    return best;
}

/// Height of a body in the way and form in which it is highest.
double tallest(const Scene& scene, int body)
{
    double most = 0;
    for (int way = 0; way < scene.ways(body); ++way) {
        for (const Form form : scene.stowed(body, way).forms) {
            const Reach reach = vertical_reach(scene.stowed(body, way), form);
            most = std::max(most, reach.below + reach.above);
        }
    }
    return most;
}

/// Whether neither a vessel nor what it lies in is hidden.
bool is_there(const Layout& layout, int vessel)
{
    for (; vessel != outermost; vessel = layout.place(vessel).cell) {
        const auto& beside = layout.inside(layout.place(vessel).cell);
        if (!std::binary_search(beside.begin(), beside.end(), vessel)) {
            return false;
        }
    }
    return true;
}

/// Raises the envelope so far that a hidden body can lie on top of all others.
void make_room_on_top(Layout& layout, int body)
{
    Envelope envelope = layout.envelope();
    envelope.height = highest(layout) + tallest(layout.scene(), body);
    layout.set_envelope(envelope);
}

/// The doors of a hidden body into the bundle, and into the vessels that are there.
struct DoorsThere {
    std::vector<Door> open, vessels;
};
DoorsThere doors_there(const Layout& layout, int body)
{
    DoorsThere there;
    for (const Door& door : doors(layout, body)) {
        if (door.cell == outermost) {
            there.open.push_back(door);
        } else if (is_there(layout, door.cell)) {
            there.vessels.push_back(door);
        }
    }
    return there;
}

void fit_height(Layout& layout)
{
    Envelope envelope = layout.envelope();
    envelope.height = highest(layout);
    layout.set_envelope(envelope);
}

} // namespace

void construct(Layout& layout, Random& random, double eagerness, int samples)
{
    const Weights weights(layout.size());
    const std::vector<int> order = shuffled_by_volume(layout.scene(), random);
    const std::vector<Standing> preferred = preferred_stances(layout.scene(), random);
    const bool picky = random.chance(0.7);
    for (const int body : order) {
        layout.hide(body);
    }
    for (const int body : order) {
        make_room_on_top(layout, body);
        auto [open, vessels] = doors_there(layout, body);
        if (picky) {
            keep_stance(open, preferred[at(body)]);
        }
        Place place;
        double best = 1e300;
        if (open.empty() || random.chance(eagerness)) {
            best = best_place(layout, body, vessels, weights, random, samples, place, best);
        }
        best = best_place(layout, body, open, weights, random, samples, place, best);
        if (best >= 1e300) { // on top of all, where there is always room
            place = Place{};
            place.form = open.empty() ? Form::standing : open.front().form;
            place.way = open.empty() ? 0 : open.front().way;
            place.z = highest(layout) + vertical_reach(layout.scene().stowed(body, place.way), place.form).below;
        }
        layout.put(body, place);
    }
    fit_height(layout);
}

bool rebuild(Layout& layout, Random& random, const std::vector<int>& bodies, int samples)
{
    const Weights weights(layout.size());
    std::vector<int> order;
    for (const int body : shuffled_by_volume(layout.scene(), random)) {
        if (std::find(bodies.begin(), bodies.end(), body) != bodies.end()) {
            order.push_back(body);
        }
    }
    for (const int body : order) {
        layout.hide(body);
    }
    for (const int body : order) {
        make_room_on_top(layout, body);
        const auto [open, vessels] = doors_there(layout, body);
        Place place;
        double best = best_place(layout, body, vessels, weights, random, samples, place, 1e300);
        best = best_place(layout, body, open, weights, random, samples, place, best);
        if (best >= 1e300) {
            return false;
        }
        layout.put(body, place);
    }
    fit_height(layout);
    return true;
}

bool place_anew(Layout& layout, int body, Random& random, int samples, Going going)
{
    const Weights weights(layout.size());
    const Envelope before = layout.envelope();
    Place place = layout.place(body);
    layout.hide(body);
    constexpr int more = 20; // gaps are few
    const bool leaves = going == Going::out_of_its_vessel && place.cell != outermost;
    const auto is_left = [cell = place.cell](const Door& door) { return door.cell == cell; };
    if (going == Going::as_near_as_can_be || going == Going::into_gaps_only) {
        auto found = carried_nearby(layout, body);
        found = found ? found : carried_in_a_gap(layout, body, random, more * samples);
        if (found || going == Going::into_gaps_only) {
            layout.put(body, found.value_or(place));
            return found.has_value();
        }
    }
    make_room_on_top(layout, body);
    auto [open, vessels] = doors_there(layout, body);
    std::erase_if(vessels, [&](const Door& door) { return leaves && is_left(door); });
    double best = best_place(layout, body, vessels, weights, random, samples, place, 1e300);
    best = best_place(layout, body, open, weights, random, samples, place, best);
    layout.put(body, place);
    Envelope envelope = before;
    envelope.height = std::max(envelope.height, highest(layout));
    layout.set_envelope(envelope);
    return best < 1e299;
}

namespace {

void add_outline(const Piece& p, std::vector<std::array<double, 3>>& circles)
{
    if (p.kind == PieceKind::disc) {
        circles.push_back({p.x, p.y, p.radius});
        return;
    }
    for (const double u : {-p.a, p.a}) {
        for (const double v : {-p.b, p.b}) {
            circles.push_back({p.x + u * p.c - v * p.s, p.y + u * p.s + v * p.c, 0});
        }
    }
}

} // namespace

void tighten(Layout& layout)
{
    Envelope envelope = layout.envelope();
    double low = 1e300, high = -1e300;
    std::array<double, 2> least{1e300, 1e300}, most{-1e300, -1e300};
    std::vector<std::array<double, 3>> circles;
    for (const int body : layout.inside(outermost)) {
        for (const Piece& p : layout.visible(body)) {
            low = std::min(low, p.z - p.half_height);
            high = std::max(high, p.z + p.half_height);
            add_outline(p, circles);
        }
    }
    for (const auto& [x, y, r] : circles) {
        least = {std::min(least[0], x - r), std::min(least[1], y - r)};
        most = {std::max(most[0], x + r), std::max(most[1], y + r)};
    }
    double cx = (least[0] + most[0]) / 2, cy = (least[1] + most[1]) / 2;
    if (envelope.round) {
        const auto circle = enclosing_circle(circles);
        cx = circle[0], cy = circle[1];
        envelope.radius = circle[2];
    } else {
        envelope.half_length = (most[0] - least[0]) / 2;
        envelope.half_width = (most[1] - least[1]) / 2;
    }
    envelope.height = high - low;
    layout.set_envelope(envelope);
    const std::vector<int> direct = layout.inside(outermost);
    for (const int body : direct) {
        Place place = layout.place(body);
        place.x -= cx;
        place.y -= cy;
        place.z -= low;
        layout.put(body, place);
    }
}

} // namespace tuckwright::packing
