// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/room.hpp"

#include <optional>

#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/interrupt.hpp"
#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"
#include "cli/output_file.hpp"
#include "cli/verify.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright::cli
{

namespace
{

/// What the file is, once it could be read.
struct Source {
    std::optional<Kit> kit;
    std::optional<SavedBundle> saved;
};

Result<Source> source_of(const std::string& path, const std::string& name, const std::vector<Taken>& chosen)
{
    constexpr std::size_t most = std::size_t{64} * 1024 * 1024; // as much as a bundle's JSON may be
    const auto text = input_text(path, most);
    if (!text) {
        return text.problems();
    }
    if (looks_like_bundle(*text)) {
        auto saved = read_saved(*text, name);
        return saved ? Result<Source>(Source{std::nullopt, *saved}) : Result<Source>(saved.problems());
    }
    auto kit = read_kit_text(*text, name, chosen);
    return kit ? Result<Source>(Source{*kit, std::nullopt}) : Result<Source>(kit.problems());
}

/// All that is wrong with what was given, before anything is searched.
std::vector<Problem> problems_of(const RoomCommandOptions& options, const Result<Source>& source,
                                 const std::string& name)
{
    std::vector<Problem> problems = source ? std::vector<Problem>() : source.problems();
    if (source && source->saved && options.worst_case) {
        problems.push_back({name, 0, 0, "a saved bundle is packed already, for the worst case or not",
                            "leave out --worst-case, or give the kit"});
    }
    if (!options.json.empty() && options.json != dash) {
        if (const auto problem = cannot_write(options.json, options.file)) {
            problems.push_back(*problem);
        }
    }
    return problems;
}

/// Whether all that was asked for has been written.
bool write(const RoomCommandOptions& options, const Bundle& bundle, const RoomAnswer& answer)
{
    const std::string text = has_bundle(bundle.status) ? room_text(bundle, answer) : text_report(bundle);
    if (options.json == dash) {
        return print(room_json(bundle, answer));
    }
    if (!options.json.empty()) {
        if (const auto problem = write_file(options.json, room_json(bundle, answer))) {
            tell({*problem});
            return false;
        }
    }
    return print(text);
}

} // namespace

int room(const RoomCommandOptions& options)
{
    const std::string name = options.file == dash ? standard_input : options.file;
    const auto source = source_of(options.file, name, options.chosen);
    if (const auto problems = problems_of(options, source, name); !problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    const auto& stop = watch_for_interrupts();
    Bundle bundle;
    if (source->saved) {
        if (const int outcome = prove(*source->saved, name); outcome != done) {
            return outcome;
        }
        bundle = source->saved->bundle;
    } else {
        Kit kit = *source->kit;
        kit.worst_case |= options.worst_case;
        SolveOptions search = options.search;
        search.stop = &stop;
        bundle = solve(kit, search);
    }
    const bool is_there = has_bundle(bundle.status);
    RoomAnswer answer;
    if (is_there) {
        answer = room_left(bundle, {options.search.effort, options.search.threads, &stop});
    }
    const bool was_interrupted = stop;
    if (!write(options, bundle, answer)) {
        return wrong_input;
    }
    return was_interrupted ? interrupted : is_there ? done : no_bundle;
}

} // namespace tuckwright::cli
