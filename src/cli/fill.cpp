// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/fill.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/progress.hpp"
#include "tuckwright/fill.hpp"

namespace tuckwright::cli
{

namespace
{

/// What is wrong with the vessel that was asked for, each problem with the file's name.
std::vector<Problem> about_vessel(const Kit& kit, const FillOptions& options, std::string& vessel)
{
    const std::string file = options.kit == dash ? standard_input : options.kit;
    vessel = options.into.empty() ? usual_vessel(kit) : options.into;
    if (vessel.empty()) {
        return {{file, 0, 0, "the kit has no vessel to fill", "give one thing an 'inside' with a floor"}};
    }
    std::vector<Problem> problems = problems_of_vessel(kit, vessel);
    for (Problem& problem : problems) {
        problem.file = file;
    }
    return problems;
}

} // namespace

int fill(const FillOptions& options)
{
    const auto kit = kit_file(options.kit, options.chosen, options.way_back);
    std::string vessel;
    std::vector<Problem> problems = kit ? about_vessel(*kit, options, vessel) : kit.problems();
    check_outputs({options.json, options.save}, options.kit, problems);
    check_saved("--save", options.save, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    SolveOptions search = options.search;
    const auto& stop = watch_for_interrupts();
    search.stop = &stop;
    const Filling filling = [&] {
        const WorkingLine line("trying what goes in");
        return tuckwright::fill(*kit, vessel, search);
    }();
    const bool was_interrupted = stop;
    if (filling.choice != Choice::none && !save_bundle(options.save, filling.bundle)) {
        return wrong_input;
    }
    if (!write_answer(options.json, [&] { return fill_json(filling); }, fill_text(filling))) {
        return wrong_input;
    }
    return was_interrupted ? interrupted : filling.choice == Choice::none ? no_bundle : done;
}

} // namespace tuckwright::cli
