// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/carrying.hpp"

#include <algorithm>
#include <vector>

#include "report/words.hpp"
#include "tuckwright/handling.hpp"

namespace tuckwright::report {

namespace {

using Ids = std::vector<std::string>;

/// Rules of one kind and reason: each of the first is kept apart from each of the second, or within or out of it.
struct Group {
    std::string why;
    Ids firsts, seconds;
};

void add_once(Ids& ids, const std::string& id)
{
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) {
        ids.push_back(id);
    }
}

/// By reason and first item; then those together whose second items are the same.
std::vector<Group> groups_of(const Bundle& bundle, Keep keep)
{
    std::vector<Group> single, result;
    for (const auto& rule : bundle.rules) {
        if (rule.keep != keep) {
            continue;
        }
        auto group = std::find_if(single.begin(), single.end(), [&](const Group& other) {
            return other.why == rule.why && other.firsts.front() == rule.first;
        });
        if (group == single.end()) {
            group = single.insert(single.end(), {rule.why, {rule.first}, {}});
        }
        add_once(group->seconds, rule.second);
    }
    for (auto& group : single) {
        const auto alike = std::find_if(result.begin(), result.end(), [&](const Group& other) {
            return other.why == group.why && other.seconds == group.seconds;
        });
        if (alike == result.end()) {
            result.push_back(std::move(group));
        } else {
            alike->firsts.push_back(group.firsts.front());
        }
    }
    return result;
}

/// "Cup", "Cup and Spoon", "Cup, Spoon and Fork".
std::string listed(const Bundle& bundle, const Ids& ids, const char* last)
{
    std::string text;
    for (std::size_t i = 0; i < ids.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < ids.size() ? ", " : last) + common_name(bundle, ids[i]);
    }
    return text;
}

std::string paragraph(const Bundle& bundle, Keep keep, const char* start, const char* between, const char* last)
{
    std::string text;
    for (const auto& group : groups_of(bundle, keep)) {
        text += (text.empty() ? "" : "; ") + listed(bundle, group.firsts, " and ") + between +
                listed(bundle, group.seconds, last) + (group.why.empty() ? "" : " (" + group.why + ")");
    }
    return text.empty() ? text : wrapped(start, text + (keep == Keep::apart ? ". This is about vessels only: look yourself at what stands on or beside them." : "."));
}

/// "Done without, as the kit asks: ..."; the reasons are the kit's own words.
std::string waived_paragraph(const Bundle& bundle)
{
    std::string text;
    for (const auto& rule : bundle.waived) {
        text += (text.empty() ? "" : "; ") + rule;
    }
    if (!text.empty() && text.find_last_of(".!?") != text.size() - 1) {
        text += ".";
    }
    return text.empty() ? text : wrapped("Done without, as the kit asks: ", text);
}

/// "Cup, Spoon and 3 more": a few names are enough.
std::string some_of(const Bundle& bundle, const std::vector<std::size_t>& items)
{
    constexpr std::size_t most = 4;
    std::string text;
    for (std::size_t k = 0; k < items.size(); ++k) {
        if (k + 1 == most && items.size() > most) {
            return text + " and " + std::to_string(items.size() - k) + " more";
        }
        text += (k == 0 ? "" : k + 1 == items.size() ? " and " : ", ") + spoken_name(bundle, items[k]);
    }
    return text;
}

std::string loads_paragraph(const Bundle& bundle)
{
    std::string free, borne;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const PlacedItem& it = bundle.items[item];
        if (it.nothing_on_top) {
            free += (free.empty() ? "" : ", ") + spoken_name(bundle, item);
        }
        if (it.bears_g) {
            borne += (borne.empty() ? "" : "; ") + spoken_name(bundle, item) + " " +
                     weight_in_words(weight_of(bundle, load_on(bundle, item))) + ", and may bear " +
                     weight_in_words(*it.bears_g);
        }
    }
    return (free.empty() ? "" : wrapped("Nothing on top of: ", free + ".")) +
           (borne.empty() ? "" : wrapped("Bears: ", borne + "."));
}

std::string reach_paragraph(const Bundle& bundle)
{
    std::string text;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const PlacedItem& it = bundle.items[item];
        if (it.reach == Wanted::any || !it.out_after) {
            continue;
        }
        const std::size_t count = *it.out_after;
        text += (text.empty() ? "" : "; ") + spoken_name(bundle, item);
        text += count == 0 ? it.reach == Wanted::last ? " is wanted last, but nothing comes out before it"
                                                      : " comes out first"
                           : " after " + std::to_string(count) + (count == 1 ? " thing (" : " things (") +
                                 some_of(bundle, unpacking(bundle, item).before) + ")";
    }
    return text.empty() ? text : wrapped("Within reach: ", text + ".");
}

} // namespace

std::string carrying(const Bundle& bundle)
{
    const std::string text = paragraph(bundle, Keep::apart, "Not in one vessel: ", " with ", " or ") +
                             paragraph(bundle, Keep::within, "Kept within: ", " in ", " and ") +
                             paragraph(bundle, Keep::out, "Kept out: ", " not in ", " or ") +
                             paragraph(bundle, Keep::together, "Kept together: ", " with ", " and ") +
                             paragraph(bundle, Keep::shut, "Kept shut: ", " on ", " and ") +
                             loads_paragraph(bundle) + reach_paragraph(bundle) + waived_paragraph(bundle);
    return text.empty() ? text : "\n" + text;
}

} // namespace tuckwright::report
