// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/links.hpp"

#include "kit/words.hpp"

namespace tuckwright::reading
{

IdIndex::IdIndex(const std::vector<ItemDraft>& drafts)
{
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (drafts[i].id_place) {
            ids_.emplace(drafts[i].item.id, i);
            known_.push_back(drafts[i].item.id);
        }
    }
}

Link IdIndex::find(const std::string& id) const
{
    const auto found = ids_.find(id);
    return found != ids_.end() ? Link(found->second) : std::nullopt;
}

Link IdIndex::need(Reading& reading, const std::string& id, Place place)
{
    constexpr std::size_t most_compared = 500, most_suggested = 100; // keep a file of many faults quick
    const Link found = find(id);
    if (!found) {
        const bool compare = known_.size() <= most_compared && unknown_++ < most_suggested;
        const auto meant = compare ? mistyped(id, known_) : std::nullopt;
        reading.problems.add(place, "there is no item with the id " + in_quotes(id),
                             meant ? "did you mean " + in_quotes(*meant) + "?" : "name the id of an item of this kit");
    }
    return found;
}

std::vector<std::size_t> ring_starts(const std::vector<Link>& links)
{
    std::vector<std::size_t> starts;
    std::vector<std::size_t> walk(links.size(), 0); // number of the walk that came here first, from 1
    for (std::size_t i = 0; i < links.size(); ++i) {
        std::size_t at = i;
        while (walk[at] == 0 && links[at]) {
            walk[at] = i + 1;
            at = *links[at];
        }
        if (walk[at] == i + 1) {
            starts.push_back(at);
        }
    }
    return starts;
}

} // namespace tuckwright::reading
