// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/notes.hpp"

#include <algorithm>
#include <vector>

#include "report/covers.hpp"
#include "report/steps_frame.hpp"
#include "tuckwright/footing.hpp"

namespace tuckwright::report {

std::string cooling_note(const Bundle& bundle)
{
    std::vector<std::string> names;
    for (const auto& item : bundle.items) {
        const bool is_hot = std::find(item.kinds.begin(), item.kinds.end(), Kind::hot) != item.kinds.end();
        const std::string name = common_name(bundle, item.id);
        if (is_hot && std::find(names.begin(), names.end(), name) == names.end()) {
            names.push_back(name);
        }
    }
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < names.size() ? ", " : " and ") + names[i];
    }
    return text.empty() ? text : "Let " + text + " cool down first.";
}

std::string unpacking_note(const Bundle& bundle)
{
    const std::string first = cover_steps(bundle).empty() ? first_when_unpacking(bundle) : first_cover_off(bundle);
    return first.empty() ? "" : "To unpack, go through the steps backwards: first " + first + ".";
}

std::string toppling_note(const Bundle& bundle)
{
    std::string names;
    for (const std::size_t item : toppling(bundle)) {
        names += (names.empty() ? "" : ", ") + spoken_name(bundle, item);
    }
    return names.empty() ? names
                         : "By themselves these would topple: " + names +
                               ". Hold them until all is in and a bag or strap is round it.";
}

std::string unheld_note(const Bundle& bundle)
{
    const auto direct = std::count_if(bundle.items.begin(), bundle.items.end(),
                                      [](const PlacedItem& item) { return !item.in && !item.closes; });
    return direct < 2 || bundle.bag || !bundle.bands.empty()
               ? ""
               : "Nothing of this kit goes round the bundle: carry it in a snug bag, or strap it.";
}

} // namespace tuckwright::report
