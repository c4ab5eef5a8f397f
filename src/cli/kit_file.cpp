// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/kit_file.hpp"

#include "cli/input_text.hpp"
#include "cli/mix_ups.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/provision.hpp"

namespace tuckwright::cli
{

Result<Kit> kit_as_written(const std::string& path)
{
    constexpr std::size_t most = std::size_t{4} * 1024 * 1024; // the reader draws its own line, further down
    const auto text = input_text(path, most);
    if (!text) {
        return text.problems();
    }
    const std::string name = path == dash ? standard_input : path;
    if (looks_like_bundle(*text)) {
        return Problem{name, 0, 0, "this is a saved bundle, not a kit", "give it to 'tuckwright verify'"};
    }
    return read_kit_text(*text, name);
}

Result<Kit> kit_file(const std::string& path)
{
    auto written = kit_as_written(path);
    if (!written) {
        return written;
    }
    const auto kit = with_provisions(std::move(written).value());
    if (kit) {
        return kit;
    }
    std::vector<Problem> problems = kit.problems();
    for (Problem& problem : problems) {
        problem.file = path == dash ? standard_input : path;
    }
    return problems;
}

} // namespace tuckwright::cli
