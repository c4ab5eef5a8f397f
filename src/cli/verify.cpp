// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/verify.hpp"

#include <fmt/format.h>

#include <cstdio>
#include <optional>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/kit_file.hpp"
#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"
#include "report/words.hpp"
#include "tuckwright/check_code.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright::cli
{

namespace {

/// Says that the bundle is not what it claims to be, and by which rule.
int refuse(const std::string& name, const std::string& rule, const std::string& what, const std::string& remedy = "")
{
    tell({{name, 0, 0, fmt::format("refused ({}): {}", rule, what), remedy}});
    return no_bundle;
}

/// Whether the bundle is one of that kit; says what differs first.
int match(const Bundle& bundle, const Kit& kit, const std::string& name)
{
    if (kit.worst_case && !bundle.worst_case) {
        return refuse(name, "kit", "the kit asks for the worst case, but this is packed for the sizes as measured");
    }
    const auto objections = check_against(bundle, bundle.worst_case ? worst_case(kit) : kit);
    if (objections.empty()) {
        return done;
    }
    if (bundle.kit != kit.name) {
        return refuse(name, objections.front().rule,
                      fmt::format("this is a bundle of '{}', but the kit is '{}'", bundle.kit, kit.name),
                      "give the kit that it was packed from; a bundle of the way back needs --way-back, one of the way out "
                      "goes without");
    }
    return refuse(name, objections.front().rule, objections.front().what);
}

/// What is wrong with the arguments, by themselves and beside one another.
std::vector<Problem> wrong_arguments(const VerifyOptions& options)
{
    std::vector<Problem> problems;
    if (options.bundle == dash && options.kit == dash) {
        problems.push_back(
            {"tuckwright", 0, 0, "the bundle and the kit cannot both come from standard input", "name a file"});
    }
    if (options.kit.empty() && !options.chosen.empty()) {
        problems.push_back({"tuckwright", 0, 0, "--choose is about a kit's choices, but no kit is given",
                            "name it with --kit"});
    }
    if (options.kit.empty() && options.way_back) {
        problems.push_back({"tuckwright", 0, 0, "--way-back is about a kit, but none is given", "name it with --kit"});
    }
    if (options.code && !code_as_written(*options.code)) {
        problems.push_back({"tuckwright", 0, 0, "--code '" + *options.code + "' is no code of a card",
                            "type the seven letters and digits after 'Code' at the foot of the card, such as 7K3F-Q2W"});
    }
    return problems;
}

/// Whether the bundle is the one on the card.
int compare_code(const Bundle& bundle, const std::string& typed, const std::string& name)
{
    const std::string wanted = *code_as_written(typed), code = check_code(bundle);
    return wanted == code ? done
                          : refuse(name, "code",
                                   fmt::format("the card with code {} is about another bundle or another packing; this one's "
                                               "code is {}",
                                               wanted, code));
}

/// What has been proved.
std::string verified(const Proved& proved, bool of_kit, bool of_card)
{
    const Bundle& bundle = proved.bundle;
    const std::size_t items = bundle.items.size();
    const Shape outer = outer_envelope(bundle);
    const auto words =
        fmt::format("{}: {}, {}, {} item{}, every one in its place, {}every step possible{}{}", bundle.kit,
                    report::envelope_in_words(outer),
                    report::volume_in_words(volume_ml(outer), report::Rounding::up), items, items == 1 ? "" : "s",
                    of_kit ? "" : "and ", of_kit ? ", and all as the kit asks for it" : "",
                    of_card ? "; it is the one on the card with code " + check_code(bundle) : "");
    return report::wrapped("verified: ", words) +
           "(The lower bound is taken as it is written; verify does not work it out anew.)\n" +
           (proved.was_reworded ? "(Its sentences are not those of this version of tuckwright; it writes them anew.)\n" : "");
}

/// The first thing that the file says against itself or the rules; nothing where all is proved.
int refuse_wrong(const SavedBundle& saved, const std::string& name)
{
    const Bundle& bundle = saved.bundle;
    if (!saved.contradictions.empty()) {
        return refuse(name, "figure", saved.contradictions.front().what);
    }
    if (!has_bundle(bundle.status)) {
        tell({{name, 0, 0, fmt::format("holds no bundle: its status is {}", to_string(bundle.status)), ""}});
        return no_bundle;
    }
    if (const auto objections = check(bundle); !objections.empty()) {
        return refuse(name, objections.front().rule, objections.front().what);
    }
    if (const auto wrong = wrong_words(bundle, name); !wrong.empty()) {
        return refuse(name, "text", wrong.front().what);
    }
    if (const auto wrong = wrong_figures(bundle, name); !wrong.empty()) {
        return refuse(name, "figure", wrong.front().what);
    }
    return done;
}

} // namespace

Proved prove(const SavedBundle& saved, const std::string& name)
{
    const int outcome = refuse_wrong(saved, name);
    return outcome == done ? Proved{with_words_anew(saved.bundle), done,
                                    saved.cover_words_differ || !has_words_of_today(saved.bundle)}
                           : Proved{saved.bundle, outcome, false};
}

int verify(const VerifyOptions& options)
{
    if (const auto problems = wrong_arguments(options); !problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    constexpr std::size_t most = std::size_t{64} * 1024 * 1024; // as much as a bundle's JSON may be
    const auto text = input_text(options.bundle, most);
    if (!text) {
        tell(text.problems());
        return wrong_input;
    }
    const std::string name = options.bundle == dash ? standard_input : options.bundle;
    if (looks_like_kit(*text)) {
        tell({{name, 0, 0, "this looks like a kit, not like a saved bundle", "give it to 'tuckwright pack'"}});
        return wrong_input;
    }
    if (const auto problem = another_answer(*text, name)) {
        tell({*problem});
        return wrong_input;
    }
    if (const auto problem = another_file(*text, name, a_bundle)) {
        tell({*problem});
        return wrong_input;
    }
    const auto saved = read_saved(*text, name);
    if (!saved) {
        tell(saved.problems());
        return wrong_input;
    }
    std::optional<Kit> kit;
    if (!options.kit.empty()) {
        const auto read = kit_file(options.kit, options.chosen, options.way_back);
        if (!read) {
            tell(read.problems());
            return wrong_input;
        }
        kit = *read;
    }
    const Proved proved = prove(*saved, name);
    if (const int outcome = proved.outcome != done || !kit ? proved.outcome : match(proved.bundle, *kit, name);
        outcome != done) {
        return outcome;
    }
    if (options.code) {
        if (const int outcome = compare_code(proved.bundle, *options.code, name); outcome != done) {
            return outcome;
        }
    }
    return say(verified(proved, kit.has_value(), options.code.has_value())) ? done : wrong_input;
}

} // namespace tuckwright::cli
