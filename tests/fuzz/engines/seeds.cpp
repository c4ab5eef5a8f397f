// SPDX-License-Identifier: GPL-3.0-or-later
/// Writes the bundles packed by hand into a folder, as `pack --json` would save them: seeds for the fuzzers.
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "support/handmade_bundles.hpp"
#include "support/worded.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;

int main(int argc, char** argv)
{
    if (argc != 2) {
        std::fputs("usage: fuzz_seeds FOLDER\n", stderr);
        return 2;
    }
    int number = 0;
    for (const auto& sample : handmade::all()) {
        const Bundle bundle = test::with_words(sample.make());
        std::ofstream(std::filesystem::path(argv[1]) / ("handmade-" + std::to_string(++number) + ".json")) << to_json(bundle);
    }
    return number > 0 ? 0 : 1;
}
