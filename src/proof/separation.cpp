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

/// What lies in a cavity keeps off the container's own solids by keeping within its prism. A solid that does not, since
/// it lies beyond the rim, must be kept apart from them by planes.
void check_holder(const Scene& scene, std::size_t outer, std::size_t inner, Findings& findings)
{
    for (const auto& where : containers_of(scene.bundle(), inner)) {
        for (std::size_t i = 0; where.item == outer && i < scene.solids(inner).size(); ++i) {
            if (keeps_to_prism(scene.solids(inner)[i], scene.room_for(inner, where))) {
                continue;
            }
            const bool is_wide = against_walls(scene.solids(inner)[i], scene.room_for(inner, where)).inside; // beyond the rim
            for (std::size_t j = is_wide ? 1 : 0; j < scene.solids(outer).size(); ++j) {
                const Parting parting =
                    part(scene.solids(inner)[i], scene.solids(outer)[j], scene.normals(inner, i, outer, j));
                if (!parting.proved) {
                    findings.add("apart", named(scene.bundle(), inner) + " and " + named(scene.bundle(), outer) +
                                              ", which it is in, are not proved apart beyond the rim");
                    return;
                }
            }
        }
    }
}

} // namespace

void check_apart(const Scene& scene, Findings& findings)
{
    for (std::size_t first = 0; first < scene.size(); ++first) {
        for (std::size_t second = first + 1; second < scene.size() && !findings.full(); ++second) {
            if (holds(scene.bundle(), first, second)) {
                check_holder(scene, first, second, findings);
            } else if (holds(scene.bundle(), second, first)) {
                check_holder(scene, second, first, findings);
            } else {
                check_pair(scene, first, second, findings);
            }
        }
    }
}

} // namespace tuckwright::proof
