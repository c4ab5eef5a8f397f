// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/shelf.hpp"

#include <filesystem>
#include <vector>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"
#include "cli/output_file.hpp"
#include "tuckwright/shelf.hpp"

namespace tuckwright::cli {

namespace {

/// The text of the shelf, or what is wrong with the table.
Result<std::string> imported(const ShelfOptions& options)
{
    constexpr std::size_t most = std::size_t{4} * 1024 * 1024; // the reader draws its own line, further down
    const auto table = input_text(options.csv, most);
    if (!table) {
        return table.problems();
    }
    const std::string name = options.csv == dash ? standard_input : options.csv;
    if (looks_like_kit(*table) || looks_like_bundle(*table)) {
        return Problem{name, 0, 0, "this is no table of things", "give a CSV file, whose first line names the columns"};
    }
    if (const auto problem = another_file(*table, name, a_table)) {
        return *problem;
    }
    const std::string stem = options.csv == dash ? "My things" : std::filesystem::path(options.csv).stem().string();
    return shelf_from_csv(*table, name, options.title.empty() ? stem : options.title);
}

} // namespace

int shelf(const ShelfOptions& options)
{
    const auto text = imported(options);
    std::vector<Problem> problems = text ? std::vector<Problem>() : text.problems();
    const bool to_file = !options.yaml.empty() && options.yaml != dash;
    if (to_file) {
        if (const auto problem = cannot_write(options.yaml, options.csv)) {
            problems.push_back(*problem);
        }
    }
    if (problems.empty() && to_file) {
        if (const auto problem = write_file(options.yaml, *text)) {
            problems.push_back(*problem);
        }
    }
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    return to_file || print(*text) ? done : wrong_input;
}

} // namespace tuckwright::cli
