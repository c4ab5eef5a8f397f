// SPDX-License-Identifier: GPL-3.0-or-later
/// What holds of every kit, however nasty, from the text of its file to the saved bundle.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdio>

#include "properties/nasty_kits.hpp"
#include "support/workload.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;
using namespace tuckwright::test;
using namespace properties;

namespace {

using Items = std::vector<RandomItem>;

std::string shape_of(std::uint64_t trial) { return trial % 2 == 0 ? round_bundle() : box_bundle(); }

/// No further than the first proved bundle where `any_size`, else as `pack --effort quick` does.
Bundle packed(const Kit& kit, bool any_size)
{
    SolveOptions options;
    options.effort = Effort::quick;
    options.any_size = any_size;
    options.threads = 1;
    return solve(kit, options);
}

double volume_of(const Bundle& bundle) { return volume_ml(outer_envelope(bundle)); }

/// The whole way of the program: it is proved, holds what the kit has, and is the same after it was saved.
void require_sound(const Bundle& bundle, const Kit& kit)
{
    CHECK(bundle.status != Status::does_not_fit); // there are no limits
    if (!has_bundle(bundle.status)) {
        CHECK(bundle.items.empty());
        return;
    }
    const auto told = [](const std::vector<Objection>& objections) {
        return objections.empty() ? "" : objections.front().rule + ": " + objections.front().what;
    };
    CHECK(told(check(bundle)) == "");
    CHECK(told(check_against(bundle, kit)) == "");
    CHECK(bundle.lower_bound_ml <= volume_of(bundle) * (1 + 1e-9));
    const std::string json = to_json(bundle);
    const auto saved = read_saved(json, "bundle.json");
    REQUIRE(saved.ok());
    CHECK(saved->contradictions.empty());
    CHECK(to_json(saved->bundle) == json);
    CHECK(told(check(saved->bundle)) == "");
    CHECK(wrong_words(saved->bundle, "bundle.json").empty());
    CHECK(has_words_of_today(saved->bundle));
    CHECK(wrong_figures(saved->bundle, "bundle.json").empty());
    CHECK_FALSE(text_report(bundle).empty());
}

/// Neither is below what is proved of the other.
void require_agreement(const Bundle& a, const Bundle& b, double scale)
{
    if (!has_bundle(a.status) || !has_bundle(b.status)) {
        return;
    }
    const double first = volume_of(a) * scale, second = volume_of(b), rounding = 1 + 1e-6;
    CHECK(a.lower_bound_ml * scale <= second * rounding);
    CHECK(b.lower_bound_ml <= first * rounding);
}

void scale_point(Vec3& point) { point = {2 * point.x, 2 * point.y, 2 * point.z}; }

void scale_shape(Shape& shape)
{
    if (auto* c = std::get_if<Cylinder>(&shape)) {
        *c = {2 * c->diameter, 2 * c->height, 2 * c->foot};
    } else {
        auto& b = std::get<Box>(shape);
        b = {2 * b.length, 2 * b.width, 2 * b.height};
    }
}

/// Twice as large in every direction.
Bundle doubled(Bundle bundle)
{
    bundle.clearance *= 2;
    bundle.lower_bound_ml *= 8;
    scale_shape(bundle.envelope);
    for (auto& item : bundle.items) {
        for (auto& solid : item.solids) {
            scale_shape(solid.shape);
            scale_point(solid.pose.center);
        }
        for (auto& cavity : item.cavities) {
            scale_shape(cavity.shape);
            scale_point(cavity.pose.center);
        }
    }
    for (auto& step : bundle.steps) {
        if (step.via) {
            scale_point(*step.via);
        }
    }
    for (auto& rest : bundle.certificate.rests) {
        scale_point(rest.point);
    }
    return bundle;
}

/// Rules other than "rest" that a bundle breaks: what is smaller, or twice as high above what it lies on, may hang in the air.
std::string broken_rules(const Bundle& bundle)
{
    std::string rules;
    for (const auto& objection : check(bundle, 100)) {
        if (objection.rule != "rest") {
            rules += objection.rule + ": " + objection.what + "\n";
        }
    }
    return rules;
}

/// One thing that holds nothing and closes nothing, smaller all round its middle; false where there is none.
bool shrink_one(Bundle& bundle, Dice& dice)
{
    const std::size_t i = static_cast<std::size_t>(dice.below(static_cast<int>(bundle.items.size())));
    auto& item = bundle.items[i];
    if (!item.cavities.empty() || item.closes || item.pressed || item.solids.size() != 1) {
        return false;
    }
    const double factor = 1 - log_length(dice, 1e-4, 0.9);
    const auto less = [&](double& side) { side = std::max(snap(side * factor), 1e-3); };
    if (auto* c = std::get_if<Cylinder>(&item.solids[0].shape)) {
        less(c->diameter);
        less(c->height);
    } else {
        auto& b = std::get<Box>(item.solids[0].shape);
        less(b.length);
        less(b.width);
        less(b.height);
    }
    return true;
}

/// Other names in another order, lids behind their vessels.
Items renamed_and_reordered(const Items& items, Dice& dice)
{
    Items others;
    for (std::size_t k = 0; k < items.size(); ++k) {
        if (items[k].lid) {
            continue;
        }
        const bool has_lid = k + 1 < items.size() && items[k + 1].lid;
        Items group(items.begin() + static_cast<std::ptrdiff_t>(k), items.begin() + static_cast<std::ptrdiff_t>(k) + (has_lid ? 2 : 1));
        group[0].id = "other-" + std::to_string(items.size() - k);
        if (has_lid) {
            group[1].id = group[0].id + "-lid";
        }
        const std::size_t at = dice.below(2) == 0 ? 0 : others.size();
        others.insert(others.begin() + static_cast<std::ptrdiff_t>(at), group.begin(), group.end());
    }
    return others;
}

/// Whether all sides would still be at most ten metres.
bool can_be_doubled(const Items& items)
{
    return std::all_of(items.begin(), items.end(), [](const RandomItem& item) {
        return std::all_of(item.outside.begin(), item.outside.end(), [](double side) { return side < 4990; });
    });
}

/// How far the first search goes, and what is asked.
enum class Depth { first_bundle_alone, first_bundle, search };

/// Everything that is asked of one kit; of the first bundle alone only that it is sound.
void try_kit(std::uint64_t seed, std::size_t kind, bool large, Depth depth)
{
    Dice dice(seed);
    const Items items = nasty_items(dice, kind, large);
    const KitText text = text_of(items, shape_of(seed / nasty_kinds.size()));
    INFO(nasty_kinds[kind] << ", seed " << seed << "\n" << text.text());
    const Kit kit = kit_of(text.text());
    const Bundle bundle = packed(kit, depth != Depth::search);
    require_sound(bundle, kit);
    if (depth == Depth::first_bundle_alone || !has_bundle(bundle.status)) {
        return;
    }
    const Kit others = kit_of(text_of(renamed_and_reordered(items, dice), shape_of(seed / nasty_kinds.size())).text());
    require_agreement(bundle, packed(others, true), 1);
    Items more = items;
    more.push_back(random_item(dice, 99));
    const Bundle with_more = packed(kit_of(text_of(more, shape_of(seed / nasty_kinds.size())).text()), true);
    CHECK((!has_bundle(with_more.status) || volume_of(with_more) >= bundle.lower_bound_ml * (1 - 1e-9)));
    if (can_be_doubled(items)) {
        CHECK(broken_rules(doubled(bundle)) == "");
        require_agreement(bundle, packed(kit_of(text_of(items, shape_of(seed / nasty_kinds.size()), 2).text()), true), 8);
    }
    Bundle smaller = bundle;
    smaller.lower_bound_ml = 0;
    smaller.status = Status::found;
    if (shrink_one(smaller, dice)) {
        CHECK(broken_rules(smaller) == "");
    }
}

} // namespace

TEST_CASE("nasty kits are packed and proved, and larger, smaller, renamed and reordered ones agree with them")
{
    for (int trial = 0; trial < count(18, 9); ++trial) {
        try_kit(static_cast<std::uint64_t>(trial), static_cast<std::size_t>(trial) % nasty_kinds.size(), false, Depth::search);
    }
}

TEST_CASE("ten thousand nasty kits, some with hundreds of things or ten cups in one another", "[.long]")
{
    for (std::uint64_t seed = 1000; seed < 11'000; ++seed) {
        const std::size_t kind = seed % nasty_kinds.size(), turn = seed / nasty_kinds.size();
        const bool large = turn % 20 == 0 && (kind == 6 || kind == 7);
        try_kit(seed, kind, large,
                large             ? Depth::first_bundle_alone
                : turn % 20 == 10 ? Depth::search
                : turn % 4 == 1   ? Depth::first_bundle
                                  : Depth::first_bundle_alone);
        if (seed % 500 == 0) {
            std::fprintf(stderr, "%d kits tried\n", static_cast<int>(seed - 1000));
        }
    }
}
