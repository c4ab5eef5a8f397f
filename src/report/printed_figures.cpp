// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/printed_figures.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "report/covers.hpp"
#include "report/figures.hpp"
#include "report/json_items.hpp"
#include "tuckwright/tolerance.hpp"

namespace tuckwright::report {

namespace {

constexpr double any = 1e300; // sizes were checked when the fields were read
constexpr std::size_t any_number = std::numeric_limits<std::size_t>::max();

void check_figure(const Node& parent, const char* key, double expected, double scale)
{
    const auto node = parent.field(key);
    if (!node) {
        return;
    }
    const double printed = node->number(any);
    if (!(std::abs(printed - expected) <= tolerance::printed_relative * scale)) {
        node->fault(fmt::format("is {}, but {} follows from the rest", printed, expected));
    }
}

void check_gap(const Node& root, const Bundle& bundle)
{
    const auto expected = gap_of(bundle);
    if (expected) {
        // A difference of volumes, both printed in full: small beside them, and so must be what is let pass.
        check_figure(root, "gap", *expected, 1e-3 * (1 + *expected));
    } else if (const auto node = root.field("gap"); node && !node->null()) {
        node->fault("must be null where there is no bundle or no lower bound");
    }
}

void check_weights(const Node& root, const Bundle& bundle)
{
    if (const auto node = part_of_bundle(root, "weight_g", bundle.status)) {
        const auto weights = weights_of(bundle);
        check_figure(*node, "total", weights.total, std::abs(weights.total));
        check_figure(*node, "empty", weights.empty, std::abs(weights.empty));
        check_figure(*node, "contents", weights.contents, std::abs(weights.contents));
    }
}

void check_rotation(const Node& part, const Pose& pose)
{
    const auto expected = rotation_matrix(pose.turn);
    const auto rows = part.list("rotation", 3, 3);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto entries = rows[i].list(3, 3);
        for (std::size_t k = 0; k < entries.size(); ++k) {
            const double printed = entries[k].number(any);
            if (!(std::abs(printed - expected[i][k]) <= tolerance::printed_rotation)) {
                entries[k].fault(fmt::format("is {}, but {} follows from the quaternion", printed, expected[i][k]));
            }
        }
    }
}

void check_rotations(const Node& root, const Bundle& bundle)
{
    const auto items = root.list("items", 0, bundle.items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
        const auto solids = items[i].list("solids", 0, any_number);
        for (std::size_t k = 0; k < solids.size(); ++k) {
            check_rotation(solids[k], bundle.items[i].solids[k].pose);
        }
        const auto cavities = items[i].list("cavities", 0, any_number);
        for (std::size_t k = 0; k < cavities.size(); ++k) {
            check_rotation(cavities[k], bundle.items[i].cavities[k].pose);
        }
    }
}

void check_containers(const Node& root, const Bundle& bundle)
{
    const auto steps = root.list("steps", 0, any_number);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const auto expected = into_of(bundle, bundle.steps[i].item);
        const auto node = steps[i].field("into");
        if (node && node->text() != expected) {
            node->fault(fmt::format("must be \"{}\", into which the item goes", expected));
        }
    }
}

} // namespace

bool check_printed_figures(const Node& root, const Bundle& bundle)
{
    if (has_bundle(bundle.status)) { // first, for the gap follows from it
        const double volume = volume_ml(outer_envelope(bundle));
        if (const auto node = root.field("bundle")) {
            check_figure(*node, "volume_ml", volume, std::abs(volume));
        }
    }
    check_gap(root, bundle);
    check_weights(root, bundle);
    if (!has_bundle(bundle.status)) {
        return true;
    }
    check_rotations(root, bundle);
    check_containers(root, bundle);
    return check_cover_steps(root, bundle);
}

} // namespace tuckwright::report
