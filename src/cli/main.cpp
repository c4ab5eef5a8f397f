// SPDX-License-Identifier: GPL-3.0-or-later
#include <CLI/CLI.hpp>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <exception>
#include <new>
#include <string>
#include <string_view>
#include <vector>

#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/examples.hpp"
#include "cli/exit_code.hpp"
#include "cli/messages.hpp"
#include "cli/process.hpp"
#include "cli/wrong_call.hpp"

namespace tuckwright::cli
{

namespace
{

/// What every command has: how much it says, and its examples.
void add_talk_options(CLI::App& command)
{
    command.add_flag_callback("-q,--quiet", be_quiet, "print no answer: files are written, and the exit status tells");
    command.add_flag_callback("-v,--verbose", be_verbose, "tell on standard error how the work goes");
    for (CLI::Option* option : command.get_options([](const CLI::Option*) { return true; })) {
        option->disable_flag_override(); // a switch has no value
        if (option->get_positional() && option->get_type_name() == "TEXT") {
            option->type_name("");
        }
    }
    command.footer(examples_of(command.get_name(), examples));
}

int run(int argc, const char* const* argv)
{
    CLI::App app("Packs the items of a small travel kit into the smallest bundle, and proves that they fit.",
                 "tuckwright");
    Given given;
    app.set_version_flag("--version", "tuckwright " TUCKWRIGHT_VERSION);
    app.require_subcommand(0, 1); // that there is one is seen below: a misspelt one is then told by its name
    app.footer(examples);
    const std::vector<Command> all = add_commands(app, given);
    for (const Command& one : all) {
        add_talk_options(*one.called);
    }
    std::vector<const char*> arguments(argv, argv + argc);
    if (argc > 1 && std::string_view(argv[1]) == "help") { // help, or help pack
        if (argc > 2 && argv[2][0] != '-' && !knows_command(app, argv[2])) {
            return wrong_input;
        }
        arguments.erase(arguments.begin() + 1);
        arguments.push_back("--help");
    }
    try {
        app.parse(static_cast<int>(arguments.size()), arguments.data());
    } catch (const CLI::Success& wanted) { // help, or the version
        app.exit(wanted);
        return done;
    } catch (const CLI::ParseError& error) {
        tell_wrong_call(app, error);
        return wrong_input;
    }
    if (app.get_subcommands().empty()) {
        tell({{"tuckwright", 0, 0, "give a command; --help shows them, with examples", ""}});
        return wrong_input;
    }
    const auto start = std::chrono::steady_clock::now();
    const int status =
        std::find_if(all.begin(), all.end(), [](const Command& one) { return one.called->parsed(); })->run();
    const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - start;
    note("done in " + std::to_string(seconds.count()).substr(0, 5) + " s; exit status " + std::to_string(status));
    return status;
}

} // namespace

} // namespace tuckwright::cli

int main(int argc, char** argv)
{
    const auto report_bug = [](const char* what) {
        std::fprintf(stderr,
                     "tuckwright: this is a bug of ours, not yours: %s\n"
                     "Please report it, with the file you gave and the options.\n",
                     what);
        return tuckwright::cli::our_bug;
    };
    tuckwright::cli::prepare_process();
    try {
        return tuckwright::cli::run(argc, argv);
    } catch (const std::bad_alloc&) {
        std::fputs(tuckwright::cli::not_enough_memory, stderr);
        return tuckwright::cli::wrong_input;
    } catch (const std::exception& error) {
        return report_bug(error.what());
    } catch (...) {
        return report_bug("something that is no exception of the library");
    }
}
