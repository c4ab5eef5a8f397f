// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/look.hpp"

#include <fmt/format.h>

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/messages.hpp"
#include "report/words.hpp"
#include "tuckwright/chains.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/turning_picture.hpp"

namespace tuckwright::cli {

namespace {

/// What is wrong besides the kit.
std::vector<Problem> problems_of(const LookOptions& options)
{
    std::vector<Problem> problems;
    if (!has_turning_picture()) {
        problems.push_back({"tuckwright", 0, 0, "this build of the program has no turning picture in it",
                            "build it where node (18 or later) and npm are there; cmake says what is missing"});
    }
    check_output(options.html, options.file, problems);
    return problems;
}

std::string told(const Bundle& bundle, const std::string& path, std::size_t bytes)
{
    constexpr std::size_t kilobyte = 1000;
    return report::wrapped("", fmt::format("{}: {}", bundle.kit, report::envelope_in_words(outer_envelope(bundle)))) +
           report::wrapped("", fmt::format("The picture is in {} ({} kB). Open it in any browser; it needs no network.",
                                           path, (bytes + kilobyte - 1) / kilobyte));
}

/// The picture of a bundle that is there; false if it could not be written.
bool draw(const LookOptions& options, const Bundle& bundle, const std::atomic<bool>& stop)
{
    PictureExtras extras;
    extras.chains = chains(bundle);
    if (!options.without_room && !stop) {
        extras.room = room_left(bundle, {Effort::quick, options.search.threads, &stop});
    }
    std::string page = turning_picture(bundle, extras);
    return write_answer(options.html, [&] { return page; }, told(bundle, options.html, page.size()));
}

} // namespace

int look(const LookOptions& options)
{
    const auto& stop = watch_for_interrupts();
    const Packed result = packed(options, problems_of(options), stop);
    if (result.outcome != done) {
        return result.outcome;
    }
    const Bundle& bundle = result.bundle;
    if (!has_bundle(bundle.status)) {
        say(options.html == dash ? "" : text_report(bundle));
        if (options.html == dash) {
            tell({{options.file, 0, 0, fmt::format("there is no bundle to draw: {}", to_string(bundle.status)), ""}});
        }
        return stop ? interrupted : no_bundle;
    }
    if (!draw(options, bundle, stop)) {
        return wrong_input;
    }
    return stop ? interrupted : done;
}

} // namespace tuckwright::cli
