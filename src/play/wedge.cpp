// SPDX-License-Identifier: GPL-3.0-or-later
#include "play/wedge.hpp"

#include <algorithm>

#include "play/contacts.hpp"

namespace tuckwright::play {

void Wedge::add(std::size_t first, std::size_t second, bool aslant)
{
    touch(first, second);
    for (const std::size_t body : {first, second}) {
        if (body != outer_wall && aslant) {
            aslant_[body] = true;
            slants_ = true;
        }
    }
}

void Wedge::touch(std::size_t first, std::size_t second)
{
    if (first == outer_wall || second == outer_wall) {
        walled_[first == outer_wall ? second : first] = true;
        return;
    }
    beside_[first].push_back(second);
    beside_[second].push_back(first);
}

std::vector<std::size_t> Wedge::touched() const
{
    std::vector<std::size_t> from;
    for (std::size_t body = 0; body < aslant_.size(); ++body) {
        if (aslant_[body]) {
            from.push_back(body);
        }
    }
    return reached(std::move(from), outer_wall);
}

bool Wedge::bears(std::size_t body) const
{
    for (std::size_t other = 0; other < beside_.size(); ++other) {
        const auto all = reached({body}, other);
        if (other != body && std::none_of(all.begin(), all.end(), [&](std::size_t one) { return walled_[one]; })) {
            return false;
        }
    }
    return true;
}

std::vector<std::size_t> Wedge::reached(std::vector<std::size_t> from, std::size_t but) const
{
    std::vector<bool> seen(beside_.size(), false);
    std::vector<std::size_t> found;
    while (!from.empty()) {
        const std::size_t body = from.back();
        from.pop_back();
        if (body != but && !seen[body]) {
            seen[body] = true;
            found.push_back(body);
            from.insert(from.end(), beside_[body].begin(), beside_[body].end());
        }
    }
    return found;
}

} // namespace tuckwright::play
