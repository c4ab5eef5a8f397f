// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/size.hpp"

#include <fmt/format.h>

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_or_bundle.hpp"
#include "cli/messages.hpp"
#include "cli/progress.hpp"
#include "cli/verify.hpp"
#include "report/words.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright::cli {

namespace {

/// The chains of a bundle that was packed before, once it is proved anew.
int size_of_bundle(const SizeOptions& options, const SavedBundle& saved, const std::string& name)
{
    const Proved proved = prove(saved, name);
    if (proved.outcome != done) {
        return proved.outcome;
    }
    SizeAnswer answer;
    answer.bundle = proved.bundle;
    answer.chains = chains(answer.bundle);
    const std::string head = report::wrapped(
        "", fmt::format("{}: {}", answer.bundle.kit, report::envelope_in_words(outer_envelope(answer.bundle))));
    const std::string foot =
        report::wrapped("", "A saved bundle tells its chains only. For what a smaller thing would save, "
                            "give the kit file.");
    const std::string text =
        head + "\nWhat sets the size:\n" + chains_text(answer.bundle, answer.chains) + "\n" + foot;
    return write_answer(options.json, [&] { return size_json(nullptr, answer); }, text) ? done : wrong_input;
}

int size_of_kit(const SizeOptions& options, const Kit& kit)
{
    SolveOptions search = options.search;
    const auto& stop = watch_for_interrupts();
    search.stop = &stop;
    Kit wanted = kit;
    wanted.worst_case |= options.worst_case;
    const SizeAnswer answer = [&] {
        const WorkingLine line("trying smaller things");
        return what_sets_the_size(wanted, search);
    }();
    const bool was_interrupted = stop;
    if (!write_answer(options.json, [&] { return size_json(&wanted, answer); }, size_text(wanted, answer))) {
        return wrong_input;
    }
    return was_interrupted ? interrupted : has_bundle(answer.bundle.status) ? done : no_bundle;
}

} // namespace

int size(const SizeOptions& options)
{
    const std::string name = options.input == dash ? standard_input : options.input;
    const auto source = kit_or_bundle(options.input, options.chosen, options.way_back);
    std::vector<Problem> problems = source ? std::vector<Problem>() : source.problems();
    check_output(options.json, options.input, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    return source->saved ? size_of_bundle(options, *source->saved, name) : size_of_kit(options, *source->kit);
}

} // namespace tuckwright::cli
