// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "bench/suites.hpp"
#include "bench/table.hpp"

using namespace tuckwright;
using namespace tuckwright::bench;

namespace {

/// Fields of a line of CSV; commas within quotation marks part nothing.
std::size_t fields_of(const std::string& line)
{
    std::size_t fields = 1;
    bool within = false;
    for (const char c : line) {
        within ^= c == '"';
        fields += c == ',' && !within ? 1U : 0U;
    }
    return fields;
}

std::size_t widest_line(const std::string& text)
{
    std::istringstream lines(text);
    std::size_t widest = 0;
    for (std::string line; std::getline(lines, line);) {
        widest = std::max(widest, line.size());
    }
    return widest;
}

/// As wide as rows get.
Row long_row()
{
    Row row;
    row.what = classic_boxes().cases.back();
    row.again = true;
    row.status = Status::does_not_fit;
    row.ours = 123456.789012;
    row.above = -0.9876;
    row.to_10 = row.to_1 = row.to_01 = 599.9;
    row.seconds = 600.1;
    row.gap = 3.21;
    row.peer = PeerRow{123456, 1.23, 59.9, 599.9, 60, true};
    return row;
}

} // namespace

TEST_CASE("tables are at most 120 columns wide")
{
    const Row row = long_row();
    CHECK(widest_line(table_head()) <= 120);
    CHECK(widest_line(table_line(row, {row.what.source})) <= 120);
    CHECK(widest_line(summary({row})) <= 120);
    CHECK(widest_line(peer_table({row})) <= 120);
    CHECK(widest_line(growth_line({row})) <= 120);
    for (const Suite& suite : {equal_circles(), circles_of_radii(), classic_boxes(), rings(), growth()}) {
        CHECK(widest_line(legend(sources_of(suite))) <= 120);
    }
}

TEST_CASE("each line of the CSV has the fields of its heading")
{
    Row row = long_row();
    CHECK(fields_of(csv_line(row, "A processor, 2 cores")) == fields_of(csv_head()));
    CHECK(fields_of(csv_line(Row(), "A \"processor\"")) == fields_of(csv_head()));
    row.what.source = "one, and \"another\"";
    CHECK(csv_line(row, "").find("\"one, and \"\"another\"\"\"") != std::string::npos);
}

TEST_CASE("of a case that was run again the summary counts the second run")
{
    Row first = long_row(), second = long_row();
    first.again = false;
    first.above = 0.5;
    second.above = 0.25;
    const std::string text = summary({first, second});
    CHECK(text.find("25.0000") != std::string::npos);
    CHECK(text.find("50.0000") == std::string::npos);
}

TEST_CASE("the table beside the peer says who is better")
{
    Row row = long_row();
    row.ours = 100;
    row.peer->figure = 101;
    CHECK(peer_table({row}).find("ours is better") != std::string::npos);
    row.peer->figure = 100;
    CHECK(peer_table({row}).find("the same") != std::string::npos);
    row.peer->ours_seconds = std::nullopt; // never got there
    row.peer->figure = 99;
    CHECK(peer_table({row}).find("the peer is better") != std::string::npos);
    row.ours = std::nullopt;
    CHECK(peer_table({row}).find("only the peer finds it") != std::string::npos);
    row.peer = PeerRow();
    CHECK(peer_table({row}).find("neither finds it") != std::string::npos);
    row.peer = std::nullopt;
    CHECK(peer_table({row}).empty());
}
