// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/back.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/there_and_back.hpp"

namespace tuckwright::cli
{

int back(const BackOptions& options)
{
    const auto read = both_ways_file(options.kit, options.chosen);
    std::vector<Problem> problems = read ? std::vector<Problem>() : read.problems();
    check_output(options.json, options.kit, problems);
    check_output(options.save, options.kit, problems);
    if (options.save == dash) {
        problems.push_back({"tuckwright", 0, 0, "--save needs the name of a file", "--json - writes to standard output"});
    }
    if (!options.save.empty() && options.save == options.json) {
        problems.push_back({"tuckwright", 0, 0, "--json and --save both write to " + options.save, "name two files"});
    }
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
    const ThereAndBack answer = there_and_back(kits, search);
    const bool was_interrupted = stop;
    if (!options.save.empty()) {
        if (const auto problem = write_file(options.save, to_json(answer.back))) {
            tell({*problem});
            return wrong_input;
        }
    }
    if (!write_answer(options.json, [&] { return there_and_back_json(answer); }, there_and_back_text(answer))) {
        return wrong_input;
    }
    const bool both = has_bundle(answer.out.status) && has_bundle(answer.back.status);
    return was_interrupted ? interrupted : both ? done : no_bundle;
}

} // namespace tuckwright::cli
