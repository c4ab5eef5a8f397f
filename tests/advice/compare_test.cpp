// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <atomic>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>

#include "advice/compare_order.hpp"
#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/compare.hpp"

using namespace tuckwright;
using nlohmann::json;

namespace {

/// 3 x 3 x 2 choices of a few small things.
const std::string eighteen = R"(kit: Soup
items:
  - choice: pot
    one-of:
      - {id: low, weight: 150, cylinder: {diameter: 124, height: 70}, inside: {wall: 1, base: 1}}
      - {id: high, weight: 160, cylinder: {diameter: 100, height: 105}, inside: {wall: 1, base: 1}}
      - {id: bowl, weight: 90, cylinder: {diameter: 130, height: 55}, inside: {wall: 1, base: 1}}
  - choice: stove
    one-of:
      - {id: gas, weight: 85, cylinder: {diameter: 70, height: 45}}
      - {id: spirit, weight: 40, cylinder: {diameter: 66, height: 38}}
      - nothing
  - choice: food
    one-of:
      - {id: rice, weight: 5, box: {length: 80, width: 50, height: 40}, contents: {what: rice, amount: 100 g}, upright: no}
      - {id: soup, weight: 5, box: {length: 90, width: 60, height: 20}, contents: {what: soup, amount: 60 g}, upright: no}
  - {id: cup, weight: 60, cylinder: {diameter: 80, height: 50}, inside: {wall: 1, base: 1}, goes-in: pot}
)";

std::vector<Contender> contenders_of(const std::string& text, const std::string& name = "kit.yaml")
{
    const auto kits = read_kits_text(text, name);
    INFO((kits ? "" : to_string(kits.problems().front())));
    REQUIRE(kits.ok());
    std::vector<Contender> all;
    for (const ChosenKit& kit : *kits) {
        all.push_back({name, kit});
    }
    return all;
}

CompareOptions quick(std::size_t most = 64)
{
    CompareOptions options;
    options.search.effort = Effort::quick;
    options.most = most;
    return options;
}

double ml(const Compared& kit) { return volume_ml(outer_envelope(kit.bundle)); }

bool is_packed(const Compared& kit) { return kit.trial == Trial::packed && has_bundle(kit.bundle.status); }

/// The characters of the longest line.
std::size_t widest_line(const std::string& text)
{
    std::size_t widest = 0, width = 0;
    for (const char c : text) {
        width = c == '\n' ? 0 : width + ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0);
        widest = std::max(widest, width);
    }
    return widest;
}

/// Whether the text says so, however its lines are broken.
bool holds(const std::string& text, const std::string& part)
{
    std::string flat;
    for (const char c : text) {
        const char shown = c == '\n' ? ' ' : c;
        flat += shown == ' ' && !flat.empty() && flat.back() == ' ' ? "" : std::string(1, shown);
    }
    return flat.find(part) != std::string::npos;
}

/// All of them, packed once for several tests.
const Comparison& all_eighteen()
{
    static const Comparison comparison = compare(contenders_of(eighteen), quick());
    return comparison;
}

} // namespace

TEST_CASE("a table of 3 x 3 x 2 choices equals that of 18 single runs")
{
    const Comparison& comparison = all_eighteen();
    REQUIRE(comparison.kits.size() == 18);
    const auto rows = json::parse(to_json(comparison))["kits"];
    const int step = test::count(1, 6); // all of them, but where all is slow
    for (std::size_t k = 0; k < comparison.kits.size(); k += static_cast<std::size_t>(step)) {
        const Compared& row = comparison.kits[k];
        CAPTURE(row.contender.chosen.kit.name);
        const auto kit = read_kit_text(eighteen, "kit.yaml", row.contender.chosen.taken);
        REQUIRE(kit.ok());
        const Bundle single = test::solved(*kit, Effort::quick);
        REQUIRE(row.trial == Trial::packed);
        CHECK(row.bundle.kit == single.kit);
        CHECK(row.bundle.status == single.status);
        CHECK(row.bundle.envelope == single.envelope);
        CHECK(row.bundle.lower_bound_ml == single.lower_bound_ml);
        CHECK(row.bundle.steps.size() == single.steps.size());
        CHECK(row.empty_g + row.contents_g == Approx(total_weight_g(single)).epsilon(1e-12));
        CHECK(rows[k]["bundle"]["volume_ml"] == volume_ml(outer_envelope(single)));
        CHECK(rows[k]["gap"] == Approx(gap(single)).margin(1e-12));
        CHECK(rows[k]["steps"] == single.steps.size());
    }
    CHECK(widest_line(text_report(comparison)) <= 100);
}

TEST_CASE("a comparison does not depend on the number of threads")
{
    for (const std::size_t most : {4U, 2U}) { // all at once, and one after the other
        std::string first;
        for (const unsigned threads : {1U, 2U, 7U}) {
            auto some = contenders_of(eighteen);
            some.resize(4);
            CompareOptions options = quick(most);
            options.search.threads = threads;
            const std::string saved = to_json(compare(std::move(some), options));
            first = first.empty() ? saved : first;
            CHECK(saved == first);
        }
    }
}

TEST_CASE("rows are in the order of volume, and the marked ones are those that no other beats")
{
    const Comparison& comparison = all_eighteen();
    CHECK(std::is_sorted(comparison.kits.begin(), comparison.kits.end(),
                         [](const Compared& a, const Compared& b) { return ml(a) < ml(b); }));
    std::size_t marked = 0;
    for (const Compared& kit : comparison.kits) {
        const bool beaten = std::any_of(comparison.kits.begin(), comparison.kits.end(), [&](const Compared& other) {
            const bool no_larger = ml(other) <= ml(kit) * 1.0001, no_heavier = other.empty_g <= kit.empty_g;
            return no_larger && no_heavier && (ml(kit) > ml(other) * 1.0001 || other.empty_g < kit.empty_g);
        });
        CHECK(kit.unbeaten == !beaten);
        marked += kit.unbeaten ? 1U : 0U;
    }
    CHECK(marked >= 1);
    CHECK(marked < comparison.kits.size());
}

TEST_CASE("a figure beats another only if it is no worse in both and better in one")
{
    CHECK(beats({100, 50}, {110, 50}));
    CHECK(beats({100, 50}, {100, 51}));
    CHECK(beats({100, 50}, {110, 60}));
    CHECK_FALSE(beats({100, 50}, {100, 50}));
    CHECK_FALSE(beats({100, 50}, {100.001, 50})); // less than 0.01 %
    CHECK_FALSE(beats({100, 51}, {110, 50}));
    CHECK_FALSE(beats({110, 50}, {100, 60}));
    CHECK(by_hope({{5, 5}, {1, 9}, {9, 1}, {2, 3}}) == std::vector<std::size_t>{1, 3, 2, 0});
}

TEST_CASE("with more kits than are to be packed, none that is ruled out would have been marked")
{
    const Comparison& all = all_eighteen();
    const Comparison some = compare(contenders_of(eighteen), quick(7));
    REQUIRE(some.kits.size() == 18);
    std::size_t packed = 0, ruled_out = 0;
    for (const Compared& kit : some.kits) {
        packed += kit.trial == Trial::packed ? 1U : 0U;
        if (kit.trial != Trial::packed) {
            CHECK_FALSE(kit.unbeaten);
            CHECK(kit.lower_bound_ml > 0);
        }
        if (kit.trial == Trial::ruled_out) {
            ++ruled_out;
            const auto same = std::find_if(all.kits.begin(), all.kits.end(), [&](const Compared& other) {
                return other.contender.chosen.taken == kit.contender.chosen.taken;
            });
            REQUIRE(same != all.kits.end());
            CHECK_FALSE(same->unbeaten);
            CHECK(std::any_of(some.kits.begin(), some.kits.end(), [&](const Compared& other) {
                return is_packed(other) && ml(other) <= kit.lower_bound_ml * 1.0001 && other.empty_g <= kit.empty_g;
            }));
        }
    }
    CHECK(packed <= 7);
    CHECK(packed >= 1);
    const std::string text = text_report(some);
    CHECK(holds(text, "18 kits compared"));
    CHECK(holds(text, "Ruled out: ") == (ruled_out > 0));
    CHECK(holds(text, "Not packed: ") == (packed + ruled_out < 18));
    CHECK(widest_line(text) <= 100);
}

TEST_CASE("weights count covers and copies, and tell contents apart")
{
    const Comparison comparison =
        compare(contenders_of("kit: Tea\nitems:\n"
                              "  - {id: tin, count: 3, weight: 20, cylinder: {diameter: 40, height: 30}, "
                              "contents: {what: tea, amount: 5 g}}\n"
                              "  - {id: sack, weight: 7, bag: {girth: 400, length: 300, thickness: 1}}\n"
                              "  - {id: strap, weight: 2, band: {girth: 400}}\n"),
                quick());
    REQUIRE(comparison.kits.size() == 1);
    const Compared& only = comparison.kits.front();
    CHECK(only.empty_g == 69); // 3 x 20 + 7 + 2
    CHECK(only.contents_g == 15);
    REQUIRE(is_packed(only));
    CHECK(only.empty_g + only.contents_g == Approx(total_weight_g(only.bundle)));
    CHECK(only.unbeaten);
    const std::string text = text_report(comparison);
    CHECK(holds(text, "1 kit compared"));
    CHECK(holds(text, "there is nothing to compare it with"));
}

TEST_CASE("a kit that does not fit stays in the table with its reason, and proves nothing")
{
    const Comparison comparison =
        compare(contenders_of("kit: Tight\nbundle: {shape: box, length: 130, width: 90, height: 60}\nitems:\n"
                              "  - choice: rod\n    one-of:\n"
                              "      - {id: short, weight: 40, cylinder: {diameter: 30, height: 120}}\n"
                              "      - {id: long, weight: 30, cylinder: {diameter: 30, height: 190}}\n"
                              "  - {id: tin, weight: 20, box: {length: 60, width: 40, height: 29}}\n"),
                quick());
    REQUIRE(comparison.kits.size() == 2);
    CHECK(is_packed(comparison.kits[0]));
    CHECK(comparison.kits[1].bundle.status == Status::does_not_fit);
    CHECK_FALSE(comparison.kits[1].unbeaten);
    const std::string text = text_report(comparison);
    INFO(text);
    CHECK(holds(text, "does not fit"));
    CHECK(holds(text, "rod: long"));
    CHECK(holds(text, "corner to corner"));
    CHECK(holds(text, "That is proved"));
    CHECK(holds(text, "Lighter still, but without a bundle: no. 2"));
    const auto object = json::parse(to_json(comparison));
    CHECK(object["format"] == "tuckwright-comparison");
    CHECK(object["kits"][0]["taken"]["rod"] == "short");
    CHECK(object["kits"][0]["unbeaten"] == true);
    CHECK(object["kits"][1]["status"] == "does-not-fit");
    CHECK(object["kits"][1]["bundle"].is_null());
    CHECK(object["kits"][1]["gap"].is_null());
    CHECK_FALSE(object["kits"][1]["explanation"].get<std::string>().empty());
}

namespace {

/// A row with these figures, as if a search had come to them.
Compared row(const std::string& file, double height, double bound_ml, double grams, Status status = Status::found)
{
    Compared kit;
    kit.contender.file = file;
    kit.contender.chosen.kit.name = file;
    kit.trial = Trial::packed;
    kit.bundle.status = status;
    kit.bundle.envelope = Box{100, 100, height}; // ten millilitres a millimetre
    kit.bundle.lower_bound_ml = kit.lower_bound_ml = bound_ml;
    kit.empty_g = grams;
    return kit;
}

std::string conclusion_of(std::vector<Compared> kits)
{
    Comparison comparison;
    comparison.effort = "normal";
    comparison.kits = std::move(kits);
    return text_report(comparison);
}

} // namespace

TEST_CASE("one kit is called proved to be smaller only if the other's bound lies above it")
{
    const std::string proved = conclusion_of({row("a", 50, 400, 200), row("b", 60, 501, 180)});
    INFO(proved);
    CHECK(holds(proved, "Smallest: no. 1 (a) with 500 ml, 100 ml or 16 % less than no. 2. That is proved"));
    CHECK(holds(proved, "Lightest: no. 2 (b) with 180 g without contents, 20 g less than no. 1, but 100 ml larger."));

    const std::string open = conclusion_of({row("a", 50, 400, 180), row("b", 60, 499, 200), row("c", 70, 650, 300)});
    INFO(open);
    CHECK(holds(open, "That is as found, not proved: no. 2 may still come out smaller"));
    CHECK(holds(open, "Lightest: no. 1 (a) with 180 g without contents; so no. 1 is best in both."));

    // What was not found may still be smaller; what does not fit may not.
    CHECK(
        holds(conclusion_of({row("a", 50, 400, 180), row("b", 1, 300, 200, Status::not_found)}), "not proved: no. 2"));
    CHECK(
        holds(conclusion_of({row("a", 50, 400, 180), row("b", 1, 300, 200, Status::does_not_fit)}), "That is proved"));
}

TEST_CASE("kits that are alike, and none that was packed")
{
    const std::string alike = conclusion_of({row("a", 50, 400, 200), row("b", 50, 400, 180)});
    INFO(alike);
    CHECK(holds(alike, "Smallest, alike: no. 1 and 2 with 500 ml."));
    CHECK(holds(alike, "so no. 2 is best in both"));
    CHECK(holds(alike, "tuckwright pack b "));
    CHECK(holds(conclusion_of({row("a", 1, 300, 200, Status::not_found)}), "None of them was packed"));
}

TEST_CASE("what differs between kits is told, and what is asked for")
{
    auto kits =
        contenders_of("kit: A\nitems:\n  - {id: tin, weight: 20, cylinder: {diameter: 40, height: 30}}\n"
                      "  - {id: cup, weight: 30, cylinder: {diameter: 60, height: 30}, inside: {wall: 1, base: 1}}\n",
                      "a.yaml");
    for (auto& kit :
         contenders_of("kit: B\nclearance: 1\nitems:\n"
                       "  - {id: tin, weight: 20, cylinder: {diameter: 40, height: 30}}\n"
                       "  - {id: cup, weight: 30, cylinder: {diameter: 60, height: 30}, inside: {wall: 2, base: 1}}\n",
                       "b's.yaml")) {
        kits.push_back(kit);
    }
    const std::string text = text_report(compare(std::move(kits), quick()));
    INFO(text);
    CHECK(holds(text, "asked for is a round bundle, with 0.5 mm of clearance: in 1"));
    CHECK(holds(text, "asked for is a round bundle, with 1 mm of clearance: in 2"));
    CHECK(holds(text, "- cup, 60 mm across, 30 mm high, 30 g, inside 58 mm across, 29 mm high: in 1"));
    CHECK(holds(text, "- cup, 60 mm across, 30 mm high, 30 g, inside 56 mm across, 29 mm high: in 2"));
    CHECK(holds(text, "The rest is the same in all: 1 thing."));
}

TEST_CASE("things of other kinds are not the same, for the kinds decide what may go together")
{
    auto kits = contenders_of("kit: A\nitems:\n  - {id: tin, weight: 20, cylinder: {diameter: 40, height: 30}}\n"
                              "  - {id: pot, weight: 30, cylinder: {diameter: 60, height: 30}, kind: [lips, sooty]}\n",
                              "a.yaml");
    for (auto& kit : contenders_of("kit: B\nitems:\n  - {id: tin, weight: 20, cylinder: {diameter: 40, height: 30}}\n"
                                   "  - {id: pot, weight: 30, cylinder: {diameter: 60, height: 30}}\n",
                                   "b.yaml")) {
        kits.push_back(kit);
    }
    const std::string text = text_report(compare(std::move(kits), quick()));
    INFO(text);
    CHECK(holds(text, "- pot, 60 mm across, 30 mm high, 30 g, of kind lips, sooty: in 1"));
    CHECK(holds(text, "- pot, 60 mm across, 30 mm high, 30 g, of no kind: in 2"));
    CHECK(holds(text, "The rest is the same in all: 1 thing."));
}

TEST_CASE("a comparison that is stopped tells what there is")
{
    std::atomic<bool> stop{false};
    CompareOptions options = quick();
    options.search.stop = &stop;
    options.progress = [&](std::size_t done, std::size_t of) {
        CHECK(of == 18);
        stop = done == 2; // while the third is being packed
    };
    const Comparison comparison = compare(contenders_of(eighteen), options);
    CHECK(comparison.stopped);
    std::size_t packed = 0;
    for (const Compared& kit : comparison.kits) {
        packed += kit.trial == Trial::packed ? 1U : 0U;
        CHECK(kit.trial != Trial::ruled_out);
    }
    CHECK(packed == 3);
    const std::string text = text_report(comparison);
    CHECK(holds(text, "stopped before the end"));
    CHECK(holds(text, "Not packed: 15 more, since you stopped before their turn."));
    CHECK(json::parse(to_json(comparison))["stopped"] == true);
}
