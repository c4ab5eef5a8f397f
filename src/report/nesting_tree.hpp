// SPDX-License-Identifier: GPL-3.0-or-later
/// What lies in what, as an indented list.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// One item a line, each below its container and indented; a shut lid below its vessel.
std::string nesting_tree(const Bundle& bundle);

/// How an item lies, its size and what it holds, as its line there says it behind the name: "standing, 110 mm across, 90
/// mm high". Requires: an item of the bundle.
std::string thing_in_words(const Bundle& bundle, std::size_t item);

} // namespace tuckwright::report
