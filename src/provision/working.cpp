// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/working.hpp"

#include <fmt/format.h>

#include <cmath>

namespace tuckwright::provisioning {

double rounded(double value, int decimals, Toward toward)
{
    constexpr double hair = 1e-9;
    const double scale = std::pow(10.0, decimals), scaled = value * scale;
    const double whole = toward == Toward::more   ? std::ceil(scaled - hair)
                         : toward == Toward::less ? std::floor(scaled + hair)
                                                  : std::round(scaled);
    return whole / scale + 0.0; // never a negative nought
}

std::string figure(double value)
{
    std::string text = fmt::format("{:.6f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') {
        text.pop_back();
    }
    return text;
}

double Working::line(WorkingLine line, Toward toward)
{
    line.value = rounded(line.value, line.decimals, toward);
    lines_.push_back(std::move(line));
    return lines_.back().value;
}

} // namespace tuckwright::provisioning
