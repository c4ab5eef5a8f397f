// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/company.hpp"

#include <algorithm>

#include "packing/layout.hpp"

namespace tuckwright::packing {

namespace {

/// A body and all that it holds, however deep.
void gather_group(const Layout& layout, int body, std::vector<int>& group)
{
    group.push_back(body);
    for (const int child : layout.inside(body)) {
        gather_group(layout, child, group);
    }
}

bool contains(const std::vector<int>& all, int one) { return std::find(all.begin(), all.end(), one) != all.end(); }

/// The vessels that hold what lies in a cell, from it outward.
std::vector<int> chain_of(const Layout& layout, int cell)
{
    std::vector<int> chain;
    for (; cell != outermost; cell = layout.place(cell).cell) {
        chain.push_back(cell);
    }
    return chain;
}

} // namespace

int Layout::unmet_company(int body, int cell) const
{
    const Company& company = scene_->company;
    if (company.empty() || company.within[at(body)].empty()) {
        return 0;
    }
    const std::vector<int> chain = chain_of(*this, cell);
    return static_cast<int>(std::count_if(
        company.within[at(body)].begin(), company.within[at(body)].end(), [&](const std::vector<int>& vessels) {
            return std::none_of(vessels.begin(), vessels.end(), [&](int vessel) { return contains(chain, vessel); });
        }));
}

bool Layout::company_allows(int body, int cell) const
{
    const Company& company = scene_->company;
    if (company.empty()) {
        return true;
    }
    const std::vector<int> chain = chain_of(*this, cell);
    std::vector<int> group, others;
    gather_group(*this, body, group);
    if (!chain.empty()) {
        gather_group(*this, chain.back(), others);
    }
    for (const int member : group) {
        const auto& out = company.out[at(member)];
        const auto& apart = company.apart[at(member)];
        if (std::any_of(chain.begin(), chain.end(), [&](int vessel) { return out[at(vessel)]; }) ||
            std::any_of(others.begin(), others.end(),
                        [&](int other) { return apart[at(other)] && !contains(group, other); })) {
            return false;
        }
        for (const std::vector<int>& vessels : company.within[at(member)]) {
            const bool met = std::any_of(vessels.begin(), vessels.end(), [&](int vessel) {
                return contains(chain, vessel) || (vessel != member && contains(group, vessel) &&
                                                   contains(chain_of(*this, place(member).cell), vessel));
            });
            if (!met) {
                return false;
            }
        }
    }
    return true;
}

} // namespace tuckwright::packing
