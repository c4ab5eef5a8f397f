// SPDX-License-Identifier: GPL-3.0-or-later
/// What goes wrong round the program: signals, full disks, shut pipes, little memory, two runs at once.
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace test = tuckwright::test;
namespace fs = std::filesystem;

namespace
{

/// A search that takes longer than anybody waits here.
std::string long_kit()
{
    std::string text = "kit: A long search\nitems:\n";
    for (int i = 0; i < 30; ++i) {
        text += "  - {id: box-" + std::to_string(i) + ", weight: 10, box: {length: " + std::to_string(20 + 7 * i % 31) +
                ", width: " + std::to_string(25 + 11 * i % 37) + ", height: " + std::to_string(30 + 5 * i % 41) + "}}\n";
    }
    return text;
}

/// The path of a file in the folder, for the shell.
std::string in(const Folder& folder, const std::string& name) { return quoted((folder / name).string()); }

std::string seconds(test::Dice& dice, double most) { return std::to_string(dice.between(0.005, most)); }

/// The program with that signal after so long, unless it has ended before.
Outcome stopped(const std::string& signal, const std::string& after, const std::string& arguments)
{
    return shell("timeout --preserve-status --foreground -s " + signal + " " + after + " \"$TUCKWRIGHT\" " + arguments);
}

bool is_whole(const fs::path& saved) { return json::parse(text_of(saved))["format"] == "tuckwright-bundle"; }

} // namespace

TEST_CASE("stopped at any moment, it exits 130 with the best bundle so far, or has not begun and leaves nothing")
{
    test::Dice dice(701);
    int answered = 0;
    for (int trial = 0; trial < test::count(8, 4); ++trial) {
        const Folder folder;
        write(folder / "kit.yaml", long_kit());
        const std::string signal = trial % 2 == 0 ? "INT" : "TERM";
        const auto outcome = stopped(signal, seconds(dice, test::slow_build ? 6 : 1.5),
                                     "pack " + in(folder, "kit.yaml") + " --effort thorough --json " + in(folder, "b.json"));
        INFO(signal << " in trial " << trial << ": " << outcome.code << " " << outcome.err << outcome.out);
        if (!fs::exists(folder / "b.json")) { // before the kit was read
            CHECK(outcome.code != 0);
            CHECK(outcome.out.empty());
            CHECK(folder.entries() == 1);
            continue;
        }
        ++answered;
        CHECK(outcome.code == 130);
        CHECK(folder.entries() == 2);
        const auto status = json::parse(text_of(folder / "b.json"))["status"].get<std::string>();
        CHECK((status == "stopped" || status == "not-found"));
        CHECK(program("verify " + in(folder, "b.json")).code == (status == "stopped" ? 0 : 1));
    }
    CHECK(answered >= 1);
}

TEST_CASE("killed at any moment, it leaves the old file or the new one, whole, and nothing besides")
{
    test::Dice dice(702);
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    write(folder / "b.json", "old");
    const std::string pack = "pack " + in(folder, "kit.yaml") + " --effort quick --json " + in(folder, "b.json");
    for (int trial = 0; trial < test::count(20, 4); ++trial) {
        (void)stopped("KILL", seconds(dice, test::slow_build ? 3 : 0.4), pack);
        CHECK(folder.entries() == 2);
        CHECK((text_of(folder / "b.json") == "old" || is_whole(folder / "b.json")));
    }
}

TEST_CASE("no room on the disk is exit status 2, and what was there stays")
{
    const Folder folder, pictures;
    write(folder / "kit.yaml", two_tins);
    REQUIRE(program("pack " + in(folder, "kit.yaml") + " --effort quick --json " + in(folder, "saved.json")).code == 0);
    const std::string saved = text_of(folder / "saved.json"), kit = in(folder, "kit.yaml") + " --effort quick ";
    const std::vector<std::string> commands = {"pack " + kit + "--json " + in(folder, "saved.json"),
                                               "size " + kit + "--json " + in(folder, "saved.json"),
                                               "room " + kit + "--json " + in(folder, "saved.json"),
                                               "card " + kit + "--pdf " + in(folder, "card.pdf"),
                                               "draw " + kit + "--out " + quoted(pictures.path().string())};
    for (const auto& command : commands) {
        const auto outcome = shell("ulimit -f 1; \"$TUCKWRIGHT\" " + command + " >/dev/null"); // half a kilobyte
        INFO(command << ": " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, "cannot be written"));
        CHECK(folder.entries() == 2);
        CHECK(pictures.entries() == 0);
        CHECK(text_of(folder / "saved.json") == saved);
    }
}

TEST_CASE("no answer is written over what is read")
{
    const Folder folder;
    const std::string text = two_tins + "  - {id: pot, weight: 90, cylinder: {diameter: 90, height: 70}, "
                                        "inside: {wall: 1, base: 1}}\nway-back: {gone: tin}\n";
    write(folder / "kit.svg", text);
    const std::string kit = in(folder, "kit.svg");
    for (const std::string command :
         {"pack KIT --json KIT", "fill KIT --json KIT", "room KIT --json KIT", "size KIT --json KIT", "back KIT --json KIT",
          "back KIT --save-out KIT", "back KIT --save-back KIT", "card KIT --pdf KIT", "card KIT --html KIT",
          "compare KIT --json KIT", "compare KIT --picture KIT", "look KIT --html KIT", "shelf KIT --yaml KIT"}) {
        std::string whole = command;
        for (std::size_t at = whole.find("KIT"); at != std::string::npos; at = whole.find("KIT")) {
            whole.replace(at, 3, kit);
        }
        const auto outcome = program(whole);
        INFO(command << ": " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(text_of(folder / "kit.svg") == text);
        CHECK(folder.entries() == 1);
    }
}

TEST_CASE("a name that is too long is found out before the search")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto outcome = program("pack " + in(folder, "kit.yaml") + " --json " + in(folder, std::string(300, 'b')));
    CHECK(outcome.code == 2);
    CHECK(holds(outcome.err, "cannot be written: File name too long"));
    CHECK(outcome.out.empty());
}

TEST_CASE("streams that are shut change no file")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string pack = "\"$TUCKWRIGHT\" pack " + in(folder, "kit.yaml") + " --effort quick --json ";
    REQUIRE(shell(pack + in(folder, "sound.json")).code == 0);
    const std::string sound = text_of(folder / "sound.json");
    const auto no_output = shell(pack + in(folder, "b.json") + " >&-");
    CHECK(no_output.code == 2);
    CHECK(holds(no_output.err, "standard output: cannot be written"));
    CHECK(text_of(folder / "b.json") == sound);
    CHECK(shell(pack + in(folder, "c.json") + " 2>&-").code == 0);
    CHECK(text_of(folder / "c.json") == sound);
    CHECK(shell(pack + in(folder, "d.json") + " <&- >&- 2>&-").code == 2);
    CHECK(text_of(folder / "d.json") == sound);
    const auto no_input = shell("\"$TUCKWRIGHT\" pack - <&-");
    CHECK(no_input.code == 2);
    CHECK(holds(no_input.err, "standard input: cannot be read"));
}

TEST_CASE("a pipe that nobody reads ends it, and the file is whole")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string pack = "\"$TUCKWRIGHT\" pack " + in(folder, "kit.yaml") + " --effort quick --json ";
    (void)shell(pack + in(folder, "b.json") + " | true");
    CHECK(is_whole(folder / "b.json"));
    const auto alone = shell("{ " + pack + "- ; echo $? > " + in(folder, "code") + "; } | true");
    CHECK(text_of(folder / "code") != "0\n");
    CHECK(folder.entries() == 3);
}

TEST_CASE("two runs that write one file leave the answer of one of them")
{
    const Folder folder, alone;
    write(folder / "kit.yaml", two_tins);
    const auto pack = [&](int seed, const std::string& file) {
        return "\"$TUCKWRIGHT\" pack " + in(folder, "kit.yaml") + " --effort quick --seed " + std::to_string(seed) +
               " --json " + file;
    };
    REQUIRE(shell(pack(1, in(alone, "1")) + " && " + pack(2, in(alone, "2"))).code == 0);
    for (int trial = 0; trial < test::count(4, 1); ++trial) {
        const auto both = shell(pack(1, in(folder, "b.json")) + " & first=$!; " + pack(2, in(folder, "b.json")) +
                                " && wait $first");
        INFO(both.err);
        CHECK(both.code == 0);
        const std::string left = text_of(folder / "b.json");
        CHECK((left == text_of(alone / "1") || left == text_of(alone / "2")));
        CHECK(folder.entries() == 2);
    }
}

TEST_CASE("too little memory is exit status 2, with a word, and no file")
{
    if (test::slow_build) {
        WARN("not run: sanitizers want more address space than any limit leaves");
        return;
    }
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    std::string many = "{\"format\": \"tuckwright-bundle\", \"items\": [0";
    for (int i = 0; i < 4'000'000; ++i) {
        many += ",0";
    }
    write(folder / "large.json", many + "]}");
    REQUIRE(program("pack " + in(folder, "kit.yaml") + " --effort quick --json " + in(folder, "b.json")).code == 0);
    for (const std::string& command : {"verify " + in(folder, "large.json"), // kilobytes
                                       "card " + in(folder, "b.json") + " --pdf " + in(folder, "card.pdf"),
                                       "draw " + in(folder, "b.json") + " --out " + in(folder, "pictures")}) {
        const auto outcome = shell("ulimit -v 80000; \"$TUCKWRIGHT\" " + command);
        INFO(command << ": " << outcome.code << " " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, "there is not enough memory"));
        CHECK_FALSE(fs::exists(folder / "card.pdf"));
    }
}
