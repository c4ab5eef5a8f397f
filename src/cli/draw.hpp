// SPDX-License-Identifier: GPL-3.0-or-later
/// The command that draws bundles, step by step.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli {

enum class PictureFormat { svg, pdf, png };

struct DrawOptions {
    std::vector<std::string> files; ///< kits and saved bundles; - for standard input
    std::string folder;             ///< where the pictures go; made if it is not there
    PictureFormat format = PictureFormat::svg;
    bool worst_case = false;
    bool way_back = false;    ///< the kit as it is on the way back
    std::vector<Taken> chosen;
    SolveOptions search;
};

/// Packs each kit, or proves each saved bundle, and writes a picture of every step. Ensures: nothing is written where
/// anything that was given is wrong.
int draw(const DrawOptions& options);

} // namespace tuckwright::cli
