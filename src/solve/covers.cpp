// SPDX-License-Identifier: GPL-3.0-or-later
// Outline of least_girth. Seen along a direction, a cylinder is an ellipse drawn out along its axis. With s the sine of
// the angle between axis and view, the way round it is 2 d E(s) + 2 h s, where E, the complete elliptic integral of the
// second kind, is concave in s; so it is least at one of the ends: seen along the axis (pi d) or from the side (2 d + 2 h).
// A box is seen as the sum of three segments, each as long as its edge times the root of 1 - v, with v the square of the
// cosine between edge and view; the three v add up to 1, and the sum is concave in them, so that it is least where one v
// is 1: the two shortest edges twice. A taper holds the straight cylinder of its foot. Source: own, elementary.
#include "solve/covers.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

#include "nesting/bundle_of_layout.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

constexpr double hair = 1 - 1e-4;   // for the proof's upper bound
constexpr double nearly = 1 + 1e-3; // the last compaction may yet win that much

struct Tightest {
    std::string id;
    double girth = 0;
};

/// The narrowest of the bag and the bands that go round everything.
std::optional<Tightest> tightest(const Kit& kit)
{
    std::optional<Tightest> found;
    const auto add = [&](const std::string& id, double girth) {
        if (!found || girth < found->girth) {
            found = Tightest{id, girth};
        }
    };
    if (kit.bag) {
        add(kit.bag->id, kit.bag->girth);
    }
    for (const Band& band : kit.bands) {
        if (band.over.empty()) {
            add(band.id, band.girth);
        }
    }
    return found;
}

void shorten(std::optional<double>& limit, double most) { limit = std::min(limit.value_or(most), most); }

double girth_of(const Bundle& bundle)
{
    std::vector<Solid> solids;
    for (const PlacedItem& item : bundle.items) {
        solids.insert(solids.end(), item.solids.begin(), item.solids.end());
    }
    return outline_girth(solids);
}

double girth_of(const Kit& kit, const nesting::Proposal& proposal)
{
    return girth_of(nesting::bundle_of_layout(kit, *proposal.scene, proposal.layout));
}

/// The kit with limits within which everything is so narrow that it passes, or nearly: shares of the girth that a circle
/// of that diameter, or a rectangle of those sides, needs. Whatever lies in a convex outline has no longer way round.
std::vector<Kit> narrower(const Kit& kit, double girth)
{
    const double walls = kit.bag ? 2 * kit.bag->thickness : 0;
    std::vector<Kit> found;
    if (kit.bundle.shape == BundleShape::cylinder) {
        for (const double share : {1.0, 1.2}) { // two like discs in a circle leave a fifth of the way round it free
            found.push_back(kit);
            shorten(found.back().bundle.diameter, snap_down(share * hair * girth / std::numbers::pi + walls));
        }
        return found;
    }
    for (const double share : {0.25, 0.32}) {
        found.push_back(kit);
        shorten(found.back().bundle.length, snap_down(share * hair * girth + walls));
        shorten(found.back().bundle.width, snap_down((0.5 - share) * hair * girth + walls));
    }
    return found;
}

} // namespace

bool passes_covers(const Kit& kit, const Bundle& bundle)
{
    const auto narrowest = tightest(kit);
    return !narrowest || girth_of(bundle) <= nearly * narrowest->girth;
}

Kit within_bag(Kit kit)
{
    if (!kit.bag) {
        return kit;
    }
    BundleRule& rule = kit.bundle;
    for (auto* limit : {&rule.diameter, &rule.length, &rule.width, &rule.height}) {
        if (*limit) {
            *limit = snap(**limit - 2 * kit.bag->thickness);
        }
    }
    shorten(rule.height, kit.bag->length);
    return kit;
}

double least_girth(const Item& item)
{
    if (const auto* c = std::get_if<Cylinder>(&item.outside)) {
        const double across = foot_of(*c), standing = std::numbers::pi * across;
        const double high = item.closes ? item.closes->adds : c->height; // shut, a lid is its plate
        return item.upright ? standing : std::min(standing, 2 * (across + high));
    }
    const auto& b = std::get<Box>(item.outside);
    const double high = item.closes ? item.closes->adds : b.height;
    return item.upright ? 2 * (b.length + b.width)
                        : 2 * (b.length + b.width + high - std::max({b.length, b.width, high}));
}

std::optional<std::string> cover_misfit(const Kit& kit)
{
    constexpr double safety = 1 + 1e-9;
    if (kit.bag) {
        const BundleRule& rule = kit.bundle;
        for (const auto& limit : {rule.diameter, rule.length, rule.width, rule.height}) {
            if (limit && *limit <= 2 * kit.bag->thickness * safety) {
                return fmt::format("\"{}\" alone is {:g} mm thick on either side, and a limit is {:g} mm", kit.bag->id,
                                   kit.bag->thickness, *limit);
            }
        }
    }
    const auto narrowest = tightest(kit);
    for (const Item& item : kit.items) {
        if (!narrowest || item.sheet || item.cloth || item.pouch) {
            continue;
        }
        double least = least_girth(item);
        for (std::size_t form = 1; form <= item.forms.size(); ++form) {
            least = std::min(least, least_girth(in_form(item, form)));
        }
        if (least > narrowest->girth * safety) {
            return fmt::format("\"{}\" is at least {:.1f} mm round, whichever way it may be turned, and \"{}\" is {:g} mm",
                               item.id, std::floor(10 * least) / 10, narrowest->id, narrowest->girth);
        }
    }
    return std::nullopt;
}

std::vector<nesting::Proposal> covered_proposals(const Kit& kit, const nesting::SearchOptions& options)
{
    std::vector<nesting::Proposal> all = nesting::search(kit, options);
    const auto narrowest = tightest(kit);
    if (!narrowest) {
        return all;
    }
    std::vector<nesting::Proposal> passing;
    const auto sift = [&](std::vector<nesting::Proposal>&& proposals) {
        for (nesting::Proposal& proposal : proposals) {
            if (girth_of(kit, proposal) <= narrowest->girth * nearly) {
                passing.push_back(std::move(proposal));
            }
        }
    };
    const double smallest = all.empty() ? 0 : all.front().volume;
    sift(std::move(all));
    if (!passing.empty() && passing.front().volume <= smallest &&
        girth_of(kit, passing.front()) <= narrowest->girth * hair) {
        return passing;
    }
    for (const Kit& narrow : narrower(kit, narrowest->girth)) {
        sift(nesting::search(narrow, options));
    }
    std::stable_sort(passing.begin(), passing.end(), [](const auto& a, const auto& b) { return a.volume < b.volume; });
    return passing;
}

std::string passing_in_words(const Kit& kit)
{
    const auto narrowest = tightest(kit);
    return narrowest ? fmt::format(" that passes through \"{}\", {:g} mm round,", narrowest->id, narrowest->girth)
                     : std::string();
}

} // namespace tuckwright
