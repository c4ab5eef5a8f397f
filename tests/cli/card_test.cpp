// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>
#include <regex>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string soup_for_one = R"(kit: Soup for one
bundle: {shape: cylinder}
items:
  - {id: cup, name: Cup, weight: 62 g, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1}}
  - {id: tin, name: Tin, weight: 50 g, cylinder: {diameter: 40, height: 60}, contents: {what: salt, amount: 10 g}}
)";

std::string path_in(const Folder& folder, const char* name) { return quoted((folder / name).string()); }

std::string code_in(const std::string& text)
{
    std::smatch found;
    return std::regex_search(text, found, std::regex("code is ([0-9A-Z]{4}-[0-9A-Z]{3})")) ? found[1].str() : "";
}

} // namespace

TEST_CASE("card writes a PDF and a page, and verify confirms its code")
{
    const Folder folder;
    write(folder / "kit.yaml", soup_for_one);
    const std::string files = " --pdf " + path_in(folder, "card.pdf") + " --html " + path_in(folder, "card.html") + " --date 1.1.2030";
    const auto made = program("card " + path_in(folder, "kit.yaml") + " --effort quick" + files + " --json " +
                              path_in(folder, "bundle.json"));
    INFO(made.err << made.out);
    REQUIRE(made.code == 0);
    const std::string code = code_in(made.out);
    REQUIRE(code.size() == 8);
    const std::string pdf = text_of(folder / "card.pdf"), page = text_of(folder / "card.html");
    CHECK(pdf.rfind("%PDF-", 0) == 0);
    CHECK(holds(page, code));
    CHECK(holds(page, "1.1.2030"));
    CHECK(holds(page, "Put Tin standing into Cup"));

    const auto verified = program("verify " + path_in(folder, "bundle.json") + " --code " + code);
    CHECK(verified.code == 0);
    CHECK(holds(verified.out, "card with code"));
    std::string typed = code.substr(0, 4) + code.substr(5);
    for (char& c : typed) {
        c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    CHECK(program("verify " + path_in(folder, "bundle.json") + " --code " + typed).code == 0);

    const auto again = program("card " + path_in(folder, "bundle.json") + files); // from what was saved: the same card
    REQUIRE(again.code == 0);
    CHECK(code_in(again.out) == code);
    CHECK(text_of(folder / "card.pdf") == pdf);
    CHECK(text_of(folder / "card.html") == page);
}

TEST_CASE("another bundle's code is refused, and what is no code is a mistake")
{
    const Folder folder;
    write(folder / "kit.yaml", soup_for_one);
    REQUIRE(program("pack " + path_in(folder, "kit.yaml") + " --effort quick --json " + path_in(folder, "bundle.json")).code == 0);
    const auto other = program("verify " + path_in(folder, "bundle.json") + " --code 0000-000");
    CHECK(other.code == 1);
    CHECK(holds(other.err, "refused (code)"));
    CHECK(program("verify " + path_in(folder, "bundle.json") + " --code ''").code == 2); // an empty variable is no code
    const auto none = program("verify " + path_in(folder, "bundle.json") + " --code tea");
    CHECK(none.code == 2);
    CHECK(holds(none.err, "is no code of a card"));
}

TEST_CASE("the day of a card is today, or that of SOURCE_DATE_EPOCH, and paper comes in two sizes")
{
    const Folder folder;
    write(folder / "kit.yaml", soup_for_one);
    REQUIRE(program("pack " + path_in(folder, "kit.yaml") + " --effort quick --json " + path_in(folder, "bundle.json")).code == 0);
    const std::string make = "\"$TUCKWRIGHT\" card " + path_in(folder, "bundle.json") + " --without-picture --html - --paper letter";
    const auto then = shell("SOURCE_DATE_EPOCH=1893456000 " + make); // 2030-01-01
    CHECK(then.code == 0);
    CHECK(holds(then.out, "2030-01-01"));
    CHECK(holds(then.out, "size: letter"));
    CHECK_FALSE(holds(then.out, "tuckwright-picture"));
    CHECK(then.out.rfind("<!DOCTYPE html>", 0) == 0);
    CHECK_FALSE(holds(shell(make).out, "2030-01-01"));
    const auto paper = program("card " + path_in(folder, "bundle.json") + " --html - --paper a5");
    CHECK(paper.code == 2);
    CHECK(holds(paper.err, "choose a4 or letter"));
}

TEST_CASE("card: all that is wrong is told at once, and nothing is written")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: Nothing\nitems: []\n");
    const auto nowhere = program("card " + path_in(folder, "kit.yaml"));
    CHECK(nowhere.code == 2);
    CHECK(holds(nowhere.err, "kit.yaml:2:"));
    CHECK(holds(nowhere.err, "nowhere to write the card"));
    const auto both = program("card " + path_in(folder, "kit.yaml") + " --pdf - --html -");
    CHECK(both.code == 2);
    CHECK(holds(both.err, "two answers cannot go to the same file"));
    write(folder / "sound.yaml", soup_for_one);
    const auto over = program("card " + path_in(folder, "sound.yaml") + " --pdf " + path_in(folder, "sound.yaml"));
    CHECK(over.code == 2);
    CHECK(text_of(folder / "sound.yaml") == soup_for_one);
    CHECK(std::distance(fs::directory_iterator(folder / ""), fs::directory_iterator()) == 2);
}

TEST_CASE("card: a kit that does not fit exits 1 and writes nothing")
{
    const Folder folder;
    std::string tight = soup_for_one;
    tight.replace(tight.find("{shape: cylinder}"), 17, "{shape: cylinder, diameter: 70}");
    write(folder / "kit.yaml", tight);
    const auto made = program("card " + path_in(folder, "kit.yaml") + " --effort quick --pdf " + path_in(folder, "card.pdf"));
    CHECK(made.code == 1);
    CHECK(holds(made.err, "does-not-fit"));
    CHECK_FALSE(fs::exists(folder / "card.pdf"));
}
