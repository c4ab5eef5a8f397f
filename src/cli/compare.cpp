// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/compare.hpp"

#include <unistd.h>

#include <algorithm>
#include <cstdio>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"

namespace tuckwright::cli {

namespace {

/// All kits of all files; adds the problems of those that cannot be read.
std::vector<Contender> contenders(const std::vector<std::string>& paths, std::vector<Problem>& problems)
{
    std::vector<Contender> all;
    for (const auto& path : paths) {
        if (std::count(paths.begin(), paths.end(), path) > 1) {
            problems.push_back({path, 0, 0, "is given twice", "name each file once"});
            return {};
        }
        auto kits = kits_file(path);
        if (!kits) {
            problems.insert(problems.end(), kits.problems().begin(), kits.problems().end());
            continue;
        }
        for (ChosenKit& kit : std::move(kits).value()) {
            all.push_back({path, std::move(kit)});
        }
    }
    return all;
}

/// Whether all that was asked for has been written.
bool write(const std::string& json, const Comparison& comparison)
{
    if (json == dash) {
        return print(to_json(comparison));
    }
    if (!json.empty()) {
        if (const auto problem = write_file(json, to_json(comparison))) {
            tell({*problem});
            return false;
        }
    }
    return print(text_report(comparison));
}

/// A line on the terminal that says which kit it is at; nothing where standard error is no terminal.
void show_progress(std::size_t done, std::size_t of)
{
    if (::isatty(STDERR_FILENO) == 1) {
        std::fprintf(stderr, "\rpacking kit %zu of %zu ", done + 1, of);
        std::fflush(stderr);
    }
}

void wipe_progress()
{
    constexpr int wide_enough = 40;
    if (::isatty(STDERR_FILENO) == 1) {
        std::fprintf(stderr, "\r%*s\r", wide_enough, "");
    }
}

} // namespace

int compare_kits(const CompareCommand& command)
{
    std::vector<Problem> problems;
    auto kits = contenders(command.kits, problems);
    if (!command.json.empty() && command.json != dash) { // found out before the search, not after it
        for (const auto& path : command.kits) {
            if (const auto problem = cannot_write(command.json, path)) {
                problems.push_back(*problem);
                break;
            }
        }
    }
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    CompareOptions options = command.options;
    const auto& stop = watch_for_interrupts();
    options.search.stop = &stop;
    options.progress = show_progress;
    const Comparison comparison = compare(std::move(kits), options);
    wipe_progress();
    const bool was_interrupted = stop;
    if (!write(command.json, comparison)) {
        return wrong_input;
    }
    if (was_interrupted) {
        return interrupted;
    }
    const auto& first = comparison.kits.front();
    return first.trial == Trial::packed && has_bundle(first.bundle.status) ? done : no_bundle;
}

} // namespace tuckwright::cli
