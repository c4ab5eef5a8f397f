// SPDX-License-Identifier: GPL-3.0-or-later
/// What lies in what, as an indented list.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// One item a line, each below its container and indented; a shut lid below its vessel.
std::string nesting_tree(const Bundle& bundle);

} // namespace tuckwright::report
