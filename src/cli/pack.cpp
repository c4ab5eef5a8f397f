// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/pack.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/progress.hpp"
#include "tuckwright/provision_report.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

int pack(const PackOptions& options)
{
    const auto kit = kit_file(options.kit, options.chosen, options.way_back);
    std::vector<Problem> problems = kit ? std::vector<Problem>() : kit.problems();
    check_output(options.json, options.kit, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    SolveOptions search_options = options.search;
    const auto& stop = watch_for_interrupts();
    search_options.stop = &stop;
    Kit wanted = *kit;
    wanted.worst_case |= options.worst_case;
    const Bundle bundle = search(wanted, search_options);
    const bool was_interrupted = stop;
    const bool provides = wanted.trip && !wanted.trip->is_over;
    const std::string text = text_report(bundle) + (provides ? provided_text(provision(*wanted.trip)) : "");
    if (!write_answer(options.json, [&] { return to_json(bundle); }, text)) {
        return wrong_input;
    }
    if (was_interrupted) {
        return interrupted;
    }
    return has_bundle(bundle.status) ? done : no_bundle;
}

} // namespace tuckwright::cli
