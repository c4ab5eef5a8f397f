// SPDX-License-Identifier: GPL-3.0-or-later
/// Where everything lies and how it gets there.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// From an empty line and what lies in what down to the cautions. Requires: a bundle, proved.
std::string layout_text(const Bundle& bundle);

} // namespace tuckwright::report
