// SPDX-License-Identifier: GPL-3.0-or-later
/// The program with a search that breaks a contract.
#include <catch2/catch.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;

TEST_CASE("a bug of ours exits 3, asks for a report, and writes nothing")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto outcome = shell(quoted(TUCKWRIGHT_BROKEN_PROGRAM) + " pack " + quoted((folder / "kit.yaml").string()) +
                               " --effort quick --json " + quoted((folder / "bundle.json").string()));
    CHECK(outcome.code == 3);
    CHECK(outcome.out.empty());
    CHECK(holds(outcome.err, "this is a bug of ours, not yours"));
    CHECK(holds(outcome.err, "more items than any kit has"));
    CHECK(holds(outcome.err, "Please report it"));
    CHECK(folder.entries() == 1);
}
