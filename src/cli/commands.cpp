// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/commands.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>

#include "cli/command_line.hpp"
#include "cli/examples.hpp"
#include "cli/exit_code.hpp"
#include "cli/messages.hpp"
#include "cli/option_values.hpp"

namespace tuckwright::cli
{

namespace
{

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
    add_units_option(command);
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
    add_units_option(command);
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
    add_units_option(command);
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
    add_units_option(command);
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
    add_units_option(command);
    return {&command, [&options] { return back(options); }};
}

Command new_command(CLI::App& app, NewKitOptions& options)
{
    auto& command = *app.add_subcommand("new", "Start a kit file: one with comments, and a few things to replace");
    command.add_option("KIT.yaml", options.file, "where to write it; must not be there yet; - for standard output")
        ->required();
    add_option(command, "--name", "TEXT", "what the kit is called, if not as the file is",
               [&options](const std::string& text) { options.name = text; });
    command.add_flag("--ask", options.ask, "ask for the kit and its things, and make the file of the answers");
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

} // namespace

std::vector<Command> add_commands(CLI::App& app, Given& given)
{
    return {new_command(app, given.new_kit),
            pack_command(app, given.pack),
            fill_command(app, given.fill),
            compare_command(app, given.compare),
            shelf_command(app, given.shelf),
            verify_command(app, given.verify),
            provision_command(app, given.provision),
            room_command(app, given.room),
            card_command(app, given.card),
            look_command(app, given.look),
            size_command(app, given.size),
            draw_command(app, given.draw),
            back_command(app, given.back),
            completion_command(app, given.shell),
            manual_command(app)};
}

} // namespace tuckwright::cli
