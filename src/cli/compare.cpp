// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/compare.hpp"

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <optional>

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
#include "cli/process.hpp"
#include "tuckwright/compare_picture.hpp"

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

/// A line on the terminal that says which kit it is at; nothing where standard error is no terminal.
void show_progress(std::size_t done, std::size_t of)
{
    if (::isatty(STDERR_FILENO) == 1 && !is_quiet()) {
        std::fprintf(stderr, "\rpacking kit %zu of %zu ", done + 1, of);
        std::fflush(stderr);
    }
}

void wipe_progress()
{
    constexpr int wide_enough = 40;
    if (::isatty(STDERR_FILENO) == 1 && !is_quiet()) {
        std::fprintf(stderr, "\r%*s\r", wide_enough, "");
    }
}

/// By the ending of its path; nothing for any other.
std::optional<std::string> picture_bytes(const std::string& path, const Comparison& comparison)
{
    const std::string ending = std::filesystem::path(path).extension().string();
    constexpr double dots_per_inch = 200;
    const Canvas picture = compare_picture(comparison);
    return ending == ".svg"   ? std::optional(picture.svg(0, "p", "Volume against weight"))
           : ending == ".pdf" ? std::optional(picture.pdf({.title = "Volume against weight", .date = {}}))
           : ending == ".png" ? std::optional(picture.png(0, dots_per_inch))
                              : std::nullopt;
}

/// What is wrong with the picture's path.
void check_picture(const CompareCommand& command, std::vector<Problem>& problems)
{
    const std::string ending = std::filesystem::path(command.picture).extension().string();
    if (command.picture.empty()) {
        return;
    }
    if (ending != ".svg" && ending != ".pdf" && ending != ".png") {
        problems.push_back({command.picture, 0, 0, "is no name of a picture", "let it end in .svg, .pdf or .png"});
        return;
    }
}

bool write_picture(const std::string& path, const Comparison& comparison)
{
    if (path.empty()) {
        return true;
    }
    const auto problem = write_file(path, *picture_bytes(path, comparison));
    if (problem) {
        tell({*problem});
    }
    return !problem;
}

} // namespace

int compare_kits(const CompareCommand& command)
{
    std::vector<Problem> problems;
    auto kits = contenders(command.kits, problems);
    for (std::size_t k = 0, before = problems.size(); k < command.kits.size() && problems.size() == before; ++k) {
        check_outputs({command.json, command.picture}, command.kits[k], problems);
    }
    check_picture(command, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    if (!command.picture.empty()) {
        require_memory_for_drawing();
    }
    CompareOptions options = command.options;
    const auto& stop = watch_for_interrupts();
    options.search.stop = &stop;
    options.progress = show_progress;
    const Comparison comparison = compare(std::move(kits), options);
    wipe_progress();
    const bool was_interrupted = stop;
    if (!write_picture(command.picture, comparison)) {
        return wrong_input;
    }
    if (!write_answer(command.json, [&] { return to_json(comparison); }, text_report(comparison))) {
        return wrong_input;
    }
    if (was_interrupted) {
        return interrupted;
    }
    const auto& first = comparison.kits.front();
    return first.trial == Trial::packed && has_bundle(first.bundle.status) ? done : no_bundle;
}

} // namespace tuckwright::cli
