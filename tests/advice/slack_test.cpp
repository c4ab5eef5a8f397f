// SPDX-License-Identifier: GPL-3.0-or-later
/// Chains of bundles that were packed: they add up, and what is in none of them may get smaller without any effect.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "properties/random_kits.hpp"
#include "solve/compacted.hpp"
#include "support/workload.hpp"
#include "tuckwright/savings.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

std::vector<Kit> sample_kits()
{
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(TUCKWRIGHT_SOURCE_DIR "/kits")) {
        if (entry.path().extension() == ".yaml") {
            paths.push_back(entry.path().string());
        }
    }
    std::sort(paths.begin(), paths.end());
    std::vector<Kit> kits;
    for (const std::string& path : paths) {
        const auto kit = read_kit_file(path);
        REQUIRE(kit.ok());
        kits.push_back(*kit);
    }
    return kits;
}

void check_chains(const Bundle& bundle, const std::vector<Chain>& all)
{
    REQUIRE(all.size() == (std::holds_alternative<Cylinder>(bundle.envelope) ? 2 : 3));
    for (const Chain& chain : all) {
        double sum = 0;
        for (const Stretch& stretch : chain.stretches) {
            sum += stretch.mm;
        }
        INFO(bundle.kit << ", " << to_string(chain.dimension));
        CHECK(std::abs(sum - chain.mm) < 1e-6);
        const auto faults = chain_faults(bundle, chain);
        INFO((faults.empty() ? "" : faults.front()));
        CHECK(faults.empty());
    }
}

/// How many sizes of things in no chain were made smaller.
int check_slack(const Kit& kit, const Bundle& bundle, const std::vector<Chain>& all)
{
    constexpr double less = 0.3; // mm
    const auto in = in_chains(all);
    int asked = 0;
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        WhatIf ask;
        ask.item = item;
        ask.mm = less;
        bool in_chain = false;
        for (std::size_t k = 0; k < bundle.items.size(); ++k) {
            if (bundle.items[k].id == kit.items[item].id) {
                in_chain = in_chain || std::binary_search(in.begin(), in.end(), k);
                ask.form = bundle.items[k].stowed;
            }
        }
        const bool is_round = std::holds_alternative<Cylinder>(kit.items[item].outside);
        for (const Dimension side : is_round ? std::vector<Dimension>{Dimension::height, Dimension::diameter}
                                             : std::vector<Dimension>{Dimension::length, Dimension::height}) {
            ask.side = side;
            const auto smaller = in_chain ? std::nullopt : changed(kit, ask);
            const auto again = smaller ? compacted(*smaller, bundle) : std::nullopt;
            if (again) {
                INFO(bundle.kit << ": " << kit.items[item].id << " " << to_string(side));
                CHECK(packed_volume_ml(*again) == Approx(packed_volume_ml(bundle)).epsilon(1e-6));
                ++asked;
            }
        }
    }
    return asked;
}

} // namespace

TEST_CASE("chains add up for all sample kits, and slack in what is in none of them changes nothing, in twenty kits")
{
    std::vector<Kit> kits = sample_kits();
    Dice dice(20);
    while (kits.size() < 20) {
        kits.push_back(kit_of(properties::text_of(properties::random_items(dice), round_bundle()).text()));
    }
    int asked = 0;
    for (int k = 0; k < test::count(20, 2); ++k) {
        const Kit& kit = kits[static_cast<std::size_t>(k)];
        const Bundle first = solved(kit, Effort::quick);
        REQUIRE(has_bundle(first.status));
        check_chains(first, chains(first));
        const auto pushed = compacted(kit, first); // as far as it goes, so that what follows is due to the change
        REQUIRE(pushed);
        const auto all = chains(*pushed);
        check_chains(*pushed, all);
        asked += check_slack(kit, *pushed, all);
    }
    CHECK(asked > test::count(150, 10));
}
