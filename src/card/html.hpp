// SPDX-License-Identifier: GPL-3.0-or-later
/// Text for a page.
#pragma once
#include <string>
#include <string_view>

namespace tuckwright::card {

/// A text as HTML, between tags and in attributes alike.
std::string as_html(std::string_view text);

} // namespace tuckwright::card
