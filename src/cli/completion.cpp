// SPDX-License-Identifier: GPL-3.0-or-later
/// Completion for shells: commands, options, words of which a value is one, files and folders.
#include <fmt/format.h>

#include <algorithm>

#include "cli/command_line.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::cli
{

namespace
{

std::string joined(const std::vector<std::string>& words)
{
    std::string text;
    for (const auto& word : words) {
        text += (text.empty() ? "" : " ") + word;
    }
    return text;
}

/// Within single quotes of any of the shells.
std::string quoted(const std::string& text)
{
    std::string result = "'";
    for (const char c : text) {
        result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return result + "'";
}

std::vector<std::string> names_of(const std::vector<CommandHelp>& commands)
{
    std::vector<std::string> names;
    for (const CommandHelp& command : commands) {
        names.push_back(command.name);
    }
    return names;
}

std::vector<std::string> options_of(const std::vector<Argument>& arguments)
{
    std::vector<std::string> options;
    for (const Argument& argument : arguments) {
        if (!argument.by_itself) {
            options.push_back(argument.name);
        }
    }
    return options;
}

/// The words that the word by itself may be, where it is one of a few.
std::vector<std::string> own_words(const CommandHelp& command)
{
    for (const Argument& argument : command.arguments) {
        if (argument.by_itself) {
            return argument.words;
        }
    }
    return {};
}

bool takes_files(const CommandHelp& command)
{
    return std::any_of(command.arguments.begin(), command.arguments.end(),
                       [](const Argument& argument) { return argument.by_itself && argument.names_file(); });
}

/// How bash completes a value: a call of one of the script's functions.
std::string bash_value(const std::vector<std::string>& words, bool is_folder, bool is_file)
{
    return !words.empty() ? "_tuckwright_words " + quoted(joined(words))
           : is_folder    ? "_tuckwright_paths -d"
           : is_file      ? "_tuckwright_paths -f"
                          : ":";
}

std::string bash(const CommandLine& line)
{
    std::string values, options, others;
    for (const CommandHelp& command : line.commands) {
        for (const Argument& argument : command.arguments) {
            if (!argument.by_itself && !argument.value.empty()) {
                values += fmt::format("    {}/{}) {}; return;;\n", command.name, argument.name,
                                      bash_value(argument.words, argument.names_folder(), argument.names_file()));
            }
        }
        options += fmt::format("    {}/-*) _tuckwright_words {};;\n", command.name,
                               quoted(joined(options_of(command.arguments))));
        others += fmt::format("    {}/*) {};;\n", command.name, bash_value(own_words(command), false, takes_files(command)));
    }
    return fmt::format(R"(# bash completion for tuckwright
_tuckwright_words() {{ mapfile -t COMPREPLY < <(compgen -W "$1" -- "$word"); }}
_tuckwright_paths() {{ compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen "$1" -- "$word"); }}
_tuckwright() {{
  local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} command=${{COMP_WORDS[1]}}
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then _tuckwright_words {}; return; fi
  case $command/$before in
{}  esac
  case $command/$word in
{}{}  esac
}}
complete -F _tuckwright tuckwright
)",
                       quoted(joined(names_of(line.commands)) + " " + joined(options_of(line.arguments))), values, options,
                       others);
}

/// Text within a description of zsh's _arguments.
std::string zsh_text(const std::string& text)
{
    std::string result;
    for (const char c : text) {
        const bool means_something = c == '[' || c == ']' || c == ':' || c == '\\';
        result += means_something ? std::string("\\") + c : std::string(1, c);
    }
    return result;
}

std::string zsh_value(const Argument& argument)
{
    return !argument.words.empty()      ? "(" + joined(argument.words) + ")"
           : argument.names_folder()    ? "_files -/"
           : argument.names_file()      ? "_files"
                                        : " ";
}

std::string zsh_argument(const Argument& argument)
{
    if (argument.by_itself) {
        return quoted(fmt::format("{}:{}:{}", argument.several ? "*" : "1", zsh_text(argument.name), zsh_value(argument)));
    }
    const std::string value =
        argument.value.empty() ? "" : fmt::format(":{}:{}", zsh_text(argument.value), zsh_value(argument));
    return quoted(fmt::format("{}[{}]{}", argument.name, zsh_text(argument.help), value));
}

std::string zsh(const CommandLine& line)
{
    std::string names, cases;
    for (const CommandHelp& command : line.commands) {
        names += "    " + quoted(zsh_text(command.name) + ":" + zsh_text(command.help)) + "\n";
        cases += fmt::format("    {}) _arguments", command.name);
        for (const Argument& argument : command.arguments) {
            cases += " \\\n      " + zsh_argument(argument);
        }
        cases += ";;\n";
    }
    return fmt::format(R"(#compdef tuckwright
_tuckwright() {{
  local -a commands=(
{}  )
  if (( CURRENT == 2 )); then _describe command commands; return; fi
  shift words; (( CURRENT-- ))
  case $words[1] in
{}  esac
}}
_tuckwright "$@"
)",
                       names, cases);
}

std::string fish(const CommandLine& line)
{
    std::string text = "# fish completion for tuckwright\ncomplete -c tuckwright -f\n";
    for (const CommandHelp& command : line.commands) {
        text += fmt::format("complete -c tuckwright -n __fish_use_subcommand -a {} -d {}\n", command.name,
                            quoted(command.help));
        const std::string when =
            "complete -c tuckwright -n " + quoted("__fish_seen_subcommand_from " + command.name);
        for (const Argument& argument : command.arguments) {
            const std::string value = !argument.words.empty() ? " -x -a " + quoted(joined(argument.words))
                                      : argument.names_file() || argument.names_folder() ? " -r -F"
                                      : argument.value.empty()                            ? ""
                                                                                          : " -x";
            if (!argument.by_itself) {
                text += fmt::format("{} -l {}{} -d {}\n", when, argument.name.substr(2), value, quoted(argument.help));
            } else if (!argument.words.empty()) {
                text += fmt::format("{} -a {}\n", when, quoted(joined(argument.words)));
            } else if (argument.names_file()) {
                text += when + " -F\n";
            }
        }
    }
    return text;
}

} // namespace

std::vector<std::string> known_shells() { return {"bash", "zsh", "fish"}; }

std::string completion_script(const CommandLine& line, const std::string& shell)
{
    require(shell == "bash" || shell == "zsh" || shell == "fish", "completion is for a known shell");
    return shell == "bash" ? bash(line) : shell == "zsh" ? zsh(line) : fish(line);
}

} // namespace tuckwright::cli
