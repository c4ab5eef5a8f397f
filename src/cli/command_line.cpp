// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/command_line.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <sstream>

namespace tuckwright::cli
{

namespace
{

Argument argument_of(const CLI::Option& option)
{
    Argument argument;
    argument.by_itself = option.get_positional();
    argument.name = argument.by_itself ? option.get_name() : option.get_name(false, false);
    argument.letter = option.get_snames().empty() ? "" : "-" + option.get_snames().front();
    argument.help = option.get_description();
    argument.needed = option.get_required();
    argument.several = argument.by_itself && option.get_expected_max() > 1;
    if (!argument.by_itself && option.get_items_expected_max() > 0) {
        argument.value = option.get_type_name();
    }
    if (option.get_type_name() == "WORD") {
        argument.words = words_in(argument.help);
    }
    return argument;
}

std::vector<Argument> arguments_of(const CLI::App& app)
{
    std::vector<Argument> arguments;
    for (const CLI::Option* option : app.get_options([](const CLI::Option*) { return true; })) {
        arguments.push_back(argument_of(*option));
    }
    std::stable_partition(arguments.begin(), arguments.end(), [](const Argument& one) { return one.by_itself; });
    return arguments;
}

void replace_all(std::string& text, const std::string& part, const std::string& by)
{
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + by.size())) {
        text.replace(at, part.size(), by);
    }
}

} // namespace

bool Argument::names_file() const
{
    const std::string& kind = by_itself ? name : value;
    return kind == "FILE" || kind.find('.') != std::string::npos;
}

std::vector<std::string> words_in(const std::string& help)
{
    std::string text = help;
    replace_all(text, " (the default)", "");
    replace_all(text, ", or ", ", ");
    replace_all(text, " or ", ", ");
    std::vector<std::string> words;
    for (std::size_t start = 0; start < text.size();) {
        const auto end = std::min(text.find(", ", start), text.size());
        const std::string word = text.substr(start, end - start);
        if (word.find(' ') != std::string::npos) {
            break;
        }
        words.push_back(word);
        start = end + 2;
    }
    return words;
}

std::string examples_of(const std::string& command, const std::string& examples)
{
    std::string found;
    std::istringstream lines(examples);
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("  tuckwright " + command + " ")) {
            found += "\n" + line;
        }
    }
    return found.empty() ? found : "Examples:" + found;
}

CommandLine command_line_of(const CLI::App& app)
{
    CommandLine line{app.get_name(), app.get_description(), arguments_of(app), {}};
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        line.commands.push_back({command->get_name(), command->get_description(), arguments_of(*command)});
    }
    return line;
}

} // namespace tuckwright::cli
