// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles made by hand, told and measured as the program does it.
#pragma once
#include "tuckwright/fits.hpp"
#include "tuckwright/play.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::test {

/// With the program's own words for the steps, and its figures.
inline Bundle with_words(Bundle bundle)
{
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        bundle.items[item].form = bundle.items[item].closes ? "shut" : posture(bundle, item);
    }
    const auto texts = step_texts(bundle);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        bundle.steps[i].text = texts[i];
    }
    bundle.fits = fits(bundle);
    bundle.plays = plays(bundle);
    return bundle;
}

} // namespace tuckwright::test
