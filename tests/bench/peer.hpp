// SPDX-License-Identifier: GPL-3.0-or-later
/// A general-purpose solver on the same problems: Gecode, by models written in MiniZinc.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "bench/trace.hpp"

namespace tuckwright::bench {

/// One way of putting a problem to the solver.
struct PeerModel {
    std::string file; ///< in tests/bench
    std::string data; ///< assignments to the model's parameters
    double scale = 1; ///< the figure of a case is the objective times this
};

/// A problem, in several ways that are worked on at the same time.
struct PeerTask {
    std::string objective; ///< the variable that is minimised, in all models
    std::vector<PeerModel> models;
    /// The figure where the limits leave one alone: the solver then tells none.
    std::optional<double> only = std::nullopt;
};

struct PeerAnswer {
    Trace trace;           ///< in the unit of the case, of all models together; empty: found nothing
    bool finished = false; ///< one of them has shown that nothing is better, within its model
};

/// Whether both the translator and the solver are installed.
bool has_peer();

/// Lets the peer work on each model for so long, each on a thread of its own. Times are those of the solver alone,
/// without translating. Nothing where a model can't be translated.
std::optional<PeerAnswer> ask_peer(const PeerTask& task, double seconds);

/// What the solver's output says of the objective: a line "NAME = NUMBER;". Nothing for any other line.
std::optional<double> objective_in(const std::string& line, const std::string& objective);

/// Whether the line is the mark after a solution, and that after the last one, beyond which there is nothing better.
bool ends_solution(const std::string& line);
bool ends_search(const std::string& line);

/// Of several traces the times at which all together had something better than before.
Trace merged(const std::vector<Trace>& traces);

} // namespace tuckwright::bench
