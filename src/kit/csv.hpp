// SPDX-License-Identifier: GPL-3.0-or-later
/// Plain tables of comma-separated values. Source: Y. Shafranovich, Common Format and MIME Type for Comma-Separated Values
/// (CSV) Files, RFC 4180, 2005, section 2.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "kit/problem_list.hpp"

namespace tuckwright::reading {

struct CsvField {
    std::string text; ///< without its quotes
    Place place;
};

using CsvRecord = std::vector<CsvField>;

/// What stands between the fields of a table: a comma, or a semicolon or tab where the first line has more of these outside
/// of quotes, as spreadsheets write where numbers have a decimal comma. Complexity: the first line.
char separator_of(std::string_view text);

/// The records of a table; blank lines are none. Line breaks are CRLF or LF, the last may be missing; a field in quotes may
/// hold separators, line breaks and doubled quotes; spaces belong to their field. Adds a problem for a quote that is not
/// closed, and for one in the wrong place. Complexity: linear.
std::vector<CsvRecord> read_csv(std::string_view text, ProblemList& problems, char separator = ',');

} // namespace tuckwright::reading
