// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether a bundle holds what the kit asks for: bundles written by hand, sound and spoilt, one fault for each law.
#include <catch2/catch.hpp>
#include <functional>
#include <string>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/proof.hpp"

using namespace tuckwright;

namespace {

Kit kit_of(const std::string& items)
{
    const auto kit = read_kit_text("kit: written by a test\nclearance: 0.5\nbundle: {shape: box, limits: {height: 200}}\n"
                                   "items:\n" +
                                       items,
                                   "kit.yaml");
    INFO(items << (kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

/// A bundle of one kit, without the things that it holds.
Bundle empty_bundle(const Kit& kit)
{
    Bundle bundle;
    bundle.kit = kit.name;
    bundle.clearance = kit.clearance;
    bundle.rule = kit.bundle;
    bundle.rules = kit.rules;
    return bundle;
}

PlacedItem placed(const Item& item, std::vector<Solid> solids, std::vector<PlacedCavity> cavities = {})
{
    PlacedItem made;
    made.id = item.id;
    made.name = item.name;
    made.weight_g = item.weight_g;
    made.contents = item.contents ? item.contents->what : "";
    made.contents_g = item.contents ? item.contents->weight_g : 0;
    made.full = item.is_full();
    made.upright = item.upright;
    made.kinds = item.kinds;
    made.reach = item.reach;
    made.nothing_on_top = item.nothing_on_top;
    made.bears_g = item.bears_g;
    made.solids = std::move(solids);
    made.cavities = std::move(cavities);
    return made;
}

std::string said(const Bundle& bundle, const Kit& kit)
{
    const auto objections = check_against(bundle, kit);
    CHECK((objections.empty() || objections.front().rule == "kit"));
    return objections.empty() ? "" : objections.front().what;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// A sound bundle that is refused once it has been spoilt, in those words.
struct Fault {
    const char* name;
    std::function<void(Bundle&)> spoil;
    const char* words;
};

void refuse(const Kit& kit, const Bundle& sound, const std::vector<Fault>& faults)
{
    REQUIRE(said(sound, kit) == "");
    for (const Fault& fault : faults) {
        Bundle bundle = sound;
        fault.spoil(bundle);
        INFO(fault.name << ": " << said(bundle, kit));
        CHECK(holds(said(bundle, kit), fault.words));
    }
}

const char* const no_form = "has not the size and shape of the kit, in none of its forms";

/// A mug with a handle to its right, which may also be folded flat; a quarter turn about the upright axis.
struct Mug {
    Kit kit = kit_of("  - {id: mug, weight: 90, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1},\n"
                     "     parts: [{box: {length: 24, width: 10, height: 40}, at: right, up: 15}],\n"
                     "     forms: [{name: handle in, how: fold it in,\n"
                     "              parts: [{box: {length: 6, width: 24, height: 40}, at: right, up: 15}]}]}\n"
                     "  - {id: box, weight: 30, box: {length: 60, width: 40, height: 20}}\n");
    Bundle bundle = empty_bundle(kit);

    Mug()
    {
        const Quaternion quarter{1, 0, 0, 1};
        const Vec3 body{40, 40, 35}; // the handle along the world's y
        bundle.items.push_back(placed(kit.items[0],
                                      {{Cylinder{80, 70}, {body, quarter}},
                                       {Box{24, 10, 40}, {{body.x, body.y + 40 + 12, 15 + 20}, quarter}}},
                                      {{Cylinder{78, 69}, {{body.x, body.y, 35.5}, quarter}, Opening::top}}));
        bundle.items.push_back(placed(kit.items[1], {{Box{60, 40, 20}, {{150, 30, 10}, {}}}}));
    }
};

} // namespace

TEST_CASE("a thing with a handle has it where the kit says, or as in another form")
{
    Mug mug;
    refuse(mug.kit, mug.bundle,
           {{"handle moved up", [](Bundle& b) { b.items[0].solids[1].pose.center.z += 0.1; }, no_form},
            {"handle moved aside", [](Bundle& b) { b.items[0].solids[1].pose.center.x += 0.1; }, no_form},
            {"handle moved in", [](Bundle& b) { b.items[0].solids[1].pose.center.y -= 0.1; }, no_form},
            {"handle turned", [](Bundle& b) { b.items[0].solids[1].pose.turn = {}; }, no_form},
            {"handle smaller", [](Bundle& b) { b.items[0].solids[1].shape = Box{23.9, 10, 40}; }, no_form},
            {"handle left out", [](Bundle& b) { b.items[0].solids.pop_back(); }, no_form},
            {"a second handle",
             [](Bundle& b) { b.items[0].solids.push_back(b.items[0].solids.back()); }, no_form},
            {"mug smaller", [](Bundle& b) { b.items[0].solids[0].shape = Cylinder{79.9, 70}; }, no_form},
            {"mug lower", [](Bundle& b) { b.items[0].solids[0].shape = Cylinder{80, 69.9}; }, no_form},
            {"mug wider inside", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{78.1, 69}; }, no_form},
            {"mug deeper inside", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{78, 69.5}; }, no_form},
            {"mug shut", [](Bundle& b) { b.items[0].cavities[0].opens = Opening::closed; }, no_form},
            {"mug open below", [](Bundle& b) { b.items[0].cavities[0].opens = Opening::both; }, no_form},
            {"mug solid", [](Bundle& b) { b.items[0].cavities.clear(); }, no_form},
            {"box hollow", [](Bundle& b) { b.items[1].cavities = b.items[0].cavities; }, no_form},
            {"box thinner", [](Bundle& b) { b.items[1].solids[0].shape = Box{60, 40, 19.9}; }, no_form},
            {"box round", [](Bundle& b) { b.items[1].solids[0].shape = Cylinder{60, 20}; }, no_form}});
    Bundle folded = mug.bundle;
    folded.items[0].solids[1] = {Box{6, 24, 40}, {{40, 83, 35}, {1, 0, 0, 1}}};
    folded.items[0].stowed = "handle in";
    folded.items[0].how = "fold it in";
    CHECK(said(folded, mug.kit) == "");
    folded.items[0].how = ""; // the same size, but nobody is told to fold it in
    CHECK(holds(said(folded, mug.kit), no_form));
    folded.items[0].how = "fold it in";
    folded.items[0].solids[1].shape = Box{7, 24, 40}; // the size of neither form
    CHECK(holds(said(folded, mug.kit), no_form));
    Bundle rounded = mug.bundle; // as the search rounds sizes
    rounded.items[0].solids[0].shape = Cylinder{80.000001, 70.000002};
    CHECK(said(rounded, mug.kit) == "");
}

TEST_CASE("a bundle has all things of its kit, each once, with their weights, and no others")
{
    Mug mug;
    refuse(mug.kit, mug.bundle,
           {{"box missing", [](Bundle& b) { b.items.pop_back(); }, "box of the kit is missing"},
            {"mug twice",
             [](Bundle& b) {
                 b.items.push_back(b.items[0]);
                 b.items.back().copy = 2;
             },
             "the bundle holds things that are not in the kit"},
            {"box of another name", [](Bundle& b) { b.items[1].id = "tin"; }, "box of the kit is missing"},
            {"a lighter box", [](Bundle& b) { b.items[1].weight_g = 29; }, "box does not weigh what the kit says"},
            {"another name", [](Bundle& b) { b.items[1].name = "Chest"; }, "box is not called as in the kit"},
            {"other contents", [](Bundle& b) { b.items[1].contents = "gold"; }, "or holds something else"},
            {"contents", [](Bundle& b) { b.items[1].contents_g = 5; }, "box does not weigh what the kit says"},
            {"kept upright", [](Bundle& b) { b.items[1].upright = true; }, "box is not kept upright, or not filled"},
            {"filled", [](Bundle& b) { b.items[0].full = true; }, "mug is not kept upright, or not filled"},
            {"another limit", [](Bundle& b) { b.rule.height = 201; }, "not within the limits"},
            {"no limit", [](Bundle& b) { b.rule.height.reset(); }, "not within the limits"},
            {"a further limit", [](Bundle& b) { b.rule.length = 300; }, "not within the limits"},
            {"a limit of width", [](Bundle& b) { b.rule.width = 300; }, "not within the limits"},
            {"a limit of diameter", [](Bundle& b) { b.rule.diameter = 300; }, "not within the limits"},
            {"another shape", [](Bundle& b) { b.rule.shape = BundleShape::cylinder; }, "not of the shape"},
            {"more clearance", [](Bundle& b) { b.clearance = 0.6; }, "the clearance is 0.6 mm, the kit asks for 0.5 mm"},
            {"less clearance", [](Bundle& b) { b.clearance = 0.4; }, "the clearance is 0.4 mm, the kit asks for 0.5 mm"},
            {"a further rule",
             [](Bundle& b) { b.rules.push_back({Keep::apart, "mug", "box", ""}); }, "the rules of carrying"}});
    const Kit strict = kit_of("  - {id: mug, weight: 90, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1}}\n"
                              "  - {id: box, weight: 30, box: {length: 60, width: 40, height: 20}, not-in: mug}\n");
    Bundle lax = mug.bundle;
    lax.items[0].solids.pop_back();
    CHECK(holds(said(lax, strict), "the rules of carrying"));
    lax.rules = strict.rules;
    CHECK(said(lax, strict) == "");
    Kit pair = kit_of("  - {id: tin, weight: 30, count: 2, box: {length: 60, width: 40, height: 20}}\n");
    Bundle one = empty_bundle(pair);
    one.items.push_back(placed(pair.items[0], {{Box{60, 40, 20}, {{30, 20, 10}, {}}}}));
    CHECK(holds(said(one, pair), "tin 2 of the kit is missing"));
    CHECK(check_against(Bundle{}, mug.kit, 3).size() == 3); // no more than are asked for
}

TEST_CASE("a sheet lies flat, folded in equal shares, or rolled in enough layers")
{
    // 400 long: 5 turns of 80 mm round 25.46 mm; a tube 60 mm wide inside takes 2.12 turns, so three layers
    const Kit kit = kit_of("  - {id: foil, weight: 30, sheet: {length: 400, width: 120, thickness: 0.5, roll: 60, "
                           "folds: yes}}\n");
    Bundle flat = empty_bundle(kit);
    flat.items.push_back(placed(kit.items[0], {{Box{400, 120, 0.5}, {{200, 60, 0.25}, {}}}}));
    refuse(kit, flat, {{"narrower", [](Bundle& b) { b.items[0].solids[0].shape = Box{400, 119, 0.5}; }, no_form},
                       {"shorter", [](Bundle& b) { b.items[0].solids[0].shape = Box{399, 120, 0.5}; }, no_form},
                       {"thinner", [](Bundle& b) { b.items[0].solids[0].shape = Box{400, 120, 0.4}; }, no_form}});
    Bundle folded = flat; // in three along, in half across: six layers
    folded.items[0].solids[0].shape = Box{133.333334, 60, 3};
    refuse(kit, folded,
           {{"thinner than its layers", [](Bundle& b) { b.items[0].solids[0].shape = Box{133.333334, 60, 2.5}; }, no_form},
            {"shorter than a third", [](Bundle& b) { b.items[0].solids[0].shape = Box{130, 60, 3}; }, no_form},
            {"in five", [](Bundle& b) { b.items[0].solids[0].shape = Box{80, 60, 5}; }, no_form},
            {"hollow",
             [](Bundle& b) {
                 b.items[0].cavities.push_back({Box{100, 40, 1}, {{200, 60, 0.5}, {}}, Opening::closed});
             },
             no_form}});
    const auto tube = [&](double inner, double outer, double height) {
        Bundle rolled = empty_bundle(kit);
        const Pose pose{{40, 40, height / 2}, {}};
        rolled.items.push_back(
            placed(kit.items[0], {{Cylinder{outer, height}, pose}}, {{Cylinder{inner, height}, pose, Opening::both}}));
        return rolled;
    };
    refuse(kit, tube(60, 63, 120),
           {{"one layer too few", [](Bundle& b) { b.items[0].solids[0].shape = Cylinder{62, 120}; }, no_form},
            {"a wall too thin by a hair", [](Bundle& b) { b.items[0].solids[0].shape = Cylinder{62.9999, 120}; }, no_form},
            {"lower", [](Bundle& b) { b.items[0].solids[0].shape = Cylinder{63, 119}; }, no_form},
            {"solid", [](Bundle& b) { b.items[0].cavities.clear(); }, no_form},
            {"with a bottom", [](Bundle& b) { b.items[0].cavities[0].opens = Opening::top; }, no_form}});
    CHECK(said(tube(128, 129, 120), kit) == "");                // 402 mm round: one layer
    CHECK(holds(said(tube(127, 128, 120), kit), no_form));      // 399 mm round: two
    CHECK(said(tube(127, 129, 120), kit) == "");
    CHECK(holds(said(tube(59.9, 62.9, 120), kit), no_form));    // tighter than it may be
    CHECK(said(tube(60, 61, 400), kit) == "");                  // along its width: 120 of 188 mm round
    Kit stiff = kit;
    stiff.items[0].sheet->folds = false;
    CHECK(said(flat, stiff) == "");
    CHECK(holds(said(folded, stiff), no_form));
    stiff.items[0].sheet->roll.reset();
    CHECK(holds(said(tube(60, 63, 120), stiff), no_form));
}

TEST_CASE("what springs open when rolled lies within something")
{
    const Kit kit = kit_of("  - {id: pot, weight: 90, cylinder: {diameter: 120, height: 140}, inside: {wall: 1, base: 1}}\n"
                           "  - {id: screen, weight: 60, sheet: {length: 300, width: 120, thickness: 0.5, roll: 60, "
                           "springy: yes}}\n");
    Bundle bundle = empty_bundle(kit);
    bundle.items.push_back(placed(kit.items[0], {{Cylinder{120, 140}, {{60, 60, 70}, {}}}},
                                  {{Cylinder{118, 139}, {{60, 60, 70.5}, {}}, Opening::top}}));
    const Pose pose{{60, 60, 61}, {}};
    bundle.items.push_back(
        placed(kit.items[1], {{Cylinder{102, 120}, pose}}, {{Cylinder{100, 120}, pose, Opening::both}}));
    bundle.items[1].in = Lodging{0, 0};
    const auto raised_by = [](double mm) {
        return [mm](Bundle& b) { b.items[1].solids[0].pose.center.z += mm, b.items[1].cavities[0].pose.center.z += mm; };
    };
    refuse(kit, bundle, {{"outside", [](Bundle& b) { b.items[1].in.reset(); }, no_form},
                         {"hardly in", raised_by(79.01), "less than half of it is in"}}); // the rim is 79 above its middle
    Bundle raised = bundle;
    raised_by(79)(raised);
    CHECK(said(raised, kit) == "");
    Kit limp = kit;
    limp.items[1].sheet->springy = false;
    bundle.items[1].in.reset();
    CHECK(said(bundle, limp) == "");
}

TEST_CASE("a cloth is a box of its volume, nowhere thinner than it can be")
{
    const Kit kit = kit_of("  - {id: towel, weight: 80, cloth: {volume: 240 ml, thickness: 8}}\n");
    const auto pad = [&](double length, double width, double height) {
        Bundle bundle = empty_bundle(kit);
        bundle.items.push_back(placed(kit.items[0], {{Box{length, width, height}, {{50, 50, height / 2}, {}}}}));
        return bundle;
    };
    CHECK(said(pad(100, 60, 40), kit) == "");
    CHECK(said(pad(300, 100, 8), kit) == "");
    CHECK(said(pad(8, 300, 100), kit) == ""); // on its edge
    CHECK(said(pad(100, 60, 41), kit) == ""); // loosely
    CHECK(holds(said(pad(100, 60, 39.9), kit), no_form)); // too little volume
    CHECK(holds(said(pad(300, 101, 7.95), kit), no_form)); // too thin
    CHECK(holds(said(pad(7.95, 301, 101), kit), no_form));
    Bundle round = pad(100, 60, 40);
    round.items[0].solids[0].shape = Cylinder{100, 40};
    CHECK(holds(said(round, kit), no_form));
    Bundle two = pad(100, 60, 20);
    two.items[0].solids.push_back({Box{100, 60, 20}, {{50, 50, 30}, {}}});
    CHECK(holds(said(two, kit), no_form));
}

TEST_CASE("a pouch is round or rectangular within its girth and length, with its wall all round, or folded and empty")
{
    const Kit kit = kit_of("  - {id: ditty, weight: 20, pouch: {girth: 300, length: 120, thickness: 1}}\n");
    const auto pouch = [&](const Shape& outside, const Shape& inside, const Quaternion& turn = {}) {
        Bundle bundle = empty_bundle(kit);
        const Pose pose{{90, 90, 70}, turn};
        bundle.items.push_back(placed(kit.items[0], {{outside, pose}}, {{inside, pose, Opening::closed}}));
        return bundle;
    };
    refuse(kit, pouch(Box{102, 52, 122}, Box{100, 50, 120}),
           {{"a longer plan", [](Bundle& b) { b.items[0].cavities[0].shape = Box{100.00001, 50, 120};
                                              b.items[0].solids[0].shape = Box{102.00001, 52, 122}; }, no_form},
            {"by a nanometre", [](Bundle& b) { b.items[0].cavities[0].shape = Box{100.000001, 50, 120}; }, no_form},
            {"higher", [](Bundle& b) { b.items[0].cavities[0].shape = Box{100, 50, 120.01};
                                       b.items[0].solids[0].shape = Box{102, 52, 122.01}; }, no_form},
            {"higher by a nanometre", [](Bundle& b) { b.items[0].cavities[0].shape = Box{100, 50, 120.000001}; }, no_form},
            {"a thinner wall", [](Bundle& b) { b.items[0].solids[0].shape = Box{101.9, 52, 122}; }, no_form},
            {"a thinner bottom", [](Bundle& b) { b.items[0].solids[0].shape = Box{102, 52, 121.9}; }, no_form},
            {"a thicker wall", [](Bundle& b) { b.items[0].solids[0].shape = Box{102, 52.1, 122}; }, no_form},
            {"a cavity off the middle", [](Bundle& b) { b.items[0].cavities[0].pose.center.x += 0.1; }, no_form},
            {"a cavity turned", [](Bundle& b) { b.items[0].cavities[0].pose.turn = {1, 0, 0, 1}; }, no_form},
            {"open", [](Bundle& b) { b.items[0].cavities[0].opens = Opening::top; }, no_form},
            {"with a narrow opening", [](Bundle& b) { b.items[0].cavities[0].neck = Box{10, 10, 0}; }, no_form},
            {"two cavities", [](Bundle& b) { b.items[0].cavities.push_back(b.items[0].cavities[0]); }, no_form},
            {"a round hole in a box", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{50, 120}; }, no_form},
            {"with a handle", [](Bundle& b) { b.items[0].solids.push_back({Box{9, 9, 9}, {{200, 9, 9}, {}}}); }, no_form},
            {"without a cavity", [](Bundle& b) { b.items[0].cavities.clear(); }, no_form}});
    CHECK(said(pouch(Box{62, 42, 12}, Box{60, 40, 10}), kit) == ""); // not filled out
    CHECK(said(pouch(Box{102, 52, 122}, Box{100, 50, 120}, {1, 0, 1, 0}), kit) == ""); // lying
    // 300 mm round is 95.492966 mm across, and by 355/113 for pi 95.492957.
    refuse(kit, pouch(Cylinder{97.492957, 122}, Cylinder{95.492957, 120}),
           {{"wider", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{95.4931, 120};
                                      b.items[0].solids[0].shape = Cylinder{97.4931, 122}; }, no_form},
            {"wider by a hair", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{95.492958, 120}; }, no_form},
            {"tapering", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{95.492957, 120, 60}; }, no_form}});
    Bundle flat = empty_bundle(kit);
    flat.items.push_back(placed(kit.items[0], {{Box{150, 120, 2}, {{90, 90, 1}, {}}}}));
    refuse(kit, flat, {{"smaller", [](Bundle& b) { b.items[0].solids[0].shape = Box{149, 120, 2}; }, no_form},
                       {"one layer", [](Bundle& b) { b.items[0].solids[0].shape = Box{150, 120, 1}; }, no_form},
                       {"rolled", [](Bundle& b) { b.items[0].solids[0].shape = Cylinder{20, 120}; }, no_form}});
    flat.items[0].solids[0].shape = Box{75, 60, 8}; // in half both ways
    CHECK(said(flat, kit) == "");
    flat.items[0].solids[0].shape = Box{75, 60, 7.9};
    CHECK(holds(said(flat, kit), no_form));
}

TEST_CASE("a shut lid and what tapers are as the kit has them")
{
    const Kit kit = kit_of("  - {id: pot, weight: 90, cylinder: {diameter: 102, height: 92}, inside: {wall: 1, base: 2}}\n"
                           "  - {id: lid, weight: 30, cylinder: {diameter: 104, height: 15}, "
                           "closes: {item: pot, adds: 3, intrudes: 6}}\n"
                           "  - {id: cup, weight: 20, cylinder: {diameter: 80, height: 90, foot: 60}}\n");
    Bundle bundle = empty_bundle(kit);
    bundle.items.push_back(placed(kit.items[0],
                                  {{Cylinder{102, 92}, {{52, 52, 46}, {}}}, {Cylinder{104, 12}, {{52, 52, 86}, {}}}},
                                  {{Cylinder{100, 84}, {{52, 52, 44}, {}}, Opening::closed}}));
    bundle.items.push_back(placed(kit.items[1], {{Cylinder{104, 3}, {{52, 52, 93.5}, {}}}}));
    bundle.items[1].closes = 0;
    bundle.items.push_back(placed(kit.items[2], {{Cylinder{80, 90, 60}, {{150, 52, 45}, {}}}}));
    refuse(kit, bundle,
           {{"a thin plate", [](Bundle& b) { b.items[1].solids[0].shape = Cylinder{104, 2.9}; }, no_form},
            {"a narrow plate", [](Bundle& b) { b.items[1].solids[0].shape = Cylinder{103, 3}; }, no_form},
            {"hangs in less", [](Bundle& b) { b.items[0].cavities[0].shape = Cylinder{100, 85}; }, no_form},
            {"straight", [](Bundle& b) { b.items[2].solids[0].shape = Cylinder{80, 90}; }, no_form},
            {"a narrower foot", [](Bundle& b) { b.items[2].solids[0].shape = Cylinder{80, 90, 59.9}; }, no_form},
            {"a hollow plate",
             [](Bundle& b) { b.items[1].cavities.push_back({Cylinder{20, 1}, {{52, 52, 93.5}, {}}, Opening::closed}); },
             no_form},
            {"what is no lid shuts", [](Bundle& b) { b.items[2].closes = 0; b.items[1].closes.reset(); }, no_form},
            {"without its skirt", [](Bundle& b) { b.items[0].solids.pop_back(); }, no_form},
            {"a shorter skirt", [](Bundle& b) { b.items[0].solids[1].shape = Cylinder{104, 5}; }, no_form}});
}

TEST_CASE("tolerances, kinds and what a thing bears are those of the kit")
{
    const Kit kit = kit_of("  - {id: pot, weight: 90, kind: sooty, reach: first, bears: 500 g,\n"
                           "     cylinder: {diameter: 102 ±0.4, height: 92 ±0.3}, inside: {cylinder: {diameter: 100 ±0.2, height: 90 ±0.1}},\n"
                           "     parts: [{box: {length: 24 ±0.7, width: 10, height: 40}, at: right, up: 15}]}\n"
                           "  - {id: lid, weight: 30, cylinder: {diameter: 104 ±0.6, height: 15 ±0.5}, "
                           "closes: {item: pot, adds: 3 ±0.05, intrudes: 6 ±0.03}}\n"
                           "  - {id: book, weight: 80, nothing-on-top: yes, box: {length: 60, width: 40, height: 20 ±1}}\n");
    Bundle bundle = empty_bundle(kit);
    bundle.items.push_back(placed(kit.items[0],
                                  {{Cylinder{102, 92}, {{52, 52, 46}, {}}},
                                   {Box{24, 10, 40}, {{52 + 51 + 12, 52, 15 + 20}, {}}},
                                   {Cylinder{104, 12}, {{52, 52, 86}, {}}}},
                                  {{Cylinder{100, 84}, {{52, 52, 44}, {}}, Opening::closed}}));
    bundle.items.push_back(placed(kit.items[1], {{Cylinder{104, 3}, {{52, 52, 93.5}, {}}}}));
    bundle.items[1].closes = 0;
    bundle.items.push_back(placed(kit.items[2], {{Box{60, 40, 20}, {{170, 52, 10}, {}}}}));
    bundle.items[0].solids_off = {Spread{{0.4, 0.3, 0}}, Spread{{0.7, 0, 0}}, Spread{{0.6, 0.55, 0}}};
    bundle.items[0].cavities[0].off = Spread{{0.2, 0.13, 0}};
    bundle.items[1].solids_off = {Spread{{0.6, 0.05, 0}}};
    bundle.items[2].solids_off = {Spread{{0, 0, 1}}};
    const char* const off = "may not be off by what the kit says";
    const char* const not_so = "is not of the kinds, not wanted as soon, or may not bear as much, as the kit says";
    refuse(kit, bundle,
           {{"pot", [](Bundle& b) { b.items[0].solids_off[0].mm[0] = 0.3; }, off},
            {"handle", [](Bundle& b) { b.items[0].solids_off[1].mm[0] = 0; }, off},
            {"skirt", [](Bundle& b) { b.items[0].solids_off.pop_back(); }, off},
            {"cavity", [](Bundle& b) { b.items[0].cavities[0].off.mm[1] = 0.1; }, off},
            {"plate", [](Bundle& b) { b.items[1].solids_off.clear(); }, off},
            {"book", [](Bundle& b) { b.items[2].solids_off[0].mm[2] = 2; }, off},
            {"clean pot", [](Bundle& b) { b.items[0].kinds.clear(); }, not_so},
            {"pot wanted last", [](Bundle& b) { b.items[0].reach = Wanted::last; }, not_so},
            {"pot bears more", [](Bundle& b) { b.items[0].bears_g = 600; }, not_so},
            {"pot bears all", [](Bundle& b) { b.items[0].bears_g.reset(); }, not_so},
            {"book bears things", [](Bundle& b) { b.items[2].nothing_on_top = false; }, not_so}});
}

TEST_CASE("parts are held against the kit one by one, however the thing is turned")
{
    const Kit kit = kit_of("  - {id: jug, weight: 90, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1},\n"
                           "     parts: [{box: {length: 24 ±0.5, width: 10, height: 40}, at: right, up: 15},\n"
                           "             {cylinder: {diameter: 8, height: 20}, axis: x, at: left, up: 50}]}\n");
    for (const Quaternion& turn : {Quaternion{1, 0, 0, 0}, {1, 2, 2, 4}, {4, 2, 1, 2}, {2, 1, 4, 2}}) {
        const Matrix3 m = rotation_matrix(turn);
        const auto at = [&](double x, double y, double z) {
            const std::array<double, 3> own{x, y, z};
            std::array<double, 3> world{100, 100, 100};
            for (std::size_t row = 0; row < 3; ++row) {
                for (std::size_t k = 0; k < 3; ++k) {
                    world[row] += m[row][k] * own[k];
                }
            }
            return Vec3{world[0], world[1], world[2]};
        };
        Bundle bundle = empty_bundle(kit);
        bundle.items.push_back(placed(kit.items[0],
                                      {{Cylinder{80, 70}, {at(0, 0, 0), turn}},
                                       {Box{24, 10, 40}, {at(52, 0, 0), turn}},
                                       {Cylinder{8, 20}, {at(-50, 0, 19), compose(turn, {1, 0, 1, 0})}}},
                                      {{Cylinder{78, 69}, {at(0, 0, 0.5), turn}, Opening::top}}));
        bundle.items[0].solids_off = {Spread{}, Spread{{0.5, 0, 0}}, Spread{}};
        refuse(kit, bundle,
               {{"handle along x", [](Bundle& b) { b.items[0].solids[1].pose.center.x += 0.001; }, no_form},
                {"handle along y", [](Bundle& b) { b.items[0].solids[1].pose.center.y += 0.001; }, no_form},
                {"handle along z", [](Bundle& b) { b.items[0].solids[1].pose.center.z += 0.001; }, no_form},
                {"spout along x", [](Bundle& b) { b.items[0].solids[2].pose.center.x += 0.001; }, no_form},
                {"spout along y", [](Bundle& b) { b.items[0].solids[2].pose.center.y -= 0.001; }, no_form},
                {"spout along z", [](Bundle& b) { b.items[0].solids[2].pose.center.z += 0.001; }, no_form},
                {"spout upright", [](Bundle& b) { b.items[0].solids[2].pose.turn = b.items[0].solids[0].pose.turn; }, no_form},
                {"handle on its side",
                 [](Bundle& b) { b.items[0].solids[1].pose.turn = compose(b.items[0].solids[0].pose.turn, {1, 0, 1, 0}); },
                 no_form},
                {"handle yawed",
                 [](Bundle& b) { b.items[0].solids[1].pose.turn = compose(b.items[0].solids[0].pose.turn, {100, 0, 0, 1}); },
                 no_form},
                {"cavity on its side",
                 [](Bundle& b) { b.items[0].cavities[0].pose.turn = compose(b.items[0].solids[0].pose.turn, {1, 0, 1, 0}); },
                 no_form},
                {"one handle twice", [](Bundle& b) { b.items[0].solids[2] = b.items[0].solids[1]; }, no_form},
                {"the spout may be off instead",
                 [](Bundle& b) { std::swap(b.items[0].solids_off[1], b.items[0].solids_off[2]); },
                 "may not be off by what the kit says"}});
    }
}

TEST_CASE("a rectangular lid has a skirt where it is wider than its vessel, in either direction")
{
    for (const bool is_longer : {true, false}) {
        const std::string lid = is_longer ? "{length: 104, width: 80, height: 15}" : "{length: 100, width: 84, height: 15}";
        const Kit kit = kit_of("  - {id: pot, weight: 90, box: {length: 100, width: 80, height: 60}, inside: {wall: 1, base: 2}}\n"
                               "  - {id: lid, weight: 30, box: " + lid + ", closes: {item: pot, adds: 3, intrudes: 0}}\n");
        const double length = is_longer ? 104 : 100, width = is_longer ? 80 : 84;
        Bundle bundle = empty_bundle(kit);
        bundle.items.push_back(placed(kit.items[0],
                                      {{Box{100, 80, 60}, {{60, 60, 30}, {}}}, {Box{length, width, 12}, {{60, 60, 54}, {}}}},
                                      {{Box{98, 78, 58}, {{60, 60, 31}, {}}, Opening::closed}}));
        bundle.items.push_back(placed(kit.items[1], {{Box{length, width, 3}, {{60, 60, 61.5}, {}}}}));
        bundle.items[1].closes = 0;
        refuse(kit, bundle,
               {{"without its skirt", [](Bundle& b) { b.items[0].solids.pop_back(); }, no_form},
                {"a skirt too low", [](Bundle& b) { b.items[0].solids[1].pose.center.z -= 0.1; }, no_form},
                {"a skirt too short", [](Bundle& b) { std::get<Box>(b.items[0].solids[1].shape).height = 11; }, no_form}});
    }
}

TEST_CASE("a lid no wider than its vessel has no skirt")
{
    const Kit kit = kit_of("  - {id: pot, weight: 90, box: {length: 100, width: 80, height: 60}, inside: {wall: 1, base: 2}}\n"
                           "  - {id: lid, weight: 30, box: {length: 100, width: 80, height: 15}, "
                           "closes: {item: pot, adds: 3, intrudes: 0}}\n");
    Bundle bundle = empty_bundle(kit);
    bundle.items.push_back(placed(kit.items[0], {{Box{100, 80, 60}, {{60, 60, 30}, {}}}},
                                  {{Box{98, 78, 58}, {{60, 60, 31}, {}}, Opening::closed}}));
    bundle.items.push_back(placed(kit.items[1], {{Box{100, 80, 3}, {{60, 60, 61.5}, {}}}}));
    bundle.items[1].closes = 0;
    refuse(kit, bundle, {{"hollow less deep", [](Bundle& b) { b.items[0].cavities[0].shape = Box{98, 78, 57}; }, no_form}});
}

TEST_CASE("contents and walls are those of the kit where they are not the simplest")
{
    const Kit kit = kit_of("  - {id: sack, weight: 20, pouch: {girth: 300, length: 120, thickness: 2}}\n"
                           "  - {id: tin, weight: 30, box: {length: 60, width: 40, height: 20}, "
                           "inside: {box: {length: 58, width: 38, height: 18}, lid: own}, contents: {what: rice, amount: 25 g}}\n");
    Bundle bundle = empty_bundle(kit);
    const Pose pose{{90, 90, 70}, {}};
    bundle.items.push_back(placed(kit.items[0], {{Box{104, 54, 124}, pose}}, {{Box{100, 50, 120}, pose, Opening::closed}}));
    bundle.items.push_back(placed(kit.items[1], {{Box{60, 40, 20}, {{200, 30, 10}, {}}}},
                                  {{Box{58, 38, 18}, {{200, 30, 10}, {}}, Opening::closed}}));
    INFO(said(bundle, kit));
    refuse(kit, bundle,
           {{"a thin wall", [](Bundle& b) { b.items[0].solids[0].shape = Box{102, 52, 122}; }, no_form},
            {"a wall of half", [](Bundle& b) { b.items[0].solids[0].shape = Box{101, 51, 121}; }, no_form},
            {"no rice", [](Bundle& b) { b.items[1].contents_g = 0; }, "tin does not weigh what the kit says"},
            {"more rice", [](Bundle& b) { b.items[1].contents_g = 26; }, "tin does not weigh what the kit says"},
            {"something in it", [](Bundle& b) { b.items[1].contents.clear(); }, "or holds something else"}});
}
