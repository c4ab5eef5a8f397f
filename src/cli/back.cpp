// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/back.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/progress.hpp"
#include "tuckwright/there_and_back.hpp"

namespace tuckwright::cli {

namespace {

/// What is wrong with where to write, before anything is searched.
void check_saving(const BackOptions& options, std::vector<Problem>& problems)
{
    check_outputs({options.json, options.save_out, options.save_back}, options.kit, problems);
    check_saved("--save-out", options.save_out, problems);
    check_saved("--save-back", options.save_back, problems);
}

} // namespace

int back(const BackOptions& options)
{
    const auto read = both_ways_file(options.kit, options.chosen);
    std::vector<Problem> problems = read ? std::vector<Problem>() : read.problems();
    check_saving(options, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    BothWays kits = *read;
    kits.out.worst_case |= options.worst_case;
    kits.back.worst_case |= options.worst_case;
    SolveOptions search = options.search;
    const auto& stop = watch_for_interrupts();
    search.stop = &stop;
    const ThereAndBack answer = [&] {
        const WorkingLine line("packing both ways");
        return there_and_back(kits, search);
    }();
    const bool was_interrupted = stop;
    if (!save_bundle(options.save_out, answer.out) || !save_bundle(options.save_back, answer.back)) {
        return wrong_input;
    }
    if (!write_answer(
            options.json, [&] { return there_and_back_json(answer); }, there_and_back_text(answer))) {
        return wrong_input;
    }
    const bool both = has_bundle(answer.out.status) && has_bundle(answer.back.status);
    return was_interrupted ? interrupted : both ? done : no_bundle;
}

} // namespace tuckwright::cli
