// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/run.hpp"

#include <algorithm>
#include <chrono>
#include <mutex>
#include <stdexcept>
#include <thread>

#include "tuckwright/kit_reader.hpp"

namespace tuckwright::bench {

namespace {

/// As good as another figure: grid and air at curved contacts are less than this.
constexpr double as_good = 1 + 1e-5;

std::optional<double> seconds_to_within(const Row& row, double share)
{
    const double best = row.what.best.value_or(row.ours.value_or(0));
    return seconds_to(row.trace, best * (1 + share) * (1 + 1e-9));
}

} // namespace

Answer answer_to(const std::string& kit, const RunOptions& options)
{
    const auto begin = std::chrono::steady_clock::now();
    const auto so_far = [begin] {
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    };
    const auto read = read_kit_text(kit, "kit.yaml");
    if (!read) {
        throw std::runtime_error(to_string(read.problems().front()));
    }
    Answer answer;
    std::mutex one_at_a_time;
    SolveOptions search;
    search.effort = options.effort;
    search.threads = options.threads;
    search.seconds = options.seconds;
    search.seed = options.seed;
    search.progress = [&](double best_ml) {
        const std::lock_guard lock(one_at_a_time);
        answer.trace.push_back({so_far(), best_ml});
    };
    answer.bundle = solve(*read, search);
    answer.seconds = so_far();
    if (has_bundle(answer.bundle.status)) {
        answer.trace = borne_out(answer.trace, volume_ml(answer.bundle.envelope), answer.seconds);
    } else {
        answer.trace.clear();
    }
    return answer;
}

Row run(const Case& what, const RunOptions& options) { return row_of(what, options, answer_to(what.kit, options)); }

Row row_of(const Case& what, const RunOptions& options, const Answer& answer)
{
    Row row;
    row.what = what;
    row.options = options;
    row.threads = options.threads != 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
    row.status = answer.bundle.status;
    row.seconds = answer.seconds;
    row.bound = what.figure(answer.bundle.lower_bound_ml);
    if (!has_bundle(row.status)) {
        return row;
    }
    row.ours = what.figure(volume_ml(answer.bundle.envelope));
    row.above = what.best ? std::optional<double>(*row.ours / *what.best - 1) : std::nullopt;
    row.gap = gap(answer.bundle);
    row.trace = answer.trace;
    for (Point& point : row.trace) {
        point.value = what.figure(point.value);
    }
    row.to_10 = seconds_to_within(row, 0.1);
    row.to_1 = seconds_to_within(row, 0.01);
    row.to_01 = seconds_to_within(row, 0.001);
    return row;
}

std::optional<bool> meets_aim(const Row& row)
{
    if (!row.what.aim) {
        return std::nullopt;
    }
    return row.above && *row.above <= row.what.aim->above && row.seconds <= row.what.aim->seconds.value_or(row.seconds);
}

std::optional<PeerRow> peer_row(const Row& row, double most_seconds)
{
    constexpr double times_ours = 100;
    if (!row.what.peer) {
        return std::nullopt;
    }
    PeerRow peer;
    peer.given = std::min(most_seconds, times_ours * row.seconds);
    const auto answer = ask_peer(*row.what.peer, peer.given);
    if (!answer) {
        return std::nullopt;
    }
    peer.finished = answer->finished;
    if (!answer->trace.empty()) {
        const Point last = answer->trace.back();
        peer.figure = last.value;
        peer.above = row.what.best ? std::optional<double>(last.value / *row.what.best - 1) : std::nullopt;
        peer.seconds = last.seconds;
        peer.ours_seconds = seconds_to(row.trace, last.value * as_good);
    }
    return peer;
}

} // namespace tuckwright::bench
