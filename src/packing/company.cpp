// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/company.hpp"

#include <algorithm>
#include <optional>

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

namespace {

/// Whether one of the bodies lies in the cell; nothing where none of them has a place yet.
std::optional<bool> any_in(const Layout& layout, const std::vector<int>& bodies, int cell)
{
    bool placed = false;
    for (const int body : bodies) {
        const int own = layout.place(body).cell;
        if (contains(layout.inside(own), body)) {
            placed = true;
            if (own == cell) {
                return true;
            }
        }
    }
    return placed ? std::optional(false) : std::nullopt;
}

/// How many are parted from those that they belong together with, were the body in the cell: itself, and others that
/// have it alone for company.
int parted(const Layout& layout, const Company& company, int body, int cell)
{
    int count = 0;
    for (const std::vector<int>& partners : company.together[at(body)]) {
        count += any_in(layout, partners, cell) == false ? 1 : 0;
    }
    for (int other = 0; other < static_cast<int>(layout.size()); ++other) {
        const int there = layout.place(other).cell;
        if (other == body || there == cell || company.together[at(other)].empty() ||
            !contains(layout.inside(there), other)) {
            continue;
        }
        for (std::vector<int> partners : company.together[at(other)]) {
            if (std::erase(partners, body) > 0 && any_in(layout, partners, there) != true) {
                ++count;
            }
        }
    }
    return count;
}

} // namespace

int Layout::unmet_company(int body, int cell) const
{
    const Company& company = scene_->company;
    if (company.empty()) {
        return 0;
    }
    const int apart = company.together.empty() ? 0 : parted(*this, company, body, cell);
    if (company.within[at(body)].empty()) {
        return apart;
    }
    const std::vector<int> chain = chain_of(*this, cell);
    return apart +
           static_cast<int>(std::count_if(company.within[at(body)].begin(), company.within[at(body)].end(),
                                          [&](const std::vector<int>& vessels) {
                                              return std::none_of(vessels.begin(), vessels.end(),
                                                                  [&](int vessel) { return contains(chain, vessel); });
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
