// SPDX-License-Identifier: GPL-3.0-or-later
/// The manual page, written in the macros of man(7).
#include <fmt/format.h>

#include <sstream>

#include "cli/command_line.hpp"

namespace tuckwright::cli
{

namespace
{

/// Plain text for roff: no character of it is a request or an escape, and hyphens stay those of options.
std::string plain(const std::string& text)
{
    std::string result;
    for (const char c : text) {
        result += c == '\\' ? "\\e" : c == '-' ? "\\-" : std::string(1, c);
    }
    return result.starts_with('.') || result.starts_with('\'') ? "\\&" + result : result;
}

std::string head_of(const Argument& argument)
{
    if (argument.by_itself) {
        return fmt::format("\\fI{}\\fR", plain(argument.name));
    }
    const std::string letter = argument.letter.empty() ? "" : fmt::format("\\fB{}\\fR, ", plain(argument.letter));
    const std::string value = argument.value.empty() ? "" : fmt::format(" \\fI{}\\fR", plain(argument.value));
    return fmt::format("{}\\fB{}\\fR{}", letter, plain(argument.name), value);
}

std::string call_of(const CommandHelp& command)
{
    std::string call = fmt::format("\\fBtuckwright {}\\fR", command.name);
    for (const Argument& argument : command.arguments) {
        if (argument.needed) {
            call += " " + head_of(argument) + (argument.several ? " ..." : "");
        }
    }
    return call + " [options]";
}

std::string told(const std::vector<Argument>& arguments)
{
    std::string text;
    for (const Argument& argument : arguments) {
        text += fmt::format(".TP\n{}\n{}\n", head_of(argument), plain(argument.help));
    }
    return text;
}

/// Lines as they stand; the exit statuses come after an empty one.
std::string as_they_stand(const std::string& text)
{
    std::string result = ".nf\n";
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        result += line.empty() ? ".sp\n" : plain(line) + "\n";
    }
    return result + ".fi\n";
}

} // namespace

std::string manual_page(const CommandLine& line, const std::string& examples, const std::string& version)
{
    std::string text = fmt::format(".TH TUCKWRIGHT 1 \"\" \"tuckwright {}\" \"User Commands\"\n", plain(version));
    text += ".SH NAME\ntuckwright \\- pack a small travel kit into the smallest bundle, and prove that it fits\n";
    text += ".SH SYNOPSIS\n\\fBtuckwright\\fR \\fIcommand\\fR [\\fIarguments\\fR]\n";
    text += fmt::format(".SH DESCRIPTION\n{}\n", plain(line.help));
    text += "The kit file is YAML; \\fBtuckwright new\\fR writes one with comments to start from.\n";
    text += ".SH COMMANDS\n";
    for (const CommandHelp& command : line.commands) {
        text += fmt::format(".SS {}\n{}\n.PP\n{}.\n{}", command.name, call_of(command), plain(command.help),
                            told(command.arguments));
    }
    text += ".SH OPTIONS WITHOUT A COMMAND\n" + told(line.arguments);
    text += ".SH EXAMPLES AND EXIT STATUS\n" + as_they_stand(examples);
    text += ".SH ENVIRONMENT\nNothing is coloured, so there is nothing for \\fBNO_COLOR\\fR to switch off. With "
            "\\fBSOURCE_DATE_EPOCH\\fR set, the day on a card is that one.\n";
    text += ".SH CAUTION\nThe proof is about shapes and numbers, not about safety: the maker's instructions and local rules "
            "go first where there is fuel, flame, heat, pressure or a blade.\n";
    return text;
}

} // namespace tuckwright::cli
