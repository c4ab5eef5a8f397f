// SPDX-License-Identifier: GPL-3.0-or-later
/// From a kit to a proved bundle.
#pragma once
#include <atomic>
#include <cstdint>
#include <functional>

#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// How much work the search may do; each has a fixed number of search steps, so that answers repeat.
enum class Effort { quick, normal, thorough };

const char* to_string(Effort effort);

struct SolveOptions {
    Effort effort = Effort::normal;
    std::uint64_t seed = 1;
    unsigned threads = 0;                                  ///< 0: as many as the machine has; never changes the answer
    bool any_size = false;                                 ///< end with the first bundle that is proved, however large
    double seconds = 0;                                    ///< 0: no clock; otherwise stop then, and lose repeatability
    std::function<void(double best_ml)> progress{};        ///< called with each smaller volume, from any thread, one at a time
    const std::atomic<bool>* stop = nullptr;               ///< set it from a signal handler to stop early
};

/// Searches for the smallest bundle of the kit, proves it and finds its steps.
/// Requires: a kit as the reader gives it, or one built in code of which problems_of() has none (contract: ContractBroken
/// names the first); the kinds of its items bring rules only by with_usual_rules(), see kit_in_code.hpp.
/// Ensures: a bundle with a status. Where has_bundle(status), check() has no objection to it. Same kit, seed and
/// effort give the same bundle unless `seconds` or `stop` cut in.
Bundle solve(const Kit& kit, const SolveOptions& options = {});

} // namespace tuckwright
