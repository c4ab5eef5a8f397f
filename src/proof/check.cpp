// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/forest.hpp"
#include "proof/numbers.hpp"
#include "proof/rules.hpp"

namespace tuckwright {

std::vector<Objection> check(const Bundle& bundle, std::size_t most)
{
    proof::Findings findings(most);
    if (bundle.items.empty()) {
        findings.add("forest", "the bundle holds no items");
        return findings.take();
    }
    // What follows relies on sound numbers, and then on a sound forest.
    proof::check_numbers(bundle, findings);
    if (findings.empty()) {
        proof::check_forest(bundle, findings);
    }
    if (!findings.empty()) {
        return findings.take();
    }
    proof::check_carrying(bundle, findings);
    if (findings.full()) {
        return findings.take();
    }
    const proof::Scene scene(bundle);
    for (const auto rule :
         {proof::check_cavities, proof::check_inside, proof::check_apart, proof::check_lids, proof::check_upright,
          proof::check_rests, proof::check_loads, proof::check_steps, proof::check_reach, proof::check_girth}) {
        rule(scene, findings);
        if (findings.full()) {
            return findings.take();
        }
    }
    proof::check_limits(bundle, findings);
    return findings.take();
}

} // namespace tuckwright
