// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/apart.hpp"
#include "proof/forest.hpp"
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

void check_pair(const Scene& scene, std::size_t first, std::size_t second, Findings& findings)
{
    const auto& ones = scene.solids(first);
    const auto& others = scene.solids(second);
    for (std::size_t i = 0; i < ones.size(); ++i) {
        for (std::size_t j = 0; j < others.size(); ++j) {
            const Parting parting = part(ones[i], others[j], scene.normals(first, i, second, j));
            if (!parting.proved) {
                findings.add("apart", named(scene.bundle(), first) + " and " + named(scene.bundle(), second) +
                                          " are not proved apart: the best plane misses by " +
                                          in_mm(parting.missed_nm));
                return;
            }
        }
    }
}

} // namespace

void check_apart(const Scene& scene, Findings& findings)
{
    for (std::size_t first = 0; first < scene.size(); ++first) {
        for (std::size_t second = first + 1; second < scene.size() && !findings.full(); ++second) {
            if (!holds(scene.bundle(), first, second) && !holds(scene.bundle(), second, first)) {
                check_pair(scene, first, second, findings);
            }
        }
    }
}

} // namespace tuckwright::proof
