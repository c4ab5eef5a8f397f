// SPDX-License-Identifier: GPL-3.0-or-later
/// Packing for the worst case, as the program is run.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;

namespace {

const char* const cup_and_pot = R"(kit: Cup and pot
items:
  - {id: pot, weight: 90, cylinder: {diameter: 64, height: 60}, inside: {cylinder: {diameter: 62 ±0.5, height: 58}}}
  - {id: cup, weight: 60, cylinder: {diameter: 60 ±1, height: 40}}
)";

Outcome verify(const Folder& folder, const json& object)
{
    write(folder / "spoilt.json", object.dump());
    return program("verify " + quoted((folder / "spoilt.json").string()));
}

} // namespace

TEST_CASE("the worst case is asked for by the option or by the kit, with the same answer")
{
    const Folder folder;
    write(folder / "kit.yaml", cup_and_pot);
    write(folder / "worst.yaml", "worst-case: yes\n" + std::string(cup_and_pot));
    const std::string kit = quoted((folder / "kit.yaml").string()), saved = quoted((folder / "a.json").string());
    const auto plain = program("pack " + kit + " --effort quick");
    CHECK(plain.code == 0);
    CHECK(holds(plain.out, "cup in pot: slides in with 1 mm all round; 0.2 mm at worst"));
    CHECK(!holds(plain.out, "Packed for the worst case"));
    const auto worst = program("pack " + kit + " --effort quick --worst-case --json " + saved);
    INFO(worst.err);
    CHECK(worst.code == 0);
    CHECK(holds(worst.out, "Packed for the worst case: all sizes here"));
    CHECK(worst.out != plain.out);
    CHECK(program("pack " + quoted((folder / "worst.yaml").string()) + " --effort quick").out == worst.out);
    CHECK(program("verify " + saved).code == 0);
    CHECK(program("verify " + saved + " --kit " + kit).code == 0); // against the kit at its worst
    CHECK(program("verify " + saved + " --kit " + quoted((folder / "worst.yaml").string())).code == 0);
    const std::string measured = quoted((folder / "b.json").string());
    REQUIRE(program("pack " + kit + " --effort quick --json " + measured).code == 0);
    CHECK(program("verify " + measured + " --kit " + kit).code == 0);
    CHECK(holds(program("verify " + measured + " --kit " + quoted((folder / "worst.yaml").string())).err,
                "refused (kit): the kit asks for the worst case"));
}

TEST_CASE("a saved fit or tolerance that was changed is refused")
{
    const Folder folder;
    write(folder / "kit.yaml", cup_and_pot);
    const auto packed = program("pack " + quoted((folder / "kit.yaml").string()) + " --effort quick --json -");
    REQUIRE(packed.code == 0);
    const json sound = json::parse(packed.out);
    CHECK(verify(folder, sound).code == 0);
    json spoilt = sound;
    spoilt["fits"][0]["worst_mm"] = 0.75;
    CHECK(holds(verify(folder, spoilt).err, "refused (figure): fits[0].worst_mm: is 0.75, but 0.25 follows"));
    spoilt = sound;
    spoilt["items"][1]["solids"][0]["tolerance"]["diameter"] = 0.5;
    CHECK(holds(verify(folder, spoilt).err, "refused (figure): fits[0].worst_mm: is 0.25, but 0.5 follows"));
    spoilt = sound;
    spoilt["worst_case"] = true;
    CHECK(verify(folder, spoilt).code == 1);
    spoilt = sound;
    spoilt["plays"][1]["z"][1] = 0;
    CHECK(holds(verify(folder, spoilt).err, "refused (figure): plays[1].z[1]: is 0, but"));
}
