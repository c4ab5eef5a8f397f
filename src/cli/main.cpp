// SPDX-License-Identifier: GPL-3.0-or-later
#include <CLI/CLI.hpp>

#include <cstdio>
#include <exception>
#include <string_view>
#include <vector>

#include "cli/exit_code.hpp"
#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"
#include "cli/option_values.hpp"
#include "cli/pack.hpp"
#include "cli/verify.hpp"

namespace tuckwright::cli
{

namespace
{

constexpr const char* examples = R"(Examples:
  tuckwright pack porridge.yaml                         print the smallest bundle and how to pack it
  tuckwright pack porridge.yaml --json bundle.json      and save it with its proof
  tuckwright pack porridge.yaml --json - | jq .bundle   the saved form to standard output, alone
  tuckwright pack porridge.yaml --effort thorough --seed 7
  tuckwright verify bundle.json                         prove a saved bundle anew
  tuckwright verify bundle.json --kit porridge.yaml     and that it is a bundle of this kit

Exit status: 0 done; 1 it does not fit, was not found, or is refused; 2 the input is wrong;
3 a bug of tuckwright; 130 interrupted, with the best bundle so far written.)";

struct Given {
    PackOptions pack;
    std::string bundle, kit_of_bundle;
    CLI::App* pack_command = nullptr;
    CLI::App* verify_command = nullptr;
};

void add_pack(CLI::App& app, Given& given)
{
    auto& command = *app.add_subcommand("pack", "Find the smallest bundle of a kit, and prove that it fits");
    command.add_option("KIT.yaml", given.pack.kit, "the kit file, or - for standard input")->required();
    // Texts, so that what is wrong with them is said in our words.
    const auto option = [&](const char* name, const char* kind, const char* help, auto read) {
        command.add_option_function<std::string>(name, read, help)->type_name(kind);
    };
    option("--json", "FILE", "save the bundle with its proof; - for standard output, alone",
           [&json = given.pack.json](const std::string& text) { json = path_value(text); });
    auto& search = given.pack.search;
    option("--effort", "WORD", "quick, normal (the default) or thorough",
           [&search](const std::string& text) { search.effort = effort_value(text); });
    option("--seed", "N", "another number, another search (default 1); the same number, the same bundle",
           [&search](const std::string& text) { search.seed = seed_value(text); });
    option("--threads", "N", "how many to use (default, or 0: as many as the machine has); never changes the bundle",
           [&search](const std::string& text) { search.threads = threads_value(text); });
    option("--seconds", "S", "stop the search after so long; gives up repeatability, for machines differ in speed",
           [&search](const std::string& text) { search.seconds = seconds_value(text); });
    command.add_flag("--worst-case", given.pack.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    command.footer(examples);
    given.pack_command = &command;
}

void add_verify(CLI::App& app, Given& given)
{
    auto& command = *app.add_subcommand("verify", "Prove a saved bundle anew, from its file alone");
    command.add_option("BUNDLE.json", given.bundle, "a file that pack --json wrote, or - for standard input")
        ->required();
    command.add_option_function<std::string>(
               "--kit", [&kit = given.kit_of_bundle](const std::string& text) { kit = path_value(text); },
               "also prove that it holds what this kit asks for, and nothing else")
        ->type_name("KIT.yaml");
    given.verify_command = &command;
}

/// Says which arguments were not expected, and what may have been meant.
void tell_unexpected(const CLI::App& app)
{
    const auto given = app.get_subcommands();
    const CLI::App& command = given.empty() ? app : *given.front();
    std::vector<std::string> options;
    for (const CLI::Option* option : command.get_options([](const CLI::Option* o) { return o->nonpositional(); })) {
        options.push_back(option->get_name());
    }
    const std::string what = about_unexpected(app.remaining(true), given.empty() ? "" : command.get_name(), options);
    tell({{"tuckwright", 0, 0, what, ""}});
}

int run(int argc, const char* const* argv)
{
    CLI::App app("Packs the items of a small travel kit into the smallest bundle, and proves that they fit.",
                 "tuckwright");
    Given given;
    app.set_version_flag("--version", "tuckwright " TUCKWRIGHT_VERSION);
    app.require_subcommand(0, 1); // that there is one is seen below: a misspelt one is then told by its name
    app.footer(examples);
    add_pack(app, given);
    add_verify(app, given);
    std::vector<const char*> arguments(argv, argv + argc);
    if (argc > 1 && std::string_view(argv[1]) == "help") { // help, or help pack
        arguments.erase(arguments.begin() + 1);
        arguments.push_back("--help");
    }
    try {
        app.parse(static_cast<int>(arguments.size()), arguments.data());
    } catch (const CLI::ExtrasError&) {
        tell_unexpected(app);
        return wrong_input;
    } catch (const CLI::ParseError& error) {
        return app.exit(error) == 0 ? done : wrong_input;
    }
    if (app.get_subcommands().empty()) {
        std::fputs("tuckwright: give a command, pack or verify; --help shows examples\n", stderr);
        return wrong_input;
    }
    return *given.pack_command ? pack(given.pack) : verify(given.bundle, given.kit_of_bundle);
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
    try {
        return tuckwright::cli::run(argc, argv);
    } catch (const std::exception& error) {
        return report_bug(error.what());
    } catch (...) {
        return report_bug("something that is no exception of the library");
    }
}
