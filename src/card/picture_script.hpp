// SPDX-License-Identifier: GPL-3.0-or-later
/// The turning picture's script, as the build has bundled it.
#pragma once
#include <string_view>

namespace tuckwright::card {

/// The script, in plain ASCII and without what would end it early in a page; empty where the build has left it out.
std::string_view picture_script();

} // namespace tuckwright::card
