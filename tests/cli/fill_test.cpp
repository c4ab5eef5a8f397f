// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;

namespace
{

const std::string shelf = R"(kit: Shelf
items:
  - {id: pot, weight: 140, cylinder: {diameter: 110, height: 90}, inside: {wall: 1, base: 1}}
  - {id: lid, weight: 38, cylinder: {diameter: 111, height: 8}, closes: {item: pot, adds: 2, intrudes: 5}}
  - {id: can, weight: 50, cylinder: {diameter: 70, height: 60}}
  - {id: pan, weight: 50, cylinder: {diameter: 170, height: 40}, inside: {wall: 1, base: 1}}
  - {id: ring, weight: 50, cylinder: {diameter: 70, height: 60}, inside: {wall: 1, opens: both}}
)";

} // namespace

TEST_CASE("fill says what goes into the vessel and why the rest does not, and saves a bundle that can be verified")
{
    const Folder folder;
    write(folder / "shelf.yaml", shelf);
    const std::string kit = quoted((folder / "shelf.yaml").string()), saved = quoted((folder / "fill.json").string());
    const auto filled = program("fill " + kit + " --into pot --effort quick --json " + saved);
    INFO(filled.err);
    CHECK(filled.code == 0);
    CHECK(filled.err.empty());
    CHECK(holds(filled.out, "Shelf: 1 of 3 things go into pot with lid shut on it"));
    CHECK(holds(filled.out, "- pan: It does not go in, however it is turned"));
    CHECK(holds(filled.out, "Putting it together:"));
    const auto object = json::parse(text_of(folder / "fill.json"));
    CHECK(object["vessel"] == "pot");
    CHECK(object["left"].size() == 2);
    const std::string alone = quoted((folder / "bundle.json").string());
    CHECK(json::parse(program("fill " + kit + " --into pot --effort quick --save " + alone + " --json -").out) == object);
    CHECK(json::parse(text_of(folder / "bundle.json")) == object["bundle"]);
    CHECK(program("verify " + alone).code == 0);
    const auto of_kit = program("verify " + alone + " --kit " + kit);
    CHECK(of_kit.code == 1); // a pan and a ring are missing
    CHECK(program("fill " + kit + " --save -").code == 2);
    CHECK(program("fill " + kit + " --save " + kit).code == 2);
    CHECK(text_of(folder / "shelf.yaml") == shelf);
}

TEST_CASE("without a word, the vessel with the largest inside is filled")
{
    const Folder folder;
    write(folder / "shelf.yaml", shelf);
    const auto filled = program("fill " + quoted((folder / "shelf.yaml").string()) + " --effort quick");
    CHECK(filled.code == 0);
    CHECK(holds(filled.out, "go into pan (it has no lid here"));
}

TEST_CASE("a vessel that is none, and files that are none, are told with exit status 2")
{
    const Folder folder;
    write(folder / "shelf.yaml", shelf);
    write(folder / "tins.yaml", two_tins);
    const std::string kit = quoted((folder / "shelf.yaml").string());
    struct Case {
        std::string arguments, said;
    };
    const std::vector<Case> cases = {
        {kit + " --into pott", "the kit has no item 'pott' to fill"},
        {kit + " --into can", "'can' has no inside to fill; name a vessel"},
        {kit + " --into ring", "'ring' is open at both ends"},
        {quoted((folder / "tins.yaml").string()), "the kit has no vessel to fill"},
        {quoted((folder / "none.yaml").string()), "none.yaml"},
        {kit + " --in pot", "there is no option --in of fill; did you mean --into?"},
        {kit + " --json " + kit, "shelf.yaml"},
    };
    for (const Case& one : cases) {
        const auto outcome = program("fill " + one.arguments);
        INFO(one.arguments << " said " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(holds(outcome.err, one.said));
    }
    CHECK(folder.entries() == 2);
}

TEST_CASE("what must go in and does not is exit status 1")
{
    const Folder folder;
    std::string text = shelf;
    text.insert(text.find("cylinder: {diameter: 170"), "must-have: yes, ");
    write(folder / "shelf.yaml", text);
    const auto filled = program("fill " + quoted((folder / "shelf.yaml").string()) + " --into pot --effort quick");
    CHECK(filled.code == 1);
    CHECK(holds(filled.out, "what must go in was not found to go into pot"));
}
