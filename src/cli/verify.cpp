// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/verify.hpp"

#include <fmt/format.h>

#include <cstdio>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/messages.hpp"
#include "report/words.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

int verify(const std::string& path)
{
    constexpr std::size_t most = std::size_t{64} * 1024 * 1024; // as much as a bundle's JSON may be
    const auto text = input_text(path, most);
    if (!text) {
        tell(text.problems());
        return wrong_input;
    }
    const std::string name = path == dash ? standard_input : path;
    const auto bundle = from_json(*text, name);
    if (!bundle) {
        tell(bundle.problems());
        return wrong_input;
    }
    if (!has_bundle(bundle->status)) {
        tell({{name, 0, 0, fmt::format("holds no bundle: its status is {}", to_string(bundle->status)), ""}});
        return no_bundle;
    }
    if (const auto objections = check(*bundle); !objections.empty()) {
        const auto& first = objections.front();
        tell({{name, 0, 0, fmt::format("refused ({}): {}", first.rule, first.what), ""}});
        return no_bundle;
    }
    const std::size_t items = bundle->items.size();
    const auto words = fmt::format("{}: {}, {}, {} item{}, every one in its place, and every step possible",
                                   bundle->kit, report::envelope_in_words(bundle->envelope),
                                   report::volume_in_words(volume_ml(bundle->envelope), report::Rounding::up), items,
                                   items == 1 ? "" : "s");
    const bool printed = print(report::wrapped("verified: ", words) +
                               "(The lower bound is taken as it is written; verify does not work it out anew.)\n");
    return printed ? done : wrong_input;
}

} // namespace tuckwright::cli
