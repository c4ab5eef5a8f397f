// SPDX-License-Identifier: GPL-3.0-or-later
/// The bundle that a kit packs into, or that was saved: how commands begin that are asked about either.
#pragma once
#include <atomic>
#include <string>
#include <vector>

#include "cli/kit_or_bundle.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

/// What a command is asked about, and how it is to be packed.
struct WhatToPack {
    std::string file;          ///< path of a kit, or of a saved bundle, or - for standard input
    bool worst_case = false;   ///< pack the kit for the worst case by the tolerances
    bool way_back = false;     ///< the kit as it is on the way back
    std::vector<Taken> chosen; ///< of the kit's choices
    SolveOptions search;
};

/// Adds what is wrong with asking for the worst case of a bundle that is packed already.
void check_worst_case(const Result<KitOrBundle>& source, bool worst_case, const std::string& name,
                      std::vector<Problem>& problems);

struct Packed {
    Bundle bundle;
    int outcome = 0; ///< exit status, if there is none to go on with; what is wrong has been told then
};

/// Proves the saved bundle, or packs the kit. Requires: one of the two.
Packed packed(const KitOrBundle& source, const std::string& name, bool worst_case, SolveOptions search,
              const std::atomic<bool>& stop);

/// Reads what is named, tells all that is wrong with it, after it what is wrong besides, and goes on as above.
Packed packed(const WhatToPack& what, const std::vector<Problem>& besides, const std::atomic<bool>& stop);

} // namespace tuckwright::cli
