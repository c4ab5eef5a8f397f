// SPDX-License-Identifier: GPL-3.0-or-later
/// The tables that are printed, within 120 columns, and the CSV.
#pragma once
#include <string>
#include <vector>

#include "bench/run.hpp"

namespace tuckwright::bench {

/// The heading of the table of rows, and a row of it, each with its line feed.
std::string table_head();
std::string table_line(const Row& row, const std::vector<std::string>& sources);

/// The sources of the suite's best known, each once, and as the legend of the table's column.
std::vector<std::string> sources_of(const Suite& suite);
std::string legend(const std::vector<std::string>& sources);

/// Median and worst of each group of cases. Of a case that was run again the second run counts.
std::string summary(const std::vector<Row>& rows);

/// The peer beside ours, for rows that have one; empty where none has.
std::string peer_table(const std::vector<Row>& rows);

/// How the time to come within 10 % grows with the number of items: the exponent fitted.
std::string growth_line(const std::vector<Row>& rows);

/// The CSV's first line, and the line of a row.
std::string csv_head();
std::string csv_line(const Row& row, const std::string& machine);

} // namespace tuckwright::bench
