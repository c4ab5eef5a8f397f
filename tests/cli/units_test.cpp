// SPDX-License-Identifier: GPL-3.0-or-later
/// Answers in inches and ounces: every command, and rounding by which nothing that fits seems not to, or the other way round.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;

namespace
{

// Source: NIST Special Publication 811 (2008), appendix B.8: 1 in = 25.4 mm, 1 fl oz (US) = 29.57353 ml.
constexpr double inch = 25.4, fluid_ounce = 29.57353;

constexpr const char* cup_and_stick = R"(kit: Tea by the sluice
bundle: {shape: cylinder}
items:
  - {id: pot, name: Pot, weight: 140, cylinder: {diameter: 111.3, height: 90.7}, inside: {wall: 0.8, base: 1.1}}
  - {id: cup, name: Cup, weight: 62, cylinder: {diameter: 78.1, height: 40.3}, inside: {wall: 0.6, base: 0.7}}
  - {id: towel, name: Towel, weight: 40, cloth: {volume: 90 ml, thickness: 9}}
way-back: {gone: cup}
)";

/// All numbers that the pattern finds in its first group.
std::vector<double> numbers(const std::string& text, const std::string& pattern)
{
    const std::regex wanted(pattern);
    std::vector<double> found;
    for (auto at = std::sregex_iterator(text.begin(), text.end(), wanted); at != std::sregex_iterator(); ++at) {
        found.push_back(std::stod((*at)[1]));
    }
    return found;
}

bool is_metric_free(const std::string& text) { return !std::regex_search(text, std::regex("[0-9] (mm|ml|l|g|kg)\\b")); }

struct Files {
    Folder folder;
    std::string kit = quoted((folder / "kit.yaml").string()), bundle = quoted((folder / "b.json").string());
    json saved;

    Files()
    {
        write(folder / "kit.yaml", cup_and_stick);
        REQUIRE(program("pack " + kit + " --effort quick --json " + bundle).code == 0);
        saved = json::parse(text_of(folder / "b.json"));
    }
    double mm(const char* key) const { return saved["bundle"][key]; }
};

} // namespace

TEST_CASE("what sets the size adds up in hundredths of an inch to no less than it is")
{
    const Files files;
    const auto size = program("size " + files.bundle + " --units us");
    INFO(size.out << size.err);
    REQUIRE(size.code == 0);
    CHECK(is_metric_free(size.out));
    for (const auto& [word, key] : {std::pair{"Diameter", "diameter_mm"}, {"Height", "height_mm"}}) {
        const auto at = size.out.find("  " + std::string(word));
        REQUIRE(at != std::string::npos);
        const std::string line = size.out.substr(at, size.out.find(".\n", at) - at);
        const auto figures = numbers(line, "([0-9.]+) in\\b");
        REQUIRE(figures.size() >= 2);
        double sum = 0;
        for (std::size_t k = 1; k < figures.size(); ++k) {
            sum += figures[k];
        }
        INFO(line);
        CHECK(sum == Approx(figures.front()).margin(1e-9));
        CHECK(figures.front() * inch >= files.mm(key) - 1e-4);
        CHECK(figures.front() * inch < files.mm(key) + 0.01 * inch);
    }
    const auto asked = program("size " + files.kit + " --units us --effort quick");
    INFO(asked.out);
    CHECK(asked.code == 0);
    CHECK(is_metric_free(asked.out));
    CHECK(std::regex_search(asked.out, std::regex("left at home +[0-9.]+ fl oz +[0-9.]+ fl oz \\(")));
}

TEST_CASE("kits are compared in fluid ounces, ounces and inches, volumes rounded up and bounds down")
{
    const Files files;
    const auto us = program("compare " + files.kit + " --effort quick --units us --picture " +
                            quoted((files.folder / "p.svg").string()));
    INFO(us.out << us.err);
    REQUIRE(us.code == 0);
    CHECK(is_metric_free(us.out));
    CHECK(holds(us.out, "    fl oz     fl oz      %       oz       oz         in\n"));
    std::smatch row;
    REQUIRE(std::regex_search(us.out, row, std::regex("\n  1 \\* +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+) ")));
    const double volume = files.saved["bundle"]["volume_ml"], bound = files.saved["lower_bound_ml"];
    CHECK(std::stod(row[1]) * fluid_ounce >= volume * (1 - 1e-6));
    CHECK(std::stod(row[1]) * fluid_ounce < volume + 0.11 * fluid_ounce);
    CHECK(std::stod(row[2]) * fluid_ounce <= bound * (1 + 1e-6));
    CHECK(std::stod(row[4]) == Approx(242 / 28.349523).margin(0.051));
    const auto across = numbers(us.out, "([0-9.]+) across");
    REQUIRE(!across.empty());
    CHECK(across.front() * inch >= files.mm("diameter_mm") - 1e-4);
    CHECK(holds(text_of(files.folder / "p.svg"), "<svg"));
}

TEST_CASE("the way back, and pictures, in inches")
{
    const Files files;
    const auto back = program("back " + files.kit + " --effort quick --units us --save-back " +
                              quoted((files.folder / "back.json").string()));
    INFO(back.out << back.err);
    REQUIRE(back.code == 0);
    CHECK(is_metric_free(back.out));
    CHECK(holds(back.out, " in across and "));
    CHECK(program("verify " + quoted((files.folder / "back.json").string()) + " --way-back --kit " + files.kit).code == 0);
    const auto drawn = program("draw " + files.bundle + " --units us --out " + quoted((files.folder / "p").string()));
    CHECK(drawn.code == 0);
    CHECK(is_metric_free(drawn.out));
    for (const char* wrong : {"size ", "compare ", "back ", "draw --out p ", "look --html p.html "}) {
        const auto refused = program(std::string(wrong) + files.kit + " --units feet");
        CHECK(refused.code == 2);
        CHECK(holds(refused.err, "choose metric or us"));
    }
}
