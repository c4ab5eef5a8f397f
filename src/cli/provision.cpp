// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/provision.hpp"

#include "cli/answer.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "tuckwright/provision_report.hpp"

namespace tuckwright::cli {

int provision(const ProvisionOptions& options)
{
    const auto kit = kit_as_written(options.kit, options.chosen);
    std::vector<Problem> problems = kit ? std::vector<Problem>() : kit.problems();
    if (kit && !kit->trip) {
        problems.push_back({options.kit == dash ? standard_input : options.kit, 0, 0, "this kit has no 'trip'",
                            "say who goes, for how long, and what is burnt: README.md shows how, and "
                            "kits/porridge-moor.yaml has one"});
    }
    check_output(options.json, options.kit, problems);
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    const Provision needs = tuckwright::provision(*kit->trip);
    const bool written = write_answer(options.json, [&] { return provision_json(needs, *kit); }, provision_text(needs, *kit));
    return written ? done : wrong_input;
}

} // namespace tuckwright::cli
