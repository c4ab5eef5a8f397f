// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "proof/rules.hpp"
#include "tuckwright/tolerance.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::proof {

namespace {

double volume_of(const Shape& shape)
{
    constexpr double cubic_mm_per_ml = 1000;
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        return std::numbers::pi / 4 * cylinder->diameter * cylinder->diameter * cylinder->height / cubic_mm_per_ml;
    }
    const auto& box = std::get<Box>(shape);
    return box.length * box.width * box.height / cubic_mm_per_ml;
}

/// What is printed, and held to the limits: the bag's wall lies on every side of the envelope.
Shape with_bag(const Bundle& bundle)
{
    Shape outer = bundle.envelope;
    const double walls = bundle.bag ? bundle.bag->thickness + bundle.bag->thickness : 0;
    if (auto* cylinder = std::get_if<Cylinder>(&outer)) {
        cylinder->diameter += walls;
        cylinder->height += walls;
        return outer;
    }
    auto& box = std::get<Box>(outer);
    box.length += walls;
    box.width += walls;
    box.height += walls;
    return outer;
}

void keep(const char* what, double measure, const std::optional<double>& limit, Findings& findings)
{
    if (!limit) {
        return;
    }
    // A limit need not lie on the grid itself; rounded to it, it is what the envelope was held to.
    if (!(std::isfinite(*limit) && *limit > 0 && *limit <= longest_length_mm)) {
        findings.add("limit", fmt::format("the limit of the bundle's {} is {} mm, which is no limit", what, *limit));
    } else if (nanometres(measure) > nanometres(*limit)) {
        findings.add("limit", fmt::format("the bundle's {} is {} mm, above the limit of {} mm", what, measure, *limit));
    }
}

void check_shape(const Bundle& bundle, Findings& findings)
{
    const auto& rule = bundle.rule;
    const Shape outer = with_bag(bundle);
    if (const auto* cylinder = std::get_if<Cylinder>(&outer)) {
        if (rule.shape != BundleShape::cylinder) {
            findings.add("limit", "the bundle is a cylinder, but the kit asks for a box");
            return;
        }
        keep("diameter", cylinder->diameter, rule.diameter, findings);
        keep("height", cylinder->height, rule.height, findings);
        return;
    }
    if (rule.shape != BundleShape::box) {
        findings.add("limit", "the bundle is a box, but the kit asks for a cylinder");
        return;
    }
    const auto& box = std::get<Box>(outer);
    keep("length", box.length, rule.length, findings);
    keep("width", box.width, rule.width, findings);
    keep("height", box.height, rule.height, findings);
}

} // namespace

void check_limits(const Bundle& bundle, Findings& findings)
{
    check_shape(bundle, findings);
    const double volume = volume_of(with_bag(bundle)), bound = bundle.lower_bound_ml;
    if (!std::isfinite(bound) || bound < 0) {
        findings.add("limit", fmt::format("the lower bound is {} ml; it must be finite and not negative", bound));
    } else if (bound > volume * (1 + tolerance::printed_relative)) {
        findings.add("limit", fmt::format("the lower bound is {} ml, above the bundle's own {} ml", bound, volume));
    }
    constexpr double equal = tolerance::proved_best_relative + tolerance::printed_relative;
    if (bundle.status == Status::proved_best && !(volume <= bound * (1 + equal))) {
        findings.add("limit",
                     fmt::format("the status \"proved-best\" says that no bundle is smaller, but the lower bound "
                                 "is {} ml, below the bundle's own {} ml",
                                 bound, volume));
    }
    if (!has_bundle(bundle.status)) {
        findings.add("limit",
                     std::string("the status \"") + to_string(bundle.status) + "\" says that there is no bundle");
    }
}

} // namespace tuckwright::proof
