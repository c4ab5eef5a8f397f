// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>

#include "bench/record.hpp"
#include "bench/stored_bests.hpp"
#include "bench/suites.hpp"

using namespace tuckwright::bench;

TEST_CASE("stored bests are read as they were written")
{
    const StoredBests bests{{"kit-08-01", {1362.924, 10, 7, 31}}, {"kit-40-12", {9748.919652, 0.5, 1, 1}}};
    const auto read = stored_bests(csv_of(bests), "bests.csv");
    REQUIRE(read.ok());
    CHECK(*read == bests);
    CHECK(csv_of(*read) == csv_of(bests));
    CHECK(stored_bests(csv_of({}), "bests.csv")->empty());
}

TEST_CASE("what is no file of stored bests is refused, with its line")
{
    const std::string head = csv_of({});
    for (const char* line : {"kit-08-01", "kit-08-01,1,2,3", "kit-08-01,a,2,3,4", "kit-08-01,1,2,3,4,5",
                             "kit-08-01,-1,2,3,4", "kit-08-01,1;2,3,4", ",1,2,3,4", "kit-08-01,1,2,3,4 "}) {
        CAPTURE(line);
        const auto read = stored_bests(head + "kit-08-02,1,2,3,4\n" + line + "\n", "bests.csv");
        REQUIRE_FALSE(read.ok());
        CHECK(read.problems().front().line == 3);
    }
    CHECK_FALSE(stored_bests("", "bests.csv").ok());
    CHECK_FALSE(stored_bests("case,ml\n", "bests.csv").ok());
}

TEST_CASE("stored bests go to a file and come back; a file that is not there holds none")
{
    const auto path = std::filesystem::temp_directory_path() / "tuckwright_stored_bests_test.csv";
    std::filesystem::remove(path);
    CHECK(read_stored_bests(path.string())->empty());
    const StoredBests bests{{"kit-08-01", {1362.924, 10, 7, 31}}};
    REQUIRE(write_stored_bests(path.string(), bests));
    CHECK(*read_stored_bests(path.string()) == bests);
    std::filesystem::remove(path);
    CHECK_FALSE(write_stored_bests((path / "not" / "there.csv").string(), bests));
}

TEST_CASE("a search that finds something smaller becomes the stored best, any search adds its minutes")
{
    const StoredBest first = after_search({}, 1500.0, 1, 120);
    CHECK(first == StoredBest{1500, 2, 1, 1});
    CHECK(after_search(first, 1400.0, 2, 60) == StoredBest{1400, 3, 2, 2});
    CHECK(after_search(first, 1500.0, 2, 60) == StoredBest{1500, 3, 1, 2});
    CHECK(after_search(first, 1600.0, 2, 60) == StoredBest{1500, 3, 1, 2});
    CHECK(after_search(first, std::nullopt, 2, 60) == StoredBest{1500, 3, 1, 2});
}

TEST_CASE("kits are held against their stored bests, and against nothing where there is none")
{
    const Suite suite = kits({{"kit-08-02", {1234.5, 10, 1, 1}}});
    for (const Case& one : suite.cases) {
        CHECK(one.best.has_value() == (one.name == "kit-08-02"));
        CHECK(one.aim.has_value() == one.best.has_value());
    }
    // Those of the sources: each is of a kit that there is.
    const auto stored = read_stored_bests(TUCKWRIGHT_SOURCE_DIR "/tests/bench/stored_bests.csv");
    REQUIRE(stored.ok());
    std::size_t with_best = 0;
    for (const Case& one : kits(*stored).cases) {
        with_best += one.best ? 1U : 0U;
    }
    CHECK(with_best == stored->size());
}
