// SPDX-License-Identifier: GPL-3.0-or-later
/// Writes the bundles packed by hand into a folder, as `pack --json` would save them: seeds for the fuzzers.
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "support/handmade_bundles.hpp"
#include "tuckwright/fits.hpp"
#include "tuckwright/play.hpp"
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
        Bundle bundle = sample.make();
        for (std::size_t item = 0; item < bundle.items.size(); ++item) {
            bundle.items[item].form = bundle.items[item].closes ? "shut" : posture(bundle, item);
        }
        const auto texts = step_texts(bundle);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            bundle.steps[i].text = texts[i];
        }
        bundle.fits = fits(bundle);
        bundle.plays = plays(bundle);
        std::ofstream(std::filesystem::path(argv[1]) / ("handmade-" + std::to_string(++number) + ".json")) << to_json(bundle);
    }
    return number > 0 ? 0 : 1;
}
