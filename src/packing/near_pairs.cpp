// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/near_pairs.hpp"

#include <algorithm>
#include <numeric>

namespace tuckwright::packing {

void NearPairs::follow(std::span<const Piece> pieces)
{
    if (then_.size() != pieces.size() || first_.empty() || have_gone_far(pieces)) {
        look_at_all(pieces);
    }
}

bool NearPairs::have_gone_far(std::span<const Piece> pieces) const
{
    constexpr double sure = 0.49; // of the skin, for two may go towards each other
    const double most = sure * skin_;
    for (std::size_t k = 0; k < pieces.size(); ++k) {
        const double dx = pieces[k].x - then_[k].x, dy = pieces[k].y - then_[k].y, dz = pieces[k].z - then_[k].z;
        if (dx * dx + dy * dy > most * most || std::abs(dz) > most) {
            return true;
        }
    }
    return false;
}

void NearPairs::look_at_all(std::span<const Piece> pieces)
{
    then_.assign(pieces.begin(), pieces.end());
    std::vector<int> by_left(pieces.size());
    std::iota(by_left.begin(), by_left.end(), 0);
    const auto left = [&](int k) { return pieces[at(k)].x - pieces[at(k)].reach; };
    std::sort(by_left.begin(), by_left.end(), [&](int a, int b) { return left(a) < left(b); });
    std::vector<std::pair<int, int>> found;
    for (std::size_t a = 0; a < by_left.size(); ++a) {
        const Piece& p = pieces[at(by_left[a])];
        const double right = p.x + p.reach + air_ + skin_;
        for (std::size_t b = a + 1; b < by_left.size() && left(by_left[b]) < right; ++b) {
            if (within(p, pieces[at(by_left[b])], air_ + skin_)) {
                found.push_back(std::minmax(by_left[a], by_left[b]));
            }
        }
    }
    std::sort(found.begin(), found.end());
    first_.assign(pieces.size() + 1, found.size());
    others_.clear();
    for (std::size_t k = found.size(); k-- > 0;) {
        first_[at(found[k].first)] = k;
    }
    for (std::size_t k = pieces.size(); k-- > 0;) {
        first_[k] = std::min(first_[k], first_[k + 1]);
    }
    for (const auto& [before, behind] : found) {
        others_.push_back(behind);
    }
}

} // namespace tuckwright::packing
