// SPDX-License-Identifier: GPL-3.0-or-later
/// What the benchmark is asked to do.
#pragma once
#include <string>
#include <vector>

#include "bench/run.hpp"

namespace tuckwright::bench {

struct Options {
    std::vector<std::string> suites; ///< none: all
    std::string part;                ///< of the names of cases; empty: all cases
    RunOptions run;
    bool seconds_given = false;
    double again_seconds = 0; ///< 0: nothing is run again
    std::string csv;          ///< a file; empty: none
    bool peer = false;
    double peer_seconds = 60; ///< at most, a case
    std::string bests;        ///< the file of stored bests
    std::string kits;         ///< a folder to write the kit files to, instead of solving them; empty: none
    std::string record;       ///< the file to be brought up to date; empty: none
};

} // namespace tuckwright::bench
