// SPDX-License-Identifier: GPL-3.0-or-later
// Reads the fields first, telling everything that is missing or of the wrong kind; only when all are there, what they
// refer to; and only when all of that is there, whether the printed figures follow.
#include <fmt/format.h>

#include <limits>

#include "report/covers.hpp"
#include "report/json_items.hpp"
#include "report/json_node.hpp"
#include "report/json_parse.hpp"
#include "report/printed_figures.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

using report::Faults;
using report::Node;
using report::part_of_bundle;

constexpr double largest_volume = 1e30; // ml
constexpr std::size_t most_rules = 1'000'000;
constexpr std::size_t most_waived = 1000;

void read_format(const Node& root)
{
    constexpr auto remedy = "give a file that `pack --json` wrote";
    if (!root.has("format")) {
        root.fault("format: is missing, so this is not a saved bundle", remedy);
        return;
    }
    if (const auto format = root.field("format"); format && format->text() != "tuckwright-bundle") {
        format->fault("must be \"tuckwright-bundle\"; this is not a saved bundle", remedy);
        return;
    }
    if (const auto version = root.field("version")) {
        const auto number = version->whole(0, std::numeric_limits<std::int64_t>::max());
        if (number != 1) {
            version->fault(fmt::format("this program reads version 1, not {}", number));
        }
    }
}

void read_status(const Node& root, Bundle& bundle)
{
    const auto node = root.field("status");
    if (!node) {
        return;
    }
    const std::string word = node->text();
    for (const auto status :
         {Status::proved_best, Status::found, Status::stopped, Status::does_not_fit, Status::not_found}) {
        if (word == to_string(status)) {
            bundle.status = status;
            return;
        }
    }
    node->fault("must be proved-best, found, stopped, does-not-fit or not-found");
}

BundleShape read_shape_word(const Node& parent)
{
    const auto node = parent.field("shape");
    const std::string word = node ? node->text() : "cylinder";
    if (word != "cylinder" && word != "box") {
        node->fault("must be cylinder or box");
    }
    return word == "box" ? BundleShape::box : BundleShape::cylinder;
}

void read_limits(const Node& root, BundleRule& rule)
{
    const auto node = root.field("limits");
    if (!node || !node->object()) {
        return;
    }
    rule.shape = read_shape_word(*node);
    const auto read = [&](const char* key, std::optional<double>& limit) {
        if (node->has(key)) {
            limit = node->length(key);
        }
    };
    read("diameter_mm", rule.diameter);
    read("length_mm", rule.length);
    read("width_mm", rule.width);
    read("height_mm", rule.height);
}

Keep read_keep(const Node& parent)
{
    const auto node = parent.field("keep");
    const std::string word = node ? node->text() : "apart";
    if (word == "within") {
        return Keep::within;
    }
    if (word == "out") {
        return Keep::out;
    }
    if (word == "together") {
        return Keep::together;
    }
    if (word == "shut") {
        return Keep::shut;
    }
    if (word != "apart") {
        node->fault("must be apart, within, out, together or shut");
    }
    return Keep::apart;
}

/// Whether the items are there is for the check to say.
void read_rules(const Node& root, std::vector<CarryRule>& rules)
{
    for (const auto& node : root.list("rules", 0, most_rules)) {
        if (node.object()) {
            rules.push_back({read_keep(node), node.text("first"), node.text("second"), node.text("why")});
        }
    }
}

void read_waived(const Node& root, std::vector<std::string>& waived)
{
    for (const auto& node : root.list("waived", 0, most_waived)) {
        waived.push_back(node.text());
    }
}

void read_envelope(const Node& root, Bundle& bundle)
{
    const auto node = part_of_bundle(root, "bundle", bundle.status);
    if (!node) {
        return;
    }
    // The file tells the sizes of the bag round it.
    const double walls = bundle.bag ? 2 * bundle.bag->thickness : 0;
    const auto within = [&](const char* key) { return walls == 0 ? node->length(key) : snap(node->length(key) - walls); };
    if (read_shape_word(*node) == BundleShape::cylinder) {
        bundle.envelope = Cylinder{within("diameter_mm"), within("height_mm")};
    } else {
        bundle.envelope = Box{within("length_mm"), within("width_mm"), within("height_mm")};
    }
    node->number("volume_ml", largest_volume);
}

void read_head(const Node& root, Bundle& bundle)
{
    bundle.kit = root.text("kit");
    if (const auto seed = root.field("seed")) {
        bundle.seed = seed->natural();
    }
    bundle.effort = root.text("effort");
    read_status(root, bundle);
    bundle.explanation = root.text("explanation");
    bundle.clearance = root.length("clearance_mm");
    bundle.worst_case = root.flag("worst_case");
    read_limits(root, bundle.rule);
    read_rules(root, bundle.rules);
    read_waived(root, bundle.waived);
    report::read_covers(root, bundle);
    read_envelope(root, bundle);
    bundle.lower_bound_ml = root.number("lower_bound_ml", largest_volume);
    root.field("gap"); // what they say is seen last, for it follows from the rest
    root.field("weight_g");
}

} // namespace

Result<SavedBundle> read_saved(std::string_view text, const std::string& name)
{
    const auto parsed = report::parse_json(text, name);
    if (!parsed) {
        return parsed.problems();
    }
    Faults faults(name);
    const Node root(*parsed, "", faults);
    SavedBundle saved;
    if (root.object()) {
        read_format(root);
    }
    if (!faults.any()) {
        read_head(root, saved.bundle);
        report::read_items(root, saved.bundle);
    }
    if (faults.any()) {
        return faults.take();
    }
    saved.cover_words_differ = !report::check_printed_figures(root, saved.bundle);
    saved.contradictions = faults.take();
    return saved;
}

Result<Bundle> from_json(std::string_view text, const std::string& name)
{
    auto saved = read_saved(text, name);
    if (!saved) {
        return saved.problems();
    }
    if (!saved->contradictions.empty()) {
        return saved->contradictions;
    }
    return std::move(saved).value().bundle;
}

} // namespace tuckwright
