// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "cli/program.hpp"
#include "support/svg.hpp"
#include "support/tools.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> names_in(const fs::path& folder)
{
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder)) {
        names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

const std::string too_long = R"(kit: Too long
bundle: {shape: box, limits: {length: 100, width: 80, height: 60}}
items:
  - {id: pole, weight: 90, cylinder: {diameter: 10, height: 500}}
)";

} // namespace

TEST_CASE("draw writes a picture for each step of a kit, and the same of its saved bundle")
{
    const Folder folder;
    write(folder / "tins.yaml", two_tins);
    const std::string kit = quoted((folder / "tins.yaml").string()), saved = quoted((folder / "tins.json").string());
    const auto outcome = program("draw " + kit + " --effort quick --out " + quoted((folder / "a").string()));
    INFO(outcome.err << outcome.out);
    CHECK(outcome.code == 0);
    CHECK(outcome.err.empty());
    CHECK(holds(outcome.out, "Two tins: a round bundle 60.1 mm across and 70 mm high; 3 pictures,"));
    CHECK(names_in(folder / "a") ==
          std::vector<std::string>{"tins-packed.svg", "tins-step-01.svg", "tins-step-02.svg"});
    const auto picture = tuckwright::svg::read(text_of(folder / "a" / "tins-step-02.svg"));
    CHECK(picture.title == "Two tins: step 2 of 2");
    CHECK(picture.paths.size() > 20);
    REQUIRE(program("pack " + kit + " --effort quick --json " + saved).code == 0);
    REQUIRE(program("draw " + saved + " --threads 1 --out " + quoted((folder / "b").string())).code == 0);
    for (const auto& name : names_in(folder / "a")) {
        CHECK((text_of(folder / "a" / name) == text_of(folder / "b" / name)));
    }
}

TEST_CASE("draw takes several kits at once, and writes PDF and PNG too")
{
    const Folder folder;
    write(folder / "tins.yaml", two_tins);
    fs::create_directory(folder / "more");
    write(folder / "more/tins.yaml", two_tins);
    const std::string files =
        quoted((folder / "tins.yaml").string()) + " " + quoted((folder / "more/tins.yaml").string());
    const std::string out = " --effort quick --out " + quoted((folder / "out/").string());
    CHECK(program("draw " + files + out + " --format pdf").code == 0);
    CHECK(names_in(folder / "out") == std::vector<std::string>{"tins-2.pdf", "tins.pdf"});
    CHECK(text_of(folder / "out/tins.pdf").rfind("%PDF-", 0) == 0);
    CHECK((text_of(folder / "out/tins.pdf") == text_of(folder / "out/tins-2.pdf")));
    const auto piped =
        shell("\"$TUCKWRIGHT\" draw -" + out + " --format png <" + quoted((folder / "tins.yaml").string()));
    CHECK(piped.code == 0);
    CHECK(text_of(folder / "out/kit-packed.png").rfind("\x89PNG", 0) == 0);
    CHECK(names_in(folder / "out").size() == 5);
}

TEST_CASE("draw: what does not fit has no picture, the others do, and the exit status tells")
{
    const Folder folder;
    write(folder / "long.yaml", too_long);
    write(folder / "tins.yaml", two_tins);
    const std::string out = " --effort quick --format pdf --out " + quoted((folder / "out").string());
    const auto alone = program("draw " + quoted((folder / "long.yaml").string()) + out);
    CHECK(alone.code == 1);
    CHECK(holds(alone.out, "does not fit"));
    CHECK_FALSE(fs::exists(folder / "out"));
    const auto both = program("draw " + quoted((folder / "long.yaml").string()) + " " +
                              quoted((folder / "tins.yaml").string()) + out);
    CHECK(both.code == 1);
    CHECK(names_in(folder / "out") == std::vector<std::string>{"tins.pdf"});
}

TEST_CASE("draw refuses what is wrong, all of it at once, and writes nothing")
{
    const Folder folder;
    write(folder / "tins.yaml", two_tins);
    write(folder / "bad.yaml", "kit: Bad\nitems:\n  - {id: tin, weight: 5, cylinder: {diametre: 60, height: 40}}\n");
    const std::string good = quoted((folder / "tins.yaml").string()), bad = quoted((folder / "bad.yaml").string());
    const std::string out = quoted((folder / "out").string());
    const auto outcome =
        program("draw " + good + " " + bad + " nowhere.yaml --out " + quoted((folder / "no/where").string()));
    CHECK(outcome.code == 2);
    CHECK(holds(outcome.err, "bad.yaml:3:"));
    CHECK(holds(outcome.err, "diametre"));
    CHECK(holds(outcome.err, "nowhere.yaml: cannot be read"));
    CHECK(holds(outcome.err, "make the folder first"));
    CHECK(outcome.out.empty());
    CHECK_FALSE(fs::exists(folder / "no"));
    CHECK(holds(program("draw " + good).err, "draw needs --out FOLDER: "));
    CHECK(holds(program("draw " + good + " --format gif --out " + out).err, "choose svg, pdf or png"));
    CHECK(holds(program("draw " + good + " --out " + good).err, "is a file, not a folder"));
    CHECK(holds(program("draw - - --out " + out).err, "is named twice"));
    CHECK(program("draw " + good + " --out ''").code == 2);
    CHECK(program("draw --out " + out).code == 2);
    CHECK_FALSE(fs::exists(folder / "out"));
    CHECK(folder.entries() == 2);
}

TEST_CASE("draw refuses a saved bundle that does not hold")
{
    const Folder folder;
    write(folder / "tins.yaml", two_tins);
    const auto bundle = folder / "tins.json";
    REQUIRE(
        program("pack " + quoted((folder / "tins.yaml").string()) + " --effort quick --json " + quoted(bundle.string()))
            .code == 0);
    auto spoilt = json::parse(text_of(bundle));
    spoilt["items"][0]["solids"][0]["center"][2] = 500;
    write(bundle, spoilt.dump());
    const auto refused = program("draw " + quoted(bundle.string()) + " --out " + quoted((folder / "out").string()));
    CHECK(refused.code == 1);
    CHECK(holds(refused.err, "refused ("));
    CHECK(refused.out.empty());
    CHECK_FALSE(fs::exists(folder / "out"));
    const auto worst =
        program("draw " + quoted(bundle.string()) + " --worst-case --out " + quoted((folder / "out").string()));
    CHECK(worst.code == 2);
    CHECK(holds(worst.err, "leave out --worst-case"));
}
