// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/kit_file.hpp"

#include "cli/input_text.hpp"
#include "cli/kit_or_bundle.hpp"
#include "cli/mix_ups.hpp"
#include "tuckwright/provision.hpp"

namespace tuckwright::cli
{

namespace
{

std::string name_of(const std::string& path) { return path == dash ? standard_input : path; }

/// The text of a file that may be a kit.
Result<std::string> kit_text(const std::string& path)
{
    constexpr std::size_t most = std::size_t{4} * 1024 * 1024; // the reader draws its own line, further down
    auto text = input_text(path, most);
    if (text && looks_like_bundle(*text)) {
        return Problem{name_of(path), 0, 0, "this is a saved bundle, not a kit", "give it to verify, card, draw, look, room or size"};
    }
    if (text) {
        if (const auto problem = another_answer(*text, name_of(path))) {
            return *problem;
        }
        if (const auto problem = another_file(*text, name_of(path), a_kit)) {
            return *problem;
        }
    }
    return text;
}

/// A kit, or a kit both ways, with the vessels of its trip; `path` stands for the file in problems.
template <class Kits> Result<Kits> provisioned(Kits kits, const std::string& path)
{
    auto done = with_provisions(std::move(kits));
    if (done) {
        return done;
    }
    std::vector<Problem> problems = done.problems();
    for (Problem& problem : problems) {
        problem.file = name_of(path);
    }
    return problems;
}

/// Both ways, with the vessels of the trip, from the text of that file.
Result<BothWays> provisioned_both(const std::string& text, const std::string& path, const std::vector<Taken>& chosen)
{
    auto written = read_both_ways_text(text, name_of(path), chosen);
    return written ? provisioned(std::move(written).value(), path) : written;
}

Result<Kit> provisioned_kit(const std::string& text, const std::string& path, const std::vector<Taken>& chosen,
                            bool way_back)
{
    if (way_back) {
        auto both = provisioned_both(text, path, chosen);
        return both ? Result<Kit>(std::move(both).value().back) : Result<Kit>(both.problems());
    }
    auto written = read_kit_text(text, name_of(path), chosen);
    return written ? provisioned(std::move(written).value(), path) : written;
}

} // namespace

Result<KitOrBundle> kit_or_bundle(const std::string& path, const std::vector<Taken>& chosen, bool way_back)
{
    constexpr std::size_t most = std::size_t{64} * 1024 * 1024; // as much as a bundle's JSON may be
    const auto text = input_text(path, most);
    if (!text) {
        return text.problems();
    }
    if (looks_like_bundle(*text)) {
        if (way_back) {
            return Problem{name_of(path), 0, 0, "a saved bundle is packed already, for one way or the other",
                           "leave out --way-back, or give the kit"};
        }
        if (!chosen.empty()) {
            return Problem{name_of(path), 0, 0, "a saved bundle is packed already, with all that was chosen",
                           "leave out --choose, or give the kit"};
        }
        auto saved = read_saved(*text, name_of(path));
        return saved ? Result<KitOrBundle>(KitOrBundle{std::nullopt, std::move(saved).value()})
                     : Result<KitOrBundle>(saved.problems());
    }
    if (const auto problem = another_answer(*text, name_of(path))) {
        return *problem;
    }
    if (const auto problem = another_file(*text, name_of(path), a_kit_or_bundle)) {
        return *problem;
    }
    const auto kit = provisioned_kit(*text, path, chosen, way_back);
    return kit ? Result<KitOrBundle>(KitOrBundle{*kit, std::nullopt})
               : Result<KitOrBundle>(kit.problems());
}

Result<Kit> kit_as_written(const std::string& path, const std::vector<Taken>& chosen)
{
    const auto text = kit_text(path);
    return text ? read_kit_text(*text, name_of(path), chosen) : Result<Kit>(text.problems());
}

Result<Kit> kit_file(const std::string& path, const std::vector<Taken>& chosen, bool way_back)
{
    const auto text = kit_text(path);
    return text ? provisioned_kit(*text, path, chosen, way_back) : Result<Kit>(text.problems());
}

Result<BothWays> both_ways_file(const std::string& path, const std::vector<Taken>& chosen)
{
    const auto text = kit_text(path);
    return text ? provisioned_both(*text, path, chosen) : Result<BothWays>(text.problems());
}

Result<std::vector<ChosenKit>> kits_file(const std::string& path)
{
    const auto text = kit_text(path);
    if (!text) {
        return text.problems();
    }
    auto written = read_kits_text(*text, name_of(path));
    if (!written) {
        return written;
    }
    std::vector<ChosenKit> kits;
    for (ChosenKit& chosen : std::move(written).value()) {
        auto kit = provisioned(std::move(chosen.kit), path);
        if (!kit) {
            return kit.problems();
        }
        kits.push_back({std::move(kit).value(), std::move(chosen.taken)});
    }
    return kits;
}

} // namespace tuckwright::cli
