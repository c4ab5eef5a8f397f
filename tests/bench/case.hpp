// SPDX-License-Identifier: GPL-3.0-or-later
/// A case of a suite: a kit, and what is known of its smallest bundle.
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bench/peer.hpp"

namespace tuckwright::bench {

/// How good an answer should be, and how soon.
struct Aim {
    double above = 0;                             ///< share above the best known
    std::optional<double> seconds = std::nullopt; ///< for the whole answer
};

struct Case {
    std::string suite;
    std::string name;
    std::string kit;                           ///< the text of a kit file
    std::string group;                         ///< cases that are summed up together
    int items = 0;                             ///< bodies in all
    std::optional<double> best = std::nullopt; ///< the best known, in `unit`
    std::string unit = "ml";
    std::string source{}; ///< of the best known
    /// From a bundle's volume in ml to the unit; rises with the volume.
    std::function<double(double ml)> figure = [](double ml) { return ml; };
    std::optional<Aim> aim = std::nullopt;
    std::optional<PeerTask> peer = std::nullopt; ///< the same problem for the peer
};

struct Suite {
    std::string name;
    std::string title;
    std::vector<Case> cases;
};

} // namespace tuckwright::bench
