// SPDX-License-Identifier: GPL-3.0-or-later
#include <CLI/CLI.hpp>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <exception>
#include <functional>
#include <new>
#include <string>
#include <string_view>
#include <vector>

#include "cli/back.hpp"
#include "cli/card.hpp"
#include "cli/command_line.hpp"
#include "cli/compare.hpp"
#include "cli/draw.hpp"
#include "cli/exit_code.hpp"
#include "cli/fill.hpp"
#include "cli/look.hpp"
#include "cli/messages.hpp"
#include "cli/new_kit.hpp"
#include "cli/option_values.hpp"
#include "cli/pack.hpp"
#include "cli/process.hpp"
#include "cli/provision.hpp"
#include "cli/room.hpp"
#include "cli/shelf.hpp"
#include "cli/size.hpp"
#include "cli/verify.hpp"
#include "cli/wrong_call.hpp"

namespace tuckwright::cli
{

namespace
{

constexpr const char* examples = R"(Examples:
  tuckwright new porridge.yaml                          start a kit file, with comments
  tuckwright pack porridge.yaml                         print the smallest bundle and how to pack it
  tuckwright pack porridge.yaml --json bundle.json      and save it with its proof
  tuckwright pack porridge.yaml --json - | jq .bundle   the saved form to standard output, alone
  tuckwright pack porridge.yaml --effort thorough --seed 7
  tuckwright pack porridge.yaml --units us              the answer in inches and ounces
  tuckwright compare soup.yaml tea.yaml                 which packs smaller, which is lighter
  tuckwright fill things.yaml --into pot                what goes into the pot, and why the rest does not
  tuckwright size porridge.yaml                         what sets the size, and what would make it smaller
  tuckwright verify bundle.json                         prove a saved bundle anew
  tuckwright verify bundle.json --kit porridge.yaml     and that it is a bundle of this kit
  tuckwright provision moor.yaml                        the fuel and food that its trip takes, with the working
  tuckwright room bundle.json                           tell what else would go into it
  tuckwright card porridge.yaml --pdf card.pdf          a card to print and fold into the lid
  tuckwright look porridge.yaml --html porridge.html    a picture to turn, for any browser
  tuckwright draw porridge.yaml --out pictures          draw how it is packed, step by step
  tuckwright back weir.yaml                             does it go back together, and what goes elsewhere then
  tuckwright shelf things.csv --yaml things.yaml        keep the things of a table in one file for many kits
  tuckwright completion bash                            what a shell needs to complete commands and options
  tuckwright manual | man -l -                          the manual page

Exit status: 0 done; 1 it does not fit, was not found, or is refused; 2 the input is wrong;
3 a bug of tuckwright; 130 interrupted, with the best bundle so far written.)";

/// A command of the program: how it is called, and what runs it.
struct Command {
    CLI::App* called;
    std::function<int()> run;
};

/// An option whose value is a text, so that what is wrong with it is said in our words.
void add_option(CLI::App& command, const char* name, const char* kind, const char* help,
                const std::function<void(const std::string&)>& read)
{
    command.add_option_function<std::string>(name, read, help)->type_name(kind);
}

/// Options that every command with a search has.
void add_search_options(CLI::App& command, SolveOptions& search)
{
    add_option(command, "--effort", "WORD", "quick, normal (the default) or thorough",
               [&search](const std::string& text) { search.effort = effort_value(text); });
    add_option(command, "--seed", "N", "another number, another search (default 1); the same number, the same answer",
               [&search](const std::string& text) { search.seed = seed_value(text); });
    add_option(command, "--threads", "N",
               "how many to use (default, or 0: as many as the machine has); never changes the answer",
               [&search](const std::string& text) { search.threads = threads_value(text); });
    add_option(command, "--seconds", "S",
               "stop the search after so long; gives up repeatability, for machines differ in speed",
               [&search](const std::string& text) { search.seconds = seconds_value(text); });
}

/// What is taken of a kit's choices.
void add_choose_option(CLI::App& command, std::vector<Taken>& chosen)
{
    const auto take = [&chosen](const std::vector<std::string>& texts) {
        for (const auto& text : texts) {
            const auto taken = taken_value(text);
            chosen.insert(chosen.end(), taken.begin(), taken.end());
        }
    };
    command
        .add_option_function<std::vector<std::string>>("--choose", take,
                                                       "what is taken of a choice in the kit file, as often as needed")
        ->type_name("CHOICE=TAKEN")
        ->allow_extra_args(false);
}

/// Inches, ounces and so on in the answer; what is saved stays metric.
void add_units_option(CLI::App& command)
{
    add_option(command, "--units", "WORD", "metric (the default) or us: inches, fluid ounces, ounces and pounds",
               [](const std::string& text) { report::answer_in(units_value(text)); });
}

/// Asks about the kit as it is on the way back.
void add_way_back_option(CLI::App& command, bool& way_back)
{
    command.add_flag("--way-back", way_back, "the kit as its file says it is on the way back");
}

Command pack_command(CLI::App& app, PackOptions& options)
{
    auto& command = *app.add_subcommand("pack", "Find the smallest bundle of a kit, and prove that it fits");
    command.add_option("KIT.yaml", options.kit, "the kit file, or - for standard input")->required();
    add_option(command, "--json", "FILE", "save the bundle with its proof; - for standard output, alone",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_search_options(command, options.search);
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    command.add_flag("--worst-case", options.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    add_units_option(command);
    return {&command, [&options] { return pack(options); }};
}

Command fill_command(CLI::App& app, FillOptions& options)
{
    auto& command = *app.add_subcommand("fill", "Choose what goes into one vessel with its lid shut, and prove it");
    command.add_option("KIT.yaml", options.kit, "the kit file, or - for standard input")->required();
    add_option(command, "--into", "ID", "the vessel to fill (default: the one with the largest inside)",
               [&options](const std::string& text) { options.into = text; });
    add_option(command, "--json", "FILE", "save the answer with the proved bundle; - for standard output, alone",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_option(command, "--save", "FILE", "save the proved bundle alone, for card, draw, look, room and verify",
               [&options](const std::string& text) { options.save = path_value(text); });
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    add_search_options(command, options.search);
    add_units_option(command);
    return {&command, [&options] { return fill(options); }};
}

Command room_command(CLI::App& app, RoomCommandOptions& options)
{
    auto& command = *app.add_subcommand("room", "Tell what else would go into a packed bundle, for those who shop");
    command
        .add_option("FILE", options.file,
                    "a kit file, which is packed first, or a bundle that pack --json wrote; - for standard input")
        ->required();
    add_option(command, "--json", "FILE", "save the answer, with places; - for standard output, alone",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    add_search_options(command, options.search);
    command.add_flag("--worst-case", options.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    add_units_option(command);
    return {&command, [&options] { return room(options); }};
}

Command card_command(CLI::App& app, CardCommand& options)
{
    auto& command = *app.add_subcommand("card", "Make the card to print: what to lay ready, each step drawn and told");
    command
        .add_option("FILE", options.file,
                    "a kit file, which is packed first, or a bundle that pack --json wrote; - for standard input")
        ->required();
    add_option(command, "--pdf", "FILE", "write the card for printing; - for standard output, alone",
               [&options](const std::string& text) { options.pdf = path_value(text); });
    add_option(command, "--html", "FILE", "write it as a page for any browser, with the picture to turn",
               [&options](const std::string& text) { options.html = path_value(text); });
    add_option(command, "--json", "FILE", "also save the bundle, so that verify can confirm the card",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_option(command, "--paper", "WORD", "a4 (the default) or letter",
               [&options](const std::string& text) { options.paper = paper_value(text); });
    add_option(command, "--date", "TEXT", "the day to print (default: today)",
               [&options](const std::string& text) { options.date = text; });
    command.add_flag("--without-picture", options.without_picture, "leave the picture to turn out of the page");
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    add_search_options(command, options.search);
    command.add_flag("--worst-case", options.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    add_units_option(command);
    return {&command, [&options] { return card(options); }};
}

Command look_command(CLI::App& app, LookOptions& options)
{
    auto& command = *app.add_subcommand("look", "Draw a bundle as a picture to turn, a page for any browser");
    command
        .add_option("FILE", options.file,
                    "a kit file, which is packed first, or a bundle that pack --json wrote; - for standard input")
        ->required();
    add_option(command, "--html", "FILE", "where to write the page; - for standard output, alone",
               [&options](const std::string& text) { options.html = path_value(text); });
    command.get_option("--html")->required();
    command.add_flag("--without-room", options.without_room, "do not look for the room that is left: done sooner");
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    add_search_options(command, options.search);
    command.add_flag("--worst-case", options.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    return {&command, [&options] { return look(options); }};
}

Command size_command(CLI::App& app, SizeOptions& options)
{
    auto& command = *app.add_subcommand("size", "Tell what sets the size of a kit's bundle, and what would make it smaller");
    command.add_option("KIT.yaml", options.input, "the kit file, or a bundle that was saved, or - for standard input")
        ->required();
    add_option(command, "--json", "FILE", "save the answer; - for standard output, alone",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_search_options(command, options.search);
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    command.add_flag("--worst-case", options.worst_case,
                     "ask about the bundle that fits even if every measurement is off in the bad direction");
    return {&command, [&options] { return size(options); }};
}

Command verify_command(CLI::App& app, VerifyOptions& options)
{
    auto& command = *app.add_subcommand("verify", "Prove a saved bundle anew, from its file alone");
    command.add_option("BUNDLE.json", options.bundle, "a file that pack --json wrote, or - for standard input")
        ->required();
    add_option(command, "--kit", "KIT.yaml", "also prove that it holds what this kit asks for, and nothing else",
               [&options](const std::string& text) { options.kit = path_value(text); });
    add_choose_option(command, options.chosen);
    add_option(command, "--code", "CODE", "also prove that it is the bundle of the card with this code",
               [&options](const std::string& text) { options.code = text; });
    add_way_back_option(command, options.way_back);
    add_units_option(command);
    return {&command, [&options] { return verify(options); }};
}

Command compare_command(CLI::App& app, CompareCommand& given)
{
    auto& command = *app.add_subcommand("compare", "Pack several kits, or all that a kit's choices make, side by side");
    command.add_option("KIT.yaml", given.kits, "kit files, with or without choices; - for standard input")->required();
    add_option(command, "--json", "FILE", "save the comparison; - for standard output, alone",
               [&given](const std::string& text) { given.json = path_value(text); });
    add_option(command, "--picture", "FILE", "draw volume against weight; the name ends in .svg, .pdf or .png",
               [&given](const std::string& text) { given.picture = path_value(text); });
    add_option(command, "--most", "N", "how many to pack, where there are more (default 64): those that hope for most",
               [&given](const std::string& text) { given.options.most = most_value(text); });
    add_search_options(command, given.options.search);
    return {&command, [&given] { return compare_kits(given); }};
}

Command draw_command(CLI::App& app, DrawOptions& options)
{
    auto& command = *app.add_subcommand("draw", "Draw how bundles are packed: each step cut open, from above and slanted");
    command
        .add_option("FILE", options.files,
                    "kit files, which are packed first, or bundles that pack --json wrote; - for standard input")
        ->required();
    command
        .add_option_function<std::string>(
            "--out", [&options](const std::string& text) { options.folder = path_value(text); },
            "the folder for the pictures; it is made if it is not there")
        ->type_name("FOLDER")
        ->required();
    add_option(command, "--format", "WORD", "svg (the default), png, or pdf, with all steps in one file",
               [&options](const std::string& text) { options.format = picture_format_value(text); });
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    add_search_options(command, options.search);
    command.add_flag("--worst-case", options.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    return {&command, [&options] { return draw(options); }};
}

Command shelf_command(CLI::App& app, ShelfOptions& options)
{
    auto& command = *app.add_subcommand("shelf", "Make a shelf, from which kits take their things, of a table (CSV)");
    command.add_option("THINGS.csv", options.csv, "the table, or - for standard input")->required();
    add_option(command, "--yaml", "FILE", "where to write the shelf; - or nothing for standard output",
               [&options](const std::string& text) { options.yaml = path_value(text); });
    add_option(command, "--title", "TEXT", "what the shelf is called, if not as the table's file is",
               [&options](const std::string& text) { options.title = text; });
    return {&command, [&options] { return shelf(options); }};
}

Command provision_command(CLI::App& app, ProvisionOptions& options)
{
    auto& command = *app.add_subcommand("provision", "Work out the fuel and food that the trip of a kit takes");
    command.add_option("KIT.yaml", options.kit, "the kit file, or - for standard input")->required();
    add_option(command, "--json", "FILE", "save the answer; - for standard output, alone",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_choose_option(command, options.chosen);
    return {&command, [&options] { return provision(options); }};
}

Command back_command(CLI::App& app, BackOptions& options)
{
    auto& command =
        *app.add_subcommand("back", "Pack a kit for the way out and the way back, and tell what goes elsewhere then");
    command.add_option("KIT.yaml", options.kit, "the kit file, or - for standard input")->required();
    add_option(command, "--json", "FILE", "save the answer with both bundles; - for standard output, alone",
               [&options](const std::string& text) { options.json = path_value(text); });
    add_option(command, "--save-out", "FILE", "save the bundle of the way out alone, for verify, room and size",
               [&options](const std::string& text) { options.save_out = path_value(text); });
    add_option(command, "--save-back", "FILE", "save the bundle of the way back alone",
               [&options](const std::string& text) { options.save_back = path_value(text); });
    add_choose_option(command, options.chosen);
    add_search_options(command, options.search);
    command.add_flag("--worst-case", options.worst_case,
                     "pack so that it fits even if every measurement is off in the bad direction");
    return {&command, [&options] { return back(options); }};
}

Command new_command(CLI::App& app, NewKitOptions& options)
{
    auto& command = *app.add_subcommand("new", "Start a kit file: one with comments, and a few things to replace");
    command.add_option("KIT.yaml", options.file, "where to write it; must not be there yet; - for standard output")
        ->required();
    add_option(command, "--name", "TEXT", "what the kit is called, if not as the file is",
               [&options](const std::string& text) { options.name = text; });
    command.add_flag("--schema", options.for_editors,
                     "write kit.schema.json beside it, or renew it: by it editors complete and check");
    return {&command, [&options] { return new_kit(options); }};
}

/// Prints what a shell needs to complete commands and options.
Command completion_command(CLI::App& app, std::string& shell)
{
    auto& command = *app.add_subcommand("completion", "Print a script with which a shell completes commands and options");
    command.add_option("SHELL", shell, "bash, zsh or fish")->type_name("WORD")->required();
    return {&command, [&app, &shell] {
                const auto known = known_shells();
                if (std::find(known.begin(), known.end(), shell) == known.end()) {
                    tell({{"tuckwright", 0, 0, "\"" + shell + "\" is not a shell known here", "choose bash, zsh or fish"}});
                    return wrong_input;
                }
                return print(completion_script(command_line_of(app), shell)) ? done : wrong_input;
            }};
}

Command manual_command(CLI::App& app)
{
    auto& command = *app.add_subcommand("manual", "Print the manual page, for man");
    return {&command, [&app] {
                return print(manual_page(command_line_of(app), examples, TUCKWRIGHT_VERSION)) ? done : wrong_input;
            }};
}

/// What the options of all commands are read into.
struct Given {
    NewKitOptions new_kit;
    std::string shell;
    PackOptions pack;
    FillOptions fill;
    RoomCommandOptions room;
    CardCommand card;
    LookOptions look;
    SizeOptions size;
    VerifyOptions verify;
    CompareCommand compare;
    ShelfOptions shelf;
    ProvisionOptions provision;
    DrawOptions draw;
    BackOptions back;
};

std::vector<Command> commands(CLI::App& app, Given& given)
{
    return {new_command(app, given.new_kit),
            pack_command(app, given.pack),
            fill_command(app, given.fill),
            compare_command(app, given.compare),
            shelf_command(app, given.shelf),
            verify_command(app, given.verify),
            provision_command(app, given.provision),
            room_command(app, given.room),
            card_command(app, given.card), look_command(app, given.look),
            size_command(app, given.size),
            draw_command(app, given.draw),
            back_command(app, given.back),
            completion_command(app, given.shell),
            manual_command(app)};
}

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
    const std::vector<Command> all = commands(app, given);
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
