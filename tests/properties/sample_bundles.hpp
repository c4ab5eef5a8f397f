// SPDX-License-Identifier: GPL-3.0-or-later
/// Proved bundles to be tried with faults: packed by hand, solved from the sample kits, solved from kits written here.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace properties {

struct Sample {
    std::string name;
    tuckwright::Bundle bundle;
};

/// All of them, solved once. Requires (of the project): at least a few of the sample kits pack at quick effort.
const std::vector<Sample>& samples();

} // namespace properties
