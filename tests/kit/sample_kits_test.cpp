// SPDX-License-Identifier: GPL-3.0-or-later
/// The kits that users copy: accepted, of a size worth packing, and nesting as their comments say.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;
namespace fs = std::filesystem;

namespace
{

std::map<std::string, Kit> sample_kits()
{
    std::map<std::string, Kit> kits;
    for (const auto& entry : fs::directory_iterator(fs::path(TUCKWRIGHT_SOURCE_DIR) / "kits")) {
        if (entry.path().extension() != ".yaml") {
            continue;
        }
        const auto kit = read_kit_file(entry.path().string());
        if (!kit) {
            for (const auto& problem : kit.problems()) {
                UNSCOPED_INFO(to_string(problem));
            }
        }
        REQUIRE(kit.ok());
        kits.emplace(entry.path().stem().string(), *kit);
    }
    return kits;
}

const Item& find(const Kit& kit, const std::string& id)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    REQUIRE(found != kit.items.end());
    return *found;
}

/// Whether a round item stands in another's round cavity with the kit's clearance on all sides.
bool stands_in(const Kit& kit, const Item& inner, const Item& outer)
{
    REQUIRE(outer.inside);
    return std::get<Cylinder>(inner.outside).diameter + 2 * kit.clearance <=
           std::get<Cylinder>(outer.inside->shape).diameter;
}

/// Height from the pot's own floor up to the top of a stack in which each stands on the floor of the next one out, with
/// some more items on top of the innermost.
double stack_height(const Kit& kit, const std::vector<std::string>& inward, const std::vector<std::string>& on_top)
{
    double height = 0, top = 0;
    for (const auto& id : inward) {
        const Item& item = find(kit, id);
        top = std::max(top, height + height_of(item.outside));
        height += item.inside ? item.inside->floor : height_of(item.outside);
    }
    for (const auto& id : on_top) {
        height += height_of(find(kit, id).outside);
    }
    return std::max(top, height);
}

} // namespace

TEST_CASE("every sample kit is accepted and has 8 to 18 items")
{
    const auto kits = sample_kits();
    CHECK(kits.size() >= 6);
    for (const auto& [name, kit] : kits) {
        CAPTURE(name);
        int copies = 0;
        for (const auto& item : kit.items) {
            copies += item.count;
            CHECK(item.name != item.id);
        }
        CHECK(copies >= 8);
        CHECK(copies <= 18);
    }
}

TEST_CASE("sample kits show every kind of thing")
{
    bool box_bundle = false, limits = false, sleeve = false, own_lid = false, lid = false, copies = false, full = false;
    bool rules = false, waived = false, together = false, bare = false, bears = false, wanted = false;
    for (const auto& [name, kit] : sample_kits()) {
        box_bundle |= kit.bundle.shape == BundleShape::box;
        limits |= kit.bundle.height.has_value();
        rules |= !kit.rules.empty();
        waived |= !kit.waived.empty();
        together |= std::any_of(kit.rules.begin(), kit.rules.end(),
                                [](const CarryRule& rule) { return rule.keep == Keep::together; });
        for (const auto& item : kit.items) {
            sleeve |= item.inside && item.inside->opens == Opening::both;
            own_lid |= item.inside && item.inside->opens == Opening::closed;
            lid |= item.closes.has_value();
            copies |= item.count > 1;
            full |= item.contents.has_value();
            bare |= item.nothing_on_top;
            bears |= item.bears_g.has_value();
            wanted |= item.reach != Wanted::any;
        }
    }
    CHECK(box_bundle);
    CHECK(limits);
    CHECK(sleeve);
    CHECK(own_lid);
    CHECK(lid);
    CHECK(copies);
    CHECK(full);
    CHECK(rules);
    CHECK(waived);
    CHECK(together);
    CHECK(bare);
    CHECK(bears);
    CHECK(wanted);
}

TEST_CASE("things nest three deep and more under the shut lid")
{
    struct Nest {
        std::string kit, lid;
        std::vector<std::string> inward; // from the vessel that the lid closes
        std::vector<std::string> on_top; // of the innermost
    };
    const std::vector<Nest> nests{
        {"porridge-canal", "pot-lid", {"pot", "windscreen", "cup", "burner"}, {"salt"}},
        {"soup-bikepack", "pot-lid", {"pot", "cup", "cartridge"}, {"stove"}},
        {"tea-ridge", "billy-lid", {"billy", "twig-burner", "mug-large", "mug-small", "tea"}, {"strainer"}},
        {"noodles-canoe", "pot-lid", {"pot", "windscreen", "bowl", "mug", "tea"}, {"matches"}},
        {"dinghy-boil", "pot-lid", {"pot", "fiddle-ring", "cartridge"}, {"stove"}},
    };
    const auto kits = sample_kits();
    for (const auto& nest : nests) {
        CAPTURE(nest.kit);
        const Kit& kit = kits.at(nest.kit);
        for (std::size_t i = 0; i + 1 < nest.inward.size(); ++i) {
            CAPTURE(nest.inward[i]);
            CHECK(stands_in(kit, find(kit, nest.inward[i + 1]), find(kit, nest.inward[i])));
        }
        const Item& vessel = find(kit, nest.inward.front());
        const Item& lid = find(kit, nest.lid);
        CHECK(&kit.items[lid.closes->item] == &vessel);
        CHECK(stack_height(kit, {nest.inward.begin(), nest.inward.end()}, nest.on_top) <=
              height_of(vessel.outside) + 1e-9);
        const std::vector<std::string> within(nest.inward.begin() + 1, nest.inward.end());
        CHECK(stack_height(kit, within, nest.on_top) <= height_of(vessel.inside->shape) - lid.closes->intrudes);
    }
    const Kit& soup = kits.at("soup-bikepack");
    CHECK(stands_in(soup, find(soup, "pot"), find(soup, "cosy"))); // and so the cartridge is three deep
    CHECK(stands_in(soup, find(soup, "pot-lid"), find(soup, "cosy")));
}
