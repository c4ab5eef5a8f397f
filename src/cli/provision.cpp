// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/provision.hpp"

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
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
    if (!options.json.empty() && options.json != dash) {
        if (const auto problem = cannot_write(options.json, options.kit)) {
            problems.push_back(*problem);
        }
    }
    if (!problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    const Provision needs = tuckwright::provision(*kit->trip);
    if (options.json == dash) {
        return print(provision_json(needs, *kit)) ? done : wrong_input;
    }
    if (!options.json.empty()) {
        if (const auto problem = write_file(options.json, provision_json(needs, *kit))) {
            tell({*problem});
            return wrong_input;
        }
    }
    return print(provision_text(needs, *kit)) ? done : wrong_input;
}

} // namespace tuckwright::cli
