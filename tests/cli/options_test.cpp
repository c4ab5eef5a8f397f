// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;

TEST_CASE("help and version go to standard output")
{
    const auto help = program("--help");
    CHECK(help.code == 0);
    CHECK(holds(help.out, "Examples:"));
    CHECK(holds(help.out, "pack"));
    CHECK(holds(help.out, "verify"));
    CHECK(help.err.empty());
    const auto pack = program("pack --help");
    CHECK(pack.code == 0);
    CHECK(holds(pack.out, "--effort"));
    CHECK(holds(pack.out, "gives up repeatability"));
    CHECK(program("help").out == help.out);
    CHECK(program("help pack").out == pack.out);
    const auto version = program("--version");
    CHECK(version.code == 0);
    CHECK(holds(version.out, "tuckwright "));
}

TEST_CASE("wrong options exit 2 and say what is wrong")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string kit = quoted((folder / "kit.yaml").string());
    struct Case {
        std::string arguments, said;
    };
    const std::vector<Case> cases = {
        {"", "give a command; --help shows them"},
        {"pakc " + kit, "there is no command pakc; did you mean pack?"},
        {"frob " + kit, "there is no command frob; known are new, pack"},
        {"pack", "pack needs KIT.yaml: the kit file, or - for standard input; 'tuckwright help pack' tells more"},
        {"verify", "verify needs BUNDLE.json: "},
        {"look " + kit, "look needs --html FILE: "},
        {"draw", "draw needs FILE: "},
        {"draw", "and draw needs --out FOLDER: "},
        {"pack " + kit + " --fast", "there is no option --fast of pack; known here: --help, --json, --effort"},
        {"pack " + kit + " --efort quick", "there is no option --efort of pack; did you mean --effort?"},
        {"pack " + kit + " --effrt=quick", "there is no option --effrt of pack; did you mean --effort?"},
        {"--effort quick pack " + kit, "give --effort behind pack"},
        {"-v pack " + kit, "give -v behind pack"},
        {"manual " + kit, "is one word too many for manual"},
        {"completion bash zsh", "zsh is one word too many for completion"},
        {"help pakc", "there is no command pakc; did you mean pack?"},
        {"new ''", "the path of the file is empty"},
        {"pack none.yaml", "'tuckwright new' starts a kit file"},
        {"pack " + kit + " extra", "extra is one file too many for pack"},
        {"pack ''", "the path of the file is empty"},
        {"verify ''", "the path of the file is empty"},
        {"pack " + kit + " --effort lazy", "\"lazy\" is not an effort; choose quick, normal or thorough"},
        {"pack " + kit + " --effort", "--effort needs WORD behind it: quick, normal (the default) or thorough"},
        {"pack " + kit + " --json", "--json needs FILE behind it: "},
        {"pack " + kit + " --worst-case=7", "--worst-case takes no value"},
        {"pack -z " + kit, "there is no option -z of pack"},
        {"pack " + kit + " --seed abc", "\"abc\" is not a whole number"},
        {"pack " + kit + " --seed -1", "\"-1\" is not a whole number"},
        {"pack " + kit + " --seed 1.5", "\"1.5\" is not a whole number"},
        {"pack " + kit + " --seed 18446744073709551616", "is not a whole number from 0"},
        {"pack " + kit + " --seed ''", "\"\" is not a whole number"},
        {"pack " + kit + " --threads -1", "\"-1\" is not a whole number from 1 to 1024"},
        {"pack " + kit + " --threads 100000", "\"100000\" is not a whole number from 1 to 1024"},
        {"pack " + kit + " --seconds nan", "\"nan\" is not a number of seconds"},
        {"pack " + kit + " --seconds inf", "\"inf\" is not a number of seconds"},
        {"pack " + kit + " --seconds 0", "\"0\" is not a number of seconds"},
        {"pack " + kit + " --seconds -5", "\"-5\" is not a number of seconds"},
        {"pack " + kit + " --seconds 1e300", "is not a number of seconds"},
        {"pack " + kit + " --seconds 5x", "\"5x\" is not a number of seconds"},
        {"pack " + kit + " --json ''", "is not the path of a file"},
    };
    for (const auto& wrong : cases) {
        const auto outcome = program(wrong.arguments);
        INFO(wrong.arguments << " said: " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(holds(outcome.err, wrong.said));
    }
    CHECK(folder.entries() == 1);
}
