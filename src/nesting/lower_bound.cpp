// SPDX-License-Identifier: GPL-3.0-or-later
// The bound by flow. Let out(i) be the volume of item i's outside. An item that is not directly in the bundle lies, at
// most with its whole volume, in the cavity of its direct container, and what lies directly in one cavity is apart. So
// the union of all outsides is at least sum out(i) less the largest amount that can be sent from items into cavities,
// each item sending at most out(i) and each cavity taking at most its volume less the clearance. An item sends only
// into cavities that it could enter in some turn, and nothing into one that contents fill. A lid counts with its plate
// alone: shut it takes at least that, and loose it takes more. An item that can be carried in several forms counts with
// its least outside and its largest cavity. A sheet counts with what it is made of and has no cavity, since what lies in
// its roll lies in whatever holds the roll; cloth counts with its volume. A pouch counts with nothing, and has no cavity
// either: what is in it lies in whatever holds the pouch, and a bundle without its pouches is no larger than with them.
// What is pressed into a vessel counts as it is there; it takes no clearance, and so that vessel's cavity counts with it.
#include "nesting/lower_bound.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/push_relabel_max_flow.hpp>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

#include "nesting/company_of_kit.hpp"
#include "nesting/kit_scene.hpp"
#include "nesting/misfit.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// Capacities are whole cubic tenths of a millimetre, rounded so that the bound stays below: exact arithmetic in the flow.
constexpr double units_per_mm3 = 1000;

using Traits = boost::adjacency_list_traits<boost::vecS, boost::vecS, boost::directedS>;
using FlowGraph = boost::adjacency_list<
    boost::vecS, boost::vecS, boost::directedS, boost::no_property,
    boost::property<boost::edge_capacity_t, long long,
                    boost::property<boost::edge_residual_capacity_t, long long,
                                    boost::property<boost::edge_reverse_t, Traits::edge_descriptor>>>>;

void add_pipe(FlowGraph& graph, std::size_t from, std::size_t to, double capacity)
{
    const auto there = boost::add_edge(from, to, graph).first, back = boost::add_edge(to, from, graph).first;
    boost::put(boost::edge_capacity, graph, there, static_cast<long long>(std::ceil(capacity * units_per_mm3)));
    boost::put(boost::edge_capacity, graph, back, 0);
    boost::put(boost::edge_reverse, graph, there, back);
    boost::put(boost::edge_reverse, graph, back, there);
}

/// Most volume in mm^3 that the bodies that are kept can send into one another's cells. `may[i][j]` tells whether body i
/// could enter the cell of body j.
double most_nested(const std::vector<double>& room, const std::vector<double>& supply,
                   const std::vector<std::vector<bool>>& may, const std::vector<bool>& kept)
{
    const std::size_t n = room.size();
    FlowGraph graph(2 * n + 2);
    const std::size_t source = 2 * n, sink = 2 * n + 1;
    for (std::size_t k = 0; k < n; ++k) {
        if (!kept[k]) {
            continue;
        }
        add_pipe(graph, source, k, supply[k]);
        if (room[k] > 0) {
            add_pipe(graph, n + k, sink, room[k]);
        }
        for (std::size_t cell = 0; cell < n; ++cell) {
            if (kept[cell] && may[k][cell]) {
                add_pipe(graph, k, n + cell, supply[k]);
            }
        }
    }
    return static_cast<double>(boost::push_relabel_max_flow(graph, source, sink)) / units_per_mm3;
}

/// The bound by flow for the bodies that are kept: what is left out only makes a bundle smaller.
class FlowBound {
public:
    explicit FlowBound(const Kit& kit) : scene_(kit_scene(kit, std::vector<bool>(lids(kit).size(), false)))
    {
        const std::size_t n = scene_.origins.size();
        may_.assign(n, std::vector<bool>(n, false));
        for (std::size_t k = 0; k < n; ++k) {
            Item item = kit.items[scene_.origins[k].self.item];
            if (item.closes) {
                item.outside = lid_plate(item, kit.items[item.closes->item]).shape;
            }
            item.upright = false;
            supply_.push_back(least_volume(item));
            for (std::size_t cell = 0; cell < n; ++cell) {
                const bool is_pressed = item.press && item.press->item == scene_.origins[cell].self.item;
                may_[k][cell] =
                    cell != k && allowed(k, cell) && (is_pressed || could_enter_some(item, cell));
            }
            room_.push_back(item.pouch                                            ? 0
                            : takes_pressed(kit, scene_.origins[k].self.item) ? whole_cavity(kit.items[scene_.origins[k].self.item])
                                                                              : largest_cavity(k));
            if (room_.back() > 0) {
                vessels_.push_back(k);
            }
        }
    }

    /// The best over all choices of vessels left out, where they are few; else over leaving them out one by one. Only
    /// vessels are worth leaving out: they may offer others a way into cavities that these could not enter.
    double best() const
    {
        constexpr std::size_t few = 7;
        std::vector<bool> kept(supply_.size(), true);
        double best = of(kept);
        if (vessels_.size() <= few) {
            for (unsigned out = 1; out < 1u << vessels_.size(); ++out) {
                for (std::size_t v = 0; v < vessels_.size(); ++v) {
                    kept[vessels_[v]] = (out >> v & 1) == 0;
                }
                best = std::max(best, of(kept));
            }
            return best;
        }
        for (const std::size_t vessel : vessels_) {
            kept[vessel] = false;
            const double without = of(kept);
            kept[vessel] = without <= best;
            best = std::max(best, without);
        }
        return best;
    }

private:
    static double least_volume(const Item& item)
    {
        if (item.pouch) {
            return 0;
        }
        if (item.cloth) {
            return item.cloth->volume_ml * 1000;
        }
        double least = volume_ml(item.outside) * 1000;
        for (const Stowage& form : item.forms) {
            least = std::min(least, volume_ml(form.outside) * 1000);
        }
        return least;
    }

    /// Whether the item could enter the cell of a body, whatever the forms of both.
    bool could_enter_some(const Item& item, std::size_t cell) const
    {
        for (int way = 0; way < scene_.scene.ways(static_cast<int>(cell)); ++way) {
            const auto& hollow = scene_.scene.stowed(static_cast<int>(cell), way).hollow;
            if (!hollow) {
                continue;
            }
            // The search lets nothing stand out of a narrow opening, but people may: the bound holds for that too.
            const bool closed = !hollow->open_top && !hollow->open_bottom && !hollow->neck;
            for (std::size_t form = 0; form <= item.forms.size(); ++form) {
                const Item as_it_is = in_form(item, form);
                if (item.sheet || item.cloth || item.pouch ||
                    (could_enter(as_it_is, hollow->shape, closed) &&
                     (!hollow->neck || could_enter(as_it_is, *hollow->neck, false)))) {
                    return true;
                }
            }
        }
        return false;
    }

    double largest_cavity(std::size_t body) const
    {
        double most = 0;
        for (int way = 0; way < scene_.scene.ways(static_cast<int>(body)); ++way) {
            const auto& hollow = scene_.scene.stowed(static_cast<int>(body), way).hollow;
            const double neck = hollow && hollow->neck ? volume_ml(*hollow->neck) : 0;
            most = hollow ? std::max(most, (volume_ml(hollow->shape) + neck) * 1000) : most;
        }
        return most;
    }

    /// Whether something is pressed into the vessel: that takes no clearance.
    static bool takes_pressed(const Kit& kit, std::size_t vessel)
    {
        return std::any_of(kit.items.begin(), kit.items.end(),
                           [&](const Item& item) { return item.press && item.press->item == vessel; });
    }

    /// The largest of its cavities, in whatever form, with the clearance.
    static double whole_cavity(const Item& vessel)
    {
        double most = 0;
        for (std::size_t form = 0; form <= vessel.forms.size(); ++form) {
            const auto inside = in_form(vessel, form).inside;
            most = inside ? std::max(most, volume_ml(inside->shape) * 1000) : most;
        }
        return most;
    }

    bool allowed(std::size_t body, std::size_t vessel) const
    {
        const packing::Company& company = scene_.scene.company;
        return company.empty() || !(company.out[body][vessel] || company.apart[body][vessel]);
    }

    double of(const std::vector<bool>& kept) const
    {
        double total = 0;
        for (std::size_t k = 0; k < supply_.size(); ++k) {
            total += kept[k] ? supply_[k] : 0;
        }
        return total - most_nested(room_, supply_, may_, kept);
    }

    KitScene scene_;
    std::vector<double> supply_, room_; ///< mm^3 of each body's outside and cavity
    std::vector<std::vector<bool>> may_;
    std::vector<std::size_t> vessels_;
};

double volume_by_flow(const Kit& kit) { return FlowBound(kit).best(); }

/// Least and other measures of an item in one form: radius of its plan outline, half extents, height.
struct Measure {
    double radius, half_x, half_y, height;
};

std::vector<Measure> measures(const Item& item)
{
    if (const auto* c = std::get_if<Cylinder>(&item.outside)) {
        const double r = c->diameter / 2, h = c->height / 2;
        std::vector<Measure> found{{r, r, r, c->height}};
        if (!item.upright) {
            const double low = foot_of(*c) / 2; // the cylinder that is in it from end to end
            found.push_back({std::hypot(low, h), h, low, 2 * low});
        }
        return found;
    }
    const auto& b = std::get<Box>(item.outside);
    const double l = b.length / 2, w = b.width / 2, h = b.height / 2;
    std::vector<Measure> found{{std::hypot(l, w), l, w, b.height}};
    if (!item.upright) {
        found.push_back({std::hypot(h, w), h, w, b.length});
        found.push_back({std::hypot(l, h), l, h, b.width});
    }
    return found;
}

/// Volume of the smallest envelope of one item, and the least width and height over all items, in mm^3.
double volume_by_items(const Kit& kit)
{
    const bool round = kit.bundle.shape == BundleShape::cylinder;
    double alone = 0, least_area = 0, least_height = 0;
    for (const Item& item : kit.items) {
        if (item.closes) {
            continue; // shut, it is not as high as loose
        }
        if (item.sheet || item.cloth || item.pouch) {
            continue; // their forms are too many; their volume counts in the flow
        }
        double volume = 1e300, area = 1e300, height = 1e300;
        for (std::size_t form = 0; form <= item.forms.size(); ++form) {
            for (const Measure& m : measures(in_form(item, form))) {
                const double plan = round ? std::numbers::pi * m.radius * m.radius : 4 * m.half_x * m.half_y;
                volume = std::min(volume, plan * m.height);
                area = std::min(area, plan);
                height = std::min(height, m.height);
            }
        }
        alone = std::max(alone, volume);
        least_area = std::max(least_area, area);
        least_height = std::max(least_height, height);
    }
    return std::max(alone, least_area * least_height);
}

/// Why an item is too large in each of its forms; the words are about the last.
std::optional<std::string> misfit_in_all_forms(const Item& item, const BundleRule& rule)
{
    if (item.sheet || item.cloth || item.pouch) {
        return std::nullopt;
    }
    std::optional<std::string> proof;
    for (std::size_t form = 0; form <= item.forms.size(); ++form) {
        proof = misfit(in_form(item, form), rule);
        if (!proof) {
            return std::nullopt;
        }
    }
    return item.forms.empty() ? proof : *proof + " (and so in each of its forms)";
}

/// A thing as wide as it is left to itself would count with room that it does not take.
void require_pressed(const Kit& kit)
{
    require(std::all_of(kit.items.begin(), kit.items.end(),
                        [](const Item& item) { return !item.press || item.press->relaxed; }),
            "what is pressed into a vessel is as wide as its bore");
}

} // namespace

double lower_bound_ml(const Kit& kit)
{
    require_pressed(kit);
    // A hair below, so that rounding in the sums never claims too much.
    return std::max(volume_by_items(kit), volume_by_flow(kit) * (1 - 1e-9)) / 1000;
}

std::optional<std::string> misfit_proof(const Kit& kit)
{
    require_pressed(kit);
    const BundleRule& rule = kit.bundle;
    const bool round = rule.shape == BundleShape::cylinder;
    for (const Item& item : kit.items) {
        if (item.closes) {
            continue; // the plate of a shut lid may be thinner than the lid; its vessel speaks for its width
        }
        if (const auto proof = misfit_in_all_forms(item, rule)) {
            return proof;
        }
    }
    if (const auto proof = rules_misfit(kit)) {
        return proof;
    }
    std::optional<double> room;
    if (round && rule.diameter && rule.height) {
        room = volume_ml(Cylinder{*rule.diameter, *rule.height});
    } else if (!round && rule.length && rule.width && rule.height) {
        room = volume_ml(Box{*rule.length, *rule.width, *rule.height});
    }
    const double bound = volume_by_flow(kit) / 1000;
    if (room && bound > *room * (1 + 1e-9)) {
        return fmt::format(
            "the items need at least {:.0f} ml even if every cavity is filled, the limits hold {:.0f} ml",
            std::floor(bound), *room);
    }
    return std::nullopt;
}

} // namespace tuckwright::nesting
