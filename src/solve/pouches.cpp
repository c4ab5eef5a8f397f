// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/pouches.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <numbers>

#include "nesting/lower_bound.hpp"
#include "solve/covers.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

std::size_t index_of(const Kit& kit, const std::string& id)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    require(found != kit.items.end(), "a rule is about items of the kit");
    return static_cast<std::size_t>(found - kit.items.begin());
}

double even_up(double mm) { return 2 * snap_up(mm / 2); }

/// Which items must lie in one, however deep, lids on their vessels too.
std::vector<bool> contents_of(const Kit& kit, std::size_t holder)
{
    std::vector<bool> found(kit.items.size(), false);
    const auto counts = [&](std::size_t item) { return item == holder || found[item]; };
    for (bool grows = true; grows;) {
        grows = false;
        for (const CarryRule& rule : kit.rules) {
            const std::size_t item = index_of(kit, rule.first);
            if (rule.keep == Keep::within && !counts(item) && counts(index_of(kit, rule.second))) {
                grows = found[item] = true;
            }
        }
        for (std::size_t item = 0; item < kit.items.size(); ++item) {
            const auto& closes = kit.items[item].closes;
            if (closes && !found[item] && found[closes->item]) {
                grows = found[item] = true;
            }
        }
    }
    return found;
}

/// The contents of a pouch as a kit of their own, as many as each copy of the pouch may come to hold.
Kit contents_alone(const Kit& kit, const std::vector<bool>& inside, int pouches)
{
    Kit alone;
    alone.name = kit.name;
    alone.clearance = kit.clearance;
    std::map<std::size_t, std::size_t> place;
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        if (inside[item]) {
            place[item] = alone.items.size();
            alone.items.push_back(kit.items[item]);
            alone.items.back().count = (kit.items[item].count + pouches - 1) / pouches;
        }
    }
    for (Item& item : alone.items) {
        if (item.closes && place.contains(item.closes->item)) {
            item.closes->item = place[item.closes->item];
        } else {
            item.closes.reset(); // carried loose, far from its vessel
        }
    }
    for (const CarryRule& rule : kit.rules) {
        if (inside[index_of(kit, rule.first)] && inside[index_of(kit, rule.second)]) {
            alone.rules.push_back(rule);
        }
    }
    for (const Band& band : kit.bands) {
        if (!band.over.empty() && inside[index_of(kit, band.over)]) {
            alone.bands.push_back(band);
        }
    }
    return alone;
}

/// A cavity that holds an envelope with the clearance round it, and so much more each way: a share, and what compaction
/// and rounding want.
Shape around(const packing::Envelope& envelope, double clearance, double spare)
{
    constexpr double for_rounding = 0.02; // mm
    const auto side = [&](double size, double walls) { return even_up(size * (1 + spare) + 2 * walls + for_rounding); };
    const double height = side(envelope.height, 0);
    if (envelope.round) {
        return Cylinder{side(2 * envelope.radius, clearance), height};
    }
    return Box{side(2 * envelope.half_length, clearance), side(2 * envelope.half_width, clearance), height};
}

/// What a pouch's plan and height leave for its contents.
BundleRule limits(const Pouch& pouch, BundleShape shape, double clearance, double share)
{
    BundleRule rule;
    rule.shape = shape;
    rule.height = pouch.length;
    if (shape == BundleShape::cylinder) {
        rule.diameter = pouch.girth * 113 / 355 - 2 * clearance;
    } else {
        rule.length = share * pouch.girth - 2 * clearance;
        rule.width = (0.5 - share) * pouch.girth - 2 * clearance;
    }
    return rule;
}

/// The smallest of what was found, and a lower and a higher one, as far as the pouch goes round them.
void add_best(const Pouch& pouch, const std::vector<nesting::Proposal>& found, double clearance,
              std::vector<Stowage>& forms)
{
    std::vector<double> heights;
    for (const nesting::Proposal& proposal : found) {
        const packing::Envelope& envelope = proposal.layout.envelope();
        constexpr double unlike = 1.25;
        const bool is_new = std::all_of(heights.begin(), heights.end(), [&](double height) {
            return envelope.height > unlike * height || height > unlike * envelope.height;
        });
        if (!is_new || heights.size() == 3 || !filled_out(pouch, around(envelope, clearance, 0))) {
            continue;
        }
        heights.push_back(envelope.height);
        for (const double spare : {0.0, 0.04}) {
            if (auto form = filled_out(pouch, around(envelope, clearance, spare))) {
                forms.push_back(*form);
            }
        }
    }
}

std::vector<Stowage> packed_forms(const Kit& kit, std::size_t pouch, const std::vector<bool>& inside,
                                  const nesting::SearchOptions& options)
{
    const Pouch& sizes = *kit.items[pouch].pouch;
    Kit alone = contents_alone(kit, inside, kit.items[pouch].count);
    std::vector<Stowage> forms;
    for (const auto& [shape, share] : {std::pair{BundleShape::cylinder, 0.0},
                                       {BundleShape::box, 0.25},
                                       {BundleShape::box, 1 / 3.0},
                                       {BundleShape::box, 0.375}}) {
        alone.bundle = limits(sizes, shape, kit.clearance, share);
        const auto& rule = alone.bundle;
        if (rule.diameter.value_or(1) > 0 && rule.length.value_or(1) > 0 && rule.width.value_or(1) > 0) {
            add_best(sizes, nesting::search(alone, options), kit.clearance, forms);
        }
    }
    std::stable_sort(forms.begin(), forms.end(),
                     [](const Stowage& a, const Stowage& b) { return volume_ml(a.outside) < volume_ml(b.outside); });
    constexpr std::size_t most = 14;
    forms.resize(std::min(forms.size(), most));
    return forms;
}

} // namespace

namespace {

/// Something that must lie in a pouch and is too far round for it. Seen along the pouch's axis, whatever is in it lies in
/// a plan that the girth goes round.
std::optional<std::string> too_far_round(const Kit& kit, const CarryRule& rule)
{
    constexpr double safety = 1 + 1e-9;
    const double girth = kit.items[index_of(kit, rule.second)].pouch->girth;
    Item item = kit.items[index_of(kit, rule.first)];
    if (item.sheet || item.cloth || item.pouch) {
        return std::nullopt;
    }
    item.upright = false; // the pouch may lie
    double least = least_girth(item);
    for (std::size_t form = 1; form <= item.forms.size(); ++form) {
        least = std::min(least, least_girth(in_form(item, form)));
    }
    if (least <= girth * safety) {
        return std::nullopt;
    }
    return fmt::format(
        "the {} must lie in the {} ({}), and is at least {:.1f} mm round, whichever way it may be turned; "
        "the {} is {:g} mm round",
        rule.first, rule.second, rule.why, std::floor(10 * least) / 10, rule.second, girth);
}

/// Contents that need more room together than a pouch has, be it round or rectangular.
std::optional<std::string> too_much(const Kit& kit, std::size_t pouch)
{
    const Item& holder = kit.items[pouch];
    std::vector<bool> inside = contents_of(kit, pouch);
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        const auto& closes = kit.items[item].closes;
        inside[item] =
            inside[item] && !(closes && !inside[closes->item]); // shut on what is by chance in it, it is less
    }
    if (holder.count > 1 || std::none_of(inside.begin(), inside.end(), [](bool is_in) { return is_in; })) {
        return std::nullopt;
    }
    const double girth = holder.pouch->girth, length = holder.pouch->length;
    const double round = girth * girth / (4 * std::numbers::pi) * length / 1000,
                 square = girth * girth / 16 * length / 1000;
    Kit alone = contents_alone(kit, inside, 1);
    alone.bundle.shape = BundleShape::box;
    const double in_box = nesting::lower_bound_ml(alone);
    alone.bundle.shape = BundleShape::cylinder;
    const double in_round = nesting::lower_bound_ml(alone);
    constexpr double safety = 1 + 1e-9;
    if (in_box <= square * safety || in_round <= round * safety) {
        return std::nullopt;
    }
    return fmt::format("what must lie in the {} needs at least {:.1f} ml there, and the {} has at most {:.1f} ml",
                       holder.id, std::floor(10 * std::min(in_box, in_round)) / 10, holder.id,
                       std::ceil(10 * round) / 10);
}

} // namespace

std::optional<std::string> pouch_misfit(const Kit& kit)
{
    for (const CarryRule& rule : kit.rules) {
        if (rule.keep == Keep::within && kit.items[index_of(kit, rule.second)].pouch) {
            if (auto proof = too_far_round(kit, rule)) {
                return proof;
            }
        }
    }
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        if (kit.items[item].pouch) {
            if (auto proof = too_much(kit, item)) {
                return proof;
            }
        }
    }
    return std::nullopt;
}

std::string filling_in_words(const Kit& kit)
{
    std::vector<std::string> names;
    for (const Item& item : kit.items) {
        if (item.pouch && must_hold_something(kit, item.id)) {
            names.push_back("the " + item.id);
        }
    }
    std::string text = names.empty() ? "" : " with all that must lie in ";
    for (std::size_t k = 0; k < names.size(); ++k) {
        text += (k == 0 ? "" : k + 1 < names.size() ? ", " : " and ") + names[k];
    }
    return text;
}

Kit with_packed_pouches(Kit kit, const nesting::SearchOptions& given)
{
    nesting::SearchOptions options = given;
    options.progress = {};
    std::vector<std::pair<std::size_t, std::size_t>> order; // a pouch in a pouch first, for it holds fewer things
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        if (kit.items[item].pouch && must_hold_something(kit, kit.items[item].id)) {
            const auto inside = contents_of(kit, item);
            order.emplace_back(std::count(inside.begin(), inside.end(), true), item);
        }
    }
    std::sort(order.begin(), order.end());
    const std::uint64_t share = 1 + order.size() / 4; // many pouches take turns
    options.effort = {24, 4, 1, 60'000 / share, 200'000 / share};
    for (const auto& [count, pouch] : order) {
        add_pouch_forms(kit.items[pouch], packed_forms(kit, pouch, contents_of(kit, pouch), options));
    }
    return kit;
}

} // namespace tuckwright
