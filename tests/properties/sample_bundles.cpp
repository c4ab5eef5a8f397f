// SPDX-License-Identifier: GPL-3.0-or-later
#include "properties/sample_bundles.hpp"

#include <algorithm>
#include <filesystem>

#include "support/handmade_bundles.hpp"
#include "support/kit_text.hpp"
#include "support/worded.hpp"
#include "tuckwright/report.hpp"

namespace properties {

using namespace tuckwright;
using namespace tuckwright::test;
namespace fs = std::filesystem;

namespace {

void add_sample_kits(std::vector<Sample>& all)
{
    std::vector<fs::path> paths;
    for (const auto& entry : fs::directory_iterator(fs::path(TUCKWRIGHT_SOURCE_DIR) / "kits")) {
        if (entry.path().extension() == ".yaml") {
            paths.push_back(entry.path());
        }
    }
    std::sort(paths.begin(), paths.end());
    int packed = 0;
    for (const auto& path : paths) {
        const auto kit = read_kit_file(path.string());
        REQUIRE(kit.ok());
        Bundle bundle = solved(*kit, Effort::quick);
        if (has_bundle(bundle.status)) { // at quick effort not every kit must meet its limits
            all.push_back({path.stem().string(), std::move(bundle)});
            ++packed;
        }
    }
    REQUIRE(packed >= 3);
}

/// Kits whose bundles need each kind of proof: planes between round things, turned boxes, lids, sleeves, protrusions.
void add_written_kits(std::vector<Sample>& all)
{
    const auto add = [&](const std::string& name, const KitText& kit) {
        Bundle bundle = solved(kit, Effort::quick);
        INFO(name);
        REQUIRE(has_bundle(bundle.status));
        all.push_back({name, std::move(bundle)});
    };
    add("five tins", KitText("{shape: cylinder, limits: {height: 30}}").item("tin", cylinder(40, 30), 5));
    add("boxes in a box", KitText(box_bundle()).item("slab", box(20, 40, 40), 6).item("cube", box(20, 20, 20), 3));
    add("boxes in a round bundle",
        KitText("{shape: cylinder, limits: {height: 30}}").item("book", box(70, 50, 30), 2).item("rod", cylinder(9, 25), 2));
    add("pot with a lid", KitText(round_bundle(), 0.5)
                              .item("pot", cylinder(120, 90) + ", inside: {wall: 1, base: 1, opens: top}")
                              .item("lid", cylinder(121, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}")
                              .item("cup", cylinder(70, 60) + ", inside: {wall: 1, base: 1, opens: top}")
                              .item("salt", cylinder(30, 40), 2)
                              .item("bar", box(60, 20, 15)));
    add("ring pressed into a pot", KitText(box_bundle(), 0.5)
                                       .item("pot", cylinder(112, 92) + ", inside: {wall: 1, base: 1}")
                                       .item("ring", cylinder(112, 60) + ", inside: {wall: 0.5, opens: both}, "
                                                                         "press-fit: {into: pot, gives: 3}")
                                       .item("cup", cylinder(100, 70) + ", inside: {wall: 1, base: 1}")
                                       .item("salt", cylinder(30, 40), 2));
    add("rod in a cup", KitText(box_bundle(), 0.5)
                            .item("cup", cylinder(80, 70) + ", inside: {wall: 1, base: 1, opens: top}")
                            .item("ring", cylinder(70, 50) + ", inside: {wall: 1, opens: both}")
                            .item("rod", cylinder(12, 110) + ", upright: yes")
                            .item("tin", cylinder(40, 40)));
    add("pouch in a pail", KitText(round_bundle(), 0.5)
                               .item("pail", cylinder(110, 90) + ", inside: {wall: 1, base: 1}")
                               .item("ditty", "pouch: {girth: 200, length: 90, thickness: 1}")
                               .item("reel", cylinder(40, 30) + ", goes-in: ditty", 2)
                               .item("awl", box(70, 12, 12) + ", goes-in: ditty"));
}

} // namespace

const std::vector<Sample>& samples()
{
    static const std::vector<Sample> all = [] {
        std::vector<Sample> made;
        for (const auto& sample : handmade::all()) {
            made.push_back({sample.name, with_words(sample.make())});
        }
        add_sample_kits(made);
        add_written_kits(made);
        return made;
    }();
    return all;
}

} // namespace properties
