// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/room.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/interrupt.hpp"
#include "cli/progress.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright::cli
{

int room(const RoomCommandOptions& options)
{
    std::vector<Problem> problems;
    check_output(options.json, options.file, problems);
    const auto& stop = watch_for_interrupts();
    const Packed result = packed(options, problems, stop);
    if (result.outcome != done) {
        return result.outcome;
    }
    const Bundle& bundle = result.bundle;
    const bool is_there = has_bundle(bundle.status);
    RoomAnswer answer;
    if (is_there) {
        const WorkingLine line("looking for room");
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
