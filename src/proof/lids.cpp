// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

/// What keeps an item from being a lid that is shut on its vessel; empty when nothing does.
std::string fault(const Scene& scene, std::size_t lid, std::size_t vessel)
{
    const auto& items = scene.bundle().items;
    const std::string name = named(scene.bundle(), vessel);
    if (scene.lid(vessel) != lid) {
        return "a second lid, after " + named(scene.bundle(), *scene.lid(vessel));
    }
    if (items[lid].in != items[vessel].in) {
        return "not in the container that " + name + " is in";
    }
    if (items[vessel].cavities.empty()) {
        return name + " has no cavity";
    }
    if (items[vessel].cavities.front().opens != Opening::closed) {
        return "the cavity of " + name + " is open";
    }
    const Piece& plate = scene.solids(lid).front();
    const Piece& body = scene.solids(vessel).front();
    if (plate.axis[2] != body.axis[2]) {
        return "not the same way up as " + name;
    }
    const Piece& cavity = scene.cavities(vessel).front();
    if (cavity.axis[2] != body.axis[2]) {
        return "the cavity of " + name + " does not open towards a lid";
    }
    const Vector from = minus(plate.center, body.center);
    if (dot(from, body.axis[0]) != 0 || dot(from, body.axis[1]) != 0) {
        return "its axis is not the axis of " + name;
    }
    if (const Rational gap = dot(from, body.axis[2]) - plate.half[2] - body.half[2]; gap != 0) {
        return "it stands " + in_mm(std::abs(approximate(gap))) + (gap > 0 ? " above" : " below") + " the rim of " +
               name;
    }
    const Piece& mouth = scene.neck({vessel, 0}) ? *scene.neck({vessel, 0}) : cavity;
    if (const Fit cover = against_walls(mouth, room_of(plate, 0, true, true)); !cover.inside) {
        return "it leaves " + in_mm(cover.excess_nm) + " of the cavity of " + name + " uncovered";
    }
    return "";
}

} // namespace

void check_lids(const Scene& scene, Findings& findings)
{
    for (std::size_t lid = 0; lid < scene.size() && !findings.full(); ++lid) {
        if (const auto vessel = scene.bundle().items[lid].closes) {
            if (const std::string what = fault(scene, lid, *vessel); !what.empty()) {
                findings.add("lid", named(scene.bundle(), lid) + " is not a lid shut on " +
                                        named(scene.bundle(), *vessel) + ": " + what);
            }
        }
    }
}

void check_upright(const Scene& scene, Findings& findings)
{
    for (std::size_t item = 0; item < scene.size() && !findings.full(); ++item) {
        if (scene.bundle().items[item].upright && scene.solids(item).front().axis[2] != Vector{0, 0, 1}) {
            findings.add("upright", named(scene.bundle(), item) + " must stand upright, but it does not");
        }
    }
}

} // namespace tuckwright::proof
