// SPDX-License-Identifier: GPL-3.0-or-later
/// The way back, as the program is run.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;

namespace {

const std::string quick = " --effort quick";

const std::string sooty = R"(kit: Soup at the sluice
way-back:
  becomes: {pot: sooty}
  empty: barley
items:
  - {id: pot, name: Pot, weight: 90, cylinder: {diameter: 90, height: 70}, inside: {wall: 1, base: 1}, kind: lips}
  - {id: rag, name: Rag, weight: 20, box: {length: 60, width: 50, height: 12}, kind: [clean, soft]}
  - {id: barley, weight: 20, box: {length: 50, width: 40, height: 30}, contents: {what: barley, amount: 100 g}}
)";

std::string kit_in(const Folder& folder, const std::string& text = sooty)
{
    write(folder / "kit.yaml", text);
    return quoted((folder / "kit.yaml").string());
}

std::string path(const Folder& folder, const std::string& name) { return quoted((folder / name).string()); }

} // namespace

TEST_CASE("back packs both ways, tells what goes elsewhere and why, and saves both bundles")
{
    const Folder folder;
    const std::string kit = kit_in(folder);
    const auto told = program("back " + kit + quick + " --json " + path(folder, "both.json") + " --save-out " +
                              path(folder, "out.json") + " --save-back " + path(folder, "back.json"));
    INFO(told.err << told.out);
    REQUIRE(told.code == 0);
    CHECK(told.err.empty());
    CHECK(holds(told.out, "Soup at the sluice: out and back"));
    CHECK(holds(told.out, "Rag: now outside all vessels"));
    CHECK(holds(told.out, "before in Pot"));
    CHECK(holds(told.out, "Pot and Rag keep apart now"));
    CHECK(holds(told.out, "barley: empty of barley"));
    const json both = json::parse(text_of(folder / "both.json"));
    CHECK(both["format"] == "tuckwright-there-and-back");
    CHECK(both["version"] == 1);
    CHECK(both["out"] == json::parse(text_of(folder / "out.json")));
    CHECK(both["back"] == json::parse(text_of(folder / "back.json")));
    REQUIRE(both["elsewhere"].size() == 1);
    CHECK(both["elsewhere"][0]["id"] == "rag");
    CHECK(both["elsewhere"][0]["cause"] == "rule");
    CHECK(both["elsewhere"][0]["rule"]["keep"] == "apart");
    CHECK(both["elsewhere"][0]["before"]["in"] == "pot");
    CHECK(both["elsewhere"][0]["now"]["in"] == nullptr);
    CHECK(program("back " + kit + quick + " --json -").out == text_of(folder / "both.json"));
    CHECK(program("back " + kit + quick + " --json - --threads 1").out == text_of(folder / "both.json"));

    // Both are proved anew, each against its own way.
    const std::string with_kit = " --kit " + kit;
    CHECK(program("verify " + path(folder, "out.json") + with_kit).code == 0);
    CHECK(program("verify " + path(folder, "back.json") + with_kit + " --way-back").code == 0);
    CHECK(program("verify " + path(folder, "back.json") + with_kit).code == 1);
    const auto other_way = program("verify " + path(folder, "out.json") + with_kit + " --way-back");
    CHECK(other_way.code == 1);
    CHECK(holds(other_way.err, ", on the way back'; give the kit that it was packed from; a bundle of the way back needs --way-back"));
    CHECK(program("room " + path(folder, "back.json") + quick).code == 0);
    CHECK(program("size " + path(folder, "back.json")).code == 0);
}

TEST_CASE("other commands may be asked about the way back")
{
    const Folder folder;
    const std::string kit = kit_in(folder) + quick + " --way-back";
    const auto packed = program("pack " + kit + " --json " + path(folder, "back.json"));
    CHECK(packed.code == 0);
    CHECK(holds(packed.out, "Soup at the sluice, on the way back: packs into"));
    CHECK(holds(packed.out, "Weight: 130 g")); // by hand: 90 + 20 + 20
    CHECK(program("verify " + path(folder, "back.json") + " --way-back --kit " + kit_in(folder)).code == 0);
    const auto filled = program("fill " + kit + " --into pot");
    CHECK(filled.code == 0);
    CHECK(holds(filled.out, "Rag"));
    CHECK(program("room " + kit).code == 0);
    CHECK(holds(program("size " + kit).out, "on the way back"));
}

TEST_CASE("back names faults of the kit and of options, and writes nothing")
{
    const Folder folder;
    const std::string saved = (folder / "both.json").string(), alone = (folder / "back.json").string();
    const std::string outputs = " --json " + quoted(saved) + " --save-back " + quoted(alone);
    const std::string faulty_text = "kit: Soup\nway-back: {emty: pot, gone: [pan]}\nitems:\n"
                                    "  - {id: pot, weight: 9, cylinder: {diameter: 90, height: 70}}\n";
    const auto faulty = program("back " + kit_in(folder, faulty_text) + outputs);
    CHECK(faulty.code == 2);
    CHECK(faulty.out.empty());
    CHECK(holds(faulty.err, "kit.yaml:2:12: unknown key 'emty' in way-back; did you mean 'empty'?"));
    CHECK(holds(faulty.err, "kit.yaml:2:30: there is no item with the id 'pan'"));
    CHECK(program("pack " + kit_in(folder, faulty_text)).code == 2); // whoever reads the file tells of it
    const auto none = program("back " + kit_in(folder, two_tins) + outputs);
    CHECK(none.code == 2);
    CHECK(holds(none.err, "this kit does not say what is different on the way back"));
    CHECK(program("pack " + kit_in(folder, two_tins) + " --way-back").code == 2);
    CHECK(program("back").code == 2);
    CHECK(program("back " + path(folder, "none.yaml")).code == 2);
    const std::string kit = kit_in(folder);
    CHECK(program("back " + kit + " --effort great" + outputs).code == 2);
    CHECK(holds(program("back " + kit + " --save-bak x.json").err, "--save-back"));
    CHECK(program("back " + kit + " --save-back -").code == 2);
    CHECK(program("back " + kit + " --save-back " + kit).code == 2);
    const auto twice = program("back " + kit + " --json " + quoted(saved) + " --save-out " + quoted(saved));
    CHECK(twice.code == 2);
    CHECK(holds(twice.err, "two answers cannot go to the same file"));
    const auto saved_bundle = program("verify " + path(folder, "kit.yaml") + " --way-back");
    CHECK(saved_bundle.code == 2);
    CHECK(holds(saved_bundle.err, "--way-back is about a kit, but none is given"));
    CHECK_FALSE(std::filesystem::exists(saved));
    CHECK_FALSE(std::filesystem::exists(alone));
    CHECK(text_of(folder / "kit.yaml") == sooty);
}

TEST_CASE("a saved bundle is packed already, for one way or the other")
{
    const Folder folder;
    REQUIRE(program("pack " + kit_in(folder, two_tins) + quick + " --json " + path(folder, "bundle.json")).code == 0);
    for (const char* command : {"room ", "size "}) {
        const auto told = program(command + path(folder, "bundle.json") + " --way-back");
        CHECK(told.code == 2);
        CHECK(holds(told.err, "leave out --way-back, or give the kit"));
        const auto chosen = program(command + path(folder, "bundle.json") + " --choose pot=small");
        CHECK(chosen.code == 2);
        CHECK(holds(chosen.err, "leave out --choose, or give the kit"));
    }
}

TEST_CASE("a way back that does not fit gives exit status 1, and is saved with its reason")
{
    const Folder folder;
    const std::string text = "bundle: {shape: cylinder, diameter: 95, height: 75}\n" + sooty;
    const auto told = program("back " + kit_in(folder, text) + quick + " --save-back " + path(folder, "back.json"));
    INFO(told.out << told.err);
    CHECK(told.code == 1);
    CHECK(holds(told.out, "Back: "));
    CHECK_FALSE(holds(told.out, "What goes elsewhere"));
    CHECK(json::parse(text_of(folder / "back.json"))["bundle"] == nullptr);
}
