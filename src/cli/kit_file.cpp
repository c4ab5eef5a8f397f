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
        return Problem{name_of(path), 0, 0, "this is a saved bundle, not a kit", "give it to 'tuckwright verify'"};
    }
    return text;
}

/// The kit with the vessels of its trip; `path` stands for the file in problems.
Result<Kit> provisioned(Kit kit, const std::string& path)
{
    auto done = with_provisions(std::move(kit));
    if (done) {
        return done;
    }
    std::vector<Problem> problems = done.problems();
    for (Problem& problem : problems) {
        problem.file = name_of(path);
    }
    return problems;
}

} // namespace

Result<KitOrBundle> kit_or_bundle(const std::string& path, const std::vector<Taken>& chosen)
{
    constexpr std::size_t most = std::size_t{64} * 1024 * 1024; // as much as a bundle's JSON may be
    const auto text = input_text(path, most);
    if (!text) {
        return text.problems();
    }
    if (looks_like_bundle(*text)) {
        auto saved = read_saved(*text, name_of(path));
        return saved ? Result<KitOrBundle>(KitOrBundle{std::nullopt, std::move(saved).value()})
                     : Result<KitOrBundle>(saved.problems());
    }
    auto written = read_kit_text(*text, name_of(path), chosen);
    auto kit = written ? provisioned(std::move(written).value(), path) : written;
    return kit ? Result<KitOrBundle>(KitOrBundle{std::move(kit).value(), std::nullopt})
               : Result<KitOrBundle>(kit.problems());
}

Result<Kit> kit_as_written(const std::string& path, const std::vector<Taken>& chosen)
{
    const auto text = kit_text(path);
    return text ? read_kit_text(*text, name_of(path), chosen) : Result<Kit>(text.problems());
}

Result<Kit> kit_file(const std::string& path, const std::vector<Taken>& chosen)
{
    auto written = kit_as_written(path, chosen);
    return written ? provisioned(std::move(written).value(), path) : written;
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
