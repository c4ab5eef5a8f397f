// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string pots = R"(kit: Tea
items:
  - choice: pot
    one-of:
      - {id: small, weight: 120, cylinder: {diameter: 90, height: 80}, inside: {wall: 1, base: 1}}
      - {id: big, weight: 100, cylinder: {diameter: 110, height: 90}, inside: {wall: 1, base: 1}}
  - {id: tin, weight: 20, cylinder: {diameter: 50, height: 40}, goes-in: pot}
)";

/// A block of README.md, behind its mark.
std::string block(const std::string& mark)
{
    const std::string text = text_of(fs::path(TUCKWRIGHT_SOURCE_DIR) / "README.md");
    const auto start = text.find('\n', text.find("```", text.find("<!-- " + mark + " -->"))) + 1;
    return text.substr(start, text.find("```", start) - start);
}

const fs::path samples = fs::path(TUCKWRIGHT_SOURCE_DIR) / "kits/choices";

} // namespace

TEST_CASE("kits of several files, one with choices, are compared, and saved as JSON")
{
    const Folder folder;
    write(folder / "two tins.yaml", two_tins);
    write(folder / "pots.yaml", pots);
    const auto saved = folder / "comparison.json";
    const auto outcome =
        program("compare " + quoted((folder / "two tins.yaml").string()) + " " +
                quoted((folder / "pots.yaml").string()) + " --effort quick --json " + quoted(saved.string()));
    INFO(outcome.err << outcome.out);
    CHECK(outcome.code == 0);
    CHECK(outcome.err.empty());
    CHECK(holds(outcome.out, "3 kits compared: quick effort, seed 1"));
    CHECK(holds(outcome.out, "  1 * "));
    CHECK(holds(outcome.out, "Two tins\n"));
    CHECK(holds(outcome.out, "Tea (pot: small)\n"));
    CHECK(holds(outcome.out, "  tuckwright pack '" + (folder / "two tins.yaml").string() + "' --effort quick\n"));
    const auto object = json::parse(text_of(saved));
    REQUIRE(object["kits"].size() == 3);
    CHECK(object["kits"][0]["kit"] == "Two tins");
    CHECK(object["kits"][2]["file"] == (folder / "pots.yaml").string());

    // The command that it names packs the same.
    const auto packed =
        program("pack " + quoted((folder / "pots.yaml").string()) + " --effort quick --json - --choose pot=small");
    REQUIRE(packed.code == 0);
    CHECK(json::parse(packed.out)["bundle"]["volume_ml"] == object["kits"][1]["bundle"]["volume_ml"]);
}

TEST_CASE("a kit with choices is packed and verified only with what is chosen")
{
    const Folder folder;
    write(folder / "pots.yaml", pots);
    const std::string kit = quoted((folder / "pots.yaml").string()), saved = quoted((folder / "bundle.json").string());
    const auto open = program("pack " + kit + " --json " + saved);
    CHECK(open.code == 2);
    CHECK(holds(open.err, "pots.yaml:3:5: the choice 'pot' is open: small or big; compare them all with 'tuckwright "
                          "compare', or say which, such as '--choose pot=small'"));
    CHECK(folder.entries() == 1);
    const auto packed = program("pack " + kit + " --effort quick --choose pot=big --json " + saved);
    CHECK(packed.code == 0);
    CHECK(holds(packed.out, "Tea (pot: big): packs into a "));
    CHECK(program("verify " + saved + " --kit " + kit + " --choose pot=big").code == 0);
    CHECK(program("verify " + saved + " --kit " + kit + " --choose pot=small").code == 1);
    CHECK(program("verify " + saved + " --kit " + kit).code == 2);
    const auto no_kit = program("verify " + saved + " --choose pot=big");
    CHECK(no_kit.code == 2);
    CHECK(holds(no_kit.err, "no kit is given"));
    for (const char* wrong : {"pot", "=big", "pot=", "pot=big,", "pot=huge", "stove=gas"}) {
        CAPTURE(wrong);
        const auto outcome = program("pack " + kit + " --choose " + quoted(wrong));
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK_FALSE(outcome.err.empty());
    }
}

TEST_CASE("faulty use of compare exits 2 and writes nothing")
{
    const Folder folder;
    write(folder / "pots.yaml", pots);
    write(folder / "faulty.yaml", "kit: Soup\nitems:\n  - {id: pot, wieght: 3}\n");
    const std::string kit = quoted((folder / "pots.yaml").string()), faulty = quoted((folder / "faulty.yaml").string());
    const std::string saved = " --json " + quoted((folder / "out.json").string());
    const auto two_faults =
        program("compare " + kit + " " + faulty + " " + quoted((folder / "none.yaml").string()) + saved);
    CHECK(two_faults.code == 2);
    CHECK(holds(two_faults.err, "faulty.yaml:3:"));
    CHECK(holds(two_faults.err, "none.yaml: cannot be read"));
    CHECK(holds(program("compare " + kit + " " + kit + saved).err, "pots.yaml: is given twice"));
    CHECK(holds(program("compare" + saved).err, "compare needs KIT.yaml: "));
    CHECK(holds(program("compare " + kit + " --most 0" + saved).err, "\"0\" is not a whole number from 1"));
    CHECK(holds(program("compare " + kit + " --moist 3" + saved).err, "did you mean --most?"));
    CHECK(program("compare " + kit + " --json " + kit).code == 2); // the file that is read
    CHECK(text_of(folder / "pots.yaml") == pots);
    CHECK(folder.entries() == 2);
}

TEST_CASE("kits of which none fits exit 1, with the reasons")
{
    const Folder folder;
    write(folder / "kit.yaml",
          "kit: Too long\nbundle: {shape: box, limits: {length: 100, width: 80, height: 60}}\nitems:\n"
          "  - {id: pole, weight: 90, cylinder: {diameter: 10, height: 500}}\n");
    const auto outcome = program("compare " + quoted((folder / "kit.yaml").string()) + " --effort quick");
    CHECK(outcome.code == 1);
    CHECK(holds(outcome.out, "does not fit"));
    CHECK(holds(outcome.out, "None of them was packed"));
}

TEST_CASE("interrupted, compare tells what there is and exits 130")
{
    const Folder folder;
    std::string text = "kit: A long search\nitems:\n";
    for (int i = 0; i < 30; ++i) {
        text += "  - {id: box-" + std::to_string(i) + ", weight: 10, box: {length: " + std::to_string(20 + 7 * i % 31) +
                ", width: " + std::to_string(25 + 11 * i % 37) + ", height: " + std::to_string(30 + 5 * i % 41) +
                "}}\n";
    }
    write(folder / "long.yaml", text);
    write(folder / "tins.yaml", two_tins);
    const auto saved = folder / "out.json";
    const auto outcome =
        shell("\"$TUCKWRIGHT\" compare " + quoted((folder / "tins.yaml").string()) + " " +
              quoted((folder / "long.yaml").string()) + " --effort thorough --json " + quoted(saved.string()) +
              " & program=$!; sleep 4; kill -INT $program; wait $program; exit $?");
    INFO(outcome.err << outcome.out);
    CHECK(outcome.code == 130);
    CHECK(holds(outcome.out, "stopped before the end"));
    const auto object = json::parse(text_of(saved));
    CHECK(object["stopped"] == true);
    CHECK(object["kits"][0]["kit"] == "Two tins");
    CHECK(object["kits"][1]["status"] == "stopped");
}

TEST_CASE("every sample kit with choices is compared")
{
    std::size_t tried = 0;
    for (const auto& entry : fs::directory_iterator(samples)) {
        if (entry.path().extension() != ".yaml") {
            continue;
        }
        ++tried;
        const auto outcome = program("compare " + quoted(entry.path().string()) + " --effort quick");
        INFO(entry.path() << " said: " << outcome.err << outcome.out);
        CHECK(outcome.code == 0);
        CHECK(outcome.err.empty());
        CHECK(holds(outcome.out, "Smallest"));
        CHECK_FALSE(holds(outcome.out, "not found"));
    }
    CHECK(tried >= 1);
}

TEST_CASE("the example in README.md gives the table that stands there")
{
    const Folder folder;
    write(folder / "barley.yaml", block("choices"));
    const auto outcome = shell("cd " + quoted(folder.path().string()) + " && \"$TUCKWRIGHT\" compare barley.yaml");
    CHECK(outcome.code == 0);
    CHECK(outcome.out == block("compared"));
}

TEST_CASE("compare draws volume against weight, by the ending of the file's name")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: One tin\nitems:\n  - {id: tin, weight: 10, cylinder: {diameter: 40, height: 60}}\n");
    const std::string kit = quoted((folder / "kit.yaml").string());
    for (const auto& [name, start] : {std::pair("a.svg", "<?xml"), std::pair("a.pdf", "%PDF-"), std::pair("a.png", "\x89PNG")}) {
        REQUIRE(program("compare " + kit + " --effort quick --picture " + quoted((folder / name).string())).code == 0);
        CHECK(text_of(folder / name).rfind(start, 0) == 0);
    }
    const auto wrong = program("compare " + kit + " --picture " + quoted((folder / "a.txt").string()));
    CHECK(wrong.code == 2);
    CHECK(holds(wrong.err, "let it end in .svg, .pdf or .png"));
    CHECK_FALSE(fs::exists(folder / "a.txt"));
}
