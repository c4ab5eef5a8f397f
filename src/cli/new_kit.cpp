// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/new_kit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <vector>

#include "cli/ask_kit.hpp"
#include "cli/exit_code.hpp"
#include "cli/input_text.hpp"
#include "cli/messages.hpp"
#include "cli/new_kit_texts.hpp"
#include "cli/output_file.hpp"
#include "cli/questions.hpp"
#include "report/words.hpp"

namespace tuckwright::cli
{

namespace
{

namespace fs = std::filesystem;

constexpr const char* schema_name = "kit.schema.json";

/// "soup-for-two.yaml" is called "Soup for two" if no name is given.
std::string name_of(const NewKitOptions& options)
{
    if (!options.name.empty()) {
        return options.name;
    }
    std::string name = options.file == dash ? "A kit of mine" : fs::path(options.file).stem().string();
    std::replace_if(name.begin(), name.end(), [](char c) { return c == '-' || c == '_'; }, ' ');
    if (!name.empty() && name.front() >= 'a' && name.front() <= 'z') {
        name.front() = static_cast<char>(name.front() - 'a' + 'A');
    }
    return name;
}

/// The file, and what is in it, for people.
struct NewKit {
    std::string text, things;
};

NewKit from_template(const NewKitOptions& options)
{
    std::string text(new_kit_template());
    const std::string mark = "NAME OF THE KIT";
    text.replace(text.find(mark), mark.size(), yaml_text(name_of(options)));
    return {text, "a pot with its lid, a cup, a tin and a spoon, to be replaced by your things"};
}

/// Of what somebody tells.
NewKit from_answers(const NewKitOptions& options)
{
    const AskedKit kit = ask_for_kit(name_of(options));
    std::string names;
    for (const AskedItem& item : kit.items) {
        names += (names.empty() ? "" : ", ") + report::printable(item.name);
    }
    return {kit_text(kit), names};
}

std::string schema_path(const NewKitOptions& options)
{
    return (fs::path(options.file).parent_path() / schema_name).string();
}

std::vector<Problem> problems_of(const NewKitOptions& options)
{
    std::vector<Problem> problems;
    std::error_code error;
    if (options.file.empty()) {
        return {{"tuckwright", 0, 0, "the path of the file is empty", "name a file, or - for standard output"}};
    }
    if (options.file == dash) {
        if (options.for_editors) {
            problems.push_back({"tuckwright", 0, 0, "--schema writes a file beside the kit, but the kit goes to standard output",
                                "name a file for the kit, or leave out --schema"});
        }
        return problems;
    }
    if (fs::exists(options.file, error)) {
        problems.push_back({options.file, 0, 0, "is there already, and would be lost", "name a file that is not there yet"});
    } else if (const auto problem = cannot_write(options.file, "")) {
        problems.push_back(*problem);
    }
    if (const auto problem = options.for_editors ? cannot_write(schema_path(options), "") : std::nullopt) {
        problems.push_back(*problem);
    }
    return problems;
}

/// Unless meanwhile, while somebody answered, the file has come to be there.
int write_new(const NewKitOptions& options, const NewKit& kit)
{
    if (options.file == dash) {
        return print(kit.text) ? done : wrong_input;
    }
    if (const auto problems = problems_of(options); !problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    auto problem = options.for_editors ? write_file(schema_path(options), kit_schema()) : std::nullopt;
    problem = problem ? problem : write_file(options.file, kit.text);
    if (problem) {
        tell({*problem});
        return wrong_input;
    }
    const std::string file = report::printable(options.file);
    return say(fmt::format("{} is written: {}.\nChange it with any text editor; then: tuckwright pack {}\n", file, kit.things, file))
               ? done
               : wrong_input;
}

} // namespace

int new_kit(const NewKitOptions& options)
{
    if (const auto problems = problems_of(options); !problems.empty()) {
        tell(problems);
        return wrong_input;
    }
    NewKit kit;
    try {
        kit = options.ask ? from_answers(options) : from_template(options);
    } catch (const AnswersEnded& ended) {
        tell({{standard_input, 0, 0, ended.what(), "nothing is written; start again, or leave out --ask and change the file"}});
        return wrong_input;
    }
    kit.text = (options.for_editors ? fmt::format("# yaml-language-server: $schema={}\n", schema_name) : "") + kit.text;
    return write_new(options, kit);
}

} // namespace tuckwright::cli
