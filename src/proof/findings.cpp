// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/findings.hpp"

#include <fmt/format.h>

#include <cmath>

#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::proof {

Findings::Findings(std::size_t most) : most_(most)
{
    require(most > 0, "at least one objection may be reported, or a faulty bundle would look sound");
}

void Findings::add(std::string rule, std::string what)
{
    if (!full()) {
        found_.push_back({std::move(rule), std::move(what)});
    }
}

std::string named(const Bundle& bundle, std::size_t item) { return '"' + label(bundle, item) + '"'; }

std::string in_mm(double nanometres)
{
    if (std::abs(nanometres) < 1) {
        return "less than 0.000001 mm";
    }
    std::string text = fmt::format("{:.6f}", nanometres / nanometres_per_millimetre);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') {
        text.pop_back();
    }
    return text + " mm";
}

} // namespace tuckwright::proof
