// SPDX-License-Identifier: GPL-3.0-or-later
/// Plain tables. Source: Y. Shafranovich, Common Format and MIME Type for Comma-Separated Values (CSV) Files, RFC 4180,
/// 2005, section 2, rules 1 to 7 with their examples (from memory).
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "kit/csv.hpp"

using namespace tuckwright::reading;

namespace {

using Table = std::vector<std::vector<std::string>>;

Table table(const std::string& text)
{
    ProblemList problems;
    Table rows;
    for (const CsvRecord& record : read_csv(text, problems)) {
        rows.emplace_back();
        for (const CsvField& field : record) {
            rows.back().push_back(field.text);
        }
    }
    CHECK(problems.empty());
    return rows;
}

/// "line:column what", each on a line.
std::string faults(const std::string& text)
{
    ProblemList problems;
    read_csv(text, problems);
    const Source source{text, "t.csv"};
    std::string told;
    for (const auto& problem : problems.in_order({&source, 1})) {
        told += std::to_string(problem.line) + ":" + std::to_string(problem.column) + " " + problem.what + "\n";
    }
    return told;
}

} // namespace

TEST_CASE("the examples of RFC 4180")
{
    const Table two{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    CHECK(table("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == two); // 1: each record on a line
    CHECK(table("aaa,bbb,ccc\r\nzzz,yyy,xxx") == two);     // 2: the last without a line break
    CHECK(table("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == // 3: a header
          Table{{"field_name", "field_name", "field_name"}, {"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(table("aaa,bbb,ccc") == Table{{"aaa", "bbb", "ccc"}});          // 4
    CHECK(table("aaa, bbb ,ccc,") == Table{{"aaa", " bbb ", "ccc", ""}}); // 4: spaces belong to a field
    CHECK(table("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == two);        // 5: quotes or none
    CHECK(table("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") ==          // 6: a line break in quotes
          Table{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(table("\"aaa\",\"b\"\"bb\",\"ccc\"") == Table{{"aaa", "b\"bb", "ccc"}}); // 7: a quote, doubled
}

TEST_CASE("plain line feeds, blank lines and empty fields")
{
    CHECK(table("").empty());
    CHECK(table("\r\n\n").empty());
    CHECK(table("a,b\n\nc,d\n") == Table{{"a", "b"}, {"c", "d"}});
    CHECK(table(",\n\"\"\n") == Table{{"", ""}, {""}});
    CHECK(table("\"a,b\",\"\"\"\"") == Table{{"a,b", "\""}});
}

TEST_CASE("fields keep their places, whatever stands before them")
{
    ProblemList problems;
    const auto records = read_csv("a,\"b\nb\",c\nd,e\n", problems);
    REQUIRE(records.size() == 2);
    REQUIRE(records[0].size() == 3);
    CHECK(records[0][1].place == Place{0, 2});
    CHECK(records[0][2].place == Place{1, 3});
    CHECK(records[1][1].place == Place{2, 2});
}

TEST_CASE("quotes in the wrong place are told, all of them")
{
    CHECK(faults("a,b\"c\nd,\"e\"f\n\"g") == "1:3 there is a quote in a field that does not begin with one\n"
                                             "2:6 there is more behind the closing quote\n"
                                             "3:1 this quote is not closed\n");
    CHECK(faults("a,\"b\" ,c") == "1:6 there is more behind the closing quote\n");
}

TEST_CASE("what stands between the fields is what the first line has most of, outside of quotes")
{
    CHECK(separator_of("") == ',');
    CHECK(separator_of("a") == ',');
    CHECK(separator_of("a,b;c,d\n1;2;3;4") == ',');
    CHECK(separator_of("\r\na;b\n1,2,3") == ';');
    CHECK(separator_of("a\tb\tc;d") == '\t');
    CHECK(separator_of("\"a;b;c\",d") == ',');
    ProblemList problems;
    const auto records = read_csv("a;\"b;c\";1,5\n", problems, ';');
    REQUIRE(records.size() == 1);
    REQUIRE(records.front().size() == 3);
    CHECK(records.front()[1].text == "b;c");
    CHECK(records.front()[2].text == "1,5");
    CHECK(problems.empty());
}
