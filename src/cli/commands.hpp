// SPDX-License-Identifier: GPL-3.0-or-later
/// The commands of the program and their options.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "cli/back.hpp"
#include "cli/card.hpp"
#include "cli/compare.hpp"
#include "cli/draw.hpp"
#include "cli/fill.hpp"
#include "cli/look.hpp"
#include "cli/new_kit.hpp"
#include "cli/pack.hpp"
#include "cli/provision.hpp"
#include "cli/room.hpp"
#include "cli/shelf.hpp"
#include "cli/size.hpp"
#include "cli/verify.hpp"

namespace CLI
{
class App;
}

namespace tuckwright::cli
{

/// A command of the program: how it is called, and what runs it.
struct Command {
    CLI::App* called;
    std::function<int()> run;
};

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

/// Adds all commands to the command line. Requires: `given` outlives it.
std::vector<Command> add_commands(CLI::App& app, Given& given);

} // namespace tuckwright::cli
