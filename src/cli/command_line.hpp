// SPDX-License-Identifier: GPL-3.0-or-later
/// The command line as data, for whatever tells of it: the manual page, and what shells complete.
#pragma once
#include <string>
#include <vector>

namespace CLI
{
class App;
}

namespace tuckwright::cli
{

/// An option, or a word that stands by itself.
struct Argument {
    std::string name;               ///< "--json", "KIT.yaml"
    std::string letter = {};        ///< "-q", where it has a short name
    std::string value = {};         ///< what follows the option: "FILE"; empty for a switch
    std::string help = {};
    std::vector<std::string> words = {}; ///< those that the value may be, where it is one of a few
    bool by_itself = false;         ///< no option, but a word by itself
    bool needed = false;
    bool several = false;           ///< a word by itself that may be several

    bool names_folder() const { return value == "FOLDER"; }
    /// Whether its value, or it itself, is the path of a file.
    bool names_file() const;
};

struct CommandHelp {
    std::string name, help;
    std::vector<Argument> arguments;
};

struct CommandLine {
    std::string name, help;
    std::vector<Argument> arguments; ///< without a command
    std::vector<CommandHelp> commands;
};

CommandLine command_line_of(const CLI::App& app);

/// The words of which a value is one, by a help text that begins with them: "quick, normal (the default) or thorough".
std::vector<std::string> words_in(const std::string& help);

/// The manual page, as roff: commands, options, these examples and exit statuses.
std::string manual_page(const CommandLine& line, const std::string& examples, const std::string& version);

/// Shells whose completion is known: "bash", "zsh", "fish".
std::vector<std::string> known_shells();

/// A script with which the shell completes commands, options, words and files. Requires: a known shell.
std::string completion_script(const CommandLine& line, const std::string& shell);

/// The lines of the examples that call this command, with a heading; empty where none does.
std::string examples_of(const std::string& command, const std::string& examples);

} // namespace tuckwright::cli
