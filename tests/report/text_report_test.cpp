// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

#include "report/measures.hpp"
#include "report/words.hpp"
#include "report/cautions.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;

namespace {

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

std::size_t widest_line(const std::string& text)
{
    std::istringstream lines(text);
    std::size_t widest = 0;
    for (std::string line; std::getline(lines, line);) {
        const auto width = std::count_if(line.begin(), line.end(),
                                         [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
        widest = std::max(widest, static_cast<std::size_t>(width));
    }
    return widest;
}

} // namespace

TEST_CASE("a band that holds a lid is told beside the lid and apart from what goes round everything")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.bands = {{"strap", "Strap, red", 8, 460, "pot-lid"}};
    std::string text = text_report(bundle);
    CHECK(holds(text, "pot-lid, shut on it as its lid, 129 mm across, adds 3 mm, held by Strap, red\n"));
    CHECK(holds(text, "\nHeld shut:\n  Strap, red (strap), 460 mm round at its longest, over pot-lid and under pot\n"));
    CHECK_FALSE(holds(text, "Round it all"));
    CHECK_FALSE(holds(text, "level round it all"));
    CHECK(step_texts(bundle)[1] == "Shut pot with pot-lid. Put Strap over pot-lid and under pot.");
    CHECK_FALSE(holds(text, "first take off"));
    bundle.bands.push_back({"cord", "", 8, 450});
    text = text_report(bundle);
    CHECK(holds(text, "Held shut:\n  Strap, red (strap), 460"));
    CHECK(holds(text, "Round it all:\n  cord, 450 mm round at its longest\n  What it goes round is"));
    CHECK(holds(text, "  4. Put cord level round it all."));
    CHECK(holds(text, "first take off cord."));
}

TEST_CASE("the first line says what it is and how large")
{
    CHECK(first_line(text_report(handmade::cup_in_lidded_pot())) ==
          "Soup for one: packs into a round bundle 129 mm across and 99 mm high");
    CHECK(first_line(text_report(handmade::touching_boxes())) ==
          "Biscuits: packs into a box 60 mm long, 40 mm wide and 20 mm high");
}

TEST_CASE("sizes are never understated")
{
    CHECK(report::length_in_words(130.600001) == "130.7 mm");
    CHECK(report::length_in_words(130.6) == "130.6 mm");
    CHECK(report::length_in_words(130.95) == "131 mm");
    CHECK(report::length_in_words(0.05) == "0.1 mm");
    CHECK(report::volume_in_words(1411.0, report::Rounding::up) == "1.42 l");
    CHECK(report::volume_in_words(1419.0, report::Rounding::down) == "1.41 l");
    CHECK(report::volume_in_words(1200.0, report::Rounding::up) == "1.2 l");
    CHECK(report::volume_in_words(1200.0, report::Rounding::down) == "1.2 l");
    CHECK(report::volume_in_words(819.2, report::Rounding::up) == "820 ml");
    CHECK(report::volume_in_words(999.5, report::Rounding::up) == "1 l");
    CHECK(report::volume_in_words(1.234, report::Rounding::down) == "1.23 ml");
    CHECK(report::share_in_words(0.1701) == "18 %");
    CHECK(report::share_in_words(0.0031) == "0.4 %");
    CHECK(report::share_in_words(0) == "0 %");
    CHECK(report::weight_in_words(949.6) == "950 g");
    CHECK(report::weight_in_words(999.7) == "1 kg");
    CHECK(report::weight_in_words(1234) == "1.234 kg");
    CHECK(report::weight_in_words(7.25) == "7.2 g");
    CHECK(report::size_in_words(Box{80, 60.04, 45}) == "80 x 60.1 x 45 mm");
}

TEST_CASE("volume, weight and status are told in honest words")
{
    auto bundle = handmade::touching_boxes();
    bundle.lower_bound_ml = 41;
    bundle.items[0].contents = "crumbs";
    bundle.items[0].contents_g = 12;
    auto text = text_report(bundle);
    CHECK(holds(text, "Volume: 48 ml, 100 % of the 48 ml that the things add up to one by one\n"));
    CHECK(holds(text, "Weight: 412 g, of it 12 g contents\n"));
    CHECK(holds(text, "Status: Proved to fit; a smaller one may exist. With everything standing, lying or on its side, no\n"
                      "        box of this kit can be smaller than 41 ml;"));
    CHECK(holds(text, "is 18 % above that.\n"));
    bundle.lower_bound_ml = 20;
    CHECK(holds(text_report(bundle), "So wide"));
    bundle.status = Status::stopped;
    CHECK(holds(text_report(bundle), "The search was stopped early"));
    bundle.status = Status::proved_best;
    text = text_report(bundle);
    CHECK(holds(text, "proved the smallest: with everything standing, lying or on its side,"));
    CHECK_FALSE(holds(text, "may exist"));
    bundle.status = Status::found;
    bundle.lower_bound_ml = 0;
    CHECK(holds(text_report(bundle), "How much smaller a bundle could be is not known."));
}

TEST_CASE("the worst case of things without tolerances is said to be nothing else")
{
    auto bundle = handmade::touching_boxes();
    CHECK_FALSE(holds(text_report(bundle), "worst case"));
    bundle.worst_case = true;
    CHECK(holds(text_report(bundle), "Packed for the worst case: nothing here has a tolerance"));
    bundle.items[0].solids_off = {Spread{{0, 0.5, 0}}};
    CHECK(holds(text_report(bundle), "Packed for the worst case: all sizes here are those that leave the least room"));
}

TEST_CASE("what would topple by itself is named")
{
    using namespace handmade;
    auto pile = bundle("A pile", Box{100, 40, 30},
                       {item("below", box(40, 40, 10, {20, 20, 5})), item("above", box(40, 40, 10, {50, 20, 15}))});
    step_and_stand(pile, {0, 1});
    CHECK(holds(text_report(pile), "By themselves these would topple: above. Hold them"));
    CHECK_FALSE(holds(text_report(cup_in_lidded_pot()), "topple"));
}

TEST_CASE("fits are told with their worst case where there are tolerances, never too large, and the tightest named")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.fits = {{{0, 0}, {1}, FitWay::all_round, 1.199999, 0.149999}, {{0, 0}, {1}, FitWay::along, 0, -0.210001}};
    CHECK(text_report(bundle).find("How things fit") == std::string::npos);
    bundle.items[1].solids_off = {{{0.5, 0.5, 0}}};
    const std::string text = text_report(bundle);
    INFO(text);
    CHECK(text.find("  - cup in pot: slides in with 1.1 mm all round; 0.1 mm at worst\n") != std::string::npos);
    CHECK(text.find("  - cup from the floor to the lid of pot: 0 mm in all; at worst 0.3 mm too tight\n") !=
          std::string::npos);
    CHECK(text.find("Tightest: cup from the floor to the lid of pot (at worst 0.3 mm too tight); cup in pot (0.1 mm") !=
          std::string::npos);
    CHECK(report::tightest_note(bundle) == "Tightest: cup from the floor to the lid of pot (at worst 0.3 mm too tight); cup in "
                                           "pot (0.1 mm all round at worst).");
    CHECK(text.find("worst case") == std::string::npos);
    bundle.worst_case = true;
    CHECK(text_report(bundle).find("Packed for the worst case: all sizes here") != std::string::npos);
}

TEST_CASE("what is pressed into a vessel is told, and by how much its spring holds it")
{
    auto bundle = handmade::ring_pressed_into_a_pot();
    CHECK(holds(text_report(bundle), "    ring, pressed into the pot, standing, 110 mm across, 70 mm high\n"));
    bundle.items[1].solids_off = {{{0.25, 0, 0}}};
    bundle.fits = {{{0, 0}, {1}, FitWay::pressed, 2, 1.799999}};
    CHECK(holds(text_report(bundle),
                "  - ring in pot: held by its spring, 2 mm wider than the bore; 1.7 mm at worst\n"));
}

TEST_CASE("what rattles is told, and what soft thing could pad it")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.plays.assign(3, {});
    CHECK(text_report(bundle).find("rattles") == std::string::npos);
    bundle.plays[1].free[2] = {2, 3.09};
    CHECK(text_report(bundle).find("What rattles: cup up and down by 5 mm.\n") != std::string::npos);
    bundle.items[0].soft = true;
    bundle.plays[0].free[0] = {50, 0}; // what is soft does not rattle
    CHECK(text_report(bundle).find("What rattles: cup up and down by 5 mm. To pad it, there is pot.\n") != std::string::npos);
    bundle.plays[1].free[2] = {2, 2.99};
    CHECK(text_report(bundle).find("rattles") == std::string::npos);
}

TEST_CASE("what lies in what is an indented list")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[0].name = "Steel pot, 1.1 l";
    bundle.items[1].contents = "stock cubes";
    bundle.items[1].contents_g = 30;
    INFO(text_report(bundle) << text_report(handmade::rod_out_of_two_lying_levels()));
    CHECK(holds(text_report(bundle), "What lies in what:\n"
                                     "  Steel pot, 1.1 l (pot), standing, 128 mm across, 96 mm high\n"
                                     "    cup, standing, 80 mm across, 87 mm high, holds 30 g of stock cubes\n"
                                     "    pot-lid, shut on it as its lid, 129 mm across, adds 3 mm\n"));
    CHECK(holds(text_report(handmade::rod_out_of_two_lying_levels()), "  pot, lying, 100 mm across, 80 mm high\n"
                                                                      "    mug, lying, 70 mm across, 90 mm high, "
                                                                      "sticks out 12 mm\n"
                                                                      "      rod, lying, 10 mm across, 120 mm high, "
                                                                      "sticks out 31 mm\n"
                                                                      "  block, standing, 25 x 60 x 3 mm\n"));
    CHECK(holds(text_report(handmade::tangent_cylinders()), "  tin 2, standing"));
}

TEST_CASE("rules of carrying are told below what lies in what, by reason and items, copies once")
{
    auto bundle = handmade::fuel_apart_from_food();
    bundle.items[0].name = "Steel pot, 1.1 l";
    bundle.items[6].name = "Spirit bottle, 0.2 l";
    const auto text = text_report(bundle);
    INFO(text);
    CHECK(holds(text, "\n"
                      "\n"
                      "Not in one vessel: Spirit bottle with oats, Steel pot or pot-lid (fuel keeps apart from food); tub\n"
                      "                   with oats (the tub is sooty). This is about vessels only: look yourself at what\n"
                      "                   stands on or beside them.\n"
                      "Kept within: oats in Steel pot (oats stay dry); oats in cup (it is so by hand); Spirit bottle "
                      "in cup\n"
                      "             (a leak stays in the cup); pot-lid in Steel pot (the lid stays on).\n"
                      "Kept out: oats and pot-lid not in tub (the tub is sooty); Steel pot not in cup.\n"
                      "\n"
                      "Putting it together:\n"));
    bundle.rules = {{Keep::out, "oats", "tub", "soot"},
                    {Keep::out, "oats", "spirit", "soot"},
                    {Keep::out, "oats", "tub", "soot"},
                    {Keep::out, "cup", "spirit", "soot"},
                    {Keep::out, "cup", "tub", "grease"}};
    CHECK(holds(text_report(bundle), "\n\nKept out: oats not in tub or Spirit bottle (soot); cup not in Spirit bottle "
                                     "(soot); cup not in tub\n"
                                     "          (grease).\n\nPutting"));
    CHECK_FALSE(holds(text_report(bundle), "Not in one vessel"));
    bundle.rules.clear();
    CHECK_FALSE(holds(text_report(bundle), "Kept"));
    CHECK_FALSE(holds(text_report(bundle), "Done without"));
    bundle.waived = {"fuel need not keep apart from food: it is sealed", "what is sharp need not be soft: sheath"};
    CHECK(holds(text_report(bundle), "\n\nDone without, as the kit asks: fuel need not keep apart from food: it is "
                                     "sealed; what is sharp need\n"
                                     "                               not be soft: sheath.\n\nPutting"));
}

TEST_CASE("what bears what, and what comes out after what, is told")
{
    CHECK(holds(text_report(handmade::laden_slab()),
                "\n\nNothing on top of: glass, post.\n"
                "Bears: slab 500 g, and may bear 500 g; tin 250 g, and may bear 250 g.\n"
                "Within reach: slab after 2 things (tin and glass); glass comes out first.\n\nPutting"));
    const auto text = text_report(handmade::card_in_sleeve_in_pot());
    INFO(text);
    CHECK(holds(text, "Bears: plate 300 g, and may bear 300 g.\nWithin reach: plate after 1 thing (pot); pot comes out "
                      "first; tin after 2 things (card and"));
    CHECK(holds(text, "salt after 1 thing (pot-lid).\n"));
    CHECK_FALSE(holds(text_report(handmade::cup_in_lidded_pot()), "Within reach"));
}

TEST_CASE("a hot stove is told once to cool down, and once each of the rest")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[1].name = "Gas stove";
    bundle.items[1].kinds = {Kind::hot};
    std::string all;
    for (const std::string& sentence : report::cautions(bundle)) {
        all += sentence + "\n";
    }
    CHECK(all == "Gas stove: keep cool, take off whatever is screwed on before packing, and ask before taking it on a train, "
                 "ship or plane.\nGas stove: let the flame go out before packing; never use in a tent or closed room.\n"
                 "Gas stove: let cool down before packing; hot, it can melt, burn or burst what it touches.\n");
    bundle.items[1].kinds.clear(); // its name says enough
    std::string again;
    for (const std::string& sentence : report::cautions(bundle)) {
        again += sentence + "\n";
    }
    CHECK(again == all);
}

TEST_CASE("kinds bring cautions, and what is hot cools down before the first step")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[0].kinds = {Kind::hot};
    bundle.items[1].kinds = {Kind::fuel, Kind::liquid};
    const auto text = text_report(bundle);
    CHECK(holds(text, "Putting it together:\n  Let pot cool down first.\n  1. "));
    CHECK(holds(text, "  - pot: let cool down"));
    CHECK(holds(text, "  - cup: keep tightly shut"));
    CHECK(holds(text, "  - cup: shut tightly, and keep the bundle upright"));
    bundle.items[1].kinds = {Kind::hot};
    CHECK(holds(text_report(bundle), "  Let pot and cup cool down first.\n"));
    for (const Kind kind : {Kind::flame, Kind::sharp, Kind::pressurised, Kind::fragile}) {
        bundle.items[1].kinds = {kind};
        CHECK(holds(text_report(bundle), "\n  - cup: "));
    }
}

TEST_CASE("steps are numbered, and the way back is told")
{
    CHECK(holds(text_report(handmade::cup_in_lidded_pot()),
                "Putting it together:\n"
                "  1. Put cup into its place.\n"
                "  2. Put pot-lid into its place.\n"
                "  3. Put pot into its place.\n"
                "To unpack, go through the steps backwards: first open pot.\n"));
    CHECK(holds(text_report(handmade::many_pots(2)), "\n   9. "));
    CHECK(holds(text_report(handmade::many_pots(2)), "\n  10. "));
}

TEST_CASE("a box has its left and its front told once above the steps, a round bundle has none")
{
    auto bundle = handmade::touching_boxes();
    CHECK(holds(text_report(bundle), "Putting it together:\n"
                                     "  The bundle stands with its long side in front of you: left and right are along "
                                     "its length, front\n"
                                     "  and back along its width.\n"
                                     "  1. Put biscuits"));
    bundle.envelope = Box{60, 60, 20};
    CHECK(holds(text_report(bundle), "stands with one side in front of you"));
    CHECK_FALSE(holds(text_report(handmade::cup_in_lidded_pot()), "in front of you"));
    bundle = handmade::touching_boxes();
    bundle.items[0] = handmade::hollow(bundle.items[0], bundle.items[0].solids[0], Opening::top);
    bundle.items[1].in = Lodging{0, 0};
    CHECK(holds(text_report(bundle), "A box that is filled beforehand is turned as it will be in the bundle."));
}

TEST_CASE("what comes out first is never the vessel that holds everything")
{
    const auto last_line = [](const Bundle& bundle) {
        const auto text = text_report(bundle);
        const auto at = text.find("To unpack");
        return at == std::string::npos ? "" : text.substr(at, text.find('\n', at) - at);
    };
    auto bundle = handmade::sleeve_round_cup_in_pot(); // cup, windscreen, pot
    bundle.items[1].name = "Windscreen, of foil";
    CHECK(last_line(bundle) == "To unpack, go through the steps backwards: first take out Windscreen.");
    bundle.steps.pop_back();
    bundle.items[1].name = "Screen";
    CHECK(last_line(bundle) == "To unpack, go through the steps backwards: first take out Screen.");
    CHECK(last_line(handmade::lidded_pot_upside_down()) ==
          "To unpack, go through the steps backwards: first open pot.");
    CHECK(last_line(handmade::pot_over_cup()) == "To unpack, go through the steps backwards: first take out pot-lid.");
    CHECK(last_line(handmade::tangent_cylinders()) ==
          "To unpack, go through the steps backwards: first take out tin 3.");
    auto alone = handmade::touching_boxes();
    alone.items.resize(1);
    alone.steps.resize(1);
    CHECK(last_line(alone).empty());
}

TEST_CASE("cautions come where items call for them, and only there")
{
    auto bundle = handmade::cup_in_lidded_pot();
    CHECK_FALSE(holds(text_report(bundle), "cautions"));
    bundle.items[0].name = "Gasket and matchbook of burnered bladeless fuelling"; // words within words
    CHECK_FALSE(holds(text_report(bundle), "cautions"));
    bundle.items[0].name = "Folding KNIFE";
    bundle.items[1].name = "spirit flask, flat";
    bundle.items[2].id = "matches";
    const auto text = text_report(bundle);
    CHECK(holds(text, "Usual cautions; the maker's instructions and local rules go first:\n"));
    CHECK(holds(text, "  - spirit flask: keep tightly shut"));
    CHECK(holds(text, "  - pot-lid: keep dry"));
    CHECK(holds(text, "  - Folding KNIFE: fold or cover the edge"));
    for (const char* word :
         {"fuel", "gas", "stove", "burner", "lighter", "blades", "alcohol", "Cartridges", "knives"}) {
        auto one = handmade::cup_in_lidded_pot();
        one.items[1].name = word;
        INFO(word);
        CHECK(holds(text_report(one), std::string("\n  - ") + word + ": "));
    }
}

TEST_CASE("copies are named once in cautions")
{
    auto bundle = handmade::tangent_cylinders();
    for (auto& item : bundle.items) {
        item.name = "Gas cartridge";
    }
    CHECK(holds(text_report(bundle), "  - Gas cartridge: keep cool"));
}

TEST_CASE("what does not fit is told with its proof")
{
    Bundle bundle;
    bundle.kit = "Soup";
    bundle.status = Status::does_not_fit;
    bundle.rule.diameter = 120;
    bundle.rule.height = 99.5;
    bundle.explanation = "the pot alone is 128 mm across";
    const auto text = text_report(bundle);
    CHECK(first_line(text) == "Soup: does not fit into a round bundle at most 120 mm across, 99.5 mm high");
    CHECK(holds(text, "Proof: The pot alone is 128 mm across.\n"));
    CHECK_FALSE(holds(text, "effort"));
}

TEST_CASE("what was not found is not called impossible")
{
    Bundle bundle;
    bundle.kit = "Soup";
    bundle.status = Status::not_found;
    bundle.seed = 4;
    bundle.rule = {BundleShape::box, std::nullopt, 100, 80, 60};
    bundle.lower_bound_ml = 300;
    const auto text = text_report(bundle);
    CHECK(first_line(text) == "Soup: no box at most 100 mm long, 80 mm wide, 60 mm high was found");
    CHECK(holds(text, "This is no proof that the kit does not fit."));
    CHECK(holds(text, "No box of this kit can be smaller than 300 ml."));
    CHECK(holds(text, "--effort thorough"));
    CHECK(holds(text, "--seed 5"));
    CHECK(holds(text, "larger limits"));
}

TEST_CASE("a search stopped before it found anything is to be given longer, not more effort")
{
    Bundle bundle;
    bundle.kit = "Soup";
    bundle.status = Status::not_found;
    bundle.explanation = "the search was stopped after 2 s before it had found anything; that is no proof";
    const auto text = text_report(bundle);
    CHECK(holds(text, "The search was stopped after 2 s before it had found anything"));
    CHECK(holds(text, "give it longer"));
    CHECK_FALSE(holds(text, "thorough"));
}

TEST_CASE("no line is wider than a hundred columns, whatever the names")
{
    std::string name, endless;
    for (int i = 0; i < 60; ++i) {
        name += "p\xC3\xB6t of ";
        endless += "Gas\xC3\xA9n";
    }
    auto bundle = handmade::many_pots(2);
    bundle.kit = name;
    bundle.explanation = name + endless;
    handmade::keep(bundle, Keep::apart, "stock", "pot", name + endless);
    for (auto& item : bundle.items) {
        item.name = name + "gas";
        item.contents = endless;
    }
    for (auto& step : bundle.steps) {
        step.text = name + endless;
    }
    CHECK(widest_line(text_report(bundle)) <= 100);
    CHECK(widest_line(text_report(bundle)) > 90);
    bundle.status = Status::does_not_fit;
    CHECK(widest_line(text_report(bundle)) <= 100);
    bundle.status = Status::not_found;
    CHECK(widest_line(text_report(bundle)) <= 100);
}

TEST_CASE("items nested deep stay within the columns")
{
    std::vector<PlacedItem> items;
    for (int i = 0; i < 60; ++i) {
        const double width = 200 - 3 * i;
        auto pot = handmade::hollow(handmade::item("a pot", handmade::cylinder(width, 50, {0, 0, 25})),
                                    handmade::cylinder(width - 1, 50, {0, 0, 25}), Opening::both);
        pot.copy = i + 1;
        items.push_back(i == 0 ? pot : handmade::in(pot, items.size() - 1));
    }
    CHECK(widest_line(text_report(handmade::bundle("Rings", Cylinder{200, 50}, items))) <= 100);
}

TEST_CASE("a number is not parted from its unit at the end of a line")
{
    for (std::size_t before = 80; before < 105; ++before) {
        const auto text = report::wrapped("", std::string(before - 40, 'a') + " " + std::string(39, 'b') +
                                                  " 1.42 l, 131 mm across, 18 % above");
        INFO(text);
        CHECK(holds(text, "1.42 l,"));
        CHECK(holds(text, "131 mm"));
        CHECK(holds(text, "18 %"));
        CHECK(widest_line(text) <= 100);
    }
}

TEST_CASE("names cannot steer the terminal")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.kit = "Soup\x1B[2J\xC2\x9B";
    bundle.items[0].name = "pot\nStatus: proved";
    handmade::keep(bundle, Keep::within, "cup", "pot", "so\x1B[2J\nStatus: proved");
    const auto text = text_report(bundle);
    CHECK_FALSE(holds(text, "\x1B"));
    CHECK_FALSE(holds(text, "\xC2\x9B"));
    CHECK_FALSE(holds(text, "\nStatus: proved)"));
}
