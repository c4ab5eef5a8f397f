// SPDX-License-Identifier: GPL-3.0-or-later
/// A search with a bug, in the place of the true one: the program must own up to it.
#include "tuckwright/contract.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright {

const char* to_string(Effort) { return "quick"; }

Bundle solve(const Kit& kit, const SolveOptions&)
{
    require(kit.items.size() > 1000, "more items than any kit has");
    throw "what is no exception of the library";
}

} // namespace tuckwright
