// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/company_of_kit.hpp"

#include <algorithm>
#include <fmt/format.h>

#include "nesting/misfit.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::nesting {

using packing::Company;

namespace {

std::size_t item_of(const Kit& kit, const std::string& id)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    require(found != kit.items.end(), "a rule is about items of the kit");
    return static_cast<std::size_t>(found - kit.items.begin());
}

/// Whether the body is the item or has it as its shut lid.
bool speaks_for(const Origin& origin, std::size_t item)
{
    return origin.self.item == item || (origin.lid && origin.lid->item == item);
}

/// The bodies that are that item themselves, so that they can hold others or lie beside them: no shut lid does.
std::vector<int> bodies_of(const std::vector<Origin>& origins, std::size_t item)
{
    std::vector<int> bodies;
    for (std::size_t body = 0; body < origins.size(); ++body) {
        if (origins[body].self.item == item) {
            bodies.push_back(static_cast<int>(body));
        }
    }
    return bodies;
}

void add_rule(const CarryRule& rule, std::size_t first, std::size_t second, const std::vector<Origin>& origins,
              Company& company)
{
    for (std::size_t i = 0; i < origins.size(); ++i) {
        if (!speaks_for(origins[i], first)) {
            continue;
        }
        if (rule.keep == Keep::together) {
            if (company.together.empty()) { // most kits have none, and then it costs nothing
                company.together.resize(origins.size());
            }
            company.together[i].push_back(bodies_of(origins, second));
            continue;
        }
        for (std::size_t j = 0; j < origins.size() && rule.keep != Keep::within; ++j) {
            if (i != j && speaks_for(origins[j], second)) {
                if (rule.keep == Keep::apart) {
                    company.apart[i][j] = company.apart[j][i] = true;
                } else if (origins[j].self.item == second) {
                    company.out[i][j] = true;
                }
            }
        }
        if (rule.keep == Keep::within && origins[i].self.item != second) { // a lid on the vessel itself is in it
            company.within[i].push_back(bodies_of(origins, second));
        }
    }
}

} // namespace

Company company_of(const Kit& kit, const std::vector<Origin>& origins)
{
    Company company;
    if (kit.rules.empty()) {
        return company;
    }
    company.apart.assign(origins.size(), std::vector<bool>(origins.size(), false));
    company.out = company.apart;
    company.within.resize(origins.size());
    for (const CarryRule& rule : kit.rules) {
        if (rule.keep == Keep::shut) {
            continue; // every scene has it so
        }
        add_rule(rule, item_of(kit, rule.first), item_of(kit, rule.second), origins, company);
    }
    return company;
}

namespace {

/// Whether both must lie in the same item, of which there is one.
std::optional<std::string> common_vessel(const Kit& kit, const std::string& a, const std::string& b)
{
    for (const CarryRule& one : kit.rules) {
        for (const CarryRule& other : kit.rules) {
            if (one.keep == Keep::within && other.keep == Keep::within && one.first == a && other.first == b &&
                one.second == other.second && kit.items[item_of(kit, one.second)].count == 1) {
                return one.second;
            }
        }
    }
    return std::nullopt;
}

/// The vessel that one of the two must lie in, where they must lie together too and so meet in it.
std::optional<std::string> vessel_that_brings_together(const Kit& kit, const CarryRule& apart)
{
    for (const CarryRule& one : kit.rules) {
        const bool same = (one.first == apart.first && one.second == apart.second) ||
                          (one.first == apart.second && one.second == apart.first);
        if (one.keep != Keep::together || !same) {
            continue;
        }
        for (const CarryRule& other : kit.rules) {
            if (other.keep == Keep::within && other.first == one.first) {
                return other.second;
            }
        }
    }
    return std::nullopt;
}

/// In a vessel that lies, even an upright thing is turned against the cavity.
Item turned_freely(Item item)
{
    item.upright = false;
    return item;
}

/// Whether an item could enter a vessel, whatever the forms of both; sheets, cloths and pouches have too many to tell.
bool fits_in_some_form(const Item& item, const Item& vessel)
{
    bool fits = item.sheet || item.cloth || item.pouch || vessel.sheet || vessel.pouch;
    for (std::size_t k = 0; k <= vessel.forms.size() && !fits; ++k) {
        const Item holder = in_form(vessel, k);
        for (std::size_t form = 0; form <= item.forms.size() && holder.inside && !fits; ++form) {
            const Item as_it_is = in_form(item, form);
            fits = could_enter(as_it_is, holder.inside->shape, holder.inside->opens == Opening::closed) &&
                   (!holder.inside->neck || could_enter(as_it_is, *holder.inside->neck, false));
        }
    }
    return fits;
}

} // namespace

std::optional<std::string> rules_misfit(const Kit& kit)
{
    for (const Item& item : kit.items) {
        if (item.press && height_of(item.outside) > height_of(kit.items[item.press->item].inside->shape)) {
            return fmt::format("the {} is pressed into the {}, but is higher than that is deep", item.id,
                               kit.items[item.press->item].id);
        }
    }
    for (const CarryRule& rule : kit.rules) {
        const Item &item = kit.items[item_of(kit, rule.first)], &vessel = kit.items[item_of(kit, rule.second)];
        const bool fits = fits_in_some_form(turned_freely(item), vessel);
        if (rule.keep == Keep::within && !item.closes && !fits) {
            return fmt::format("the {} must lie in the {} ({}), but fits it in no turn", rule.first, rule.second,
                               rule.why);
        }
        const auto vessel_of_both = common_vessel(kit, rule.first, rule.second);
        if (rule.keep == Keep::apart && vessel_of_both) {
            return fmt::format("the {} and the {} must both lie in the {}, but {}", rule.first, rule.second,
                               *vessel_of_both, rule.why);
        }
        const auto meeting = rule.keep == Keep::apart ? vessel_that_brings_together(kit, rule) : std::nullopt;
        if (meeting) {
            return fmt::format("the {} and the {} must lie together and in the {}, but {}", rule.first, rule.second,
                               *meeting, rule.why);
        }
    }
    return std::nullopt;
}

} // namespace tuckwright::nesting
