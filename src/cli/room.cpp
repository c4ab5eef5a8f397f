// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/room.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/messages.hpp"
#include "cli/packed.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright::cli
{

namespace
{

/// All that is wrong with what was given, before anything is searched.
std::vector<Problem> problems_of(const RoomCommandOptions& options, const Result<KitOrBundle>& source,
                                 const std::string& name)
{
    std::vector<Problem> problems = source ? std::vector<Problem>() : source.problems();
    check_worst_case(source, options.worst_case, name, problems);
    check_output(options.json, options.file, problems);
    return problems;
}

} // namespace

int room(const RoomCommandOptions& options)
{
    const std::string name = options.file == dash ? standard_input : options.file;
    const auto source = kit_or_bundle(options.file, options.chosen, options.way_back);
    if (const auto problems = problems_of(options, source, name); !problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    const auto& stop = watch_for_interrupts();
    const Packed result = packed(*source, name, options.worst_case, options.search, stop);
    if (result.outcome != done) {
        return result.outcome;
    }
    const Bundle& bundle = result.bundle;
    const bool is_there = has_bundle(bundle.status);
    RoomAnswer answer;
    if (is_there) {
        answer = room_left(bundle, {options.search.effort, options.search.threads, &stop});
    }
    const bool was_interrupted = stop;
    const std::string text = is_there ? room_text(bundle, answer) : text_report(bundle);
    if (!write_answer(options.json, [&] { return room_json(bundle, answer); }, text)) {
        return wrong_input;
    }
    return was_interrupted ? interrupted : is_there ? done : no_bundle;
}

} // namespace tuckwright::cli
