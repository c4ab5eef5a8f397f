// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit file made of answers, which come through a pipe here.
#include <catch2/catch.hpp>

#include "cli/asked_kit.hpp"
#include "cli/program.hpp"
#include "tuckwright/kit_reader.hpp"

using namespace tuckwright::cli_test;
namespace fs = std::filesystem;

namespace
{

Outcome asked(const fs::path& file, const std::string& answers, const std::string& options = "")
{
    return shell("printf '%b' " + quoted(answers) + " | \"$TUCKWRIGHT\" new " + quoted(file.string()) + " --ask" + options);
}

/// Of the kit alone: its name, mm and grams, a round bundle, no limits.
const std::string start = "Soup\\n\\n\\n\\n";
const std::string pot = "Small pot\\npot\\nround\\n110\\n90 mm\\n140\\n0.8\\n1\\n\\nsooty\\n";

} // namespace

TEST_CASE("answers make a kit file that is read and packed")
{
    const Folder folder;
    const fs::path file = folder / "soup.yaml";
    const auto made = asked(file, start + pot + "Lid of it\\nlid\\n\\n111\\n8\\n2\\n5\\n38 g\\n\\n"
                                                "Tea tin\\ntin\\nr\\n2 1/4 in\\n34\\n31\\n1\\n1.5\\nblack tea\\n1 oz\\n\\nfood\\n"
                                                "Cup\\npot\\n\\n7.8 cm\\n40\\n62\\n0.6\\n0.6\\n2\\nlips\\n"
                                                "Windscreen\\nsleeve\\n\\n104\\n30\\n15\\n0.4\\n\\n\\n"
                                                "Spoon\\nsolid\\nbox\\n105\\n30\\n12\\n14\\n\\nlips\\n"
                                                "Towel\\nsoft\\n100\\n60\\n50\\n8\\n40\\n\\nsoft, clean\\n\\n");
    INFO(made.err);
    REQUIRE(made.code == 0);
    CHECK(holds(made.out, "is written: Small pot, Lid of it, Tea tin, Cup, Windscreen, Spoon, Towel."));
    CHECK(folder.entries() == 1);
    const auto kit = tuckwright::read_kit_text(text_of(file), "soup.yaml");
    REQUIRE(kit.ok());
    CHECK(kit->name == "Soup");
    REQUIRE(kit->items.size() == 7);
    CHECK(kit->items[0].id == "small-pot");
    CHECK(kit->items[0].name == "Small pot");
    CHECK(kit->items[0].kinds == std::vector<tuckwright::Kind>{tuckwright::Kind::sooty});
    REQUIRE(kit->items[1].closes);
    CHECK(kit->items[1].closes->item == 0);
    CHECK(kit->items[1].closes->adds == 2);
    CHECK(kit->items[1].closes->intrudes == 5);
    CHECK(std::get<tuckwright::Cylinder>(kit->items[2].outside).diameter == 57.15); // 2.25 times 25.4
    REQUIRE(kit->items[2].contents);
    CHECK(kit->items[2].contents->weight_g == Approx(28.349523125)); // the ounce: NIST SP 811 (2008), B.8
    CHECK(kit->items[3].count == 2);
    CHECK(std::get<tuckwright::Cylinder>(kit->items[3].outside).diameter == 78);
    CHECK(kit->items[4].inside->opens == tuckwright::Opening::both);
    CHECK(std::get<tuckwright::Box>(kit->items[5].outside).length == 105);
    REQUIRE(kit->items[6].cloth);
    CHECK(kit->items[6].cloth->volume_ml == 300); // 100 x 60 x 50 mm
    const auto packed = program("pack " + quoted(file.string()) + " --effort quick");
    INFO(packed.err);
    CHECK(packed.code == 0);
}

TEST_CASE("plain numbers may be inches and ounces, and the bundle a box within limits")
{
    const Folder folder;
    const fs::path file = folder / "us.yaml";
    const auto made = asked(file, "\\nin\\nbox\\nyes\\n9 1/2\\n\\n4\\nMug\\npot\\n\\n3 1/8\\n3.25\\n4.5\\n1/32\\n1/16\\n\\n\\n\\n");
    INFO(made.err);
    REQUIRE(made.code == 0);
    const auto kit = tuckwright::read_kit_text(text_of(file), "us.yaml");
    REQUIRE(kit.ok());
    CHECK(kit->name == "Us");
    CHECK(kit->bundle.shape == tuckwright::BundleShape::box);
    CHECK(kit->bundle.length == 241.3); // 9.5 times 25.4
    CHECK_FALSE(kit->bundle.width);
    CHECK(kit->bundle.height == 101.6);
    CHECK(std::get<tuckwright::Cylinder>(kit->items[0].outside).diameter == 79.375);
    CHECK(kit->items[0].weight_g == Approx(4.5 * 28.349523125));
}

TEST_CASE("a wrong answer is told with what to type instead, and asked for again")
{
    const Folder folder;
    const fs::path file = folder / "soup.yaml";
    const auto made = asked(file, start + "\\nPot\\nbucket\\npot\\n\\n80,5\\n\\n-3\\nwide\\n80\\n60 g\\n60\\n140 mm\\n140\\n"
                                          "50\\n1\\n0.8\\n1\\n0\\nmany\\n\\nsotty\\nsooty lips\\n\\n");
    INFO(made.err);
    REQUIRE(made.code == 0);
    for (const char* words : {"A kit holds one thing at least", "'bucket' is none of them; type solid, pot,",
                              "'80,5' has a comma in its number; write a point before the decimals",
                              "this is needed; type a length, such as 80, 80 mm or 3 1/2 in", "it must be more than nought",
                              "'wide' is not a number", "'g' is a unit of weight, but a length is wanted; use mm, cm, m or in",
                              "'mm' is a unit of length, but a weight is wanted", "So once more;",
                              "type a whole number from 1 to 200", "nothing is known as 'sotty'; did you mean 'sooty'?"}) {
        INFO(words);
        CHECK(holds(made.err, words));
    }
    CHECK(holds(text_of(file), "inside: {wall: 0.8 mm, base: 1 mm}"));
    CHECK(holds(text_of(file), "kind: [sooty, lips]"));
}

TEST_CASE("where the answers end too soon, or never make sense, nothing is written")
{
    const Folder folder;
    const fs::path file = folder / "soup.yaml";
    for (const std::string& answers : {std::string(), std::string("Soup\\n"), start + "Pot\\npot\\nround\\n110", start + pot}) {
        const auto ended = asked(file, answers);
        INFO(answers << ": " << ended.err);
        CHECK(ended.code == 2);
        CHECK(holds(ended.err, "the answers ended before everything was told; nothing is written"));
        CHECK(ended.out.empty());
        CHECK(folder.entries() == 0);
    }
    const std::string run = " | \"$TUCKWRIGHT\" new " + quoted(file.string()) + " --ask";
    for (const char* endless : {"yes", "yes ''", "yes 3", "yes pot", "cat /dev/zero"}) {
        const auto stopped = shell(std::string("timeout 60 ") + endless + " 2>/dev/null" + run);
        INFO(endless << ": " << stopped.err.substr(0, 2000));
        CHECK(stopped.code == 2);
        CHECK(folder.entries() == 0);
    }
}

TEST_CASE("what is there is not overwritten, nor asked about; the schema and standard output as without questions")
{
    const Folder folder;
    const fs::path file = folder / "soup.yaml";
    write(file, "mine");
    const auto refused = asked(file, start + pot + "\\n");
    CHECK(refused.code == 2);
    CHECK(holds(refused.err, "is there already, and would be lost"));
    CHECK_FALSE(holds(refused.err, "called?"));
    CHECK(text_of(file) == "mine");
    const auto made = asked(folder / "other.yaml", "\\n\\n\\n\\n" + pot + "\\n", " --schema --name 'Tea: \"hot\" # 2'");
    INFO(made.err);
    CHECK(made.code == 0);
    CHECK(folder.entries() == 3);
    CHECK(text_of(folder / "other.yaml").find("# yaml-language-server: $schema=kit.schema.json\n") == 0);
    CHECK(holds(text_of(folder / "other.yaml"), "\nkit: \"Tea: \\\"hot\\\" # 2\"\n"));
    const auto piped = asked("-", start + pot + "\\n");
    CHECK(piped.code == 0);
    CHECK(holds(piped.out, "kit: \"Soup\""));
    CHECK(tuckwright::read_kit_text(piped.out, "-").ok());
}

TEST_CASE("short names are made of names, and none is there twice")
{
    using tuckwright::cli::new_id;
    std::vector<tuckwright::cli::AskedItem> items(2);
    items[0].id = "pot";
    items[1].id = "pot-2";
    CHECK(new_id("Pot", items) == "pot-3");
    CHECK(new_id("Steel pot, 1.1 l", items) == "steel-pot");
    CHECK(new_id("  Tom's  mug! ", items) == "tom-s-mug");
    CHECK(new_id("\xC3\x84", items) == "thing");
    CHECK(new_id(std::string(200, 'a'), items).size() == 40);
}
