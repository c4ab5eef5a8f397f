// SPDX-License-Identifier: GPL-3.0-or-later
/// Running cases as a user's kit is run, and what came of it.
#pragma once
#include <cstdint>
#include <optional>
#include <string>

#include "bench/case.hpp"
#include "bench/trace.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::bench {

struct RunOptions {
    Effort effort = Effort::normal;
    unsigned threads = 0; ///< 0: as many as the machine has
    double seconds = 0;   ///< 0: as long as the effort takes
    std::uint64_t seed = 1;
};

struct Answer {
    Bundle bundle;
    Trace trace;        ///< volumes in ml, with the proved one last; empty where nothing was found
    double seconds = 0; ///< from the text to the proved bundle
};

/// Reads the text and solves it. Requires: the text of a sound kit.
Answer answer_to(const std::string& kit, const RunOptions& options);

/// What the peer made of a case, beside ours.
struct PeerRow {
    std::optional<double> figure;       ///< nothing: found nothing
    std::optional<double> above;        ///< share above the best known
    std::optional<double> seconds;      ///< until its best
    std::optional<double> ours_seconds; ///< until ours was as good as that; nothing: never
    double given = 0;                   ///< seconds that it had
    bool finished = false;              ///< and shown to be the best within its model
};

/// A line of the tables. Figures are in the case's unit.
struct Row {
    Case what;
    RunOptions options;
    unsigned threads = 0; ///< as counted
    bool again = false;   ///< a second run, with more effort
    Status status = Status::not_found;
    std::optional<double> ours;
    std::optional<double> above;              ///< share above the best known
    std::optional<double> to_10, to_1, to_01; ///< seconds to within 10, 1, 0.1 % of the best known, or else of ours
    double seconds = 0;
    double bound = 0;
    std::optional<double> gap; ///< of volumes
    Trace trace{};
    std::optional<PeerRow> peer{};
};

/// The row for an answer, and for the answer that is found now.
Row row_of(const Case& what, const RunOptions& options, const Answer& answer);
Row run(const Case& what, const RunOptions& options);

/// Whether the row meets its case's aim; nothing where there is none.
std::optional<bool> meets_aim(const Row& row);

/// Lets the peer work a hundred times as long as the row took, but at most so many seconds. Nothing where the peer has
/// no such problem, or is not installed.
std::optional<PeerRow> peer_row(const Row& row, double most_seconds);

} // namespace tuckwright::bench
