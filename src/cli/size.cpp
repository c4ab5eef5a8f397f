// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/size.hpp"

#include <fmt/format.h>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"
#include "cli/output_file.hpp"
#include "report/words.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright::cli {

namespace {

/// Whether all that was asked for has been written.
bool write(const SizeOptions& options, const std::string& json, const std::string& text)
{
    if (options.json == dash) {
        return print(json);
    }
    if (!options.json.empty()) {
        if (const auto problem = write_file(options.json, json)) {
            tell({*problem});
            return false;
        }
    }
    return print(text);
}

/// The chains of a bundle that was packed before, once it is proved anew.
int size_of_bundle(const SizeOptions& options, const SavedBundle& saved, const std::string& name)
{
    SizeAnswer answer;
    answer.bundle = saved.bundle;
    std::string refused = saved.contradictions.empty() ? "" : saved.contradictions.front().what;
    if (refused.empty() && has_bundle(saved.bundle.status)) {
        const auto objections = check(saved.bundle);
        refused = objections.empty() ? "" : objections.front().what;
    } else if (refused.empty()) {
        refused = fmt::format("it holds no bundle: its status is {}", to_string(saved.bundle.status));
    }
    if (!refused.empty()) {
        tell({{name, 0, 0, "refused: " + refused, ""}});
        return no_bundle;
    }
    answer.chains = chains(answer.bundle);
    const std::string head = report::wrapped(
        "", fmt::format("{}: {}", answer.bundle.kit, report::envelope_in_words(outer_envelope(answer.bundle))));
    const std::string foot =
        report::wrapped("", "A saved bundle tells its chains only. For what a smaller thing would save, "
                            "give the kit file.");
    return write(options, size_json(nullptr, answer),
                 head + "\nWhat sets the size:\n" + chains_text(answer.bundle, answer.chains) + "\n" + foot)
               ? done
               : wrong_input;
}

int size_of_kit(const SizeOptions& options, const Kit& kit)
{
    SolveOptions search = options.search;
    const auto& stop = watch_for_interrupts();
    search.stop = &stop;
    Kit wanted = kit;
    wanted.worst_case |= options.worst_case;
    const SizeAnswer answer = what_sets_the_size(wanted, search);
    const bool was_interrupted = stop;
    if (!write(options, size_json(&wanted, answer), size_text(wanted, answer))) {
        return wrong_input;
    }
    return was_interrupted ? interrupted : has_bundle(answer.bundle.status) ? done : no_bundle;
}

} // namespace

int size(const SizeOptions& options)
{
    constexpr std::size_t most = std::size_t{64} * 1024 * 1024; // as much as a bundle's JSON may be
    const std::string name = options.input == dash ? standard_input : options.input;
    std::vector<Problem> problems;
    if (!options.json.empty() && options.json != dash) { // found out before the search, not after it
        if (const auto problem = cannot_write(options.json, options.input)) {
            problems.push_back(*problem);
        }
    }
    const auto fail = [&](const std::vector<Problem>& more) {
        problems.insert(problems.begin(), more.begin(), more.end());
        tell(problems);
        return wrong_input;
    };
    const auto text = input_text(options.input, most);
    if (!text) {
        return fail(text.problems());
    }
    if (looks_like_bundle(*text)) {
        const auto saved = read_saved(*text, name);
        return !saved ? fail(saved.problems()) : !problems.empty() ? fail({}) : size_of_bundle(options, *saved, name);
    }
    const auto kit = read_kit_text(*text, name);
    return !kit ? fail(kit.problems()) : !problems.empty() ? fail({}) : size_of_kit(options, *kit);
}

} // namespace tuckwright::cli
