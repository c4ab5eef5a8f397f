// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/html.hpp"

namespace tuckwright::card {

std::string as_html(std::string_view text)
{
    std::string safe;
    for (const char c : text) {
        switch (c) {
        case '&': safe += "&amp;"; break;
        case '<': safe += "&lt;"; break;
        case '>': safe += "&gt;"; break;
        case '"': safe += "&quot;"; break;
        default: safe += c;
        }
    }
    return safe;
}

} // namespace tuckwright::card
