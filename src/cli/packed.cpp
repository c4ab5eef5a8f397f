// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/packed.hpp"

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/messages.hpp"
#include "cli/progress.hpp"
#include "cli/verify.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::cli
{

void check_worst_case(const Result<KitOrBundle>& source, bool worst_case, const std::string& name,
                      std::vector<Problem>& problems)
{
    if (source && source->saved && worst_case) {
        problems.push_back({name, 0, 0, "a saved bundle is packed already, for the worst case or not",
                            "leave out --worst-case, or give the kit"});
    }
}

Packed packed(const KitOrBundle& source, const std::string& name, bool worst_case, SolveOptions search,
              const std::atomic<bool>& stop)
{
    if (source.saved) {
        Proved proved = prove(*source.saved, name);
        return {std::move(proved.bundle), proved.outcome};
    }
    require(source.kit.has_value(), "there is a kit or a saved bundle");
    Kit kit = *source.kit;
    kit.worst_case |= worst_case;
    search.stop = &stop;
    return {cli::search(kit, search), done};
}

Packed packed(const WhatToPack& what, const std::vector<Problem>& besides, const std::atomic<bool>& stop)
{
    const std::string name = what.file == dash ? standard_input : what.file;
    const auto source = kit_or_bundle(what.file, what.chosen, what.way_back);
    std::vector<Problem> problems = source ? std::vector<Problem>() : source.problems();
    check_worst_case(source, what.worst_case, name, problems);
    problems.insert(problems.end(), besides.begin(), besides.end());
    if (!problems.empty()) {
        tell(problems);
        return {{}, wrong_input};
    }
    return packed(*source, name, what.worst_case, what.search, stop);
}

} // namespace tuckwright::cli
