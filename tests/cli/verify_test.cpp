// SPDX-License-Identifier: GPL-3.0-or-later
/// Saved bundles, sound and damaged. The sound one is written out here, so that no search is needed.
#include <catch2/catch.hpp>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "cli/program.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright::cli_test;
namespace fs = std::filesystem;
using nlohmann::json;

namespace {

json block(int copy, double x)
{
    return {{"id", "biscuits"},
            {"copy", copy},
            {"name", "Biscuits"},
            {"in", nullptr},
            {"closes", nullptr},
            {"form", "flat"},
            {"stowed", ""},
            {"how", ""},
            {"kinds", json::array()},
            {"upright", false},
            {"nothing_on_top", false},
            {"bears_g", nullptr},
            {"reach", "any"},
            {"out_after", nullptr},
            {"weight_g", 25},
            {"contents", ""},
            {"contents_g", 0},
            {"contents_fill", false},
            {"soft", false},
            {"solids",
             {{{"box", {{"length", 30}, {"width", 20}, {"height", 10}}},
               {"center", {x, 10, 5}},
               {"quaternion", {1, 0, 0, 0}},
               {"rotation", {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
               {"tolerance", {{"length", 0}, {"width", 0}, {"height", 0}}}}}},
            {"cavities", json::array()}};
}

json step(int copy)
{
    return {{"item", "biscuits"},        {"copy", copy},   {"into", "bundle"},
            {"direction", {0, 0, -1}}, {"via", nullptr}, {"text", "Put it in."}};
}

json still() { return {{"x", {0, 0}}, {"y", {0, 0}}, {"z", {0, 0}}}; }

/// Two boxes side by side in a box; the steps have no words of theirs yet.
json without_words()
{
    return {{"format", "tuckwright-bundle"},
            {"version", 1},
            {"kit", "Biscuits"},
            {"seed", 1},
            {"effort", "quick"},
            {"status", "proved-best"},
            {"explanation", ""},
            {"clearance_mm", 0.5},
            {"worst_case", false},
            {"limits", {{"shape", "box"}, {"length_mm", 60}}},
            {"rules", json::array()},
            {"waived", json::array()},
            {"bag", nullptr},
            {"bands", json::array()},
            {"bundle", {{"shape", "box"}, {"length_mm", 60}, {"width_mm", 20}, {"height_mm", 10}, {"volume_ml", 12}}},
            {"lower_bound_ml", 12},
            {"gap", 0},
            {"weight_g", {{"total", 50}, {"empty", 50}, {"contents", 0}}},
            {"items", {block(1, 15), block(2, 45)}},
            {"fits", json::array()},
            {"plays", {still(), still()}},
            {"steps", {step(1), step(2)}},
            {"certificate",
             {{"planes", json::array()},
              {"rests",
               {{{"item", 0}, {"on", nullptr}, {"point", {0, 0, 0}}},
                {{"item", 1}, {"on", nullptr}, {"point", {0, 0, 0}}}}}}}};
}

/// The same with the words that the program has for its steps.
json sound()
{
    json object = without_words();
    const auto bundle = tuckwright::from_json(object.dump(), "bundle.json");
    REQUIRE(bundle.ok());
    const auto texts = tuckwright::step_texts(*bundle);
    REQUIRE(texts.size() == 2);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        object["steps"][i]["text"] = texts[i];
    }
    return object;
}

Outcome verify(const std::string& text)
{
    const Folder folder;
    write(folder / "bundle.json", text);
    return program("verify " + quoted((folder / "bundle.json").string()));
}

} // namespace

TEST_CASE("a sound bundle is verified from its file alone")
{
    const auto outcome = verify(sound().dump());
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    CHECK(outcome.out.find("verified: Biscuits: a box 60 mm long, 20 mm wide and 10 mm high, 12 ml, 2 items") == 0);
    CHECK(outcome.err.empty());
}

TEST_CASE("a bundle that breaks a rule is refused, and the rule named")
{
    struct Case {
        const char* at;
        json value;
        const char* said;
    };
    const std::vector<Case> cases = {
        {"/items/1/solids/0/center/0", 44.999999, "refused (apart): "},
        {"/items/1/out_after", 0, "refused (reach): "},
        {"/items/0/reach", "first", "refused (reach): "},
        {"/items/1/solids/0/center/0", 45.000001, "refused (inside): "},
        {"/items/1/solids/0/center/0", 44.9999999, "refused (number): "},
        {"/items/1/solids/0/box/height", 10.000001, "refused (inside): "},
        {"/limits/length_mm", 59, "refused (limit): "},
        {"/steps/1/direction/2", 1, "refused (step): "},
        {"/certificate/rests", json::array(), "refused (rest): "},
        {"/bundle/volume_ml", 11, "refused (figure): bundle.volume_ml: is 11, but 12 follows"},
        {"/bundle/height_mm", 11, "refused (figure): bundle.volume_ml: is 12, but 13.2 follows"},
        {"/weight_g/total", 49, "refused (figure): weight_g.total: is 49, but 50 follows"},
        {"/items/0/solids/0/rotation/0/0", -1, "refused (figure): items[0].solids[0].rotation[0][0]: is -1"},
        {"/steps/1/text", "Throw it away.",
         "refused (text): steps[1].text: is \"Throw it away.\", but the step is about Biscuits, which it does not name"},
        {"/steps/0/text", "", "refused (text): steps[0].text: is \"\", but the step is about Biscuits"},
        {"/plays/1/x/0", 3, "refused (figure): plays[1].x[0]: is 3, but 0 follows from the rest"},
        {"/plays", json::array(), "refused (figure): plays: 0 are there, but 2 follow from the rest"},
        {"/fits", {{{"vessel", 0}, {"cavity", 0}, {"items", {1}}, {"way", "along"}, {"room_mm", 1}, {"worst_mm", 1}}},
         "refused (figure): fits: 1 are there, but 0 follow from the rest"},
        {"/items/1/name", "Dynamite", "refused (text): steps["},
    };
    for (const auto& wrong : cases) {
        json spoilt = sound();
        spoilt[json::json_pointer(wrong.at)] = wrong.value;
        const auto outcome = verify(spoilt.dump());
        INFO(wrong.at << " = " << wrong.value << " said: " << outcome.err << outcome.out);
        CHECK(outcome.code == 1);
        CHECK(outcome.out.empty());
        CHECK(holds(outcome.err, wrong.said));
    }
}

TEST_CASE("what is said to be proved the smallest has its lower bound for its volume")
{
    json spoilt = sound();
    spoilt["lower_bound_ml"] = 11.99999;
    spoilt["gap"] = 12 / 11.99999 - 1;
    const auto outcome = verify(spoilt.dump());
    CHECK(outcome.code == 1);
    CHECK(holds(outcome.err, "refused (limit): the status \"proved-best\" says that no bundle is smaller"));
    spoilt["status"] = "found";
    CHECK(verify(spoilt.dump()).code == 0);
    spoilt = sound();
    spoilt["lower_bound_ml"] = 12 / (1 + 0.9e-7);
    spoilt["gap"] = 0.9e-7;
    CHECK(verify(spoilt.dump()).code == 0);
}

TEST_CASE("what is no saved bundle at all exits 2, in one line")
{
    const auto says = [](const std::string& text, const std::string& what) {
        const auto outcome = verify(text);
        INFO(text << " said: " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, what));
        CHECK(std::count(outcome.err.begin(), outcome.err.end(), '\n') == 1);
    };
    says(two_tins, "this looks like a kit, not like a saved bundle; give it to 'tuckwright pack'");
    says("# mine\nbundle: {shape: box}\nitems:\n", "this looks like a kit");
    says("{}", "format: is missing, so this is not a saved bundle");
    says("{\"kit\": \"Soup\", \"items\": []}", "format: is missing, so this is not a saved bundle");
    says("{\"format\": \"a drawing\", \"items\": 3}", "this is not a saved bundle");
    says("[1, 2]", "must be an object");
    json newer = sound();
    newer["version"] = 2;
    newer.erase("items");
    says(newer.dump(), "version: this program reads version 1, not 2");
}

TEST_CASE("a damaged file exits 2 and names the place")
{
    const std::string text = sound().dump(1);
    CHECK(verify("").code == 2);
    const auto cut = verify(text.substr(0, text.size() / 2));
    CHECK(cut.code == 2);
    CHECK(holds(cut.err, "not JSON"));
    json spoilt = sound();
    spoilt["items"][1]["solids"][0]["center"] = "there";
    spoilt["steps"][0].erase("text");
    const auto fields = verify(spoilt.dump());
    CHECK(fields.code == 2);
    CHECK(holds(fields.err, "items[1].solids[0].center: must be a list"));
    CHECK(holds(fields.err, "steps[0].text: is missing"));
}

TEST_CASE("a file that is not there, or a folder, exits 2")
{
    const Folder folder;
    for (const auto& path : {folder / "none.json", folder.path()}) {
        const auto outcome = program("verify " + quoted(path.string()));
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, path.string() + ": "));
    }
}

TEST_CASE("a saved bundle is compared with the kit that it is said to be of")
{
    const Folder folder;
    const std::string head = "kit: Biscuits\nbundle: {shape: box, length: 60}\nitems:\n";
    const std::string block = "  - {id: biscuits, name: Biscuits, count: 2, weight: 25, box: {length: 30, width: 20, height: ";
    write(folder / "bundle.json", sound().dump());
    const auto against = [&](const std::string& kit) {
        write(folder / "kit.yaml", kit);
        return program("verify " + quoted((folder / "bundle.json").string()) + " --kit " +
                       quoted((folder / "kit.yaml").string()));
    };
    const auto good = against(head + block + "10}}\n");
    INFO(good.err);
    CHECK(good.code == 0);
    CHECK(holds(good.out, "and all as the kit asks for it"));
    const auto refused = [&](const std::string& kit, const std::string& words) {
        const auto outcome = against(kit);
        INFO(outcome.err);
        CHECK(outcome.code == 1);
        CHECK(outcome.out.empty());
        CHECK(holds(outcome.err, "refused (kit): " + words));
    };
    refused(head + block + "11}}\n", "biscuits 1 has not the size and shape of the kit");
    refused(head + block + "10}}\n  - {id: jam, weight: 9, box: {length: 3, width: 2, height: 1}}\n",
            "jam of the kit is missing");
    refused("worst-case: yes\n" + head + block + "10}}\n", "the kit asks for the worst case");
    const auto faulty = against(head + block + "ten}}\n");
    CHECK(faulty.code == 2);
    CHECK(holds(faulty.err, "kit.yaml:4:"));
    CHECK(program("verify - --kit -").code == 2);
    CHECK(program("verify " + quoted((folder / "bundle.json").string()) + " --kit").code == 2);
    CHECK(program("verify " + quoted((folder / "bundle.json").string()) + " --kit " +
                  quoted((folder / "none.yaml").string()))
              .code == 2);
    json spoilt = sound(); // what does not hold by itself is refused first
    spoilt["weight_g"]["total"] = 49;
    write(folder / "bundle.json", spoilt.dump());
    CHECK(holds(against(head + block + "10}}\n").err, "refused (figure)"));
}

TEST_CASE("the answer of another command is not taken for a kit or a bundle")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: A cup\nitems:\n  - {id: cup, weight: 62 g, cylinder: {diameter: 80, height: 70}}\n");
    const std::string answer = quoted((folder / "answer.json").string());
    REQUIRE(program("compare " + quoted((folder / "kit.yaml").string()) + " --effort quick --json " + answer).code == 0);
    for (const char* command : {"verify ", "pack ", "room ", "size ", "back "}) {
        const auto refused = program(std::string(command) + answer);
        CAPTURE(command, refused.err);
        CHECK(refused.code == 2);
        CHECK(holds(refused.err, "an answer of another command (tuckwright-comparison)"));
        CHECK(std::count(refused.err.begin(), refused.err.end(), '\n') <= 3);
    }
}

TEST_CASE("a bundle is not refused for how a sentence is put, and what is printed of it is put as today")
{
    const Folder folder;
    const auto file = folder / "bundle.json";
    const std::string other_words = "(Its sentences are not those of this version of tuckwright; it writes them anew.)\n";
    const json whole = sound();
    CHECK_FALSE(holds(verify(whole.dump()).out, other_words));
    struct Case {
        const char* at;
        const char* words;
    };
    for (const auto& [at, words] : {Case{"/items/1/form", "on its side"}, Case{"/steps/0/text", "Biscuits 1 come first."},
                                    Case{"/steps/1/text", "Then come Biscuits, 27 mm to the right."}}) {
        json reworded = sound();
        reworded[json::json_pointer(at)] = words;
        write(file, reworded.dump());
        const auto outcome = program("verify " + quoted(file.string()));
        CAPTURE(at, outcome.err);
        CHECK(outcome.code == 0);
        CHECK(outcome.err.empty());
        CHECK(holds(outcome.out, other_words));
        const auto html = folder / "card.html";
        REQUIRE(program("card " + quoted(file.string()) + " --without-picture --html " + quoted(html.string())).code == 0);
        const std::string card = text_of(html);
        CHECK_FALSE(holds(card, words));
        for (const auto& step : whole["steps"]) {
            CHECK(holds(card, step["text"].get<std::string>()));
        }
    }
}

TEST_CASE("bundles that were saved by older versions are still proved, and held against their kits")
{
    std::size_t tried = 0, of_kits = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(TUCKWRIGHT_SOURCE_DIR) / "tests/corpus/bundles")) {
        if (entry.path().extension() == ".json") {
            const fs::path kit = fs::path(entry.path()).replace_extension(".yaml");
            const bool has_kit = fs::exists(kit);
            const auto outcome = program("verify " + quoted(entry.path().string()) +
                                         (has_kit ? " --kit " + quoted(kit.string()) : ""));
            INFO(entry.path() << " said: " << outcome.err);
            CHECK(outcome.code == 0);
            ++tried;
            of_kits += has_kit ? 1 : 0;
        }
    }
    CHECK(tried >= 2);
    CHECK(of_kits >= 1);
}

TEST_CASE("of an older bundle, too, what is changed in its facts is refused")
{
    const Folder folder;
    const fs::path corpus = fs::path(TUCKWRIGHT_SOURCE_DIR) / "tests/corpus/bundles";
    const json old = json::parse(text_of(corpus / "broth-version-1.json"));
    struct Case {
        const char* at;
        json value;
        const char* said;
    };
    const std::vector<Case> cases = {
        {"/items/0/name", "Large pot", "refused (text): steps["},
        {"/items/3/name", "Spirit flask", "refused (text): steps["},
        {"/items/3/how", "leave it at home", "refused (text): items[3].how"},
        {"/items/5/how", "leave it at home", "refused (text): items[5].how"},
        {"/bag/name", "Net", "refused (figure): bag.text: is \"Pull Soft sack over it all, and close it.\", but it is about Net"},
        {"/bands/0/name", "Cord", "refused (figure): bands[0].text"},
        {"/bag/girth_mm", 340, "refused (girth)"},
        {"/rules/0/second", "pot", "refused (kit): the rules of carrying are not those of the kit: the kit has one more about "
                                   "spirit and cup (fuel keeps apart from what touches the lips)"},
        {"/rules/1/keep", "within", "refused (carrying)"},
        {"/items/2/weight_g", 61, "refused (figure)"},
        {"/items/2/kinds", json::array(), "refused (kit)"},
        {"/steps/0/into", "cup", "refused (figure)"},
        {"/clearance_mm", 0.4, "refused (kit): the clearance"},
    };
    for (const auto& wrong : cases) {
        json spoilt = old;
        spoilt[json::json_pointer(wrong.at)] = wrong.value;
        write(folder / "bundle.json", spoilt.dump());
        const auto outcome = program("verify " + quoted((folder / "bundle.json").string()) + " --kit " +
                                     quoted((corpus / "broth-version-1.yaml").string()));
        INFO(wrong.at << " = " << wrong.value << " said: " << outcome.err << outcome.out);
        CHECK(outcome.code == 1);
        CHECK(outcome.out.empty());
        CHECK(holds(outcome.err, wrong.said));
    }
}
