// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/answer.hpp"

#include <filesystem>
#include <optional>

#include "cli/input_text.hpp"
#include "cli/messages.hpp"
#include "cli/output_file.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

namespace
{

namespace fs = std::filesystem;

/// The shelf that the kit file names, if that is what the source is.
std::optional<std::string> shelf_of(const std::string& source)
{
    constexpr std::size_t most = std::size_t{4} * 1024 * 1024; // larger files are no kits
    const auto text = source == dash ? Result<std::string>(Problem{}) : input_text(source, most);
    return text ? shelf_named_in(*text, source) : std::nullopt;
}

bool is_same_file(const std::string& a, const std::string& b)
{
    std::error_code error;
    return fs::weakly_canonical(fs::absolute(a), error) == fs::weakly_canonical(fs::absolute(b), error);
}

} // namespace

void check_output(const std::string& path, const std::string& source, std::vector<Problem>& problems)
{
    if (path.empty() || path == dash) {
        return;
    }
    std::error_code error;
    const auto shelf = shelf_of(source);
    if (shelf && fs::equivalent(path, *shelf, error)) {
        problems.push_back({path, 0, 0, "is the shelf that the kit takes things from, and would be lost",
                            "name another file for the output"});
    } else if (const auto problem = cannot_write(path, source)) {
        problems.push_back(*problem);
    }
}

void check_outputs(const std::vector<std::string>& paths, const std::string& source, std::vector<Problem>& problems)
{
    bool is_twice = false;
    for (std::size_t i = 0; i < paths.size(); ++i) {
        check_output(paths[i], source, problems);
        for (std::size_t j = 0; j < i && !paths[i].empty(); ++j) {
            is_twice = is_twice || (!paths[j].empty() && is_same_file(paths[i], paths[j]));
        }
    }
    if (is_twice) {
        problems.push_back({"tuckwright", 0, 0, "two answers cannot go to the same file", "name a file for each"});
    }
}

void check_saved(const std::string& option, const std::string& path, std::vector<Problem>& problems)
{
    if (path == dash) {
        problems.push_back({"tuckwright", 0, 0, option + " needs the name of a file",
                            "--json - writes the answer with its bundles to standard output"});
    }
}

bool save_bundle(const std::string& path, const Bundle& bundle)
{
    const auto problem = path.empty() ? std::nullopt : write_file(path, to_json(bundle));
    if (problem) {
        tell({*problem});
    }
    return !problem;
}

bool write_answer(const std::string& json_path, const std::function<std::string()>& json, const std::string& text)
{
    if (json_path == dash) {
        return print(json());
    }
    if (!json_path.empty()) {
        if (const auto problem = write_file(json_path, json())) {
            tell({*problem});
            return false;
        }
    }
    return say(text);
}

} // namespace tuckwright::cli
