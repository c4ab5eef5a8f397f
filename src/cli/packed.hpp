// SPDX-License-Identifier: GPL-3.0-or-later
/// The bundle that a kit packs into, or that was saved.
#pragma once
#include <atomic>
#include <string>

#include "cli/kit_or_bundle.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

/// Adds what is wrong with asking for the worst case of a bundle that is packed already.
void check_worst_case(const Result<KitOrBundle>& source, bool worst_case, const std::string& name,
                      std::vector<Problem>& problems);

struct Packed {
    Bundle bundle;
    int outcome = 0; ///< exit status, if there is none to go on with; what is wrong has been told then
};

/// Proves the saved bundle, or packs the kit. Requires: one of the two.
Packed packed(const KitOrBundle& source, const std::string& name, bool worst_case, SolveOptions search,
              const std::atomic<bool>& stop);

} // namespace tuckwright::cli
