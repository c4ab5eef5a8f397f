// SPDX-License-Identifier: GPL-3.0-or-later
#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <functional>
#include <new>
#include <string>
#include <string_view>
#include <vector>

#include "cli/back.hpp"
#include "cli/card.hpp"
#include "cli/compare.hpp"
#include "cli/draw.hpp"
#include "cli/exit_code.hpp"
#include "cli/fill.hpp"
#include "cli/look.hpp"
#include "cli/messages.hpp"
#include "cli/mix_ups.hpp"
#include "cli/option_values.hpp"
#include "cli/pack.hpp"
#include "cli/process.hpp"
#include "cli/provision.hpp"
#include "cli/room.hpp"
#include "cli/shelf.hpp"
#include "cli/size.hpp"
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

Exit status: 0 done; 1 it does not fit, was not found, or is refused; 2 the input is wrong;
3 a bug of tuckwright; 130 interrupted, with the best bundle so far written.)";

/// A command of the program: how it is called, and what runs it.
struct Command {
    CLI::App* called;
    std::function<int()> run;
};

/// An option whose value is a text, so that what is wrong with it is said in our words.
void add_option(CLI::App& command, const char* name, const char* kind, const char* help,
                std::function<void(const std::string&)> read)
{
    command.add_option_function<std::string>(name, std::move(read), help)->type_name(kind);
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
    command.footer(examples);
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
    add_choose_option(command, options.chosen);
    add_way_back_option(command, options.way_back);
    add_search_options(command, options.search);
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

/// What the options of all commands are read into.
struct Given {
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
    return {pack_command(app, given.pack),
            fill_command(app, given.fill),
            compare_command(app, given.compare),
            shelf_command(app, given.shelf),
            verify_command(app, given.verify),
            provision_command(app, given.provision),
            room_command(app, given.room),
            card_command(app, given.card), look_command(app, given.look),
            size_command(app, given.size),
            draw_command(app, given.draw),
            back_command(app, given.back)};
}

std::vector<std::string> command_words(const CLI::App& app)
{
    std::vector<std::string> words;
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        words.push_back(command->get_name());
    }
    return words;
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
    const std::string what =
        about_unexpected(app.remaining(true), given.empty() ? "" : command.get_name(), options, command_words(app));
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
    const std::vector<Command> all = commands(app, given);
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
        tell({{"tuckwright", 0, 0, "give a command; --help shows them, with examples", ""}});
        return wrong_input;
    }
    return std::find_if(all.begin(), all.end(), [](const Command& one) { return one.called->parsed(); })->run();
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
