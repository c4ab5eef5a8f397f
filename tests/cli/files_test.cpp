// SPDX-License-Identifier: GPL-3.0-or-later
/// What is read and written, and what is left alone.
#include <catch2/catch.hpp>

#include <unistd.h>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace
{

std::string pack(const fs::path& kit, const std::string& more)
{
    return "pack " + quoted(kit.string()) + " --effort quick " + more;
}

} // namespace

TEST_CASE("each faulty kit of the corpus exits 2, says where, and writes nothing")
{
    std::size_t tried = 0;
    const Folder folder;
    for (const auto& entry : fs::directory_iterator(fs::path(TUCKWRIGHT_SOURCE_DIR) / "tests/corpus/kits/faulty")) {
        if (entry.path().extension() != ".yaml") {
            continue;
        }
        const auto outcome = program(pack(entry.path(), "--json " + quoted((folder / "bundle.json").string())));
        INFO(entry.path() << " said: " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(outcome.err.find(entry.path().string()) == 0);
        CHECK(folder.entries() == 0);
        ++tried;
    }
    CHECK(tried >= 40);
}

TEST_CASE("all problems of a kit are told, and an output that cannot be written with them")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: Soup\nitems:\n  - {id: pot, wieght: 3}\n  - {id: pot, weight: heavy}\n");
    const auto outcome = program(pack(folder / "kit.yaml", "--json " + quoted((folder / "no/b.json").string())));
    CHECK(outcome.code == 2);
    CHECK(holds(outcome.err, "kit.yaml:3:"));
    CHECK(holds(outcome.err, "kit.yaml:4:"));
    CHECK(holds(outcome.err, "there is no folder"));
}

TEST_CASE("kits that cannot be read exit 2")
{
    const Folder folder;
    for (const auto& path : {folder / "none.yaml", folder.path()}) {
        const auto outcome = program(pack(path, ""));
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, path.string() + ": "));
    }
    const auto empty_pipe = program("pack - --effort quick");
    CHECK(empty_pipe.code == 2);
    CHECK(holds(empty_pipe.err, "standard input"));
}

TEST_CASE("outputs that cannot be written are found out at once, and nothing is left behind")
{
    const Folder folder;
    const auto kit = folder / "kit.yaml";
    write(kit, two_tins);
    fs::create_directory(folder / "sub");
    fs::create_symlink(kit, folder / "other-name.yaml");
    fs::create_hard_link(kit, folder / "hard-link.yaml");
    struct Case {
        std::string path, said;
    };
    const std::vector<Case> cases = {
        {kit.string(), "is the file that is read"},
        {(folder / "sub/../kit.yaml").string(), "is the file that is read"},
        {(folder / "other-name.yaml").string(), "is the file that is read"},
        {(folder / "hard-link.yaml").string(), "is the file that is read"},
        {(folder / "sub").string(), "is a folder"},
        {(folder / "sub").string() + "/", "is a folder"},
        {(folder / "missing/bundle.json").string(), "there is no folder"},
        {(folder / "kit.yaml/bundle.json").string(), "cannot be written"},
        {"/dev/null", "is not an ordinary file"},
        {"/proc/bundle.json", "cannot be written"},
    };
    for (const auto& wrong : cases) {
        const auto outcome = program(pack(kit, "--json " + quoted(wrong.path)));
        INFO(wrong.path << " said: " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, wrong.said));
        CHECK(outcome.out.empty());
    }
    CHECK(text_of(kit) == two_tins);
    CHECK(folder.entries() == 4);
}

TEST_CASE("a read-only folder or file is refused")
{
    const Folder folder;
    const Folder kits;
    write(kits / "kit.yaml", two_tins);
    if (::geteuid() == 0) { // root writes anywhere but there
        const auto outcome = program(pack(kits / "kit.yaml", "--json /sys/bundle.json"));
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, "cannot be written"));
        return;
    }
    write(folder / "old.json", "old");
    fs::permissions(folder / "old.json", fs::perms::owner_read);
    const auto file = program(pack(kits / "kit.yaml", "--json " + quoted((folder / "old.json").string())));
    CHECK(file.code == 2);
    CHECK(holds(file.err, "cannot be written"));
    fs::permissions(folder.path(), fs::perms::owner_read | fs::perms::owner_exec);
    const auto outcome = program(pack(kits / "kit.yaml", "--json " + quoted((folder / "new.json").string())));
    CHECK(outcome.code == 2);
    CHECK(holds(outcome.err, "cannot be written"));
    CHECK(folder.entries() == 1);
    CHECK(text_of(folder / "old.json") == "old");
}

TEST_CASE("an old output is replaced whole, keeps its permissions, and a link stays a link")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    write(folder / "old.json", std::string(1'000'000, 'x'));
    fs::permissions(folder / "old.json", fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink("old.json", folder / "link.json");
    const auto outcome = program(pack(folder / "kit.yaml", "--json " + quoted((folder / "link.json").string())));
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    CHECK(fs::is_symlink(folder / "link.json"));
    CHECK(json::parse(text_of(folder / "old.json"))["format"] == "tuckwright-bundle");
    CHECK(fs::status(folder / "old.json").permissions() == (fs::perms::owner_read | fs::perms::owner_write));
    CHECK(folder.entries() == 3);
}

TEST_CASE("the file's name alone means the folder one is in")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto outcome = shell("cd " + quoted(folder.path().string()) +
                               " && \"$TUCKWRIGHT\" pack kit.yaml --effort quick --json bundle.json");
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    CHECK(fs::exists(folder / "bundle.json"));
    CHECK(folder.entries() == 2);
}

TEST_CASE("standard output that cannot be written exits 2")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    for (const char* more : {"", "--json -"}) {
        const auto outcome = program(pack(folder / "kit.yaml", std::string(more) + " >/dev/full"));
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, "standard output: cannot be written"));
    }
}
