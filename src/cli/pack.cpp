// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/pack.hpp"

#include <unistd.h>

#include <cstdio>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
#include "report/words.hpp"
#include "tuckwright/provision_report.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

namespace
{

/// A line on the terminal that says how far the search has come; nothing where standard error is no terminal.
class ProgressLine
{
public:
    ProgressLine() : terminal_(::isatty(STDERR_FILENO) == 1) {}
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    ~ProgressLine() { wipe(); }

    void show(double best_ml)
    {
        const std::string text = "searching; best so far " + report::volume_in_words(best_ml, report::Rounding::up);
        if (terminal_ && text != shown_) {
            wipe();
            std::fputs(text.c_str(), stderr);
            std::fflush(stderr);
            shown_ = text;
        }
    }

private:
    void wipe() const
    {
        if (!shown_.empty()) {
            std::fprintf(stderr, "\r%*s\r", static_cast<int>(shown_.size()), "");
            std::fflush(stderr);
        }
    }

    bool terminal_;
    std::string shown_;
};

Bundle search(const Kit& kit, SolveOptions options)
{
    ProgressLine line;
    options.progress = [&line](double best_ml) { line.show(best_ml); };
    return solve(kit, options);
}

/// Whether all that was asked for has been written.
bool write(const PackOptions& options, const Kit& kit, const Bundle& bundle)
{
    if (options.json == dash) {
        return print(to_json(bundle));
    }
    if (!options.json.empty()) {
        if (const auto problem = write_file(options.json, to_json(bundle))) {
            tell({*problem});
            return false;
        }
    }
    return print(text_report(bundle) + (kit.trip ? provided_text(provision(*kit.trip)) : ""));
}

} // namespace

int pack(const PackOptions& options)
{
    const auto kit = kit_file(options.kit, options.chosen);
    std::vector<Problem> problems = kit ? std::vector<Problem>() : kit.problems();
    if (!options.json.empty() && options.json != dash) { // found out before the search, not after it
        if (const auto problem = cannot_write(options.json, options.kit)) {
            problems.push_back(*problem);
        }
    }
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
    if (!write(options, wanted, bundle)) {
        return wrong_input;
    }
    if (was_interrupted) {
        return interrupted;
    }
    return has_bundle(bundle.status) ? done : no_bundle;
}

} // namespace tuckwright::cli
