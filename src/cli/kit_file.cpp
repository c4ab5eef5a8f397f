// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/kit_file.hpp"

#include "cli/input_text.hpp"
#include "cli/mix_ups.hpp"

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

} // namespace

Result<Kit> kit_file(const std::string& path, const std::vector<Taken>& chosen)
{
    const auto text = kit_text(path);
    return text ? read_kit_text(*text, name_of(path), chosen) : Result<Kit>(text.problems());
}

Result<std::vector<ChosenKit>> kits_file(const std::string& path)
{
    const auto text = kit_text(path);
    return text ? read_kits_text(*text, name_of(path)) : Result<std::vector<ChosenKit>>(text.problems());
}

} // namespace tuckwright::cli
