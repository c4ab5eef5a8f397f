// SPDX-License-Identifier: GPL-3.0-or-later
/// What helps people to start: help with examples, the manual page, completion, a new kit file, and how much is said.
#include <catch2/catch.hpp>

#include <sstream>

#include "cli/command_line.hpp"
#include "cli/program.hpp"

using namespace tuckwright::cli_test;
namespace fs = std::filesystem;

namespace
{

/// The commands, as bash would complete them.
std::vector<std::string> commands()
{
    const Folder folder;
    write(folder / "try.sh", "source \"$1\"\nCOMP_WORDS=(tuckwright ''); COMP_CWORD=1; _tuckwright; echo \"${COMPREPLY[*]}\"\n");
    const std::string path = quoted((folder / "c.bash").string());
    const auto said = shell("\"$TUCKWRIGHT\" completion bash > " + path + " && bash " +
                            quoted((folder / "try.sh").string()) + " " + path);
    std::istringstream words(said.out);
    std::vector<std::string> all;
    for (std::string word; words >> word;) {
        if (word.front() != '-') {
            all.push_back(word);
        }
    }
    return all;
}

bool is_there(const std::string& tool) { return shell("command -v " + tool + " >/dev/null").code == 0; }

} // namespace

TEST_CASE("each command's help has examples that call it, and is part of the manual page")
{
    const auto all = commands();
    REQUIRE(all.size() >= 14);
    const auto manual = program("manual");
    for (const auto& command : all) {
        const auto help = program(command + " --help");
        INFO(help.out);
        CHECK(help.code == 0);
        CHECK(holds(help.out, "Examples:\n  tuckwright " + command));
        CHECK(holds(help.out, "--quiet"));
        CHECK(holds(manual.out, "\n.SS " + command + "\n"));
    }
    CHECK(holds(manual.out, "\\fB\\-\\-effort\\fR \\fIWORD\\fR\n"));
}

TEST_CASE("the manual page is sound")
{
    const auto manual = program("manual");
    std::istringstream lines(manual.out);
    for (std::string line; std::getline(lines, line);) {
        CHECK(!line.empty());
    }
    if (!is_there("groff")) {
        WARN("groff is not there: the manual page is NOT set");
        return;
    }
    const auto set = shell("\"$TUCKWRIGHT\" manual | groff -ww -man -Tutf8");
    CHECK(set.code == 0);
    CHECK(set.err.empty());
    CHECK(holds(set.out, "TUCKWRIGHT"));
}

TEST_CASE("bash completes commands, options, words and files")
{
    const Folder folder;
    write(folder / "my kit.yaml", two_tins);
    write(folder / "try.sh", R"(source ./c.bash
try() { COMP_WORDS=("$@"); COMP_CWORD=$(($#-1)); _tuckwright; printf '%s|' "${COMPREPLY[@]}"; echo; }
try tuckwright pa
try tuckwright pack --eff
try tuckwright pack kit.yaml --effort ''
try tuckwright card kit.yaml --paper l
try tuckwright pack my
try tuckwright pack kit.yaml --json m
try tuckwright pack kit.yaml --seed ''
try tuckwright completion f
try tuckwright draw --out ''
)");
    const auto tried = shell("cd " + quoted(folder.path().string()) +
                             " && mkdir pictures && \"$TUCKWRIGHT\" completion bash > c.bash && bash try.sh");
    INFO(tried.err);
    CHECK(tried.out == "pack|\n--effort|\nquick|normal|thorough|\nletter|\nmy kit.yaml|\nmy kit.yaml|\n|\nfish|\npictures|\n");
}

TEST_CASE("other shells take their completion, where they are there")
{
    const Folder folder;
    const std::string start = "cd " + quoted(folder.path().string()) + " && \"$TUCKWRIGHT\" completion ";
    CHECK(holds(program("completion zsh").out, "#compdef tuckwright"));
    CHECK(holds(program("completion fish").out, "-l effort -x -a 'quick normal thorough'"));
    if (is_there("zsh")) {
        const auto read = shell(start + "zsh > _tuckwright && zsh -n _tuckwright");
        INFO(read.err);
        CHECK(read.code == 0);
    }
    if (is_there("fish")) {
        const auto tried = shell(start + "fish > t.fish && HOME=$PWD fish -c 'source t.fish; complete -C \"tuckwright pack --eff\"'");
        INFO(tried.err);
        CHECK(tried.out.find("--effort") == 0);
    }
    const auto refused = program("completion tcsh");
    CHECK(refused.code == 2);
    CHECK(holds(refused.err, "choose bash, zsh or fish"));
}

TEST_CASE("words that a value may be are taken from its help, and are those that the program takes")
{
    using tuckwright::cli::words_in;
    CHECK(words_in("quick, normal (the default) or thorough") == std::vector<std::string>{"quick", "normal", "thorough"});
    CHECK(words_in("svg (the default), png, or pdf, with all steps in one file") == std::vector<std::string>{"svg", "png", "pdf"});
    CHECK(words_in("the kit file, or - for standard input").empty());
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    for (const char* effort : {"quick", "normal", "thorough"}) {
        CHECK(program("pack " + quoted((folder / "kit.yaml").string()) + " -q --effort " + effort).code == 0);
    }
    CHECK(tuckwright::cli::examples_of("pack", "Examples:\n  tuckwright pack a\n  tuckwright packs b\n") ==
          "Examples:\n  tuckwright pack a");
    CHECK(tuckwright::cli::examples_of("room", "Examples:\n  tuckwright pack a\n").empty());
}

TEST_CASE("a new kit file can be packed as it is, and none is overwritten")
{
    const Folder folder;
    const fs::path file = folder / "soup-for-two.yaml";
    const auto made = program("new " + quoted(file.string()) + " --schema");
    INFO(made.err);
    REQUIRE(made.code == 0);
    CHECK(holds(made.out, "then: tuckwright pack "));
    CHECK(folder.entries() == 2);
    const std::string text = text_of(file);
    CHECK(text.find("# yaml-language-server: $schema=kit.schema.json\n") == 0);
    CHECK(holds(text, "\nkit: \"Soup for two\"\n"));
    CHECK(text_of(folder / "kit.schema.json") == text_of(fs::path(TUCKWRIGHT_SOURCE_DIR) / "kits/kit.schema.json"));
    const auto packed = program("pack " + quoted(file.string()) + " --effort quick");
    CHECK(packed.code == 0);
    CHECK(holds(packed.out, "Soup for two: packs into a round bundle"));

    const auto again = program("new " + quoted(file.string()));
    CHECK(again.code == 2);
    CHECK(holds(again.err, "is there already, and would be lost"));
    CHECK(text_of(file) == text);
    CHECK(program("new " + quoted((folder / "no/kit.yaml").string())).code == 2);
    CHECK(program("new - --schema").code == 2);
    CHECK(folder.entries() == 2);

    const auto piped = shell("\"$TUCKWRIGHT\" new - --name 'Tea: \"hot\" # \\ 2' | \"$TUCKWRIGHT\" pack - --effort quick");
    INFO(piped.err);
    CHECK(piped.code == 0);
    CHECK(holds(piped.out, "Tea: \"hot\" # \\ 2: packs into"));
}

TEST_CASE("quiet says nothing but what was asked for, verbose tells how the work goes")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string kit = quoted((folder / "kit.yaml").string()), json = quoted((folder / "b.json").string());
    const auto usual = program("pack " + kit + " --effort quick");
    const auto quiet = program("pack " + kit + " --effort quick --quiet --json " + json);
    CHECK(quiet.code == 0);
    CHECK(quiet.out.empty());
    CHECK(quiet.err.empty());
    CHECK(holds(text_of(folder / "b.json"), "tuckwright-bundle"));
    CHECK(program("pack " + kit + " --effort quick -q --json -").out == text_of(folder / "b.json"));
    CHECK(program("verify -q " + json).out.empty());
    CHECK(program("verify -q " + json).code == 0);
    const auto verbose = program("pack " + kit + " --effort quick -v");
    CHECK(verbose.out == usual.out);
    CHECK(holds(verbose.err, "2 things, quick effort, seed 1\n"));
    CHECK(holds(verbose.err, "exit status 0\n"));
    CHECK(usual.err.empty());
    write(folder / "bad.yaml", "kit: A\n");
    const auto wrong = program("pack -q " + quoted((folder / "bad.yaml").string()));
    CHECK(wrong.code == 2);
    CHECK(holds(wrong.err, "has no 'items'"));
}

TEST_CASE("nothing is coloured, on a terminal neither")
{
    if (!is_there("script")) {
        WARN("script is not there: NOT tried on a terminal");
        return;
    }
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto tried = shell("cd " + quoted(folder.path().string()) + " && script -qec \"'$TUCKWRIGHT' pack kit.yaml --effort quick\" out.txt");
    CHECK(tried.code == 0);
    CHECK(holds(tried.out, "Two tins: packs into"));
    CHECK(!holds(tried.out, "\033"));
}
