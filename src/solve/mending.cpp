// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/mending.hpp"

#include <algorithm>

#include "nesting/bundle_of_layout.hpp"
#include "packing/pile.hpp"
#include "packing/steadying.hpp"

namespace tuckwright {

bool has_many(const nesting::Proposal& proposal) { return packing::is_large(proposal.scene->scene); }

std::vector<std::size_t> without_rest(const Bundle& bundle)
{
    std::vector<bool> rests(bundle.items.size(), false);
    for (const Rest& rest : bundle.certificate.rests) {
        rests[rest.item] = true;
    }
    std::vector<std::size_t> found;
    for (std::size_t item = 0; item < rests.size(); ++item) {
        if (!rests[item] && !bundle.items[item].closes && !bundle.items[item].pressed) {
            found.push_back(item);
        }
    }
    return found;
}

std::vector<std::size_t> objected_to(const Bundle& bundle, const std::vector<Objection>& objections)
{
    std::vector<std::size_t> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const std::string name = '"' + label(bundle, item) + '"';
        if (std::any_of(objections.begin(), objections.end(),
                        [&](const Objection& objection) { return objection.what.starts_with(name); })) {
            found.push_back(item);
        }
    }
    return found;
}

void put_elsewhere(const Kit& kit, nesting::Proposal& proposal, const std::vector<std::size_t>& items,
                   packing::Random& random, packing::Going going)
{
    constexpr int samples = 200;
    packing::Layout trial = proposal.layout;
    trial.count_anew();
    const std::vector<std::size_t> of_bodies = nesting::items_of_bodies(kit, *proposal.scene);
    for (std::size_t body = 0; body < of_bodies.size(); ++body) {
        if (std::find(items.begin(), items.end(), of_bodies[body]) != items.end()) {
            packing::place_anew(trial, static_cast<int>(body), random, samples, going);
        }
    }
    if (packing::steady(trial, random, nesting::envelope_limits(kit))) {
        proposal.layout = trial;
        proposal.volume = packing::volume(trial.envelope());
    }
}

} // namespace tuckwright
