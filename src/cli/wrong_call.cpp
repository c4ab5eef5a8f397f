// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/wrong_call.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"

namespace tuckwright::cli
{

namespace
{

std::vector<std::string> command_words(const CLI::App& app)
{
    std::vector<std::string> words;
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        words.push_back(command->get_name());
    }
    return words;
}

/// The command that was called, or the program where there was none.
const CLI::App& called(const CLI::App& app)
{
    const auto given = app.get_subcommands();
    return given.empty() ? app : *given.front();
}

/// Which arguments were not expected, and what may have been meant.
std::string about_extras(const CLI::App& app)
{
    const CLI::App& command = called(app);
    const std::string first = app.remaining(true).front();
    std::vector<std::string> options;
    bool takes_files = &command == &app;
    for (const CLI::Option* option : command.get_options([](const CLI::Option*) { return true; })) {
        if (option->nonpositional()) {
            options.push_back(option->get_name());
        }
        takes_files = takes_files || (option->get_positional() && option->get_type_name() != "WORD");
        if (first.starts_with('-') && option->check_name(first) && &command != &app) { // stands before the command
            return fmt::format("give {} behind {}", first, command.get_name());
        }
    }
    if (!takes_files && !first.starts_with('-')) {
        return fmt::format("{} is one word too many for {}", first, command.get_name());
    }
    return about_unexpected(app.remaining(true), &command == &app ? "" : command.get_name(), options, command_words(app));
}

/// What the command cannot do without, and was not given.
std::string about_missing(const CLI::App& command)
{
    std::string text;
    for (const CLI::Option* option : command.get_options([](const CLI::Option*) { return true; })) {
        if (option->get_required() && option->count() == 0) {
            const std::string value = option->get_positional() ? "" : " " + option->get_type_name();
            text += fmt::format("{}{} needs {}{}: {}", text.empty() ? "" : "; and ", command.get_name(), option->get_name(),
                                value, option->get_description());
        }
    }
    return text;
}

/// An option without its value, or with one that it does not take.
std::string about_value(const CLI::App& command, const std::string& said)
{
    const std::string name = said.substr(0, said.find_first_of(": "));
    if (said.find("flag override") != std::string::npos) {
        return (name.starts_with('-') ? name : "--" + name) + " takes no value: it is given, or not";
    }
    const auto found = command.get_options([&](const CLI::Option* o) { return o->check_name(name); });
    return found.empty() ? said
                         : fmt::format("{} needs {} behind it: {}", name, found.front()->get_type_name(),
                                       found.front()->get_description());
}

} // namespace

bool knows_command(const CLI::App& app, const std::string& word)
{
    const auto words = command_words(app);
    if (std::find(words.begin(), words.end(), word) != words.end()) {
        return true;
    }
    tell({{"tuckwright", 0, 0, about_unexpected({word}, "", {}, words), ""}});
    return false;
}

void tell_wrong_call(const CLI::App& app, const CLI::ParseError& error)
{
    const CLI::App& command = called(app);
    const std::string ask = &command == &app ? "'tuckwright --help' tells more"
                                             : fmt::format("'tuckwright help {}' tells more", command.get_name());
    const bool is_extra = dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr;
    std::string what = error.what();
    if (is_extra) {
        what = about_extras(app);
    } else if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
        what = about_missing(command);
    } else if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
        what = about_value(command, what);
    }
    tell({{"tuckwright", 0, 0, what.empty() ? error.what() : what, is_extra ? "" : ask}});
}

} // namespace tuckwright::cli
